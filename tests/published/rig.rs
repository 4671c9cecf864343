//! A plain rider to try the model on, and what is read off a ride.

use glam::DVec2;
use sim::constants::GRAVITY;
use sim::plan::{Style, Weather, demo};
use sim::profile::Profile;
use sim::ride::{Accuracy, Mount, Run, Sample, ride};
use sim::setup;
use std::f64::consts::FRAC_PI_2;
use tests::bare::{add, ground};

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

/// A hollow of one radius from one side to the other, angles in rad, and its centre.
pub fn bowl(radius: f64, angle: f64) -> (Profile, DVec2) {
    let profile = ground(-angle, &[(2.0 * angle * radius, 1.0 / radius)]);
    let centre = profile.pieces[0].start + DVec2::from_angle(-angle).perp() * radius;
    (profile, centre)
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

/// Source of rows whose formula stands in every textbook.
pub const TEXTBOOK: &str = "any textbook of mechanics";

/// A rider and bike of 70 kg on wheels that add 1.4 kg: Crr 0.012, CdA 0.40 m², air 1.225 kg/m³, no
/// bearings. Coasting figures are given for these.
pub fn seventy() -> Mount {
    let mut m = passive();
    m.rider_mass = 70.0 - m.bike_mass;
    let radius = loaded_radius(&m);
    m.wheel_inertia = 0.7 * radius * radius;
    m.bearings = [0.0; 2];
    m.rolling = [0.012; 6];
    m.drag = 0.5 * 1.225 * 0.40;
    m
}

/// A value read between two samples, where something passes a mark.
pub fn between(
    samples: &[Sample],
    of: impl Fn(&Sample) -> f64,
    mark: f64,
    value: impl Fn(&Sample) -> f64,
) -> f64 {
    let pair = samples
        .windows(2)
        .find(|s| (of(&s[0]) < mark) != (of(&s[1]) < mark));
    let pair = pair.unwrap_or_else(|| panic!("the mark is passed: {:?}", samples.last()));
    let share = (mark - of(&pair[0])) / (of(&pair[1]) - of(&pair[0]));
    value(&pair[0]) * (1.0 - share) + value(&pair[1]) * share
}

/// A level bench that ends over a drop to ground that falls at an angle, rad.
pub fn bench(height: f64, fall: f64) -> Profile {
    let mut profile = ground(0.0, &[(10.0, 0.0)]);
    add(&mut profile, -FRAC_PI_2, &[(height, 0.0)]);
    add(&mut profile, -fall, &[(60.0, 0.0)]);
    profile
}

/// The samples of the longest flight.
pub fn flight(run: &Run) -> &[Sample] {
    let flights = run.samples.split(|s| s.rear_load + s.front_load > 0.0);
    let longest = flights.max_by_key(|samples| samples.len()).unwrap_or(&[]);
    assert!(
        longest.len() > 20,
        "the flight has only {} samples",
        longest.len()
    );
    longest
}

/// Velocity of the common mass centre at the middle of three samples.
pub fn velocity(m: &Mount, s: &[Sample]) -> DVec2 {
    (centre(m, &s[2]) - centre(m, &s[0])) / (s[2].t - s[0].t)
}
