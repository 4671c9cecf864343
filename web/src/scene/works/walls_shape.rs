//! Where the parts of a boxed landing are.

use crate::scene::land;
use crate::scene::view::Strip;
use glam::DVec2;
use sim::build::walls::{BoxSheet, Post, WallStock};
use sim::profile::{LipEdge, Profile};

/// A box as it is drawn.
pub(super) struct Drawing<'a> {
    pub sheet: &'a BoxSheet,
    pub stock: &'a WallStock,
    pub profile: &'a Profile,
    pub ends: &'a LipEdge,
    pub strip: Strip,
}

impl Drawing<'_> {
    /// Height of the bed over the yard, m.
    fn bed(&self) -> f64 {
        let knuckle = self.ends.knuckle;
        knuckle.y - land::yard(self.profile, knuckle.x) - self.sheet.height
    }

    /// The ground so far behind the front, from the front's foot, m.
    pub fn ground(&self, behind: f64) -> f64 {
        let x = self.ends.knuckle.x;
        land::yard(self.profile, x + behind) - land::yard(self.profile, x)
    }

    /// The ride so far behind the front, from the front's foot, m.
    pub fn ride(&self, behind: f64) -> f64 {
        let knuckle = self.ends.knuckle;
        let foot = land::yard(self.profile, knuckle.x) + self.bed();
        let over = self.profile.height_at(knuckle.x + behind.max(1e-6));
        // A lip that ends at the knuckle may stand higher.
        over.map_or(0.0, |z| z.min(knuckle.y) - foot)
    }

    pub fn px(&self, x: f64, z: f64) -> DVec2 {
        self.strip.place(DVec2::new(x, z))
    }

    /// How deep a post goes, m: one at a corner belongs to two walls.
    pub fn depth(&self, post: &Post, corner: bool) -> f64 {
        let walls = [&self.sheet.front, &self.sheet.side];
        let first = walls.iter().filter_map(|w| w.posts.first());
        let both = first.map(|p| p.depth).fold(0.0, f64::max);
        if corner { both } else { post.depth }
    }
}
