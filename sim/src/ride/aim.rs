//! Where the flight will end: the touch-down as the rider foresees it.

use super::mount::Mount;
use super::path::Path;
use super::state::Pose;
use crate::constants::GRAVITY;
use crate::num;

/// Farthest look ahead in a flight, s.
const FARTHEST: f64 = 2.5;

/// Step of the look ahead, s; the crossing itself is interpolated.
const STEP: f64 = 0.02;

/// The touch-down as foreseen at some moment.
#[derive(Clone, Copy, Debug)]
pub struct Forecast {
    /// When, s from the start of the ride.
    pub t: f64,
    /// Heading of the ground there, rad.
    pub slope: f64,
}

/// Follows the mass centre's parabola from `pose` to the ground, not before `from_x`.
pub fn forecast(m: &Mount, path: &Path, pose: &Pose, now: f64, from_x: f64) -> Forecast {
    let stand = m.tyre.radius + m.reach_usual * m.rider_mass / m.mass();
    let over = |t: f64| {
        let x = pose.centre.x + pose.v_centre.x * t;
        let z = pose.centre.y + (pose.v_centre.y - 0.5 * GRAVITY * t) * t;
        let (ground, slope) = path.ground(x);
        (x, z - ground - stand * (1.0 + slope * slope).sqrt(), slope)
    };
    let mut t = 0.0;
    let mut last = f64::NAN;
    while t < FARTHEST {
        let (x, gap, slope) = over(t);
        if x >= from_x {
            if gap <= 0.0 {
                let back = if last > 0.0 {
                    STEP * gap / (gap - last)
                } else {
                    0.0
                };
                return Forecast {
                    t: now + t + back,
                    slope: num::atan2(slope, 1.0),
                };
            }
            last = gap;
        }
        t += STEP;
    }
    Forecast {
        t: now + FARTHEST,
        slope: 0.0,
    }
}
