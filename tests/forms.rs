//! Closed forms and sums that the model is judged by; no code of the model is in them.

use glam::DVec2;
use sim::constants::GRAVITY;
use std::f64::consts::FRAC_PI_2;

/// The complete elliptic integral K of a modulus, by Gauss's arithmetic-geometric mean.
pub fn elliptic(modulus: f64) -> f64 {
    let (mut a, mut b) = (1.0, (1.0 - modulus * modulus).sqrt());
    for _ in 0..20 {
        (a, b) = (0.5 * (a + b), (a * b).sqrt());
    }
    FRAC_PI_2 / a
}

/// Drag of both wheels' bearings at a speed, N.
///
/// Martin et al. 1998, J. Appl. Biomech. 14:276: a power of V (91 + 8.7 V) mW.
pub fn bearings(speed: f64) -> f64 {
    0.091 + 0.0087 * speed
}

/// One step of the classical Runge-Kutta method.
fn step(y: DVec2, h: f64, rate: impl Fn(DVec2) -> DVec2) -> DVec2 {
    let a = rate(y);
    let b = rate(y + a * (0.5 * h));
    let c = rate(y + b * (0.5 * h));
    let d = rate(y + c * h);
    y + (a + (b + c) * 2.0 + d) * (h / 6.0)
}

/// The speed that is left after a distance, from M v dv/dx = force(v).
pub fn speed_after(mass: f64, force: impl Fn(f64) -> f64, from: f64, distance: f64) -> f64 {
    const STEPS: u32 = 4000;
    let h = distance / f64::from(STEPS);
    // With v² in place of v a start from rest is like any other.
    let rate = |y: DVec2| DVec2::new(2.0 * force(y.x.max(0.0).sqrt()) / mass, 0.0);
    let square = (0..STEPS).fold(DVec2::new(from * from, 0.0), |y, _| step(y, h, rate));
    square.x.sqrt()
}

/// A flight in still air, a = −g − k v v: place and velocity after a time, from the origin.
pub fn flown(from: DVec2, k: f64, time: f64) -> (DVec2, DVec2) {
    const STEPS: u32 = 2000;
    let h = time / f64::from(STEPS);
    let rate = |v: DVec2| -DVec2::Y * GRAVITY - v * (k * v.length());
    let (mut place, mut v) = (DVec2::ZERO, from);
    for _ in 0..STEPS {
        let (middle, next) = (step(v, 0.5 * h, rate), step(v, h, rate));
        place += (v + middle * 4.0 + next) * (h / 6.0);
        v = next;
    }
    (place, v)
}
