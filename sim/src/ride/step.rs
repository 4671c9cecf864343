//! The time step: Bogacki and Shampine's embedded Runge-Kutta pair of orders 3 and 2, with its
//! error held below a tolerance, and a cubic between the ends of a step.
//!
//! # References
//! Bogacki and Shampine 1989, Appl. Math. Lett. 2(4):321-325.

use super::forces::{Felt, World};
use crate::body::{ENERGY, N, PLACES, Y, each};
use crate::num;

/// How finely to integrate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Accuracy {
    /// Error accepted in one step, in metres, radians, and a tenth of their rates.
    pub tolerance: f64,
    /// Longest step, s; kept well inside the stability limit of the tyres' grip.
    pub longest: f64,
}

impl Default for Accuracy {
    fn default() -> Self {
        Self {
            tolerance: 1e-5,
            longest: 4e-3,
        }
    }
}

/// A state with its rates and what was felt in it.
#[derive(Clone, Copy)]
pub struct Point {
    pub t: f64,
    pub y: Y,
    pub rates: Y,
    pub felt: Felt,
}

impl Point {
    /// The point at a time, rates worked out.
    pub fn new(world: &World, t: f64, y: Y) -> Self {
        let (rates, felt) = world.rates(t, &y);
        Self { t, y, rates, felt }
    }

    /// The state between this point and a later one, by the cubic through both with their rates.
    pub fn between(&self, to: &Point, t: f64) -> Y {
        let h = to.t - self.t;
        let s = (t - self.t) / h;
        let (a, b) = (s * s * (3.0 - 2.0 * s), s * (1.0 - s));
        each(|i| {
            self.y[i] * (1.0 - a)
                + to.y[i] * a
                + h * b * ((1.0 - s) * self.rates[i] - s * to.rates[i])
        })
    }
}

/// Shortest step, s: at it, or a little over where it would leave a sliver, the error is taken as it
/// comes.
const SHORTEST: f64 = 2e-5;

/// Share of the error accepted below which a step may certainly grow: 0.9/∛0.7 is over 1.
const AMPLE: f64 = 0.7;

/// One accepted step from `from`, no further than `end`; `h` is the step to try and is renewed.
pub fn advance(world: &World, from: &Point, end: f64, h: &mut f64, acc: &Accuracy) -> Point {
    loop {
        let room = end - from.t;
        let step = num::min(num::min(*h, acc.longest), room);
        // No sliver is left over for a last step.
        let step = if room - step < 0.1 * step { room } else { step };
        let last = step >= room;
        let (mut to, error) = attempt(world, from, step);
        let share = error / acc.tolerance;
        let factor = if share < AMPLE && *h >= acc.longest {
            // The next step would only be held to the longest again.
            1.0
        } else {
            num::clamp(0.9 / num::cbrt(num::max(share, 1e-6)), 0.2, 4.0)
        };
        if error <= acc.tolerance || step <= 1.2 * SHORTEST {
            // A step cut short by `end` says nothing about a longer one.
            *h = num::max(
                step * factor,
                num::min(*h, acc.longest) * num::min(factor, 1.0),
            );
            *h = num::max(*h, SHORTEST);
            if last {
                // By sum, the end could be missed by a rounding error and never be reached.
                to.t = end;
            }
            return to;
        }
        *h = num::max(step * num::min(factor, 0.9), SHORTEST);
    }
}

fn attempt(world: &World, from: &Point, h: f64) -> (Point, f64) {
    let (y, k1) = (&from.y, &from.rates);
    let y2 = each(|i| y[i] + 0.5 * h * k1[i]);
    let (k2, _) = world.rates(from.t + 0.5 * h, &y2);
    let y3 = each(|i| y[i] + 0.75 * h * k2[i]);
    let (k3, _) = world.rates(from.t + 0.75 * h, &y3);
    let next = each(|i| y[i] + h * (2.0 / 9.0 * k1[i] + 1.0 / 3.0 * k2[i] + 4.0 / 9.0 * k3[i]));
    let to = Point::new(world, from.t + h, next);
    let k4 = &to.rates;
    let mut error: f64 = 0.0;
    for i in 0..ENERGY {
        let e = h * (-5.0 / 72.0 * k1[i] + 1.0 / 12.0 * k2[i] + 1.0 / 9.0 * k3[i] - 0.125 * k4[i]);
        let weight = if i < PLACES { 1.0 } else { 0.1 };
        error = num::max(error, e.abs() * weight);
    }
    (to, if error.is_finite() { error } else { f64::MAX })
}

const _: () = assert!(ENERGY < N);
