//! The path of a wheel's centre: the curve that runs a wheel's radius over the ground.
//!
//! Over a piece of curvature κ it has the curvature κ/(1 − κ r), and its length is 1 − κ r times
//! the piece's. Where pieces meet without a bend, so do theirs.

use glam::DVec2;
use sim::profile::{Intent, Piece, Profile};

/// Bend between two pieces that counts as none, rad.
const FLUSH: f64 = 1e-9;

/// A point of the path.
#[derive(Clone, Copy, Debug)]
pub struct Spot {
    pub point: DVec2,
    pub tangent: DVec2,
    /// 1/m, positive in a hollow.
    pub curvature: f64,
    /// Index of the surface in `Surface::ALL`.
    pub surface: usize,
}

struct Stretch {
    from: f64,
    start: DVec2,
    heading: f64,
    curvature: f64,
    surface: usize,
}

/// The path of a wheel's centre, by its own length.
pub struct Curve {
    stretches: Vec<Stretch>,
    pub length: f64,
    /// Whether it ends at a lip's edge.
    pub ends_in_a_lip: bool,
}

impl Curve {
    /// The path over a profile's ground to its first lip's edge, or to where the rider brakes.
    pub fn over(profile: &Profile, radius: f64) -> Self {
        let edge = profile.lips.first().map_or(f64::INFINITY, |l| l.edge.x);
        let mut stretches: Vec<Stretch> = Vec::new();
        let mut from = 0.0;
        let mut last: Option<f64> = None;
        let ridden = |p: &&Piece| p.start.x < edge - 1e-9 && p.character.intent != Intent::Brake;
        for p in profile.pieces.iter().take_while(ridden) {
            let bend = last.map_or(0.0, |end: f64| end - p.heading);
            assert!(bend.abs() < FLUSH, "the ground has a corner of {bend} rad");
            last = Some(p.heading + p.curvature * p.length);
            let shrink = 1.0 - p.curvature * radius;
            stretches.push(Stretch {
                from,
                start: p.start + DVec2::from_angle(p.heading).perp() * radius,
                heading: p.heading,
                curvature: p.curvature / shrink,
                surface: p.character.surface as usize,
            });
            from += p.length * shrink;
        }
        Self {
            stretches,
            length: from,
            ends_in_a_lip: !profile.lips.is_empty(),
        }
    }

    /// The point at a length along the path; beyond its ends the first and last piece go on.
    pub fn at(&self, along: f64) -> Spot {
        let i = self.stretches.partition_point(|s| s.from <= along);
        let s = &self.stretches[i.saturating_sub(1)];
        let way = along - s.from;
        let turned = s.curvature * way;
        // The chord of an arc, in the middle of its directions.
        let chord = if turned == 0.0 {
            way
        } else {
            2.0 / s.curvature * (0.5 * turned).sin()
        };
        Spot {
            point: s.start + DVec2::from_angle(s.heading + 0.5 * turned) * chord,
            tangent: DVec2::from_angle(s.heading + turned),
            curvature: s.curvature,
            surface: s.surface,
        }
    }

    /// Length along the path to its point at a station, by halving; the path never turns back.
    pub fn place_over(&self, x: f64) -> f64 {
        let (mut low, mut high) = (-1.0, self.length + 1.0);
        for _ in 0..60 {
            let middle = 0.5 * (low + high);
            if self.at(middle).point.x < x {
                low = middle;
            } else {
                high = middle;
            }
        }
        low
    }

    /// Length along the path to a point a wheelbase ahead of the one at `rear`, by Newton's method.
    pub fn ahead(&self, rear: f64, wheelbase: f64) -> f64 {
        let behind = self.at(rear).point;
        let mut front = rear + wheelbase;
        for _ in 0..30 {
            let spot = self.at(front);
            let between = spot.point - behind;
            let off = between.length() - wheelbase;
            if off.abs() < 1e-14 {
                break;
            }
            front -= off * between.length() / between.dot(spot.tangent);
        }
        front
    }
}
