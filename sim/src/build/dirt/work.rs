//! The dirt of one feature, and how it is added up.

use super::open::{End, Filled};
use super::section::Section;
use super::sum::{Beneath, Sum};
use crate::build::width;
use crate::num;
use crate::plan::Plan;
use crate::profile::Under;
use glam::DVec2;
use serde::Serialize;

/// Less dirt than this is none, m³: rounding of lengths that were added up.
const NOTHING: f64 = 1e-6;

/// The dirt of one feature.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Heap {
    /// Index of the feature in the plan's line; 0 on a surveyed line.
    pub feature: usize,
    /// Dirt that lies on the yard's own ground, m³ as it lies packed.
    pub fill: f64,
    /// Dirt dug out of the yard's own ground, m³ as it lay there.
    pub cut: f64,
    /// Station of the middle of the fill, m.
    pub fill_at: Option<f64>,
    /// Station of the middle of the cut, m.
    pub cut_at: Option<f64>,
    /// Width of the ridden surface, m; of a jump, the landing's.
    pub top: f64,
    /// Width on the ground where it is tallest, m.
    pub foot: f64,
    /// Most height over the yard, m.
    pub tallest: f64,
    /// Most depth under the yard, m.
    pub deepest: f64,
    /// Slopes at its ends in the side view, each its foot and its top, m.
    pub slopes: Vec<[DVec2; 2]>,
    /// Whether a slope at its end has no room to come down: walls are needed there, or a longer gap.
    pub crowded: bool,
}

/// A heap in the making.
pub(super) struct Work {
    pub heap: Heap,
    fill: Sum,
    cut: Sum,
}

impl Work {
    pub fn new(plan: &Plan, feature: usize) -> Self {
        let top = width::of(plan, feature).landing;
        Self {
            heap: Heap {
                feature,
                top,
                foot: top,
                ..Heap::default()
            },
            fill: Sum::default(),
            cut: Sum::default(),
        }
    }

    pub fn fill(&mut self, fill: &Sum) {
        self.fill.volume += fill.volume;
        self.fill.moment += fill.moment;
    }

    pub fn take(&mut self, beneath: &Beneath, section: &Section) {
        self.fill(&beneath.fill);
        self.cut.volume += beneath.cut.volume;
        self.cut.moment += beneath.cut.moment;
        self.reach(beneath.tallest, section);
        self.heap.deepest = num::max(self.heap.deepest, beneath.deepest);
        self.heap.foot = num::max(self.heap.foot, section.foot(beneath.deepest));
    }

    pub fn reach(&mut self, height: f64, section: &Section) {
        self.heap.tallest = num::max(self.heap.tallest, height);
        self.heap.foot = num::max(self.heap.foot, section.foot(height));
    }

    pub fn open(&mut self, filled: Filled, bed: &End, under: &Under) {
        self.fill(&filled.fill);
        self.reach(bed.height, &bed.section);
        self.heap.crowded |= filled.crowded;
        let lift = |p: DVec2| DVec2::new(p.x, p.y + under.height(p.x));
        let slopes = filled.slopes.into_iter().map(|slope| slope.map(lift));
        self.heap.slopes.extend(slopes);
    }

    pub fn done(self) -> Heap {
        let some = |sum: &Sum| {
            if sum.volume > NOTHING {
                sum.volume
            } else {
                0.0
            }
        };
        Heap {
            fill: some(&self.fill),
            cut: some(&self.cut),
            fill_at: self.fill.middle(),
            cut_at: self.cut.middle(),
            ..self.heap
        }
    }
}
