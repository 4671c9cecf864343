mod chain;
mod faults;
mod plans;
mod queries;
mod shapes;
mod surveyed;
mod yards;

use super::*;
use crate::error::Fault;
use crate::num;
use crate::plan::{Feature, Lie, Line, Plan, one_jump};
use serde_json::Value;

/// The chain's own promises: every piece begins where the one before ends, and holds numbers.
fn assert_whole(profile: &Profile) {
    let mut before = 0.0;
    for piece in &profile.pieces {
        let all = [piece.start.x, piece.start.y, piece.end.x, piece.end.y];
        assert!(all.iter().all(|v| v.is_finite()), "{piece:?}");
        assert!(piece.heading.is_finite() && piece.length > 0.0, "{piece:?}");
        assert!((piece.before - before).abs() < 1e-9, "{piece:?}");
        assert!(
            piece.point(piece.length).distance(piece.end) < 1e-9,
            "{piece:?}"
        );
        assert!(
            (piece.curvature * piece.length).abs() < num::PI,
            "{piece:?}"
        );
        before += piece.length;
    }
    for pair in profile.pieces.windows(2) {
        assert_eq!(pair[0].end, pair[1].start);
    }
    assert!((profile.length() - before).abs() < 1e-9);
}

/// The demonstration plan's yard and riders with other features, on an even grade.
fn plan(grade: f64, features: &Value) -> Plan {
    let features: Vec<Feature> = serde_json::from_value(features.clone()).expect("features");
    let mut plan = one_jump();
    plan.yard.length = 100.0;
    plan.yard.lie = Lie::Grade(grade);
    plan.line = Line::Features(features);
    plan.initial_speed = Some(3.0);
    plan
}

fn built(plan: &Plan) -> Profile {
    let profile = Profile::build(plan).unwrap_or_else(|f| panic!("{f:#?}"));
    assert_whole(&profile);
    profile
}

fn refused(plan: &Plan) -> Vec<Fault> {
    Profile::build(plan).expect_err("faulty")
}

#[track_caller]
fn assert_near(got: f64, expected: f64, bound: f64) {
    assert!(
        (got - expected).abs() <= bound,
        "got {got}, expected {expected}"
    );
}
