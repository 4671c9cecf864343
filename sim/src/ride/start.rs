//! The start: both wheels on the ground, tyres and legs settled, rolling at a given speed.

use crate::body::{BIKE, LEAN, Mount, N, PITCH, RIDER, SPIN, V_BIKE, V_RIDER, Y, put};
use crate::constants::GRAVITY;
use crate::num;
use crate::profile::{Profile, direction};
use glam::DVec2;

/// Room behind the rear wheel's contact at the start, m.
const ROOM: f64 = 0.05;

/// The settled state with the rear wheel at the beginning of a profile.
pub fn at_start(profile: &Profile, m: &Mount, speed: f64) -> Y {
    let axle_over = m.tyre.radius - m.tyre.depth_under(0.5 * m.mass() * GRAVITY);
    let over = |station: f64| {
        let (point, heading) = place(profile, station);
        point + direction(heading).perp() * axle_over
    };
    let rear = over(ROOM);
    // The front axle is a wheelbase away: halve the stretch it must lie in.
    let (mut low, mut high) = (ROOM, ROOM + 2.0 * m.wheelbase);
    for _ in 0..60 {
        let mid = 0.5 * (low + high);
        if num::length(over(mid) - rear) < m.wheelbase {
            low = mid;
        } else {
            high = mid;
        }
    }
    let front = over(low);
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

/// The point of the chain and its heading, at a length along it.
fn place(profile: &Profile, station: f64) -> (DVec2, f64) {
    let i = profile
        .pieces
        .partition_point(|p| p.before <= station)
        .saturating_sub(1);
    let p = &profile.pieces[i];
    let along = num::clamp(station - p.before, 0.0, p.length);
    (p.point(along), p.heading_at(along))
}
