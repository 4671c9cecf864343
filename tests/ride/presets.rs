//! Riders made from an age ride too.

use crate::{lip_speeds, ridden};
use sim::plan::Style;
use sim::presets::{AGES, Choice, Sex, Tread, preset};
use sim::ride::{CrashKind, EventKind};

/// On the demonstration line, from the smallest child to an adult: whatever becomes of them, the
/// numbers do not run away, and nobody leaves the first lip with more energy than there was.
#[test]
fn every_age_rides_the_demonstration_line() {
    let mut plan = sim::plan::demo();
    // To the first lip it goes 3 m down the ramp, and the yard falls by less than 2 m.
    let fastest = (2.0 * sim::constants::GRAVITY * 5.0_f64 + 1.2 * 1.2).sqrt();
    for age in AGES {
        let choice = Choice {
            label: format!("{age}"),
            age,
            sex: Sex::Either,
            wheel: None,
            tread: Tread::Smooth,
            posture: None,
            style: Style::Absorbing,
            skill: None,
        };
        let made = preset(&choice).unwrap_or_else(|fault| panic!("{fault}"));
        let fitting = made.fitting;
        plan.riders = vec![made.mount];
        let run = ridden(&plan, 0).run;
        let speeds = lip_speeds(&run);
        println!("{age}, {fitting:?}: {speeds:.2?} m/s, {:?}", run.outcome);
        for event in &run.events {
            assert!(
                !matches!(
                    event.kind,
                    EventKind::Crashed {
                        why: CrashKind::Lost
                    }
                ),
                "at {age}"
            );
        }
        assert!(
            speeds.first().is_some_and(|v| (0.0..fastest).contains(v)),
            "at {age}"
        );
    }
}
