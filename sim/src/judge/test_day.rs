//! A plan for the day on which the line is ridden for the first time.
//!
//! Each jump is ridden as it stands alone, the others not yet built, flat ground in their place: so it
//! can be tried by itself. A lip that can be moved stands nearer at first, so near that even the slowest
//! of the what-ifs puts both wheels on the landing. And it is ridden in wind and on wet ground, to know
//! when to stop.

use super::change::{rows, smallest, with};
use super::jump::{How, JumpRow};
use super::what_ifs::{SLOWEST, Unknown, WhatIfs};
use crate::num;
use crate::plan::{Feature, Flat, Ground, Line, Plan, Surface};
use crate::profile::Profile;
use serde::Serialize;

/// Strongest wind tried, m/s: a fresh breeze, in which nobody should jump at all.
const MOST_WIND: f64 = 8.0;

/// Most that a lip is set nearer, m.
const MOST_NEARER: f64 = 1.5;

/// One jump on the test day.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Trial {
    /// Index of the lip in the profile.
    pub lip: usize,
    /// Speed to see at the flag by its edge, the whole line built, m/s.
    pub flag: Option<f64>,
    /// Speed at its edge when it alone is built, m/s.
    pub alone: Option<f64>,
    /// How it goes when it alone is built.
    pub how_alone: How,
    /// The gap to begin with, m, where it has to be shorter than planned; `None` where the planned gap
    /// will do or no shorter one helps.
    pub first_gap: Option<f64>,
    /// How the planned ride goes at that gap.
    pub how_first: Option<How>,
}

/// When to stop for the day.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Stops {
    /// Least wind from ahead in which some jump no longer lands clean, m/s.
    pub headwind: Option<f64>,
    /// Least wind from behind in which some jump no longer lands clean, m/s.
    pub tailwind: Option<f64>,
    /// How each jump goes on damp ground.
    pub damp: Vec<How>,
    /// How each jump goes on soft ground.
    pub soft: Vec<How>,
}

/// The whole day.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TestDay {
    /// The jumps in the order in which they are built and tried.
    pub trials: Vec<Trial>,
    /// When to stop.
    pub stops: Stops,
}

/// The test day of a plan with one of its riders; `None` on a surveyed line, or where the plan has
/// faults.
pub fn test_day(plan: &Plan, rider: usize) -> Option<TestDay> {
    let Line::Features(features) = &plan.line else {
        return None;
    };
    let planned = rows(plan, rider)?;
    let jumps = features.iter().enumerate();
    let jumps = jumps.filter(|(_, f)| matches!(f, Feature::Jump(_)));
    let trials = jumps
        .zip(&planned)
        .filter_map(|((feature, _), row)| trial(plan, rider, feature, row))
        .collect();
    Some(TestDay {
        trials,
        stops: stops(plan, rider, &planned),
    })
}

fn trial(plan: &Plan, rider: usize, feature: usize, row: &JumpRow) -> Option<Trial> {
    let alone = rows(&alone(plan, feature)?, rider)?;
    let gap = |by: f64| nearer(plan, feature, by);
    let safe = |plan: Option<Plan>| plan.and_then(|p| lands_when_slow(&p, rider, row.lip));
    let first_gap = match safe(gap(0.0)) {
        Some(true) | None => None,
        Some(false) => smallest(MOST_NEARER, 10, |by| safe(gap(by)) == Some(true)),
    };
    Some(Trial {
        lip: row.lip,
        flag: row.speed,
        alone: alone.first()?.speed,
        how_alone: alone.first()?.how,
        how_first: first_gap.and_then(|by| super::change::how(&gap(by)?, rider, row.lip)),
        first_gap: first_gap.and_then(|by| gap_of(&gap(by)?, feature)),
    })
}

/// The plan with one jump alone, flat ground where the others will be.
fn alone(plan: &Plan, feature: usize) -> Option<Plan> {
    let profile = Profile::build(plan).ok()?;
    with(plan, |features| {
        for span in &profile.spans {
            let other = &mut features[span.feature];
            if span.feature != feature && matches!(other, Feature::Jump(_)) {
                *other = Feature::Flat(Flat {
                    length: num::length(span.from - span.to),
                    surface: Surface::Packed,
                });
            }
        }
    })
}

/// The plan with a jump's lip so much nearer to its landing: what it gains stands before it as flat.
fn nearer(plan: &Plan, feature: usize, by: f64) -> Option<Plan> {
    with(plan, |features| {
        if let Feature::Jump(jump) = &mut features[feature] {
            jump.gap = crate::num::max(jump.gap - by, 0.0);
        }
        if by >= 0.05 {
            let flat = Feature::Flat(Flat {
                length: by,
                surface: Surface::Packed,
            });
            features.insert(feature, flat);
        }
    })
}

fn gap_of(plan: &Plan, feature: usize) -> Option<f64> {
    let Line::Features(features) = &plan.line else {
        return None;
    };
    let jump = |f: &Feature| match f {
        Feature::Jump(jump) => Some(jump.gap),
        _ => None,
    };
    // The flat before it may have moved it on by one.
    features.get(feature..)?.iter().take(2).find_map(jump)
}

/// Whether the slowest of the what-ifs still puts both wheels past the knuckle; `None` where the
/// plan has faults.
fn lands_when_slow(plan: &Plan, rider: usize, lip: usize) -> Option<bool> {
    let what_ifs = WhatIfs::of(plan, rider, &Unknown::usual()).ok()?;
    let row = what_ifs.corner(SLOWEST).into_iter().nth(lip)?;
    let past = |x: Option<f64>| x.is_some_and(|x| x > 0.0);
    Some(past(row.rear_past_knuckle) && past(row.front_past_knuckle) && row.how != How::Crashed)
}

fn stops(plan: &Plan, rider: usize, planned: &[JumpRow]) -> Stops {
    let on = |ground: Ground| {
        let mut plan = plan.clone();
        plan.weather.ground = ground;
        let rows = rows(&plan, rider).unwrap_or_default();
        rows.iter().map(|r| r.how).collect()
    };
    let spoils = |wind: f64| {
        let mut plan = plan.clone();
        plan.weather.tailwind += wind;
        // What is not clean without wind says nothing about the wind.
        let now = rows(&plan, rider).unwrap_or_default();
        planned
            .iter()
            .zip(&now)
            .any(|(a, b)| a.how == How::Clean && b.how != How::Clean)
    };
    Stops {
        headwind: smallest(MOST_WIND, 16, |v| spoils(-v)),
        tailwind: smallest(MOST_WIND, 16, spoils),
        damp: on(Ground::Damp),
        soft: on(Ground::Soft),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan;

    #[test]
    fn the_demonstration_has_a_test_day() {
        let plan = plan::demo();
        let day = test_day(&plan, 0).expect("it has features");
        assert_eq!(day.trials.len(), 3);
        for trial in &day.trials {
            println!("{trial:.2?}");
            let (flag, alone) = (trial.flag.expect("left"), trial.alone.expect("left"));
            // Nothing else on the line costs speed then, so it is not slower than in the whole line,
            // but for what the fall of a longer run gives or takes.
            assert!(alone > flag - 0.3, "{alone} {flag}");
        }
        println!("{:?}", day.stops);
        assert!(day.stops.headwind.is_some_and(|v| v > 0.2));
        assert!(day.stops.soft.iter().any(|&h| h != How::Clean));
    }

    #[test]
    fn the_first_gap_is_landed_by_the_slowest() {
        let plan = plan::demo();
        let day = test_day(&plan, 0).expect("it has features");
        let Line::Features(features) = &plan.line else {
            panic!("it has features")
        };
        let mut nearer_ones = 0;
        for trial in &day.trials {
            let Some(first) = trial.first_gap else {
                continue;
            };
            let feature = [4, 6, 8][trial.lip];
            let Feature::Jump(jump) = &features[feature] else {
                panic!("it is a jump")
            };
            assert!(first < jump.gap);
            let by = jump.gap - first;
            let near = nearer(&plan, feature, by).expect("it has features");
            assert_eq!(lands_when_slow(&near, 0, trial.lip), Some(true));
            nearer_ones += 1;
        }
        assert!(nearer_ones > 0);
    }
}
