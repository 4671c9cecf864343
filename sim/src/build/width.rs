//! How wide each feature is: its own width, or the line's.

use crate::plan::{Feature, Line, Plan};

/// The widths of one feature, m. They differ in a jump alone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Widths {
    /// Of the feature; of a jump, its lip.
    pub first: f64,
    /// Of a jump's landing; of any other feature, the same.
    pub landing: f64,
}

/// The widths of a feature; on a surveyed line, the line's.
pub(super) fn of(plan: &Plan, feature: usize) -> Widths {
    let own = |first: Option<f64>, landing: Option<f64>| Widths {
        first: first.unwrap_or(plan.width),
        landing: landing.unwrap_or(plan.width),
    };
    let Line::Features(features) = &plan.line else {
        return own(None, None);
    };
    match features.get(feature) {
        Some(Feature::StartRamp(ramp)) => own(ramp.width, ramp.width),
        Some(Feature::Roller(roller)) => own(roller.width, roller.width),
        Some(Feature::Turn(turn)) => own(turn.width, turn.width),
        Some(Feature::Jump(jump)) => own(jump.lip.width, jump.landing.width),
        Some(Feature::Flat(_) | Feature::RunOut(_)) | None => own(None, None),
    }
}
