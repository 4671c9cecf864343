//! A jump: lip, gap and landing. Step-ups, step-downs and spines come out of the numbers.

use super::Surface;
use super::check::Checker;
use super::feature::check_width;
use crate::error::{Quantity, Why};
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

impl Jump {
    pub(super) fn check(&self, c: &mut Checker) {
        c.inside("lip", |c| self.lip.check(c));
        let why = Why::Gap;
        c.within("gap", Quantity::Length, self.gap, 0.0..=15.0, why);
        c.inside("landing", |c| self.landing.check(c));
    }
}

/// The take-off: an arc drawn with a string, leaving the ground along it and ending at the edge.
///
/// The arc of radius R reaches the height h where it has turned by arccos(1 − h/R), counted from
/// the ground's own slope; before that where a straight stretch leads on to the edge.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lip {
    /// Height of the edge over the ground below it, or over the raised bed it stands on, m.
    pub height: f64,
    /// Radius of the arc, m.
    pub radius: f64,
    /// A straight dirt ramp under a shorter wooden lip, where there is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lead_in: Option<LeadIn>,
    /// Length along the lip of a straight last stretch, m: the arc ends tangent into it, and it ends
    /// at the edge. Left out, the arc goes on to the edge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub straight_end: Option<f64>,
    /// What the lip is made of.
    #[serde(default = "Surface::wood")]
    pub surface: Surface,
    /// Its own width, m, where it is not as wide as the line.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<f64>,
}

impl Lip {
    fn check(&self, c: &mut Checker) {
        let why = Why::LipHeight;
        c.within("height", Quantity::Length, self.height, 0.05..=4.0, why);
        let why = Why::LipRadius;
        c.within("radius", Quantity::Length, self.radius, 0.3..=20.0, why);
        if let Some(lead_in) = &self.lead_in {
            c.inside("lead_in", |c| lead_in.check(c));
        }
        if let Some(length) = self.straight_end {
            let why = Why::StraightEnd;
            c.within("straight_end", Quantity::Length, length, 0.0..=5.0, why);
        }
        check_width(self.width, c);
    }
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

impl LeadIn {
    fn check(&self, c: &mut Checker) {
        let why = Why::LeadAngle;
        c.within(
            "angle_deg",
            Quantity::Angle,
            self.angle_deg,
            1.0..=60.0,
            why,
        );
        let why = Why::LeadLength;
        c.within("length", Quantity::Length, self.length, 0.02..=10.0, why);
    }
}

/// The landing: a knuckle rounded over its top, a straight slope, a hollow at the bottom.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Landing {
    /// Height of the knuckle over the ground below it, or over the raised bed it stands on, m.
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
    /// Whether walls of timber hold its fill, in place of slopes of dirt beside and before it.
    #[serde(default)]
    pub boxed: bool,
    /// What the landing is made of.
    #[serde(default)]
    pub surface: Surface,
    /// Its own width, m, where it is not as wide as the line.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<f64>,
}

impl Landing {
    fn check(&self, c: &mut Checker) {
        let why = Why::LandingHeight;
        c.within("height", Quantity::Length, self.height, 0.0..=5.0, why);
        let why = Why::LandingAngle;
        c.within(
            "angle_deg",
            Quantity::Angle,
            self.angle_deg,
            2.0..=75.0,
            why,
        );
        let why = Why::KnuckleRadius;
        c.within(
            "knuckle_radius",
            Quantity::Length,
            self.knuckle_radius,
            0.0..=20.0,
            why,
        );
        let why = Why::HollowRadius;
        c.within(
            "bottom_radius",
            Quantity::Length,
            self.bottom_radius,
            0.3..=40.0,
            why,
        );
        if let Some(length) = self.length {
            let why = Why::LandingLength;
            c.within("length", Quantity::Length, length, 0.0..=40.0, why);
        }
        check_width(self.width, c);
    }
}
