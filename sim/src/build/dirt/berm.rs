//! The bank of a turn.

use super::sum::Sum;
use crate::num;
use crate::plan::Turn;

/// The bank's dirt, m³: its section turned about the turn's middle (Pappus).
///
/// The section is a triangle under the ridden face, as wide as the turn and steep as its bank, and behind it one that
/// falls as the soil stands. The turn's radius goes to the middle of the face. No more than a face that begins at
/// the turn's middle.
pub(super) fn bank(turn: &Turn, width: f64, slope: f64) -> (f64, f64) {
    let (sine, cosine) = num::sin_cos(num::radians(turn.bank_deg));
    let (level, height) = (width * cosine, width * sine);
    let inner = num::max(turn.radius - level / 2.0, 0.0);
    let outer = inner + level;
    let back = slope * height;
    let areas = [level * height / 2.0, back * height / 2.0];
    let radii = [inner + 2.0 * level / 3.0, outer + back / 3.0];
    let sweep = num::radians(turn.sweep_deg);
    let volume = sweep * (areas[0] * radii[0] + areas[1] * radii[1]);
    (volume, height)
}

/// The same as a sum that lies along a stretch of the unrolled line.
pub(super) fn lying(volume: f64, from: f64, to: f64) -> Sum {
    let mut sum = Sum::default();
    sum.add(volume, (from + to) / 2.0, 1.0);
    sum
}
