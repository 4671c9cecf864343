//! What the builder wants: a yard, a line laid on it, who rides it, and the day's conditions.
//!
//! Plain data. SI units throughout, except that angles are given in degrees, because plans are
//! written by people; every such field says so in its name. Nothing here computes a ride.

mod bike;
mod check;
mod feature;
mod json;
mod jump;
mod rider;
mod seen;
mod soil;
mod survey;
#[cfg(test)]
mod tests;
mod weather;
mod yard;

pub use bike::{Bike, Rolling, Surface};
pub(crate) use check::fault;
pub use feature::{Feature, Flat, Line, Roller, RunOut, StartRamp, Turn};
pub use jump::{Jump, Landing, LeadIn, Lip};
pub use rider::{Mount, Rider, Style};
pub use seen::{Clocked, Landed, Observation, Stopped, Timed};
pub use soil::Soil;
pub use weather::{Ground, Weather};
pub use yard::{GroundPoint, Lie, Yard};
pub(crate) use yard::{LONGEST_YARD, TALLEST};

use crate::error::{Fault, Quantity, Why};
pub(crate) use check::Checker;
use serde::{Deserialize, Serialize};

/// Most observations of a plan: each contradiction is looked for by leaving one out.
const MOST_SEEN: u32 = 24;

/// Largest seed: six digits can be read out to somebody.
pub const LARGEST_SEED: u32 = 999_999;

/// Width of a line where nothing else is said, m: wide enough for a child to come down off the middle, and a sheet
/// of plywood (common practice, no source).
pub const USUAL_WIDTH: f64 = 1.22;

/// A whole plan: everything needed to ride a line, and nothing else.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Plan {
    /// What the builder calls it; shown as the page's title.
    pub name: String,
    /// The ground the line is laid on.
    pub yard: Yard,
    /// The features in riding order, or an existing line as surveyed.
    pub line: Line,
    /// How wide the line is, m; a feature may have a width of its own.
    #[serde(default = "Plan::usual_width")]
    pub width: f64,
    /// Who rides, each with the bike ridden; the first is the one the line is for.
    pub riders: Vec<Mount>,
    /// Air and ground on the day.
    #[serde(default)]
    pub weather: Weather,
    /// Speed at the start of the line, m/s, in place of the start ramp's push-off speed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub initial_speed: Option<f64>,
    /// What was seen when somebody rode the line as it is planned here.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub seen: Vec<Observation>,
    /// What chance begins from, wherever something is left to it: the same seed, the same outcome.
    #[serde(default)]
    pub seed: u32,
}

impl Plan {
    /// Every fault of a field taken by itself: out of range, missing, out of place. Whether the
    /// features can be built like this and fit the yard is for [`Plan::validate`] to say.
    pub(crate) fn field_faults(&self) -> Vec<Fault> {
        let mut c = Checker::default();
        c.text("name", &self.name);
        c.inside("yard", |c| self.yard.check(c));
        c.inside("line", |c| self.line.check(c));
        c.within(
            "width",
            Quantity::Length,
            self.width,
            feature::WIDTHS,
            Why::Width,
        );
        let why = Why::RiderCount;
        c.count("riders", self.riders.len(), 1..=4, why);
        c.each("riders", &self.riders, Mount::check);
        c.inside("weather", |c| self.weather.check(c));
        self.check_speed(&mut c);
        let why = Why::SeenCount;
        c.count("seen", self.seen.len(), 0..=MOST_SEEN, why);
        let riders = self.riders.len();
        c.each("seen", &self.seen, |seen, c| seen.check(riders, c));
        c.count("seed", self.seed as usize, 0..=LARGEST_SEED, Why::Seed);
        c.faults
    }

    /// The first fault that nobody could mend who sees the plan field by field: nobody to ride, too many or too few
    /// points of a survey, a number that is none.
    pub fn beyond_mending(&self) -> Option<Fault> {
        let nobody = self.riders.is_empty();
        let beyond = |fault: &Fault| match fault.why {
            Why::NoNumber | Why::PointCount => true,
            Why::RiderCount => nobody,
            _ => false,
        };
        self.field_faults().into_iter().find(beyond)
    }

    fn usual_width() -> f64 {
        USUAL_WIDTH
    }

    fn check_speed(&self, c: &mut Checker) {
        if let Some(speed) = self.initial_speed {
            let why = Why::InitialSpeed;
            c.within("initial_speed", Quantity::Speed, speed, 0.0..=20.0, why);
        } else if !self.line.has_start_ramp() {
            let why = Why::NoStart;
            c.wrong("initial_speed", Quantity::Speed, why);
        }
    }
}

/// Lines to start from, as plan files, the demonstration first: the orchard above the village school, a
/// first jump for a small child, three tables in a row for a bigger one. The first rider of each lands all
/// of its jumps.
pub const EXAMPLES: [&str; 3] = [
    include_str!("../../plans/orchard.json"),
    include_str!("../../plans/first_jump.json"),
    include_str!("../../plans/three_tables.json"),
];

/// The lines to start from, as plans.
pub fn examples() -> Vec<Plan> {
    EXAMPLES.map(example).into()
}

fn example(text: &str) -> Plan {
    Plan::from_json(text).expect("the plan files are checked by the tests")
}

/// The demonstration line: the first of the lines to start from.
pub fn demo() -> Plan {
    example(EXAMPLES[0])
}

/// A short line for tests, which stays as it is when the demonstration changes.
#[cfg(test)]
pub(crate) fn one_jump() -> Plan {
    Plan::from_json(include_str!("../../plans/one_jump.json")).expect("a plan file of our own")
}
