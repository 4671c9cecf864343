//! What is wrong with a plan, said so that it can be mended.

mod why;

pub use why::{Unreadable, Why};

use core::fmt;
use serde::{Deserialize, Serialize};

/// What kind of quantity a field holds, so that a page can say it in the reader's units.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Quantity {
    /// Metres.
    Length,
    /// Metres of what is a little off, as a tape is read: written in centimetres or inches.
    Margin,
    /// Metres of what is sawn: written in millimetres, or in inches to the sixteenth.
    Sawn,
    /// Square metres.
    Area,
    /// Cubic metres.
    Volume,
    /// Degrees.
    Angle,
    /// Metres per second.
    Speed,
    /// Seconds.
    Time,
    /// Kilograms.
    Mass,
    /// Newtons.
    Force,
    /// Kilogram square metres.
    Inertia,
    /// Pascals.
    Pressure,
    /// Newtons per metre.
    Stiffness,
    /// Degrees Celsius.
    Temperature,
    /// A pure number.
    Number,
    /// How many.
    Count,
    /// Text.
    Text,
}

impl Quantity {
    /// The unit as it stands behind a figure, with its leading space; empty for pure numbers.
    pub fn suffix(self) -> &'static str {
        match self {
            Quantity::Length | Quantity::Margin | Quantity::Sawn => " m",
            Quantity::Area => " m²",
            Quantity::Volume => " m³",
            Quantity::Angle => "°",
            Quantity::Speed => " m/s",
            Quantity::Time => " s",
            Quantity::Mass => " kg",
            Quantity::Force => " N",
            Quantity::Inertia => " kg m²",
            Quantity::Pressure => " Pa",
            Quantity::Stiffness => " N/m",
            Quantity::Temperature => " °C",
            Quantity::Number | Quantity::Count | Quantity::Text => "",
        }
    }
}

/// One thing wrong with a plan: which field, what was given, what is accepted, and why.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Fault {
    /// Path of the field in the plan, as in `line.features[3].lip.height`.
    pub field: String,
    /// The number given, in the unit of `quantity`; `None` where it is not a number.
    pub given: Option<f64>,
    /// Smallest accepted value, where there is one.
    pub least: Option<f64>,
    /// Largest accepted value, where there is one.
    pub most: Option<f64>,
    /// What `given`, `least` and `most` measure.
    pub quantity: Quantity,
    /// The reason.
    pub why: Why,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = self.quantity.suffix();
        write!(f, "{}: {}", self.field, self.why)?;
        if let Some(given) = self.given {
            write!(f, "; given {given}{unit}")?;
        }
        match (self.least, self.most) {
            (Some(a), Some(b)) => write!(f, "; accepted {a} to {b}{unit}"),
            (Some(a), None) => write!(f, "; accepted {a}{unit} or more"),
            (None, Some(b)) => write!(f, "; accepted {b}{unit} or less"),
            (None, None) => Ok(()),
        }
    }
}
