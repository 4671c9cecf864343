//! Every field has limits, and every fault is told at once.

use super::*;
use crate::error::Quantity;
use serde_json::Value;

fn everything() -> Plan {
    Plan::from_json(EVERYTHING).expect("readable")
}

fn fields(plan: &Plan) -> Vec<String> {
    plan.field_faults().into_iter().map(|f| f.field).collect()
}

/// Every number in a document: its JSON pointer and its path in a fault.
fn numbers(value: &Value, pointer: &str, path: &str, found: &mut Vec<(String, String)>) {
    match value {
        Value::Number(_) => found.push((pointer.to_owned(), path.to_owned())),
        Value::Array(items) => {
            for (i, item) in items.iter().enumerate() {
                numbers(
                    item,
                    &format!("{pointer}/{i}"),
                    &format!("{path}[{i}]"),
                    found,
                );
            }
        }
        Value::Object(fields) => {
            for (key, field) in fields {
                let dot = if path.is_empty() { "" } else { "." };
                numbers(
                    field,
                    &format!("{pointer}/{key}"),
                    &format!("{path}{dot}{key}"),
                    found,
                );
            }
        }
        _ => {}
    }
}

/// The plan in a text with one of its numbers changed.
fn spoiled(text: &str, pointer: &str, value: f64) -> Plan {
    let mut document: Value = serde_json::from_str(text).expect("JSON");
    let number = document.pointer_mut(pointer).expect("number");
    let whole = ["/count", "/jump", "/rider", "/seed"];
    *number = if whole.iter().any(|name| pointer.ends_with(name)) {
        (value as u32).into()
    } else {
        value.into()
    };
    Plan::from_json(&document.to_string()).expect("readable")
}

/// Each number of the plan in a text in turn.
fn every_number(text: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    let document = serde_json::from_str(text).expect("JSON");
    numbers(&document, "", "", &mut found);
    found
}

/// The fault that one number of a plan is, when it is far too small or too large.
fn beyond(text: &str, pointer: &str, path: &str, value: f64) -> Fault {
    let faults = spoiled(text, pointer, value).field_faults();
    let fault = faults.iter().find(|f| f.field == path);
    fault
        .unwrap_or_else(|| panic!("{path} {value}: {faults:?}"))
        .clone()
}

/// Values far too small and far too large. Places in a list begin at nought, and less is no number.
fn too_far(pointer: &str) -> Vec<f64> {
    let place = ["/jump", "/rider", "/seed"];
    if place.iter().any(|name| pointer.ends_with(name)) {
        vec![1e9]
    } else {
        vec![-1e7, 1e9]
    }
}

#[test]
fn a_plan_with_everything_has_no_fault() {
    assert_eq!(everything().field_faults(), []);
    assert_eq!(everything().validate(), []);
}

#[test]
fn no_number_is_accepted_without_limits() {
    for text in [EVERYTHING, SURVEYED_LINE] {
        let found = every_number(text);
        assert!(found.len() > 50, "{} numbers", found.len());
        for (pointer, path) in found {
            for value in too_far(&pointer) {
                let fault = beyond(text, &pointer, &path, value);
                assert!(fault.given.is_some() && fault.least.is_some() && fault.most.is_some());
                let why = fault.why.to_string();
                assert!(!why.is_empty() && !why.contains(char::is_numeric));
            }
        }
    }
}

#[test]
fn the_limits_themselves_are_accepted() {
    for (pointer, path) in every_number(EVERYTHING) {
        for value in too_far(&pointer) {
            let fault = beyond(EVERYTHING, &pointer, &path, value);
            for limit in [fault.least, fault.most].into_iter().flatten() {
                let faults = spoiled(EVERYTHING, &pointer, limit).field_faults();
                // What fits by itself may still not fit the fields beside it.
                let again = faults
                    .iter()
                    .find(|f| f.field == path && f.why == fault.why);
                assert_eq!(again, None);
            }
        }
    }
}

#[test]
fn nothing_that_is_no_number_passes() {
    for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        let mut plan = everything();
        plan.yard.length = value;
        plan.yard.lie = Lie::Grade(value);
        plan.initial_speed = Some(value);
        plan.weather.altitude = value;
        plan.riders[0].rider.mass = value;
        plan.riders[0].bike.tyre_stiffness = Some(value);
        plan.riders[0].bike.rolling.soft = value;
        let Line::Features(features) = &mut plan.line else {
            panic!("features");
        };
        features[1] = Feature::Flat(Flat {
            length: value,
            surface: Surface::Packed,
        });
        let faults = plan.field_faults();
        assert_eq!(faults.len(), 8, "{faults:?}");
        assert!(faults.iter().all(|f| f.given.is_none() && f.most.is_some()));
        assert_eq!(plan.validate(), faults);
    }
}

#[test]
fn texts_are_one_short_line() {
    let mut plan = one_jump();
    plan.name = "ä".repeat(60);
    assert_eq!(fields(&plan), [""; 0]);
    plan.name.push('x');
    plan.riders[1].label = "two\nlines".to_owned();
    assert_eq!(fields(&plan), ["name", "riders[1].label"]);
    let faults = plan.field_faults();
    assert_eq!((faults[0].given, faults[0].most), (Some(61.0), Some(60.0)));
    assert_eq!(faults[1].quantity, Quantity::Text);
}

#[test]
fn riders_and_features_are_counted() {
    let mut plan = one_jump();
    let rider = plan.riders[0].clone();
    plan.riders = vec![rider; 4];
    assert_eq!(fields(&plan), [""; 0]);
    plan.riders.push(plan.riders[0].clone());
    assert_eq!(fields(&plan), ["riders"]);
    plan.riders.clear();
    plan.line = Line::Features(Vec::new());
    plan.initial_speed = Some(3.0);
    assert_eq!(fields(&plan), ["line.features", "riders"]);
    let flat = Feature::Flat(Flat {
        length: 0.1,
        surface: Surface::Packed,
    });
    plan.riders = one_jump().riders;
    plan.line = Line::Features(vec![flat; 61]);
    assert_eq!(fields(&plan), ["line.features"]);
}

#[test]
fn start_ramp_comes_first_and_run_out_last() {
    let mut plan = one_jump();
    let Line::Features(features) = &mut plan.line else {
        panic!("features");
    };
    features.reverse();
    let expected = [
        "line.features[0].kind",
        "line.features[6].kind",
        "initial_speed",
    ];
    assert_eq!(fields(&plan), expected);
}

#[test]
fn a_line_without_a_start_ramp_needs_a_speed() {
    let mut plan = one_jump();
    let Line::Features(features) = &mut plan.line else {
        panic!("features");
    };
    features.remove(0);
    assert_eq!(fields(&plan), ["initial_speed"]);
    plan.initial_speed = Some(4.0);
    assert_eq!(fields(&plan), [""; 0]);
}

#[test]
fn parts_of_a_bike_go_together() {
    let mut plan = one_jump();
    let bike = &mut plan.riders[0].bike;
    bike.wheelbase = 0.5;
    bike.wheel_mass = 4.5;
    bike.wheel_inertia = 0.3;
    let expected =
        ["wheelbase", "wheel_mass", "wheel_inertia"].map(|f| format!("riders[0].bike.{f}"));
    assert_eq!(fields(&plan), expected);
}

#[test]
fn a_yard_survey_runs_forward_and_covers_the_yard() {
    let mut plan = one_jump();
    let mut with = |points: &[(f64, f64)]| {
        plan.yard.lie = Lie::Surveyed(points.iter().map(|&p| p.into()).collect());
        fields(&plan)
    };
    let at = |field: &str| vec![format!("yard.lie.surveyed{field}")];
    assert_eq!(with(&[(0.0, 0.0), (20.0, -0.5), (60.0, -3.0)]), [""; 0]);
    assert_eq!(with(&[(0.0, 0.0)]), at(""));
    assert_eq!(with(&[(0.5, 0.0), (60.0, -3.0)]), at("[0][0]"));
    assert_eq!(with(&[(0.0, 0.0), (59.0, -3.0)]), at("[1][0]"));
    assert_eq!(
        with(&[(0.0, 0.0), (20.0, 0.0), (20.0, 1.0), (60.0, 0.0)]),
        at("[2][0]")
    );
    assert_eq!(
        with(&[(0.0, 0.0), (20.0, 0.0), (21.0, 1.5), (60.0, 0.0)]),
        at("[2][1]")
    );
}

#[test]
fn a_surveyed_line_runs_forward_with_faces_of_two_points() {
    let mut plan = Plan::from_json(SURVEYED_LINE).expect("readable");
    let mut with = |points: &[(f64, f64)]| {
        plan.line = Line::Surveyed {
            points: points.iter().map(|&p| p.into()).collect(),
            surface: Surface::Packed,
        };
        fields(&plan)
    };
    let at = |field: &str| vec![format!("line.surveyed.points{field}")];
    assert_eq!(
        with(&[(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (2.0, 1.0)]),
        [""; 0]
    );
    assert_eq!(with(&[(0.0, 0.0)]), at(""));
    assert_eq!(with(&[(0.0, 0.0), (1.0, 0.0), (0.9, 1.0)]), at("[2][0]"));
    assert_eq!(with(&[(0.0, 0.0), (1.0, 0.0), (1.0, 0.0)]), at("[2]"));
    assert_eq!(
        with(&[(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (1.0, 2.0)]),
        at("[3][0]")
    );
}

#[test]
fn a_fault_reads_as_a_sentence() {
    let mut plan = one_jump();
    plan.weather.temperature = 80.0;
    let told = plan.field_faults()[0].to_string();
    let expected = "weather.temperature: nobody rides in such cold or heat; given 80 °C; accepted -30 to 50 °C";
    assert_eq!(told, expected);
}
