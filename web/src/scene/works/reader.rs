//! Figures as the reader of a drawing writes them.

use sim::error::Quantity;
use sim::num;
use sim::units::{System, format};

/// Width of a pencil's line, m.
const PENCIL: f64 = 0.001;

/// Units and decimal sign of who reads.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reader {
    /// Units.
    pub system: System,
    /// What stands between ones and tenths.
    pub decimal: char,
}

impl Reader {
    /// A length as it is staked out and dug, m.
    pub fn length(&self, metres: f64) -> String {
        self.own(&format(metres, Quantity::Length, self.system))
    }

    /// A difference of heights, m, as finely as a tape is read.
    pub fn margin(&self, metres: f64) -> String {
        self.own(&format(metres, Quantity::Margin, self.system))
    }

    /// A length as it is marked on wood, m: in metres no finer than a pencil's line.
    pub fn fine(&self, metres: f64) -> String {
        let marked = match self.system {
            System::Metric => (metres / PENCIL).round() * PENCIL,
            System::Feet => metres,
        };
        self.own(&format(marked, Quantity::Sawn, self.system))
    }

    /// An angle, rad.
    pub fn angle(&self, angle: f64) -> String {
        self.own(&format(num::degrees(angle), Quantity::Angle, self.system))
    }

    fn own(&self, text: &str) -> String {
        text.replace('.', &self.decimal.to_string())
    }
}
