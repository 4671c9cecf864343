//! The bike and what its tyres roll on.

use serde::{Deserialize, Serialize};

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
