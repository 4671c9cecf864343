//! Where the flight will end: the touch-down as the rider foresees it.

use super::habits;
use super::sight::Sight;
use super::turning::{Turning, swing_of};
use crate::body::{Mount, Pose, RIDER, Y, vec};
use crate::constants::GRAVITY;
use crate::num;
use glam::DVec2;

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
    /// Where the body is to be over the bike then: angle from upright, back positive, rad.
    pub swing: f64,
}

/// Follows the mass centre's parabola from `pose` to the ground, not before `from_x`.
pub fn forecast(
    m: &Mount,
    path: &Sight,
    (pose, y): (&Pose, &Y),
    now: f64,
    from_x: f64,
    back: f64,
) -> Forecast {
    let arm = vec(y, RIDER) - pose.middle;
    let fall = Fall {
        centre: pose.centre,
        v: pose.v_centre,
        reach: num::length(arm),
        swing: swing_of(arm),
        back,
    };
    fly(m, path, &fall, now, from_x)
}

/// Reach meant for the touch-down, m.
pub fn reach_down(m: &Mount) -> f64 {
    m.reach_usual + habits::REACH_DOWN * (m.reach_high - m.reach_usual)
}

/// How much farther back than usual the body has to be at touch-down, rad, so that what turning
/// there is goes round: with the bike on the slope, body's lean and place share what is over.
pub fn set_back(m: &Mount, pose: &Pose, y: &Y, to: &Forecast, now: f64) -> f64 {
    let turning = Turning::of(m, pose, y);
    let left = num::max(to.t - now, habits::SHORTEST);
    let usual = turning.remaining(m, y, to.slope + habits::NOSE, to.slope);
    let over = (turning.spin * left - usual) / (m.rider_inertia + turning.orbit);
    num::clamp(over, -habits::MOST_SWING, habits::MOST_SWING)
}

/// The mass centre in free fall, and how much farther back than usual the body will be at its end.
pub struct Fall {
    pub centre: DVec2,
    pub v: DVec2,
    /// Reach and the body's angle over the bike as it begins.
    pub reach: f64,
    pub swing: f64,
    pub back: f64,
}

/// Follows a fall to the ground, not before `from_x`.
pub fn fly(m: &Mount, path: &Sight, fall: &Fall, now: f64, from_x: f64) -> Forecast {
    let (centre, v) = (fall.centre, fall.v);
    let share = m.rider_mass / m.mass();
    let rise = m.bike_rise * m.bike_mass / m.mass();
    let over = |t: f64| {
        let x = centre.x + v.x * t;
        let z = centre.y + (v.y - 0.5 * GRAVITY * t) * t;
        // The bike's middle under a body that leans as it means to at touch-down.
        let heading = num::atan2(path.ground(x).1, 1.0);
        let out = num::smooth(t / habits::REACHING);
        let reach = share * (fall.reach + out * (reach_down(m) - fall.reach));
        let to = habits::SWING_DOWN * heading + fall.back;
        let (s, c) = num::sin_cos(fall.swing + out * (to - fall.swing));
        let (middle_x, middle_z) = (x + reach * s, z - reach * c - rise);
        let (ground, slope) = path.ground(middle_x);
        let gap = middle_z - ground - m.tyre.radius * (1.0 + slope * slope).sqrt();
        (middle_x, gap, slope)
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
                    swing: habits::SWING_DOWN * num::atan2(slope, 1.0) + fall.back,
                };
            }
            last = gap;
        }
        t += STEP;
    }
    Forecast {
        t: now + FARTHEST,
        slope: 0.0,
        swing: 0.0,
    }
}
