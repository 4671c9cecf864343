//! The figures on drawings are the job's own, and things stand where the figures say.

use super::*;
use crate::scene::Ink;
use glam::DVec2;
use sim::build::stakes::Stake;

/// Everything that stands on a drawing.
fn texts(case: &Case, what: What) -> Vec<String> {
    let plate = case.plate(what).expect("there is such a sheet");
    let text = |mark: &Mark| match mark {
        Mark::Text { label, .. } => Some(plate.labels.text(*label).to_owned()),
        _ => None,
    };
    plate.sheet.marks.iter().filter_map(text).collect()
}

/// That each of some figures stands there, as often as it is given.
fn all_stand(case: &Case, what: What, wanted: Vec<String>) {
    let mut texts = texts(case, what);
    for figure in wanted {
        let found = texts.iter().position(|t| *t == figure);
        let Some(at) = found else {
            panic!("{}: no {figure} in {texts:?} of {what:?}", case.name);
        };
        texts.swap_remove(at);
    }
}

fn m(length: f64) -> String {
    format!("{length:.2} m").replace("-0.00", "0.00")
}

fn mm(length: f64) -> String {
    format!("{:.0} mm", 1000.0 * length)
}

fn cases() -> impl Iterator<Item = Case> {
    let case = |name| Case::of(name, System::Metric, Supplies::default());
    FULL.into_iter().map(case)
}

#[test]
fn a_lip_has_its_own() {
    for case in cases() {
        for (sheet, lip) in case.works.job.lips.iter().enumerate() {
            let t = &lip.template;
            let mut wanted = vec![mm(t.run), mm(t.height)];
            wanted.push(format!("{:.1}°", sim::num::degrees(t.exit)).replace(".0°", "°"));
            for station in &t.stations {
                wanted.push(mm(station.at.along));
                wanted.extend((station.at.rise > 5e-4).then(|| mm(station.at.rise)));
            }
            let wood = t.stretches.iter().rev().filter(|s| s.wood);
            let string = wood.filter_map(|s| s.string).next().expect("an arc");
            wanted.extend([mm(string.centre.rise), format!("R {}", mm(string.radius))]);
            let panels = &lip.lip_box.as_ref().expect("high enough").panels;
            wanted.push(format!("r {}", mm(panels.string.expect("an arc"))));
            all_stand(&case, What::Lip { sheet }, wanted);
        }
    }
}

#[test]
fn a_cutting_plan_has_every_cut() {
    for case in cases() {
        for (sheet, lip) in case.works.job.lips.iter().enumerate() {
            let mut wanted: Vec<String> = Vec::new();
            let mut seen: Vec<&sim::build::cutting::Board> = Vec::new();
            for board in lip.cutting.iter().flat_map(|c| &c.boards) {
                if !seen.contains(&board) {
                    seen.push(board);
                    wanted.extend(board.cuts.iter().map(|c| mm(*c)));
                    wanted.push(mm(board.length));
                }
            }
            all_stand(&case, What::Cutting { sheet }, wanted);
        }
    }
}

#[test]
fn a_box_has_its_own() {
    for case in cases() {
        for (sheet, b) in case.works.job.boxes.iter().enumerate() {
            let corner = b.front.posts[0].depth.max(b.side.posts[0].depth);
            let last = &b.side.posts[b.side.posts.len() - 1];
            let mut wanted = vec![m(b.height), m(b.height), m(b.length), m(b.width)];
            wanted.extend([m(corner), m(corner), m(last.depth), m(last.height)]);
            let inner = b.front.posts.len() > 2;
            wanted.extend(inner.then(|| m(b.front.posts[1].depth)));
            wanted.extend(b.side.posts.iter().skip(1).map(|_| m(b.side.spacing)));
            if let Some(anchors) = &b.anchors {
                wanted.push(m(anchors.distance));
                wanted.extend((anchors.dug > 0.0).then(|| m(anchors.dug)));
            }
            all_stand(&case, What::Box { sheet }, wanted);
        }
    }
}

#[test]
fn mounds_and_ramp_have_their_own() {
    for case in cases() {
        let job = &case.works.job;
        for (index, boxed) in job.dirt.boxed.iter().enumerate() {
            let feet = [&boxed.walls, &boxed.mound].map(|h| m(h.foot));
            let tops = [&boxed.walls, &boxed.mound].map(|h| m(h.top));
            all_stand(&case, What::Mounds { index }, [feet, tops].concat());
        }
        let ramp = job.ramp.as_ref().expect("of wood");
        let mut wanted = vec![m(ramp.shape.run), m(ramp.shape.platform)];
        wanted.push(format!("R {}", m(ramp.shape.hollow[0])));
        wanted.extend(ramp.frame.rows.iter().map(|r| format!("D {}", m(r.post))));
        wanted.extend(ramp.frame.stretches.iter().map(|s| m(s.to - s.from)));
        wanted.extend(ramp.rails.iter().flat_map(|r| [m(r.height), m(r.to)]));
        wanted.extend(ramp.stair.iter().flat_map(|s| [m(s.rise), m(s.going)]));
        all_stand(&case, What::Ramp {}, wanted);
    }
}

#[test]
fn stakes_have_their_number_and_height_and_stand_at_their_stations() {
    for case in cases() {
        let stakes = &case.works.job.stakes;
        for [from, to] in works::parts(&case.works.profile, stakes) {
            let what = What::Section {
                from: Some(from),
                to: Some(to),
            };
            let within = |s: f64| s >= from - 1e-6 && s <= to + 1e-6;
            let shown: Vec<_> = (1..)
                .zip(stakes)
                .filter(|(_, s)| within(s.station))
                .collect();
            let figures = shown.iter().flat_map(|(i, s)| [i.to_string(), m(s.height)]);
            all_stand(&case, what, figures.collect());
            let plate = case.plate(what).expect("a section");
            let disc = |mark: &Mark| match mark {
                Mark::Ring { centre, radius, .. } if *radius == 2.6 => Some(*centre),
                _ => None,
            };
            let discs: Vec<_> = plate.sheet.marks.iter().filter_map(disc).collect();
            assert_eq!(discs.len(), shown.len());
            let world = |(_, s): &(i32, &Stake)| DVec2::new(s.station, -s.ground - s.height);
            let [a, b] = [&shown[0], &shown[shown.len() - 1]].map(world);
            let px = discs[discs.len() - 1] - discs[0];
            if b.x - a.x < 1.0 {
                continue;
            }
            // One scale, along and up.
            let scale = px.x / (b.x - a.x);
            for (disc, stake) in discs.iter().zip(&shown) {
                let off = (*disc - discs[0]) - (world(stake) - a) * scale;
                assert!(off.length() < 0.01, "{}: {off}", case.name);
            }
        }
    }
}

#[test]
fn a_drawn_lip_is_round() {
    for case in cases() {
        for (sheet, lip) in case.works.job.lips.iter().enumerate() {
            let plate = case.plate(What::Lip { sheet }).expect("a lip");
            let curve = |mark: &Mark| match mark {
                Mark::Line {
                    ink: Ink::Ground,
                    width,
                    points,
                    ..
                } if *width == 2.4 => Some(plate.sheet.points[points.clone()].to_vec()),
                _ => None,
            };
            let wood = || lip.template.stretches.iter().filter(|s| s.wood);
            let curves: Vec<_> = plate.sheet.marks.iter().filter_map(curve).collect();
            assert_eq!(curves.len(), wood().count());
            for (stretch, points) in wood().zip(curves) {
                let Some(string) = &stretch.string else {
                    continue;
                };
                let (first, last) = (points[0], points[points.len() - 1]);
                let scale = (last.x - first.x) / (stretch.to.along - stretch.from.along);
                let to = DVec2::new(
                    string.centre.along - stretch.from.along,
                    stretch.from.rise - string.centre.rise,
                );
                let centre = first + to * scale;
                for p in points {
                    let off = (p - centre).length() - string.radius * scale;
                    assert!(off.abs() < 0.3, "{}: {off} px", case.name);
                }
            }
        }
    }
}

#[test]
fn readers_have_their_own_signs() {
    let mut case = Case::of("orchard", System::Metric, Supplies::default());
    case.wants.decimal = ',';
    let comma = texts(&case, What::Box { sheet: 0 });
    assert!(comma.contains(&"0,80 m".to_owned()) && !comma.iter().any(|t| t.contains('.')));
    case.wants.system = System::Feet;
    // 0.8 m are 31.496 inches, to the nearest quarter 2 feet 7 1/2.
    let feet = texts(&case, What::Box { sheet: 0 });
    assert!(feet.contains(&"2' 7 1/2\"".to_owned()), "{feet:?}");
}
