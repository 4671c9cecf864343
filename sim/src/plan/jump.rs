//! A jump: lip, gap and landing. Step-ups, step-downs and spines come out of the numbers.

use super::Surface;
use serde::{Deserialize, Serialize};

/// A lip, a gap and a landing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Jump {
    /// The take-off.
    pub lip: Lip,
    /// Level distance from the lip's edge to the knuckle, m; 0 makes a spine.
    pub gap: f64,
    /// Whether a deck closes the gap from the lip's edge to the knuckle.
    #[serde(default)]
    pub decked: bool,
    /// Where the rider comes down.
    pub landing: Landing,
}

/// The take-off: an arc drawn with a string, leaving the ground along it and ending at the edge.
///
/// The arc of radius R reaches the height h where it has turned by arccos(1 − h/R), counted from
/// the ground's own slope.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lip {
    /// Height of the edge over the ground below it, m.
    pub height: f64,
    /// Radius of the arc, m.
    pub radius: f64,
    /// A straight dirt ramp under a shorter wooden lip, where there is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lead_in: Option<LeadIn>,
    /// What the lip is made of.
    #[serde(default = "Surface::wood")]
    pub surface: Surface,
}

/// A straight ramp that splits the lip's arc: dirt up to its end, the lip's own surface beyond.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LeadIn {
    /// Steepness against the ground, degrees; the arc's first part turns this far.
    pub angle_deg: f64,
    /// Length along the ramp, m.
    pub length: f64,
}

/// The landing: a knuckle rounded over its top, a straight slope, a hollow at the bottom.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Landing {
    /// Height of the knuckle over the ground below it, m.
    pub height: f64,
    /// Steepness of the slope against the ground, degrees.
    pub angle_deg: f64,
    /// Radius over which the knuckle is rounded, m.
    pub knuckle_radius: f64,
    /// Radius of the hollow that leads out, m.
    pub bottom_radius: f64,
    /// Length of the straight slope, m. Left out, the landing runs down to the ground; given
    /// shorter than that, it ends on a raised bed that carries the features after it, until a
    /// landing runs down to the ground again.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length: Option<f64>,
    /// What the landing is made of.
    #[serde(default)]
    pub surface: Surface,
}
