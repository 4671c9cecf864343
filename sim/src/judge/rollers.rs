//! What rollers take from the lip that follows: the same line ridden with and without them.

use super::change::{rows, smallest, with};
use crate::num;
use crate::plan::{Feature, Flat, Plan};
use serde::Serialize;

/// Most that a start ramp is raised to buy a roller back, m.
const MOST_HIGHER: f64 = 3.0;

/// One feature of rollers, compared.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Toll {
    /// Index of the feature in the plan's line.
    pub feature: usize,
    /// Index of the lip that follows.
    pub lip: usize,
    /// Speed at that lip as planned, m/s.
    pub with: Option<f64>,
    /// Speed at that lip with the rollers flattened, m/s.
    pub without: Option<f64>,
    /// Speed at that lip with one roller fewer, flat in its place, m/s.
    pub one_fewer: Option<f64>,
    /// How much higher the start platform would have to be to make up for the rollers, m; `None` where that is
    /// taller than the builder wants.
    pub higher: Option<f64>,
}

/// Every feature of rollers that has a lip behind it. None on a surveyed line.
pub fn tolls(plan: &Plan, rider: usize) -> Vec<Toll> {
    let crate::plan::Line::Features(features) = &plan.line else {
        return Vec::new();
    };
    let mut lip = 0;
    let mut tolls = Vec::new();
    for (i, feature) in features.iter().enumerate() {
        match feature {
            Feature::Jump(_) => lip += 1,
            Feature::Roller(_) => tolls.extend(toll(plan, rider, i, lip)),
            _ => {}
        }
    }
    tolls
}

fn toll(plan: &Plan, rider: usize, feature: usize, lip: usize) -> Option<Toll> {
    let speed = |plan: Option<Plan>| rows(&plan?, rider)?.get(lip)?.speed;
    // A line without a lip behind the rollers has nothing to compare.
    rows(plan, rider)?.get(lip)?;
    let with_them = speed(Some(plan.clone()));
    let without = speed(flattened(plan, feature, u32::MAX));
    let higher = without.zip(platform(plan)).and_then(|(target, platform)| {
        smallest(room_above(plan, platform, MOST_HIGHER), 6, |more| {
            speed(raised(plan, more)).is_some_and(|v| v >= target)
        })
    });
    Some(Toll {
        feature,
        lip,
        with: with_them,
        without,
        one_fewer: speed(flattened(plan, feature, 1)),
        higher,
    })
}

/// The plan with so many of a feature's rollers flattened, the last of them first.
fn flattened(plan: &Plan, feature: usize, how_many: u32) -> Option<Plan> {
    with(plan, |features| {
        let Feature::Roller(roller) = &features[feature] else {
            return;
        };
        let mut roller = roller.clone();
        let gone = how_many.min(roller.count);
        let flat = Feature::Flat(Flat {
            length: roller.length * f64::from(gone),
            surface: roller.surface,
        });
        roller.count -= gone;
        features[feature] = flat;
        if roller.count > 0 {
            features.insert(feature, Feature::Roller(roller));
        }
    })
}

/// Height of the start platform, m; `None` where there is no start ramp.
pub(super) fn platform(plan: &Plan) -> Option<f64> {
    let crate::plan::Line::Features(features) = &plan.line else {
        return None;
    };
    match features.first()? {
        Feature::StartRamp(ramp) => Some(ramp.platform_height),
        _ => None,
    }
}

/// By how much a platform may be raised, m, up to `most`: to no more than the builder wants.
pub(super) fn room_above(plan: &Plan, platform: f64, most: f64) -> f64 {
    let tallest = plan.yard.tallest.unwrap_or(f64::INFINITY);
    num::min(most, tallest - platform)
}

/// The plan with its start platform raised, m; `None` where there is no start ramp.
pub(super) fn raised(plan: &Plan, more: f64) -> Option<Plan> {
    let mut found = false;
    let raised = with(plan, |features| {
        if let Some(Feature::StartRamp(ramp)) = features.first_mut() {
            ramp.platform_height += more;
            found = true;
        }
    })?;
    found.then_some(raised)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::{self, Line, Style};

    fn lower_rollers(plan: &mut Plan, height: f64) {
        let Line::Features(features) = &mut plan.line else {
            return;
        };
        for feature in features {
            if let Feature::Roller(roller) = feature {
                roller.height = height;
            }
        }
    }

    #[test]
    fn rollers_take_speed_and_a_higher_ramp_gives_it_back() {
        // Stiff legs pay for every roller; whoever soaks up pays next to nothing for low ones.
        let mut plan = plan::demo();
        plan.riders
            .iter_mut()
            .for_each(|r| r.rider.style = Style::Passive);
        lower_rollers(&mut plan, 0.15);
        // A higher ramp is longer too.
        plan.yard.length += 10.0;
        for rider in 0..2 {
            let tolls = tolls(&plan, rider);
            assert_eq!(tolls.len(), 1);
            let toll = &tolls[0];
            println!("{rider} {toll:.2?}");
            let (with, without) = (toll.with.expect("left"), toll.without.expect("left"));
            let fewer = toll.one_fewer.expect("left");
            assert!(with < fewer && fewer < without, "{with} {fewer} {without}");
            let higher = toll.higher.expect("some ramp is high enough");
            let raised = raised(&plan, higher).expect("there is a ramp");
            let again = rows(&raised, rider).expect("sound")[0].speed.expect("left");
            assert!(
                again >= without && again < without + 0.1,
                "{again} {without}"
            );
        }
    }
}
