//! Riding hollows and crests of one radius.

use super::rig::{add, centre, ground, loaded_radius, passive, past, run};
use glam::DVec2;
use sim::constants::GRAVITY;
use sim::ride::{Mount, Run, Sample};
use std::f64::consts::PI;
use tests::checks::{
    Bound::{Share, Within},
    Check, judge,
};

/// The complete elliptic integral K of a modulus, by Gauss's arithmetic-geometric mean.
fn elliptic(modulus: f64) -> f64 {
    let (mut a, mut b) = (1.0, (1.0 - modulus * modulus).sqrt());
    for _ in 0..20 {
        (a, b) = (0.5 * (a + b), (a * b).sqrt());
    }
    PI / (2.0 * a)
}

fn table() -> [Check; 3] {
    [(30.0, 1.017409), (60.0, 1.073182), (90.0, 1.180341)].map(|(degrees, expected)| Check {
        what: format!("pendulum's period from {degrees}° over that of small swings"),
        source: "DLMF ch. 19; Goldstein, Classical Mechanics",
        unit: "",
        expected,
        got: 2.0 / PI * elliptic((0.5 * f64::to_radians(degrees)).sin()),
        bound: Within(1e-6),
        why: "digits given",
    })
}

/// Rider and bike in a hollow turn about its centre like one body: a compound pendulum, to whose
/// inertia the wheels add what their own spin takes.
fn hollow(radius: f64, degrees: f64) -> Check {
    let m = passive();
    let angle = f64::to_radians(degrees);
    let ground = ground(-angle, &[(2.0 * angle * radius, 1.0 / radius)]);
    let run = run(&ground, &m, 0.0);
    let pivot = ground.pieces[0].start + DVec2::from_angle(-angle).perp() * radius;
    let first = run.samples[0];
    let start = DVec2::new(first.bike_x, first.bike_z) - pivot;
    let (inertia, moment) = about(&m, &first, pivot);
    let swing = (-start.x).atan2(-start.y);
    let passed = run
        .samples
        .windows(2)
        .find(|s| s[1].bike_x >= pivot.x)
        .expect("it gets there");
    let share = (pivot.x - passed[0].bike_x) / (passed[1].bike_x - passed[0].bike_x);
    Check {
        what: format!("from rest to the bottom of a hollow, R {radius} m, {degrees}°"),
        source: "compound pendulum, √(I/(M g d)) K(sin ½α) (Goldstein)",
        unit: "s",
        expected: (inertia / (GRAVITY * moment)).sqrt() * elliptic((0.5 * swing).sin()),
        got: passed[0].t + share * (passed[1].t - passed[0].t),
        bound: Share(3e-3),
        why: "the passive legs give a little under the growing load; bearings",
    }
}

/// Inertia about a hollow's centre, kg m², and mass times distance of the mass centre, kg m.
fn about(m: &Mount, s: &Sample, pivot: DVec2) -> (f64, f64) {
    let up = DVec2::from_angle(s.pitch).perp();
    let bike = DVec2::new(s.bike_x, s.bike_z) + up * m.bike_rise;
    let rider = DVec2::new(s.rider_x, s.rider_z);
    let axle = DVec2::new(s.bike_x, s.bike_z) - pivot;
    let axle = (axle.length_squared() + 0.25 * m.wheelbase * m.wheelbase).sqrt();
    let spin = axle / loaded_radius(m);
    let inertia = m.rider_mass * rider.distance_squared(pivot)
        + m.rider_inertia
        + m.bike_mass * bike.distance_squared(pivot)
        + m.bike_inertia
        + 2.0 * m.wheel_inertia * spin * spin;
    (inertia, m.mass() * centre(m, s).distance(pivot))
}

/// Load of both wheels at the bottom of a hollow: M (g + v²/ρ), ρ the mass centre's own radius.
fn load(radius: f64, speed: f64) -> Check {
    let m = passive();
    let angle = 0.5;
    let ground = ground(-angle, &[(2.0 * angle * radius, 1.0 / radius)]);
    let pivot = ground.pieces[0].start + DVec2::from_angle(-angle).perp() * radius;
    let run = run(&ground, &m, speed);
    let s = past(&run, pivot.x);
    let around = centre(&m, &s).distance(pivot);
    Check {
        what: format!("load at the bottom of a hollow, R {radius} m, from {speed} m/s"),
        source: "circular motion (any textbook of mechanics)",
        unit: "N",
        expected: m.mass() * (GRAVITY + s.speed * s.speed / around),
        got: s.rear_load + s.front_load,
        bound: Share(0.01),
        why: "the passive legs swing for a while after the start",
    }
}

/// Load of both wheels on a crest, halfway to leaving it: M (g cos θ − v²/ρ).
fn crest_load(radius: f64, speed: f64) -> Check {
    let m = passive();
    let (run, pivot) = over_crest(&m, radius, speed);
    let carried = |s: &Sample| {
        let out = centre(&m, s) - pivot;
        m.mass() * (GRAVITY * out.y - s.speed * s.speed) / out.length()
    };
    let weight = m.mass() * GRAVITY;
    let half = |s: &&Sample| s.bike_x > pivot.x + 0.1 * radius && carried(s) < 0.4 * weight;
    let s = run.samples.iter().find(half).expect("the load goes");
    Check {
        what: format!("load on a crest, R {radius} m, from {speed} m/s"),
        source: "circular motion (any textbook of mechanics)",
        unit: "N",
        expected: carried(s),
        got: s.rear_load + s.front_load,
        bound: Share(0.02),
        why: "the legs stretch as the load goes: the mass centre's path is not quite a circle",
    }
}

/// The ride over a crest that begins level behind 10 m of level ground, and the crest's centre.
fn over_crest(m: &Mount, radius: f64, speed: f64) -> (Run, DVec2) {
    let mut ground = ground(0.0, &[(10.0, 0.0), (radius * 1.2, -1.0 / radius)]);
    add(&mut ground, -1.2, &[(30.0, 0.0)]);
    (run(&ground, m, speed), DVec2::new(10.0, -radius))
}

/// A wheel leaves a crest where the mass centre's v² is g ρ cos θ. The other one hangs on for a
/// moment, as long as the bike still turns with the ground.
fn crest(radius: f64, speed: f64) -> Check {
    let m = tests::rigid::rigid(&passive());
    let (run, pivot) = over_crest(&m, radius, speed);
    let light = 0.005 * m.mass() * GRAVITY;
    let off = |s: &&Sample| s.rear_load.min(s.front_load) < light;
    let left = run.samples.iter().find(off).expect("it leaves the crest");
    let out = centre(&m, left) - pivot;
    Check {
        what: format!("speed where a wheel leaves a crest, R {radius} m, from {speed} m/s"),
        source: "circular motion: v = √(g ρ cos θ)",
        unit: "m/s",
        expected: (GRAVITY * out.y).sqrt(),
        got: left.speed,
        bound: Share(0.03),
        why: "one rigid body on two wheels: one of them is free a little before the other",
    }
}

#[test]
fn arcs() {
    let mut checks = table().to_vec();
    checks.extend([hollow(30.0, 30.0), hollow(30.0, 15.0), hollow(12.0, 30.0)]);
    checks.extend([load(20.0, 6.0), load(10.0, 6.0)]);
    checks.extend([crest_load(20.0, 6.0), crest_load(10.0, 5.0)]);
    checks.extend([
        crest(20.0, 5.0),
        crest(20.0, 7.0),
        crest(20.0, 9.0),
        crest(10.0, 5.0),
    ]);
    judge("Hollows and crests", &checks);
}
