//! What a box is built from.

use serde::{Deserialize, Serialize};

/// Sizes of timber and iron, and what is asked of the box. Sizes are common practice, no source.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct WallStock {
    /// Sheeting board, m: thickness and width.
    pub board: [f64; 2],
    /// Post, m.
    pub post: [f64; 2],
    /// Timber that is buried as an anchor, m: thickness along the pull, and height.
    pub deadman: [f64; 2],
    /// Timber across a corner, m.
    pub corner_tie: [f64; 2],
    /// Diameter of the rods, m.
    pub rod: f64,
    /// Side of the square washer under a rod's nut, m.
    pub washer: f64,
    /// Longest board that is sold, m.
    pub longest: f64,
    /// Posts stand no farther apart, m.
    pub farthest: f64,
    /// Deepest hole that is dug by hand, m.
    pub deepest: f64,
    /// Load on the fill, Pa: riders, and who helps them.
    pub surcharge: f64,
    /// How many times the pull an anchor has to hold.
    ///
    /// # References
    /// 2, NAVFAC DM 7.02, chapter 3, anchored bulkheads (from memory).
    pub safety: f64,
}

impl Default for WallStock {
    fn default() -> Self {
        Self {
            board: [0.05, 0.2],
            post: [0.1, 0.1],
            deadman: [0.1, 0.2],
            corner_tie: [0.05, 0.1],
            rod: 0.012,
            washer: 0.075,
            longest: 4.8,
            farthest: 1.22,
            deepest: 0.9,
            // 50 lb/ft²; the International Residential Code asks 40 of decks and floors, table R301.5.
            surcharge: 2400.0,
            safety: 2.0,
        }
    }
}
