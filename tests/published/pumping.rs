//! Pumping in a hollow: a pendulum whose length changes.
//!
//! About the hollow's centre the ground's normal forces have no moment. Wheels of radius ρ that roll in a
//! hollow of radius R turn R/ρ − 1 times as fast as they go round it, so
//!
//! ```text
//! d/dt [Σ m ℓ² θ' + I_b θ_b' + I_r φ' + Σ I_w (R/ρ − 1) ω] = −g Σ m x
//! ```
//!
//! summed over rider and bike at their distances ℓ from the centre. This is the equation of a pendulum of
//! changing length: where a rider's legs bring the body nearer to the centre at the bottom, it goes round
//! faster, and no other way. What it gains in energy is what the legs worked.

use crate::rig::{loaded_radius, passive, run};
use glam::DVec2;
use sim::constants::GRAVITY;
use sim::ride::{Legs, Mount, Sample};
use tests::bare::ground;
use tests::checks::{
    Bound::{Share, Within},
    Check,
};

/// Two rollers of one radius, m, whose flanks turn by so much, rad: half a metre high, six long. The
/// hollow between them is what is looked at.
const RADIUS: f64 = 4.6;
const TURN: f64 = 0.33;

/// Both wheels are within the hollow up to here, rad to either side.
const FOLLOWED: f64 = 0.19;

/// Speed into the rollers, m/s: slow enough to hold the crests.
const SPEED: f64 = 5.0;

const SOURCE: &str = "pendulum of changing length (Wirkus, Rand and Ruina 1998)";

/// Rider and bike about the hollow's centre.
struct About<'a> {
    m: &'a Mount,
    centre: DVec2,
}

impl About<'_> {
    /// Bike and rider, from the centre, m.
    fn places(&self, s: &Sample) -> [DVec2; 2] {
        let up = DVec2::from_angle(s.pitch).perp();
        let bike = DVec2::new(s.bike_x, s.bike_z) + up * self.m.bike_rise;
        [bike, DVec2::new(s.rider_x, s.rider_z)].map(|p| p - self.centre)
    }

    /// Moment of the weight, N m.
    fn moment(&self, s: &Sample) -> f64 {
        let [bike, rider] = self.places(s);
        -GRAVITY * (self.m.bike_mass * bike.x + self.m.rider_mass * rider.x)
    }

    /// Angular momentum at the middle of three samples, wheels counted as they roll, kg m²/s.
    fn momentum(&self, s: &[Sample]) -> f64 {
        let (m, a, b) = (self.m, &s[0], &s[2]);
        let rate = |of: fn(&Sample) -> f64| (of(b) - of(a)) / (b.t - a.t);
        let (from, at, to) = (self.places(a), self.places(&s[1]), self.places(b));
        let points: f64 = (0..2)
            .map(|i| {
                let velocity = (to[i] - from[i]) / (b.t - a.t);
                [m.bike_mass, m.rider_mass][i] * at[i].perp_dot(velocity)
            })
            .sum();
        let wheels = rate(|s| s.rear_turned + s.front_turned) * m.wheel_inertia;
        points
            + m.bike_inertia * rate(|s| s.pitch)
            + m.rider_inertia * rate(|s| s.lean)
            + wheels * (RADIUS / loaded_radius(m) - 1.0)
    }
}

/// Nearest and farthest that the rider is from the centre, m.
fn lengths(about: &About, samples: &[Sample]) -> [f64; 2] {
    let far = samples.iter().map(|s| about.places(s)[1].length());
    far.fold([f64::INFINITY, 0.0], |[a, b], l| [a.min(l), b.max(l)])
}

fn rows(name: &str, m: &Mount) -> Vec<Check> {
    let quarter = RADIUS * TURN;
    let bend = 1.0 / RADIUS;
    let hollow = (2.0 * quarter, bend);
    let crest = (2.0 * quarter, -bend);
    let end = (quarter, bend);
    let profile = ground(
        0.0,
        &[(4.0, 0.0), end, crest, hollow, crest, end, (6.0, 0.0)],
    );
    let between = &profile.pieces[3];
    let centre = between.start + DVec2::from_angle(between.heading).perp() * RADIUS;
    let ridden = run(&profile, m, SPEED);
    let about = About { m, centre };
    let inside = |s: &&Sample| (s.bike_x - centre.x).abs() < RADIUS * FOLLOWED;
    let from = ridden
        .samples
        .iter()
        .position(|s| inside(&s))
        .expect("it comes there");
    let samples: Vec<Sample> = ridden.samples[from..]
        .iter()
        .take_while(inside)
        .copied()
        .collect();
    let last = samples.len() - 1;
    let weight_gave: f64 = samples[1..last]
        .windows(2)
        .map(|s| 0.5 * (about.moment(&s[0]) + about.moment(&s[1])) * (s[1].t - s[0].t))
        .sum();
    let before = about.momentum(&samples[..3]);
    let behind = about.momentum(&samples[last - 2..]);
    let [near, far] = lengths(&about, &samples);
    // Without this much the legs would do nothing that could be told from standing still.
    assert!(
        far - near > LEAST,
        "{name}: the body moves by {} m",
        far - near
    );
    let (a, b) = (&samples[0], &samples[samples.len() - 1]);
    let weight = m.mass() * GRAVITY;
    let spent = b.spent.less(&a.spent);
    let worked = (spent.put_in - spent.absorbed) / weight;
    let lost = (spent.tyres + spent.slip + spent.rolling_rear + spent.rolling_front) / weight;
    vec![
        Check::new(
            format!("{name} pumps through a hollow: angular momentum behind"),
            SOURCE,
            "kg m²/s",
            [before + weight_gave, behind],
            Share(BOUND),
            "tyres give, so that wheels roll on a little less than at rest",
        ),
        Check::new(
            format!("{name} pumps through a hollow: head gained"),
            "conservation of energy",
            "m",
            [worked - lost, b.head - a.head],
            Within(2e-4),
            "what the step adds up to",
        ),
    ]
}

const BOUND: f64 = 2e-3;

/// Least way that the body goes toward the centre, m.
const LEAST: f64 = 0.03;

/// The rows: child and adult.
pub fn checks() -> Vec<Check> {
    let mut child = passive();
    child.legs = Legs::Pumping;
    child.skill = 1.0;
    let mut adult = sim::setup::mount(&sim::plan::demo().riders[1], &sim::plan::Weather::default());
    adult.rolling = [0.0; 6];
    adult.drag = 0.0;
    adult.legs = Legs::Pumping;
    adult.skill = 1.0;
    let mut all = rows("child", &child);
    all.extend(rows("adult", &adult));
    all
}
