//! Shapes as points: places on a drawing, arcs, timbers.

use crate::scene::view::Strip;
use glam::DVec2;
use sim::build::outline::{Edge, Outline};
use sim::num;

/// How far a drawn arc may stray from its circle, px.
const STRAY: f64 = 0.05;

/// A drawing at so many px to the metre, with the place where 0, 0 falls.
pub fn at(origin: DVec2, scale: f64) -> Strip {
    Strip {
        from: f64::NEG_INFINITY,
        to: f64::INFINITY,
        beyond: 0.0,
        scale,
        origin,
        top: 0.0,
        bottom: 0.0,
    }
}

/// Points along an edge, its ends included, m; no chord strays from the circle where a metre is `scale` px.
pub fn along(edge: &Edge, scale: f64) -> Vec<DVec2> {
    let Some(centre) = edge.centre else {
        return vec![edge.from, edge.to];
    };
    let (a, b) = (edge.from - centre, edge.to - centre);
    let turn = num::atan2(a.perp_dot(b), a.dot(b));
    let chord = (8.0 * STRAY / (scale * num::length(a))).sqrt();
    let steps = num::clamp((turn.abs() / chord).ceil(), 1.0, 2000.0) as u32;
    let point = |i: u32| {
        let (sine, cosine) = num::sin_cos(turn * f64::from(i) / f64::from(steps));
        centre + DVec2::new(cosine, sine).rotate(a)
    };
    (0..=steps).map(point).collect()
}

/// Points round an outline, m.
pub fn round(outline: &Outline, scale: f64) -> Vec<DVec2> {
    outline.edges.iter().flat_map(|e| along(e, scale)).collect()
}

/// A timber's corners: from one end to the other, so thick to either side, and closed.
pub fn timber(from: DVec2, to: DVec2, left: f64, right: f64) -> [DVec2; 5] {
    let across = (to - from).normalize_or_zero().perp();
    let (l, r) = (across * left, across * right);
    [from + l, to + l, to - r, from - r, from + l]
}

/// The pieces of a line through points that lie within a rectangle.
pub fn cut(points: &[DVec2], [low, high]: [DVec2; 2]) -> Vec<Vec<DVec2>> {
    let mut pieces: Vec<Vec<DVec2>> = Vec::new();
    for pair in points.windows(2) {
        let Some([a, b]) = within(pair[0], pair[1], low, high) else {
            continue;
        };
        match pieces.last_mut() {
            Some(piece) if piece.last() == Some(&a) => piece.push(b),
            _ => pieces.push(vec![a, b]),
        }
    }
    pieces
}

/// The part of a straight line within a rectangle, one side after the other.
fn within(from: DVec2, to: DVec2, low: DVec2, high: DVec2) -> Option<[DVec2; 2]> {
    let way = to - from;
    let (mut begin, mut end) = (0.0_f64, 1.0_f64);
    for axis in 0..2 {
        let (a, d) = (from[axis], way[axis]);
        if d == 0.0 {
            if a < low[axis] || a > high[axis] {
                return None;
            }
            continue;
        }
        let sides = [(low[axis] - a) / d, (high[axis] - a) / d];
        begin = begin.max(sides[0].min(sides[1]));
        end = end.min(sides[0].max(sides[1]));
    }
    let at = |share: f64| match share {
        0.0 => from,
        1.0 => to,
        _ => from + way * share,
    };
    (begin < end).then(|| [at(begin), at(end)])
}
