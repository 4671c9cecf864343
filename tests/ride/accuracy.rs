//! Lip speeds against the fineness of the step.

use crate::lip_speeds;
use sim::plan::{Plan, demo};
use sim::profile::Profile;
use sim::ride::{Accuracy, ride};
use sim::setup;
use tests::family::member;

/// Largest change of a lip speed that halving the step may make.
const BOUND: f64 = 1e-3;

fn speeds(plan: &Plan, rider: usize, accuracy: &Accuracy) -> Vec<f64> {
    let profile = Profile::build(plan).unwrap_or_else(|faults| panic!("{faults:?}"));
    let mount = setup::mount(&plan.riders[rider], &plan.weather);
    lip_speeds(&ride(&profile, &mount, setup::start_speed(plan), accuracy))
}

/// Largest relative difference between two runs' lip speeds.
fn apart(a: &[f64], b: &[f64]) -> f64 {
    assert_eq!(a.len(), b.len(), "as many lips either way");
    let each = a.iter().zip(b).map(|(a, b)| (a / b - 1.0).abs());
    each.fold(0.0, f64::max)
}

#[test]
fn halving_the_step_changes_no_lip_speed_on_the_demonstration_line() {
    let usual = Accuracy::default();
    let half = Accuracy {
        tolerance: 0.5 * usual.tolerance,
        longest: 0.5 * usual.longest,
    };
    let plan = demo();
    for rider in 0..plan.riders.len() {
        let (a, b) = (speeds(&plan, rider, &usual), speeds(&plan, rider, &half));
        assert!(!a.is_empty());
        let apart = apart(&a, &b);
        println!("{}: {apart:.1e} at {a:.3?} m/s", plan.riders[rider].label);
        assert!(apart < BOUND, "{apart}");
    }
}

/// On lines of the family the error falls with the tolerance, and the usual one keeps within a
/// tenth of a percent.
#[test]
fn error_falls_with_the_tolerance() {
    let fine = Accuracy {
        tolerance: 1e-8,
        longest: 1e-3,
    };
    let ladder = [1e-3, 1e-4, 1e-5, 1e-6].map(|tolerance| Accuracy {
        tolerance,
        longest: 4e-3,
    });
    let plans: Vec<Plan> = (1..40)
        .step_by(2)
        .map(member)
        .filter(|m| m.placed > 0)
        .take(8)
        .map(|m| m.plan)
        .collect();
    assert!(plans.len() >= 5, "five lines at least");
    let errors = ladder.map(|accuracy| {
        let each = plans
            .iter()
            .map(|p| apart(&speeds(p, 0, &accuracy), &speeds(p, 0, &fine)));
        let mut each: Vec<f64> = each.collect();
        each.sort_by(f64::total_cmp);
        (each[each.len() / 2], each[each.len() - 1])
    });
    for (accuracy, (median, worst)) in ladder.iter().zip(&errors) {
        println!(
            "tolerance {:.0e}: median {median:.1e}, worst {worst:.1e}",
            accuracy.tolerance
        );
    }
    assert!(
        errors[3].0 < 0.1 * errors[0].0,
        "a thousandth of the tolerance, a tenth of the error"
    );
    assert!(errors[2].1 < BOUND, "the usual tolerance");
}
