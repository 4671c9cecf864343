//! Energy: what is lost is booked, and where nothing is lost nothing goes.

use crate::{features, ridden};
use glam::DVec2;
use sim::constants::GRAVITY;
use sim::plan::{Feature, Lie, demo};
use sim::profile::Profile;
use sim::ride::{Accuracy, Mount, Outcome, Run, Sample, ride};
use sim::setup;
use tests::checks::{
    Bound::{Share, Within},
    Check, judge,
};

/// Share of the head that may stay unexplained.
const BOUND: f64 = 1e-3;

const BOOKS: &str = "conservation of energy";

/// At every sample, kinetic + spin + potential + stored energy and all that was lost, less what the
/// rider put in, is what there was at the start.
fn at_every_moment(name: &str, run: &Run) -> Vec<Check> {
    let (start, weight) = (run.ledger.start, run.ledger.weight);
    let residue = |s: &Sample| start - s.head * weight - s.spent.net();
    let all: Vec<f64> = run.samples.iter().map(residue).collect();
    let worst = all
        .iter()
        .copied()
        .fold(0.0, |a: f64, b| if b.abs() > a.abs() { b } else { a });
    // Heights count from the lowest that the mass centre comes to.
    let lowest = run
        .samples
        .iter()
        .map(|s| s.height)
        .fold(f64::INFINITY, f64::min);
    let head = start - lowest * weight;
    let at_end = start - run.ledger.end - run.ledger.spent.net();
    vec![
        Check::new(
            format!("{name}: largest residue at any of {} moments", all.len()),
            BOOKS,
            "J",
            [0.0, worst],
            Within(BOUND * head),
            "0.1 % of the head over the line's lowest place",
        ),
        Check::new(
            format!("{name}: the last moment's residue and the ledger's"),
            "the same sum, twice",
            "J",
            [run.ledger.residue(), at_end],
            Within(1e-12 * start),
            "rounding",
        ),
    ]
}

/// In the air, where no tyre stores anything, what the ledger calls energy is what the path says:
/// from differences between samples, all parts by themselves.
fn in_the_air(name: &str, m: &Mount, run: &Run) -> Check {
    let free = |s: &[Sample]| s.iter().all(|s| s.rear_load + s.front_load == 0.0);
    let flying = run.samples.windows(3).filter(|s| free(s));
    let pair = |s: &[Sample]| (seen(m, s) / run.ledger.weight, s[1].head);
    let worst = flying
        .map(pair)
        .max_by(|a, b| (a.0 - a.1).abs().total_cmp(&(b.0 - b.1).abs()));
    let (seen, told) = worst.expect("it flies");
    Check::new(
        format!("{name}: head in the air, where it is farthest off"),
        "½ m v² + ½ I ω² + m g z of bike, rider and wheels, from the trace",
        "m",
        [seen, told],
        Within(5e-3),
        "rates are means over 20 ms, in which the body swings against the bike",
    )
}

/// Energy at the middle of three samples, J.
fn seen(m: &Mount, s: &[Sample]) -> f64 {
    let dt = s[2].t - s[0].t;
    let rate = |of: fn(&Sample) -> f64| (of(&s[2]) - of(&s[0])) / dt;
    let bike = |s: &Sample| {
        DVec2::new(s.bike_x, s.bike_z) + DVec2::from_angle(s.pitch).perp() * m.bike_rise
    };
    let rider = |s: &Sample| DVec2::new(s.rider_x, s.rider_z);
    let square = |of: &dyn Fn(&Sample) -> DVec2| ((of(&s[2]) - of(&s[0])) / dt).length_squared();
    let spins = rate(|s| s.rear_turned).powi(2) + rate(|s| s.front_turned).powi(2);
    let kinetic = m.bike_mass * square(&bike)
        + m.rider_mass * square(&rider)
        + m.bike_inertia * rate(|s| s.pitch).powi(2)
        + m.rider_inertia * rate(|s| s.lean).powi(2)
        + m.wheel_inertia * spins;
    0.5 * kinetic + GRAVITY * (m.bike_mass * bike(&s[1]).y + m.rider_mass * s[1].rider_z)
}

#[test]
fn ledger_closes_at_every_moment_of_the_demonstration_line() {
    let plan = demo();
    let mut checks = Vec::new();
    for (rider, planned) in plan.riders.iter().enumerate() {
        let run = ridden(&plan, rider).run;
        assert_eq!(run.outcome, Outcome::Finished);
        checks.extend(at_every_moment(&planned.label, &run));
        checks.push(in_the_air(
            &planned.label,
            &setup::mount(planned, &plan.weather),
            &run,
        ));
    }
    judge("Energy on the demonstration line, jumps included", checks);
}

/// Rider and bike as one rigid body on tyres that take nothing: the demonstration line without its
/// jumps, on level ground and from a ramp low enough for the wheels to stay down, every loss off.
#[test]
fn nothing_goes_where_nothing_is_lost() {
    let mut plan = demo();
    plan.yard.lie = Lie::Grade(0.0);
    features(&mut plan).retain(|f| !matches!(f, Feature::Jump(_) | Feature::RunOut(_)));
    if let Some(Feature::StartRamp(ramp)) = features(&mut plan).first_mut() {
        ramp.platform_height = 0.8;
    }
    let profile = Profile::build(&plan).unwrap_or_else(|faults| panic!("{faults:?}"));
    let mut checks = Vec::new();
    for planned in &plan.riders {
        let mut m = setup::mount(planned, &plan.weather);
        m.bike_mass += m.rider_mass;
        m.rider_mass = 1e-6 * m.bike_mass;
        m.rider_inertia *= 1e-6;
        m.rolling = [0.0; 6];
        m.bearings = [0.0; 2];
        m.drag = 0.0;
        m.tyre.damping = 0.0;
        // Without friction nothing slips at a cost, and no wheel has to be turned.
        m.tyre.grip = 0.0;
        let run = ride(
            &profile,
            &m,
            setup::start_speed(&plan),
            &Accuracy::default(),
        );
        assert_eq!(run.outcome, Outcome::Finished);
        let pair = [run.ledger.start, run.ledger.end];
        let what = format!("{}, as a rigid body that nothing holds back", planned.label);
        checks.push(Check::new(
            what,
            BOOKS,
            "J",
            pair,
            Share(BOUND),
            "steps; a crumb of a rider",
        ));
    }
    judge("Energy where nothing is lost", checks);
}
