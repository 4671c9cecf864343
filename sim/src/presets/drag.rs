//! How much wind a rider catches.

use crate::num;

/// Drag coefficient of rider and bike, in loose clothes.
///
/// # References
/// Gross, Kyle and Malewicki 1983, *The aerodynamics of human-powered land vehicles*, Sci. Am. 249(6):
/// 1.1 for a BMX racer and for an upright commuter (`from memory`; the paper's forces follow from it).
const COEFFICIENT: f64 = 1.1;

/// Frontal area of rider and bike, m², for a stature in m, a mass in kg and a posture from 0, low, to
/// 1, tall: between the two published formulas as the posture says.
///
/// # References
/// Low: Bassett, Kyle, Passfield, Broker and Burke 1999, Med. Sci. Sports Exerc. 31:1665. Tall: its
/// form for riders who sit up, bike included, reprinted by Faria et al. 2005, Sports Med. 35:313
/// (`from memory`). Both were fitted to adults: for children they are carried on.
pub fn frontal_area(stature: f64, mass: f64, posture: f64) -> f64 {
    let body = num::pow(stature, 0.725) * num::pow(mass, 0.425);
    let low = 0.0293 * body + 0.0604;
    let tall = 0.0276 * body + 0.1647;
    low + posture * (tall - low)
}

/// Drag area of rider and bike, m²: the frontal area times the drag coefficient.
pub fn drag_area(stature: f64, mass: f64, posture: f64) -> f64 {
    COEFFICIENT * frontal_area(stature, mass, posture)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked out apart from this code from the published formulas, to four places.
    #[test]
    fn areas_are_those_of_the_formulas() {
        let worked = [
            (1.8, 75.0, 0.3415, 0.4295),
            (1.763, 70.6, 0.3303, 0.4189),
            (1.3882, 32.088, 0.2227, 0.3176),
            (1.1, 18.5, 0.1689, 0.2669),
        ];
        for (stature, mass, low, tall) in worked {
            assert!((frontal_area(stature, mass, 0.0) - low).abs() < 1e-4);
            assert!((frontal_area(stature, mass, 1.0) - tall).abs() < 1e-4);
        }
    }

    /// Gross, Kyle and Malewicki 1983 give a BMX racer of 150 lb with bike a drag area of 4.9 ft²
    /// times 1.1. Without a bike of 9.5 kg that is about a boy of fifteen, 1.70 m tall. The ranges beside
    /// each speed allow for 18 in a hundred either way, and so does this.
    #[test]
    fn a_racer_sitting_up_catches_about_what_was_measured() {
        let measured = 1.1 * 4.9 * 0.3048 * 0.3048;
        let rider = 150.0 * 0.453_592_37 - 9.5;
        let share = drag_area(1.70, rider, 1.0) / measured;
        assert!((share - 1.0).abs() < 0.18, "{share} of what was measured");
    }
}
