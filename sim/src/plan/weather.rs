//! Air and ground on the day.

use super::check::Checker;
use crate::error::{Quantity, Why};
use serde::{Deserialize, Serialize};

/// Air and ground on the day.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Weather {
    /// Height over the sea, m.
    pub altitude: f64,
    /// Air temperature, °C.
    pub temperature: f64,
    /// Wind along the line, m/s; positive from behind.
    pub tailwind: f64,
    /// The state of the ground.
    pub ground: Ground,
}

impl Default for Weather {
    fn default() -> Self {
        Self {
            altitude: 0.0,
            temperature: 15.0,
            tailwind: 0.0,
            ground: Ground::Dry,
        }
    }
}

impl Weather {
    pub(super) fn check(&self, c: &mut Checker) {
        let why = Why::Altitude;
        c.within(
            "altitude",
            Quantity::Length,
            self.altitude,
            -430.0..=5000.0,
            why,
        );
        let why = Why::Temperature;
        c.within(
            "temperature",
            Quantity::Temperature,
            self.temperature,
            -30.0..=50.0,
            why,
        );
        let why = Why::Wind;
        c.within(
            "tailwind",
            Quantity::Speed,
            self.tailwind,
            -20.0..=20.0,
            why,
        );
    }
}

/// The state of the ground, a factor on rolling resistance.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Ground {
    /// As the coefficients say.
    #[default]
    Dry,
    /// After rain, drained.
    Damp,
    /// Soft under the thumb: better not ridden.
    Soft,
}

impl Ground {
    /// The factor on rolling resistance.
    ///
    /// # References
    /// 1.6 takes packed dirt to the middle of the 0.02 to 0.03 given for damp dirt, 3.5 to the 0.05
    /// to 0.06 at the firm end of soft dirt (Wilson, *Bicycling Science*, `from memory`).
    pub fn factor(self) -> f64 {
        match self {
            Ground::Dry => 1.0,
            Ground::Damp => 1.6,
            Ground::Soft => 3.5,
        }
    }
}
