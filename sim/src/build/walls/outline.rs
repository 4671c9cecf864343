//! The fill of a boxed landing: from the front face under the knuckle down its slope.

use crate::plan::{Feature, Jump, Line, Plan};
use crate::profile::Under;
use crate::profile::{LipEdge, Profile};

/// Where a fill is as low as a sod is thick it needs no wall, m (common practice, no source).
pub(super) const LOWEST: f64 = 0.1;

/// Where a box stands and how high its fill is.
pub(super) struct Outline<'a> {
    profile: &'a Profile,
    /// Index of the feature in the plan's line.
    pub feature: usize,
    /// Station of the front face, m.
    pub from: f64,
    /// Level length of the fill, m.
    pub length: f64,
    /// Width between the walls, m.
    pub width: f64,
    /// Height of the knuckle in the profile, m.
    knuckle: f64,
    /// Height of the raised bed it stands on, m.
    bed: f64,
}

/// Boxes of a plan, in riding order; none on a surveyed line.
pub(super) fn outlines<'a>(plan: &'a Plan, profile: &'a Profile) -> Vec<Outline<'a>> {
    let Line::Features(features) = &plan.line else {
        return Vec::new();
    };
    let boxed = |lip: &'a LipEdge| match features.get(lip.feature) {
        Some(Feature::Jump(jump)) if jump.landing.boxed => Some((lip, jump)),
        _ => None,
    };
    let boxes = profile.lips.iter().filter_map(boxed);
    let outline = |(lip, jump): (&LipEdge, &Jump)| Outline {
        profile,
        feature: lip.feature,
        from: lip.knuckle.x,
        length: lip.landing_end.x - lip.knuckle.x,
        knuckle: lip.knuckle.y,
        width: jump.landing.width.unwrap_or(plan.width),
        bed: lip.knuckle.y - Under(&profile.yard).height(lip.knuckle.x) - jump.landing.height,
    };
    boxes.map(outline).collect()
}

impl Outline<'_> {
    /// Height of the fill over the ground beside it, m, so far behind the front face.
    pub fn height(&self, behind: f64) -> f64 {
        let x = self.from + behind;
        let ground = Under(&self.profile.yard).height(x) + self.bed;
        // A lip that ends at the knuckle itself may be higher than the fill.
        if behind <= 0.0 {
            return self.knuckle - ground;
        }
        self.profile.height_at(x).map_or(0.0, |top| top - ground)
    }

    /// Height of the fill over the foot of the front wall, m.
    pub fn over_foot(&self, behind: f64) -> f64 {
        let ground = |x| Under(&self.profile.yard).height(x);
        let rise = ground(self.from + behind) - ground(self.from);
        self.height(behind) + rise
    }

    /// How far behind the front face the fill is still so high, m, to a centimetre.
    pub fn reach(&self, height: f64) -> f64 {
        const STEP: f64 = 0.01;
        let steps = (self.length / STEP) as u32;
        let all =
            core::iter::once(self.length).chain((0..=steps).rev().map(|i| STEP * f64::from(i)));
        let mut high = all.filter(|&behind| self.height(behind) >= height);
        high.next().unwrap_or(0.0)
    }
}
