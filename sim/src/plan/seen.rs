//! What was seen when somebody rode the line.

use super::check::Checker;
use super::yard::LONGEST_YARD;
use crate::error::{Quantity, Why};
use core::ops::RangeInclusive;
use serde::{Deserialize, Serialize};

/// Where on a line something may be seen, m: as far as a yard may reach.
const ALONG: RangeInclusive<f64> = 0.0..=LONGEST_YARD;

/// Least distance between two flags, m: nearer, a stopwatch shows the thumb rather than the bike.
const APART: f64 = 0.5;

/// One thing seen on a test ride. Places are counted in metres along the line, measured level from
/// its start, to the middle of the bike. It is read in `json.rs`.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Observation {
    /// Time from one flag to another.
    Time(Timed),
    /// Speed at a place.
    Speed(Clocked),
    /// Where the rear wheel came down at a jump.
    Landed(Landed),
    /// Where the rider stalled, or rolled out to without braking.
    Stopped(Stopped),
}

impl Observation {
    /// Index of the rider who rode, in the plan.
    pub fn rider(&self) -> usize {
        let rider = match self {
            Observation::Time(seen) => seen.rider,
            Observation::Speed(seen) => seen.rider,
            Observation::Landed(seen) => seen.rider,
            Observation::Stopped(seen) => seen.rider,
        };
        rider as usize
    }

    /// How far off the measured value may well be: one standard deviation, in its own unit.
    pub fn give_or_take(&self) -> f64 {
        match self {
            Observation::Time(seen) => seen.give_or_take,
            Observation::Speed(seen) => seen.give_or_take,
            Observation::Landed(seen) => seen.give_or_take,
            Observation::Stopped(seen) => seen.give_or_take,
        }
    }

    /// The value that was measured, in its own unit.
    pub fn value(&self) -> f64 {
        match self {
            Observation::Time(seen) => seen.seconds,
            Observation::Speed(seen) => seen.speed,
            Observation::Landed(seen) => seen.past_knuckle,
            Observation::Stopped(seen) => seen.at,
        }
    }

    /// The same thing seen with another value.
    pub fn with_value(&self, value: f64) -> Self {
        let mut other = self.clone();
        match &mut other {
            Observation::Time(seen) => seen.seconds = value,
            Observation::Speed(seen) => seen.speed = value,
            Observation::Landed(seen) => seen.past_knuckle = value,
            Observation::Stopped(seen) => seen.at = value,
        }
        other
    }

    /// Whether the plan has what this teaches: it was found by a fit and put in place of what was
    /// planned.
    pub fn carried(&self) -> bool {
        match self {
            Observation::Time(seen) => seen.carried,
            Observation::Speed(seen) => seen.carried,
            Observation::Landed(seen) => seen.carried,
            Observation::Stopped(seen) => seen.carried,
        }
    }

    /// From now on the plan has what this teaches.
    pub fn carry(&mut self) {
        match self {
            Observation::Time(seen) => seen.carried = true,
            Observation::Speed(seen) => seen.carried = true,
            Observation::Landed(seen) => seen.carried = true,
            Observation::Stopped(seen) => seen.carried = true,
        }
    }

    pub(super) fn check(&self, riders: usize, c: &mut Checker) {
        match self {
            Observation::Time(seen) => seen.check(c),
            Observation::Speed(seen) => seen.check(c),
            Observation::Landed(seen) => seen.check(c),
            Observation::Stopped(seen) => seen.check(c),
        }
        let last = u32::try_from(riders.saturating_sub(1)).unwrap_or(u32::MAX);
        let why = Why::NoSuchRider;
        c.count("rider", self.rider(), 0..=last, why);
    }
}

/// Time from one flag to another, by stopwatch or film.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Timed {
    /// The first flag, m along the line; at the very start it is the moment of rolling off.
    pub from: f64,
    /// The second flag, m along the line.
    pub to: f64,
    /// Time between them, s.
    pub seconds: f64,
    /// How far off it may well be, s.
    #[serde(default = "Timed::usual")]
    pub give_or_take: f64,
    /// Index of the rider who rode.
    #[serde(default, skip_serializing_if = "is_first")]
    pub rider: u32,
    /// Whether the plan has what this teaches.
    #[serde(default, skip_serializing_if = "is_new")]
    pub carried: bool,
}

impl Timed {
    /// A thumb on a stopwatch, s (common practice, no source).
    pub const USUAL: f64 = 0.1;

    fn usual() -> f64 {
        Self::USUAL
    }

    fn check(&self, c: &mut Checker) {
        let why = Why::NoFlag;
        c.within("from", Quantity::Length, self.from, ALONG, why);
        let why = Why::FlagsClose;
        let least = if self.from.is_finite() {
            crate::num::clamp(self.from, 0.0, *ALONG.end() - APART) + APART
        } else {
            APART
        };
        c.within("to", Quantity::Length, self.to, least..=*ALONG.end(), why);
        let why = Why::Seconds;
        c.within("seconds", Quantity::Time, self.seconds, 0.05..=120.0, why);
        give_or_take(c, Quantity::Time, self.give_or_take);
    }
}

/// Speed at a place, by film or speedometer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Clocked {
    /// The place, m along the line.
    pub at: f64,
    /// Speed there of rider and bike together, m/s.
    pub speed: f64,
    /// How far off it may well be, m/s.
    #[serde(default = "Clocked::usual")]
    pub give_or_take: f64,
    /// Index of the rider who rode.
    #[serde(default, skip_serializing_if = "is_first")]
    pub rider: u32,
    /// Whether the plan has what this teaches.
    #[serde(default, skip_serializing_if = "is_new")]
    pub carried: bool,
}

impl Clocked {
    /// One metre on a film of thirty pictures in the second, at 5 m/s, m/s
    /// (common practice, no source).
    pub const USUAL: f64 = 0.2;

    fn usual() -> f64 {
        Self::USUAL
    }

    fn check(&self, c: &mut Checker) {
        let why = Why::NoFlag;
        c.within("at", Quantity::Length, self.at, ALONG, why);
        let why = Why::SeenSpeed;
        c.within("speed", Quantity::Speed, self.speed, 0.1..=25.0, why);
        give_or_take(c, Quantity::Speed, self.give_or_take);
    }
}

/// Where the rear wheel came down, by its mark.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Landed {
    /// Index of the jump, in riding order.
    pub jump: u32,
    /// The mark, m past the landing's knuckle, measured level; negative where it came up short.
    pub past_knuckle: f64,
    /// How far off it may well be, m.
    #[serde(default = "Landed::usual")]
    pub give_or_take: f64,
    /// Index of the rider who rode.
    #[serde(default, skip_serializing_if = "is_first")]
    pub rider: u32,
    /// Whether the plan has what this teaches.
    #[serde(default, skip_serializing_if = "is_new")]
    pub carried: bool,
}

impl Landed {
    /// Length of the mark that a tyre leaves when it comes down, m (common practice, no source).
    pub const USUAL: f64 = 0.1;

    fn usual() -> f64 {
        Self::USUAL
    }

    fn check(&self, c: &mut Checker) {
        let why = Why::NoSuchJump;
        c.count("jump", self.jump as usize, 0..=59, why);
        let why = Why::FarLanding;
        let past = self.past_knuckle;
        c.within("past_knuckle", Quantity::Length, past, -20.0..=20.0, why);
        give_or_take(c, Quantity::Length, self.give_or_take);
    }
}

/// Where the rider came to a stand without braking.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stopped {
    /// The place, m along the line.
    pub at: f64,
    /// How far off it may well be, m.
    #[serde(default = "Stopped::usual")]
    pub give_or_take: f64,
    /// Index of the rider who rode.
    #[serde(default, skip_serializing_if = "is_first")]
    pub rider: u32,
    /// Whether the plan has what this teaches.
    #[serde(default, skip_serializing_if = "is_new")]
    pub carried: bool,
}

impl Stopped {
    /// Somebody wobbles at a walking pace before the foot is down, m (common practice, no source).
    pub const USUAL: f64 = 0.3;

    fn usual() -> f64 {
        Self::USUAL
    }

    fn check(&self, c: &mut Checker) {
        let why = Why::NoStand;
        c.within("at", Quantity::Length, self.at, ALONG, why);
        give_or_take(c, Quantity::Length, self.give_or_take);
    }
}

fn give_or_take(c: &mut Checker, quantity: Quantity, value: f64) {
    let why = Why::GiveOrTake;
    c.within("give_or_take", quantity, value, 0.001..=10.0, why);
}

fn is_new(carried: &bool) -> bool {
    !carried
}

fn is_first(rider: &u32) -> bool {
    *rider == 0
}
