//! Where a wheel touches the ground: the pieces near it, found without search.

use crate::body::{Mount, WheelForce};
use crate::num;
use crate::profile::{Piece, Profile};
use glam::DVec2;

/// Width of the bins that pieces are filed in, m. Finer bins hold fewer pieces each.
const BIN: f64 = 0.125;

/// The pieces of a profile, filed by where they lie along the line.
pub struct Ground {
    pieces: Vec<Patch>,
    bins: Vec<(u32, u32)>,
    origin: f64,
}

/// A piece with what the contact search needs beside it.
#[derive(Clone, Copy)]
struct Patch {
    piece: Piece,
    /// Whether the joint with the next piece is a corner that sticks out.
    corner: bool,
    next_tangent: DVec2,
    surface: usize,
}

/// A point of the ground in reach of a wheel.
#[derive(Clone, Copy)]
pub struct Touch {
    /// Unit normal toward the wheel.
    pub normal: DVec2,
    /// Distance from the wheel's centre, m.
    pub distance: f64,
    /// Index of the surface in `Surface::ALL`.
    pub surface: usize,
    /// Curvature of the turn, 1/m.
    pub turn: f64,
}

impl Ground {
    /// Files the pieces of a profile for wheels of up to `radius` m.
    pub fn new(profile: &Profile, radius: f64) -> Self {
        let pieces: Vec<Patch> = profile
            .pieces
            .iter()
            .enumerate()
            .map(|(i, p)| {
                let next = profile.pieces.get(i + 1);
                let next_tangent = next.map_or(p.end_tangent, |n| n.tangent);
                Patch {
                    piece: *p,
                    corner: p.end_tangent.perp_dot(next_tangent) < -1e-9
                        || p.end_tangent.dot(next_tangent) < -0.999,
                    next_tangent,
                    surface: p.character.surface.index(),
                }
            })
            .collect();
        let origin = pieces.first().map_or(0.0, |p| p.piece.start.x);
        let end = pieces.last().map_or(0.0, |p| p.piece.end.x);
        let count = ((end - origin) / BIN).ceil() as usize + 1;
        let mut bins = vec![(u32::MAX, 0); count];
        for (i, patch) in pieces.iter().enumerate() {
            let (a, b) = (patch.piece.start.x, patch.piece.end.x);
            let low = ((num::min(a, b) - radius - origin) / BIN).floor();
            let high = ((num::max(a, b) + radius - origin) / BIN).floor();
            let low = num::max(low, 0.0) as usize;
            let high = (num::max(high, 0.0) as usize).min(count - 1);
            for bin in &mut bins[low..=high] {
                bin.0 = bin.0.min(i as u32);
                bin.1 = bin.1.max(i as u32 + 1);
            }
        }
        Self {
            pieces,
            bins,
            origin,
        }
    }

    #[inline(always)]
    fn near(&self, x: f64) -> &[Patch] {
        let bin = num::clamp((x - self.origin) / BIN, 0.0, (self.bins.len() - 1) as f64) as usize;
        let (from, to) = self.bins[bin];
        self.pieces.get(from as usize..to as usize).unwrap_or(&[])
    }

    /// Calls `hit` for every point of the ground within `radius` of `centre`, on the air side.
    ///
    /// A hollow narrower than the wheel, or a face beside a floor, gives two.
    #[inline]
    pub fn touches(&self, centre: DVec2, radius: f64, mut hit: impl FnMut(Touch)) {
        for patch in self.near(centre.x) {
            // Past a piece's end there is no foot on it: never both. One call keeps `hit` in line.
            let found = foot(&patch.piece, centre, radius).or_else(|| tip(patch, centre, radius));
            if let Some((normal, distance)) = found {
                hit(Touch {
                    normal,
                    distance,
                    surface: patch.surface,
                    turn: patch.piece.character.turn,
                });
            }
        }
    }

    /// Signed distance from a point to the ground near it, at most `reach`; negative inside.
    pub fn clearance(&self, point: DVec2, reach: f64) -> f64 {
        let mut best = reach;
        for patch in self.near(point.x) {
            if let Some(c) = patch.piece.foot(point)
                && c.distance.abs() < best.abs()
            {
                best = c.distance;
            }
            if let Some((_, distance)) = tip(patch, point, best.abs()) {
                best = distance;
            }
        }
        best
    }

    /// What the ground does to a wheel at `centre`, moving at `velocity`, spinning at `spin` rad/s.
    #[inline]
    pub fn wheel(&self, m: &Mount, centre: DVec2, velocity: DVec2, spin: f64) -> WheelForce {
        let tyre = &m.tyre;
        let mut w = WheelForce::default();
        self.touches(centre, tyre.radius, |touch| {
            let depth = tyre.radius - touch.distance;
            let press = tyre.press(depth, -velocity.dot(touch.normal));
            let along = -touch.normal.perp();
            let slip = velocity.dot(along) - spin * touch.distance;
            let grip = tyre.friction(press.load, slip);
            let rolling = m.rolling[touch.surface] * press.load * touch.distance * sense(spin);
            w.force += touch.normal * press.load + along * grip;
            w.normal += touch.normal * press.load;
            w.load += press.load;
            w.torque -= grip * touch.distance + rolling;
            w.rolling += rolling * spin;
            w.damping -= press.damping * velocity.dot(touch.normal);
            w.slip -= grip * slip;
            w.stored += press.stored;
            w.turn = touch.turn;
        });
        if w.load > 0.0 {
            let rim = spin.abs() * tyre.radius;
            let bearing = 0.5 * (m.bearings[0] + m.bearings[1] * rim) * tyre.radius * sense(spin);
            w.torque -= bearing;
            w.rolling += bearing * spin;
        }
        w
    }
}

/// The sense of a rotation, −1 to 1, smooth through rest so that a wheel can come to rest.
#[inline]
pub fn sense(spin: f64) -> f64 {
    spin / (spin * spin + 0.01).sqrt()
}

/// Normal and distance of the corner at a patch's end, when `c` lies in its sector and less than
/// `radius` away.
#[inline(always)]
fn tip(patch: &Patch, c: DVec2, radius: f64) -> Option<(DVec2, f64)> {
    if !patch.corner {
        return None;
    }
    let d = c - patch.piece.end;
    let reach = num::length(d);
    let inside = reach < radius
        && reach > 1e-6
        && d.dot(patch.piece.end_tangent) >= 0.0
        && d.dot(patch.next_tangent) <= 0.0;
    inside.then(|| (d / reach, reach))
}

/// Normal and distance of the foot of the perpendicular from `c`, when it falls within the piece,
/// less than `radius` away and on the air side. Spares `Piece::foot`'s arctangent.
#[inline(always)]
fn foot(p: &Piece, c: DVec2, radius: f64) -> Option<(DVec2, f64)> {
    if p.curvature == 0.0 {
        let d = c - p.start;
        let normal = p.tangent.perp();
        let distance = d.dot(normal);
        if distance >= radius || distance <= 0.0 {
            return None;
        }
        let along = d.dot(p.tangent);
        return (along >= 0.0 && along < p.length).then_some((normal, distance));
    }
    let d = c - p.centre;
    let reach = num::length(d);
    let sign = if p.curvature > 0.0 { 1.0 } else { -1.0 };
    let distance = sign * (sign / p.curvature - reach);
    if distance >= radius || distance <= 0.0 || reach < 1e-9 {
        return None;
    }
    let outward = d / reach;
    let tangent = outward.perp() * sign;
    let inside = p.tangent.perp_dot(tangent) * sign >= 0.0
        && tangent.perp_dot(p.end_tangent) * sign > 0.0
        && p.tangent.dot(tangent) > -0.999_999;
    inside.then_some((outward * -sign, distance))
}
