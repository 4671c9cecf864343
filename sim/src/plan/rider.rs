//! Who rides.

use super::Bike;
use serde::{Deserialize, Serialize};

/// A rider on a bike.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Mount {
    /// Who it is, as the builder says it.
    pub label: String,
    /// The rider.
    pub rider: Rider,
    /// The bike.
    pub bike: Bike,
}

/// The rider: size, place over the bike, and what the legs do.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rider {
    /// Mass with clothes and pads, kg.
    pub mass: f64,
    /// Standing height, m.
    pub stature: f64,
    /// How upright the rider stands over the bike: 0 crouched low, 1 tall.
    #[serde(default = "Rider::usual_posture")]
    pub posture: f64,
    /// Drag area of rider and bike together, m².
    pub drag_area: f64,
    /// What the legs do.
    #[serde(default)]
    pub style: Style,
    /// How well it is done, 0 to 1.
    #[serde(default = "Rider::usual_skill")]
    pub skill: f64,
}

impl Rider {
    fn usual_posture() -> f64 {
        0.5
    }

    fn usual_skill() -> f64 {
        0.8
    }
}

/// What the rider's legs do on rollers and transitions.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Style {
    /// Hold one height over the bike, like a spring.
    Passive,
    /// Let the bike rise and fall under a body that travels a smoother path.
    #[default]
    Absorbing,
    /// Push in the hollows and fold over the crests, to gain speed.
    Pumping,
}
