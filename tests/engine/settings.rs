//! How the engine is set: as it comes, and tuned.
//!
//! What the tuning found, in shares of the head:
//!
//! - A polyline is two-sided unless it is told otherwise. Its corners then catch the wheels from
//!   below, and most of the head goes on the first rollers; with short steps and nothing else amiss
//!   still up to 9 %. With one side, and nothing else set, hollows, rollers and lips gain 1 %.
//! - Facets make a kink at every joint, and a wheel loses its speed into the kink: 1.3 % on four
//!   rollers with facets of 20 mm, 0.2 % with 5 mm. Smooth ground loses nothing to it.
//! - The velocity is turned along the ground once in a step: 0.1 % on rollers at 1 ms a step, 0.01 %
//!   at 0.2 ms. Substeps see the ground as it was at the step's beginning, and are no help.
//! - Contacts are springs of 60 Hz, and wheels sink in by 0.7 mm: 0.1 % on rollers. At 300 Hz they
//!   stay on top; harder ones are no better.
//! - A landing is a blow through wheel, hinge and frame at once, which the solver comes near to by
//!   sweeps: with one sweep it is up to 3 % off, with 50 no more than 0.02 %.
//! - Contacts are recycled while a body has moved less than 50 mm, but the ground under a wheel
//!   should not be that old: 0.1 % in a hollow.
//! - Friction while contacts are pushed apart, other masses of the wheels and joints that are
//!   warm-started change nothing that shows.

use rapier2d_f64::prelude::{IntegrationParameters, SpringCoefficients};

/// A kind of ground, or of what happens on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    Flat,
    Grade,
    Hollow,
    Ramp,
    Rollers,
    Lip,
    Flight,
    Landing,
}

/// What the wheels roll on.
#[derive(Clone, Copy)]
pub enum Shape {
    /// The engine's own polyline: the longest facet on a bend, m, and whether it has one side only.
    Facets { length: f64, one_sided: bool },
    /// The path of a wheel's centre, exact.
    Smooth,
}

/// One way to set the engine.
pub struct Settings {
    pub name: &'static str,
    pub shape: Shape,
    pub parameters: IntegrationParameters,
    /// Where it is a reference, as stated; measured in the first table.
    pub reference_for: &'static [Kind],
}

impl Settings {
    pub fn is_reference(&self, kinds: &[Kind]) -> bool {
        kinds.iter().all(|kind| self.reference_for.contains(kind))
    }
}

/// Every kind.
pub const ALL: &[Kind] = &[
    Kind::Flat,
    Kind::Grade,
    Kind::Hollow,
    Kind::Ramp,
    Kind::Rollers,
    Kind::Lip,
    Kind::Flight,
    Kind::Landing,
];

/// Nothing set: 60 steps a second, and a polyline as it is made.
pub fn as_it_comes() -> Settings {
    Settings {
        name: "as it comes, facets of 10 mm",
        shape: Shape::Facets {
            length: 0.01,
            one_sided: false,
        },
        parameters: IntegrationParameters::default(),
        reference_for: &[Kind::Flat, Kind::Grade],
    }
}

/// Tuned, on the engine's own shapes.
pub fn on_facets() -> Settings {
    Settings {
        name: "tuned, facets of 5 mm with one side",
        shape: Shape::Facets {
            length: 5e-3,
            one_sided: true,
        },
        parameters: tuned(),
        reference_for: ALL,
    }
}

/// Tuned, on smooth ground.
pub fn smooth() -> Settings {
    Settings {
        name: "tuned, smooth ground",
        shape: Shape::Smooth,
        parameters: tuned(),
        reference_for: ALL,
    }
}

fn tuned() -> IntegrationParameters {
    IntegrationParameters {
        dt: 2e-4,
        num_solver_iterations: 1,
        num_internal_pgs_iterations: 50,
        static_contact_softness: SpringCoefficients::new(300.0, 10.0),
        contact_recycling: false,
        // Nothing moves a wheel's radius in a step.
        max_ccd_substeps: 0,
        ..IntegrationParameters::default()
    }
}
