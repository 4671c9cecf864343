//! A timber buried in the fill: what it holds, and how far behind the wall it has to lie.
//!
//! # References
//! NAVFAC DM 7.02, Foundations and Earth Structures, chapter 3, section on anchored bulkheads and its figure of
//! deadman anchorage (from memory): passive less active pressure, as if the face went up to the surface where it
//! is at least half as high as it is deep, with a factor of safety of 2; fully held only where its passive wedge
//! stays clear of the active wedge, which begins at the bottom of the wall (EM 1110-2-2504).

use super::earth::{active, passive};
use crate::build::soil::Fill;
use crate::num::{self, PI};

/// What the fill holds before it gives way, N for each metre of a face `height` high whose bottom lies `depth`
/// below the surface: `γ d² (Kp − Ka)/2`. A face that is lower than half its depth has only what lies before it.
/// Its ends would hold more, which is left out.
pub fn resistance(fill: &Fill, depth: f64, height: f64) -> f64 {
    let over = depth - height;
    let above = if over <= height { 0.0 } else { over * over };
    let grows = fill.holding * (passive(fill.friction) - active(fill.friction));
    0.5 * grows * (depth * depth - above)
}

/// What share of that is left along a tie that slopes, with the slope's run for each metre of its length as the
/// cosine: its square.
///
/// # References
/// Holding power of deadmen in loamy soil, table 9 of TM 5-5420-278-10, U.S. Army: from a slope of 1:4 to 1:3
/// and 1:2 it falls as this does, within 5 %.
pub fn sloped(cosine: f64) -> f64 {
    cosine * cosine
}

/// Steepest tie, rise over run (the range in which [`sloped`] follows its table).
pub const STEEPEST: f64 = 0.5;

/// Least level distance, m, between a wall so high and a deadman whose bottom lies so deep, at a friction angle,
/// rad: the wedge that slides down behind the wall, `H tan(45° − φ/2)`, and the one that is pushed up before the
/// deadman, `d tan(45° + φ/2)`, do not meet.
pub fn clear(height: f64, depth: f64, friction: f64) -> f64 {
    let up = num::tan(PI / 4.0 + 0.5 * friction);
    height / up + depth * up
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::build::soil::{Wetness, fill};
    use crate::plan::Soil;

    #[test]
    fn at_the_limits_it_holds_nothing() {
        let loam = fill(Soil::Loam, Wetness::Dry);
        assert_eq!(resistance(&loam, 0.0, 0.0), 0.0);
        let slurry = Fill {
            friction: 0.0,
            ..loam
        };
        assert_eq!(resistance(&slurry, 0.8, 0.4), 0.0);
        assert!((clear(1.0, 0.5, 0.0) - 1.5).abs() < 1e-12);
    }

    /// A low face has no more than the pressure before it: against a sum over strips.
    #[test]
    fn a_low_face_has_what_lies_before_it() {
        let sand = fill(Soil::Sand, Wetness::Dry);
        let (depth, height, strips) = (1.0, 0.2, 1000);
        let grows = sand.holding * (passive(sand.friction) - active(sand.friction));
        let strip = height / f64::from(strips);
        let z = |i: u32| depth - height + (f64::from(i) + 0.5) * strip;
        let sum: f64 = (0..strips).map(|i| grows * z(i) * strip).sum();
        assert!((resistance(&sand, depth, height) / sum - 1.0).abs() < 1e-9);
    }
}
