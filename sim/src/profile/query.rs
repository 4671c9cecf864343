//! Exact questions to a profile as a whole. The ride asks single pieces instead.

use super::{Closest, Piece, Profile};
use crate::num;
use glam::DVec2;

/// A place on the chain, as seen from above.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// Index of the piece.
    pub piece: usize,
    /// How far along the piece, m.
    pub along: f64,
    /// The point.
    pub point: DVec2,
    /// Heading there, rad; its tangent is the slope.
    pub heading: f64,
    /// Curvature there, 1/m.
    pub curvature: f64,
}

impl Profile {
    /// Length of the chain from end to end, faces included, m.
    pub fn length(&self) -> f64 {
        self.pieces.last().map_or(0.0, |p| p.before + p.length)
    }

    /// The uppermost place of the chain at a station, where there is one. Where pieces meet, the
    /// later one, but a plumb face only at its own top.
    pub fn spot(&self, x: f64) -> Option<Spot> {
        let mut best: Option<Spot> = None;
        for (piece, p) in self.pieces.iter().enumerate() {
            let Some(along) = along_at(p, x) else {
                continue;
            };
            let point = p.point(along);
            if best.is_none_or(|b| point.y >= b.point.y - JOINT) {
                best = Some(Spot {
                    piece,
                    along,
                    point,
                    heading: p.heading_at(along),
                    curvature: p.curvature,
                });
            }
        }
        best
    }

    /// Height of the surface at a station, seen from above, m.
    pub fn height_at(&self, x: f64) -> Option<f64> {
        self.spot(x).map(|s| s.point.y)
    }

    /// Heading of the surface at a station, seen from above, rad.
    pub fn heading_at(&self, x: f64) -> Option<f64> {
        self.spot(x).map(|s| s.heading)
    }

    /// The point of the whole chain closest to `p`, with the index of its piece; `None` only on a
    /// chain without pieces.
    pub fn closest(&self, p: DVec2) -> Option<(usize, Closest)> {
        let mut best: Option<(usize, Closest)> = None;
        let mut into = None;
        for (i, piece) in self.pieces.iter().enumerate() {
            let joint = corner(p, piece.start, into.unwrap_or(piece.tangent), piece.tangent);
            for found in [Some(joint), piece.foot(p)].into_iter().flatten() {
                keep_closer(&mut best, i, found);
            }
            into = Some(piece.end_tangent);
        }
        let last = self.pieces.last()?;
        let end = Closest {
            along: last.length,
            ..corner(p, last.end, last.end_tangent, last.end_tangent)
        };
        keep_closer(&mut best, self.pieces.len() - 1, end);
        best
    }
}

/// Ends of pieces that meet differ by rounding only, m.
const JOINT: f64 = 1e-9;

/// Tangents that differ by less than this, rad, meet without a corner.
const FLUSH: f64 = 1e-9;

fn keep_closer(best: &mut Option<(usize, Closest)>, piece: usize, found: Closest) {
    if best.is_none_or(|(_, b)| found.distance.abs() <= b.distance.abs()) {
        *best = Some((piece, found));
    }
}

/// How far along a piece a station lies; on a plumb face, its top.
fn along_at(p: &Piece, x: f64) -> Option<f64> {
    if x < num::min(p.start.x, p.end.x) || x > num::max(p.start.x, p.end.x) {
        return None;
    }
    if p.start.x == p.end.x {
        return Some(if p.end.y > p.start.y { p.length } else { 0.0 });
    }
    let along = if p.curvature == 0.0 {
        (x - p.start.x) / p.tangent.x
    } else {
        // Ridden arcs stay short of plumb: a hollow is the lower half of its circle, a crest the
        // upper one, and sin of the heading is the distance from the centre over the radius.
        let sine = (x - p.centre.x) * p.curvature;
        let heading = num::atan2(sine, num::max(0.0, 1.0 - sine * sine).sqrt());
        (heading - p.heading) / p.curvature
    };
    Some(num::clamp(along, 0.0, p.length))
}

/// A joint as the closest point, between the tangents `into` and `out` of it. A corner that stands
/// out is seen from the air, one that lies in from below the ground.
fn corner(p: DVec2, point: DVec2, into: DVec2, out: DVec2) -> Closest {
    let d = p - point;
    let turn = into.perp_dot(out);
    let upright = (into.perp() + out.perp()).normalize_or(into.perp());
    let air = if turn.abs() > FLUSH {
        turn < 0.0
    } else {
        d.dot(upright) >= 0.0
    };
    let sign = if air { 1.0 } else { -1.0 };
    Closest {
        point,
        normal: d.normalize_or(upright * sign) * sign,
        distance: num::length(d) * sign,
        along: 0.0,
    }
}
