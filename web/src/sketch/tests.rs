mod figures;
mod full_size;

use super::*;
use crate::scene::Mark;
use roxmltree::Document;
use sim::build::lip::DeckKind;
use sim::build::supplies::{PaperKind, Supplies};
use sim::plan::{Feature, Line, Plan, Surface};
use sim::profile::Profile;

/// A line with everything that it takes to draw it.
struct Case {
    name: String,
    works: Works,
    wants: Wants,
}

/// Every plan file, and the three of them that have all there is to draw.
const PLANS: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../sim/plans");
const FULL: [&str; 3] = ["orchard", "three_tables", "steps"];

/// A line of a plan file with landings in boxes, and lips and the start ramp of wood.
fn built(name: &str) -> Plan {
    let text = std::fs::read_to_string(format!("{PLANS}/{name}.json")).expect("a file of ours");
    let mut plan = Plan::from_json(&text).expect("a plan of ours");
    let Line::Features(features) = &mut plan.line else {
        return plan;
    };
    for feature in features {
        match feature {
            Feature::Jump(jump) => {
                jump.lip.surface = Surface::Wood;
                jump.landing.boxed = jump.landing.surface != Surface::Wood;
            }
            Feature::StartRamp(ramp) => ramp.surface = Surface::Wood,
            _ => {}
        }
    }
    plan
}

impl Case {
    fn of(name: &str, system: System, supplies: Supplies) -> Self {
        let works = Works::of(built(name), supplies).expect("it can be built");
        let wants = Wants {
            system,
            decimal: '.',
            readings: readings(&works.profile),
        };
        let name = name.to_owned();
        Case { name, works, wants }
    }

    /// Every plan file in both systems, with what is usual and with other supplies.
    fn all() -> Vec<Case> {
        let files = std::fs::read_dir(PLANS).expect("a folder of ours");
        let names = files.filter_map(|f| {
            let name = f.ok()?.file_name().into_string().ok()?;
            Some(name.strip_suffix(".json")?.to_owned())
        });
        let mut names: Vec<_> = names.collect();
        names.sort();
        let other = Supplies {
            paper: PaperKind::Letter,
            deck: DeckKind::Boards,
            sheet: [1.5, 1.25],
            lengths: vec![2.0],
            ..Supplies::default()
        };
        let mut all = Vec::new();
        for name in names {
            for system in [System::Metric, System::Feet] {
                all.push(Case::of(&name, system, Supplies::default()));
            }
            all.push(Case::of(&name, System::Feet, other.clone()));
        }
        all
    }

    fn plate(&self, what: What) -> Option<Plate> {
        plate(&self.works, what, &self.wants)
    }

    fn svg(&self, what: What) -> Option<String> {
        svg(&self.works, what, &self.wants)
    }

    /// Everything that there is to draw of it.
    fn drawings(&self) -> Vec<(String, What)> {
        let Works { job, profile, .. } = &self.works;
        let (from, to) = (None, None);
        let mut all = vec![
            ("section".to_owned(), What::Section { from, to }),
            ("built".to_owned(), What::Built {}),
        ];
        all.extend(job.ramp.iter().map(|_| ("ramp".to_owned(), What::Ramp {})));
        let parts = works::parts(profile, &job.stakes);
        for (i, [from, to]) in parts.into_iter().enumerate() {
            let (from, to) = (Some(from), Some(to));
            all.push((format!("section{i}"), What::Section { from, to }));
        }
        for (sheet, lip) in job.lips.iter().enumerate() {
            all.push((format!("lip{sheet}"), What::Lip { sheet }));
            all.push((format!("panels{sheet}"), What::Panels { sheet }));
            all.push((format!("cutting{sheet}"), What::Cutting { sheet }));
            let Some(lip_box) = &lip.lip_box else {
                continue;
            };
            all.push((format!("curve{sheet}"), What::Curve { sheet }));
            for page in 0..lip_box.panels.tiling.pages.len() {
                all.push((format!("tile{sheet}_{page}"), What::Tile { sheet, page }));
            }
        }
        let boxes = 0..job.boxes.len();
        all.extend(boxes.map(|sheet| (format!("box{sheet}"), What::Box { sheet })));
        let mounds = 0..job.dirt.boxed.len();
        all.extend(mounds.map(|index| (format!("mounds{index}"), What::Mounds { index })));
        all
    }
}

/// A line built up to 6 cm off.
fn readings(profile: &Profile) -> Vec<[f64; 2]> {
    let at = |i: u32| {
        let x = 0.7 * f64::from(i) + 0.3;
        let off = 0.06 * sim::num::sin(2.3 * f64::from(i));
        Some([x, profile.height_at(x)? + off])
    };
    (0..90).filter_map(at).collect()
}

/// Leaves all drawings in the folder that is named, to be looked at.
#[test]
fn drawings_are_left_to_be_looked_at() {
    let Ok(to) = std::env::var("DRAWINGS") else {
        return;
    };
    for case in Case::all() {
        let other = if case.works.supplies.deck == DeckKind::Boards {
            "_other"
        } else {
            ""
        };
        let system = if case.wants.system == System::Feet {
            "_feet"
        } else {
            ""
        };
        for (kind, what) in case.drawings() {
            let svg = case.svg(what).expect("there is such a sheet");
            let file = format!("{to}/{}_{kind}{system}{other}.svg", case.name);
            std::fs::write(file, svg).expect("the folder is there");
        }
    }
}

#[test]
fn every_drawing_is_xml_without_words_in_it() {
    for case in Case::all() {
        for (kind, what) in case.drawings() {
            let svg = case.svg(what).expect("there is such a sheet");
            let svg = Document::parse(&svg).unwrap_or_else(|e| panic!("{} {kind}: {e}", case.name));
            let texts = svg.descendants().filter(|n| n.has_tag_name("text"));
            for text in texts.filter_map(|n| n.text()) {
                let word = text.split(|c: char| !c.is_alphabetic());
                let long = word.map(|w| w.chars().count()).max().unwrap_or(0);
                assert!(long <= 2, "{} {kind}: {text}", case.name);
            }
        }
    }
}

#[test]
fn everything_lies_on_the_sheet_and_nothing_written_is_written_over() {
    let (mut texts, mut sheets) = (0, 0);
    for case in Case::all() {
        for (kind, what) in case.drawings() {
            let plate = case.plate(what).expect("there is such a sheet");
            sheets += 1;
            let mut written: Vec<([glam::DVec2; 2], &str)> = Vec::new();
            for mark in &plate.sheet.marks {
                let [low, high] = plate.bounds(mark);
                let on = low.min_element() >= -0.01 && (plate.size - high).min_element() >= -0.01;
                let name = &case.name;
                assert!(
                    on,
                    "{name} {kind} {:?}: {mark:?} on {}",
                    case.wants.system, plate.size
                );
                if let Mark::Text { size, label, .. } = mark {
                    assert!(*size >= 12.0);
                    let text = plate.labels.text(*label);
                    for ([a, b], other) in &written {
                        let apart = high.x <= a.x || b.x <= low.x || high.y <= a.y || b.y <= low.y;
                        assert!(
                            apart,
                            "{name} {kind} {:?}: {text} on {other}",
                            case.wants.system
                        );
                    }
                    written.push(([low, high], text));
                }
                if let Mark::Line { width, .. } = mark {
                    assert!(*width >= 0.5, "{kind}: {width}");
                }
            }
            texts += written.len();
            assert!(!written.is_empty(), "{} {kind}", case.name);
            // A page of Letter is 9 inches high between its margins where 7.1 are 680 px wide: 860 px.
            let paged =
                matches!(what, What::Tile { .. } | What::Curve { .. }) || plate.size.y < 860.0;
            assert!(paged, "{} {kind}: {}", case.name, plate.size.y);
        }
    }
    println!("{sheets} sheets, {texts} texts");
    assert!(sheets > 300 && texts > 5000);
}

#[test]
fn what_there_is_none_of_is_not_drawn() {
    let case = Case::of("orchard", System::Metric, Supplies::default());
    let (sheet, page, index) = (99, 99, 99);
    let none = [
        What::Lip { sheet },
        What::Panels { sheet },
        What::Curve { sheet },
        What::Cutting { sheet },
        What::Box { sheet },
        What::Mounds { index },
        What::Tile { sheet: 0, page },
    ];
    assert!(none.into_iter().all(|what| case.svg(what).is_none()));
}

#[test]
fn a_part_goes_from_stake_to_stake_and_all_of_them_over_the_line() {
    for name in FULL {
        let case = Case::of(name, System::Metric, Supplies::default());
        let stakes = &case.works.job.stakes;
        let parts = works::parts(&case.works.profile, stakes);
        assert_eq!(parts[0][0], stakes[0].station);
        assert_eq!(
            parts[parts.len() - 1][1],
            case.works.profile.pieces.last().unwrap().end.x
        );
        assert!(parts.windows(2).all(|p| p[0][1] == p[1][0]));
        for [from, to] in &parts {
            assert!(
                to - from > 5.0 && to - from < 18.0,
                "{name}: {from} to {to}"
            );
        }
        let near = |x: f64| {
            stakes
                .iter()
                .map(|s| (s.station - x).abs())
                .fold(99.0, f64::min)
        };
        let at_stakes = parts.iter().filter(|p| near(p[1]) < 1e-6).count();
        assert!(at_stakes + 1 >= parts.len(), "{name}");
    }
}

#[test]
fn what_the_page_asks_for_is_understood() {
    for text in [
        r#"{ "kind": "section" }"#,
        r#"{ "kind": "section", "from": 1.5, "to": 12 }"#,
        r#"{ "kind": "lip", "sheet": 1 }"#,
        r#"{ "kind": "tile", "sheet": 1, "page": 0 }"#,
        r#"{ "kind": "mounds", "index": 1 }"#,
        r#"{ "kind": "box", "sheet": 0 }"#,
        r#"{ "kind": "ramp" }"#,
        r#"{ "kind": "built" }"#,
    ] {
        assert!(serde_json::from_str::<What>(text).is_ok(), "{text}");
    }
    assert!(serde_json::from_str::<What>(r#"{ "kind": "ramp", "sheet": 0 }"#).is_err());
    let wants = r#"{ "system": "feet", "decimal": ",", "readings": [[1, 0.5]] }"#;
    let wants: Wants = serde_json::from_str(wants).expect("as agreed");
    assert_eq!((wants.decimal, wants.readings.len()), (',', 1));
}
