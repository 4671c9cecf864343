//! Where no dirt carries the ride: under lips, decks and ramps of wood, and in gaps.
//!
//! What dirt is there is the bed, and the ends of the heaps beside it, which slope into the room as their soil stands.

use super::section::Section;
use super::sum::{Sum, over};
use crate::num;
use glam::DVec2;

/// The end of a heap beside an open stretch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct End {
    /// Height over the yard, m.
    pub height: f64,
    /// The heap's own section.
    pub section: Section,
}

/// An open stretch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Open {
    /// Stations of its ends, m; infinite where nothing is built beyond.
    pub reach: [f64; 2],
    /// Height of the bed over the yard, m, and its section.
    pub bed: End,
    /// The heaps before and behind it, where they slope into it: none where wood stands or walls hold them.
    pub heaps: [Option<End>; 2],
}

/// The dirt of an open stretch.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Filled {
    pub fill: Sum,
    /// The slopes in the side view as station and height over the yard: foot and top.
    pub slopes: Vec<[DVec2; 2]>,
    /// Whether a slope has no room to come down to the bed.
    pub crowded: bool,
}

impl Open {
    /// Adds up bed and slopes. A slope falls straight, so that the area is a polynomial of the second degree between
    /// the places where one gives way to another.
    pub fn fill(&self, slope: f64) -> Filled {
        let mut filled = Filled::default();
        let [from, to] = self.reach;
        let run = |end: Option<End>| end.map_or(0.0, |e| slope * (e.height - self.bed.height));
        let (first, last) = (from + run(self.heaps[0]), to - run(self.heaps[1]));
        filled.crowded = first > to || last < from;
        // Two slopes that meet do so where they are as high as each other.
        let meet = match self.heaps {
            [Some(a), Some(b)] if first > last => (slope * (a.height - b.height) + from + to) / 2.0,
            _ => f64::NAN,
        };
        let first = num::clamp(if meet.is_nan() { first } else { meet }, from, to);
        let last = num::clamp(if meet.is_nan() { last } else { meet }, first, to);
        let mut add = |section: &Section, reach: [f64; 2], height: &dyn Fn(f64) -> f64| {
            if reach[1] > reach[0] {
                over(reach[0], reach[1], |x, length| {
                    filled.fill.add(section.fill(height(x)), x, length);
                });
            }
        };
        if let Some(end) = self.heaps[0] {
            add(&end.section, [from, first], &|x| {
                end.height - (x - from) / slope
            });
        }
        if self.bed.height > 0.0 {
            add(&self.bed.section, [first, last], &|_| self.bed.height);
        }
        if let Some(end) = self.heaps[1] {
            add(&end.section, [last, to], &|x| end.height - (to - x) / slope);
        }
        let slopes = [
            self.heaps[0].map(|end| (from, first, end.height)),
            self.heaps[1].map(|end| (to, last, end.height)),
        ];
        for (top, foot, height) in slopes.into_iter().flatten() {
            let down = height - (top - foot).abs() / slope;
            filled
                .slopes
                .push([DVec2::new(foot, down), DVec2::new(top, height)]);
        }
        filled
    }
}
