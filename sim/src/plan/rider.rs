//! Who rides.

use super::Bike;
use super::check::Checker;
use crate::error::{Quantity, Why};
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

impl Mount {
    pub(super) fn check(&self, c: &mut Checker) {
        c.text("label", &self.label);
        c.inside("rider", |c| self.rider.check(c));
        c.inside("bike", |c| self.bike.check(c));
    }
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
    pub(crate) fn usual_posture() -> f64 {
        0.5
    }

    /// Nobody has measured how well children ride such lines: the middle of the scale claims least.
    pub(crate) fn usual_skill() -> f64 {
        0.5
    }
}

impl Rider {
    fn check(&self, c: &mut Checker) {
        let why = Why::RiderMass;
        c.within("mass", Quantity::Mass, self.mass, 10.0..=150.0, why);
        let why = Why::RiderStature;
        c.within("stature", Quantity::Length, self.stature, 0.8..=2.2, why);
        let why = Why::Posture;
        c.within("posture", Quantity::Number, self.posture, 0.0..=1.0, why);
        let why = Why::DragArea;
        c.within("drag_area", Quantity::Area, self.drag_area, 0.0..=1.5, why);
        let why = Why::Skill;
        c.within("skill", Quantity::Number, self.skill, 0.0..=1.0, why);
    }
}

/// What the rider's legs do on rollers and transitions.
///
/// Where nothing is said the rider soaks up: it is what children on such a line do most, once they no
/// longer stand stiff and before they have learnt to pump (common practice, no source). Pumping has to be
/// said, so that no gap is built for a speed that its rider cannot make.
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
