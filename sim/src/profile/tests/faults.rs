//! Geometry that cannot be built is a fault at its field, and the limit it names can be built.

use super::*;
use serde_json::json;

/// A field, how to spoil it, and the path its fault has to name.
struct Case {
    grade: f64,
    features: Value,
    field: &'static str,
}

fn jump() -> Value {
    json!({"kind": "jump", "lip": {"height": 0.7, "radius": 2.6}, "gap": 1.2,
        "landing": {"height": 0.8, "angle_deg": 24, "knuckle_radius": 0.5, "bottom_radius": 2.5}})
}

fn ramp() -> Value {
    json!({"kind": "start_ramp", "platform_height": 2.4, "angle_deg": 35, "bottom_radius": 3, "push_off": 1})
}

/// A feature with some of its fields changed, by JSON pointer.
fn with(mut feature: Value, changes: &[(&str, f64)]) -> Value {
    for (pointer, value) in changes {
        let (parent, key) = pointer.rsplit_once('/').expect("pointer");
        feature.pointer_mut(parent).expect("parent")[key] = json!(value);
    }
    feature
}

fn case(feature: Value, changes: &[(&str, f64)], grade: f64, field: &'static str) -> Case {
    let features = json!([with(feature, changes)]);
    Case {
        grade,
        features,
        field,
    }
}

fn led(changes: &[(&str, f64)]) -> Value {
    let mut jump = jump();
    jump["lip"]["lead_in"] = json!({"angle_deg": 20, "length": 0.4});
    with(jump, changes)
}

#[rustfmt::skip]
fn cases() -> Vec<Case> {
    let roller = || json!({"kind": "roller", "height": 0.4, "length": 3.2, "count": 2});
    let mut steep_ramp = case(ramp(), &[("/angle_deg", 12.0)], 0.25, "angle_deg");
    steep_ramp.features[0]["edge_radius"] = json!(0.1);
    vec![
        case(jump(), &[("/lip/height", 2.4)], 0.0, "lip.height"),
        case(jump(), &[("/lip/height", 3.0)], -0.2, "lip.height"),
        case(jump(), &[("/lip/height", 2.0)], 0.2, "lip.height"),
        case(jump(), &[("/lip/radius", 0.31)], 0.0, "lip.radius"),
        case(led(&[("/lip/lead_in/angle_deg", 58.0)]), &[], 0.0, "lip.lead_in.angle_deg"),
        case(led(&[("/lip/lead_in/length", 3.0)]), &[], -0.1, "lip.lead_in.length"),
        case(led(&[("/lip/straight_end", 1.6)]), &[], 0.0, "lip.straight_end"),
        case(jump(), &[("/lip/straight_end", 4.0), ("/lip/height", 0.05)], -0.1, "lip.straight_end"),
        case(jump(), &[("/lip/straight_end", 0.3), ("/lip/height", 3.0)], -0.2, "lip.height"),
        case(led(&[("/lip/height", 3.0)]), &[], 0.0, "lip.height"),
        case(jump(), &[("/landing/height", 0.1)], 0.0, "landing.height"),
        case(jump(), &[("/landing/height", 0.2), ("/landing/length", 0.2)], 0.0, "landing.height"),
        case(jump(), &[("/landing/length", 3.0)], -0.05, "landing.length"),
        case(jump(), &[("/landing/bottom_radius", 0.32)], 0.0, "landing.bottom_radius"),
        case(jump(), &[("/landing/angle_deg", 74.0), ("/landing/height", 4.0)], -0.3, "landing.angle_deg"),
        case(ramp(), &[("/platform_height", 0.4)], 0.0, "platform_height"),
        case(ramp(), &[("/bottom_radius", 0.33)], 0.0, "bottom_radius"),
        case(ramp(), &[("/angle_deg", 74.0), ("/platform_height", 4.0)], -0.4, "angle_deg"),
        steep_ramp,
        case(roller(), &[("/height", 1.8), ("/length", 1.5)], 0.0, "length"),
        case(roller(), &[("/height", 0.3), ("/length", 1.0)], 0.0, "length"),
    ]
}

fn pointer(field: &str) -> String {
    format!("/{}", field.replace('.', "/"))
}

#[test]
fn each_names_its_field_and_has_a_reason_without_figures() {
    for Case {
        grade,
        features,
        field,
    } in cases()
    {
        let faults = refused(&plan(grade, &features));
        assert_eq!(faults.len(), 1, "{faults:?}");
        assert_eq!(faults[0].field, format!("line.features[0].{field}"));
        let given = features[0].pointer(&pointer(field)).and_then(Value::as_f64);
        assert_eq!(faults[0].given, given);
        let why = faults[0].why.to_string();
        assert!(!why.contains(char::is_numeric), "{why}");
    }
}

#[test]
fn the_limit_named_is_the_limit() {
    for Case {
        grade,
        mut features,
        field,
    } in cases()
    {
        let faults = refused(&plan(grade, &features));
        let (limit, inward) = match (faults[0].least, faults[0].most) {
            (Some(least), _) => (least, 1e-6_f64),
            (None, Some(most)) => (most, -1e-6),
            _ => panic!("no limit: {}", faults[0]),
        };
        for (step, accepted) in [(inward, true), (-1e-3 * inward.signum(), false)] {
            *features[0].pointer_mut(&pointer(field)).expect("field") = json!(limit + step);
            let built = Profile::build(&plan(grade, &features));
            let told = built.as_ref().err().map(|f| f[0].field.clone());
            let same = told == Some(faults[0].field.clone());
            assert_eq!(
                same,
                !accepted,
                "{grade} {field} {}: {told:?}",
                limit + step
            );
        }
    }
}

#[test]
fn every_faulty_feature_is_told_at_once() {
    let high = with(jump(), &[("/lip/height", 2.6)]);
    let low = with(jump(), &[("/landing/height", 0.1)]);
    let faults = refused(&plan(0.0, &json!([ramp(), high, jump(), low])));
    let fields: Vec<&str> = faults.iter().map(|f| f.field.as_str()).collect();
    assert_eq!(
        fields,
        [
            "line.features[1].lip.height",
            "line.features[3].landing.height"
        ]
    );
}

#[test]
fn what_stands_on_a_bed_of_unknown_height_is_not_judged() {
    let long = with(jump(), &[("/landing/length", 3.0)]);
    let low = with(jump(), &[("/landing/height", 0.1)]);
    let faults = refused(&plan(0.0, &json!([long, low])));
    assert_eq!(faults.len(), 1);
    assert_eq!(faults[0].field, "line.features[0].landing.length");
}

#[test]
fn fields_out_of_range_are_told_before_any_geometry() {
    let mut plan = one_jump();
    plan.riders[0].rider.mass = f64::NAN;
    plan.yard.length = 5.0;
    let faults = refused(&plan);
    assert_eq!(faults.len(), 1);
    assert_eq!(faults[0].field, "riders[0].rider.mass");
}
