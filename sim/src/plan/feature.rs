//! The features of a line, in riding order.

use super::check::Checker;
use super::{GroundPoint, Jump, Surface};
use crate::error::{Quantity, Why};
use core::ops::RangeInclusive;
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

impl Line {
    pub(super) fn check(&self, c: &mut Checker) {
        match self {
            Line::Features(features) => check_features(features, c),
            Line::Surveyed { points, .. } => {
                c.inside("surveyed", |c| super::survey::check_line(points, c));
            }
        }
    }

    /// Whether it begins with a start ramp, which gives the rider a push.
    pub fn has_start_ramp(&self) -> bool {
        matches!(self, Line::Features(f) if matches!(f.first(), Some(Feature::StartRamp(_))))
    }
}

fn check_features(features: &[Feature], c: &mut Checker) {
    let why = Why::FeatureCount;
    c.count("features", features.len(), 1..=60, why);
    c.each("features", features, Feature::check);
    for (i, feature) in features.iter().enumerate() {
        let kind = format!("features[{i}].kind");
        let first = i == 0;
        let last = i + 1 == features.len();
        if matches!(feature, Feature::StartRamp(_)) && !first {
            c.wrong(&kind, Quantity::Text, Why::RampFirst);
        }
        if matches!(feature, Feature::RunOut(_)) && !last {
            c.wrong(&kind, Quantity::Text, Why::RunOutLast);
        }
    }
}

/// One feature of a line. It is read in `json.rs`.
#[derive(Clone, Debug, PartialEq, Serialize)]
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

impl Feature {
    fn check(&self, c: &mut Checker) {
        match self {
            Feature::StartRamp(ramp) => ramp.check(c),
            Feature::Flat(flat) => check_along(flat.length, c),
            Feature::Roller(roller) => roller.check(c),
            Feature::Jump(jump) => jump.check(c),
            Feature::Turn(turn) => turn.check(c),
            Feature::RunOut(run_out) => check_along(run_out.length, c),
        }
    }
}

fn check_along(length: f64, c: &mut Checker) {
    let why = Why::FeatureLength;
    c.within("length", Quantity::Length, length, 0.05..=200.0, why);
}

/// Narrower than this nobody rides, wider nobody digs by hand, m (common practice, no source).
pub(super) const WIDTHS: RangeInclusive<f64> = 0.4..=6.0;

pub(super) fn check_width(width: Option<f64>, c: &mut Checker) {
    if let Some(width) = width {
        c.within("width", Quantity::Length, width, WIDTHS, Why::Width);
    }
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
    /// Its own width, m, where it is not as wide as the line.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<f64>,
}

impl StartRamp {
    /// Enough rounding for a chain guard to clear the edge, m (common practice, no source).
    fn usual_edge_radius() -> f64 {
        0.8
    }

    fn check(&self, c: &mut Checker) {
        let why = Why::PlatformHeight;
        c.within(
            "platform_height",
            Quantity::Length,
            self.platform_height,
            0.1..=8.0,
            why,
        );
        let why = Why::RampAngle;
        c.within(
            "angle_deg",
            Quantity::Angle,
            self.angle_deg,
            3.0..=75.0,
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
        let why = Why::EdgeRadius;
        c.within(
            "edge_radius",
            Quantity::Length,
            self.edge_radius,
            0.0..=20.0,
            why,
        );
        let why = Why::PushOff;
        c.within("push_off", Quantity::Speed, self.push_off, 0.0..=8.0, why);
        check_width(self.width, c);
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
    /// Its own width, m, where it is not as wide as the line.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<f64>,
}

impl Roller {
    fn check(&self, c: &mut Checker) {
        let why = Why::RollerHeight;
        c.within("height", Quantity::Length, self.height, 0.02..=2.0, why);
        let why = Why::RollerLength;
        c.within("length", Quantity::Length, self.length, 0.5..=30.0, why);
        let why = Why::RollerCount;
        c.count("count", self.count as usize, 1..=20, why);
        check_width(self.width, c);
    }
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
    /// Its own width, m, where it is not as wide as the line.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<f64>,
}

impl Turn {
    fn check(&self, c: &mut Checker) {
        let why = Why::TurnRadius;
        c.within("radius", Quantity::Length, self.radius, 1.0..=60.0, why);
        let why = Why::TurnSweep;
        c.within(
            "sweep_deg",
            Quantity::Angle,
            self.sweep_deg,
            1.0..=360.0,
            why,
        );
        let why = Why::TurnBank;
        c.within("bank_deg", Quantity::Angle, self.bank_deg, 0.0..=80.0, why);
        check_width(self.width, c);
    }
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
