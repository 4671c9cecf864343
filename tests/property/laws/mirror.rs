//! Mirrored ground gives the mirrored flight.
//!
//! Rides go forward only, so the mirrored ground is ridden from what was the far end. A flight in a
//! vacuum is the same backward: who takes off where the first came down, as fast and against its
//! direction, flies its path and comes down where it took off. So it shows that nothing but weight
//! acts on the mass centre in the air, neither forward nor backward, and nothing on the way of the
//! step; what the air takes has no such mirror. The body is next to a point, so that it leaves a
//! straight ramp in the ramp's direction.

use super::Law;
use glam::DVec2;
use proptest::prelude::*;
use sim::constants::GRAVITY;
use sim::plan::{Weather, demo};
use sim::profile::Profile;
use sim::ride::{Accuracy, Mount, Sample, ride};
use sim::setup;
use tests::bare::{add, ground};
use tests::checks::{Check, judge};
use tests::rigid::point;

/// Length of each ramp, and the place on it where a ride begins, m.
const RAMP: f64 = 0.5;
const START: f64 = 0.05;

const RADIUS: f64 = 0.05;
const WHEELBASE: f64 = 0.004;

fn body() -> Mount {
    let demo = demo();
    let mut m = point(&setup::mount(&demo.riders[0], &Weather::default()), 1.0);
    (m.tyre.radius, m.tyre.height, m.wheelbase) = (RADIUS, 0.5 * RADIUS, WHEELBASE);
    m
}

/// From the edge of a ramp to the mass centre as the rear wheel leaves it.
fn over_edge(ramp: f64) -> DVec2 {
    let along = DVec2::from_angle(ramp);
    along.perp() * RADIUS + along * (0.5 * WHEELBASE)
}

fn mirrored(v: DVec2) -> DVec2 {
    DVec2::new(-v.x, v.y)
}

/// A flight from one ramp to the other: directions of both, rad, upward to either side; speeds at
/// both ends; the way between the edges.
#[derive(Clone, Copy, Debug)]
struct Flight {
    ramps: [f64; 2],
    speeds: [f64; 2],
    between: DVec2,
}

impl Flight {
    /// Off a ramp at a speed, for a share of the time that it takes to come down as high.
    fn new(ramp: f64, speed: f64, share: f64) -> Self {
        let from = DVec2::from_angle(ramp) * speed;
        let t = share * 2.0 * from.y / GRAVITY;
        let way = DVec2::new(from.x, from.y - 0.5 * GRAVITY * t) * t;
        let to = DVec2::new(from.x, from.y - GRAVITY * t);
        let far = (-to.y).atan2(to.x);
        Self {
            ramps: [ramp, far],
            speeds: [speed, to.length()],
            between: over_edge(ramp) + way - mirrored(over_edge(far)),
        }
    }

    fn mirrored(&self) -> Self {
        let [a, b] = self.ramps;
        let [v, w] = self.speeds;
        Self {
            ramps: [b, a],
            speeds: [w, v],
            between: DVec2::new(self.between.x, -self.between.y),
        }
    }

    fn ground(&self) -> Profile {
        let mut profile = ground(self.ramps[0], &[(RAMP, 0.0)]);
        // Straight from edge to edge: a flight is over that.
        add(
            &mut profile,
            self.between.to_angle(),
            &[(self.between.length(), 0.0)],
        );
        add(&mut profile, -self.ramps[1], &[(RAMP, 0.0)]);
        profile
    }

    /// The mass centre's places against the edge, and its speeds, in the air between the edges.
    fn flown(&self, m: &Mount) -> Vec<(DVec2, f64)> {
        let rise = (RAMP - START) * self.ramps[0].sin();
        let from = (self.speeds[0] * self.speeds[0] + 2.0 * GRAVITY * rise).sqrt();
        let profile = self.ground();
        let edge = profile.pieces[0].end;
        let run = ride(&profile, m, from, &Accuracy::default());
        // The mass centre is in the middle between the axles.
        let place = |s: &Sample| (DVec2::new(s.bike_x, s.bike_z) - edge, s.speed);
        let up = |s: &&Sample| s.rear_load + s.front_load > 0.0;
        let free = run.samples.iter().skip_while(up).map(place);
        // It comes down beyond the far edge, and at so flat an angle that it may hop from there.
        free.take_while(|(p, _)| p.x < self.between.x).collect()
    }
}

/// Height and square of the speed at `x`, by the parabola through three neighbours; both are one.
fn at(flown: &[(DVec2, f64)], x: f64) -> Option<[f64; 2]> {
    let i = flown.partition_point(|p| p.0.x < x);
    if i == 0 || i + 1 >= flown.len() {
        return None;
    }
    let [a, b, c] = [flown[i - 1], flown[i], flown[i + 1]];
    let weight = |p: f64, q: f64, r: f64| (x - q) * (x - r) / ((p - q) * (p - r));
    let (p, q, r) = (a.0.x, b.0.x, c.0.x);
    let through = |of: fn(&(DVec2, f64)) -> f64| {
        of(&a) * weight(p, q, r) + of(&b) * weight(q, r, p) + of(&c) * weight(r, p, q)
    };
    Some([through(|s| s.0.y), through(|s| s.1 * s.1)])
}

/// How far a flight and its mirror are apart: in height, m, and in speed, m/s.
fn apart(flight: &Flight) -> Result<[f64; 2], TestCaseError> {
    let m = body();
    let back = flight.mirrored();
    let (there, again) = (flight.flown(&m), back.flown(&m));
    let mut worst = [0.0_f64; 2];
    let mut compared = 0;
    for (place, speed) in &there {
        // The first edge, seen from the second ride's.
        let image = mirrored(*place) + back.between;
        let Some([height, square]) = at(&again, image.x) else {
            continue;
        };
        compared += 1;
        worst[0] = worst[0].max((height - image.y).abs());
        worst[1] = worst[1].max((square.sqrt() - speed).abs());
    }
    prop_assert!(compared > 10, "only {compared} places to compare");
    Ok(worst)
}

fn law(what: &'static str, unit: &'static str, most: f64, which: usize) -> Check {
    let law = Law {
        what,
        source: "a flight in a vacuum is the same backward (any textbook of mechanics)",
        unit,
        most,
        why: "the front wheel is over the edge a little before the rear one",
        cases: 64,
    };
    let inputs = (15.0..40.0, 5.0..9.0, 0.7..1.25);
    law.tried(inputs, |(degrees, speed, share)| {
        Ok(apart(&Flight::new(f64::to_radians(degrees), speed, share))?[which])
    })
}

#[test]
fn mirrored_ground_gives_the_mirrored_flight() {
    judge(
        "Mirrored ground",
        vec![
            law(
                "the mirrored flight's height at the same place",
                "m",
                2.5e-3,
                0,
            ),
            law(
                "the mirrored flight's speed at the same place",
                "m/s",
                2.5e-3,
                1,
            ),
        ],
    );
}
