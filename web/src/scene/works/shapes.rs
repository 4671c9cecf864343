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
