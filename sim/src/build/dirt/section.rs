//! The section of a heap or a trench at one station.

use crate::num;

/// A cross-section that is as wide at the ridden surface everywhere and grows with its height.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Section {
    /// Width of the ridden surface, m.
    pub top: f64,
    /// Run of the sides for each metre of height.
    pub slope: f64,
    /// Height over the yard from which on walls stand in place of slopes, m.
    pub walled_from: f64,
    /// Height over the yard up to which there is dirt, m: what carries the ride above that is wood.
    pub most: f64,
}

impl Section {
    /// With slopes all the way down.
    pub fn sloped(top: f64, slope: f64) -> Self {
        Self {
            top,
            slope,
            walled_from: f64::INFINITY,
            most: f64::INFINITY,
        }
    }

    /// Area of the fill under a surface so high over the yard, m²; 0 in a cut.
    ///
    /// Both sides together are as wide as their slope for each metre, so that they hold s h²: a trapezoid.
    pub fn fill(&self, height: f64) -> f64 {
        let height = num::clamp(height, 0.0, self.most);
        let sloped = num::min(height, self.walled_from);
        self.top * height + self.slope * sloped * sloped
    }

    /// Area dug out for a surface so high over the yard, m²; 0 on a fill.
    pub fn cut(&self, height: f64) -> f64 {
        let depth = num::max(-height, 0.0);
        self.top * depth + self.slope * depth * depth
    }

    /// Width on the ground of a heap, or at the rim of a cut, m.
    pub fn foot(&self, height: f64) -> f64 {
        let sloped = num::min(height.abs(), self.walled_from);
        self.top + 2.0 * self.slope * sloped
    }
}
