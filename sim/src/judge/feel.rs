//! What a jump feels like to who rides it: how high, how far, how heavy in the lip.

use super::jump::lip_events;
use crate::num;
use crate::plan::Bike;
use crate::profile::{LipEdge, Profile, direction};
use crate::ride::{EventKind, Mount, Run, Sample};
use glam::DVec2;
use serde::Serialize;

/// Who clears the knuckle by so much is in no doubt about it, m.
const CLEARLY: f64 = 1.0;

/// A jump as the rider feels it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Felt {
    /// Index of the lip in the profile.
    pub lip: usize,
    /// Most height of the lower wheel over the ground beneath it, m.
    pub height: f64,
    /// From the edge to where the rear wheel came down, level, m.
    pub far: f64,
    /// Heaviest load through legs and arms from the foot of the lip to its edge, in body weights.
    pub lip_g: f64,
}

/// Every jump that was flown and landed, in riding order, on a bike.
pub fn felt(profile: &Profile, bike: &Bike, run: &Run) -> Vec<Felt> {
    let lips = profile.lips.iter().enumerate();
    lips.filter_map(|(i, lip)| flown(profile, bike, run, i, lip))
        .collect()
}

fn flown(profile: &Profile, bike: &Bike, run: &Run, index: usize, lip: &LipEdge) -> Option<Felt> {
    let events = lip_events(run, index)?;
    let left = events.first()?.t;
    let (down, rear) = events.iter().find_map(|e| match e.kind {
        EventKind::TouchedDown { rear_x, .. } => Some((e.t, rear_x)),
        _ => None,
    })?;
    let most = |of: &dyn Fn(&Sample) -> f64, within: &dyn Fn(&&Sample) -> bool| {
        let samples = run.samples.iter().filter(within);
        samples.fold(0.0, |most, s| num::max(most, of(s)))
    };
    Some(Felt {
        lip: index,
        height: most(&|s| over(s, profile, bike), &|s| s.t >= left && s.t <= down),
        far: rear - lip.edge.x,
        lip_g: most(&|s| s.g, &|s| s.t <= left && s.bike_x >= lip.foot.x),
    })
}

/// Height of the lower wheel over the ground beneath it, m; 0 where there is no ground.
pub fn over(s: &Sample, profile: &Profile, bike: &Bike) -> f64 {
    let over = lowest(s, bike.wheelbase, bike.wheel_radius()).map(|p| above(profile, p));
    num::max(num::min(over[0], over[1]), 0.0)
}

/// Height of a point over the ground beneath it, m; 0 where there is no ground.
fn above(profile: &Profile, p: DVec2) -> f64 {
    p.y - profile.height_at(p.x).unwrap_or(p.y)
}

/// The lowest point of either tyre, the rear one first, m.
fn lowest(s: &Sample, wheelbase: f64, radius: f64) -> [DVec2; 2] {
    let middle = DVec2::new(s.bike_x, s.bike_z - radius);
    let along = direction(s.pitch) * (0.5 * wheelbase);
    [middle - along, middle + along]
}

/// Least height of either tyre over the ground from half the gap on to the knuckle, m; no more than `CLEARLY`.
pub(super) fn clearance(profile: &Profile, m: &Mount, run: &Run, lip: &LipEdge) -> f64 {
    let from = 0.5 * (lip.edge.x + lip.knuckle.x);
    let near = run
        .samples
        .iter()
        .flat_map(|s| lowest(s, m.wheelbase, m.tyre.radius));
    let near = near.filter(|p| p.x >= from && p.x <= lip.knuckle.x);
    near.fold(CLEARLY, |least, p| num::min(least, above(profile, p)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::judge::jumps;
    use crate::plan;
    use crate::setup::ride_plan;

    #[test]
    fn the_demonstration_is_felt_as_it_is_flown() {
        let plan = plan::demo();
        for (rider, mount) in plan.riders.iter().enumerate() {
            let ridden = ride_plan(&plan, rider).expect("the demonstration is sound");
            let (profile, run) = (&ridden.profile, &ridden.run);
            let felt = felt(profile, &mount.bike, run);
            let rows = jumps(profile, run);
            assert_eq!(felt.len(), rows.len());
            for (felt, row) in felt.iter().zip(&rows) {
                println!("{rider} {felt:.2?}");
                let airtime = row.airtime.unwrap_or(0.0);
                // Where the trace has the rear axle then; a tyre touches a slope up to a wheel's sine of it
                // behind the axle.
                let left = run
                    .events
                    .iter()
                    .find(|e| matches!(e.kind, EventKind::LipLeft { lip, .. } if lip == felt.lip));
                let down = left.map_or(0.0, |e| e.t) + airtime;
                let at = run
                    .samples
                    .iter()
                    .rfind(|s| s.t <= down)
                    .expect("it was ridden");
                let rear = at.bike_x - 0.5 * mount.bike.wheelbase * num::sin_cos(at.pitch).1;
                let off = felt.far - (rear - profile.lips[felt.lip].edge.x);
                assert!(off.abs() < 0.3 * mount.bike.wheelbase, "{felt:?}, {off} m");
                // Higher than half the fall of half the flight, less what the lower wheel of a bike hangs that
                // is 10° off its way, and no higher than the whole of it; the landing lies lower than the lip.
                let drop = 0.5 * crate::constants::GRAVITY * airtime * airtime;
                let hangs = 0.5 * mount.bike.wheelbase * num::sin(num::radians(10.0));
                assert!(felt.height > 0.125 * drop - hangs, "{felt:?}");
                assert!(felt.height < drop, "{felt:?}");
                assert!(felt.lip_g > 1.5, "a lip presses: {felt:?}");
            }
        }
    }

    #[test]
    fn a_wheel_on_the_ground_is_not_over_it() {
        let plan = plan::demo();
        let ridden = ride_plan(&plan, 0).expect("the demonstration is sound");
        let bike = &plan.riders[0].bike;
        // Before the first lip: over an edge the ground beneath is not what a wheel stands on.
        let foot = ridden.profile.lips[0].foot.x - 1.0;
        let down = |s: &&Sample| s.rear_load > 0.0 && s.bike_x < foot;
        assert!(ridden.run.samples.iter().filter(down).count() > 100);
        for s in ridden.run.samples.iter().filter(down) {
            // Straight under its middle a wheel on a slope of 40° is 31 % of its radius over the ground.
            let over = over(s, &ridden.profile, bike);
            assert!(over < 0.31 * bike.wheel_radius(), "{over} m at {} s", s.t);
        }
    }
}
