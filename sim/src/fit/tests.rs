//! Beside the code: far from what was planned. Made-up rides with noise are in `tests/fit`.

use super::*;
use crate::plan::{
    self, Clocked, Feature, Flat, Landed, Lie, Line, RunOut, Stopped, Surface, Timed,
};

fn one_jump() -> Plan {
    Plan::from_json(include_str!("../../plans/one_jump.json")).expect("a plan file of our own")
}

/// A flat and a run-out of loose dirt, one rider.
fn rolled_out() -> Plan {
    let mut plan = one_jump();
    plan.yard.length = 60.0;
    plan.yard.lie = Lie::Grade(0.0);
    let flat = Flat {
        length: 6.0,
        surface: Surface::Packed,
    };
    let run_out = RunOut {
        length: 30.0,
        surface: Surface::Soft,
    };
    plan.line = Line::Features(vec![Feature::Flat(flat), Feature::RunOut(run_out)]);
    plan.initial_speed = Some(4.0);
    plan.riders.truncate(1);
    plan
}

fn time(from: f64, to: f64) -> Observation {
    Observation::Time(Timed {
        from,
        to,
        seconds: 1.0,
        give_or_take: 0.05,
        rider: 0,
        carried: false,
    })
}

fn speed(at: f64) -> Observation {
    Observation::Speed(Clocked {
        at,
        speed: 1.0,
        give_or_take: 0.1,
        rider: 0,
        carried: false,
    })
}

fn stopped(at: f64) -> Observation {
    Observation::Stopped(Stopped {
        at,
        give_or_take: 0.3,
        rider: 0,
        carried: false,
    })
}

/// The plan with what is seen of a ride with some values of the inputs, without any noise.
fn with(mut plan: Plan, looks: &[Observation], values: &[f64]) -> Plan {
    let told = Rides::new(&plan, 0, looks.to_vec())
        .expect("a sound plan")
        .told(values);
    for (look, reading) in looks.iter().zip(told.readings) {
        let value = reading.expect("this ride gets there");
        plan.seen.push(look.with_value(value));
    }
    plan
}

fn fitted(plan: &Plan) -> Fit {
    fit(plan, 0).expect("sound").expect("something was seen")
}

/// The ground was not what the plan took it for, by three of the ranges in which that is uncertain.
/// What is planned holds it back a little, and the uncertainty says so.
#[test]
fn ground_that_rolls_twice_as_hard_is_found() {
    let looks = [time(0.0, 4.0), speed(4.0), stopped(8.0)];
    let plan = with(rolled_out(), &looks, &[2.0, 1.0, 4.0]);
    let fit = fitted(&plan);
    let rolling = &fit.inputs[0];
    println!("{rolling:?}");
    assert!((rolling.value - 2.0).abs() < rolling.sigma && rolling.value > 1.6);
    assert!(fit.agrees);
}

/// The planned ride rolls back before the places where the real one was seen.
#[test]
fn a_ride_that_gets_farther_than_planned_is_used() {
    let mut plan = one_jump();
    plan.riders.truncate(1);
    let Line::Features(features) = &mut plan.line else {
        panic!("features")
    };
    let Feature::StartRamp(ramp) = &mut features[0] else {
        panic!("a ramp")
    };
    ramp.platform_height = 1.2;
    ramp.push_off = 0.2;
    let looks = [time(0.0, 7.0), speed(12.5)];
    let planned = Rides::new(&plan, 0, looks.to_vec()).expect("sound");
    let planned = planned.told(&[1.0, 1.0, 0.2]);
    assert_eq!(planned.readings[1], Err(Use::NeverThere), "{planned:?}");
    let plan = with(plan, &looks, &[0.8, 0.9, 1.0]);
    let fit = fitted(&plan);
    println!("{fit:#?}");
    assert!(fit.agrees && fit.seen.iter().all(|seen| seen.used == Use::Used));
    let start = &fit.inputs[2];
    assert!((start.value - 1.0).abs() < 3.0 * start.sigma && start.value > 0.6);
}

/// What is planned stands at the end of what is possible.
#[test]
fn nobody_starts_backward() {
    let mut plan = rolled_out();
    plan.yard.lie = Lie::Grade(-0.1);
    plan.initial_speed = Some(0.0);
    let plan = with(plan, &[time(1.0, 5.0), speed(5.0)], &[1.0, 1.0, 0.1]);
    let fit = fitted(&plan);
    let start = &fit.inputs[2];
    println!("{start:?}");
    assert!(start.value >= 0.0 && (start.value - 0.1).abs() < 3.0 * start.sigma);
    assert_eq!(apply(&plan, &fit).validate(), []);
}

/// Once it is carried to the plan, the same ride teaches nothing new.
#[test]
fn a_plan_that_was_taught_is_as_it_was_seen() {
    let looks = [time(0.0, 4.0), speed(4.0), stopped(8.0)];
    let plan = with(rolled_out(), &looks, &[1.4, 1.0, 4.3]);
    let again = apply(&plan, &fitted(&plan));
    assert_eq!(again.validate(), []);
    for input in fitted(&again).inputs {
        println!("{input:?}");
        assert!((input.value - input.planned).abs() < 0.5 * input.sigma);
    }
}

#[test]
fn a_rider_who_is_not_there_is_a_fault() {
    assert_eq!(
        fit(&plan::demo(), 2).expect_err("two riders")[0].field,
        "rider"
    );
}

/// The demonstration, its first rider alone, timed on the ramp and over the rollers, s beside what is
/// planned.
fn timed(ramp: f64, rollers: f64) -> Plan {
    let mut plan = plan::demo();
    plan.riders.truncate(1);
    plan.seen = vec![time(0.0, 5.4), time(5.4, 17.0)];
    let shown = planned(&plan, 0).expect("sound");
    for ((seen, shown), by) in plan.seen.iter_mut().zip(shown).zip([ramp, rollers]) {
        *seen = seen.with_value(shown.expect("it gets there") + by);
    }
    plan
}

/// Slower on the ramp and as planned behind it, and slower on the whole: a lip that comes out faster than
/// planned all the same says why.
#[test]
fn no_lip_is_faster_than_planned_without_a_reason_where_all_was_slower() {
    let mut faster = 0;
    for (ramp, rollers) in [(0.3, 0.0), (0.3, -0.05), (0.6, 0.01), (0.1, 0.1)] {
        let fit = fitted(&timed(ramp, rollers));
        for lip in &fit.lips {
            let (a, b) = (lip.planned.expect("left"), lip.speed.expect("left"));
            println!(
                "{ramp:+} {rollers:+} s: {a:.3} to {b:.3} m/s, {:?}",
                lip.against
            );
            assert_eq!(lip.against.is_some(), b > a, "{lip:?}");
            faster += usize::from(b > a);
        }
        if rollers < 0.0 {
            let first = fit.lips[0].against.as_deref();
            assert!(
                first.is_some_and(|why| why.contains(&What::Rolling)),
                "{first:?}"
            );
            assert!(
                first.is_some_and(|why| !why.contains(&What::Start)),
                "{first:?}"
            );
        }
    }
    assert!(faster > 1);
}

/// What is told of a lip is what the table shows once the plan has it.
#[test]
fn a_lip_is_told_as_the_plan_then_rides() {
    for plan in [timed(0.3, 0.0), timed(0.1, 0.1)] {
        let fit = fitted(&plan);
        let rows = |plan: &Plan| {
            let ridden = crate::setup::ride_plan(plan, 0).expect("sound");
            crate::judge::jumps(&ridden.profile, &ridden.run)
        };
        let (before, after) = (rows(&plan), rows(&apply(&plan, &fit)));
        for (lip, (a, b)) in fit.lips.iter().zip(before.iter().zip(&after)) {
            assert_eq!((lip.planned, lip.speed, lip.how), (a.speed, b.speed, b.how));
        }
    }
}

/// What was carried holds the inputs where they are, and tells how well they are known; seen otherwise it
/// counts again.
#[test]
fn what_is_carried_moves_nothing_twice() {
    let plan = timed(0.1, 0.1);
    let first = fitted(&plan);
    let mut carried = apply(&plan, &first);
    assert!(carried.seen.iter().all(Observation::carried));
    let again = fitted(&carried);
    assert!(again.lips.iter().all(|lip| lip.speed == lip.planned));
    for (input, before) in again.inputs.iter().zip(&first.inputs) {
        println!("{input:?}");
        assert_eq!(input.value, input.planned);
        assert!(input.sigma < 1.05 * before.sigma);
    }
    carried.seen.push(speed(17.0).with_value(4.0));
    let moved = &fitted(&carried).inputs[0];
    assert!(moved.value > moved.planned + 0.5 * moved.sigma, "{moved:?}");
}

/// Before, a range holds all that nobody knows; after it what the ride left, and the wind.
#[test]
fn ranges_are_never_wider_once_the_plan_has_what_was_seen() {
    let range = |plan: &Plan| {
        let spreads = crate::judge::spreads(plan, 0, &left(plan, 0).expect("sound"));
        let spreads = spreads.expect("sound").into_iter();
        let wide = spreads.map(|s| s.fastest.expect("left") - s.slowest.expect("left"));
        wide.collect::<Vec<_>>()
    };
    let mut short = timed(0.1, 0.1);
    let mark = Landed {
        jump: 0,
        past_knuckle: 0.5,
        give_or_take: 0.1,
        rider: 0,
        carried: false,
    };
    short.seen.push(Observation::Landed(mark));
    for plan in [timed(0.1, 0.1), short] {
        let fit = fitted(&plan);
        let (before, after) = (range(&plan), range(&apply(&plan, &fit)));
        println!("{before:.2?} to {after:.2?} m/s");
        for ((before, after), lip) in before.iter().zip(&after).zip(&fit.lips) {
            assert!(after < before, "{after} {before}");
            // One standard deviation either way at the least, but for what rides scatter.
            let inputs = (lip.sigma * lip.sigma - lip.scatter * lip.scatter).sqrt();
            assert!(*after > 2.0 * inputs, "{after} {lip:?}");
        }
    }
}

/// However little the ride goes with what was planned, no less is known of a lip than before.
#[test]
fn a_misfit_makes_no_lip_less_known_than_before() {
    let plan = timed(0.0, 0.3);
    let day = Day::of(&plan, 0).expect("sound");
    let found = search::search(&day.rides, &search::first(&day.rides), None).expect("used");
    for lip in fitted(&plan).lips {
        let quantity = day.rides.seen.len() + lip.lip;
        let (_, slope) = found
            .surfaces
            .at(quantity, &found.solution.values)
            .expect("left");
        let each = day.rides.inputs.iter().zip(&slope);
        let before: f64 = each
            .map(|(input, g)| g * g * input.sigma * input.sigma)
            .sum();
        let now = lip.sigma * lip.sigma - lip.scatter * lip.scatter;
        println!("{:.4} m/s before, {:.4} now", before.sqrt(), now.sqrt());
        assert!(now <= before + 1e-12, "{lip:?}");
    }
}
