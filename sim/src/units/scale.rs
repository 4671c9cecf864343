//! The units, each an exact fraction of the unit that plans keep its quantity in.
//!
//! # References
//! Inch, foot, yard, mile and pound: the international yard and pound agreement (1959), 1 yd = 0.9144 m
//! and 1 lb = 0.45359237 kg, both exact. Pound of force: pound times standard gravity,
//! 9.80665 m/s²; pounds on the square inch: that over square inch.

use super::System;
use crate::error::Quantity;

/// A unit of measure.
#[derive(Debug)]
pub struct Unit {
    /// How it may be written, in capitals or not; first the way it is written by the program.
    pub names: &'static [&'static str],
    /// The unit is `times / parts` of the plan's own.
    pub times: i64,
    /// The unit is `times / parts` of the plan's own.
    pub parts: i64,
    /// What is added to a number in this unit before it is scaled.
    pub shift: i64,
}

const fn unit(names: &'static [&'static str], times: i64, parts: i64) -> Unit {
    Unit {
        names,
        times,
        parts,
        shift: 0,
    }
}

/// Place of the foot among the lengths.
const FEET: usize = 3;

static LENGTH: [Unit; 5] = [
    unit(&["m", "metre", "metres", "meter", "meters"], 1, 1),
    unit(&["cm"], 1, 100),
    unit(&["mm"], 1, 1000),
    unit(
        &["ft", "'", "\u{2032}", "\u{2019}", "foot", "feet"],
        381,
        1250,
    ),
    unit(
        &[
            "in",
            "\"",
            "\u{2033}",
            "\u{201d}",
            "''",
            "\u{2032}\u{2032}",
            "inch",
            "inches",
        ],
        127,
        5000,
    ),
];
static AREA: [Unit; 2] = [
    unit(&["m²", "m2", "m^2", "sq m"], 1, 1),
    unit(&["ft²", "ft2", "ft^2", "sq ft"], 145_161, 1_562_500),
];
static VOLUME: [Unit; 4] = [
    unit(&["m³", "m3", "m^3", "cu m"], 1, 1),
    unit(
        &["yd³", "yd3", "yd^3", "cu yd"],
        1_493_271_207,
        1_953_125_000,
    ),
    unit(&["ft³", "ft3", "ft^3", "cu ft"], 55_306_341, 1_953_125_000),
    unit(&["l", "litre", "litres", "liter", "liters"], 1, 1000),
];
static ANGLE: [Unit; 1] = [unit(&["°", "deg", "degree", "degrees"], 1, 1)];
static SPEED: [Unit; 3] = [
    unit(&["km/h", "kmh", "kph"], 5, 18),
    unit(&["mph", "mi/h"], 1397, 3125),
    unit(&["m/s"], 1, 1),
];
static TIME: [Unit; 1] = [unit(&["s", "sec", "second", "seconds"], 1, 1)];
static MASS: [Unit; 3] = [
    unit(&["kg"], 1, 1),
    unit(&["lb", "lbs", "pound", "pounds"], 45_359_237, 100_000_000),
    unit(&["g"], 1, 1000),
];
static FORCE: [Unit; 3] = [
    unit(&["kN"], 1000, 1),
    unit(&["lbf"], 8_896_443_230_521, 2_000_000_000_000),
    unit(&["N"], 1, 1),
];
static PRESSURE: [Unit; 4] = [
    unit(&["bar"], 100_000, 1),
    unit(&["psi"], 8_896_443_230_521, 1_290_320_000),
    unit(&["kPa"], 1000, 1),
    unit(&["Pa"], 1, 1),
];
static TEMPERATURE: [Unit; 2] = [
    unit(&["°C", "c"], 1, 1),
    Unit {
        names: &["°F", "f"],
        times: 5,
        parts: 9,
        shift: -32,
    },
];
static INERTIA: [Unit; 1] = [unit(&["kg m²", "kg m2", "kgm²", "kgm2"], 1, 1)];
static STIFFNESS: [Unit; 2] = [unit(&["N/m"], 1, 1), unit(&["N/mm"], 1000, 1)];
static NUMBER: [Unit; 2] = [unit(&[""], 1, 1), unit(&["%"], 1, 100)];
static COUNT: [Unit; 1] = [unit(&[""], 1, 1)];

/// Every unit that a quantity may be given in.
pub fn units(quantity: Quantity) -> &'static [Unit] {
    match quantity {
        Quantity::Length | Quantity::Margin | Quantity::Sawn => &LENGTH,
        Quantity::Area => &AREA,
        Quantity::Volume => &VOLUME,
        Quantity::Angle => &ANGLE,
        Quantity::Speed => &SPEED,
        Quantity::Time => &TIME,
        Quantity::Mass => &MASS,
        Quantity::Force => &FORCE,
        Quantity::Inertia => &INERTIA,
        Quantity::Pressure => &PRESSURE,
        Quantity::Stiffness => &STIFFNESS,
        Quantity::Temperature => &TEMPERATURE,
        Quantity::Number => &NUMBER,
        Quantity::Count => &COUNT,
        Quantity::Text => &[],
    }
}

/// The unit of a number that is given without one; `None` for texts.
pub fn usual(quantity: Quantity, system: System) -> Option<&'static Unit> {
    let second = match quantity {
        Quantity::Length => return LENGTH.get(if system == System::Feet { FEET } else { 0 }),
        Quantity::Margin => return LENGTH.get(if system == System::Feet { FEET + 1 } else { 1 }),
        Quantity::Sawn => return LENGTH.get(if system == System::Feet { FEET + 1 } else { 2 }),
        Quantity::Area
        | Quantity::Volume
        | Quantity::Speed
        | Quantity::Mass
        | Quantity::Force
        | Quantity::Pressure
        | Quantity::Temperature => system == System::Feet,
        _ => false,
    };
    units(quantity).get(usize::from(second))
}

/// The unit that parts of this one are given in: centimetres of a metre, inches of a foot.
pub fn below(unit: &Unit) -> Option<&'static Unit> {
    let place = LENGTH.iter().position(|u| core::ptr::eq(u, unit))?;
    (place == 0 || place == FEET).then(|| &LENGTH[place + 1])
}
