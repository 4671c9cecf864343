//! Two arcs with a common tangent between two points with given headings.

use super::super::pen::Pen;
use super::super::{
    Character,
    piece::{STEEPEST, direction},
};
use crate::num;
use glam::DVec2;

/// Tangents that point this far past the other end, m, point at it.
const FLAT: f64 = 1e-9;

/// Draws from where the pen stands, leaving with the heading `from`, to a point, arriving with the
/// heading `into`; straight where the arcs would turn all but plumb on the way.
///
/// The arcs meet at the middle of the line between P₁ + d t₁ and P₂ − d t₂, with t₁ and t₂ the
/// tangents and v = P₂ − P₁, where v·v = 2 d v·(t₁ + t₂) + 2 d² (1 − t₁·t₂).
pub(super) fn draw(pen: &mut Pen, from: f64, to: DVec2, into: f64, character: Character) {
    let (t1, t2) = (direction(from), direction(into));
    let v = to - pen.at;
    if t1.perp_dot(v).abs() < FLAT && t2.perp_dot(v).abs() < FLAT {
        return pen.line_to(to, character);
    }
    let along = v.dot(t1 + t2);
    let square = v.length_squared();
    let root = (along * along + 2.0 * (1.0 - t1.dot(t2)) * square).sqrt();
    let d = square / (along + root);
    let joint = (pen.at + to + (t1 - t2) * d) / 2.0;
    let first = joint - pen.at;
    let heading = 2.0 * num::atan2(first.y, first.x) - from;
    let steep = |a: f64| a.abs() > STEEPEST;
    // Not a number where the headings point away from the chord.
    if !heading.is_finite() || [from, heading, into].into_iter().any(steep) {
        return pen.line_to(to, character);
    }
    pen.arc_to(from, joint, character);
    pen.arc_to(heading, to, character);
}
