//! The ground ahead: the ribbon's surface, its edges, and what it stands on.

use super::lens::Lens;
use super::ribbon::Knot;
use super::{beside, rod};
use crate::scene::sheet::{Ink, Sheet};
use glam::DVec2;
use sim::plan::Surface;
use sim::profile::Intent;

/// Half the width of the line, m: a deck for a child (common practice, no source).
pub const HALF: f64 = 0.6;

/// Boards are this wide, and strokes on earth this far apart, m.
const BOARD: f64 = 0.15;
const STROKE: f64 = 0.3;
/// From this distance on only joints and every fourth board are drawn, m.
const FAR: f64 = 14.0;
/// Lowest height over the yard that shows a side, m.
const LOW: f64 = 0.03;
/// Posts under wood stand this far apart, and this far in from its edge, m (common practice, no source).
const POSTS: f64 = 0.6;
const INSET: f64 = 0.07;

/// Lays one stretch on the sheet. Gives the point from which the next nearer one goes on: the same where
/// this one was too far away to be worth drawing by itself.
pub fn draw<'a>(a: &'a Knot, b: &'a Knot, lens: &Lens, sheet: &mut Sheet) -> Option<&'a Knot> {
    let depth = lens.depth(beside(a.at, 0.0));
    if depth > FAR && !a.joint {
        return Some(b);
    }
    sides(a, b, lens, sheet);
    let corners = [(a, HALF), (b, HALF), (b, -HALF), (a, -HALF)];
    let corners = corners.map(|(k, left)| beside(k.at, left));
    sheet.area(Ink::Paper, lens.quad(corners));
    if a.surface != Surface::Wood {
        sheet.area(Ink::Built, lens.quad(corners));
    }
    strokes(a, b, depth, lens, sheet);
    let edge = if a.intent == Intent::Clear {
        0.012
    } else {
        0.03
    };
    for left in [HALF, -HALF] {
        rod(
            Ink::Ground,
            edge,
            beside(a.at, left),
            beside(b.at, left),
            lens,
            sheet,
        );
    }
    // The edge of a lip, a knuckle, a face: where one piece of ground ends with a corner.
    if b.joint && (b.intent == Intent::Clear) != (a.intent == Intent::Clear) {
        rod(
            Ink::Ground,
            0.05,
            beside(b.at, HALF),
            beside(b.at, -HALF),
            lens,
            sheet,
        );
    }
    None
}

/// What a stretch stands on, seen from the side: filled earth, or posts under boards.
fn sides(a: &Knot, b: &Knot, lens: &Lens, sheet: &mut Sheet) {
    let foot = |k: &Knot| k.yard.min(k.at.y);
    if a.at.y - a.yard < LOW && b.at.y - b.yard < LOW {
        return;
    }
    for left in [HALF, -HALF] {
        let ground = |k: &Knot, left: f64| beside(DVec2::new(k.at.x, foot(k)), left);
        if a.surface == Surface::Wood {
            let post = (b.along / POSTS).floor() * POSTS;
            if post > a.along {
                let left = left * (1.0 - INSET / HALF);
                rod(
                    Ink::Wood,
                    0.07,
                    beside(b.at, left),
                    ground(b, left),
                    lens,
                    sheet,
                );
            }
            continue;
        }
        let corners = [
            beside(a.at, left),
            beside(b.at, left),
            ground(b, left),
            ground(a, left),
        ];
        sheet.area(Ink::Paper, lens.quad(corners));
        sheet.area(Ink::Built, lens.quad(corners));
        rod(
            Ink::Hatch,
            0.01,
            beside(a.at, left),
            ground(a, left),
            lens,
            sheet,
        );
    }
}

/// Boards across wood, strokes across earth.
fn strokes(a: &Knot, b: &Knot, depth: f64, lens: &Lens, sheet: &mut Sheet) {
    let wood = a.surface == Surface::Wood;
    let (ink, apart) = if wood {
        (Ink::Wood, BOARD)
    } else {
        (Ink::Hatch, STROKE)
    };
    let apart = if depth > FAR { 4.0 * apart } else { apart };
    let (first, last) = (
        (a.along / apart).ceil() as usize,
        (b.along / apart).ceil() as usize,
    );
    for k in (first..last).rev() {
        let part = (k as f64 * apart - a.along) / (b.along - a.along);
        let p = a.at.lerp(b.at, part);
        // A hand does not draw strokes on earth alike.
        let (from, to) = if wood {
            (0.0, 0.0)
        } else {
            ([0.1, 0.5, 0.3, 0.75][k % 4], [0.4, 0.1, 0.65, 0.25][k % 4])
        };
        rod(
            ink,
            0.012,
            beside(p, HALF - from),
            beside(p, to - HALF),
            lens,
            sheet,
        );
    }
}
