//! How far each figure may be off: what the what-ifs make of every jump.
//!
//! The speeds at a lip span a range. Everything being off the same way at once is unlikely, so the
//! range is wide on purpose; but nobody has measured how riders ride such lines, so it is no guarantee
//! either.

use super::jump::How;
use super::what_ifs::{CORNERS, Unknown, WhatIfs};
use crate::error::Fault;
use crate::num;
use crate::plan::Plan;
use serde::Serialize;

/// What may become of one jump. Speeds in m/s.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Spread {
    /// Index of the lip in the profile.
    pub lip: usize,
    /// Lowest speed at the lip among all rides that leave it and were neither short nor crashed before.
    pub slowest: Option<f64>,
    /// Highest speed at the lip among the same.
    pub fastest: Option<f64>,
    /// How many rides were tried beside the one planned.
    pub tried: usize,
    /// How many of them leave the lip.
    pub left: usize,
    /// How many of them land clean.
    pub clean: usize,
    /// How many come up short of the landing or on its knuckle.
    pub short: usize,
    /// How many land deep or past the slope.
    pub far: usize,
    /// How many crash at this jump.
    pub crashed: usize,
}

/// What may become of every jump of a plan with one of its riders; `unknown` is how far the inputs that a
/// test ride tells of may be off.
///
/// # Errors
/// Every fault of the plan, or that it has no such rider.
pub fn spreads(plan: &Plan, rider: usize, unknown: &Unknown) -> Result<Vec<Spread>, Vec<Fault>> {
    let what_ifs = WhatIfs::of(plan, rider, unknown)?;
    let mut spreads: Vec<_> = (0..what_ifs.lips()).map(Spread::untried).collect();
    // The ride as planned: its speed belongs to the range, its outcome is no trial.
    for (spread, row) in spreads.iter_mut().zip(what_ifs.planned()) {
        spread.take_speed(row.speed);
    }
    for i in 0..CORNERS {
        // Who comes up short of a landing, or crashes, does not come to the next lip as anybody means to.
        let mut fine = true;
        for (spread, row) in spreads.iter_mut().zip(what_ifs.corner(i)) {
            spread.take_speed(row.speed.filter(|_| fine));
            fine &= !matches!(row.how, How::Short | How::Crashed);
            spread.take_outcome(row.speed.is_some(), row.how);
        }
    }
    Ok(spreads)
}

impl Spread {
    fn untried(lip: usize) -> Self {
        Self {
            lip,
            slowest: None,
            fastest: None,
            tried: 0,
            left: 0,
            clean: 0,
            short: 0,
            far: 0,
            crashed: 0,
        }
    }

    fn take_speed(&mut self, speed: Option<f64>) {
        let Some(v) = speed else { return };
        self.slowest = Some(self.slowest.map_or(v, |s| num::min(s, v)));
        self.fastest = Some(self.fastest.map_or(v, |s| num::max(s, v)));
    }

    fn take_outcome(&mut self, left: bool, how: How) {
        self.tried += 1;
        self.left += usize::from(left);
        self.clean += usize::from(how == How::Clean);
        self.short += usize::from(matches!(how, How::Short | How::Knuckle));
        self.far += usize::from(matches!(how, How::Deep | How::Past));
        self.crashed += usize::from(how == How::Crashed);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::judge::jumps;
    use crate::plan::{self, Feature, Line};
    use crate::setup::ride_plan;

    fn usual(plan: &Plan, rider: usize) -> Result<Vec<Spread>, Vec<Fault>> {
        spreads(plan, rider, &Unknown::usual())
    }

    #[test]
    fn the_planned_speed_lies_within_and_the_range_is_not_nothing() {
        let plan = plan::demo();
        for rider in 0..plan.riders.len() {
            let ridden = ride_plan(&plan, rider).expect("the demonstration is sound");
            let rows = jumps(&ridden.profile, &ridden.run);
            let spreads = usual(&plan, rider).expect("the demonstration is sound");
            assert_eq!(spreads.len(), rows.len());
            for (s, row) in spreads.iter().zip(&rows) {
                let v = row.speed.expect("every lip is left");
                let (low, high) = (s.slowest.unwrap_or(v), s.fastest.unwrap_or(v));
                println!("rider {rider}: {low:.2} {v:.2} {high:.2}, {s:?}");
                assert!(low < v && v < high, "{low} {v} {high}");
                assert!(high - low > 0.02 * v && high - low < 0.5 * v);
                assert_eq!(s.tried, 16);
                assert_eq!(s.left, s.clean + s.short + s.far + s.crashed);
            }
        }
    }

    #[test]
    fn the_same_plan_has_the_same_range() {
        let plan = plan::demo();
        assert_eq!(usual(&plan, 1), usual(&plan, 1));
    }

    #[test]
    fn a_lip_that_nobody_reaches_has_no_range() {
        let mut plan = plan::demo();
        if let Line::Features(features) = &mut plan.line
            && let Feature::StartRamp(ramp) = &mut features[0]
        {
            ramp.platform_height = 0.5;
            ramp.bottom_radius = 1.0;
            ramp.push_off = 0.5;
        }
        let last = usual(&plan, 0)
            .expect("still sound")
            .pop()
            .expect("it has lips");
        assert_eq!((last.slowest, last.left, last.clean), (None, 0, 0));
    }
}
