//! How far each figure may be off: the inputs that nobody knows well, each at either end.
//!
//! Rolling resistance, drag area, wind and the push-off are never known well in a yard. Each is taken
//! at the lower and the upper end of its range, in every combination: sixteen rides beside the one
//! planned. The speeds at a lip then span a range. Everything being off the same way at once is
//! unlikely, so the range is wide on purpose; that the rider does the planned thing is taken for
//! granted, so it is no guarantee either.

use super::jump::{How, jumps};
use crate::error::Fault;
use crate::num;
use crate::plan::Plan;
use crate::profile::Profile;
use crate::ride::{Accuracy, Mount, ride};
use crate::setup;
use serde::Serialize;

/// Rolling resistance, as shares of what the plan says.
///
/// Packed dirt is planned as 0.016 and given as 0.012 to 0.02, other ground likewise as a middle with
/// a quarter to a third either way (Wilson, *Bicycling Science*, `from memory`; no measured value of
/// packed dirt or grass could be found).
pub const ROLLING: [f64; 2] = [1.3, 0.7];

/// Drag area, as shares of what the plan says.
///
/// Half the way between a racer's crouch and sitting upright: the two formulas of Bassett et al. 1999
/// (Med. Sci. Sports Exerc. 31:1665) and its upright form give 0.223 and 0.318 m² for a child of ten.
pub const DRAG: [f64; 2] = [1.18, 0.82];

/// Wind along the line beside what the plan says, m/s: up to here it is not felt on the face.
///
/// Upper end of force 1 of the Beaufort scale (WMO-No. 306).
const WIND: [f64; 2] = [-1.5, 1.5];

/// Speed at the start beside what the plan says, m/s: one push is not like the other
/// (common practice, no source).
pub const START: [f64; 2] = [-0.3, 0.3];

/// The corner in which everything slows.
pub(super) const SLOWEST: usize = 0;

/// Every input at either end, in every combination.
const CORNERS: usize = 1 << 4;

/// What may become of one jump. Speeds in m/s.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Spread {
    /// Index of the lip in the profile.
    pub lip: usize,
    /// Lowest speed at the lip among all rides that leave it.
    pub slowest: Option<f64>,
    /// Highest speed at the lip among all rides that leave it.
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

/// What may become of every jump of a plan with one of its riders.
///
/// # Errors
/// Every fault of the plan, or that it has no such rider.
pub fn spreads(plan: &Plan, rider: usize) -> Result<Vec<Spread>, Vec<Fault>> {
    let profile = Profile::build(plan)?;
    let mount = setup::mount(setup::rider(plan, rider)?, &plan.weather);
    let start = setup::start_speed(plan);
    let lips = 0..profile.lips.len();
    let mut spreads: Vec<_> = lips.map(Spread::untried).collect();
    for i in 0..=CORNERS {
        // The last is the ride as planned: its speed belongs to the range, its outcome is no trial.
        let (m, speed) = if i < CORNERS {
            corner(&mount, start, i)
        } else {
            (mount.clone(), start)
        };
        let run = ride(&profile, &m, speed, &Accuracy::default());
        for (spread, row) in spreads.iter_mut().zip(jumps(&profile, &run)) {
            spread.take_speed(row.speed);
            if i < CORNERS {
                spread.take_outcome(row.speed.is_some(), row.how);
            }
        }
    }
    Ok(spreads)
}

/// Rider, bike, day and speed at the start with each input at the end that the bits of `i` say.
pub(super) fn corner(mount: &Mount, start: f64, i: usize) -> (Mount, f64) {
    let end = |input: usize| (i >> input) & 1;
    let mut m = mount.clone();
    m.rolling = m.rolling.map(|c| c * ROLLING[end(0)]);
    m.drag *= DRAG[end(1)];
    m.tailwind += WIND[end(2)];
    (m, num::max(start + START[end(3)], 0.0))
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
    use crate::plan::{self, Feature, Line};
    use crate::setup::ride_plan;

    #[test]
    fn the_planned_speed_lies_within_and_the_range_is_not_nothing() {
        let plan = plan::demo();
        for rider in 0..plan.riders.len() {
            let ridden = ride_plan(&plan, rider).expect("the demonstration is sound");
            let rows = jumps(&ridden.profile, &ridden.run);
            let spreads = spreads(&plan, rider).expect("the demonstration is sound");
            assert_eq!(spreads.len(), rows.len());
            for (s, row) in spreads.iter().zip(&rows) {
                let v = row.speed.expect("every lip is left");
                let (low, high) = (s.slowest.unwrap_or(v), s.fastest.unwrap_or(v));
                println!("rider {rider}: {low:.2} {v:.2} {high:.2}, {s:?}");
                assert!(low < v && v < high, "{low} {v} {high}");
                assert!(high - low > 0.02 * v && high - low < 0.5 * v);
                assert_eq!(s.tried, 16);
                assert_eq!(s.tried, s.clean + s.short + s.far + s.crashed);
            }
        }
    }

    #[test]
    fn all_that_slows_together_gives_the_slowest_first_lip() {
        let plan = plan::demo();
        let profile = Profile::build(&plan).expect("the demonstration is sound");
        let mount = setup::mount(&plan.riders[0], &plan.weather);
        let first = |i| {
            let (m, speed) = corner(&mount, setup::start_speed(&plan), i);
            jumps(&profile, &ride(&profile, &m, speed, &Accuracy::default()))[0].speed
        };
        let spread = &spreads(&plan, 0).expect("the demonstration is sound")[0];
        assert_eq!(spread.slowest, first(0));
        assert_eq!(spread.fastest, first(CORNERS - 1));
    }

    #[test]
    fn a_lip_that_nobody_reaches_has_no_range() {
        let mut plan = plan::demo();
        if let Line::Features(features) = &mut plan.line
            && let Feature::StartRamp(ramp) = &mut features[0]
        {
            ramp.platform_height = 0.8;
            ramp.bottom_radius = 2.0;
            ramp.push_off = 0.5;
        }
        let last = spreads(&plan, 0)
            .expect("still sound")
            .pop()
            .expect("it has lips");
        assert_eq!((last.slowest, last.left, last.clean), (None, 0, 0));
    }
}
