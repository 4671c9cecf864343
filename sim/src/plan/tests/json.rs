//! Plan files: what is wrong is named by its path.

use super::*;
use crate::error::{Fault, Unreadable, Why};
use serde_json::{Value, json};

/// The demonstration plan as a value, to be spoiled.
fn document() -> Value {
    serde_json::from_str(&one_jump().to_json()).expect("JSON")
}

fn fault(document: &Value) -> Fault {
    Plan::from_json(&document.to_string()).expect_err("spoiled")
}

/// Puts a value where a JSON pointer leads.
fn put(document: &mut Value, pointer: &str, value: Value) {
    let (parent, key) = pointer.rsplit_once('/').expect("pointer");
    match document.pointer_mut(parent).expect("parent") {
        Value::Array(items) => items[key.parse::<usize>().expect("index")] = value,
        parent => parent[key] = value,
    }
}

#[test]
fn a_plan_survives_its_file() {
    let plan = one_jump();
    assert_eq!(Plan::from_json(&plan.to_json()), Ok(plan));
}

/// Where, what is put there, and the field that the fault has to name.
#[rustfmt::skip]
const SPOILED: &[(&str, &str, &str)] = &[
    ("/yard/length", r#""long""#, "yard.length"),
    ("/yard/lie", r#"{"grades": 1}"#, "yard.lie"),
    ("/yard/lie", r#"{"grade": "x"}"#, "yard.lie.grade"),
    ("/yard/lie", r#"{"surveyed": [[0, 0], [1, "x"]]}"#, "yard.lie.surveyed[1][1]"),
    ("/yard/lie", r#"{"surveyed": [[0, 0], [1, 2, 3]]}"#, "yard.lie.surveyed[1]"),
    ("/line/features/4/lip/height", r#""high""#, "line.features[4].lip.height"),
    ("/line/features/4/lip/height", r#"null"#, "line.features[4].lip.height"),
    ("/line/features/4/lip/heigth", r#"1"#, "line.features[4].lip.heigth"),
    ("/line/features/4/landing/length", r#"[1]"#, "line.features[4].landing.length"),
    ("/line/features/4/deckd", r#"true"#, "line.features[4].deckd"),
    ("/line/features/0/angle", r#"1"#, "line.features[0].angle"),
    ("/line/features/1/lenght", r#"1"#, "line.features[1].lenght"),
    ("/line/features/1/surface", r#""ice""#, "line.features[1].surface"),
    ("/line/features/2/count", r#"1.5"#, "line.features[2].count"),
    ("/line/features/2/count", r#"-1"#, "line.features[2].count"),
    ("/line/features/2/kind", r#""hole""#, "line.features[2].kind"),
    ("/line/features/2/kind", r#"3"#, "line.features[2].kind"),
    ("/line/features/6/height", r#"1"#, "line.features[6].height"),
    ("/line/features/1", r#"3"#, "line.features[1]"),
    ("/line", r#"{"surveyed": {"points": [[0, 0], [1]]}}"#, "line.surveyed.points[1]"),
    ("/line", r#"{"surveyed": {"point": []}}"#, "line.surveyed.point"),
    ("/riders/1/bike/mas", r#"3"#, "riders[1].bike.mas"),
    ("/riders/1/bike/rolling", r#"{"woods": 1}"#, "riders[1].bike.rolling.woods"),
    ("/riders/1/rider/style", r#""brave""#, "riders[1].rider.style"),
    ("/weather", r#"{"ground": "wet"}"#, "weather.ground"),
    ("/seen", r#"[{"kind": "speed", "at": 3, "sped": 4}]"#, "seen[0].sped"),
    ("/seen", r#"[{"kind": "time", "from": 3, "to": "far", "seconds": 1}]"#, "seen[0].to"),
    ("/seen", r#"[{"kind": "landed", "jump": 1.5, "past_knuckle": 0}]"#, "seen[0].jump"),
    ("/seen", r#"[{"kind": "stopped", "rider": 0}]"#, "seen[0].at"),
    ("/seen", r#"[{"kind": "heard", "at": 3}]"#, "seen[0].kind"),
    ("/extra", r#"1"#, "extra"),
    ("/name", r#"3"#, "name"),
    ("/yard", r#"3"#, "yard"),
    ("/yard/lie", r#"3"#, "yard.lie"),
    ("/yard/lie", r#"{"grade": 0, "surveyed": []}"#, "yard.lie"),
    ("/riders", r#"{}"#, "riders"),
    ("/line/features/1/surface", r#"3"#, "line.features[1].surface"),
    ("/line/features/4/decked", r#"1"#, "line.features[4].decked"),
];

#[test]
fn wrong_values_and_unknown_fields_are_named_by_their_path() {
    for &(pointer, value, field) in SPOILED {
        let mut spoiled = document();
        let value = serde_json::from_str(value).expect("JSON");
        put(&mut spoiled, pointer, value);
        let fault = fault(&spoiled);
        assert_eq!(fault.field, field, "{fault}");
        let told = fault.why.to_string();
        let jargon = [
            "f64", "u32", "variant", "struct", "map", "sequence", "tuple", "invalid",
        ];
        let found = jargon.iter().find(|word| told.contains(*word));
        assert!(!told.is_empty() && found.is_none(), "{fault}");
    }
}

#[test]
fn a_turn_knows_its_fields_too() {
    let mut spoiled = document();
    let turn = json!({"kind": "turn", "radius": 4, "sweep_deg": 90, "bank_deg": 20, "bank": 1});
    put(&mut spoiled, "/line/features/3", turn);
    assert_eq!(fault(&spoiled).field, "line.features[3].bank");
}

#[test]
fn missing_fields_are_named_by_their_path() {
    for (parent, key, field) in [
        ("", "yard", "yard"),
        ("/yard", "length", "yard.length"),
        ("/line/features/4", "kind", "line.features[4].kind"),
        ("/line/features/4", "gap", "line.features[4].gap"),
        (
            "/line/features/4/lip",
            "height",
            "line.features[4].lip.height",
        ),
        ("/riders/0/rider", "mass", "riders[0].rider.mass"),
    ] {
        let mut spoiled = document();
        let object = spoiled.pointer_mut(parent).and_then(Value::as_object_mut);
        object.expect("object").remove(key).expect("there before");
        let fault = fault(&spoiled);
        assert_eq!(fault.field, field, "{fault}");
        let told = fault.why.to_string();
        assert!(told.starts_with("missing field"), "{fault}");
        let what = Unreadable::Missing;
        assert_eq!(fault.why, Why::Unreadable { what, told });
    }
}

#[test]
fn a_field_given_twice_is_a_fault_of_that_field() {
    for (once, twice, field) in [
        (
            r#""length": 2.0"#,
            r#""length": 1.0, "length": 2.0"#,
            "line.features[1].length",
        ),
        (
            r#""kind": "flat""#,
            r#""kind": "flat", "kind": "flat""#,
            "line.features[1].kind",
        ),
        (
            r#""height": 0.6"#,
            r#""height": 0.5, "height": 0.6"#,
            "line.features[4].lip.height",
        ),
        (
            r#""skill""#,
            r#""skill": 1, "skill""#,
            "riders[0].rider.skill",
        ),
        (r#""name""#, r#""name": "", "name""#, "name"),
    ] {
        let whole = one_jump().to_json();
        let twice = whole.replacen(once, twice, 1);
        assert_ne!(whole, twice, "{once}");
        let fault = Plan::from_json(&twice).expect_err("twice");
        assert_eq!(fault.field, field);
        let what = Unreadable::Twice;
        let told = fault.why.to_string();
        assert!(told.starts_with("duplicate field"), "{told}");
        assert_eq!(fault.why, Why::Unreadable { what, told });
    }
}

#[test]
fn no_field_hides_behind_another_spelling() {
    let twice = one_jump()
        .to_json()
        .replacen(r#""name""#, r#""n\u0061me": "", "name""#, 1);
    let fault = Plan::from_json(&twice).expect_err("twice");
    assert_eq!(fault.field, r"n\u0061me");
}

#[test]
fn a_text_may_hold_all_that_json_is_made_of() {
    let mut plan = one_jump();
    for name in [
        r#"", "name": ""#,
        r"\",
        r#"\""#,
        r#"{"a": [1, 2"#,
        "}],",
        r#"\\""#,
    ] {
        plan.name = name.to_owned();
        assert_eq!(Plan::from_json(&plan.to_json()), Ok(plan.clone()), "{name}");
    }
}

#[test]
fn how_many_may_be_written_with_a_point() {
    let mut plan = document();
    put(&mut plan, "/line/features/2/count", json!(2.0));
    assert!(plan.to_string().contains("2.0"));
    assert!(Plan::from_json(&plan.to_string()).is_ok());
    put(&mut plan, "/weather/tailwind", json!(-0.0));
    let read = Plan::from_json(&plan.to_string()).expect("a number");
    assert!(read.weather.tailwind.is_sign_negative());
}

#[test]
fn what_is_nested_too_deep_is_refused() {
    let deep = |depth: usize| format!("{{\"name\": {}{}}}", "[".repeat(depth), "]".repeat(depth));
    // One is the plan itself. As deep as is accepted, it is only no text.
    let kind = Plan::from_json(&deep(31)).expect_err("no text");
    assert_eq!(kind.field, "name");
    for depth in [32, 100, 10_000] {
        let fault = Plan::from_json(&deep(depth)).expect_err("too deep");
        assert_eq!(fault.field, "plan", "{fault}");
    }
    let text = deep(10_000);
    assert!(
        crate::json::once(&text).is_err(),
        "a browser reads the text by itself"
    );
}

#[test]
fn what_is_no_json_says_where() {
    let whole = one_jump().to_json();
    let cut = &whole[..whole.len() / 2];
    let trailing = whole.clone() + "x";
    let huge = whole.replacen("2.4", "1e999", 1);
    for text in ["", "{", cut, trailing.as_str(), huge.as_str()] {
        let fault = Plan::from_json(text).expect_err("no plan");
        let Why::Unreadable { what, told } = &fault.why else {
            panic!("{fault}");
        };
        assert_eq!(*what, Unreadable::NotJson, "{fault}");
        assert!(
            told.contains("cannot be read as JSON") && told.contains(" line "),
            "{fault}"
        );
    }
    assert_eq!(Plan::from_json("3").expect_err("no plan").field, "plan");
}

#[test]
fn fields_may_stand_in_any_order() {
    let last = r#"{ "length": 1.5, "surface": "grass", "kind": "flat" }"#;
    let feature: Feature = serde_json::from_str(last).expect("kind last");
    assert!(matches!(
        feature,
        Feature::Flat(Flat {
            length: 1.5,
            surface: Surface::Grass
        })
    ));
}
