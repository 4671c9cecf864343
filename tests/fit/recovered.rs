//! A hundred made-up rides on each of three lines: what they were made with lies where it is said to.
//!
//! Fixed before any of it was tried: of a hundred rides, the true value of each input lies within two
//! stated standard deviations in at least ninety, and never beyond four. A normal distribution has
//! 95.4 of a hundred within two, and one of sixteen thousand beyond four.

use super::lines::{Day, one_jump, pumped, rolled_out};
use super::made_up::{Truth, seen};
use fastrand::Rng;
use sim::fit::{Fit, What, apply, fit};

const SEEDS: u64 = 100;
const WITHIN_TWO: usize = 90;
const FARTHEST: f64 = 4.0;

/// How many of the rides may be said not to go together with what was seen of them: one in a
/// thousand is what is aimed at.
const SAID_TO_CLASH: usize = 3;

/// One made-up ride and what it teaches.
fn taught(day: &Day, seed: u64) -> (Truth, Fit) {
    let mut rng = Rng::with_seed(seed);
    let truth = Truth::drawn(&day.plan, &mut rng);
    let mut plan = day.plan.clone();
    plan.seen = seen(&plan, &truth, &day.looks, &mut rng);
    let fit = fit(&plan, 0).unwrap_or_else(|faults| panic!("{faults:?}"));
    (truth, fit.expect("something was seen"))
}

/// Rides and fits; `known` are the inputs that this line has to tell for sure in most of the rides.
fn recovered(day: &Day, first_seed: u64, known: &[What]) {
    let days: Vec<(Truth, Fit)> = (first_seed..first_seed + SEEDS)
        .map(|seed| taught(day, seed))
        .collect();
    let clashes = days.iter().filter(|(_, fit)| !fit.agrees).count();
    println!("{}: {clashes} of {SEEDS} said to clash", day.name);
    assert!(clashes <= SAID_TO_CLASH, "{clashes}");
    for (i, input) in days[0].1.inputs.iter().enumerate() {
        let what = input.what;
        let off = |(truth, fit): &(Truth, Fit)| {
            (fit.inputs[i].value - truth.of(what)) / fit.inputs[i].sigma
        };
        let offs: Vec<f64> = days.iter().map(off).collect();
        let within = |k: f64| offs.iter().filter(|off| off.abs() <= k).count();
        let farthest = offs.iter().fold(0.0, |far: f64, off| far.max(off.abs()));
        let mean = offs.iter().sum::<f64>() / SEEDS as f64;
        let sure = days.iter().filter(|(_, fit)| fit.inputs[i].sure).count();
        let left = days
            .iter()
            .map(|(_, fit)| fit.inputs[i].sigma / fit.inputs[i].before);
        println!(
            "{} {what:?}: {} within one, {} within two, farthest {farthest:.2}, mean {mean:+.2}, \
             sure in {sure}, {:.2} of the uncertainty left",
            day.name,
            within(1.0),
            within(2.0),
            left.sum::<f64>() / SEEDS as f64,
        );
        assert!(within(2.0) >= WITHIN_TWO && farthest <= FARTHEST);
        assert!(!known.contains(&what) || sure > 50, "{what:?} {sure}");
    }
}

#[test]
fn on_one_jump() {
    recovered(&one_jump(), 1000, &[What::Start]);
}

#[test]
fn over_pumped_rollers() {
    recovered(&pumped(), 2000, &[]);
}

#[test]
fn rolled_out_to_a_stand() {
    recovered(&rolled_out(), 3000, &[What::Rolling]);
}

/// What was found is ridden by the whole line: the plan with it shows what the fit says.
#[test]
fn carried_to_the_plan() {
    let day = one_jump();
    let (_, fit) = taught(&day, 1);
    let carried = apply(&day.plan, &fit);
    assert_ne!(carried, day.plan);
    let ridden = sim::setup::ride_plan(&carried, 0).unwrap_or_else(|faults| panic!("{faults:?}"));
    let rows = sim::judge::jumps(&ridden.profile, &ridden.run);
    for (lip, row) in fit.lips.iter().zip(&rows) {
        let (said, got) = (lip.speed.expect("left"), row.speed.expect("left"));
        println!(
            "lip {}: said {said:.3} ± {:.3}, got {got:.3}",
            lip.lip, lip.sigma
        );
        assert!((said - got).abs() < lip.sigma, "{said} {got}");
    }
}
