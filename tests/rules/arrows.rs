//! What may use what: the arrows point one way.

use super::tree;

/// A module with every other module of its crate that it may use.
type May = (&'static str, &'static [&'static str]);

const SIM: &[May] = &[
    ("constants", &[]),
    ("json", &["error"]),
    ("num", &[]),
    ("error", &[]),
    ("units", &["error", "num"]),
    ("plan", &["constants", "error", "json", "num", "units"]),
    ("presets", &["constants", "error", "num", "plan"]),
    ("profile", &["constants", "error", "num", "plan"]),
    ("body", &["num"]),
    // The rider knows bodies and ground, and gives forces.
    ("rider", &["body", "constants", "num", "profile"]),
    // The ride knows ground and masses, no plan: it can be tried on a bare arc.
    (
        "ride",
        &["body", "constants", "error", "num", "profile", "rider"],
    ),
    (
        "setup",
        &["constants", "error", "num", "plan", "profile", "ride"],
    ),
    (
        "judge",
        &[
            "constants",
            "error",
            "num",
            "plan",
            "profile",
            "ride",
            "setup",
        ],
    ),
    (
        "fit",
        &[
            "constants",
            "error",
            "judge",
            "num",
            "plan",
            "profile",
            "ride",
            "setup",
        ],
    ),
    ("link", &["constants", "plan"]),
    ("limits", &[]),
    (
        "build",
        &["constants", "error", "num", "plan", "presets", "profile"],
    ),
    (
        "draft",
        &[
            "error", "judge", "num", "plan", "presets", "profile", "setup",
        ],
    ),
];

const WEB: &[May] = &[
    ("host", &[]),
    ("chance", &[]),
    ("scene", &[]),
    ("paint", &["scene"]),
    ("story", &["scene"]),
];

/// The modules that a text names behind `crate::`.
fn used(text: &str) -> Vec<&str> {
    let ident = |s: &'_ str| {
        s.find(|c: char| !c.is_alphanumeric() && c != '_')
            .unwrap_or(s.len())
    };
    let mut names = Vec::new();
    for rest in text.split("crate::").skip(1) {
        let Some(group) = rest.strip_prefix('{') else {
            names.push(&rest[..ident(rest)]);
            continue;
        };
        let mut depth = 1;
        let mut fresh = true;
        for (at, c) in group.char_indices() {
            match c {
                '{' => depth += 1,
                '}' => depth -= 1,
                ',' if depth == 1 => fresh = true,
                c if fresh && depth == 1 && !c.is_whitespace() => {
                    names.push(&group[at..at + ident(&group[at..])]);
                    fresh = false;
                }
                _ => {}
            }
            if depth == 0 {
                break;
            }
        }
    }
    names
}

fn check(source: &str, rules: &[May]) {
    let mut seen = 0;
    for (name, text) in tree::sources() {
        let Some(inner) = name.strip_prefix(source) else {
            continue;
        };
        let module = inner.split(['/', '.']).next().unwrap_or_default();
        let Some((_, may)) = rules.iter().find(|(known, _)| *known == module) else {
            assert!(
                ["lib", "main"].contains(&module) || source != "sim/src/",
                "{name} has no rule"
            );
            continue;
        };
        seen += 1;
        for other in used(&text) {
            // Types named at the top of the crate begin with a capital, macros are not modules.
            let fine =
                other == module || may.contains(&other) || !rules.iter().any(|r| r.0 == other);
            assert!(fine, "{name} uses {other}; it may use {may:?}");
        }
    }
    assert!(seen > 0, "no module of {source} was found");
}

#[test]
fn the_simulator_points_one_way() {
    check("sim/src/", SIM);
}

#[test]
fn the_page_points_one_way() {
    check("web/src/", WEB);
}

/// The arithmetic that every machine agrees on has one door.
#[test]
fn only_one_file_calls_the_library_of_functions() {
    for (name, text) in tree::sources() {
        if name.starts_with("sim/src/") && name != "sim/src/num.rs" {
            assert!(!text.contains("libm::"), "{name} goes round num.rs");
        }
    }
}

#[test]
fn groups_of_uses_are_read() {
    let text = "use crate::{num::{self, PI}, plan::Surface}; crate::ride::ride()";
    assert_eq!(used(text), ["num", "plan", "ride"]);
}
