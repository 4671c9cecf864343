//! Usual bikes by the size of their wheels.

use crate::plan::{Bike, Rolling};
use serde::{Deserialize, Serialize};

/// Sizes of wheels, by the inches that the trade calls them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[allow(missing_docs)] // The names say all.
pub enum Wheel {
    #[serde(rename = "12")]
    In12,
    #[serde(rename = "14")]
    In14,
    #[serde(rename = "16")]
    In16,
    #[serde(rename = "18")]
    In18,
    #[serde(rename = "20")]
    In20,
    #[serde(rename = "24")]
    In24,
    #[serde(rename = "26")]
    In26,
    #[serde(rename = "27.5")]
    In27Half,
    #[serde(rename = "29")]
    In29,
}

impl Wheel {
    /// Every size, the smallest first.
    pub const ALL: [Wheel; 9] = [
        Wheel::In12,
        Wheel::In14,
        Wheel::In16,
        Wheel::In18,
        Wheel::In20,
        Wheel::In24,
        Wheel::In26,
        Wheel::In27Half,
        Wheel::In29,
    ];

    /// The size that usually fits a rider of a stature, m (common practice, no source).
    pub fn fitting(stature: f64) -> Self {
        let fits = |wheel: &Wheel| stature <= wheel.usual().tallest;
        Self::ALL.into_iter().find(fits).unwrap_or(Wheel::In26)
    }

    /// What is usual at this size.
    ///
    /// # References
    /// Bead seats: ISO 5775-1, as listed in tyre makers' tables; 254 mm `from memory`. Widths: sizes
    /// of tyre that are sold for them. All the rest: common practice, no source.
    fn usual(self) -> Row {
        // Bead seat mm, tyre width mm, wheelbase m, bike kg, one wheel kg, pressure kPa, tallest m.
        let row = match self {
            Wheel::In12 => [203.0, 47.0, 0.60, 5.0, 0.6, 200.0, 0.98],
            Wheel::In14 => [254.0, 47.0, 0.67, 6.0, 0.75, 200.0, 1.07],
            Wheel::In16 => [305.0, 47.0, 0.75, 7.0, 0.9, 200.0, 1.17],
            Wheel::In18 => [355.0, 47.0, 0.82, 8.0, 1.1, 200.0, 1.25],
            Wheel::In20 => [406.0, 54.0, 0.90, 9.5, 1.3, 250.0, 1.42],
            Wheel::In24 => [507.0, 54.0, 1.00, 11.5, 1.7, 250.0, 1.58],
            // Jumps are ridden on 26 inches by the tallest too; larger wheels are there to choose.
            Wheel::In26 => [559.0, 58.0, 1.07, 12.5, 2.0, 250.0, 2.2],
            Wheel::In27Half => [584.0, 58.0, 1.13, 13.0, 2.1, 220.0, 2.2],
            Wheel::In29 => [622.0, 58.0, 1.17, 13.5, 2.3, 220.0, 2.2],
        };
        let [
            bead_seat,
            tyre_width,
            wheelbase,
            mass,
            wheel_mass,
            pressure,
            tallest,
        ] = row;
        Row {
            bead_seat: bead_seat / 1000.0,
            tyre_width: tyre_width / 1000.0,
            wheelbase,
            mass,
            wheel_mass,
            pressure: pressure * 1000.0,
            tallest,
        }
    }
}

/// What is usual at one size of wheel, in SI units.
struct Row {
    bead_seat: f64,
    tyre_width: f64,
    wheelbase: f64,
    mass: f64,
    wheel_mass: f64,
    pressure: f64,
    /// The tallest rider it is bought for.
    tallest: f64,
}

/// Inertia of a wheel, in its mass times its outer radius squared: rim and tyre are its greatest
/// part and lie a little inside that radius (common practice, no source).
const HOOP: f64 = 0.8;

/// A usual bike on wheels of a size.
pub fn bike(wheel: Wheel, rolling: Rolling) -> Bike {
    let usual = wheel.usual();
    let mut bike = Bike {
        mass: usual.mass,
        wheelbase: usual.wheelbase,
        bead_seat: usual.bead_seat,
        tyre_width: usual.tyre_width,
        tyre_pressure: usual.pressure,
        tyre_stiffness: None,
        wheel_mass: usual.wheel_mass,
        wheel_inertia: 0.0,
        rolling,
    };
    let radius = bike.wheel_radius();
    bike.wheel_inertia = super::rounded(HOOP * bike.wheel_mass * radius * radius, 1e4);
    bike
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Bead seats of ISO 5775-1, mm, and the outer diameter of a wheel with the tyre named in front:
    /// bead seat and twice the tyre's height, which is its width from 28 mm on.
    #[test]
    fn wheels_are_those_of_the_standard() {
        let standard = [
            (Wheel::In12, 203.0, 297.0),     // 47-203
            (Wheel::In14, 254.0, 348.0),     // 47-254
            (Wheel::In16, 305.0, 399.0),     // 47-305
            (Wheel::In18, 355.0, 449.0),     // 47-355
            (Wheel::In20, 406.0, 514.0),     // 54-406
            (Wheel::In24, 507.0, 615.0),     // 54-507
            (Wheel::In26, 559.0, 675.0),     // 58-559
            (Wheel::In27Half, 584.0, 700.0), // 58-584
            (Wheel::In29, 622.0, 738.0),     // 58-622
        ];
        assert_eq!(standard.map(|row| row.0), Wheel::ALL);
        for (wheel, bead_seat, diameter) in standard {
            let bike = bike(wheel, Rolling::default());
            assert!((bike.bead_seat * 1000.0 - bead_seat).abs() < 1e-9);
            assert!((bike.wheel_radius() * 2000.0 - diameter).abs() < 1e-9);
        }
    }

    /// Common practice, no source: 12 inches for the smallest, 20 for a child of ten, 26 for adults.
    #[test]
    fn wheels_grow_with_the_rider() {
        assert_eq!(Wheel::fitting(0.8), Wheel::In12);
        assert_eq!(Wheel::fitting(1.39), Wheel::In20);
        assert_eq!(Wheel::fitting(2.5), Wheel::In26);
        let sizes = (80..220).map(|cm| Wheel::fitting(f64::from(cm) / 100.0));
        let places: Vec<_> = sizes
            .map(|w| Wheel::ALL.iter().position(|x| *x == w))
            .collect();
        assert!(places.is_sorted(), "{places:?}");
    }
}
