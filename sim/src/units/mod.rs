//! Quantities as builders type and read them. Everything inside is SI; this is the edge.
//!
//! [`parse`] takes a text with a unit, or without one where the chosen [`System`] has a usual one:
//! `4' 6"`, `4ft 6 1/2in`, `54in`, `4.5`, `1.37 m`, `137cm`, `18 km/h`. What was typed is worked
//! out in fractions and rounded once, so `54in` and `1.3716 m` are the same number to the last
//! bit. [`format()`] writes a quantity as finely as it is built, and no finer.

mod columns;
mod decimals;
mod error;
mod number;
mod scale;
mod show;
mod terms;

pub use columns::{RowError, RowWrong, pairs};
pub use decimals::decimals;
pub use error::{UnitError, Wrong};
pub use show::{edit, format, plain, step};

use crate::error::Quantity;
use num_traits::ToPrimitive;
use serde::{Deserialize, Serialize};

/// Which units a reader thinks in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum System {
    /// Metres, kilometres per hour, kilograms, bar, degrees Celsius.
    #[default]
    Metric,
    /// Feet and inches, miles per hour, pounds, pounds per square inch, degrees Fahrenheit.
    Feet,
}

/// The number that a text gives for a quantity, in the unit that plans keep it in: SI, except that
/// angles are in degrees and temperatures in degrees Celsius.
///
/// # Errors
/// Says what was given, what is wrong with it, and what is accepted.
pub fn parse(text: &str, quantity: Quantity, system: System) -> Result<f64, UnitError> {
    let fail = |wrong| UnitError {
        given: text.to_owned(),
        quantity,
        system,
        wrong,
    };
    let value = terms::value(text, quantity, system).map_err(fail)?;
    value.to_f64().ok_or_else(|| fail(Wrong::TooManyDigits))
}

/// The unit that stands for a number typed without one, as it is written behind a figure; empty
/// for pure numbers and texts.
pub fn usual_unit(quantity: Quantity, system: System) -> &'static str {
    scale::usual(quantity, system).map_or("", |unit| unit.names[0])
}
