//! The start: both wheels on the ground, tyres and legs settled, rolling at a given speed.

use crate::body::{BIKE, LEAN, Mount, N, PITCH, RIDER, SPIN, V_BIKE, V_RIDER, Y, put};
use crate::constants::GRAVITY;
use crate::num;
use crate::profile::Profile;
use glam::DVec2;

/// The settled state with the rear wheel at the beginning of a profile.
pub fn at_start(profile: &Profile, m: &Mount, speed: f64) -> Y {
    let axle_over = m.tyre.radius - m.tyre.depth_under(0.5 * m.mass() * GRAVITY);
    let [rear, front] = profile.stand(m.wheelbase, axle_over);
    let along = (front - rear).normalize_or(DVec2::X);
    let middle = (rear + front) * 0.5;
    let rider = middle + along.perp() * m.reach_usual;
    let mut y = [0.0; N];
    put(&mut y, BIKE, middle + along.perp() * m.bike_rise);
    y[PITCH] = num::atan2(along.y, along.x);
    put(&mut y, RIDER, rider);
    y[LEAN] = 0.6 * num::atan2(along.y, along.x);
    put(&mut y, V_BIKE, along * speed);
    put(&mut y, V_RIDER, along * speed);
    y[SPIN] = speed / axle_over;
    y[SPIN + 1] = speed / axle_over;
    y
}
