//! What a ride leaves behind: an even trace, and what happened when.

use super::numbers::numbers;
use super::{Ledger, Spent};
use serde::Serialize;

/// Time between two samples of the trace, s.
pub const SAMPLE_STEP: f64 = 0.01;

numbers! {
    /// The state of the ride at one moment. SI units; angles in radians, counted nose-up.
    pub struct Sample {
        /// Time since the start, s.
        pub t: f64,
        /// Middle between the axles, m.
        pub bike_x: f64,
        /// Middle between the axles, m.
        pub bike_z: f64,
        /// Pitch of the bike: the line through the axles against level, rad.
        pub pitch: f64,
        /// Rider's mass centre, m.
        pub rider_x: f64,
        /// Rider's mass centre, m.
        pub rider_z: f64,
        /// Rider's lean: 0 in the attitude held on level ground, positive leaning back, rad.
        pub lean: f64,
        /// Angle the rear wheel has turned through, forward positive, rad.
        pub rear_turned: f64,
        /// Angle the front wheel has turned through, forward positive, rad.
        pub front_turned: f64,
        /// Speed of the common mass centre, m/s.
        pub speed: f64,
        /// Height of the common mass centre, m.
        pub height: f64,
        /// Load on the rear tyre, N.
        pub rear_load: f64,
        /// Load on the front tyre, N.
        pub front_load: f64,
        /// Load the rider feels through legs and arms, in multiples of body weight.
        pub g: f64,
        /// Distance from the middle between the axles to the rider's mass centre, m.
        pub reach: f64,
        /// Total head: energy of rider and bike, wheel spin and pressed tyres included, over their
        /// weight, m.
        pub head: f64,
    } then {
        /// Where the energy went until now: the start's less this is `head` times the weight.
        pub spent: Spent,
    }
}

impl Sample {
    /// Whether both wheels are off the ground.
    pub fn aloft(&self) -> bool {
        self.rear_load <= 0.0 && self.front_load <= 0.0
    }
}

/// Which wheel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Wheel {
    /// The rear wheel.
    Rear,
    /// The front wheel.
    Front,
}

/// Why a ride ended in a crash.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum CrashKind {
    /// The frame struck the ground.
    FrameHit,
    /// The rider's body struck the ground.
    RiderHit,
    /// The nose dropped beyond recovery.
    OverTheBars,
    /// The bike turned over backward.
    LoopedOut,
    /// The legs and arms could not hold the load.
    TooHard,
    /// The numbers ran away; the last good state stands.
    Lost,
}

/// Something that happened on the way.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Event {
    /// When, s.
    pub t: f64,
    /// Where along the line, m.
    pub x: f64,
    /// What.
    #[serde(flatten)]
    pub kind: EventKind,
}

/// What happened.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum EventKind {
    /// The rear wheel's contact passed the edge of a lip.
    LipLeft {
        /// Index into the profile's lips.
        lip: usize,
        /// Speed of the common mass centre, m/s.
        speed: f64,
        /// Direction of that speed over level, rad.
        direction: f64,
        /// Pitch of the bike, rad.
        pitch: f64,
        /// Common mass centre, along the line, m.
        centre_x: f64,
        /// Common mass centre, height, m.
        centre_z: f64,
    },
    /// Both wheels are off the ground.
    Airborne {
        /// Speed of the common mass centre, m/s.
        speed: f64,
    },
    /// A wheel came down after flight.
    TouchedDown {
        /// Which wheel came down first.
        wheel: Wheel,
        /// Time since both wheels were off, s.
        airtime: f64,
        /// Where the rear wheel touches, or would, along the line, m.
        rear_x: f64,
        /// Where the front wheel touches, or would, along the line, m.
        front_x: f64,
        /// Pitch of the bike less the heading of the ground from under one wheel to under the other, rad.
        pitch_to_slope: f64,
        /// Speed of the common mass centre, m/s.
        speed: f64,
        /// Part of that speed square to the ground from under one wheel to under the other, m/s.
        into_ground: f64,
    },
    /// The rider ran out of speed and began to roll back.
    RolledBack {
        /// Speed that was missing at the foot of the rise to get over it, m/s.
        missing: f64,
    },
    /// The rider stopped in the run-out.
    Stopped,
    /// The ride ended in a crash.
    Crashed {
        /// Why.
        why: CrashKind,
    },
    /// The rider passed the end of the line still rolling.
    EndOfLine {
        /// Speed of the common mass centre, m/s.
        speed: f64,
    },
    /// The rider's legs reached the end of their travel.
    BottomedOut {
        /// Load then, in multiples of body weight.
        g: f64,
    },
}

/// How the ride ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Outcome {
    /// At the end of the line, or stopped in the run-out.
    Finished,
    /// Stalled on the way.
    Stalled,
    /// Crashed.
    Crashed,
    /// Still rolling when the longest time allowed was up.
    TimedOut,
    /// Still rolling when the most steps that a ride is worked out in were up, or as far as was asked for.
    BrokenOff,
}

/// A whole ride.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Run {
    /// The state every [`SAMPLE_STEP`], and at the end.
    pub samples: Vec<Sample>,
    /// What happened, in the order in which it was known: see [`Run::told`].
    pub events: Vec<Event>,
    /// How it ended.
    pub outcome: Outcome,
    /// Where the energy went.
    pub ledger: Ledger,
}

impl Run {
    /// What happened, in the order in which it did. A flight is known for one only once it has lasted.
    pub fn told(&self) -> Vec<Event> {
        let mut told: Vec<Event> = Vec::with_capacity(self.events.len());
        for event in &self.events {
            let place = told.partition_point(|before| before.t <= event.t);
            told.insert(place, *event);
        }
        told
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sample_goes_through_its_values_unchanged() {
        let values: [f64; Sample::COUNT] = core::array::from_fn(|i| 0.1 + i as f64);
        let sample = Sample::from(values);
        assert_eq!(sample.values(), values);
        // The first, the last of its own, and the first and the last of what it ends with.
        let Spent {
            rolling_rear, turn, ..
        } = sample.spent;
        assert_eq!(
            [sample.t, sample.head, rolling_rear, turn],
            [0.1, 15.1, 16.1, 24.1]
        );
    }
}
