//! The state that is integrated, as one flat array.

use super::Mount;
use crate::num;
use glam::DVec2;

/// Numbers in a state.
pub const N: usize = 25;

/// A state, or a rate of change of one.
pub type Y = [f64; N];

// Positions: bike's mass centre and pitch, rider's mass centre and lean, wheels turned through.
pub const BIKE: usize = 0;
pub const PITCH: usize = 2;
pub const RIDER: usize = 3;
pub const LEAN: usize = 5;
pub const TURNED: usize = 6;
/// How many of the numbers are positions; their rates stand as many places further on.
pub const PLACES: usize = 8;
// Rates.
pub const V_BIKE: usize = 8;
pub const V_PITCH: usize = 10;
pub const V_RIDER: usize = 11;
pub const V_LEAN: usize = 13;
pub const SPIN: usize = 14;
/// First of the energies that are summed up, J.
pub const ENERGY: usize = 16;
pub const E_ROLL_REAR: usize = 16;
pub const E_ROLL_FRONT: usize = 17;
pub const E_DRAG: usize = 18;
pub const E_TYRES: usize = 19;
pub const E_SLIP: usize = 20;
pub const E_ABSORBED: usize = 21;
pub const E_PUT_IN: usize = 22;
pub const E_BRAKE: usize = 23;
pub const E_TURN: usize = 24;

/// A state whose numbers are worked out one by one. A plain loop stays in line where the compiler is
/// asked to keep the program small.
#[inline]
pub fn each(number: impl Fn(usize) -> f64) -> Y {
    let mut y = [0.0; N];
    for (i, y) in y.iter_mut().enumerate() {
        *y = number(i);
    }
    y
}

/// Two neighbouring numbers as a vector.
#[inline]
pub fn vec(y: &Y, at: usize) -> DVec2 {
    DVec2::new(y[at], y[at + 1])
}

/// Stores a vector in two neighbouring numbers.
#[inline]
pub fn put(y: &mut Y, at: usize, v: DVec2) {
    y[at] = v.x;
    y[at + 1] = v.y;
}

/// Places and velocities that follow from a state.
#[derive(Clone, Copy)]
pub struct Pose {
    /// Unit vector along the bike, rear to front.
    pub along: DVec2,
    /// Middle between the axles.
    pub middle: DVec2,
    /// Its velocity.
    pub v_middle: DVec2,
    /// Axles, rear and front.
    pub axle: [DVec2; 2],
    /// Their velocities.
    pub v_axle: [DVec2; 2],
    /// Common mass centre.
    pub centre: DVec2,
    /// Its velocity.
    pub v_centre: DVec2,
}

impl Pose {
    /// The pose in a state.
    #[inline]
    pub fn of(m: &Mount, y: &Y) -> Self {
        let (s, c) = num::sin_cos(y[PITCH]);
        let along = DVec2::new(c, s);
        let (bike, v_bike) = (vec(y, BIKE), vec(y, V_BIKE));
        let rate = y[V_PITCH];
        let to_middle = along.perp() * -m.bike_rise;
        let middle = bike + to_middle;
        let v_middle = v_bike + to_middle.perp() * rate;
        let half = along * (0.5 * m.wheelbase);
        let v_half = half.perp() * rate;
        let (f_r, f_b) = (m.rider_mass / m.mass(), m.bike_mass / m.mass());
        Self {
            along,
            middle,
            v_middle,
            axle: [middle - half, middle + half],
            v_axle: [v_middle - v_half, v_middle + v_half],
            centre: vec(y, RIDER) * f_r + bike * f_b,
            v_centre: vec(y, V_RIDER) * f_r + v_bike * f_b,
        }
    }
}
