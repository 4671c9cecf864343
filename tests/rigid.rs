//! A rider and bike brought near to one rigid body, for comparing with what speaks of one.

use sim::ride::{Legs, Mount};

/// Stiffness of a tyre that gives next to nothing: 0.02 mm under 1 kN, N/m^1.5.
const HARD: f64 = 1e10;

/// The same rider and bike on hard tyres.
pub fn on_hard_tyres(mut m: Mount) -> Mount {
    m.tyre.stiffness = HARD;
    m
}

/// Damping at which hard tyres hardly bounce, s/m: however hard the blow, the wheel comes back at
/// less than 1/50 m/s.
const DEAD: f64 = 50.0;

/// The same rider and bike on tyres that neither give nor bounce.
pub fn on_dead_tyres(m: Mount) -> Mount {
    let mut m = on_hard_tyres(m);
    m.tyre.damping = DEAD;
    m
}

/// Share of the whole that stays with the rider whom the ride cannot do without.
const CRUMB: f64 = 1e-9;

/// The same rider and bike as one rigid body: all its mass is the bike's. What is left of the
/// rider is too light to matter; drag, which acts on it, is off.
pub fn rigid(m: &Mount) -> Mount {
    let mass = m.mass();
    let rise = (m.rider_mass * m.reach_usual + m.bike_mass * m.bike_rise) / mass;
    let apart = m.reach_usual - m.bike_rise;
    let mut all = m.clone();
    all.bike_mass = mass;
    all.bike_rise = rise;
    all.bike_inertia = m.bike_inertia + m.rider_inertia + m.reduced_mass() * apart * apart;
    all.rider_mass = CRUMB * mass;
    all.rider_inertia = CRUMB * m.rider_inertia;
    all.legs = Legs::Passive;
    // It hovers in the middle of a travel that it never comes to the end of.
    (all.reach_low, all.reach_usual, all.reach_high) = (0.05, 1.0, 3.0);
    all.drag = 0.0;
    all
}

/// The same rider and bike shrunk to next to a point that slides: wheels of 1 cm, 4 cm apart,
/// without grip and without spin. Its inertia, kg m², is free: large, it keeps its attitude.
pub fn point(m: &Mount, inertia: f64) -> Mount {
    let mut small = rigid(m);
    (small.wheelbase, small.bike_rise, small.bike_inertia) = (0.04, 0.0, inertia);
    (small.tyre.radius, small.tyre.height) = (0.01, 0.005);
    // 0.2 mm under a child's weight, damped to half of what is critical.
    (small.tyre.stiffness, small.tyre.damping, small.tyre.grip) = (1e8, 30.0, 0.0);
    (small.rolling, small.bearings) = ([0.0; 6], [0.0; 2]);
    small.wheel_inertia = 1e-9;
    small
}
