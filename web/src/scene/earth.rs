//! Earth: one strong line with hatching under it, a wash where dirt was moved, grass and gravel.

use super::land;
use super::sheet::{Ink, Sheet};
use super::view::Strip;
use glam::DVec2;
use sim::plan::Surface;
use sim::profile::{Intent, Piece, Profile};
use std::f64::consts::SQRT_2;

/// Width of the line that is ridden, px.
const LINE: f64 = 2.6;
/// Width of faces, floors and decks, px.
const FACE: f64 = 1.3;
/// Distance between hatch strokes that the scale aims for, px.
const SPACING: f64 = 8.0;
/// Lengths of hatch strokes in turn, px: a hand does not draw them alike.
const STROKES: [f64; 5] = [13.0, 8.0, 14.0, 10.0, 6.0];
/// How far hatch strokes lean from the square, rad.
const LEAN: f64 = 0.75;

/// Lays the earth of a strip on the sheet.
pub fn draw(profile: &Profile, strip: &Strip, sheet: &mut Sheet) {
    wash(profile, strip, sheet);
    sheet.dashes(
        Ink::Yard,
        1.0,
        land::yard_along(profile, f64::NEG_INFINITY, f64::INFINITY, strip).map(|p| strip.place(p)),
    );
    for piece in land::shown(profile, strip).filter(|p| !land::wooden(p)) {
        texture(piece, strip, sheet);
    }
}

/// Lays the line itself on the sheet, over earth and wood.
pub fn draw_line(profile: &Profile, strip: &Strip, sheet: &mut Sheet) {
    let clear = |p: &Piece| p.character.intent == Intent::Clear;
    for piece in land::shown(profile, strip).filter(|p| clear(p)) {
        sheet.line(Ink::Ground, FACE, places(piece, strip));
    }
    for ridden in profile.pieces.split(clear) {
        let points = ridden
            .iter()
            .filter(|p| strip.shows(p.start.x, p.end.x))
            .flat_map(|p| places(p, strip));
        sheet.line(Ink::Ground, LINE, points);
    }
}

/// Lays a broad stroke over a stretch of the line on the sheet.
pub fn draw_chosen(profile: &Profile, from: f64, to: f64, strip: &Strip, sheet: &mut Sheet) {
    let points = land::shown(profile, strip)
        .filter(|p| p.start.x >= from - 1e-6 && p.end.x <= to + 1e-6)
        .flat_map(|p| places(p, strip));
    sheet.line(Ink::Chosen, 12.0, points);
}

/// The points of a piece on the sheet.
pub fn places(piece: &Piece, strip: &Strip) -> impl Iterator<Item = DVec2> + use<> {
    let strip = *strip;
    land::along(piece, &strip).map(move |(p, _)| strip.place(p))
}

/// Fills between the line and the yard, stretch by stretch, so that no seams show.
fn wash(profile: &Profile, strip: &Strip, sheet: &mut Sheet) {
    for stretch in profile.pieces.split(land::wooden) {
        let (Some(first), Some(last)) = (stretch.first(), stretch.last()) else {
            continue;
        };
        if !strip.shows(first.start.x, last.end.x) {
            continue;
        }
        let over = stretch
            .iter()
            .filter(|p| strip.shows(p.start.x, p.end.x))
            .flat_map(|p| places(p, strip));
        let back = land::yard_along(profile, first.start.x, last.end.x, strip).rev();
        sheet.area(Ink::Built, over.chain(back.map(|p| strip.place(p))));
    }
}

/// Lays the texture of the ground a piece is made of on the sheet.
fn texture(piece: &Piece, strip: &Strip, sheet: &mut Sheet) {
    let marks = || marks(piece, strip);
    match piece.character.surface {
        Surface::Paved => {
            hatch(marks(), 1.0, strip, sheet);
            paved(piece, strip, sheet);
        }
        Surface::Gravel => hatch(marks(), 0.25, strip, sheet),
        Surface::Soft => hatch(marks(), 0.6, strip, sheet),
        Surface::Grass => {
            hatch(marks(), 1.0, strip, sheet);
            blades(marks(), strip, sheet);
        }
        Surface::Packed | Surface::Wood => hatch(marks(), 1.0, strip, sheet),
    }
}

/// Hatches the yard between two stations, where wood stands over it.
pub fn hatch_yard(profile: &Profile, from: f64, to: f64, strip: &Strip, sheet: &mut Sheet) {
    let step = step(strip);
    let (first, last) = ((from / step).ceil() as usize, (to / step).ceil() as usize);
    let places = (first..last).map(|k| {
        let (x, next) = (k as f64 * step, (k + 1) as f64 * step);
        let p = DVec2::new(x, land::yard(profile, x));
        let on = DVec2::new(next, land::yard(profile, next)) - p;
        (k, p, on.to_angle())
    });
    let held = places.filter(|(_, p, _)| strip.holds(p.x));
    hatch(held, 1.0, strip, sheet);
}

/// A place of a stroke: running number, place, heading of the ground.
type Place = (usize, DVec2, f64);

/// Strokes into the ground; `share` shortens them.
fn hatch(places: impl Iterator<Item = Place>, share: f64, strip: &Strip, sheet: &mut Sheet) {
    for (k, p, heading) in places {
        let into = DVec2::from_angle(heading - std::f64::consts::FRAC_PI_2 - LEAN);
        let length = share * STROKES[k % STROKES.len()];
        let from = strip.place(p);
        let to = from + DVec2::new(into.x, -into.y) * length;
        sheet.line(Ink::Hatch, 1.0, [from, to]);
    }
}

fn blades(places: impl Iterator<Item = Place>, strip: &Strip, sheet: &mut Sheet) {
    for (k, p, _) in places {
        let lean = [2.5, -1.5, 0.5][k % 3];
        let from = strip.place(p);
        sheet.line(Ink::Grass, 1.3, [from, from + DVec2::new(lean, -5.5)]);
    }
}

fn paved(piece: &Piece, strip: &Strip, sheet: &mut Sheet) {
    let strip = *strip;
    let under = land::along(piece, &strip).map(|(p, heading)| {
        let into = DVec2::from_angle(heading - std::f64::consts::FRAC_PI_2);
        strip.place(p) + DVec2::new(into.x, -into.y) * 3.5
    });
    sheet.line(Ink::Hatch, 3.0, under);
}

/// Distance between strokes, m: it doubles and halves with the scale, so that strokes stay with
/// the ground as it moves.
fn step(strip: &Strip) -> f64 {
    let wanted = SPACING / strip.scale;
    // A sheet with no room for anything has no strokes, and no step that is small enough.
    if !(wanted > 0.0 && wanted.is_finite()) {
        return f64::INFINITY;
    }
    let mut step = 0.05;
    while step * SQRT_2 < wanted {
        step *= 2.0;
    }
    while step > wanted * SQRT_2 {
        step /= 2.0;
    }
    step
}

/// Even places along a piece in a strip.
fn marks(piece: &Piece, strip: &Strip) -> impl Iterator<Item = Place> + use<> {
    let step = step(strip);
    let first = (piece.before / step).ceil() as usize;
    let last = ((piece.before + piece.length) / step).ceil() as usize;
    let (piece, strip) = (*piece, *strip);
    (first..last).filter_map(move |k| {
        let along = k as f64 * step - piece.before;
        let p = piece.point(along);
        strip.holds(p.x).then(|| (k, p, piece.heading_at(along)))
    })
}
