//! The whole ride: its accuracy, its energy, and whether a rider would believe it.

mod accuracy;
mod believable;
mod convergence;
mod energy;
mod presets;

use sim::plan::{Feature, Line, Plan, Style};
use sim::ride::{Event, EventKind, Run};
use sim::setup::{Ridden, ride_plan};

/// Rides a plan that is known to be good.
fn ridden(plan: &Plan, rider: usize) -> Ridden {
    ride_plan(plan, rider).unwrap_or_else(|faults| panic!("{faults:?}"))
}

/// Speeds at the lips that were reached, m/s.
fn lip_speeds(run: &Run) -> Vec<f64> {
    let speed = |e: &Event| match e.kind {
        EventKind::LipLeft { speed, .. } => Some(speed),
        _ => None,
    };
    run.events.iter().filter_map(speed).collect()
}

/// The features of a plan's line.
fn features(plan: &mut Plan) -> &mut Vec<Feature> {
    match &mut plan.line {
        Line::Features(features) => features,
        Line::Surveyed { .. } => panic!("a line of features was expected"),
    }
}

/// The demonstration line, every rider with one style.
fn demo_with(style: Style) -> Plan {
    let mut plan = sim::plan::demo();
    plan.riders.iter_mut().for_each(|m| m.rider.style = style);
    plan
}
