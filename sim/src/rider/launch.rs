//! The launch: how far the body goes back in a lip, so that bike and body leave it turning as the flight
//! needs.
//!
//! Once the front wheel is over the edge, rider and bike go on as one piece on the rear wheel, whose load
//! turns them nose-down. This is rehearsed: with the mass centre at (a, b) from the rear axle, along the lip
//! and square to it, the axle going at u along a way of curvature κ and the piece turning at Ω,
//!
//! ```text
//! Ω' = −M a (u²κ − Ω² b + g n_z) / (I + M a²)        u' = −g t_z + Ω' b + Ω² a
//! ```
//!
//! The place of the body is the one that leaves Ω at the edge as bike, body and the body's angle about the
//! middle need it to come, in the time of the flight, to where they belong on the landing.

use super::flight::{self, Fall, Forecast};
use super::habits;
use super::sight::{Lip, RUN_UP, Sight};
use super::turning::Turning;
use crate::body::{Mount, PITCH, Pose, Y};
use crate::constants::GRAVITY;
use crate::num;
use glam::DVec2;

/// What the rider means to do at the edge of a lip.
#[derive(Clone, Copy, Debug, Default)]
pub struct Launch {
    /// How far behind the middle the body is to be as the front wheel passes the edge, m.
    pub back: f64,
    /// By how much of the load the legs push more than would keep their length, once the front wheel is
    /// over the edge: more load leaves less turning.
    pub extra: f64,
    /// Push meant for that stretch, N.
    pub push: f64,
}

/// How rider and bike are to move as the front wheel passes the edge.
#[derive(Clone, Copy, Debug)]
pub struct Off {
    /// Speed of the common mass centre, m/s.
    pub speed: f64,
    /// How the body turns about the middle, rad/s.
    pub swing_rate: f64,
    /// Push of the legs from then on, N.
    pub push: f64,
    /// From the middle to the body, m.
    pub reach: f64,
    /// How far behind the middle the body comes to be, m.
    pub back: f64,
}

/// Steps of the rehearsal.
const STEPS: usize = 6;

/// Rider and bike as one piece, as the rear wheel passes the edge.
#[derive(Clone, Copy, Debug)]
struct Left {
    /// How the mass centre moves.
    v: DVec2,
    pitch: f64,
    /// How everything turns, rad/s.
    spin: f64,
}

/// Rider and bike as one piece on a lip.
struct Piece<'a> {
    m: &'a Mount,
    lip: &'a Lip,
    /// The mass centre ahead of the rear axle and over the line of the axles, m.
    ahead: f64,
    over: f64,
    inertia: f64,
}

impl<'a> Piece<'a> {
    fn new(m: &'a Mount, lip: &'a Lip, off: &Off) -> Self {
        let f = m.rider_mass / m.mass();
        let Off { back, reach, .. } = *off;
        let high = num::max(reach * reach - back * back, 0.0).sqrt();
        Self {
            m,
            lip,
            ahead: 0.5 * m.wheelbase - f * back,
            over: f * high + (1.0 - f) * m.bike_rise,
            inertia: m.bike_inertia + m.rider_inertia + m.reduced_mass() * reach * reach,
        }
    }

    /// The mass centre from the rear axle, along the lip and square to it, where the lip heads at
    /// `heading`.
    fn centre(&self, pitch: f64, heading: f64) -> (f64, f64) {
        let (s, c) = num::sin_cos(pitch - heading);
        (
            self.ahead * c - self.over * s,
            self.ahead * s + self.over * c,
        )
    }

    /// From the front wheel's passing of the edge, as planned, to the rear wheel's.
    fn rehearse(&self, off: &Off) -> Left {
        let lip = self.lip;
        let w = self.m.wheelbase;
        let (heading, _) = lip.heading(-w);
        let (a, b) = self.centre(lip.chord, heading);
        // The axle's speed that goes with how the mass centre moves; the bike turns with the chord.
        let body = self.m.rider_inertia * habits::LEAN_RATE_WITH
            + self.m.reduced_mass() * off.reach * off.reach;
        let spin = |u: f64| {
            (self.m.bike_inertia * lip.chord_turn * u + body * off.swing_rate) / self.inertia
        };
        let u = |spin: f64| {
            num::max(off.speed * off.speed - spin * spin * a * a, 0.25).sqrt() + spin * b
        };
        let first = u(spin(off.speed));
        let u = u(spin(first));
        self.roll(-w, lip.chord, u, spin(u), off.push)
    }

    /// From the rear wheel at `at` m to the edge, at `u` m/s, turning at `spin` rad/s.
    fn roll(&self, mut at: f64, mut pitch: f64, mut u: f64, mut spin: f64, push: f64) -> Left {
        let (m, lip) = (self.m, self.lip);
        let step = -at / STEPS as f64;
        for _ in 0..STEPS {
            // Midpoint rule, by way: what happens in a step takes step/u.
            let rates = |at: f64, pitch: f64, u: f64, spin: f64| {
                let (heading, bend) = lip.heading(at);
                let (a, b) = self.centre(pitch, heading);
                let (s, c) = num::sin_cos(heading);
                let half = 0.5 * m.wheelbase;
                let bike = m.bike_mass * (u * u * bend - spin * spin * m.bike_rise + GRAVITY * c);
                let load = num::max(push + bike, 0.0);
                let spin_rate = -a * load / (self.inertia + m.bike_mass * a * half);
                (-GRAVITY * s + spin_rate * b + spin * spin * a, spin_rate)
            };
            let h = step / num::max(u, 0.5);
            let (u_rate, spin_rate) = rates(at, pitch, u, spin);
            let (u_mid, spin_mid) = (u + 0.5 * h * u_rate, spin + 0.5 * h * spin_rate);
            let u_mid = num::max(u_mid, 0.5);
            let (u_rate, spin_rate) =
                rates(at + 0.5 * step, pitch + 0.5 * h * spin, u_mid, spin_mid);
            let h = step / u_mid;
            at += step;
            pitch += h * spin_mid;
            u = num::max(u + h * u_rate, 0.5);
            spin += h * spin_rate;
        }
        let exit = num::atan2(lip.along.y, lip.along.x);
        let (a, b) = self.centre(pitch, exit);
        let (t, n) = (lip.along, lip.along.perp());
        Left {
            v: t * (u - spin * b) + n * (spin * a),
            pitch,
            spin,
        }
    }

    /// Turning that the flight needs, rad/s, on the average over all that turns.
    fn need(&self, left: &Left, end: &Forecast, back: f64) -> f64 {
        let m = self.m;
        // The legs grow long on the way.
        let long = flight::reach_down(m);
        let now = self.inertia - m.bike_inertia - m.rider_inertia;
        let orbit = 0.5 * (now + m.reduced_mass() * long * long);
        let swing = left.pitch + back / m.reach_usual;
        let way = m.bike_inertia * (end.slope + habits::NOSE - left.pitch)
            + m.rider_inertia * (habits::LEAN_DOWN * end.slope - habits::LEAN_WITH_SLOPE * swing)
            + orbit * (habits::SWING_DOWN * end.slope - swing);
        way / (num::max(end.t, 0.15) * self.inertia)
    }
}

/// The launch over a lip and the flight from it, in the mind.
pub struct Rehearsal<'a> {
    m: &'a Mount,
    lip: &'a Lip,
    end: Forecast,
}

impl<'a> Rehearsal<'a> {
    /// Of lip `index`, with the flight as it would be from `off`.
    pub fn new(m: &'a Mount, sight: &'a Sight, index: usize, off: &Off) -> Self {
        let lip = &sight.lips[index];
        let left = Piece::new(m, lip, off).rehearse(off);
        let end = meant(m, sight, lip, num::length(left.v));
        Self { m, lip, end }
    }

    /// Turning that is left at the edge beyond what the flight needs, rad/s.
    pub fn over(&self, off: &Off) -> f64 {
        let piece = Piece::new(self.m, self.lip, off);
        let left = piece.rehearse(off);
        left.spin - piece.need(&left, &self.end, off.back)
    }

    /// Range of places to try, m behind the middle: the farther back, the more turning is left.
    pub fn places(&self) -> [f64; 2] {
        [-0.1, habits::FARTHEST_BACK].map(|share| share * self.m.wheelbase)
    }
}

/// The touch-down of the flight as it is meant, at `speed` and nearly in line with the lip: whoever
/// reckoned with the flight of a launch that fails would see to it that it does.
fn meant(m: &Mount, sight: &Sight, lip: &Lip, speed: f64) -> Forecast {
    let exit = num::atan2(lip.along.y, lip.along.x);
    let (s, c) = num::sin_cos(exit - habits::FLATTER);
    let over = (m.rider_mass * m.reach_usual + m.bike_mass * m.bike_rise) / m.mass();
    let fall = Fall {
        centre: lip.edge
            + lip.along.perp() * (m.tyre.radius + over)
            + lip.along * (habits::AHEAD * m.wheelbase),
        v: DVec2::new(c, s) * speed,
        reach: m.reach_usual,
        swing: exit,
        back: 0.0,
    };
    flight::fly(m, sight, &fall, 0.0, lip.knuckle.x)
}

/// How much more or less the legs have to push on what is left of the lip, with the front wheel over its
/// edge, for the turning that the flight needs.
pub fn extra(m: &Mount, sight: &Sight, index: usize, pose: &Pose, y: &Y, push: f64) -> f64 {
    let lip = &sight.lips[index];
    let at = (pose.axle[0] - lip.edge).dot(lip.along);
    if at > -habits::TOO_LATE * m.wheelbase {
        return 0.0;
    }
    let turning = Turning::of(m, pose, y);
    let r = pose.centre - pose.axle[0];
    let inertia = m.bike_inertia + m.rider_inertia + turning.orbit;
    let piece = Piece {
        m,
        lip,
        ahead: r.dot(pose.along),
        over: r.dot(pose.along.perp()),
        inertia,
    };
    let (heading, _) = lip.heading(at);
    let spin = turning.spin / inertia;
    let u = pose.v_axle[0].dot(crate::profile::direction(heading));
    let left = piece.roll(at, y[PITCH], num::max(u, 0.5), spin, push);
    let end = meant(m, sight, lip, num::length(left.v));
    let need = piece.need(&left, &end, m.reach_usual * (turning.swing - y[PITCH]));
    // The load takes all the turning that goes.
    let goes = num::min(left.spin - spin, -0.2);
    num::clamp(
        habits::EAGER * (need - left.spin) / goes,
        -habits::MOST_EXTRA,
        habits::MOST_EXTRA,
    )
}

const _: () = assert!(RUN_UP >= STEPS);
