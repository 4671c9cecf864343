//! What a yard is made of, below the turf.

use serde::{Deserialize, Serialize};

/// The soil that is dug and heaped: how steep it stands, how heavy it is and how it swells follow from it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Soil {
    /// Sand: runs through the fingers.
    Sand,
    /// Sand and pebbles.
    Gravel,
    /// Ordinary garden earth: crumbles in the hand.
    #[default]
    Loam,
    /// Clay: can be kneaded.
    Clay,
}

impl Soil {
    /// Every soil.
    pub const ALL: [Soil; 4] = [Soil::Sand, Soil::Gravel, Soil::Loam, Soil::Clay];
}
