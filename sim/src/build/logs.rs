//! Boards from the builder's own logs, by published log rules.

use serde::{Deserialize, Serialize};

/// Metres in an inch and in a foot, by definition.
const INCH: f64 = 0.0254;
const FOOT: f64 = 0.3048;

/// Wood in a board foot, m³: a square foot one inch thick.
pub const BOARD_FOOT: f64 = FOOT * FOOT * INCH;

/// How the boards in a log are reckoned. Rules differ most on thin logs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LogRule {
    /// International rule with a kerf of a quarter inch: close to what a careful sawyer gets.
    #[default]
    International,
    /// Scribner's rule as a formula: no taper.
    Scribner,
    /// Doyle's rule: stingy with thin logs.
    Doyle,
}

/// One sort of logs.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Log {
    /// Least diameter at the small end, inside the bark, m.
    pub diameter: f64,
    /// Length, m.
    pub length: f64,
    /// How many.
    pub count: u32,
}

/// What a log gives.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Sawn {
    /// Of all logs together, board feet.
    pub board_feet: f64,
    /// The same, m³.
    pub volume: f64,
    /// Length of boards of one section, m.
    pub boards: f64,
}

impl LogRule {
    /// Boards in one log, in board feet; nothing where it is too thin for the rule.
    ///
    /// # References
    /// With D the diameter at the small end in inches and L the length in feet. International ¼ inch:
    /// 0.904762 (0.22 D² − 0.71 D) for each four feet, D growing by half an inch from one to the next (Massachusetts
    /// General Laws, chapter 96, section 11A; Michigan Act 208 of 1941); a shorter last stretch counts by its share.
    /// Scribner: (0.79 D² − 2 D − 4) L/16. Doyle: ((D − 4)/4)² L. Published tables round to whole feet, or to five.
    pub fn board_feet(self, diameter: f64, length: f64) -> f64 {
        let (d, l) = (diameter / INCH, length / FOOT);
        let feet = match self {
            Self::International => international(d, l),
            Self::Scribner => (0.79 * d * d - 2.0 * d - 4.0) * l / 16.0,
            Self::Doyle if d > 4.0 => (d - 4.0) * (d - 4.0) * l / 16.0,
            Self::Doyle => 0.0,
        };
        if feet > 0.0 { feet } else { 0.0 }
    }

    /// What logs give in boards of one section, m by m.
    pub fn sawn(self, logs: &[Log], section: [f64; 2]) -> Sawn {
        let each = |log: &Log| f64::from(log.count) * self.board_feet(log.diameter, log.length);
        let board_feet: f64 = logs.iter().map(each).sum();
        let volume = board_feet * BOARD_FOOT;
        Sawn {
            board_feet,
            volume,
            boards: volume / (section[0] * section[1]),
        }
    }
}

/// Feet of a stretch over which the rule takes the log as a cylinder, and how much thicker the next one is, inches.
const STRETCH: f64 = 4.0;
const TAPER: f64 = 0.5;

fn international(mut d: f64, length: f64) -> f64 {
    let mut feet = 0.0;
    let mut left = length;
    while left > 0.0 {
        let share = if left < STRETCH { left / STRETCH } else { 1.0 };
        feet += share * 0.904_762 * (0.22 * d * d - 0.71 * d);
        d += TAPER;
        left -= STRETCH;
    }
    feet
}
