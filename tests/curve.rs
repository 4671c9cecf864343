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
    /// The point.
    pub point: DVec2,
    /// Unit vector along the path.
    pub tangent: DVec2,
    /// 1/m, positive in a hollow.
    pub curvature: f64,
    /// Index of the surface in `Surface::ALL`.
    pub surface: usize,
}

/// Where a bike stands whose wheels both touch the ground, and how it moves.
#[derive(Clone, Copy, Debug)]
pub struct Stand {
    /// Front wheel's centre along the path, m.
    pub front: f64,
    /// Its speed, m/s.
    pub front_speed: f64,
    /// Heading from the rear axle to the front one, rad.
    pub pitch: f64,
    /// Its rate, rad/s.
    pub turning: f64,
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
    radius: f64,
    /// Its length, m.
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
            radius,
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

    /// Length along the path to a point a wheelbase ahead of the one at `rear`.
    pub fn ahead(&self, rear: f64, wheelbase: f64) -> f64 {
        self.apart(rear, rear + wheelbase, wheelbase)
    }

    /// Length along the path to a point a wheelbase behind the one at `front`.
    pub fn behind(&self, front: f64, wheelbase: f64) -> f64 {
        self.apart(front, front - wheelbase, wheelbase)
    }

    /// Length along the path to a point a wheelbase from the one at `here`, by Newton's method from
    /// a first guess.
    fn apart(&self, here: f64, guess: f64, wheelbase: f64) -> f64 {
        let here = self.at(here).point;
        let mut there = guess;
        for _ in 0..30 {
            let spot = self.at(there);
            let between = spot.point - here;
            let off = between.length() - wheelbase;
            if off.abs() < 1e-14 {
                break;
            }
            there -= off * between.length() / between.dot(spot.tangent);
        }
        there
    }

    /// A bike whose rear wheel's centre is at `rear` and moves at `speed`.
    pub fn stand(&self, rear: f64, speed: f64, wheelbase: f64) -> Stand {
        let front = self.ahead(rear, wheelbase);
        let (a, b) = (self.at(rear), self.at(front));
        let along = (b.point - a.point) / wheelbase;
        let front_speed = speed * a.tangent.dot(along) / b.tangent.dot(along);
        let across = along.perp();
        let apart = front_speed * b.tangent.dot(across) - speed * a.tangent.dot(across);
        Stand {
            front,
            front_speed,
            pitch: along.to_angle(),
            turning: apart / wheelbase,
        }
    }

    /// How far a wheel's centre is over the path, negative under it, and the way out of the ground
    /// there; beyond a lip's edge the wheel rolls about that edge. Nothing where no part of the
    /// path lies square to `p` within a wheel's radius.
    pub fn near(&self, p: DVec2) -> Option<(f64, DVec2)> {
        let mut least = f64::INFINITY;
        let mut along = 0.0;
        for (i, s) in self.stretches.iter().enumerate() {
            let (foot, begins, ends) = (s.foot(p), self.begins(i), self.ends(i));
            if foot < begins - self.radius || foot > ends + self.radius {
                continue;
            }
            let foot = s.from + foot.clamp(begins, ends);
            let apart = self.at(foot).point.distance_squared(p);
            if apart < least {
                (least, along) = (apart, foot);
            }
        }
        if least.is_infinite() {
            return None;
        }
        let spot = self.at(along);
        let normal = spot.tangent.perp();
        let off = p - spot.point;
        if self.ends_in_a_lip && along >= self.length && off.dot(spot.tangent) > 0.0 {
            let arm = off + normal * self.radius;
            return Some((arm.length() - self.radius, arm.normalize()));
        }
        Some((off.dot(normal), normal))
    }

    /// Where a stretch begins, by its own length; the first goes on backward.
    fn begins(&self, i: usize) -> f64 {
        if i == 0 { f64::NEG_INFINITY } else { 0.0 }
    }

    /// Where a stretch ends, by its own length; the last goes on unless there is a lip.
    fn ends(&self, i: usize) -> f64 {
        match self.stretches.get(i + 1) {
            Some(next) => next.from - self.stretches[i].from,
            None if self.ends_in_a_lip => self.length - self.stretches[i].from,
            None => f64::INFINITY,
        }
    }
}

impl Stretch {
    /// Length along the stretch, or its prolongation, to the foot of the perpendicular from `p`.
    fn foot(&self, p: DVec2) -> f64 {
        let tangent = DVec2::from_angle(self.heading);
        let way = p - self.start;
        if self.curvature == 0.0 {
            return way.dot(tangent);
        }
        // From the circle's centre the foot lies on the way to `p`.
        let arm = way * self.curvature - tangent.perp();
        let there = arm.perp();
        tangent.perp_dot(there).atan2(tangent.dot(there)) / self.curvature
    }
}
