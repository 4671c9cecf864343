//! One piece of the chain: a straight line or an arc of a circle, exact.

use super::Character;
use crate::num::{self, PI};
use glam::DVec2;
use serde::Serialize;

/// Steepest heading of anything that is ridden, rad: 80°, beyond which a bike stands on end.
pub(super) const STEEPEST: f64 = 80.0 * (PI / 180.0);

/// A straight or circular piece of ground.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Piece {
    /// Where it begins.
    pub start: DVec2,
    /// Where it ends.
    pub end: DVec2,
    /// Heading at the start, rad.
    pub heading: f64,
    /// Length along the piece, m.
    pub length: f64,
    /// Curvature, 1/m: positive in a hollow (the heading grows), negative on a crest, 0 straight.
    pub curvature: f64,
    /// Length of the chain before this piece, m.
    pub before: f64,
    /// Surface, intent and turn.
    pub character: Character,
    /// Unit tangent at the start; derived.
    pub(crate) tangent: DVec2,
    /// Unit tangent at the end; derived.
    pub(crate) end_tangent: DVec2,
    /// Centre of the circle; derived, meaningless where straight.
    pub(crate) centre: DVec2,
}

/// The point of a piece that is closest to some point in the air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Closest {
    /// The point on the piece.
    pub point: DVec2,
    /// Unit normal of the piece there, toward the air.
    pub normal: DVec2,
    /// Signed distance, m; positive on the air side.
    pub distance: f64,
    /// How far along the piece, m.
    pub along: f64,
}

impl Piece {
    /// A piece from `start` with a heading, a length and a curvature.
    pub fn new(
        start: DVec2,
        heading: f64,
        length: f64,
        curvature: f64,
        before: f64,
        character: Character,
    ) -> Self {
        let tangent = direction(heading);
        let end_tangent = direction(heading + curvature * length);
        let (end, centre) = if curvature == 0.0 {
            (start + tangent * length, DVec2::ZERO)
        } else {
            let radius = 1.0 / curvature;
            let centre = start + tangent.perp() * radius;
            (centre - end_tangent.perp() * radius, centre)
        };
        Self {
            start,
            end,
            heading,
            length,
            curvature,
            before,
            character,
            tangent,
            end_tangent,
            centre,
        }
    }

    /// Heading at the end, rad.
    pub fn end_heading(&self) -> f64 {
        self.heading + self.curvature * self.length
    }

    /// The point at a length along the piece.
    pub fn point(&self, along: f64) -> DVec2 {
        if self.curvature == 0.0 {
            self.start + self.tangent * along
        } else {
            self.centre - direction(self.heading + self.curvature * along).perp() / self.curvature
        }
    }

    /// Heading at a length along the piece, rad.
    pub fn heading_at(&self, along: f64) -> f64 {
        self.heading + self.curvature * along
    }

    /// The foot of the perpendicular from `p`, where it falls within the piece: from the start,
    /// inclusive, to the end, exclusive, so that a flush joint is counted once.
    #[inline]
    pub fn foot(&self, p: DVec2) -> Option<Closest> {
        if self.curvature == 0.0 {
            let d = p - self.start;
            let along = d.dot(self.tangent);
            if along < 0.0 || along >= self.length {
                return None;
            }
            let normal = self.tangent.perp();
            return Some(Closest {
                point: self.start + self.tangent * along,
                normal,
                distance: d.dot(normal),
                along,
            });
        }
        self.foot_on_arc(p)
    }

    #[inline]
    fn foot_on_arc(&self, p: DVec2) -> Option<Closest> {
        let d = p - self.centre;
        let reach = num::length(d);
        if reach < 1e-9 {
            return None;
        }
        // From the centre, the arc's own points lie to the right of the tangent in a hollow
        // (curvature > 0, centre on the air side) and to the left of it on a crest.
        let sign = if self.curvature > 0.0 { 1.0 } else { -1.0 };
        let radius = sign / self.curvature;
        let outward = d / reach;
        let tangent = outward.perp() * sign;
        // Inside the arc when the point's tangent is turned from the start's in the arc's own
        // sense and not beyond the end's. Pieces turn by less than half a circle.
        let from_start = self.tangent.perp_dot(tangent) * sign;
        let to_end = tangent.perp_dot(self.end_tangent) * sign;
        if from_start < 0.0 || to_end <= 0.0 || self.tangent.dot(tangent) < -0.999_999 {
            return None;
        }
        let turned = num::atan2(from_start, self.tangent.dot(tangent));
        Some(Closest {
            point: self.centre + outward * radius,
            normal: -outward * sign,
            distance: (radius - reach) * sign,
            along: turned * radius,
        })
    }
}

/// The unit vector with a heading in radians.
pub fn direction(heading: f64) -> DVec2 {
    // Exact where a face is plumb or a floor level, so that neither leans by a rounding error.
    if heading == 0.0 {
        return DVec2::X;
    }
    if heading == PI / 2.0 {
        return DVec2::Y;
    }
    if heading == -PI / 2.0 {
        return DVec2::NEG_Y;
    }
    let (s, c) = num::sin_cos(heading);
    DVec2::new(c, s)
}
