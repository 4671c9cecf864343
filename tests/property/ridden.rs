//! No plan breaks the ride: whatever it holds, it is refused with a reason, or ridden to an end in a bounded number of
//! steps, with a ledger that closes and figures that are numbers.

use proptest::strategy::{Strategy, ValueTree};
use proptest::test_runner::{Config, RngSeed, TestRunner};
use sim::error::Fault;
use sim::link;
use sim::plan::{Lie, Line, Plan, demo};
use sim::ride::Outcome;
use sim::setup::ride_plan;
use tests::{plans, wild};

/// How many of each kind are tried here; the example `wild` tries as many as it is asked to.
const CASES: u64 = 500;

#[test]
fn every_plan_that_is_accepted_is_ridden_to_an_end() {
    let mut lost = 0;
    let (mut worst, mut most) = (0.0_f64, 0);
    for seed in 0..CASES {
        let plan = wild::ridable(seed);
        let ridden =
            wild::ride(&plan).unwrap_or_else(|why| panic!("{seed}: {why}: {}", plan.to_json()));
        lost += u32::from(ridden.lost);
        worst = worst.max(ridden.off);
        most = most.max(ridden.steps);
    }
    println!(
        "{CASES} rides: {lost} lost, ledger off by {worst:.4} of the head, {most} steps at most"
    );
    // Faces and notches that no wheel comes through are not the rule, even here.
    assert!(lost < 25, "{lost} rides were lost");
}

#[test]
fn no_garbage_breaks_the_ride() {
    let mut runner = TestRunner::new(Config {
        rng_seed: RngSeed::Fixed(0x0CA2_217E),
        failure_persistence: None,
        ..Config::default()
    });
    let strategy = plans::plan();
    for _ in 0..CASES {
        let plan = strategy.new_tree(&mut runner).expect("a plan").current();
        if let Err(faults) = ride_plan(&plan, 0) {
            assert!(!faults.is_empty());
            assert!(faults.iter().all(|f| !f.why.to_string().is_empty()));
        }
    }
}

/// A line of points, ridden by the child of the demonstration.
fn surveyed(points: &[[f64; 2]], speed: f64) -> Plan {
    let points = points.iter().map(|&[x, z]| (x, z).into()).collect();
    let mut plan = demo();
    plan.line = Line::Surveyed {
        points,
        surface: Default::default(),
    };
    plan.yard.lie = Lie::Grade(0.0);
    plan.initial_speed = Some(speed);
    plan.riders.truncate(1);
    plan
}

fn refused(plan: &Plan) -> Fault {
    let faults = plan.validate();
    assert!(ride_plan(plan, 0).is_err());
    faults.into_iter().next().expect("it is refused")
}

#[test]
fn points_all_but_the_same_are_refused() {
    let fault = refused(&surveyed(&[[0.0, 0.0], [1e-12, 0.0]], 3.0));
    assert_eq!(fault.field, "line.surveyed.points[1]");
    assert_eq!((fault.given, fault.least), (Some(1e-12), Some(0.01)));
    // The same line in a link that was once made of it.
    let text = "wQAi8ZNkbSF4I3xAGAB_nrjLzMCW9QiAKLkRAhQG95BMCl1znNGlU4Q";
    let plan = link::decode(text).expect("it is whole").plan;
    assert_eq!(refused(&plan).field, "line.surveyed.points[1]");
}

#[test]
fn a_link_without_riders_is_refused() {
    let text = "wQA91267aC01RoZSBmaXJzdCBqdW1wIG9mIHRoZSBvcmNoYXJkI8Scgwx0CNYPETJZiBLETNwRlgzgkM4IzFptSCIYA";
    let plan = link::decode(text).expect("it is whole").plan;
    assert_eq!(refused(&plan).field, "riders");
    assert_eq!(
        plan.beyond_mending().map(|f| f.field).as_deref(),
        Some("riders")
    );
}

#[test]
fn a_line_has_to_begin_where_a_bike_stands() {
    // On end on the face; on the slope with the front wheel in the wall behind it.
    let face = vec![[0.0, 0.0], [0.0, 3.0], [8.0, 3.0]];
    let wall = vec![[0.0, 0.0], [1.0, 0.0], [1.0, 3.0], [8.0, 3.0]];
    for points in [face, wall] {
        let fault = refused(&surveyed(&points, 7.0));
        assert_eq!(fault.field, "line.surveyed.points[1]", "{fault}");
        assert!(fault.given.is_some() && fault.most.is_some(), "{fault}");
    }
    let short = refused(&surveyed(&[[0.0, 0.0], [0.5, 0.0]], 3.0));
    assert!(
        short.least > short.given && short.given == Some(0.5),
        "{short}"
    );
}

/// Once this was off by a quarter of the head.
#[test]
fn a_bike_that_begins_in_a_notch_keeps_its_books() {
    let plan = surveyed(&[[0.0, 0.0], [0.2, -0.84], [1.0, -0.55]], 8.0);
    let mut child = demo().riders.swap_remove(0);
    for wheelbase in [0.6, 0.7, child.bike.wheelbase] {
        child.bike.wheelbase = wheelbase;
        let plan = Plan {
            riders: vec![child.clone()],
            ..plan.clone()
        };
        if plan.validate().is_empty() {
            wild::ride(&plan).unwrap_or_else(|why| panic!("{wheelbase}: {why}"));
        }
    }
}

/// A notch that is deeper than wide catches the wheel; nobody is thrown out of it faster than they came.
#[test]
fn nobody_is_thrown_out_of_a_notch() {
    for (wide, deep) in [(0.1, 3.0), (0.3, 3.0), (0.5, 1.0), (0.6, 0.3)] {
        let points = [
            [0.0, 0.0],
            [6.0, 0.0],
            [6.0, -deep],
            [6.0 + wide, -deep],
            [6.0 + wide, 0.0],
            [14.0, 0.0],
        ];
        for speed in [1.0, 4.0, 8.0, 16.0] {
            let plan = surveyed(&points, speed);
            let ridden = wild::ride(&plan).unwrap_or_else(|why| panic!("{wide} {speed}: {why}"));
            let run = ride_plan(&plan, 0).expect("it is accepted").run;
            let fast = run.samples.iter().map(|s| s.speed).fold(0.0, f64::max);
            let most = (speed * speed + 2.0 * 9.81 * (deep + 1.0)).sqrt();
            assert!(fast < most, "{wide} {deep} {speed}: {fast} m/s, {ridden:?}");
        }
    }
}

#[test]
fn a_wheel_without_inertia_is_refused() {
    let mut plan = demo();
    plan.riders.truncate(1);
    let bike = &mut plan.riders[0].bike;
    bike.mass = 20.0;
    bike.wheel_mass = 6.0;
    bike.wheel_inertia = 1e-3;
    let quarter = 0.25 * 6.0 * bike.wheel_radius() * bike.wheel_radius();
    let fault = refused(&plan);
    assert_eq!(fault.field, "riders[0].bike.wheel_inertia");
    assert_eq!((fault.given, fault.least), (Some(1e-3), Some(quarter)));
}

/// Creeping on ground that stops its wheels faster than they turn, a ride once took seconds.
#[test]
fn a_ride_that_takes_too_many_steps_is_broken_off() {
    let broken = (0..CASES).find(|&seed| {
        let ridden = wild::ride(&wild::ridable(seed));
        ridden.is_ok_and(|ridden| ridden.outcome == Outcome::BrokenOff)
    });
    assert!(broken.is_some(), "no ride was broken off");
}

#[test]
fn what_happened_is_told_in_its_order() {
    let runs = tests::golden::links().into_iter().map(|text| {
        let plan = link::decode(&text).expect("it is whole").plan;
        ride_plan(&plan, 0).expect("it is sound").run
    });
    let ordered = |events: &[sim::ride::Event]| events.windows(2).all(|e| e[0].t <= e[1].t);
    let mut known_late = 0;
    for run in runs {
        assert!(ordered(&run.told()));
        known_late += u32::from(!ordered(&run.events));
    }
    assert!(
        known_late > 0,
        "nothing was known late, and the order proves nothing"
    );
}
