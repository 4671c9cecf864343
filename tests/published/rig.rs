//! Bare ground and a plain rider to try the model on.

use glam::DVec2;
use sim::constants::GRAVITY;
use sim::plan::{Style, Surface, Weather, demo};
use sim::profile::{Character, Intent, Piece, Profile};
use sim::ride::{Accuracy, Mount, Run, Sample, ride};
use sim::setup;

/// A piece of ground: length, m, and curvature, 1/m.
pub type Bend = (f64, f64);

/// Ground that begins at the origin with a heading in radians; a bend with a heading of its own
/// begins a corner.
pub fn ground(heading: f64, bends: &[Bend]) -> Profile {
    let mut profile = Profile {
        pieces: Vec::new(),
        lips: Vec::new(),
        spans: Vec::new(),
        yard: Vec::new(),
    };
    add(&mut profile, heading, bends);
    profile
}

/// Adds pieces that begin with a heading where the ground ends.
pub fn add(profile: &mut Profile, mut heading: f64, bends: &[Bend]) {
    let character = Character {
        surface: Surface::Packed,
        intent: Intent::Roll,
        turn: 0.0,
    };
    let last = profile.pieces.last();
    let (mut start, mut before) = last.map_or((DVec2::ZERO, 0.0), |p| (p.end, p.before + p.length));
    for &(length, curvature) in bends {
        let piece = Piece::new(start, heading, length, curvature, before, character);
        (start, heading, before) = (piece.end, piece.end_heading(), before + length);
        profile.pieces.push(piece);
    }
}

/// The demonstration's child as a passive rider, without rolling resistance and drag.
pub fn passive() -> Mount {
    let mut plan = demo().riders.remove(0);
    plan.rider.style = Style::Passive;
    let mut mount = setup::mount(&plan, &Weather::default());
    mount.rolling = [0.0; 6];
    mount.drag = 0.0;
    mount
}

/// Rides.
pub fn run(profile: &Profile, mount: &Mount, speed: f64) -> Run {
    ride(profile, mount, speed, &Accuracy::default())
}

/// The first sample at which the bike is past a place.
pub fn past(run: &Run, x: f64) -> Sample {
    let found = run.samples.iter().find(|s| s.bike_x >= x);
    *found.unwrap_or_else(|| panic!("the ride never came to {x} m: {:?}", run.outcome))
}

/// Height of the axles over the ground at rest, m: the radius the wheels roll on.
pub fn loaded_radius(m: &Mount) -> f64 {
    m.tyre.radius - m.tyre.depth_under(0.5 * m.mass() * GRAVITY)
}

/// What the two wheels' spin adds to the mass that is moved, kg: 2 I / R².
pub fn spin_mass(m: &Mount) -> f64 {
    2.0 * m.wheel_inertia / (loaded_radius(m) * loaded_radius(m))
}

/// The common mass centre.
pub fn centre(m: &Mount, s: &Sample) -> DVec2 {
    let up = DVec2::from_angle(s.pitch).perp();
    let bike = DVec2::new(s.bike_x, s.bike_z) + up * m.bike_rise;
    let rider = DVec2::new(s.rider_x, s.rider_z);
    (rider * m.rider_mass + bike * m.bike_mass) / m.mass()
}

/// Drag of both wheels' bearings at a speed, N.
///
/// Martin et al. 1998, J. Appl. Biomech. 14:276: a power of V (91 + 8.7 V) mW.
pub fn bearings(speed: f64) -> f64 {
    0.091 + 0.0087 * speed
}

/// The speed that is left after a distance, by the classical Runge-Kutta method on
/// M v dv/dx = force(v), with no code of the model.
pub fn speed_after(mass: f64, force: impl Fn(f64) -> f64, from: f64, distance: f64) -> f64 {
    const STEPS: u32 = 4000;
    let h = distance / f64::from(STEPS);
    let rate = |v: f64| force(v) / (mass * v);
    (0..STEPS).fold(from, |v, _| {
        let a = rate(v);
        let b = rate(v + 0.5 * h * a);
        let c = rate(v + 0.5 * h * b);
        let d = rate(v + h * c);
        v + h * (a + 2.0 * b + 2.0 * c + d) / 6.0
    })
}
