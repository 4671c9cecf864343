//! Would a rider believe it?

use crate::{demo_with, features, lip_speeds, ridden};
use sim::judge::{How, jumps};
use sim::plan::{Feature, Style, demo};
use sim::ride::Outcome;

/// Steepest angle between bike and slope at touch-down, rad: 15°.
const SENSIBLE: f64 = 0.262;

#[test]
fn child_and_adult_ride_the_demonstration_line_to_its_end() {
    let plan = demo();
    assert!(plan.riders.len() >= 2);
    for (i, mount) in plan.riders.iter().enumerate() {
        let ridden = ridden(&plan, i);
        let rows = jumps(&ridden.profile, &ridden.run);
        println!("{}: {:?}", mount.label, ridden.run.outcome);
        assert_eq!(ridden.run.outcome, Outcome::Finished);
        assert!(rows.len() >= 3);
        for row in rows {
            println!("  {row:?}");
            assert!(row.airtime.is_some_and(|t| t > 0.2), "it flies");
            let pitch = row.pitch_to_slope.unwrap_or(f64::NAN);
            assert!(pitch.abs() < SENSIBLE, "it lands {pitch} rad off the slope");
            assert!(
                matches!(row.how, How::Clean | How::Deep | How::Knuckle),
                "{:?}",
                row.how
            );
        }
    }
}

#[test]
fn passive_rider_loses_more_on_the_rollers() {
    for rider in 0..2 {
        let first = |style| {
            let run = ridden(&demo_with(style), rider).run;
            lip_speeds(&run).first().copied().unwrap_or(0.0)
        };
        let (passive, absorbing) = (first(Style::Passive), first(Style::Absorbing));
        println!("first lip: {passive:.2} m/s passive, {absorbing:.2} m/s absorbing");
        assert!(passive < 0.9 * absorbing);
    }
}

#[test]
fn half_the_start_ramp_is_too_little() {
    let mut plan = demo();
    for f in features(&mut plan) {
        if let Feature::StartRamp(ramp) = f {
            ramp.platform_height *= 0.5;
        }
    }
    let ridden = ridden(&plan, 0);
    let rows = jumps(&ridden.profile, &ridden.run);
    let bad = |how: How| {
        matches!(
            how,
            How::Short | How::Crashed | How::Stalled | How::NotReached
        )
    };
    println!("{:?}, {:?}", ridden.run.outcome, ridden.run.events.last());
    assert!(rows.iter().any(|r| bad(r.how)), "{rows:?}");
    assert!(
        ridden.run.events.last().is_some_and(|e| e.x > 0.0),
        "and the run says where"
    );
}
