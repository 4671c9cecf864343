//! Where the flight will end: the touch-down as the rider foresees it.

use super::habits;
use super::mount::Mount;
use super::path::{Lip, Path};
use super::state::{Pose, Y};
use super::turning::Turning;
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
pub fn forecast(m: &Mount, path: &Path, pose: &Pose, now: f64, from_x: f64, back: f64) -> Forecast {
    let fall = Fall {
        centre: pose.centre,
        v: pose.v_centre,
        back,
    };
    fly(m, path, &fall, now, from_x)
}

/// Reach meant for the touch-down, m.
pub fn reach_down(m: &Mount) -> f64 {
    m.reach_usual + habits::REACH_DOWN * (m.reach_high - m.reach_usual)
}

/// Height of the common mass centre over the ground at touch-down, m.
fn stand(m: &Mount) -> f64 {
    m.tyre.radius + (reach_down(m) * m.rider_mass + m.bike_rise * m.bike_mass) / m.mass()
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

/// Where along the path the body belongs as the front wheel passes the edge of `lip`, so that the
/// load on the rear wheel leaves just the turning that the flight needs, m against the middle.
pub fn place(m: &Mount, path: &Path, pose: &Pose, lip: &Lip) -> f64 {
    let stand = stand(m);
    let exit = num::atan2(lip.along.y, lip.along.x);
    let start = lip.edge + lip.along.perp() * stand;
    let v2 = pose.v_centre.length_squared() - 2.0 * GRAVITY * (start.y - pose.centre.y);
    let v = num::max(v2, 1.0).sqrt();
    let bend = lip.curvature / num::max(1.0 - lip.curvature * stand, 0.4);
    let dir = exit - habits::FLATTER * m.wheelbase * lip.curvature;
    let (s, c) = num::sin_cos(dir);
    let fall = Fall {
        centre: start,
        v: DVec2::new(c, s) * v,
        back: 0.0,
    };
    let end = fly(m, path, &fall, 0.0, lip.knuckle.x);
    let t = num::max(end.t, 0.2);
    let orbit = m.reduced_mass() * m.reach_usual * m.reach_usual;
    let turn = m.bike_inertia * (end.slope + habits::NOSE - exit)
        + m.rider_inertia * (habits::LEAN_DOWN * end.slope - habits::LEAN_WITH_SLOPE * exit)
        + orbit * (habits::SWING_DOWN * end.slope - exit);
    let before = (m.bike_inertia + habits::LEAN_WITH_SLOPE * m.rider_inertia + orbit) * bend * v;
    let load = m.mass() * (GRAVITY * lip.along.x + bend * v * v) * habits::LOAD_LEFT;
    let lever = (before - turn / t) * v / (load * m.wheelbase);
    let place = (lever - 0.5 * m.wheelbase) * m.mass() / m.rider_mass * habits::SHIFT_MADE
        + habits::SHIFT_ADDED * m.wheelbase;
    num::clamp(place, -0.55 * m.wheelbase, 0.1 * m.wheelbase)
}

/// The mass centre in free fall, and how much farther back than usual the body will be at its end.
struct Fall {
    centre: DVec2,
    v: DVec2,
    back: f64,
}

fn fly(m: &Mount, path: &Path, fall: &Fall, now: f64, from_x: f64) -> Forecast {
    let (centre, v) = (fall.centre, fall.v);
    let reach = reach_down(m) * m.rider_mass / m.mass();
    let rise = m.bike_rise * m.bike_mass / m.mass();
    let over = |t: f64| {
        let x = centre.x + v.x * t;
        let z = centre.y + (v.y - 0.5 * GRAVITY * t) * t;
        // The bike's middle under a body that leans as it means to at touch-down.
        let heading = num::atan2(path.ground(x).1, 1.0);
        let (s, c) = num::sin_cos(habits::SWING_DOWN * heading + fall.back);
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
