//! Rider and bike as the second formulation knows them.

use crate::motion::Motion;
use glam::DVec2;
use sim::constants::GRAVITY;
use sim::ride::Mount;

/// Masses, lengths and losses. The bike's own frame has its origin in the middle between the axles,
/// x to the front axle, y up.
pub struct Body {
    pub bike_mass: f64,
    /// About its mass centre, wheels counted as points.
    pub bike_inertia: f64,
    /// Bike's mass centre in its own frame.
    pub bike_at: DVec2,
    pub rider_mass: f64,
    pub rider_inertia: f64,
    /// How the rider moves against the bike: both wheels bound, and the rear one alone.
    pub rider: [Motion; 2],
    pub wheelbase: f64,
    /// Radius the wheels roll on.
    pub radius: f64,
    pub wheel_inertia: f64,
    pub rolling: [f64; 6],
    /// Half air density times drag area, kg/m.
    pub drag: f64,
    pub tailwind: f64,
    /// Whether the bearings take their share.
    pub bearings: bool,
}

impl Body {
    /// A mount whose rider keeps still, on tyres as deep as they stand at rest.
    pub fn still(m: &Mount) -> Self {
        let still = || Motion::Still(DVec2::new(0.0, m.reach_usual));
        Self {
            bike_mass: m.bike_mass,
            bike_inertia: m.bike_inertia,
            bike_at: DVec2::new(0.0, m.bike_rise),
            rider_mass: m.rider_mass,
            rider_inertia: m.rider_inertia,
            rider: [still(), still()],
            wheelbase: m.wheelbase,
            radius: m.tyre.radius - m.tyre.depth_under(0.5 * m.mass() * GRAVITY),
            wheel_inertia: m.wheel_inertia,
            rolling: m.rolling,
            drag: m.drag,
            tailwind: m.tailwind,
            bearings: true,
        }
    }

    /// Mass of rider and bike, kg.
    pub fn mass(&self) -> f64 {
        self.rider_mass + self.bike_mass
    }

    /// Drag of one wheel's bearings, N, at a speed in m/s.
    ///
    /// Martin et al. 1998, J. Appl. Biomech. 14:276: both together take V (91 + 8.7 V) mW.
    pub fn bearing(&self, speed: f64) -> f64 {
        if self.bearings {
            0.5 * (0.091 + 0.0087 * speed)
        } else {
            0.0
        }
    }
}
