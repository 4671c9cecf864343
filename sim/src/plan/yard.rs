//! The ground the line is laid on.

use super::check::Checker;
use super::soil::Soil;
use crate::error::{Quantity, Why};
use serde::{Deserialize, Serialize};

/// The longest yard that a plan may have, m.
pub(crate) const LONGEST_YARD: f64 = 500.0;

/// The strip of ground: how long it is and how it falls.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Yard {
    /// Length along the line, measured level, m.
    pub length: f64,
    /// How the ground lies before anything is dug.
    pub lie: Lie,
    /// Most height of anything that is built, m, where the builder has said so: nothing taller is ever
    /// suggested.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tallest: Option<f64>,
    /// What is dug here.
    #[serde(default)]
    pub soil: Soil,
}

/// Least and most that a builder can want nothing to be taller than, m.
pub(crate) const TALLEST: [f64; 2] = [0.6, 4.0];

impl Yard {
    /// An even slope of some length, m, that rises so many metres for each metre along.
    pub fn even(length: f64, grade: f64) -> Self {
        Self {
            length,
            lie: Lie::Grade(grade),
            tallest: None,
            soil: Soil::Loam,
        }
    }

    pub(super) fn check(&self, c: &mut Checker) {
        let why = Why::YardLength;
        c.within(
            "length",
            Quantity::Length,
            self.length,
            1.0..=LONGEST_YARD,
            why,
        );
        if let Some(tallest) = self.tallest {
            let [least, most] = TALLEST;
            c.within(
                "tallest",
                Quantity::Length,
                tallest,
                least..=most,
                Why::Tallest,
            );
        }
        c.inside("lie", |c| match &self.lie {
            Lie::Grade(grade) => {
                let why = Why::YardGrade;
                c.within("grade", Quantity::Number, *grade, -STEEPEST..=STEEPEST, why);
            }
            Lie::Surveyed(points) => check_survey(points, self.length, c),
        });
    }
}

/// Steepest ground a line is laid on, metres of rise for each metre along.
const STEEPEST: f64 = 0.6;

/// Closest two stations of a ground survey, m: nearer than a tape and a level can tell.
const CLOSEST_STATIONS: f64 = 0.01;

fn check_survey(points: &[GroundPoint], length: f64, c: &mut Checker) {
    let why = Why::SurveyCount;
    c.count("surveyed", points.len(), 2..=200, why);
    let before = c.faults.len();
    c.each("surveyed", points, GroundPoint::check);
    if c.faults.len() > before || points.len() < 2 {
        return;
    }
    check_cover(points, length, c);
    for (i, pair) in points.windows(2).enumerate() {
        c.inside(&format!("surveyed[{}]", i + 1), |c| {
            check_step(pair[0], pair[1], c)
        });
    }
}

/// The survey has to reach from the start of the yard to its end.
fn check_cover(points: &[GroundPoint], length: f64, c: &mut Checker) {
    let why = Why::SurveyStart;
    let first = points[0].station;
    c.within(
        "surveyed[0][0]",
        Quantity::Length,
        first,
        -1000.0..=0.0,
        why,
    );
    let end = format!("surveyed[{}][0]", points.len() - 1);
    let why = Why::SurveyEnd;
    let last = points[points.len() - 1].station;
    c.within(&end, Quantity::Length, last, length..=1000.0, why);
}

fn check_step(a: GroundPoint, b: GroundPoint, c: &mut Checker) {
    let least = a.station + CLOSEST_STATIONS;
    let why = Why::Backward;
    let before = c.faults.len();
    c.within("[0]", Quantity::Length, b.station, least..=1000.0, why);
    if c.faults.len() > before {
        return;
    }
    // A wall in the ground is dug round or built over, not laid a line on.
    let step = b.station - a.station;
    let accepted = a.elevation - step..=a.elevation + step;
    let why = Why::SteepGround;
    c.within("[1]", Quantity::Length, b.elevation, accepted, why);
}

/// How the ground lies.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Lie {
    /// One even slope, metres of rise for each metre along; negative where the line runs downhill.
    Grade(f64),
    /// Points taken with tape and level, straight between them, from the start of the yard or
    /// before it to its end or beyond.
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

impl GroundPoint {
    pub(super) fn check(&self, c: &mut Checker) {
        let why = Why::FarStation;
        c.within("[0]", Quantity::Length, self.station, -1000.0..=1000.0, why);
        let why = Why::FarHeight;
        c.within(
            "[1]",
            Quantity::Length,
            self.elevation,
            -500.0..=5000.0,
            why,
        );
    }
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
