//! What the builder wants: a yard, a line laid on it, who rides it, and the day's conditions.
//!
//! Plain data. SI units throughout, except that angles are given in degrees, because plans are
//! written by people; every such field says so in its name. Nothing here computes a ride.

mod bike;
mod check;
mod feature;
mod jump;
mod rider;
mod weather;
mod yard;

pub use bike::{Bike, Rolling, Surface};
pub(crate) use check::fault;
pub use feature::{Feature, Flat, Line, Roller, RunOut, StartRamp, Turn};
pub use jump::{Jump, Landing, LeadIn, Lip};
pub use rider::{Mount, Rider, Style};
pub use weather::{Ground, Weather};
pub use yard::{GroundPoint, Lie, Yard};

use serde::{Deserialize, Serialize};

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
    /// Who rides, each with the bike ridden; the first is the one the line is for.
    pub riders: Vec<Mount>,
    /// Air and ground on the day.
    #[serde(default)]
    pub weather: Weather,
    /// Speed at the start of the line, m/s, in place of the start ramp's push-off speed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub initial_speed: Option<f64>,
}

/// The demonstration line: the orchard above the village school.
pub fn demo() -> Plan {
    serde_json::from_str(include_str!("../../plans/orchard.json"))
        .expect("the demonstration plan is checked by the tests")
}
