//! What the page tells of a ride: plain data in SI units, angles in radians.

use crate::scene::flights;
use serde::Serialize;
use sim::constants::MODEL_VERSION;
use sim::judge::{self, Cost, Ending, Felt, Impact, JumpRow};
use sim::plan::{Mount, Plan, Surface};
use sim::ride::{Event, Outcome};
use sim::setup::{self, Ridden};

/// The columns of the trace, in order.
pub const COLUMNS: [&str; 11] = [
    "t", "x", "z", "speed", "g", "head", "aloft", "airtime", "over", "press", "wood",
];

/// The stretch that one feature takes.
#[derive(Debug, Serialize)]
pub struct Feature {
    /// First station, m.
    pub from: f64,
    /// Last station, m.
    pub to: f64,
}

/// The ride of somebody beside the one whom the line is for.
#[derive(Debug, Serialize)]
pub struct Other {
    /// Who rides.
    pub label: String,
    /// How it ended.
    pub outcome: Outcome,
    /// The lips' jumps, in riding order.
    pub jumps: Vec<JumpRow>,
    /// What each feature costs.
    pub costs: Vec<Cost>,
}

/// A ride, and those of others beside it.
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
    /// Whether the rider comes to a stand before the line ends.
    pub ending: Ending,
    /// From when to when the first rider flies, s.
    pub flights: Vec<[f64; 2]>,
    /// The features, in the plan's order; empty on a surveyed line.
    pub features: Vec<Feature>,
    /// The lips' jumps, in riding order.
    pub jumps: Vec<JumpRow>,
    /// How each landing is felt.
    pub impacts: Vec<Impact>,
    /// How each flight is felt.
    pub felt: Vec<Felt>,
    /// What each feature costs.
    pub costs: Vec<Cost>,
    /// The rides of the others.
    pub others: Vec<Other>,
    /// Names of the trace's columns.
    pub columns: [&'static str; COLUMNS.len()],
    /// The trace, sample by sample.
    #[serde(skip)]
    pub trace: Vec<f64>,
}

impl Story {
    /// The story of the rides of a plan's riders, in the plan's order; `None` where nobody rides.
    pub fn of(plan: &Plan, rides: &[Ridden]) -> Option<Self> {
        let (mount, ridden) = plan.riders.iter().zip(rides).next()?;
        let (profile, run) = (&ridden.profile, &ridden.run);
        let features = profile.spans.iter().map(|span| Feature {
            from: span.from.x,
            to: span.to.x,
        });
        let m = setup::mount(mount, &plan.weather);
        let flights = flights(&run.samples)
            .map(|flight| [run.samples[flight.start].t, run.samples[flight.end - 1].t]);
        let others = plan.riders.iter().zip(rides).skip(1);
        Some(Self {
            duration: run.samples.last().map_or(0.0, |s| s.t),
            model: MODEL_VERSION,
            digest: format!("{:016x}", run.digest()),
            outcome: run.outcome,
            events: run.told(),
            ending: judge::ending(profile, &m, run),
            flights: flights.collect(),
            features: features.collect(),
            jumps: judge::jumps(profile, run),
            impacts: judge::impacts(profile, &m, run),
            felt: judge::felt(profile, &mount.bike, run),
            costs: judge::costs(&plan.line, profile, &m, run),
            others: others.map(|(mount, r)| other(plan, mount, r)).collect(),
            columns: COLUMNS,
            trace: trace(mount, ridden),
        })
    }
}

fn other(plan: &Plan, mount: &Mount, ridden: &Ridden) -> Other {
    let m = setup::mount(mount, &plan.weather);
    Other {
        costs: judge::costs(&plan.line, &ridden.profile, &m, &ridden.run),
        label: mount.label.clone(),
        outcome: ridden.run.outcome,
        jumps: judge::jumps(&ridden.profile, &ridden.run),
    }
}

/// The trace, sample by sample. The time in the air and the height over the ground count from when
/// both wheels were last on it, and are 0 there.
fn trace(mount: &Mount, ridden: &Ridden) -> Vec<f64> {
    let (profile, run) = (&ridden.profile, &ridden.run);
    let number = |truth: bool| f64::from(u8::from(truth));
    let mut left = None;
    let mut rows = Vec::with_capacity(run.samples.len() * COLUMNS.len());
    for s in &run.samples {
        let aloft = s.aloft();
        if !aloft {
            left = None;
        }
        let since = aloft.then(|| s.t - *left.get_or_insert(s.t));
        let over = if aloft {
            judge::over(s, profile, &mount.bike)
        } else {
            0.0
        };
        // Both wheels' load in weights of rider and bike.
        let press = (s.rear_load + s.front_load) / run.ledger.weight;
        let spot = profile.spot(s.bike_x);
        let surface = spot.map(|spot| profile.pieces[spot.piece].character.surface);
        rows.extend([s.t, s.bike_x, s.bike_z, s.speed, s.g, s.head]);
        rows.extend([number(aloft), since.unwrap_or(0.0), over, press]);
        rows.push(number(surface == Some(Surface::Wood)));
    }
    rows
}
