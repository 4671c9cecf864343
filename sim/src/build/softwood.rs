//! What softwood may carry.
//!
//! Hem-fir of grade No. 2, incised for treatment and wet, after the National Design Specification for Wood
//! Construction (NDS, American Wood Council): stresses 850 lb/in² in bending, 135 in shear (spruce-pine-fir, the
//! least of the common ones), 1300 along the grain, 405 across, stiffness 1.3 million and for buckling 0.47
//! million, times 0.8 (stress) or 0.95 (stiffness) for incising and 0.97, 0.8, 0.67 and 0.9 for being wet (each
//! `from memory`; together they give the spans of table 2 of the Prescriptive Residential Wood Deck Construction
//! Guide, DCA 6, AWC 2018, which were looked up, to an inch).

use crate::num;

/// A pound to the square inch, Pa.
const PSI: f64 = 6894.757;

/// Stress in bending that a single piece may bear, Pa; no more for small sizes, which NDS allows.
pub const BENDING: f64 = 850.0 * 0.8 * PSI;

/// Stress in shear that a piece may bear, Pa.
pub const SHEAR: f64 = 135.0 * 0.97 * 0.8 * PSI;

/// Stress along the grain that a short post may bear, Pa.
pub const COMPRESSION: f64 = 1300.0 * 0.8 * 0.8 * PSI;

/// Stress under a washer, across the grain, Pa; incising takes nothing off (NDS 4.3.8, from memory).
pub const ACROSS: f64 = 405.0 * 0.67 * PSI;

/// Modulus of elasticity, Pa.
pub const STIFFNESS: f64 = 1.3e6 * 0.95 * 0.9 * PSI;

/// Modulus of elasticity that buckling is reckoned with, Pa.
pub const BUCKLING: f64 = 0.47e6 * 0.95 * 0.9 * PSI;

/// Share that is left under a load that never goes away, such as earth (NDS table 2.3.2, from memory).
pub const PERMANENT: f64 = 0.9;

/// What joists and boards side by side may bear more, since a weak one leans on its neighbours (NDS 4.3.9,
/// from memory).
pub const REPETITIVE: f64 = 1.15;

/// Bend of a floor's joist under its live load, as a share of the span (International Residential Code,
/// table R301.7: 1/360).
pub const BEND: f64 = 1.0 / 360.0;

/// Section modulus of a piece `thick` across the load and `deep` along it, m³.
pub fn section_modulus(thick: f64, deep: f64) -> f64 {
    thick * deep * deep / 6.0
}

/// Longest span, m, of a beam on two supports under an even load, N/m, that bears a moment, N·m: M = w L²/8.
pub fn span_in_bending(load: f64, moment: f64) -> f64 {
    (8.0 * moment / load).sqrt()
}

/// Longest span, m, of a beam on two supports that bends by no more than a share of it under an even load, N/m:
/// 5 w L⁴ / (384 E I).
pub fn span_in_bend(load: f64, stiffness: f64, inertia: f64, share: f64) -> f64 {
    num::cbrt(384.0 * stiffness * inertia * share / (5.0 * load))
}

/// Longest span, m, of a beam that a load, N, half way along gives a moment, N·m: M = P L/4.
pub fn span_under_point(load: f64, moment: f64) -> f64 {
    4.0 * moment / load
}

/// Load, N, that a square or oblong post of a length bears, its ends free to turn: the column factor of NDS 3.7
/// for sawn wood (c = 0.8; from memory), with the thinner side.
pub fn post_load(section: [f64; 2], length: f64) -> f64 {
    let thin = num::min(section[0], section[1]);
    let slender = length / thin;
    let short = COMPRESSION;
    let ratio = if slender > 0.0 {
        0.822 * BUCKLING / (slender * slender * short)
    } else {
        f64::INFINITY
    };
    if ratio > 1e9 {
        return short * section[0] * section[1];
    }
    let half = (1.0 + ratio) / 1.6;
    let factor = half - (half * half - ratio / 0.8).sqrt();
    factor * short * section[0] * section[1]
}

/// Longest post in its own thicknesses (NDS 3.7.1.4, from memory).
pub const MOST_SLENDER: f64 = 50.0;

#[cfg(test)]
mod tests {
    use super::*;

    /// A short post is crushed, a slender one buckles as Euler says.
    #[test]
    fn posts_are_crushed_or_buckle() {
        let section = [0.1, 0.1];
        let crushed = COMPRESSION * 0.01;
        assert!((post_load(section, 0.0) / crushed - 1.0).abs() < 1e-12);
        assert!(post_load(section, 0.3) > 0.97 * crushed);
        let euler = 0.822 * BUCKLING / 2500.0 * 0.01;
        assert!((post_load(section, 5.0) / euler - 1.0).abs() < 0.06);
    }
}
