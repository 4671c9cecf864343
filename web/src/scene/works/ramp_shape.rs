//! Where the parts of a start ramp are.

use crate::scene::land;
use crate::scene::view::Strip;
use glam::DVec2;
use sim::build::ramp::{RampSheet, RampStock};
use sim::profile::Profile;

/// Depth to which a footing is shown, m; how deep it goes is for the ground to say.
pub(super) const FOOTING: f64 = 0.25;

/// A ramp as it is drawn.
pub(super) struct Drawing<'a> {
    pub sheet: &'a RampSheet,
    pub stock: &'a RampStock,
    pub profile: &'a Profile,
    pub strip: Strip,
}

impl Drawing<'_> {
    pub fn px(&self, x: f64, z: f64) -> DVec2 {
        self.strip.place(DVec2::new(x, z))
    }

    fn back(&self) -> DVec2 {
        self.profile.pieces.first().map_or(DVec2::ZERO, |p| p.start)
    }

    /// The ground so far from the platform's back, seen from the platform, m.
    pub fn ground(&self, x: f64) -> f64 {
        land::yard(self.profile, self.back().x + x) - self.back().y
    }

    /// The surface, seen from there.
    pub fn surface(&self, x: f64) -> f64 {
        let z = self.profile.height_at(self.back().x + x);
        z.map_or(0.0, |z| z - self.back().y)
    }

    /// The surface lowered, but not into the ground, between two places.
    pub fn under(&self, [from, to]: [f64; 2], by: f64) -> Vec<DVec2> {
        let at = |i: u32| {
            let x = from + (to - from) * f64::from(i) / 100.0;
            self.px(x, (self.surface(x) - by).max(self.ground(x)))
        };
        (0..=100).map(at).collect()
    }
}
