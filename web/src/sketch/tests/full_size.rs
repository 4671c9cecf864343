//! What is printed in full size: read back from the pictures as a ruler would, in mm.

use super::*;
use glam::DVec2;
use sim::build::outline::Edge;
use sim::build::tiling::Page;

/// Bar for the drawn curve, mm: the width of a fine line is three times that.
const EXACT: f64 = 0.1;

/// A picture read back: its lines by their width, and its rings, mm from its lower left corner.
struct Printed {
    size: DVec2,
    lines: Vec<(f64, Vec<DVec2>)>,
    rings: Vec<DVec2>,
}

fn read(svg: &str) -> Printed {
    let svg = Document::parse(svg).expect("it is XML");
    let root = svg.root_element();
    let side = |name| -> f64 {
        let text = root.attribute(name).expect("it has a size");
        text.strip_suffix("mm")
            .expect("in mm")
            .parse()
            .expect("a number")
    };
    let size = DVec2::new(side("width"), side("height"));
    let view: Vec<f64> = root
        .attribute("viewBox")
        .expect("it has one")
        .split(' ')
        .map(|n| n.parse().expect("a number"))
        .collect();
    assert_eq!(view[..2], [0.0, 0.0]);
    let scale = size.x / view[2];
    assert!(
        (size.y / view[3] - scale).abs() < 1e-5 * scale,
        "as wide as high"
    );
    let place = |x: f64, y: f64| DVec2::new(x * scale, size.y - y * scale);
    let number = |node: &roxmltree::Node, name| -> f64 {
        node.attribute(name)
            .and_then(|n| n.parse().ok())
            .expect("a number")
    };
    let mut lines = Vec::new();
    let mut rings = Vec::new();
    for node in svg.descendants() {
        if node.has_tag_name("circle") {
            rings.push(place(number(&node, "cx"), number(&node, "cy")));
        }
        if !node.has_tag_name("path") || node.attribute("stroke-width").is_none() {
            continue;
        }
        let path = node.attribute("d").expect("a path has points");
        for piece in path.split('M').skip(1) {
            let points = piece.split('L').map(|p| {
                let (x, y) = p.split_once(' ').expect("two numbers");
                place(x.parse().expect("a number"), y.parse().expect("a number"))
            });
            lines.push((number(&node, "stroke-width"), points.collect()));
        }
    }
    Printed { size, lines, rings }
}

/// Distance of a point from a line through points.
fn from_line(p: DVec2, line: &[DVec2]) -> f64 {
    let near = |pair: &[DVec2]| {
        let way = pair[1] - pair[0];
        let share = (p - pair[0]).dot(way) / way.length_squared();
        let share = sim::num::clamp(share, 0.0, 1.0);
        (pair[0] + way * share - p).length()
    };
    line.windows(2).map(near).fold(f64::INFINITY, f64::min)
}

/// Even points of an edge, mm.
fn points(edge: &Edge) -> Vec<DVec2> {
    let at = |i: u32| {
        let straight = edge.from.lerp(edge.to, f64::from(i) / 200.0);
        let Some(centre) = edge.centre else {
            return straight * 1000.0;
        };
        // The chord's points, drawn out from the centre to the circle.
        let out = (straight - centre).normalize();
        (centre + out * edge.radius().expect("round")) * 1000.0
    };
    (0..=200).map(at).collect()
}

#[test]
fn the_curve_is_exact_to_a_tenth_of_a_millimetre() {
    let mut worst: f64 = 0.0;
    for name in FULL {
        let case = Case::of(name, System::Metric, Supplies::default());
        for (sheet, lip) in case.works.job.lips.iter().enumerate() {
            let outline = &lip.lip_box.as_ref().expect("high enough").panels.outline;
            let printed = read(&case.svg(What::Curve { sheet }).expect("a curve"));
            // White of 20 mm is left round it.
            let corner = outline.bounds()[0] * 1000.0 - 20.0;
            for edge in &outline.edges {
                let ends = [edge.from, edge.to].map(|p| p * 1000.0 - corner);
                let own = printed.lines.iter().find(|(_, line)| {
                    let [a, b] = [line[0], line[line.len() - 1]];
                    (a - ends[0]).length() < EXACT && (b - ends[1]).length() < EXACT
                });
                let (_, line) = own.expect("every edge is drawn");
                for p in points(edge) {
                    worst = worst.max(from_line(p - corner, line));
                }
                let Some(centre) = edge.centre else { continue };
                let centre = centre * 1000.0 - corner;
                let radius = edge.radius().expect("round") * 1000.0;
                assert!(line.len() > 10);
                let middles = line.windows(2).map(|p| (p[0] + p[1]) * 0.5);
                for p in line.iter().copied().chain(middles) {
                    worst = worst.max(((p - centre).length() - radius).abs());
                }
            }
        }
    }
    println!("the farthest is {worst:.3} mm off");
    assert!(worst < EXACT, "{worst}");
}

/// A page's lower left corner on the whole drawing, mm.
fn corner(page: &Page, margin: f64) -> DVec2 {
    (page.shows[0] - margin) * 1000.0
}

fn pages(case: &Case, sheet: usize) -> Vec<(Page, Printed, DVec2)> {
    let lip = &case.works.job.lips[sheet];
    let tiling = &lip.lip_box.as_ref().expect("high enough").panels.tiling;
    let read = |(page, own): (usize, &Page)| {
        let printed = read(&case.svg(What::Tile { sheet, page }).expect("a page"));
        let paper = DVec2::from(tiling.paper.size) * 1000.0;
        assert!((printed.size - paper).length() < 0.01, "{}", printed.size);
        (own.clone(), printed, corner(own, tiling.paper.margin))
    };
    tiling.pages.iter().enumerate().map(read).collect()
}

#[test]
fn pages_cover_the_outline_and_print_nothing_at_their_edge() {
    for name in FULL {
        let case = Case::of(name, System::Metric, Supplies::default());
        for (sheet, lip) in case.works.job.lips.iter().enumerate() {
            let pages = pages(&case, sheet);
            let outline = &lip.lip_box.as_ref().expect("high enough").panels.outline;
            for p in outline.edges.iter().flat_map(points) {
                let off = |(_, printed, corner): &(Page, Printed, DVec2)| {
                    let sawn = printed.lines.iter().filter(|(width, _)| *width == 1.0);
                    let off = sawn.map(|(_, line)| from_line(p - *corner, line));
                    off.fold(f64::INFINITY, f64::min)
                };
                let nearest = pages.iter().map(off).fold(f64::INFINITY, f64::min);
                assert!(nearest < EXACT, "{name}: {p} is {nearest} mm off");
            }
            for (_, printed, _) in &pages {
                for p in printed.lines.iter().flat_map(|(_, line)| line) {
                    let within = p.min(printed.size - *p).min_element();
                    assert!(within > 9.9, "{name}: {p}");
                }
            }
        }
    }
}

#[test]
fn neighbours_have_the_same_marks_where_they_overlap() {
    for (name, paper) in [("orchard", PaperKind::A4), ("steps", PaperKind::Letter)] {
        let supplies = Supplies {
            paper,
            ..Supplies::default()
        };
        let case = Case::of(name, System::Metric, supplies);
        let pages = pages(&case, 0);
        let mut shared = 0;
        for (a, printed, from) in &pages {
            for (b, other, beside) in &pages {
                let apart = a.place[0].abs_diff(b.place[0]) + a.place[1].abs_diff(b.place[1]);
                if apart != 1 {
                    continue;
                }
                let there = |p: &DVec2| {
                    let place = *p + *from - *beside;
                    other.rings.iter().any(|r| (*r - place).length() < EXACT)
                };
                let both = printed.rings.iter().filter(|p| there(p)).count();
                assert_eq!(both, 2, "{name}: {:?} and {:?}", a.place, b.place);
                shared += both;
            }
        }
        assert!(shared >= 2 * (pages.len() - 1));
    }
}

#[test]
fn bars_are_as_long_as_they_say() {
    let case = Case::of("orchard", System::Metric, Supplies::default());
    for (_, printed, _) in pages(&case, 0) {
        let long = |(_, line): &&(f64, Vec<DVec2>)| {
            let way = line[line.len() - 1] - line[0];
            let even = way.x.abs() < 0.01 || way.y.abs() < 0.01;
            even && line.len() == 2 && (way.length() - 100.0).abs() < 0.05
        };
        assert_eq!(printed.lines.iter().filter(long).count(), 2);
    }
}
