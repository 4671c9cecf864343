//! Why a text is no quantity.

use super::System;
use crate::error::Quantity;
use core::fmt;
use serde::Serialize;

/// What is wrong with a text.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", content = "unit", rename_all = "snake_case")]
pub enum Wrong {
    /// There is nothing in it.
    Empty,
    /// It does not begin with a number, or has something between its parts that does not belong.
    NotANumber,
    /// A unit that is unknown, or measures something else.
    UnknownUnit(String),
    /// Two parts that do not follow one another, as inches before feet, or 14 inches after feet.
    Order,
    /// A comma before three digits, which could be read in two ways.
    Comma,
    /// A fraction that is no proper one.
    Fraction,
    /// More digits than a measure can have.
    TooManyDigits,
    /// A part of a thing that is counted.
    NotWhole,
    /// The quantity is a text, not a number.
    Text,
}

/// A text that is no quantity: what was given, what is wrong with it, what is accepted.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct UnitError {
    /// The text.
    pub given: String,
    /// What it was to give.
    pub quantity: Quantity,
    /// The units chosen.
    pub system: System,
    /// What is wrong with it.
    pub wrong: Wrong,
}

impl UnitError {
    /// Examples of what is accepted.
    pub fn accepted(&self) -> &'static str {
        let feet = self.system == System::Feet;
        match self.quantity {
            Quantity::Length if feet => "4' 6\", 4ft 6 1/2in, 54in, 4.5 (feet), 1.37 m, 137cm",
            Quantity::Length => "1.37 (metres), 137cm, 1370 mm, 4' 6\", 4ft 6 1/2in, 54in",
            Quantity::Margin if feet => "1 1/2 (inches), 4 cm",
            Quantity::Margin => "4 (centimetres), 1 1/2 in",
            Quantity::Sawn if feet => "1 3/4 (inches), 46 5/8\", 45 mm",
            Quantity::Sawn => "45 (millimetres), 2.44 m, 1 3/4 in",
            Quantity::Area if feet => "3.5 (square feet), 0.33 m²",
            Quantity::Area => "0.33 (square metres), 3.5 ft²",
            Quantity::Volume if feet => "5 (cubic yards), 3 ft³, 0.08 m³",
            Quantity::Volume => "0.08 (cubic metres), 80 l, 3 ft³",
            Quantity::Angle => "24 (degrees), 24°, 22 1/2",
            Quantity::Speed if feet => "12 (miles per hour), 20 km/h, 5.5 m/s",
            Quantity::Speed => "20 (kilometres per hour), 12 mph, 5.5 m/s",
            Quantity::Time => "2.4 (seconds), 2.4 s",
            Quantity::Mass if feet => "70 (pounds), 32 kg",
            Quantity::Mass => "32 (kilograms), 70 lb",
            Quantity::Force if feet => "300 (pounds of force), 1.5 kN",
            Quantity::Force => "1.5 (kilonewtons), 300 lbf, 1500 N",
            Quantity::Pressure if feet => "36 (psi), 2.5 bar, 250 kPa",
            Quantity::Pressure => "2.5 (bar), 36 psi, 250 kPa",
            Quantity::Temperature if feet => "59 (degrees Fahrenheit), 15 °C",
            Quantity::Temperature => "15 (degrees Celsius), 59 °F",
            Quantity::Inertia => "0.067 (kg m²)",
            Quantity::Stiffness => "60000 (N/m), 60 N/mm",
            Quantity::Number => "0.5, 1/2, 50 %",
            Quantity::Count => "1, 2, 3",
            Quantity::Text => "a text",
        }
    }
}

impl fmt::Display for UnitError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let given = &self.given;
        match &self.wrong {
            Wrong::Empty => write!(f, "nothing is given"),
            Wrong::NotANumber => write!(f, "\"{given}\" is not understood"),
            Wrong::UnknownUnit(unit) => write!(f, "\"{given}\": \"{unit}\" is no unit for this"),
            Wrong::Order => write!(f, "\"{given}\": these parts do not follow one another"),
            Wrong::Comma => write!(
                f,
                "\"{given}\": this comma can be read in two ways; use a point"
            ),
            Wrong::Fraction => write!(f, "\"{given}\": this is no proper fraction"),
            Wrong::TooManyDigits => write!(f, "\"{given}\": too many digits"),
            Wrong::NotWhole => write!(f, "\"{given}\": only whole numbers count"),
            Wrong::Text => write!(f, "\"{given}\" stands where no number is asked for"),
        }?;
        write!(f, "; accepted: {}", self.accepted())
    }
}

impl core::error::Error for UnitError {}
