//! Quantities as a builder reads them.

use super::scale::{self, Unit};
use super::{System, decimals, parse};
use crate::error::Quantity;

/// How finely a quantity is written: places after the point, and whether noughts at the end stand.
struct Fineness {
    places: usize,
    even: bool,
}

/// The quantity with its unit, to the nearest step of [`step`]: `1.37 m` or `4' 6"`, `18.4 km/h`.
///
/// What it writes, [`parse`] reads, within half a step.
pub fn format(value: f64, quantity: Quantity, system: System) -> String {
    let Some(unit) = scale::usual(quantity, system) else {
        return String::new();
    };
    if in_inches(quantity, system) {
        return feet_and_inches(value, quantity);
    }
    let figure = figure(from_plan(value, unit), &fineness(quantity, system));
    with_unit(figure, quantity, unit)
}

/// The quantity as it stands in a field to be typed in: as [`format()`] writes it where that is all
/// of it, else with as many more places as it takes to read back the same, up to six, and as [`parse`] reads.
pub fn edit(value: f64, quantity: Quantity, system: System) -> String {
    let short = format(value, quantity, system);
    let same = |text: &str| {
        parse(text, quantity, system).is_ok_and(|read| read.to_bits() == value.to_bits())
    };
    let (false, Some(unit)) = (same(&short), fine_unit(quantity, system)) else {
        return short;
    };
    let number = from_plan(value, unit);
    let long = |places| {
        let fineness = Fineness {
            places,
            even: false,
        };
        with_unit(figure(number, &fineness), quantity, unit)
    };
    let texts = (fineness(quantity, system).places + 1..=MOST_PLACES).map(long);
    // Of a unit that is no round number of the plan's, not every place is read.
    let readable = |text: &String| parse(text, quantity, system).is_ok();
    let all: Vec<_> = texts.take_while(readable).collect();
    let found = all.iter().find(|text| same(text)).or(all.last());
    found.cloned().unwrap_or(short)
}

/// The number alone, in the unit of [`usual_unit`](super::usual_unit), as another program wants it: with
/// as many places as it takes to read back the same, up to six.
pub fn plain(value: f64, quantity: Quantity, system: System) -> String {
    let Some(unit) = scale::usual(quantity, system) else {
        return String::new();
    };
    let number = from_plan(value, unit);
    let text = |places| {
        let even = true;
        figure(number, &Fineness { places, even })
    };
    let same = |text: &String| {
        parse(text, quantity, system).is_ok_and(|read| read.to_bits() == value.to_bits())
    };
    let mut texts = (0..MOST_PLACES).map(text);
    texts.find(same).unwrap_or_else(|| text(MOST_PLACES))
}

/// The unit that a number is written in with many places: inches rather than feet.
fn fine_unit(quantity: Quantity, system: System) -> Option<&'static Unit> {
    let usual = scale::usual(quantity, system)?;
    let feet = quantity == Quantity::Length && system == System::Feet;
    if feet {
        scale::below(usual)
    } else {
        Some(usual)
    }
}

/// Whether a quantity is written in feet and inches, or in inches alone.
fn in_inches(quantity: Quantity, system: System) -> bool {
    let length = matches!(
        quantity,
        Quantity::Length | Quantity::Margin | Quantity::Sawn
    );
    length && system == System::Feet
}

fn with_unit(figure: String, quantity: Quantity, unit: &Unit) -> String {
    let name = unit.names[0];
    let close = quantity == Quantity::Angle || name.is_empty();
    figure + if close { "" } else { " " } + name
}

/// The difference between two neighbouring texts of [`format()`], in the unit of the plan.
pub fn step(quantity: Quantity, system: System) -> f64 {
    if in_inches(quantity, system) {
        return INCH / inch_parts(quantity) as f64;
    }
    scale::usual(quantity, system).map_or(0.0, |unit| {
        let tens = [1, 10, 100, 1000, 10_000][fineness(quantity, system).places];
        unit.times as f64 / (unit.parts * tens) as f64
    })
}

/// Places after the point that a field to be typed in shows at most: a thousandth of a millimetre.
const MOST_PLACES: usize = 6;
const INCH: f64 = 0.0254;

/// Into how many parts an inch is split: as a tape is read, or as wood is marked.
fn inch_parts(quantity: Quantity) -> i64 {
    if quantity == Quantity::Sawn { 16 } else { 4 }
}

fn fineness(quantity: Quantity, system: System) -> Fineness {
    let feet = system == System::Feet;
    let (places, even) = match quantity {
        // Speeds change while they are looked at: they keep their width.
        Quantity::Speed => (1, true),
        Quantity::Length | Quantity::Time | Quantity::Volume => (2, true),
        Quantity::Force if !feet => (2, true),
        Quantity::Area if feet => (1, false),
        Quantity::Area => (3, false),
        Quantity::Angle | Quantity::Mass => (1, false),
        Quantity::Pressure if !feet => (2, false),
        Quantity::Number | Quantity::Inertia => (4, false),
        // Plywood is sold in halves of a millimetre.
        Quantity::Sawn => (1, false),
        Quantity::Margin
        | Quantity::Force
        | Quantity::Pressure
        | Quantity::Temperature
        | Quantity::Stiffness
        | Quantity::Count
        | Quantity::Text => (0, false),
    };
    Fineness { places, even }
}

fn from_plan(value: f64, unit: &Unit) -> f64 {
    value * unit.parts as f64 / unit.times as f64 - unit.shift as f64
}

fn figure(value: f64, fineness: &Fineness) -> String {
    let text = decimals(value, fineness.places);
    let text = if fineness.even || fineness.places == 0 {
        &text
    } else {
        text.trim_end_matches('0').trim_end_matches('.')
    };
    // A minus before nothing but noughts says nothing.
    let zero = text.chars().all(|c| matches!(c, '-' | '0' | '.'));
    let text = if zero {
        text.trim_start_matches('-')
    } else {
        text
    };
    text.to_owned()
}

fn feet_and_inches(value: f64, quantity: Quantity) -> String {
    let parts = inch_parts(quantity);
    let all = (value / (INCH / parts as f64)).round();
    // Beyond any yard: no use in inches.
    if all.abs() > 1e9 || all.is_nan() {
        return decimals(value / 0.3048, 0) + " ft";
    }
    let sign = if all < 0.0 { "-" } else { "" };
    let all = all.abs() as i64;
    // What is sawn is marked in inches alone.
    let feet = if quantity == Quantity::Sawn {
        0
    } else {
        all / (12 * parts)
    };
    let (inches, part) = (all / parts - 12 * feet, all % parts);
    let part = fraction(part, parts);
    let inches = match (inches, part.as_str()) {
        (0, "") if feet > 0 => String::new(),
        (n, "") => format!("{n}\""),
        (0, part) => format!("{part}\""),
        (n, part) => format!("{n} {part}\""),
    };
    let feet = if feet > 0 {
        format!("{feet}'")
    } else {
        String::new()
    };
    let gap = if feet.is_empty() || inches.is_empty() {
        ""
    } else {
        " "
    };
    format!("{sign}{feet}{gap}{inches}")
}

/// A part of an inch in its lowest terms; nothing where there is none. Parts are powers of two.
fn fraction(part: i64, parts: i64) -> String {
    if part == 0 {
        return String::new();
    }
    let shared = 1 << part.trailing_zeros();
    format!("{}/{}", part / shared, parts / shared)
}
