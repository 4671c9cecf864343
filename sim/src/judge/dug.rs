//! The line as it may be dug: its dimensions a little off from what is planned.

use super::change::with;
use crate::num;
use crate::plan::{Feature, GroundPoint, LONGEST_YARD, Lie, Plan};
use crate::profile::Profile;
use serde::Serialize;

/// A kind of dimension that a builder measures while digging.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Dimension {
    /// Height of the start platform.
    Start,
    /// Length of each flat.
    Flat,
    /// Height of each roller.
    Roller,
    /// Height of the lip.
    LipHeight,
    /// Radius of the lip: with its height it makes the angle at the edge.
    LipRadius,
    /// The gap.
    Gap,
}

/// How far a height is off as dug by hand with tape and level, m (common practice, no source).
const HEIGHT: f64 = 0.03;

/// How far a length on the ground is off, m (common practice, no source).
const LENGTH: f64 = 0.05;

/// How far the radius of a lip is off, m: an arc is scratched with a string and shaped by eye
/// (common practice, no source).
const RADIUS: f64 = 0.1;

/// By how much a yard is taken for longer, m: a line that fits it to the centimetre is dug longer all
/// the same, and then ends a little behind it.
const BEYOND: f64 = 20.0;

impl Dimension {
    pub(super) const ALL: [Self; 6] = [
        Self::Start,
        Self::Flat,
        Self::Roller,
        Self::LipHeight,
        Self::LipRadius,
        Self::Gap,
    ];

    /// Whether it is one of the jump itself, and not of what lies before.
    pub(super) fn of_jump(self) -> bool {
        matches!(self, Self::LipHeight | Self::LipRadius | Self::Gap)
    }

    /// The number of a feature, m; `None` where it has none of the kind.
    pub(super) fn of(self, feature: &mut Feature) -> Option<&mut f64> {
        match (self, feature) {
            (Self::Start, Feature::StartRamp(ramp)) => Some(&mut ramp.platform_height),
            (Self::Flat, Feature::Flat(flat)) => Some(&mut flat.length),
            (Self::Roller, Feature::Roller(roller)) => Some(&mut roller.height),
            (Self::LipHeight, Feature::Jump(jump)) => Some(&mut jump.lip.height),
            (Self::LipRadius, Feature::Jump(jump)) => Some(&mut jump.lip.radius),
            (Self::Gap, Feature::Jump(jump)) => Some(&mut jump.gap),
            _ => None,
        }
    }

    /// Whether it bears on the speed at the lip, and not on what comes of that speed.
    fn of_speed(self) -> bool {
        !matches!(self, Self::LipRadius | Self::Gap)
    }

    /// How far it is off as dug, m: the way that slows a rider who soaks up, or lets a jump come up
    /// short.
    fn usual(self) -> f64 {
        match self {
            Self::Start => -HEIGHT,
            Self::Roller | Self::LipHeight => HEIGHT,
            Self::Flat | Self::Gap => LENGTH,
            Self::LipRadius => RADIUS,
        }
    }
}

/// The plan with a dimension off by so much, m: at one feature, or wherever the line has it. `None`
/// on a surveyed line, or where that cannot be built.
pub(super) fn off(
    plan: &Plan,
    dimension: Dimension,
    only: Option<usize>,
    by: f64,
) -> Option<(Plan, Profile)> {
    let plan = with(plan, |features| {
        for (i, feature) in features.iter_mut().enumerate() {
            if only.is_none_or(|only| only == i)
                && let Some(number) = dimension.of(feature)
            {
                *number += by;
            }
        }
    })?;
    let profile = Profile::build(&plan).ok()?;
    Some((plan, profile))
}

/// The plan in a yard that has room for it however it is dug.
pub(super) fn with_room(plan: &Plan) -> Plan {
    let mut plan = plan.clone();
    let yard = &mut plan.yard;
    let length = num::min(yard.length + BEYOND, LONGEST_YARD);
    if let Lie::Surveyed(points) = &mut yard.lie
        && let Some(&last) = points.last()
        && last.station < length
    {
        points.push(GroundPoint {
            station: length + 1.0,
            ..last
        });
    }
    yard.length = length;
    plan
}

/// The ground as dug: what bears on the speeds at one end of what is usual, what comes of them at another;
/// 0 slows or lets a jump come up short. What cannot be built so stays as it is planned.
pub(super) fn as_dug(plan: &Plan, planned: &Profile, [speed, flight]: [usize; 2]) -> Profile {
    let (mut dug, mut profile) = (with_room(plan), planned.clone());
    for dimension in Dimension::ALL {
        let end = if dimension.of_speed() { speed } else { flight };
        let by = dimension.usual() * [1.0, -1.0][end];
        if let Some(next) = off(&dug, dimension, None, by) {
            (dug, profile) = next;
        }
    }
    profile
}
