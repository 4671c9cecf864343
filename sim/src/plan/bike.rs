//! The bike and what its tyres roll on.

use super::check::Checker;
use crate::error::{Quantity, Why};
use crate::num;
use serde::{Deserialize, Serialize};

/// Least inertia of a wheel, kg m².
const LEAST_INERTIA: f64 = 1e-3;

/// Least inertia of a wheel as a share of a hoop's of its mass and outer radius.
///
/// With a heavy hub a third of the mass may be left to rim and tyre, most of the way out: a quarter (common
/// practice, no source). Of a wheel with next to none the spin follows the ground faster than a ride is stepped.
const LEAST_HOOP: f64 = 0.25;

/// A rigid bike with two equal wheels.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bike {
    /// Mass with both wheels, kg.
    pub mass: f64,
    /// Distance between the axles, m.
    pub wheelbase: f64,
    /// Bead seat diameter of the rims, m (ISO 5775).
    pub bead_seat: f64,
    /// Width of the tyres, m; their height over the bead seat is taken as the same (ISO 5775).
    pub tyre_width: f64,
    /// Pressure in the tyres over the air's, Pa.
    pub tyre_pressure: f64,
    /// Stiffness of one tyre under a load of 400 N, N/m; left out, it follows from the pressure.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tyre_stiffness: Option<f64>,
    /// Mass of one wheel with its tyre, kg.
    pub wheel_mass: f64,
    /// Inertia of one wheel about its axle, kg m².
    pub wheel_inertia: f64,
    /// Rolling resistance coefficients by surface, on dry ground.
    #[serde(default)]
    pub rolling: Rolling,
}

impl Bike {
    /// Outer radius of a wheel with its tyre, unloaded, m (ISO 5775: bead seat and tyre height).
    pub fn wheel_radius(&self) -> f64 {
        self.bead_seat / 2.0 + self.tyre_width
    }

    pub(super) fn check(&self, c: &mut Checker) {
        let before = c.faults.len();
        self.check_sizes(c);
        self.check_masses(c);
        if c.faults.len() == before {
            self.check_together(c);
        }
        c.inside("rolling", |c| self.rolling.check(c));
    }

    fn check_sizes(&self, c: &mut Checker) {
        let why = Why::Wheelbase;
        c.within(
            "wheelbase",
            Quantity::Length,
            self.wheelbase,
            0.5..=1.5,
            why,
        );
        // From just under the smallest of ISO 5775, 137 mm, to its largest, 635 mm.
        let why = Why::BeadSeat;
        c.within(
            "bead_seat",
            Quantity::Length,
            self.bead_seat,
            0.13..=0.64,
            why,
        );
        let why = Why::TyreWidth;
        c.within(
            "tyre_width",
            Quantity::Length,
            self.tyre_width,
            0.015..=0.13,
            why,
        );
        let why = Why::TyrePressure;
        c.within(
            "tyre_pressure",
            Quantity::Pressure,
            self.tyre_pressure,
            5e4..=1e6,
            why,
        );
        if let Some(stiffness) = self.tyre_stiffness {
            let why = Why::TyreStiffness;
            c.within(
                "tyre_stiffness",
                Quantity::Stiffness,
                stiffness,
                1e4..=5e5,
                why,
            );
        }
    }

    fn check_masses(&self, c: &mut Checker) {
        let why = Why::BikeMass;
        c.within("mass", Quantity::Mass, self.mass, 3.0..=35.0, why);
        let why = Why::WheelMass;
        c.within(
            "wheel_mass",
            Quantity::Mass,
            self.wheel_mass,
            0.2..=6.0,
            why,
        );
        let why = Why::WheelInertia;
        c.within(
            "wheel_inertia",
            Quantity::Inertia,
            self.wheel_inertia,
            LEAST_INERTIA..=1.0,
            why,
        );
    }

    /// What each field allows by itself may still not go together.
    fn check_together(&self, c: &mut Checker) {
        let radius = self.wheel_radius();
        let why = Why::WheelsOverlap;
        c.within(
            "wheelbase",
            Quantity::Length,
            self.wheelbase,
            2.0 * radius..=1.5,
            why,
        );
        let why = Why::NoFrame;
        c.within(
            "wheel_mass",
            Quantity::Mass,
            self.wheel_mass,
            0.2..=0.45 * self.mass,
            why,
        );
        // All the mass at the outer edge: a wheel has less, whatever it is made of.
        let hoop = self.wheel_mass * radius * radius;
        let least = num::max(LEAST_INERTIA, LEAST_HOOP * hoop);
        let why = if self.wheel_inertia < least {
            Why::UnderHoop
        } else {
            Why::OverHoop
        };
        let (name, quantity) = ("wheel_inertia", Quantity::Inertia);
        c.within(name, quantity, self.wheel_inertia, least..=hoop, why);
    }
}

/// What a piece of the line is made of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Surface {
    /// Boards or plywood.
    Wood,
    /// Asphalt or concrete.
    Paved,
    /// Dirt packed hard.
    #[default]
    Packed,
    /// Gravel.
    Gravel,
    /// Short grass.
    Grass,
    /// Loose dirt.
    Soft,
}

impl Surface {
    /// Every surface, in the order of the plan's own numbering.
    pub const ALL: [Surface; 6] = [
        Surface::Wood,
        Surface::Paved,
        Surface::Packed,
        Surface::Gravel,
        Surface::Grass,
        Surface::Soft,
    ];

    /// Its place in [`Surface::ALL`].
    pub fn index(self) -> usize {
        self as usize
    }

    pub(crate) fn wood() -> Self {
        Surface::Wood
    }
}

/// Rolling resistance coefficients by surface.
///
/// # References
/// Wood 0.006, paved 0.005, gravel 0.02, grass 0.045, soft 0.07: middles of the ranges of Wilson,
/// *Bicycling Science*, as remembered (`from memory`). Packed dirt 0.016: between the 0.014 of
/// Gross, Kyle and Malewicki (1983, Sci. Am. 249(6)) for a 20-inch knobby tyre and the 0.0214 that
/// follows from Maier et al. (2018, J. Sports Sci. 36:156) for a cross-country course.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Rolling {
    /// On boards or plywood.
    pub wood: f64,
    /// On asphalt or concrete.
    pub paved: f64,
    /// On dirt packed hard.
    pub packed: f64,
    /// On gravel.
    pub gravel: f64,
    /// On short grass.
    pub grass: f64,
    /// On loose dirt.
    pub soft: f64,
}

impl Default for Rolling {
    fn default() -> Self {
        Self {
            wood: 0.006,
            paved: 0.005,
            packed: 0.016,
            gravel: 0.02,
            grass: 0.045,
            soft: 0.07,
        }
    }
}

impl Rolling {
    fn check(&self, c: &mut Checker) {
        let all = [
            ("wood", self.wood),
            ("paved", self.paved),
            ("packed", self.packed),
            ("gravel", self.gravel),
            ("grass", self.grass),
            ("soft", self.soft),
        ];
        for (name, value) in all {
            let why = Why::Rolling;
            c.within(name, Quantity::Number, value, 0.0..=0.3, why);
        }
    }

    /// All coefficients, each changed.
    pub fn map(&self, change: impl Fn(f64) -> f64) -> Self {
        Self {
            wood: change(self.wood),
            paved: change(self.paved),
            packed: change(self.packed),
            gravel: change(self.gravel),
            grass: change(self.grass),
            soft: change(self.soft),
        }
    }

    /// The coefficient on one surface.
    pub fn on(&self, surface: Surface) -> f64 {
        match surface {
            Surface::Wood => self.wood,
            Surface::Paved => self.paved,
            Surface::Packed => self.packed,
            Surface::Gravel => self.gravel,
            Surface::Grass => self.grass,
            Surface::Soft => self.soft,
        }
    }
}
