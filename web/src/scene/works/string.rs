//! The string that draws a curve, and the place where it is held, shown nearer than it is where it is far.

use super::lip_shape::{Drawing, flat};
use super::plate::{Plate, WIDE};
use crate::scene::sheet::{Align, Ink};
use glam::DVec2;
use sim::build::lip::{Stretch, Strung, Template};
use sim::num;

/// Highest that a centre is shown in its own place, px over the ground line.
const WITHIN: f64 = 420.0;
/// How far over the edge strings are broken, and the centre is shown over that, px.
const BREAK: [f64; 2] = [84.0, 64.0];

/// The wooden arc, with its string.
pub fn strung(template: &Template) -> Option<(&Stretch, &Strung)> {
    let wood = template.stretches.iter().filter(|s| s.wood);
    wood.rev().find_map(|s| Some((s, s.string.as_ref()?)))
}

/// Draws both ends' strings, the centre, and where that stands from the foot.
pub fn draw(drawing: &Drawing, stretch: &Stretch, strung: &Strung, plate: &mut Plate) {
    let px = |p: DVec2| drawing.px(p);
    let (foot, centre) = (px(DVec2::ZERO), px(flat(&strung.centre)));
    let ends = [&stretch.from, &stretch.to].map(|e| px(flat(e)));
    let within = foot.y - centre.y <= WITHIN && centre.x < WIDE - 40.0;
    let level = ends[1].y - BREAK[0];
    let shown = if within {
        centre
    } else {
        DVec2::new(num::clamp(centre.x, 60.0, WIDE - 90.0), level - BREAK[1])
    };
    for end in ends {
        if within {
            plate.sheet.line(Ink::Figure, 0.9, [end, centre]);
            continue;
        }
        // Each end keeps its direction.
        let way = (centre - end).normalize_or_zero();
        let stop = end + way * ((end.y - level) / (-way.y).max(0.1));
        plate.sheet.line(Ink::Figure, 0.9, [end, stop]);
        plate.broken(stop, way);
        let stub = shown - way * 26.0;
        plate.sheet.line(Ink::Figure, 0.9, [shown, stub]);
        plate.broken(stub, way);
    }
    let cross = 6.0;
    plate.sheet.line(
        Ink::Figure,
        1.4,
        [shown - DVec2::X * cross, shown + DVec2::X * cross],
    );
    plate.sheet.line(
        Ink::Figure,
        1.4,
        [shown - DVec2::Y * cross, shown + DVec2::Y * cross],
    );
    stands(strung, [foot, shown], (!within).then_some(level), plate);
    long(
        drawing,
        strung,
        ends[1],
        (centre - ends[1]).normalize_or_zero(),
        plate,
    );
    plate.letter(2, shown, DVec2::new(30.0, -10.0));
}

/// How far along the ground line and over it the centre stands.
fn stands(strung: &Strung, [foot, shown]: [DVec2; 2], broken: Option<f64>, plate: &mut Plate) {
    let reader = plate.reader;
    let below = DVec2::new(shown.x, foot.y);
    let beside = DVec2::new(foot.x.min(shown.x) - 30.0 - shown.x, 0.0);
    plate.measure(below, shown, beside, reader.fine(strung.centre.rise));
    if let Some(level) = broken {
        plate.broken(DVec2::new(shown.x + beside.x, level), DVec2::Y);
    }
    if strung.centre.along.abs() > 1e-3 {
        let over = DVec2::new(foot.x, shown.y);
        let (a, b) = if over.x < shown.x {
            (over, shown)
        } else {
            (shown, over)
        };
        plate.measure(
            a,
            b,
            DVec2::new(0.0, -22.0),
            reader.fine(strung.centre.along),
        );
        plate
            .sheet
            .dashes(Ink::Figure, 0.6, [foot, over - DVec2::new(0.0, 22.0)]);
    }
}

/// The length of the string, and of the one that draws the panel.
fn long(drawing: &Drawing, strung: &Strung, end: DVec2, way: DVec2, plate: &mut Plate) {
    let reader = plate.reader;
    let on = end + way * ((BREAK[0] - 12.0) / (-way.y).max(0.3));
    let beside = (on + DVec2::new(12.0, 0.0), Align::Right);
    let text = format!("R {}", reader.fine(strung.radius));
    plate.put(text, on, &[beside]);
    let panels = drawing.lip.lip_box.as_ref().map(|b| &b.panels);
    if let Some(string) = panels.and_then(|p| p.string) {
        let under = (on + DVec2::new(22.0, 16.0), Align::Right);
        plate.put(format!("r {}", reader.fine(string)), on, &[under]);
    }
}
