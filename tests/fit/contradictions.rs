//! What cannot both be true is named.

use super::lines::{one_jump, rolled_out};
use super::made_up::{Truth, seen};
use fastrand::Rng;
use sim::fit::{Fit, Use, fit};
use sim::plan::{Clocked, Landed, Observation, Plan, Timed};

const SEEDS: u64 = 20;

fn fitted(plan: &Plan) -> Fit {
    let fit = fit(plan, 0).unwrap_or_else(|faults| panic!("{faults:?}"));
    fit.expect("something was seen")
}

/// A flag's time misread by a second, among others that are right.
#[test]
fn one_that_is_wrong_is_named() {
    let day = one_jump();
    let mut alone = 0;
    for seed in 0..SEEDS {
        let mut rng = Rng::with_seed(seed);
        let truth = Truth::drawn(&day.plan, &mut rng);
        let mut plan = day.plan.clone();
        plan.seen = seen(&plan, &truth, &day.looks, &mut rng);
        let Observation::Time(timed) = &mut plan.seen[1] else {
            panic!("a time was expected")
        };
        timed.seconds += 1.0;
        let fit = fitted(&plan);
        assert!(!fit.agrees, "seed {seed}: {fit:?}");
        assert!(fit.doubted.contains(&1), "seed {seed}: {fit:?}");
        alone += u64::from(fit.doubted == [1]);
    }
    println!("named alone in {alone} of {SEEDS}");
    assert!(alone > SEEDS / 2);
}

/// Two speeds at one place.
#[test]
fn two_that_contradict_each_other_are_both_named() {
    let mut plan = rolled_out().plan;
    let speed = |speed| {
        Observation::Speed(Clocked {
            at: 3.0,
            speed,
            give_or_take: Clocked::USUAL,
            rider: 0,
            carried: false,
        })
    };
    plan.seen = vec![speed(3.0), speed(5.0)];
    let fit = fitted(&plan);
    println!("{:?} {:?}", fit.far, fit.doubted);
    assert!(!fit.agrees);
    assert_eq!(fit.doubted, [0, 1]);
    plan.seen = vec![speed(3.9), speed(4.1)];
    let fit = fitted(&plan);
    assert!(fit.agrees && fit.doubted.is_empty() && fit.far.is_empty());
}

/// A flag that stands beyond the line, a jump that is not there, a flag where the rider brakes.
#[test]
fn what_cannot_be_used_says_why() {
    let mut plan = sim::plan::demo();
    let time = |to| {
        Observation::Time(Timed {
            from: 1.0,
            to,
            seconds: 2.0,
            give_or_take: Timed::USUAL,
            rider: 0,
            carried: false,
        })
    };
    let landed = Observation::Landed(Landed {
        jump: 7,
        past_knuckle: 0.3,
        give_or_take: Landed::USUAL,
        rider: 0,
        carried: false,
    });
    plan.seen = vec![time(300.0), landed, time(52.0)];
    assert_eq!(fit(&plan, 0), Ok(None));
    assert_eq!(fit(&plan, 1), Ok(None));
    plan.seen.push(time(6.0));
    let uses: Vec<Use> = fitted(&plan).seen.iter().map(|seen| seen.used).collect();
    let expected = [Use::OffTheLine, Use::OffTheLine, Use::Braking, Use::Used];
    assert_eq!(uses, expected);
}
