//! The ground ahead: the ribbon's surface, its edges, and the earth it stands on.

use super::lens::Lens;
use super::ribbon::Knot;
use super::{beside, rod};
use crate::scene::sheet::{Ink, Sheet};
use glam::{DVec2, DVec3};
use sim::plan::Surface;
use sim::profile::Intent;

/// Boards are this wide, and strokes on earth this far apart, m.
const BOARD: f64 = 0.15;
const STROKE: f64 = 0.3;
/// From this distance on every fourth board is drawn, m.
const FAR: f64 = 12.0;
/// Heaped earth goes out so far for each metre it is high (common practice, no source).
const BATTER: f64 = 0.8;
/// Lowest height over the yard that shows a side, m.
const LOW: f64 = 0.04;

/// From this rise on, in m for each m, ground is shaded as a wall.
const STEEP: f64 = 0.3;

/// Whether there is nothing but the yard: the open floor of a gap.
fn is_gap(k: &Knot) -> bool {
    is_clear(k) && k.surface != Surface::Wood && k.at.y - k.yard < LOW
}

/// Rise to the next point, m for each m.
fn steepness(a: &Knot, b: &Knot) -> f64 {
    let way = b.at - a.at;
    way.y / way.x.max(1e-3)
}

/// Lays a stretch that is seen without a break on the sheet.
pub fn draw(run: &[Knot], lens: &Lens, sheet: &mut Sheet) {
    let alike =
        |a: &Knot, b: &Knot| a.surface == b.surface && a.half == b.half && is_gap(a) == is_gap(b);
    for part in run.chunk_by(alike) {
        // A part reaches to the first point of the next.
        fill(part, run.get(index_after(run, part)), lens, sheet);
    }
    // The farthest first.
    let ridden = || {
        let pairs = run.windows(2).rev().map(|w| (&w[0], &w[1]));
        pairs.filter(|(a, _)| !is_gap(a))
    };
    for (a, b) in ridden() {
        strokes(a, b, lens, sheet);
    }
    for side in [1.0, -1.0] {
        for (a, b) in ridden() {
            let wide = if is_clear(a) { 0.012 } else { 0.03 };
            let [from, to] = [a, b].map(|k| beside(k.at, side * a.half));
            rod(Ink::Ground, wide, from, to, lens, sheet);
        }
    }
    // The edges of lips and knuckles, and whatever hides what is behind it.
    let pairs = run.windows(2).rev().map(|w| (&w[0], &w[1]));
    let corners = pairs.filter(|(a, b)| is_clear(a) != is_clear(b));
    let corners = corners.map(|(_, b)| b);
    for k in corners.chain(run.last().filter(|k| !k.end)) {
        let [from, to] = [k.half, -k.half].map(|left| beside(k.at, left));
        rod(Ink::Ground, 0.035, from, to, lens, sheet);
    }
}

/// Fills a part of one kind, which reaches to `end`.
fn fill(part: &[Knot], end: Option<&Knot>, lens: &Lens, sheet: &mut Sheet) {
    let knots = || part.iter().chain(end);
    let ink = match part[0] {
        k if is_gap(&k) || k.surface == Surface::Grass => Ink::Lawn,
        k if k.surface == Surface::Wood => Ink::Paper,
        _ => Ink::Earth,
    };
    if ink == Ink::Earth {
        for side in [1.0, -1.0] {
            batter(knots, side, lens, sheet);
        }
    }
    let points: Vec<_> = knots().collect();
    // What reaches under the eye is cut where it comes too near, and filled up to there.
    let mut top = Vec::with_capacity(points.len() + 1);
    for pair in points.windows(2) {
        if let Some((from, to)) = lens.in_front(pair[0], pair[1]) {
            if top.is_empty() {
                top.push(from.at);
            }
            top.push(to.at);
        }
    }
    let half = part[0].half;
    let left = top.iter().map(|&p| beside(p, half));
    let right = top.iter().rev().map(|&p| beside(p, -half));
    sheet.area(ink, left.chain(right).filter_map(|p| lens.place(p)));
    for pair in points.windows(2).filter(|p| steepness(p[0], p[1]) > STEEP) {
        let [a, b] = [pair[0].at, pair[1].at];
        let corners = [(a, half), (b, half), (b, -half), (a, -half)];
        sheet.area(
            Ink::Shade,
            lens.quad(corners.map(|(p, left)| beside(p, left))),
        );
    }
}

/// Whether it is nothing to ride.
fn is_clear(k: &Knot) -> bool {
    k.intent == Intent::Clear
}

/// Index of the point behind a part of a run.
fn index_after(run: &[Knot], part: &[Knot]) -> usize {
    let before = run.iter().position(|k| std::ptr::eq(k, &part[0]));
    before.map_or(run.len(), |i| i + part.len())
}

/// The slope of heaped earth beside a stretch.
fn batter<'a, I: DoubleEndedIterator<Item = &'a Knot>>(
    knots: impl Fn() -> I,
    side: f64,
    lens: &Lens,
    sheet: &mut Sheet,
) {
    let high = |k: &Knot| (k.at.y - k.yard).max(0.0);
    if knots().all(|k| high(k) < LOW) {
        return;
    }
    let Some(half) = knots().next().map(|k| k.half) else {
        return;
    };
    let foot = |k: &Knot| {
        let out = half + BATTER * high(k);
        DVec3::new(k.at.x, side * out, k.at.y - high(k))
    };
    let top = knots().map(|k| beside(k.at, side * half));
    let outline: Vec<_> = top
        .chain(knots().rev().map(foot))
        .filter_map(|p| lens.place(p))
        .collect();
    sheet.area(Ink::Earth, outline);
    if knots()
        .next()
        .is_some_and(|k| lens.depth(beside(k.at, 0.0)) < FAR)
    {
        let foot_line = knots().filter_map(|k| lens.place(foot(k)));
        sheet.line(Ink::Hatch, 1.0, foot_line);
    }
}

/// Boards across wood, strokes across earth.
fn strokes(a: &Knot, b: &Knot, lens: &Lens, sheet: &mut Sheet) {
    let wood = a.surface == Surface::Wood;
    let (ink, apart) = if wood {
        (Ink::Wood, BOARD)
    } else {
        (Ink::Hatch, STROKE)
    };
    let far = lens.depth(beside(a.at, 0.0)) > FAR;
    let apart = if far { 4.0 * apart } else { apart };
    let first = (a.along / apart).ceil() as usize;
    let last = (b.along / apart).ceil() as usize;
    for k in (first..last).rev() {
        let part = (k as f64 * apart - a.along) / (b.along - a.along).max(1e-9);
        let p: DVec2 = a.at.lerp(b.at, part);
        // A hand does not draw strokes on earth alike.
        let (from, to) = if wood {
            (0.0, 0.0)
        } else {
            ([0.1, 0.5, 0.3, 0.75][k % 4], [0.4, 0.1, 0.65, 0.25][k % 4])
        };
        rod(
            ink,
            0.012,
            beside(p, a.half - from),
            beside(p, to - a.half),
            lens,
            sheet,
        );
    }
}
