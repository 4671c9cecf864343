//! Where the parts of a lip are, along its ground line and square to it.

use crate::scene::view::Strip;
use glam::DVec2;
use sim::build::lip::{LipSheet, Place, Stock, Stretch, Template};
use sim::build::outline::Edge;

/// A lip as it is drawn.
pub(super) struct Drawing<'a> {
    pub lip: &'a LipSheet,
    pub stock: &'a Stock,
    pub strip: Strip,
}

impl Drawing<'_> {
    pub fn template(&self) -> &Template {
        &self.lip.template
    }

    pub fn px(&self, p: DVec2) -> DVec2 {
        self.strip.place(p)
    }
}

/// A place along the ground line and square to it, m.
pub(super) fn flat(place: &Place) -> DVec2 {
    DVec2::new(place.along, place.rise)
}

/// A stretch as an edge.
pub(super) fn edge(stretch: &Stretch) -> Edge {
    Edge {
        from: flat(&stretch.from),
        to: flat(&stretch.to),
        centre: stretch.string.as_ref().map(|s| flat(&s.centre)),
    }
}
