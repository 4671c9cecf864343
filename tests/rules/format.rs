//! The description of plan files says what the reader of plan files does.

use super::tree;
use serde_json::Value;
use sim::plan::*;
use std::collections::BTreeMap;
use std::fs;

/// What the description says of a field.
struct Row {
    accepted: String,
    left_out: String,
}

/// The description's table, by field.
fn described() -> BTreeMap<String, Row> {
    let text = fs::read_to_string(tree::path("sim/plans/README.md")).expect("it is there");
    let mut rows = BTreeMap::new();
    for line in text.lines().filter(|line| line.starts_with("| `")) {
        let cells: Vec<_> = line.split('|').map(str::trim).collect();
        let [_, field, _, accepted, left_out, _] = cells[..] else {
            panic!("a row of {} cells: {line}", cells.len());
        };
        let row = Row {
            accepted: accepted.to_owned(),
            left_out: left_out.to_owned(),
        };
        let field = field.trim_matches('`').to_owned();
        assert!(rows.insert(field, row).is_none(), "twice: {line}");
    }
    rows
}

/// Every field of every struct, named one by one: a new one does not compile before it stands here.
fn features() -> Vec<Feature> {
    let surface = Surface::Gravel;
    vec![
        Feature::StartRamp(StartRamp {
            platform_height: 1.5,
            angle_deg: 30.0,
            bottom_radius: 3.0,
            edge_radius: 0.5,
            push_off: 1.0,
            surface,
            width: Some(1.0),
        }),
        Feature::Flat(Flat {
            length: 2.0,
            surface,
        }),
        Feature::Roller(Roller {
            height: 0.2,
            length: 3.0,
            count: 2,
            surface,
            width: Some(1.0),
        }),
        Feature::Jump(jump()),
        Feature::Turn(Turn {
            radius: 4.0,
            sweep_deg: 90.0,
            bank_deg: 20.0,
            surface,
            width: Some(1.0),
        }),
        Feature::RunOut(RunOut {
            length: 8.0,
            surface,
        }),
    ]
}

fn jump() -> Jump {
    let surface = Surface::Gravel;
    let lip = Lip {
        height: 0.5,
        radius: 2.5,
        lead_in: Some(LeadIn {
            angle_deg: 10.0,
            length: 0.3,
        }),
        straight_end: Some(0.2),
        surface,
        width: Some(1.0),
    };
    let landing = Landing {
        height: 0.5,
        angle_deg: 15.0,
        knuckle_radius: 0.6,
        bottom_radius: 3.0,
        length: Some(3.0),
        surface,
        boxed: false,
        width: Some(1.0),
    };
    Jump {
        lip,
        gap: 1.0,
        decked: true,
        landing,
    }
}

fn mount() -> Mount {
    let rider = Rider {
        mass: 32.0,
        stature: 1.4,
        posture: 0.6,
        drag_area: 0.3,
        style: Style::Passive,
        skill: 0.7,
    };
    let rolling = Rolling {
        wood: 0.01,
        paved: 0.01,
        packed: 0.01,
        gravel: 0.01,
        grass: 0.01,
        soft: 0.01,
    };
    let bike = Bike {
        mass: 9.5,
        wheelbase: 0.9,
        bead_seat: 0.406,
        tyre_width: 0.05,
        tyre_pressure: 250_000.0,
        tyre_stiffness: Some(80_000.0),
        wheel_mass: 1.3,
        wheel_inertia: 0.06,
        rolling,
    };
    Mount {
        label: "Somebody".to_owned(),
        rider,
        bike,
    }
}

/// Two plans that have every field between them, as plan files hold them.
fn full() -> [Value; 2] {
    let point = |station| GroundPoint {
        station,
        elevation: 0.0,
    };
    let points = vec![point(0.0), point(60.0)];
    let plan = |lie, line| Plan {
        name: "A line".to_owned(),
        yard: Yard {
            length: 50.0,
            lie,
            tallest: Some(2.0),
            soil: Default::default(),
        },
        line,
        riders: vec![mount()],
        weather: Weather {
            altitude: 1.0,
            temperature: 1.0,
            tailwind: 1.0,
            ground: Ground::Damp,
        },
        initial_speed: Some(3.0),
        // What was seen is described apart from the table: see the end of the description.
        seen: Vec::new(),
        seed: 7,
        width: 1.5,
    };
    let surveyed = Line::Surveyed {
        points: points.clone(),
        surface: Surface::Gravel,
    };
    [
        plan(Lie::Grade(0.0), Line::Features(features())),
        plan(Lie::Surveyed(points), surveyed),
    ]
    .map(|plan| serde_json::to_value(plan).expect("plain data"))
}

/// A place in a file: as the description names it, and as JSON pointers do (RFC 6901).
struct Place {
    field: String,
    pointer: String,
}

fn walk(value: &Value, place: Place, places: &mut Vec<Place>) {
    let Place { field, pointer } = &place;
    let inside = |name: String, key: &str| Place {
        field: name,
        pointer: format!("{pointer}/{key}"),
    };
    match value {
        Value::Object(all) => {
            for (key, value) in all {
                let dot = if field.is_empty() { "" } else { "." };
                // The kind is a field of every feature, whatever it is.
                let name = match field.strip_prefix("line.features[") {
                    Some(_) if key == "kind" => "line.features[].kind".to_owned(),
                    _ => format!("{field}{dot}{key}"),
                };
                walk(value, inside(name, key), places);
            }
        }
        Value::Array(all) => {
            for (i, value) in all.iter().enumerate() {
                let name = match value.get("kind") {
                    Some(kind) => format!("{field}[{}]", kind.as_str().expect("a text")),
                    // The two numbers of a point are no list of things.
                    None if value.is_number() => format!("{field}[{i}]"),
                    None => format!("{field}[]"),
                };
                walk(value, inside(name, &i.to_string()), places);
            }
        }
        _ => {}
    }
    places.push(place);
}

/// Every place of both plans whose field is described or ought to be.
fn places() -> Vec<(Value, Place)> {
    let mut all = Vec::new();
    for plan in full() {
        let mut places = Vec::new();
        let (field, pointer) = (String::new(), String::new());
        walk(&plan, Place { field, pointer }, &mut places);
        places.retain(|p| {
            !p.field.is_empty() && !p.field.ends_with(']')
                || p.field.ends_with("[0]")
                || p.field.ends_with("[1]")
        });
        // A yard is described by its parts.
        places.retain(|p| p.field != "yard");
        all.extend(places.into_iter().map(|place| (plan.clone(), place)));
    }
    all
}

#[test]
fn every_field_is_described_and_no_other() {
    let mut there: Vec<_> = places().into_iter().map(|(_, place)| place.field).collect();
    there.sort();
    there.dedup();
    let told: Vec<_> = described().into_keys().collect();
    let missing: Vec<_> = there.iter().filter(|f| !told.contains(f)).collect();
    let invented: Vec<_> = told.iter().filter(|f| !there.contains(f)).collect();
    assert!(
        missing.is_empty() && invented.is_empty(),
        "missing {missing:?}, invented {invented:?}"
    );
}

/// Takes a field out of a plan.
fn without(plan: &Value, pointer: &str) -> Value {
    let mut plan = plan.clone();
    let (parent, key) = pointer.rsplit_once('/').expect("a pointer");
    match plan.pointer_mut(parent).expect("it is there") {
        Value::Object(all) => drop(all.remove(key)),
        Value::Array(all) => drop(all.remove(key.parse().expect("an index"))),
        _ => unreachable!("only objects and lists hold something"),
    }
    plan
}

#[test]
fn what_is_left_out_is_what_the_description_says() {
    let described = described();
    let mut checked = 0;
    for (plan, Place { field, pointer }) in places() {
        let Some(Row { left_out, .. }) = described.get(&field) else {
            continue;
        };
        let read = Plan::from_json(&without(&plan, &pointer).to_string());
        checked += 1;
        let Ok(read) = read else {
            assert_eq!(left_out, "needed", "{field}: {read:?}");
            continue;
        };
        let written = serde_json::to_value(read).expect("plain data");
        match written.pointer(&pointer) {
            None => assert_eq!(left_out, "nothing", "{field}"),
            Some(Value::Object(_)) => assert_eq!(left_out, "all as below", "{field}"),
            Some(value) => assert_eq!(*left_out, format!("`{value}`"), "{field}"),
        }
    }
    assert!(checked > 80, "{checked}");
}

/// A plan with another value at a place.
fn with(plan: &Value, pointer: &str, value: Value) -> String {
    let mut plan = plan.clone();
    *plan.pointer_mut(pointer).expect("it is there") = value;
    plan.to_string()
}

/// The path that a fault has for a place.
fn path(pointer: &str) -> String {
    let mut path = String::new();
    for key in pointer.split('/').skip(1) {
        match key.parse::<usize>() {
            Ok(i) => path += &format!("[{i}]"),
            Err(_) if path.is_empty() => path += key,
            Err(_) => path += &format!(".{key}"),
        }
    }
    path
}

/// What a plan's checks accept of a number or of a list's length, given one that is too large.
fn accepted(plan: &str, pointer: &str) -> Option<String> {
    let plan = Plan::from_json(plan).expect("it can be read");
    let field = path(pointer);
    let fault = plan.validate().into_iter().find(|f| f.field == field)?;
    Some(format!("{} to {}", fault.least?, fault.most?))
}

#[test]
fn what_is_accepted_is_what_the_description_says() {
    let described = described();
    let (mut numbers, mut lists, mut choices) = (0, 0, 0);
    for (plan, Place { field, pointer }) in places() {
        let Some(Row { accepted: told, .. }) = described.get(&field) else {
            continue;
        };
        match plan.pointer(&pointer).expect("it is there") {
            Value::Number(_) => {
                let huge = with(&plan, &pointer, serde_json::json!(1_000_000_000));
                assert_eq!(Some(told), accepted(&huge, &pointer).as_ref(), "{field}");
                numbers += 1;
            }
            Value::Array(all) => {
                let many = Value::Array(vec![all[0].clone(); 600]);
                let got = accepted(&with(&plan, &pointer, many), &pointer);
                assert_eq!(
                    Some(told),
                    got.map(|a| format!("{a} of them")).as_ref(),
                    "{field}"
                );
                lists += 1;
            }
            Value::String(_) if told != "text" => {
                let odd = with(&plan, &pointer, Value::from("odd"));
                let fault = Plan::from_json(&odd).expect_err("an odd choice");
                let named = |text: &str| -> Vec<_> {
                    text.split('`')
                        .skip(1)
                        .step_by(2)
                        .map(str::to_owned)
                        .collect()
                };
                let known: Vec<_> = named(&fault.why.to_string())
                    .into_iter()
                    .filter(|w| w != "odd")
                    .collect();
                assert_eq!(named(told), known, "{field}: {}", fault.why);
                choices += 1;
            }
            Value::Bool(_) => assert_eq!(told, "`true`, `false`", "{field}"),
            Value::String(_) | Value::Object(_) | Value::Null => {}
        }
    }
    assert!(
        numbers > 50 && lists == 5 && choices > 8,
        "{numbers} {lists} {choices}"
    );
}
