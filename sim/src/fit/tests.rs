//! Beside the code: far from what was planned. Made-up rides with noise are in `tests/fit`.

use super::*;
use crate::plan::{self, Clocked, Feature, Flat, Lie, Line, RunOut, Stopped, Surface, Timed};

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
    })
}

fn speed(at: f64) -> Observation {
    Observation::Speed(Clocked {
        at,
        speed: 1.0,
        give_or_take: 0.1,
        rider: 0,
    })
}

fn stopped(at: f64) -> Observation {
    Observation::Stopped(Stopped {
        at,
        give_or_take: 0.3,
        rider: 0,
    })
}

/// The plan with what is seen of a ride with some values of the inputs, without any noise.
fn with(mut plan: Plan, looks: &[Observation], values: &[f64]) -> Plan {
    let told = Rides::new(&plan, 0, looks.iter().collect())
        .expect("a sound plan")
        .told(values);
    for (look, reading) in looks.iter().zip(told.readings) {
        let value = reading.expect("this ride gets there");
        let mut look = look.clone();
        match &mut look {
            Observation::Time(seen) => seen.seconds = value,
            Observation::Speed(seen) => seen.speed = value,
            Observation::Landed(seen) => seen.past_knuckle = value,
            Observation::Stopped(seen) => seen.at = value,
        }
        plan.seen.push(look);
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
    let planned = Rides::new(&plan, 0, looks.iter().collect()).expect("sound");
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
