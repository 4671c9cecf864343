//! The side panel of a lip in full size: page by page to be glued together, and as a whole.

use super::plate::{MARGIN, Plate, TYPE, letter};
use super::reader::Reader;
use super::shapes::{along, at, cut, round};
use crate::scene::sheet::{Align, Ink};
use crate::scene::view::Strip;
use glam::DVec2;
use sim::build::lip::{LipSheet, Panels};
use sim::build::tiling::{Page, Tiling};

/// Width of lines that are sawn along, px: a third of a millimetre.
const FINE: f64 = 1.0;
/// Radius of registration marks, m.
const MARK: f64 = 0.004;
/// How far a rib's mark reaches into the panel, m.
const RIB: f64 = 0.02;
/// White round a whole outline, m.
const ROUND: f64 = 0.02;
/// A side of a page in the key, px.
const KEY: f64 = 11.0;

/// One page of the outline in full size, `scale` px to the metre: registration marks, in broken lines where pages are
/// cut or glued, ticks inward at the ribs, a bar along and one across for the scale, and a key with this page black.
/// The page's own name is its column's letter and its row's number from below; at its edges stand its neighbours'.
pub fn tile(lip: &LipSheet, page: usize, scale: f64, reader: Reader) -> Option<Plate> {
    let panels = &lip.lip_box.as_ref()?.panels;
    let (tiling, page) = (&panels.tiling, panels.tiling.pages.get(page)?);
    let paper = &tiling.paper;
    let size = DVec2::from(paper.size) * scale;
    let corner = page.shows[0] - paper.margin;
    let strip = at(
        DVec2::new(-corner.x * scale, size.y + corner.y * scale),
        scale,
    );
    let mut plate = Plate::new(size.x, reader);
    plate.size = size;
    glued(tiling, page, &strip, &mut plate);
    lines(lip, panels, page.shows, &strip, &mut plate);
    for mark in &page.marks {
        let [across, up] =
            [DVec2::X, DVec2::Y].map(|way| [*mark - way * MARK * 1.5, *mark + way * MARK * 1.5]);
        for line in [across, up] {
            plate
                .sheet
                .line(Ink::Figure, 0.6, line.map(|p| strip.place(p)));
        }
        plate
            .sheet
            .ring(Ink::Figure, 0.6, strip.place(*mark), MARK * scale);
    }
    bars(&page.bars, &strip, &mut plate);
    names(tiling, page, &strip, &mut plate);
    Some(plate)
}

/// The whole outline in full size, `scale` px to the metre, with ticks inward at the ribs and bars for the scale.
pub fn curve(lip: &LipSheet, scale: f64, reader: Reader) -> Option<Plate> {
    let panels = &lip.lip_box.as_ref()?.panels;
    let [low, high] = panels.outline.bounds();
    let size = (high - low + 2.0 * ROUND).max(DVec2::splat(0.15)) * scale;
    let corner = low - ROUND;
    let strip = at(
        DVec2::new(-corner.x * scale, size.y + corner.y * scale),
        scale,
    );
    let mut plate = Plate::new(size.x, reader);
    plate.size = size;
    lines(
        lip,
        panels,
        [corner, corner + size / scale],
        &strip,
        &mut plate,
    );
    let start = DVec2::new(corner.x + 0.012, (high.y + low.y) * 0.5);
    let bar = panels.tiling.paper.bar;
    // Where the panel is low there is room over it.
    let start = DVec2::new(start.x, (corner.y + size.y / scale - 0.015).max(start.y));
    bars(
        &[
            [start, start + DVec2::X * bar],
            [start, start - DVec2::Y * bar],
        ],
        &strip,
        &mut plate,
    );
    Some(plate)
}

/// Outline, joints and ribs, as far as they lie within a rectangle, m.
fn lines(lip: &LipSheet, panels: &Panels, shows: [DVec2; 2], strip: &Strip, plate: &mut Plate) {
    let mut draw = |width: f64, points: &[DVec2]| {
        for piece in cut(points, shows) {
            let piece: Vec<_> = piece.into_iter().map(|p| strip.place(p)).collect();
            plate.keep_clear(&piece);
            plate.sheet.line(Ink::Ground, width, piece);
        }
    };
    for edge in &panels.outline.edges {
        draw(FINE, &along(edge, strip.scale));
    }
    if panels.parts.len() > 1 {
        for part in &panels.parts {
            draw(0.6, &round(part, strip.scale));
        }
    }
    for station in lip.template.stations.iter().filter(|s| s.panel > 0.0) {
        let top = DVec2::new(station.at.along, station.panel);
        let ends = [(DVec2::ZERO, 1.0), (DVec2::new(0.0, station.panel), -1.0)];
        for (end, way) in ends {
            let from = DVec2::new(top.x, end.y);
            let long = RIB.min(0.4 * station.panel);
            draw(0.6, &[from, from + DVec2::Y * (way * long)]);
        }
    }
}

/// Where neighbours overlap: broken lines through the registration marks.
fn glued(tiling: &Tiling, page: &Page, strip: &Strip, plate: &mut Plate) {
    let half = DVec2::splat(0.5 * tiling.paper.overlap);
    let [low, high] = page.shows;
    let inner = [low + half, high - half];
    for (step, end) in [(-1, 0), (1, 1)] {
        for axis in 0..2 {
            if neighbour(tiling, page, axis, step).is_none() {
                continue;
            }
            let mut ends = [low, high];
            ends.iter_mut().for_each(|p| p[axis] = inner[end][axis]);
            plate
                .sheet
                .dashes(Ink::Pale, 0.6, ends.map(|p| strip.place(p)));
        }
    }
}

/// The place of the page before or behind one along an axis, where there is such a page.
fn neighbour(tiling: &Tiling, page: &Page, axis: usize, step: isize) -> Option<[usize; 2]> {
    let mut place = page.place;
    place[axis] = place[axis].checked_add_signed(step)?;
    tiling
        .pages
        .iter()
        .any(|p| p.place == place)
        .then_some(place)
}

fn bars(bars: &[[DVec2; 2]; 2], strip: &Strip, plate: &mut Plate) {
    for bar in bars {
        let [a, b] = bar.map(|p| strip.place(p));
        let long = (bar[1] - bar[0]).length();
        plate.measure(a, b, DVec2::ZERO, plate.reader.fine(long));
        plate.keep_clear(&[a, b]);
    }
}

fn name(place: [usize; 2]) -> String {
    format!("{}{}", letter(place[0]), place[1] + 1)
}

/// The page's own name with the key, and its neighbours' at its edges.
fn names(tiling: &Tiling, page: &Page, strip: &Strip, plate: &mut Plate) {
    let [low, high] = page.shows.map(|p| strip.place(p));
    let inner = 1.2 * tiling.paper.overlap * strip.scale;
    let sides = [
        (0, -1, low.x + 1.4 * inner),
        (0, 1, high.x - inner),
        (1, -1, low.y - inner),
        (1, 1, high.y + inner),
    ];
    for (axis, step, edge) in sides {
        let Some(other) = neighbour(tiling, page, axis, step) else {
            continue;
        };
        // Clear of the outline, and of the registration marks at a quarter and three quarters.
        let place = |share: f64| {
            let mut at = low.lerp(high, share);
            at[axis] = edge;
            (at, Align::Middle)
        };
        let places = [0.5, 0.62, 0.38, 0.88, 0.12, 0.56, 0.44].map(place);
        plate.put(name(other), places[0].0, &places);
    }
    key(
        tiling,
        page,
        DVec2::new(high.x - inner, high.y + inner),
        plate,
    );
}

/// All pages small, this one black; its upper right corner is given.
fn key(tiling: &Tiling, page: &Page, corner: DVec2, plate: &mut Plate) {
    let [columns, rows] = tiling.grid;
    let left = corner.x - KEY * columns as f64;
    for other in &tiling.pages {
        let [column, row] = other.place;
        let low = DVec2::new(
            left + KEY * column as f64,
            corner.y + KEY * (rows - 1 - row) as f64,
        );
        let high = low + KEY - 1.5;
        let square = [
            low,
            DVec2::new(high.x, low.y),
            high,
            DVec2::new(low.x, high.y),
            low,
        ];
        if other.place == page.place {
            plate.sheet.area(Ink::Figure, square);
        } else {
            plate.sheet.line(Ink::Figure, 0.6, square);
        }
    }
    let base = DVec2::new(left - MARGIN, corner.y + TYPE);
    plate.put(name(page.place), base, &[(base, Align::Left)]);
}
