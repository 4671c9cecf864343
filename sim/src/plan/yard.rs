//! The ground the line is laid on.

use serde::{Deserialize, Serialize};

/// The strip of ground: how long it is and how it falls.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Yard {
    /// Length along the line, measured level, m.
    pub length: f64,
    /// How the ground lies before anything is dug.
    pub lie: Lie,
}

/// How the ground lies.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Lie {
    /// One even slope, metres of rise for each metre along; negative where the line runs downhill.
    Grade(f64),
    /// Points taken with tape and level, from the start onward, straight between them.
    Surveyed(Vec<GroundPoint>),
}

/// One surveyed point: `[station, elevation]` in a plan file.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(from = "(f64, f64)", into = "(f64, f64)")]
pub struct GroundPoint {
    /// Distance from the start, measured level, m.
    pub station: f64,
    /// Height over the survey's own zero, m.
    pub elevation: f64,
}

impl From<(f64, f64)> for GroundPoint {
    fn from((station, elevation): (f64, f64)) -> Self {
        Self { station, elevation }
    }
}

impl From<GroundPoint> for (f64, f64) {
    fn from(p: GroundPoint) -> Self {
        (p.station, p.elevation)
    }
}
