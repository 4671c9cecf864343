//! What ends a ride that cannot be told: a ledger that no longer closes, and more work than a ride is worth.

use super::run::{CrashKind, Event, EventKind, Sample};
use super::step::{Accuracy, Point};
use crate::num;

/// Most steps that a ride is worked out in.
///
/// Rides of two minutes in the longest steps take 30 000; those of the plan files and of the family of lines take
/// fewer than 8000. What takes more creeps, on wheels that the ground stops faster than they turn.
const MOST_STEPS: f64 = 60_000.0;

/// Share of the head over the line's lowest place that the ledger may be off by; the plan files' rides are off by
/// less than a twentieth of that.
const OFF: f64 = 0.01;

/// Least head that the share is taken of, m: somebody who only stands is allowed what a step is off by.
const LEAST_HEAD: f64 = 0.3;

/// The most steps, at an accuracy: of a method of order 3, they grow with the cube root of a finer tolerance.
pub fn most_steps(accuracy: &Accuracy) -> u64 {
    let usual = Accuracy::default();
    let finer = num::max(
        usual.longest / accuracy.longest,
        num::cbrt(usual.tolerance / accuracy.tolerance),
    );
    (MOST_STEPS * num::max(finer, 1.0)) as u64
}

/// The books of a ride, looked into at every sample.
///
/// They stop adding up where a wheel passes through a face to its other side, or is pushed by more than the steps can
/// follow: what comes then is no ride, however it goes on.
pub struct Books {
    /// The trace, as far as they add up.
    pub samples: Vec<Sample>,
    /// Energy at the start, as head, m.
    start: f64,
    weight: f64,
    lowest: f64,
    good: Point,
    events: usize,
}

impl Books {
    /// Opens the books at the start, with so much energy, J, of so much weight, N.
    pub fn open(start: f64, weight: f64, here: &Point) -> Self {
        Self {
            samples: Vec::with_capacity(2048),
            start: start / weight,
            weight,
            lowest: f64::INFINITY,
            good: *here,
            events: 0,
        }
    }

    /// Enters a sample after so many events; false where the books do not add up there.
    pub fn enter(&mut self, sample: Sample, here: &Point, events: usize) -> bool {
        let lowest = num::min(self.lowest, sample.height);
        let head = num::max(self.start - lowest, LEAST_HEAD);
        let off = self.start - sample.head - sample.spent.net() / self.weight;
        let closes = off.abs() <= OFF * head && sample.values().iter().all(|v| v.is_finite());
        if closes {
            (self.lowest, self.good, self.events) = (lowest, *here, events);
            self.samples.push(sample);
        }
        closes
    }

    /// Where they added up last: what was seen since is crossed out, and the ride is lost there.
    pub fn cross_out(&self, events: &mut Vec<Event>) -> Point {
        events.truncate(self.events);
        events.push(Event {
            t: self.good.t,
            x: self.samples.last().map_or(0.0, |s| s.bike_x),
            kind: EventKind::Crashed {
                why: CrashKind::Lost,
            },
        });
        self.good
    }
}
