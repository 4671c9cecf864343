//! Headings of a surveyed line at its points.

use super::Survey;
use crate::num::{self, PI};
use crate::profile::piece::STEEPEST;

/// Turn between two chords, rad, beyond which a point is a corner: 35°. A lip's circle surveyed at
/// four points turns by less at each; the edge of a lip and a foot of a face turn by more.
const CORNER: f64 = 35.0 * (PI / 180.0);

/// A turn this many times its neighbours' is a kink between straight stretches, and stays one.
/// Where a straight meets a circle without a kink the turn is half that of the next point.
const ALONE: f64 = 3.0;

/// Chords shorter than this, m, are taken for parts of a curve: planks are longer.
const SHORT: f64 = 0.4;

/// Turns below this, rad, are no kink at all: 1°, about what tape and level can tell.
const KINK: f64 = PI / 180.0;

/// A chord longer than this many times each of its neighbours is straight.
const LONG: f64 = 2.0;

/// Heading of the surface just before and just after a point, rad; the same where it is smooth.
#[derive(Clone, Copy)]
pub(super) struct Tangent {
    pub into: f64,
    pub out: f64,
}

/// Headings at every point.
pub(super) fn estimate(survey: &Survey) -> Vec<Tangent> {
    let n = survey.points.len();
    let inner: Vec<Option<f64>> = (0..n).map(|i| smooth(survey, i)).collect();
    (0..n)
        .map(|i| Tangent {
            into: inner[i].unwrap_or_else(|| far(survey, &inner, i, i.wrapping_sub(1))),
            out: inner[i].unwrap_or_else(|| far(survey, &inner, i, i + 1)),
        })
        .collect()
}

/// Heading at a corner or an end, on the side of a neighbour: of the one arc that leads there,
/// which leaves the chord on one side as steeply as it joins it on the other.
fn far(survey: &Survey, inner: &[Option<f64>], i: usize, neighbour: usize) -> f64 {
    let chord = if neighbour < i { neighbour } else { i };
    match (survey.headings.get(chord), inner.get(neighbour)) {
        (Some(heading), Some(Some(there))) => 2.0 * heading - there,
        (Some(heading), _) => *heading,
        (None, _) => survey.headings[if i == 0 { 0 } else { i - 1 }],
    }
}

fn is_corner(survey: &Survey, i: usize) -> bool {
    let turn = survey.turn(i).abs();
    let beside = num::max(beside(survey, i, i - 1), beside(survey, i, i + 1));
    is_sharp(survey, i) || (turn > KINK && turn > ALONE * beside)
}

/// A corner by itself, whatever its neighbours do: a sharp turn, or the foot or top of a face.
fn is_sharp(survey: &Survey, i: usize) -> bool {
    let steep = |h: f64| h.abs() > STEEPEST;
    let chords = [survey.headings[i - 1], survey.headings[i]];
    survey.turn(i).abs() > CORNER || chords.into_iter().any(steep)
}

/// Turn at the neighbour `other` of a point, rad, unsigned. A sharp corner ends a curve, and tells
/// nothing of it; a short chord before it is taken for a part of the curve.
fn beside(survey: &Survey, i: usize, other: usize) -> f64 {
    if !inside(survey, other) || !is_sharp(survey, other) {
        return survey.turn(other).abs();
    }
    let chord = if other < i { other } else { i };
    if survey.lengths[chord] < SHORT {
        survey.turn(i).abs()
    } else {
        0.0
    }
}

fn inside(survey: &Survey, i: usize) -> bool {
    i > 0 && i < survey.headings.len()
}

/// Whether a chord is so much longer than the ones beside it that it stands for a straight
/// stretch: points are taken where the shape changes.
pub(super) fn is_straight(survey: &Survey, chord: usize) -> bool {
    let before = chord.checked_sub(1).map_or(0.0, |i| survey.lengths[i]);
    let after = survey.lengths.get(chord + 1).copied().unwrap_or(0.0);
    survey.lengths[chord] > LONG * num::max(before, after)
}

/// Heading at a point where the line is smooth: of a straight stretch that ends there, else
/// between the chords.
fn smooth(survey: &Survey, i: usize) -> Option<f64> {
    if !inside(survey, i) || is_corner(survey, i) {
        return None;
    }
    let straight = [i - 1, i].into_iter().find(|&c| is_straight(survey, c));
    Some(straight.map_or_else(|| between(survey, i), |c| survey.headings[c]))
}

/// Heading between the chords' headings, each weighted by how much the line bends beyond the
/// *other* one and by the other's length: next to a straight stretch it is the straight one's, on
/// a circle the circle's, to the second order in the turn.
fn between(survey: &Survey, i: usize) -> f64 {
    let (before, after) = (survey.lengths[i - 1], survey.lengths[i]);
    let mut a = bend(survey, i + 1, i) * after;
    let mut b = bend(survey, i - 1, i) * before;
    if a + b < 1e-9 {
        (a, b) = (after, before);
    }
    survey.headings[i - 1] + survey.turn(i) * b / (a + b)
}

/// Curvature at a point, 1/m, unsigned, as its neighbour `from` sees it: it goes on through a
/// corner, it is the near side's where a straight stretch lies beyond, and the ends of a line are
/// straight.
fn bend(survey: &Survey, i: usize, from: usize) -> f64 {
    if !inside(survey, i) {
        return 0.0;
    }
    let (near, beyond) = if from < i { (from, i) } else { (i, i - 1) };
    if is_corner(survey, i) {
        return curvature(survey, from);
    }
    if is_straight(survey, beyond) {
        return 2.0 * num::sin(survey.turn(i)).abs() / survey.lengths[near];
    }
    curvature(survey, i)
}

/// Curvature of the circle through a point and its two neighbours, 1/m, unsigned.
fn curvature(survey: &Survey, i: usize) -> f64 {
    let across = num::length(survey.points[i + 1] - survey.points[i - 1]);
    2.0 * num::sin(survey.turn(i)).abs() / across
}
