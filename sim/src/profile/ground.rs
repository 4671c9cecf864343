//! The yard before anything is dug.

use super::under::Under;
use crate::num;
use crate::plan::{Lie, Yard};
use glam::DVec2;

/// Halvings of the search for the chord under a feature: from any yard's length to the last bit.
const HALVINGS: usize = 64;

/// The ground as it lies.
pub(crate) enum Ground {
    /// One slope through the origin.
    Even {
        /// Heading, rad.
        heading: f64,
        /// Rise for each metre along.
        grade: f64,
    },
    /// Straight between points; the first and last stretch go on beyond the ends.
    Surveyed(Vec<DVec2>),
}

impl Ground {
    pub fn new(lie: &Lie) -> Self {
        match lie {
            Lie::Grade(grade) => Ground::Even {
                heading: num::atan2(*grade, 1.0),
                grade: *grade,
            },
            Lie::Surveyed(points) => Ground::Surveyed(
                points
                    .iter()
                    .map(|p| DVec2::new(p.station, p.elevation))
                    .collect(),
            ),
        }
    }

    /// The yard's outline, for the picture.
    pub fn outline(&self, yard: &Yard) -> Vec<DVec2> {
        match self {
            Ground::Even { .. } => vec![self.point(0.0), self.point(yard.length)],
            Ground::Surveyed(points) => points.clone(),
        }
    }

    /// Elevation at a station, m.
    pub fn height(&self, x: f64) -> f64 {
        match self {
            Ground::Even { grade, .. } => grade * x,
            Ground::Surveyed(points) => Under(points).height(x),
        }
    }

    /// The ground's own point at a station.
    pub fn point(&self, x: f64) -> DVec2 {
        DVec2::new(x, self.height(x))
    }

    /// Heading of the straight line from `from` to the ground, raised by `bed`, under the far end
    /// of a feature; `reach` gives the feature's level length when laid along a heading.
    ///
    /// The end depends on the heading and the heading on the end. A level length too short for the
    /// feature is found at the start and one too long by doubling; halving finds where it fits,
    /// however the ground bends. On an even slope the heading is the slope itself.
    pub fn chord(&self, from: DVec2, bed: f64, reach: impl Fn(f64) -> f64) -> f64 {
        let here = self.heading(from.x);
        let mut long = reach(here);
        let at_once = matches!(self, Ground::Even { .. }) || long <= 0.0;
        if at_once {
            return here;
        }
        let toward = |level: f64| {
            let to = self.height(from.x + level) + bed;
            num::atan2(to - from.y, level)
        };
        let mut short = 0.0;
        while reach(toward(long)) > long {
            short = long;
            long *= 2.0;
        }
        for _ in 0..HALVINGS {
            let middle = (short + long) / 2.0;
            if reach(toward(middle)) > middle {
                short = middle;
            } else {
                long = middle;
            }
        }
        toward(long)
    }

    /// Heading of the ground at a station, rad; at a bend, of the stretch beyond it.
    pub fn heading(&self, x: f64) -> f64 {
        match self {
            Ground::Even { heading, .. } => *heading,
            Ground::Surveyed(points) => {
                let [a, b] = Under(points).stretch(x);
                num::atan2(b.y - a.y, b.x - a.x)
            }
        }
    }

    /// The bends of the ground strictly between two stations, in order.
    pub fn bends(&self, from: f64, to: f64) -> Vec<DVec2> {
        match self {
            Ground::Even { .. } => Vec::new(),
            Ground::Surveyed(points) => points
                .iter()
                .copied()
                .filter(|p| p.x > from && p.x < to)
                .collect(),
        }
    }

    /// The station reached after a length along the ground.
    pub fn walk(&self, from: f64, length: f64) -> f64 {
        let mut at = self.point(from);
        let mut left = length;
        for bend in self.bends(from, f64::INFINITY) {
            let stretch = num::length(at - bend);
            if stretch >= left {
                break;
            }
            left -= stretch;
            at = bend;
        }
        at.x + left * num::cos(self.heading(at.x))
    }
}
