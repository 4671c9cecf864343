//! What a ride left behind, for comparing it with another solver's.

use sim::ride::{Accuracy, EventKind, Run};

/// Fine enough that the step adds nothing that shows.
pub const FINE: Accuracy = Accuracy {
    tolerance: 1e-8,
    longest: 2e-4,
};

/// Speed of the common mass centre where the middle between the axles is at `x`, m/s: straight
/// between two samples.
///
/// # Panics
/// When the ride never came there.
pub fn speed_at(run: &Run, x: f64) -> f64 {
    let i = run.samples.partition_point(|s| s.bike_x < x);
    let [a, b] = [run.samples[i - 1], run.samples[i]];
    let way = (x - a.bike_x) / (b.bike_x - a.bike_x);
    a.speed + way * (b.speed - a.speed)
}

/// Speed of the common mass centre, m/s, and pitch, rad, as the rear wheel's contact passed the
/// first lip's edge.
///
/// # Panics
/// When no lip was left.
pub fn at_the_lip(run: &Run) -> (f64, f64) {
    let left = run.events.iter().find_map(|e| match e.kind {
        EventKind::LipLeft { speed, pitch, .. } => Some((speed, pitch)),
        _ => None,
    });
    left.expect("the lip is left")
}
