//! What the page tells of a ride: plain data in SI units, angles in radians.

use serde::Serialize;
use sim::constants::MODEL_VERSION;
use sim::ride::{Event, Outcome, Sample};
use sim::setup::Ridden;

/// The columns of the trace, in order.
pub const COLUMNS: [&str; 7] = ["t", "x", "z", "speed", "g", "head", "aloft"];

/// The stretch that one feature takes.
#[derive(Debug, Serialize)]
pub struct Feature {
    /// First station, m.
    pub from: f64,
    /// Last station, m.
    pub to: f64,
}

/// A ride.
#[derive(Debug, Serialize)]
pub struct Story {
    /// How long it lasts, s.
    pub duration: f64,
    /// Version of the model it was ridden with.
    pub model: u16,
    /// A checksum of every bit of it, as sixteen hexadecimal digits.
    pub digest: String,
    /// How it ended.
    pub outcome: Outcome,
    /// What happened, in order.
    pub events: Vec<Event>,
    /// The features, in the plan's order; empty on a surveyed line.
    pub features: Vec<Feature>,
    /// The lips' jumps, in riding order.
    pub jumps: Vec<sim::judge::JumpRow>,
    /// Names of the trace's columns.
    pub columns: [&'static str; COLUMNS.len()],
    /// The trace, sample by sample.
    #[serde(skip)]
    pub trace: Vec<f64>,
}

impl Story {
    /// The story of a ride.
    pub fn of(ridden: &Ridden) -> Self {
        let (profile, run) = (&ridden.profile, &ridden.run);
        let features = profile.spans.iter().map(|span| Feature {
            from: span.from.x,
            to: span.to.x,
        });
        Self {
            duration: run.samples.last().map_or(0.0, |s| s.t),
            model: MODEL_VERSION,
            digest: format!("{:016x}", run.digest()),
            outcome: run.outcome,
            events: run.events.clone(),
            features: features.collect(),
            jumps: sim::judge::jumps(profile, run),
            columns: COLUMNS,
            trace: run.samples.iter().flat_map(row).collect(),
        }
    }
}

fn row(s: &Sample) -> [f64; COLUMNS.len()] {
    // 1 with both wheels off the ground, else 0.
    let aloft = f64::from(u8::from(s.rear_load <= 0.0 && s.front_load <= 0.0));
    [s.t, s.bike_x, s.bike_z, s.speed, s.g, s.head, aloft]
}
