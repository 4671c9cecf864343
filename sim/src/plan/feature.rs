//! The features of a line, in riding order.

use super::{GroundPoint, Jump, Surface};
use serde::{Deserialize, Serialize};

/// What is ridden.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Line {
    /// Features, each placed after the one before.
    Features(Vec<Feature>),
    /// An existing line, or any side view, as surveyed points; it stands in place of features.
    Surveyed {
        /// Points on the riding surface, from the start onward. Two points at one station make a
        /// vertical face.
        points: Vec<GroundPoint>,
        /// What the surface is made of.
        #[serde(default)]
        surface: Surface,
    },
}

/// One feature of a line.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Feature {
    /// The ramp the rider starts from; only ever the first feature.
    StartRamp(StartRamp),
    /// Level with the yard's own ground.
    Flat(Flat),
    /// One roller, or several of one size in a row.
    Roller(Roller),
    /// A lip, a gap and a landing.
    Jump(Jump),
    /// A turn, ridden unrolled in the side view.
    Turn(Turn),
    /// The end, where the rider brakes; only ever the last feature.
    RunOut(RunOut),
}

/// The ramp the rider starts from: a platform, a slope and a hollow that leads out level.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StartRamp {
    /// Height of the platform over the ground at the ramp's foot, m.
    pub platform_height: f64,
    /// Steepness of the slope against the ground, degrees.
    pub angle_deg: f64,
    /// Radius of the hollow at the foot, m.
    pub bottom_radius: f64,
    /// Radius over which the platform's edge is rounded, m.
    #[serde(default = "StartRamp::usual_edge_radius")]
    pub edge_radius: f64,
    /// Speed the rider has when rolling off the platform, m/s.
    pub push_off: f64,
    /// What the ramp is made of.
    #[serde(default = "Surface::wood")]
    pub surface: Surface,
}

impl StartRamp {
    /// Enough rounding for a chain guard to clear the edge, m (common practice, no source).
    fn usual_edge_radius() -> f64 {
        0.8
    }
}

/// Ground left as it lies.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Flat {
    /// Length along the ground, m.
    pub length: f64,
    /// What the ground is.
    #[serde(default)]
    pub surface: Surface,
}

/// Rollers: equal arcs, hollow and crest, from trough to trough.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Roller {
    /// Height of the crest over the trough, m.
    pub height: f64,
    /// Length from trough to trough, m.
    pub length: f64,
    /// How many in a row.
    pub count: u32,
    /// What they are made of.
    #[serde(default)]
    pub surface: Surface,
}

/// A turn on level ground. The side view shows it unrolled; its demand on the tyres is kept.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Turn {
    /// Radius of the line ridden, m.
    pub radius: f64,
    /// How far it turns, degrees.
    pub sweep_deg: f64,
    /// Bank of the surface against level, degrees.
    pub bank_deg: f64,
    /// What it is made of.
    #[serde(default)]
    pub surface: Surface,
}

/// The end of the line, where the rider brakes to a stop.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RunOut {
    /// Length along the ground, m.
    pub length: f64,
    /// What the ground is.
    #[serde(default)]
    pub surface: Surface,
}
