//! How rider and bike turn, and how far they have to.
//!
//! About the common mass centre, the wheels' own spin apart,
//!
//! ```text
//! L = I_b θ' + I_r φ' + µ (arm × arm')        µ reduced mass, arm from the bike to the rider
//! ```
//!
//! In the air L stays. Divided by the inertias it says how far bike, body and the body's place over
//! the bike can turn until the touch-down.

use super::habits;
use crate::body::{LEAN, Mount, PITCH, Pose, RIDER, V_LEAN, V_PITCH, V_RIDER, Y, vec};
use crate::num;
use glam::DVec2;

/// The turning in a state.
#[derive(Clone, Copy, Debug)]
pub struct Turning {
    /// Angular momentum, kg m²/s.
    pub spin: f64,
    /// Inertia of the body's place over the bike, µ arm², kg m².
    pub orbit: f64,
    /// The body's place over the bike: angle from upright, back positive, rad.
    pub swing: f64,
    /// Its rate, rad/s.
    pub rate: f64,
}

/// The body's angle about the middle, from upright, back positive, rad, where it is `arm` away from there.
#[inline]
pub fn swing_of(arm: DVec2) -> f64 {
    num::atan2(-arm.x, arm.y)
}

impl Turning {
    /// The turning in a state.
    pub fn of(m: &Mount, pose: &Pose, y: &Y) -> Self {
        let arm = vec(y, RIDER) - pose.middle;
        let v_arm = vec(y, V_RIDER) - pose.v_middle;
        Self {
            spin: m.bike_inertia * y[V_PITCH]
                + m.rider_inertia * y[V_LEAN]
                + m.reduced_mass() * arm.perp_dot(v_arm),
            orbit: m.reduced_mass() * arm.length_squared(),
            swing: swing_of(arm),
            rate: arm.perp_dot(v_arm) / num::max(arm.length_squared(), 1e-9),
        }
    }

    /// Angular momentum times time that it takes to bring the bike to `pitch`, the body's lean and
    /// its place to what goes with a landing of heading `slope`, kg m².
    pub fn remaining(&self, m: &Mount, y: &Y, pitch: f64, slope: f64) -> f64 {
        m.bike_inertia * (pitch - y[PITCH])
            + m.rider_inertia * (habits::LEAN_DOWN * slope - y[LEAN])
            + self.orbit * (habits::SWING_DOWN * slope - self.swing)
    }
}
