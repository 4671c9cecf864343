//! A link gives back the plan it was made from, or an error; never another plan, never a panic.

use proptest::prelude::*;
use proptest::sample::Index;
use sim::link::{LinkError, MAX_CHARACTERS, decode, encode};
use sim::plan::{GroundPoint, Lie, Line, Plan, Surface, demo};
use std::panic::catch_unwind;
use tests::plans;

/// Every field with every bit of its number: equal numbers may differ in bits (0 and −0).
fn bits(plan: &Plan) -> String {
    format!("{plan:?}")
}

const ALPHABET: &str = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

proptest! {
    #[test]
    fn comes_back_bit_for_bit(plan in plans::plan()) {
        let text = encode(&plan);
        prop_assert!(text.chars().all(|c| ALPHABET.contains(c)), "{text}");
        let back = decode(&text).map_err(|e| TestCaseError::fail(e.to_string()))?;
        prop_assert_eq!(bits(&back.plan), bits(&plan));
        prop_assert_eq!(back.model_version, sim::constants::MODEL_VERSION);
        let hashed = decode(&format!("#{text}"));
        prop_assert_eq!(hashed.map(|d| bits(&d.plan)), Ok(bits(&plan)));
    }

    #[test]
    fn one_changed_character_is_noticed(
        plan in plans::plan(), place in any::<Index>(), other in any::<char>(), ours in any::<Index>(),
    ) {
        let text = encode(&plan);
        let place = place.index(text.len());
        let near = char::from(ALPHABET.as_bytes()[ours.index(64)]);
        for changed in [other, near] {
            let mut chars: Vec<char> = text.chars().collect();
            if chars[place] != changed {
                chars[place] = changed;
                prop_assert!(decode(&chars.into_iter().collect::<String>()).is_err());
            }
        }
    }

    #[test]
    fn a_cut_is_noticed(plan in plans::plan(), at in any::<Index>()) {
        let text = encode(&plan);
        let end = decode(&text[..at.index(text.len())]);
        prop_assert!(matches!(end, Err(LinkError::CutShort | LinkError::NotALink)), "{end:?}");
        prop_assert!(decode(&text[at.index(text.len() - 1) + 1..]).is_err());
    }

    #[test]
    fn two_swapped_stretches_are_noticed(plan in plans::plan(), at in any::<Index>()) {
        let text = encode(&plan);
        let (head, tail) = text.split_at(at.index(text.len()));
        let swapped = format!("{tail}{head}");
        prop_assert!(swapped == text || decode(&swapped).is_err());
        let longer = format!("{text}{head}A");
        prop_assert!(decode(&longer).is_err());
    }

    #[test]
    fn any_text_gives_an_answer(text in ".{0,300}", ours in "[A-Za-z0-9_-]{0,300}") {
        prop_assert!(decode(&text).is_err());
        prop_assert!(decode(&ours).is_err());
    }
}

#[test]
fn every_change_to_the_demo_is_noticed() {
    let text = encode(&demo());
    for place in 0..text.len() {
        for other in ALPHABET.chars().filter(|&c| !text[place..].starts_with(c)) {
            let mut changed = text.clone();
            changed.replace_range(place..=place, &other.to_string());
            let answer = catch_unwind(|| decode(&changed)).expect("no panic");
            assert!(answer.is_err(), "{place} {other}");
        }
        let cut = decode(&text[..place]);
        assert!(
            matches!(cut, Err(LinkError::CutShort | LinkError::NotALink)),
            "{place} {cut:?}"
        );
    }
}

#[test]
fn the_demo_takes_fewer_than_300_characters() {
    let text = encode(&demo());
    println!("the demo's link: {} characters: {text}", text.len());
    assert!(text.len() < 300, "{}", text.len());
}

#[test]
fn errors_say_what_happened() {
    let text = encode(&demo());
    let long = "s".repeat(MAX_CHARACTERS + 1);
    let cases = [
        ("", LinkError::NotALink),
        ("settings", LinkError::NotALink),
        (&text[..text.len() - 5], LinkError::CutShort),
        (&format!("{text}*"), LinkError::Damaged),
        (
            &format!("{}A{}", &text[..40], &text[41..]),
            LinkError::Damaged,
        ),
        (&long, LinkError::TooLong { given: long.len() }),
    ];
    for (given, expected) in cases {
        assert_eq!(decode(given), Err(expected), "{given}");
        assert!(expected.to_string().len() > 20, "{expected}");
    }
}

/// As many points, riders and letters as a plan may have, and no number that is short.
#[test]
fn the_largest_plan_fits() {
    let odd = |i: usize| 1.0 / (i as f64 + 3.0);
    let points = |count| {
        (0..count)
            .map(|i| GroundPoint::from((odd(i), -odd(i))))
            .collect()
    };
    let mut plan = demo();
    let long = "\u{1F6B2}".repeat(60);
    let mut rider = plan.riders.remove(0);
    rider.label.clone_from(&long);
    plan.riders = vec![rider; 8];
    plan.name = long;
    plan.yard.lie = Lie::Surveyed(points(200));
    plan.line = Line::Surveyed {
        points: points(500),
        surface: Surface::Grass,
    };
    let text = encode(&plan);
    println!("the largest plan's link: {} characters", text.len());
    assert_eq!(decode(&text).map(|d| bits(&d.plan)), Ok(bits(&plan)));
}
