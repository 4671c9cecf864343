//! Dirt: how much each feature takes and gives, from the exact profile, its width and how its soil stands.
//!
//! At each station the heap is a trapezoid, as wide as the feature at the ride and wider below by its slopes; a trench
//! is the same turned over. The yard is taken as level across the line. Lips, decks and start ramps of wood have no
//! dirt but the bed that they stand on. The end of a heap beside a gap slopes into the gap, unless walls hold it.

mod bed;
mod berm;
mod columns;
mod ends;
mod open;
mod section;
mod sum;
#[cfg(test)]
mod tests;
mod work;

pub(super) use columns::within;
pub use work::Heap;

use super::heap::Earth;
use super::width;
use crate::num;
use crate::plan::{Feature, Line, Plan, Surface};
use crate::profile::Profile;
use crate::profile::Under;
use columns::Column;
use serde::Serialize;
use work::Work;

/// The dirt of every feature of a line, in riding order; those without dirt too.
///
/// # Units and errors
/// SI. Between two places where the section changes its law, volumes of straight pieces are exact and those of arcs
/// within 3 parts in 10¹³.
pub fn heaps(plan: &Plan, profile: &Profile, earth: &Earth) -> Vec<Heap> {
    let count = profile.spans.len();
    let mut work: Vec<Work> = (0..if count > 0 { count } else { 1 })
        .map(|feature| Work::new(plan, feature))
        .collect();
    let under = Under(&profile.yard);
    let parts = columns::parts(plan, profile, earth.slope);
    for part in &parts {
        if let Column::Solid(piece, section) = &part.column {
            work[part.feature].take(&sum::under_piece(piece, &under, section), section);
        }
    }
    if count > 0 {
        ends::slopes(plan, profile, earth.slope, &parts, &mut work);
        berms(plan, profile, earth.slope, &mut work);
    }
    work.into_iter().map(Work::done).collect()
}

/// One landing with walls of timber and without, of the same ride line.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Boxed {
    /// Index of the jump in the plan's line.
    pub feature: usize,
    /// With walls.
    pub walls: Heap,
    /// As a plain mound.
    pub mound: Heap,
    /// How much less fill the walls need, m³ packed.
    pub saved: f64,
}

/// What walls of timber save at each landing of dirt, whether it is planned with them or not.
pub fn boxed(plan: &Plan, profile: &Profile, earth: &Earth) -> Vec<Boxed> {
    let Line::Features(features) = &plan.line else {
        return Vec::new();
    };
    let mut all = Vec::new();
    for (feature, what) in features.iter().enumerate() {
        if !matches!(what, Feature::Jump(jump) if jump.landing.surface != Surface::Wood) {
            continue;
        }
        let [walls, mound] = [true, false].map(|walled| {
            let mut plan = plan.clone();
            if let Line::Features(features) = &mut plan.line
                && let Feature::Jump(jump) = &mut features[feature]
            {
                jump.landing.boxed = walled;
            }
            heaps(&plan, profile, earth).swap_remove(feature)
        });
        let saved = mound.fill - walls.fill;
        all.push(Boxed {
            feature,
            walls,
            mound,
            saved,
        });
    }
    all
}

fn berms(plan: &Plan, profile: &Profile, slope: f64, work: &mut [Work]) {
    let Line::Features(features) = &plan.line else {
        return;
    };
    for span in &profile.spans {
        if let Some(Feature::Turn(turn)) = features.get(span.feature)
            && turn.surface != Surface::Wood
        {
            let width = width::of(plan, span.feature).first;
            let (volume, height) = berm::bank(turn, width, slope);
            let work = &mut work[span.feature];
            work.fill(&berm::lying(volume, span.from.x, span.to.x));
            let bed = bed::under(profile, span);
            work.heap.tallest = num::max(work.heap.tallest, bed + height);
            let foot = width * num::cos(num::radians(turn.bank_deg)) + slope * height;
            work.heap.foot = num::max(work.heap.foot, foot);
        }
    }
}
