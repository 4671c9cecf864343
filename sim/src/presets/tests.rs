//! Whole presets.

use super::*;
use serde_json::Value;

fn choice(age: u32, sex: Sex) -> Choice {
    Choice {
        label: "Somebody".into(),
        age,
        sex,
        wheel: None,
        tread: Tread::Smooth,
        posture: None,
        style: Style::Absorbing,
        skill: None,
    }
}

/// A boy of seven on 16 inches: 23.17 kg and 122.03 cm by the CDC charts, rounded; 305 mm by
/// ISO 5775; the mean of 0.0293 and 0.0276 times H^0.725 m^0.425 and of 0.0604 and 0.1647 times 1.1.
#[test]
fn a_boy_of_seven_is_made_of_the_published_numbers() {
    let wheel = Some(Wheel::In16);
    let made = preset(&Choice {
        wheel,
        ..choice(7, Sex::Boy)
    });
    let Mount { rider, bike, .. } = made.expect("seven is on the charts").mount;
    assert_eq!([rider.mass, rider.stature], [23.2, 1.22]);
    assert_eq!(bike.bead_seat, 0.305);
    // 1.2203^0.725 × 23.167^0.425 = 1.15529 × 3.80253 = 4.39301
    let worked = 1.1 * (0.02845 * 4.39301 + 0.11255);
    assert!((rider.drag_area - worked).abs() <= 0.0025, "{worked}");
}

/// Whatever is chosen can be ridden: no field is out of range.
#[test]
fn every_preset_is_sound() {
    let mut plan = plan::one_jump();
    for age in AGES {
        for sex in [Sex::Girl, Sex::Boy, Sex::Either] {
            for wheel in Wheel::ALL.map(Some).into_iter().chain([None]) {
                for tread in [Tread::Smooth, Tread::Knobby] {
                    let choice = Choice {
                        wheel,
                        tread,
                        ..choice(age, sex)
                    };
                    plan.riders = vec![preset(&choice).expect("on the charts").mount];
                    assert_eq!(plan.field_faults(), [], "{choice:?}");
                }
            }
        }
    }
}

/// Every number in a mount, by its path.
fn numbers(value: &Value, path: &str, all: &mut Vec<String>) {
    match value {
        Value::Object(inner) => {
            for (name, value) in inner {
                let path = if path.is_empty() {
                    name.clone()
                } else {
                    format!("{path}.{name}")
                };
                numbers(value, &path, all);
            }
        }
        Value::Number(_) => all.push(path.to_owned()),
        _ => {}
    }
}

#[test]
fn every_number_has_its_note() {
    let made = preset(&choice(10, Sex::Either)).expect("ten is on the charts");
    let mut found = Vec::new();
    let mount = serde_json::to_value(&made.mount).expect("plain data");
    numbers(&mount, "", &mut found);
    let mut noted: Vec<_> = made.notes.iter().map(|n| n.field.to_owned()).collect();
    found.sort();
    noted.sort();
    assert_eq!(found, noted);
}

#[test]
fn what_is_chosen_is_kept() {
    let made = preset(&Choice {
        posture: Some(1.0),
        style: Style::Pumping,
        skill: Some(0.3),
        ..choice(10, Sex::Girl)
    });
    let tall = made.expect("ten is on the charts").mount.rider;
    assert_eq!(
        (tall.posture, tall.style, tall.skill),
        (1.0, Style::Pumping, 0.3)
    );
    let usual = preset(&choice(10, Sex::Girl)).expect("ten is on the charts");
    assert!(tall.drag_area > usual.mount.rider.drag_area);
}

#[test]
fn an_age_beyond_the_charts_is_a_fault() {
    let fault = preset(&choice(21, Sex::Girl)).expect_err("the charts end at 20");
    assert_eq!(
        fault.to_string(),
        "age: the growth charts have no such age; given 21; accepted 2 to 20"
    );
}
