//! Lips of the demonstration, and of lines made for one thing each.

use super::super::outline::{Edge, Outline};
use super::*;
use crate::num;
use crate::plan::{self, GroundPoint, LeadIn, Lie};
use glam::DVec2;

fn sheets(plan: &Plan, stock: &Stock) -> Vec<LipSheet> {
    let profile = Profile::build(plan).expect("a sound line");
    lips(plan, &profile, stock)
}

/// The demonstration on ground of a grade, each lip changed alike.
fn demo_with(grade: f64, change: impl Fn(&mut Lip)) -> Plan {
    let mut plan = plan::demo();
    plan.yard.lie = Lie::Grade(grade);
    plan.yard.length = 200.0;
    let Line::Features(features) = &mut plan.line else {
        panic!("it has features")
    };
    for feature in features {
        if let Feature::Jump(jump) = feature {
            change(&mut jump.lip);
        }
    }
    plan
}

/// Lips of many shapes on ground of many slopes.
fn many() -> Vec<LipSheet> {
    let mut all = Vec::new();
    for grade in [-0.3, -0.04, 0.0, 0.1] {
        for (height, radius) in [(0.3, 2.0), (0.45, 2.5), (0.9, 2.4), (1.8, 3.5)] {
            for (lead, end) in [(false, 0.0), (true, 0.0), (false, 0.25)] {
                let plan = demo_with(grade, |lip| {
                    lip.height = height;
                    lip.radius = radius;
                    lip.straight_end = (end > 0.0).then_some(end);
                    lip.lead_in = lead.then_some(LeadIn {
                        angle_deg: 8.0,
                        length: 0.5,
                    });
                });
                all.extend(sheets(&plan, &Stock::default()));
            }
        }
    }
    all
}

/// An outline as a polygon, so many short sides to an edge.
fn polygon(outline: &Outline, sides: u32) -> Vec<DVec2> {
    let points = |e: &Edge| {
        let from = e.from;
        let chord = e.to - e.from;
        let centre = e.centre;
        let point = move |i: u32| {
            let p = from + chord * (f64::from(i) / f64::from(sides));
            match centre {
                Some(c) => c + (p - c).normalize() * (from - c).length(),
                None => p,
            }
        };
        (0..sides).map(point).collect::<Vec<_>>()
    };
    outline.edges.iter().flat_map(points).collect()
}

fn shoelace(points: &[DVec2]) -> f64 {
    let next = points.iter().cycle().skip(1);
    0.5 * points
        .iter()
        .zip(next)
        .map(|(a, b)| a.perp_dot(*b))
        .sum::<f64>()
}

/// Distance of a point from a polygon's boundary; negative inside.
fn outside(points: &[DVec2], p: DVec2) -> f64 {
    let (mut nearest, mut inside) = (f64::INFINITY, false);
    for (a, b) in points.iter().zip(points.iter().cycle().skip(1)) {
        let d = *b - *a;
        let t = num::clamp((p - *a).dot(d) / d.length_squared(), 0.0, 1.0);
        nearest = num::min(nearest, (*a + d * t - p).length());
        if (a.y > p.y) != (b.y > p.y) && p.x < a.x + d.x * (p.y - a.y) / d.y {
            inside = !inside;
        }
    }
    if inside { -nearest } else { nearest }
}

#[test]
fn lips_that_are_alike_are_one_sheet() {
    let plan = plan::demo();
    let all = sheets(&plan, &Stock::default());
    let features: Vec<_> = all.iter().map(|s| (s.count, s.features.clone())).collect();
    assert_eq!(features, [(2, vec![4, 6]), (1, vec![8])]);
    let mut wider = plan.clone();
    let Line::Features(features) = &mut wider.line else {
        panic!("it has features")
    };
    if let Feature::Jump(jump) = &mut features[6] {
        jump.lip.width = Some(1.5);
    }
    assert_eq!(sheets(&wider, &Stock::default()).len(), 3);
}

#[test]
fn a_lip_of_dirt_and_a_surveyed_line_have_no_sheet() {
    let dirt = demo_with(0.0, |lip| lip.surface = Surface::Packed);
    assert_eq!(sheets(&dirt, &Stock::default()), []);
    let text = include_str!("../../../plans/surveyed_line.json");
    let surveyed = Plan::from_json(text).expect("a plan file");
    assert_eq!(sheets(&surveyed, &Stock::default()), []);
}

#[test]
fn outlines_are_closed_and_have_the_area_of_their_polygon() {
    let all = many();
    let boxes = all.iter().filter_map(|s| s.lip_box.as_ref());
    let mut seen = 0;
    for panels in boxes.map(|b| &b.panels) {
        for outline in panels.parts.iter().chain([&panels.outline]) {
            let next = outline.edges.iter().cycle().skip(1);
            for (edge, next) in outline.edges.iter().zip(next) {
                assert!((edge.to - next.from).length() < 1e-8, "{outline:?}");
            }
            let area = shoelace(&polygon(outline, 400));
            assert!(
                (outline.area() - area).abs() < 1e-5,
                "{} {area}",
                outline.area()
            );
            seen += 1;
        }
        let parts: f64 = panels.parts.iter().map(Outline::area).sum();
        assert!((parts - panels.outline.area()).abs() < 1e-6);
    }
    assert!(seen > 50, "{seen}");
}

/// The deck's underside, measured square to the riding curve, lies on the panel's top.
#[test]
fn a_panel_is_the_riding_curve_less_the_deck() {
    for sheet in many() {
        let deck = sheet.deck.thickness(&Stock::default());
        let Some(b) = &sheet.lip_box else { continue };
        let wood = polygon(&b.panels.outline, 400);
        let mut seen = 0;
        for station in sheet.template.stations.iter().filter(|s| s.panel > 0.05) {
            let heading = station.heading - sheet.template.ground;
            let down = DVec2::new(num::sin(heading), -num::cos(heading));
            let on = DVec2::new(station.at.along, station.at.rise) + down * deck;
            let back = b.panels.outline.edges[1];
            if (back.to - back.from).perp_dot(on - back.from) > 1e-3 {
                assert!(outside(&wood, on).abs() < 5e-6, "{station:?}");
                seen += 1;
            }
        }
        assert!(seen > 0, "{sheet:?}");
    }
}

#[test]
fn the_back_is_plumb_below_the_edge_and_the_foot_on_the_ground() {
    for sheet in many() {
        let t = &sheet.template;
        let Some(b) = &sheet.lip_box else { continue };
        let [foot, back, ..] = b.panels.outline.edges.as_slice() else {
            panic!("an outline")
        };
        assert!(foot.from.y == 0.0 && foot.to.y.abs() < 1e-9);
        let level = |p: DVec2| p.x * num::cos(t.ground) - p.y * num::sin(t.ground);
        assert!((level(back.from) - t.run).abs() < 1e-9);
        assert!((level(back.to) - t.run).abs() < 1e-9);
        let lowered = back.length() + sheet.deck.thickness(&Stock::default());
        assert!(lowered <= t.height && t.height - lowered < 0.15);
    }
}

/// On every sheet, parts keep a kerf from each other and stay on it.
#[test]
fn nested_panels_keep_a_kerf_apart() {
    let stock = Stock::default();
    let (mut pairs, mut sheets) = (0, 0);
    for sheet in many() {
        let Some(b) = sheet.lip_box else { continue };
        let layout = &b.panels.layout;
        let mut count = 0;
        for laid in &layout.sheets {
            let all: Vec<_> = laid
                .iter()
                .map(|l| polygon(&b.panels.parts[l.part].laid(l.at, l.quarters), 80))
                .collect();
            count += all.len();
            for (i, a) in all.iter().enumerate() {
                let on = |p: &DVec2| {
                    p.min_element() > -2e-6
                        && p.x < stock.sheet[0] + 2e-6
                        && p.y < stock.sheet[1] + 2e-6
                };
                assert!(a.iter().all(on));
                for other in all[..i].iter() {
                    let gap = a.iter().step_by(3).map(|p| outside(other, *p));
                    let gap = gap.fold(f64::INFINITY, num::min);
                    assert!(gap > stock.kerf - 1e-4, "{gap}");
                    pairs += 1;
                }
            }
        }
        sheets += layout.sheets.len();
        assert_eq!(
            count,
            b.panels.parts.len() * (b.panels.each * sheet.count) as usize
        );
        assert!(layout.too_large.is_empty() && layout.sheets.len() >= layout.least);
    }
    println!("{sheets} sheets, {pairs} pairs of parts");
    assert!(pairs > 100);
}

/// Of panels of 1.57 m by 0.73 m a sheet of 2.44 m by 1.22 m holds one rectangle, and three panels, hollow upon
/// hollow.
#[test]
fn three_panels_lie_where_one_rectangle_does() {
    let plan = demo_with(0.0, |lip| {
        lip.height = 0.75;
        lip.radius = 3.5;
    });
    let all = sheets(&plan, &Stock::default());
    let panels = &all[0].lip_box.as_ref().expect("it is high").panels;
    let size = panels.outline.size();
    assert!(2.0 * size.y > 1.22 && 2.0 * size.x > 2.44, "{size}");
    assert_eq!(all[0].count * panels.each, 6);
    assert_eq!(panels.layout.sheets.len(), 2);
}

#[test]
fn boards_and_gaps_are_as_long_as_the_curve() {
    let stock = Stock {
        deck: DeckKind::Boards,
        ..Stock::default()
    };
    for sheet in sheets(&demo_with(0.0, |lip| lip.height = 0.7), &stock) {
        let Deck::Boards(boards) = &sheet.deck else {
            panic!("boards were asked for")
        };
        let [thick, wide] = stock.board;
        let whole = f64::from(boards.count - u32::from(boards.ripped.is_some()));
        let gaps = stock.gap * f64::from(boards.count - 1);
        let covered = whole * wide + gaps + boards.ripped.unwrap_or(0.0);
        assert!((covered - sheet.template.wood).abs() <= 0.003 + 1e-9);
        assert!(boards.ripped.is_none_or(|w| w > 0.0 && w < wide));
        let cut = sheet.cutting.iter().find(|c| c.section == [thick, wide]);
        let cuts = cut.map(|c| c.boards.iter().map(|b| b.cuts.len()).sum::<usize>());
        assert_eq!(cuts, Some((boards.count * sheet.count) as usize));
        // 1.22 m wide, boards on 0.5 m at most: three bays, four panels.
        assert_eq!(sheet.lip_box.expect("it is high").panels.each, 4);
    }
}

/// On 2 m, plywood of 9 mm bends across its grain (0.914 m), not along it (2.438 m); 12 mm takes 1.829 m across.
#[test]
fn a_skin_is_of_the_thickest_plywood_that_bends() {
    let best = |radius: f64| bending::best(&bending::bends(Some(radius), &Stock::default()));
    let told = |radius| best(radius).map(|b| (b.thickness, b.grain, b.layers));
    assert_eq!(told(0.5), None);
    assert_eq!(told(0.7), Some((0.0065, Grain::Across, 3)));
    assert_eq!(told(1.5), Some((0.009, Grain::Across, 2)));
    assert_eq!(told(2.5), Some((0.009, Grain::Along, 2)));
    assert_eq!(told(3.7), Some((0.018, Grain::Across, 1)));
    assert_eq!(told(6.2), Some((0.018, Grain::Along, 1)));
}

/// Two widths of 1.22 m and a saw's cut are longer than a sheet of 2.44 m; two that are the cut narrower are not.
#[test]
fn a_skin_gives_way_by_a_cut_to_save_a_sheet() {
    let plan = demo_with(0.0, |lip| lip.radius = 2.3);
    for sheet in sheets(&plan, &Stock::default()) {
        let Deck::Skin(skin) = sheet.deck else {
            panic!("it bends")
        };
        assert_eq!((skin.bend.grain, skin.grid), (Grain::Across, [2, 1]));
        assert!((skin.size[1] - 1.217).abs() < 1e-12);
        assert_eq!(skin.layout.sheets.len(), 2 * sheet.count as usize);
    }
}

#[test]
fn a_lip_too_tight_for_plywood_has_boards() {
    let mut plan = demo_with(0.0, |lip| {
        lip.height = 0.3;
        lip.radius = 0.55;
    });
    plan.riders.truncate(1);
    let all = sheets(&plan, &Stock::default());
    assert!(matches!(all[0].deck, Deck::Boards(_)));
    assert!(all[0].cautions.contains(&Caution::TooTight));
}

#[test]
fn a_low_lip_lies_on_dirt() {
    let all = sheets(&demo_with(0.0, |lip| lip.height = 0.06), &Stock::default());
    assert!(all[0].lip_box.is_none() && all[0].cautions.contains(&Caution::TooLow));
    assert!(!all[0].sheets.is_empty());
}

/// A bump of 6 cm and a dip of 4 cm under the first lip of a level yard.
#[test]
fn uneven_ground_under_a_lip_is_told() {
    let mut plan = demo_with(0.0, |_| {});
    let level = Profile::build(&plan).expect("a sound line").lips[0];
    let at = |share: f64| level.foot.x + share * (level.edge.x - level.foot.x);
    let point = |station, elevation| GroundPoint { station, elevation };
    let points = [
        point(0.0, 0.0),
        point(at(-0.1), 0.0),
        point(at(0.3), 0.06),
        point(at(0.6), -0.04),
        point(at(0.9), 0.0),
        point(200.0, 0.0),
    ];
    plan.yard.lie = Lie::Surveyed(points.into());
    let all = sheets(&plan, &Stock::default());
    let template = &all[0].template;
    // The foot stands on the bump's near side; the line from there falls to level ground.
    let foot = Profile::build(&plan).expect("a sound line").lips[0].foot;
    assert!((foot.y - 0.015).abs() < 2e-4);
    let line = |x: f64| foot.y * (1.0 - (x - foot.x) / template.run);
    let expected = [0.06 - line(at(0.3)), line(at(0.6)) + 0.04];
    for (told, expected) in template.uneven.iter().zip(expected) {
        assert!((told - expected).abs() < 1e-9, "{told} {expected}");
    }
    let even = sheets(&demo_with(-0.04, |_| {}), &Stock::default());
    assert_eq!(even[0].template.uneven, [0.0; 2]);
}

/// Wood and fasteners, by hand from the lists.
#[test]
fn a_lip_weighs_what_it_is_made_of() {
    let stock = Stock::default();
    for sheet in many() {
        let timber: f64 = sheet
            .pieces
            .iter()
            .map(|p| p.section[0] * p.section[1] * p.length * f64::from(p.count) * 420.0)
            .sum();
        let panel = |b: &LipBox| b.panels.outline.area() * 0.018 * f64::from(b.panels.each);
        let panels = sheet.lip_box.as_ref().map_or(0.0, panel);
        let skin = match &sheet.deck {
            Deck::Skin(skin) => {
                let narrower = sheet.width - skin.size[1] * f64::from(skin.grid[1]);
                assert!((-1e-9..0.01).contains(&narrower));
                sheet.template.wood * (sheet.width - narrower) * skin.thickness
            }
            Deck::Boards(_) => 0.0,
        };
        let dry = 1.03 * (timber / f64::from(sheet.count) + 545.0 * (panels + skin));
        assert!((dry - sheet.weight.dry).abs() < 1e-6 * dry);
        assert!(sheet.weight.soaked > 1.1 * dry && sheet.weight.soaked < 1.2 * dry);
        let three = sheet.weight.soaked <= 0.5 * (25.0 + 16.0 + 25.0);
        assert_eq!(sheet.weight.movers == Movers::InParts, !three);
        assert_eq!(stock.timber, 420.0);
    }
}

/// Every rib and leg has the panel over it, and the width is panels and bays.
#[test]
fn the_frame_fits_between_the_panels() {
    let stock = Stock::default();
    for sheet in many() {
        let Some(b) = &sheet.lip_box else { continue };
        let f = &b.frame;
        let wide = f64::from(f.panels) * stock.panel + f64::from(f.panels - 1) * f.bay;
        assert!((wide - sheet.width).abs() < 1e-9 && f.bay <= stock.rib_span);
        let high = sheet.template.stations.iter().filter(|s| s.panel >= 0.045);
        assert_eq!(f.ribs as usize, high.count());
        let back = b.panels.outline.edges[1].length();
        if let Some(last) = f.legs.last() {
            assert!((last.height - (back - 0.045)).abs() < 1e-9);
        }
        let ribs = sheet
            .pieces
            .iter()
            .filter(|p| p.kind == crate::build::piece::PieceKind::Rib);
        let ribs: u32 = ribs.map(|p| p.count).sum();
        assert_eq!(ribs, f.ribs * (f.panels - 1) * sheet.count);
    }
}

/// Neighbouring pages have two marks in common, each in the strip they share; pages cover the outline.
#[test]
fn pages_can_be_glued_together() {
    let mut joints = 0;
    for sheet in many() {
        let Some(b) = sheet.lip_box else { continue };
        let tiling = &b.panels.tiling;
        let within = |[low, high]: [DVec2; 2], p: DVec2| {
            p.x >= low.x - 1e-9
                && p.y >= low.y - 1e-9
                && p.x <= high.x + 1e-9
                && p.y <= high.y + 1e-9
        };
        for p in polygon(&b.panels.outline, 100) {
            assert!(tiling.pages.iter().any(|page| within(page.shows, p)), "{p}");
        }
        for (i, a) in tiling.pages.iter().enumerate() {
            assert!(
                a.bars
                    .iter()
                    .flatten()
                    .chain(&a.marks)
                    .all(|p| within(a.shows, *p))
            );
            for [from, to] in a.bars {
                assert!(((to - from).length() - 0.1).abs() < 1e-12);
            }
            for other in &tiling.pages[..i] {
                let step = [0, 1].map(|k| a.place[k].abs_diff(other.place[k]));
                let common = a.marks.iter().filter(|p| {
                    let same = |q: &DVec2| (**p - *q).length() < 1e-9;
                    within(other.shows, **p) && other.marks.iter().any(same)
                });
                let common = common.count();
                if step == [0, 1] || step == [1, 0] {
                    assert_eq!(common, 2);
                    joints += 1;
                }
            }
        }
    }
    println!("{joints} joints of pages");
    assert!(joints > 500);
}
