//! Checks of an existing line given as points.

use super::GroundPoint;
use super::check::Checker;
use crate::error::{Quantity, Why};
use crate::num;

/// Closest two points of a surveyed line, m: nearer than a tape and a level can tell.
const CLOSEST: f64 = 0.01;

/// Checks the points of a surveyed line: they run forward, and a face takes two of them.
pub(super) fn check_line(points: &[GroundPoint], c: &mut Checker) {
    let why = Why::PointCount;
    c.count("points", points.len(), 2..=500, why);
    let before = c.faults.len();
    c.each("points", points, GroundPoint::check);
    if c.faults.len() > before || points.len() < 2 {
        return;
    }
    for (i, pair) in points.windows(2).enumerate() {
        let earlier = i.checked_sub(1).map(|j| points[j]);
        c.inside(&format!("points[{}]", i + 1), |c| {
            check_step(earlier, pair[0], pair[1], c);
        });
    }
}

fn check_step(earlier: Option<GroundPoint>, a: GroundPoint, b: GroundPoint, c: &mut Checker) {
    let why = Why::Backward;
    let accepted = a.station..=1000.0;
    c.within("[0]", Quantity::Length, b.station, accepted, why);
    let apart = num::hypot(b.station - a.station, b.elevation - a.elevation);
    if apart < CLOSEST {
        let why = Why::SamePoint;
        c.within("", Quantity::Length, apart, CLOSEST..=2000.0, why);
    } else if earlier.is_some_and(|e| e.station == b.station) {
        let why = Why::FacePoints;
        c.wrong("[0]", Quantity::Length, why);
    }
}
