//! Riding hollows and crests of one radius.

use super::rig::{between, bowl, centre, loaded_radius, passive, past, run};
use glam::DVec2;
use sim::constants::GRAVITY;
use sim::ride::{Mount, Run, Sample};
use std::f64::consts::PI;
use tests::bare::{add, ground};
use tests::checks::{
    Bound::{Share, Within},
    Check,
};
use tests::forms::elliptic;
use tests::rigid::{on_hard_tyres, point, rigid};

const CIRCULAR: &str = "circular motion (any textbook of mechanics)";

fn table() -> [Check; 3] {
    [(30.0, 1.017409), (60.0, 1.073182), (90.0, 1.180341)].map(|(degrees, expected)| {
        let got = 2.0 / PI * elliptic((0.5 * f64::to_radians(degrees)).sin());
        Check::new(
            format!("pendulum's period from {degrees}° over that of small swings"),
            "DLMF ch. 19; Goldstein, Classical Mechanics",
            "",
            [expected, got],
            Within(1e-6),
            "digits given",
        )
    })
}

/// Who slides or rolls to the bottom of a hollow, and what of that the formula leaves out.
struct Swinger {
    name: &'static str,
    mount: Mount,
    share: f64,
    why: &'static str,
}

fn swingers() -> [Swinger; 3] {
    let mut body = on_hard_tyres(rigid(&passive()));
    body.bearings = [0.0; 2];
    [
        Swinger {
            name: "rider",
            mount: passive(),
            share: 3e-3,
            why: "the passive legs give a little under the growing load; bearings",
        },
        Swinger {
            name: "one rigid body",
            mount: body,
            share: 1.5e-4,
            why: "two samples of 10 ms, read straight between; slip",
        },
        Swinger {
            name: "next to a point",
            mount: point(&passive(), 0.01),
            share: 1.5e-4,
            why: "two samples of 10 ms, read straight between",
        },
    ]
}

/// Rider and bike in a hollow turn about its centre like one body: a compound pendulum, to whose
/// inertia the wheels add what their own spin takes.
fn hollow(who: &Swinger, radius: f64, degrees: f64) -> Check {
    let m = &who.mount;
    let (ground, pivot) = bowl(radius, f64::to_radians(degrees));
    let run = run(&ground, m, 0.0);
    let first = run.samples[0];
    let start = DVec2::new(first.bike_x, first.bike_z) - pivot;
    let (inertia, moment) = about(m, &first, pivot);
    let swing = (-start.x).atan2(-start.y);
    let expected = (inertia / (GRAVITY * moment)).sqrt() * elliptic((0.5 * swing).sin());
    let name = who.name;
    Check::new(
        format!("{name}, from rest to the bottom, R {radius} m, {degrees}°"),
        "compound pendulum, √(I/(M g d)) K(sin ½α) (Goldstein)",
        "s",
        [
            expected,
            between(&run.samples, |s| s.bike_x, pivot.x, |s| s.t),
        ],
        Share(who.share),
        who.why,
    )
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
    let (ground, pivot) = bowl(radius, 0.5);
    let run = run(&ground, &m, speed);
    let s = past(&run, pivot.x);
    let around = centre(&m, &s).distance(pivot);
    let expected = m.mass() * (GRAVITY + s.speed * s.speed / around);
    Check::new(
        format!("load at the bottom of a hollow, R {radius} m, from {speed} m/s"),
        CIRCULAR,
        "N",
        [expected, s.rear_load + s.front_load],
        Share(0.01),
        "the passive legs swing for a while after the start",
    )
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
    Check::new(
        format!("load on a crest, R {radius} m, from {speed} m/s"),
        CIRCULAR,
        "N",
        [carried(s), s.rear_load + s.front_load],
        Share(0.02),
        "the legs stretch as the load goes: the mass centre's path is not quite a circle",
    )
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
    let m = rigid(&passive());
    let (run, pivot) = over_crest(&m, radius, speed);
    let light = 0.005 * m.mass() * GRAVITY;
    let off = |s: &&Sample| s.rear_load.min(s.front_load) < light;
    let left = run.samples.iter().find(off).expect("it leaves the crest");
    let out = centre(&m, left) - pivot;
    Check::new(
        format!("speed where a wheel leaves a crest, R {radius} m, from {speed} m/s"),
        "circular motion: v = √(g ρ cos θ)",
        "m/s",
        [(GRAVITY * out.y).sqrt(), left.speed],
        Share(0.03),
        "one rigid body on two wheels: one of them is free a little before the other",
    )
}

/// The table's rows.
pub fn checks() -> Vec<Check> {
    let mut checks = table().to_vec();
    let [rider, body, small] = swingers();
    checks.extend([(30.0, 30.0), (30.0, 15.0), (12.0, 30.0)].map(|(r, a)| hollow(&rider, r, a)));
    checks.extend([(12.0, 30.0), (6.0, 40.0)].map(|(r, a)| hollow(&body, r, a)));
    checks.extend([(2.4, 60.0), (3.0, 30.0)].map(|(r, a)| hollow(&small, r, a)));
    checks.extend([load(20.0, 6.0), load(10.0, 6.0)]);
    checks.extend([crest_load(20.0, 6.0), crest_load(10.0, 5.0)]);
    checks.extend([(20.0, 5.0), (20.0, 7.0), (20.0, 9.0), (10.0, 5.0)].map(|(r, v)| crest(r, v)));
    checks
}
