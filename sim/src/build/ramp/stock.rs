//! What a start ramp is built from.

use serde::{Deserialize, Serialize};

/// Sizes of timber and what they are loaded with. Sizes are common practice, no source.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct RampStock {
    /// Board of the deck and of treads, m: thickness and width.
    pub deck: [f64; 2],
    /// Joist, m: thickness and depth.
    pub joist: [f64; 2],
    /// Beam across, m, of which each row of posts has two.
    pub bearer: [f64; 2],
    /// Post, m.
    pub post: [f64; 2],
    /// Brace, rail, and side of a baluster, m.
    pub brace: [f64; 2],
    /// Gap between deck boards, m.
    pub gap: f64,
    /// Longest piece that is sold, m.
    pub longest: f64,
    /// Load of people and bikes, Pa.
    pub live: f64,
    /// Load of the deck itself, Pa.
    pub dead: f64,
    /// Load in one place, N: a heel, or a wheel that comes down.
    pub point: f64,
}

impl Default for RampStock {
    fn default() -> Self {
        Self {
            deck: [0.038, 0.14],
            joist: [0.045, 0.195],
            bearer: [0.045, 0.195],
            post: [0.1, 0.1],
            brace: [0.045, 0.095],
            gap: 0.005,
            longest: 4.8,
            // 50 lb/ft²; the International Residential Code asks 40 of decks, table R301.5.
            live: 2400.0,
            // 10 lb/ft², with which DCA 6 reckons.
            dead: 480.0,
            // 300 lb on a tread, International Residential Code, table R301.5.
            point: 1334.0,
        }
    }
}
