//! What each feature costs: where its share of the energy went.
//!
//! A loss is told as head, E/(M g): so much less start ramp would have done as well. And as speed at the
//! next lip: with e the share of the wheels' spin in the whole motion, v² + 2 g h / (1 + e) is what the
//! speed's square would be without it.

use crate::constants::GRAVITY;
use crate::num;
use crate::plan::{Feature, Line};
use crate::profile::{Profile, Span};
use crate::ride::{EventKind, Mount, Run, Sample, Spent};
use serde::Serialize;

/// How long after a touch-down what tyres and legs take counts to the landing, s: until a bike that
/// hops once more has settled (common practice, no source).
const SETTLED: f64 = 0.45;

/// What one feature costs, m of head; what was given is positive too.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Cost {
    /// Index of the feature in the plan's line.
    pub feature: usize,
    /// Rolling resistance and bearings.
    pub rolling: f64,
    /// Drag of the air; negative where the wind pushed.
    pub drag: f64,
    /// Tyres, slip and what legs and arms took up, in landings.
    pub landing: f64,
    /// Tyres and slip elsewhere.
    pub tyres: f64,
    /// What legs and arms took up elsewhere.
    pub legs: f64,
    /// Worked against the press of a turn.
    pub turning: f64,
    /// The brake.
    pub braking: f64,
    /// What legs and arms gave.
    pub given: f64,
    /// All that was lost less what was given.
    pub net: f64,
    /// Of a train of rollers the net loss of each of them, m of head, in riding order; else empty.
    pub each: Vec<f64>,
    /// What the net loss takes from the speed at the next lip, m/s; `None` behind the last lip left.
    pub next_lip: Option<f64>,
}

/// What each feature of a plan's line costs, in riding order; none on a surveyed line.
pub fn costs(line: &Line, profile: &Profile, mount: &Mount, run: &Run) -> Vec<Cost> {
    let weight = mount.mass() * GRAVITY;
    let landed = landings(run);
    let spans = profile.spans.iter();
    spans
        .map(|span| {
            let (from, to) = (
                time_at(&run.samples, span.from.x),
                time_at(&run.samples, span.to.x),
            );
            let all = between(&run.samples, from, to).scaled(1.0 / weight);
            let hard = landed.iter().map(|&t| {
                let (a, b) = (num::max(t, from), num::min(t + SETTLED, to));
                if b > a {
                    between(&run.samples, a, b).scaled(1.0 / weight)
                } else {
                    Spent::default()
                }
            });
            let hard = hard.fold((0.0, 0.0), |sum, s| {
                (sum.0 + s.tyres + s.slip, sum.1 + s.absorbed)
            });
            // A wheel that is braked slips: what it takes is the brake's doing.
            let skid = if all.brake > 0.0 { all.slip } else { 0.0 };
            let net = all.net();
            Cost {
                feature: span.feature,
                rolling: all.rolling_rear + all.rolling_front,
                drag: all.drag,
                landing: hard.0 + hard.1,
                tyres: all.tyres + all.slip - skid - hard.0,
                legs: all.absorbed - hard.1,
                turning: all.turn,
                braking: all.brake + skid,
                given: all.put_in,
                net,
                each: each(line, span, run, weight),
                next_lip: next_lip(run, mount, span.to.x, net),
            }
        })
        .collect()
}

/// The net loss of each roller of a train, m of head: they share its span evenly.
fn each(line: &Line, span: &Span, run: &Run, weight: f64) -> Vec<f64> {
    let Line::Features(features) = line else {
        return Vec::new();
    };
    let count = match features.get(span.feature) {
        Some(Feature::Roller(roller)) if roller.count > 1 => roller.count,
        _ => return Vec::new(),
    };
    let end = |i: u32| {
        let share = f64::from(i) / f64::from(count);
        time_at(
            &run.samples,
            span.from.x + share * (span.to.x - span.from.x),
        )
    };
    let one = |i| between(&run.samples, end(i), end(i + 1)).net() / weight;
    (0..count).map(one).collect()
}

/// What a loss of head before a station takes from the speed at the next lip behind it, m/s.
fn next_lip(run: &Run, mount: &Mount, x: f64, head: f64) -> Option<f64> {
    let speed = run.events.iter().find_map(|e| match e.kind {
        EventKind::LipLeft { speed, .. } if e.x > x => Some(speed),
        _ => None,
    })?;
    Some(gained(mount, speed, head) - speed)
}

/// The speed that a speed would be with so much more head, m/s.
pub(super) fn gained(mount: &Mount, speed: f64, head: f64) -> f64 {
    let r = mount.tyre.radius;
    let spin = 2.0 * mount.wheel_inertia / (r * r * mount.mass());
    let square = speed * speed + 2.0 * GRAVITY * head / (1.0 + spin);
    if square > 0.0 { square.sqrt() } else { 0.0 }
}

/// When wheels came down after flight, s.
fn landings(run: &Run) -> Vec<f64> {
    let down =
        |e: &crate::ride::Event| matches!(e.kind, EventKind::TouchedDown { .. }).then_some(e.t);
    run.events.iter().filter_map(down).collect()
}

/// When the middle of the bike first passes a station, s; the end of the ride where it never does.
fn time_at(samples: &[Sample], x: f64) -> f64 {
    let Some(i) = samples.iter().position(|s| s.bike_x >= x) else {
        return samples.last().map_or(0.0, |s| s.t);
    };
    let Some(a) = i.checked_sub(1).map(|j| &samples[j]) else {
        return samples[i].t;
    };
    let b = &samples[i];
    a.t + (b.t - a.t) * (x - a.bike_x) / (b.bike_x - a.bike_x)
}

/// What was spent from one time to another.
fn between(samples: &[Sample], from: f64, to: f64) -> Spent {
    spent_at(samples, to).less(&spent_at(samples, from))
}

fn spent_at(samples: &[Sample], t: f64) -> Spent {
    let i = samples
        .partition_point(|s| s.t < t)
        .clamp(1, samples.len() - 1);
    let (a, b) = (&samples[i - 1], &samples[i]);
    let share = if b.t > a.t {
        (t - a.t) / (b.t - a.t)
    } else {
        1.0
    };
    let share = num::clamp(share, 0.0, 1.0);
    a.spent.plus(&b.spent.less(&a.spent).scaled(share))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan;
    use crate::setup::{mount, ride_plan};

    #[test]
    fn features_add_up_to_the_ledger() {
        let plan = plan::demo();
        for rider in 0..2 {
            let ridden = ride_plan(&plan, rider).expect("the demonstration is sound");
            let m = mount(&plan.riders[rider], &plan.weather);
            let costs = costs(&plan.line, &ridden.profile, &m, &ridden.run);
            let sum: f64 = costs.iter().map(|c| c.net).sum();
            let ledger = &ridden.run.ledger;
            let whole = ledger.spent.net() / ledger.weight;
            for c in &costs {
                println!("{rider} {:.3?}", c);
                let parts =
                    c.rolling + c.drag + c.landing + c.tyres + c.legs + c.turning + c.braking;
                assert!((parts - c.given - c.net).abs() < 1e-12);
                let each: f64 = c.each.iter().sum();
                assert!(c.each.is_empty() || (each - c.net).abs() < 1e-9);
            }
            assert_eq!(costs[2].each.len(), 3, "three rollers");
            // What is before the first feature or behind the last belongs to none of them.
            assert!((sum - whole).abs() < 0.02, "{sum} {whole}");
        }
    }
}
