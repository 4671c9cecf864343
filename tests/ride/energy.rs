//! Energy: what is lost is booked, and where nothing is lost nothing goes.

use crate::{features, ridden};
use sim::plan::{Feature, demo};
use sim::profile::Profile;
use sim::ride::{Accuracy, Outcome, ride};
use sim::setup;

/// Share of the start's energy that may stay unexplained.
const BOUND: f64 = 1e-3;

#[test]
fn ledger_closes_over_the_demonstration_line_jumps_included() {
    let plan = demo();
    for rider in 0..plan.riders.len() {
        let run = ridden(&plan, rider).run;
        let residue = run.ledger.residue() / run.ledger.start;
        println!(
            "{}: {residue:.1e} of the start's energy",
            plan.riders[rider].label
        );
        assert!(residue.abs() < BOUND, "{residue}");
    }
}

/// Rider and bike as one rigid body on tyres that give nothing back but take nothing either: the
/// demonstration line without its jumps, with every loss off.
#[test]
fn nothing_goes_where_nothing_is_lost() {
    let mut plan = demo();
    features(&mut plan).retain(|f| !matches!(f, Feature::Jump(_) | Feature::RunOut(_)));
    let profile = Profile::build(&plan).unwrap_or_else(|faults| panic!("{faults:?}"));
    for planned in &plan.riders {
        let mut m = setup::mount(planned, &plan.weather);
        m.bike_mass += m.rider_mass;
        m.rider_mass = 1e-6 * m.bike_mass;
        m.rider_inertia *= 1e-6;
        m.rolling = [0.0; 6];
        m.bearings = [0.0; 2];
        m.drag = 0.0;
        m.tyre.damping = 0.0;
        let run = ride(
            &profile,
            &m,
            setup::start_speed(&plan),
            &Accuracy::default(),
        );
        assert_eq!(run.outcome, Outcome::Finished);
        // Drift is what slip takes, being needed to turn the wheels, and the integration's error.
        let drift = (run.ledger.end - run.ledger.start) / run.ledger.start;
        println!("{}: drift {drift:.1e}", planned.label);
        assert!(drift.abs() < BOUND, "{drift}");
    }
}
