//! Masses, lengths and coefficients of one rider on one bike on one day.

use super::Tyre;
use glam::DVec2;

/// What the rider's legs do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Legs {
    /// A spring and damper about one height over the bike.
    Passive,
    /// The body travels a smoothed path; the bike rises and falls under it.
    Absorbing,
    /// As absorbing, and pushing where the ground pushes back.
    Pumping,
}

/// Everything the ride needs to know of rider, bike and air. SI units.
#[derive(Clone, Debug)]
pub struct Mount {
    /// Rider's mass, kg.
    pub rider_mass: f64,
    /// Rider's inertia about the own mass centre, kg m².
    pub rider_inertia: f64,
    /// Rider's standing height, m.
    pub stature: f64,
    /// Distance from the middle between the axles to the rider's mass centre when folded, m.
    pub reach_low: f64,
    /// The same, as held on level ground, m.
    pub reach_usual: f64,
    /// The same, stretched out, m.
    pub reach_high: f64,
    /// What the legs do.
    pub legs: Legs,
    /// How well it is done, 0 to 1.
    pub skill: f64,
    /// How stiff legs stay that soak up or pump: 0 not at all, 1 like a spring's.
    pub stiff: f64,
    /// Mass of the bike with its wheels, kg.
    pub bike_mass: f64,
    /// Inertia of the bike about its mass centre, wheels counted as points at the axles, kg m².
    pub bike_inertia: f64,
    /// Height of the bike's mass centre over the line through the axles, m.
    pub bike_rise: f64,
    /// Distance between the axles, m.
    pub wheelbase: f64,
    /// Inertia of one wheel about its axle, kg m².
    pub wheel_inertia: f64,
    /// Either tyre.
    pub tyre: Tyre,
    /// Rolling resistance coefficient by surface, in the order of `Surface::ALL`.
    pub rolling: [f64; 6],
    /// Drag of both wheels' bearings at the rim, N, and what it gains with speed, N s/m: half to each
    /// wheel, booked with rolling, and only on the ground, where it can be told from nothing at all.
    pub bearings: [f64; 2],
    /// Half air density times drag area, kg/m.
    pub drag: f64,
    /// Wind along the line, m/s, positive from behind.
    pub tailwind: f64,
}

impl Mount {
    /// Mass of rider and bike, kg.
    pub fn mass(&self) -> f64 {
        self.rider_mass + self.bike_mass
    }

    /// Mass that moves when rider and bike are pushed apart in the air, kg.
    pub fn reduced_mass(&self) -> f64 {
        self.rider_mass * self.bike_mass / self.mass()
    }

    /// From the bike's mass centre to the middle between the axles, in the bike's own frame.
    pub fn to_middle(&self) -> DVec2 {
        DVec2::new(0.0, -self.bike_rise)
    }
}
