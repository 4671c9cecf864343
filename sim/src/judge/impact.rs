//! How each landing is felt: which wheel first, how heavy, how much of the legs is left.

use super::cost::gained;
use super::jump::lip_events;
use crate::num;
use crate::profile::Profile;
use crate::ride::{EventKind, Mount, Run, Wheel};
use serde::Serialize;

/// How long after a touch-down its peaks are looked for, s.
const FELT: f64 = 0.5;

/// A landing as the rider feels it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Impact {
    /// Index of the lip in the profile.
    pub lip: usize,
    /// Which wheel came down first.
    pub first: Wheel,
    /// Heaviest load through legs and arms, in body weights.
    pub peak_g: f64,
    /// Least travel that the legs had left, m; 0 where they came to their end.
    pub travel_left: f64,
    /// Head that tyres and legs took, less what the legs gave back, m.
    pub lost: f64,
    /// What that takes from the speed at the next lip, m/s; `None` behind the last lip left.
    pub next_lip: Option<f64>,
}

/// The landing of every jump that was landed, in riding order.
pub fn impacts(profile: &Profile, mount: &Mount, run: &Run) -> Vec<Impact> {
    let lips = 0..profile.lips.len();
    lips.filter_map(|lip| impact(mount, run, lip)).collect()
}

fn impact(mount: &Mount, run: &Run, lip: usize) -> Option<Impact> {
    let (at, first) = lip_events(run, lip)?.iter().find_map(|e| match e.kind {
        EventKind::TouchedDown { wheel, .. } => Some((e.t, wheel)),
        _ => None,
    })?;
    let samples: Vec<_> = run
        .samples
        .iter()
        .filter(|s| s.t >= at && s.t <= at + FELT)
        .collect();
    let peak_g = samples.iter().fold(0.0, |most, s| num::max(most, s.g));
    let least = samples
        .iter()
        .fold(f64::INFINITY, |least, s| num::min(least, s.reach));
    let (from, to) = (samples.first()?, samples.last()?);
    let spent = to.spent.less(&from.spent);
    let lost = spent.tyres + spent.slip + spent.absorbed - spent.put_in;
    let lost = lost / run.ledger.weight;
    let next = lip_events(run, lip + 1).and_then(|e| match e[0].kind {
        EventKind::LipLeft { speed, .. } => Some(speed),
        _ => None,
    });
    Some(Impact {
        lip,
        first,
        peak_g,
        travel_left: num::max(least - mount.reach_low, 0.0),
        lost,
        next_lip: next.map(|speed| gained(mount, speed, lost) - speed),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan;
    use crate::setup::{mount, ride_plan};

    #[test]
    fn the_demonstration_lands_within_what_legs_hold() {
        let plan = plan::demo();
        for rider in 0..2 {
            let ridden = ride_plan(&plan, rider).expect("the demonstration is sound");
            let m = mount(&plan.riders[rider], &plan.weather);
            let impacts = impacts(&ridden.profile, &m, &ridden.run);
            assert_eq!(impacts.len(), 3);
            for i in &impacts {
                println!("{rider} {i:.2?}");
                assert!(i.peak_g > 1.0 && i.peak_g < 9.0, "{i:?}");
                assert!(i.travel_left < m.reach_high - m.reach_low);
                assert!(i.lost > 0.0 && i.lost < 1.0, "{i:?}");
                assert_eq!(i.next_lip.is_some(), i.lip < 2);
                assert!(i.next_lip.is_none_or(|v| v > 0.0 && v < 2.0), "{i:?}");
            }
        }
    }
}
