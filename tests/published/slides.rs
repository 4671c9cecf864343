//! Sliding down a cycloid and off a hemisphere, next to a point.

use super::rig::{between, centre, passive};
use glam::DVec2;
use sim::constants::GRAVITY;
use sim::ride::{Sample, ride};
use std::f64::consts::PI;
use tests::bare::{Bend, ground};
use tests::checks::{
    Bound::{Share, Within},
    Check,
};
use tests::rigid::point;
use tests::trace::FINE;

/// From rest to the bottom of a cycloid of rolling radius `r`, whose slope is `degrees` where it is
/// let go: the same time from everywhere.
fn cycloid(r: f64, degrees: f64) -> Check {
    const PIECES: u32 = 100;
    let m = point(&passive(), 0.01);
    let top = f64::to_radians(degrees);
    // Length from the bottom is 4 r sin ψ, ψ the slope.
    let slope = |i: u32| top * (1.0 - f64::from(i) / f64::from(PIECES));
    let bends: Vec<Bend> = (0..2 * PIECES)
        .map(|i| {
            let (a, b) = (slope(i), slope(i + 1));
            let length = 4.0 * r * (a.sin() - b.sin());
            (length, (a - b) / length)
        })
        .collect();
    let ground = ground(-top, &bends);
    let bottom = ground.pieces[PIECES as usize].start.x;
    let run = ride(&ground, &m, 0.0, &FINE);
    Check::new(
        format!("down a cycloid, r {r} m, from a slope of {degrees}°"),
        "Huygens 1673: π √(r/g) from everywhere",
        "s",
        [
            PI * (r / GRAVITY).sqrt(),
            between(&run.samples, |s| s.bike_x, bottom, |s| s.t),
        ],
        Share(3e-4),
        "the mass centre travels 1 cm inside the curve, whose radius is 20 to 40 m",
    )
}

/// Off a hemisphere, from a speed on top: cos θ = 2/3 + v²/(3 g ρ).
fn hemisphere(radius: f64, speed: f64) -> Check {
    let m = point(&passive(), 0.01);
    let ground = ground(0.0, &[(0.12, 0.0), (1.2 * radius, -1.0 / radius)]);
    // So hard a contact takes finer steps than a ride.
    let run = ride(&ground, &m, speed, &FINE);
    let pivot = DVec2::new(0.12, -radius);
    let out = |s: &Sample| centre(&m, s) - pivot;
    let around = out(&run.samples[0]).y;
    let weight = m.mass() * GRAVITY;
    let load = |s: &Sample| (s.rear_load + s.front_load) / weight;
    let cosine = |s: &Sample| out(s).y / out(s).length();
    let past = run.samples.iter().position(|s| cosine(s) < 0.95);
    let going = &run.samples[past.expect("it slides off")..];
    // The load falls with the cosine: what it is at a tenth and a twentieth says where it is gone.
    let [tenth, twentieth] = [0.1, 0.05].map(|part| between(going, load, part, cosine));
    let got = (2.0 * twentieth - tenth).acos().to_degrees();
    let expected = 2.0 / 3.0 + speed * speed / (3.0 * GRAVITY * around);
    Check::new(
        format!("off a hemisphere, R {radius} m, from {speed} m/s on top"),
        "cos θ = 2/3 + v²/(3 g R) (any textbook of mechanics)",
        "°",
        [expected.acos().to_degrees(), got],
        Within(0.1),
        "two wheels 4 cm apart, 0.1° seen from the middle; the load is read between samples",
    )
}

/// The table's rows.
pub fn checks() -> Vec<Check> {
    vec![
        cycloid(10.0, 60.0),
        cycloid(10.0, 30.0),
        hemisphere(20.0, 0.1),
        hemisphere(20.0, 5.0),
        hemisphere(20.0, 10.0),
    ]
}
