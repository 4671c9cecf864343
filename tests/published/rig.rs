//! Bare ground and a plain rider to try the model on.

use glam::DVec2;
use sim::plan::{Style, Surface, Weather, demo};
use sim::profile::{Character, Intent, Piece, Profile};
use sim::ride::{Accuracy, Mount, Run, Sample, ride};
use sim::setup;

/// A piece of ground: length, m, and curvature, 1/m.
pub type Bend = (f64, f64);

/// Ground that begins at the origin with a heading in radians.
pub fn ground(heading: f64, bends: &[Bend]) -> Profile {
    let character = Character {
        surface: Surface::Packed,
        intent: Intent::Roll,
        turn: 0.0,
    };
    let (mut start, mut heading, mut before) = (DVec2::ZERO, heading, 0.0);
    let mut pieces = Vec::new();
    for &(length, curvature) in bends {
        let piece = Piece::new(start, heading, length, curvature, before, character);
        (start, heading, before) = (piece.end, piece.end_heading(), before + length);
        pieces.push(piece);
    }
    Profile {
        pieces,
        lips: Vec::new(),
        spans: Vec::new(),
        yard: Vec::new(),
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

/// What the two wheels' spin adds to the mass that is moved, kg: 2 I / R² with the radius that the
/// axle stands at.
pub fn spin_mass(m: &Mount) -> f64 {
    let radius = m.tyre.radius - m.tyre.depth_under(0.5 * m.mass() * sim::constants::GRAVITY);
    2.0 * m.wheel_inertia / (radius * radius)
}
