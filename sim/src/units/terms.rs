//! A quantity as one or more numbers, each with its unit.

use super::scale::{self, Unit};
use super::{System, Wrong, number};
use crate::error::Quantity;
use num_rational::Ratio;
use num_traits::{CheckedAdd, CheckedMul, Signed};

/// The quantity in the unit of the plan, exact.
pub fn value(text: &str, quantity: Quantity, system: System) -> Result<Ratio<i64>, Wrong> {
    let text = text.trim();
    if quantity == Quantity::Text {
        return Err(Wrong::Text);
    }
    if text.is_empty() {
        return Err(Wrong::Empty);
    }
    let (negative, text) = match text.strip_prefix(['-', '\u{2212}']) {
        Some(rest) => (true, rest.trim_start()),
        None => (false, text.strip_prefix('+').unwrap_or(text).trim_start()),
    };
    let value = match quantity {
        Quantity::Length | Quantity::Margin | Quantity::Sawn => {
            length(text, quantity, system, negative)?
        }
        _ => single(text, quantity, system, negative)?,
    };
    if quantity == Quantity::Count && !value.is_integer() {
        return Err(Wrong::NotWhole);
    }
    Ok(value)
}

/// One number; all that follows it is its unit.
fn single(
    text: &str,
    quantity: Quantity,
    system: System,
    negative: bool,
) -> Result<Ratio<i64>, Wrong> {
    let (count, rest) = number::number(text)?;
    let unit = named(rest, quantity)?.or(scale::usual(quantity, system));
    scaled(count, unit.ok_or(Wrong::Text)?, negative)
}

/// Numbers each with a unit, the next always smaller than one of the unit before.
fn length(
    text: &str,
    quantity: Quantity,
    system: System,
    negative: bool,
) -> Result<Ratio<i64>, Wrong> {
    let (count, name, mut rest) = term(text)?;
    let first = named(name, quantity)?;
    let mut unit = first.or(scale::usual(quantity, system));
    let mut total = scaled(count, unit.ok_or(Wrong::Order)?, negative)?;
    if first.is_none() && !rest.is_empty() {
        return Err(Wrong::Order);
    }
    while !rest.is_empty() {
        let (count, name, behind) = term(rest)?;
        let below = unit.and_then(scale::below).ok_or(Wrong::Order)?;
        let given = named(name, quantity)?.unwrap_or(below);
        let part = scaled(count, given, negative)?;
        let whole = scaled(Ratio::from(1), unit.unwrap_or(below), false)?;
        if !core::ptr::eq(given, below) || part.abs() >= whole {
            return Err(Wrong::Order);
        }
        total = total.checked_add(&part).ok_or(Wrong::TooManyDigits)?;
        unit = Some(below);
        rest = behind;
    }
    Ok(total)
}

/// A number, the name behind it, and the text from the next number on.
fn term(text: &str) -> Result<(Ratio<i64>, &str, &str), Wrong> {
    let (count, behind) = number::number(text)?;
    let end = behind.find(number::begins).unwrap_or(behind.len());
    let (name, rest) = behind.split_at(end);
    // A point right before a number belongs to neither for sure.
    if name.ends_with(['.', ',', '/']) && !rest.is_empty() {
        return Err(Wrong::NotANumber);
    }
    // A dash may stand between feet and inches.
    Ok((count, name.trim_end_matches([' ', '-']), rest))
}

/// The unit with a name, or none where there is no name.
fn named(name: &str, quantity: Quantity) -> Result<Option<&'static Unit>, Wrong> {
    let name = name.trim();
    if name.is_empty() {
        return Ok(None);
    }
    let short = name.strip_suffix('.').unwrap_or(name);
    let mut units = scale::units(quantity).iter();
    units
        .find(|unit| unit.names.iter().any(|n| n.eq_ignore_ascii_case(short)))
        .map(Some)
        .ok_or_else(|| Wrong::UnknownUnit(name.to_owned()))
}

fn scaled(count: Ratio<i64>, unit: &Unit, negative: bool) -> Result<Ratio<i64>, Wrong> {
    let count = if negative { -count } else { count };
    count
        .checked_add(&Ratio::from(unit.shift))
        .and_then(|shifted| shifted.checked_mul(&Ratio::new(unit.times, unit.parts)))
        .ok_or(Wrong::TooManyDigits)
}
