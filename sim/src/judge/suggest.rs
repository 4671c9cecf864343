//! One change that would make a jump work, with a number; ridden before it is said.

use super::change::{how, rows, smallest, with};
use super::jump::{How, JumpRow};
use super::rollers::{platform, raised, room_above};
use crate::num;
use crate::plan::{Feature, Plan};
use serde::Serialize;

/// Most that a gap is shortened or lengthened, m, and a start platform raised.
const MOST_GAP: f64 = 1.5;
const MOST_HIGHER: f64 = 2.0;

/// Shortest gap that is suggested, m: over less nobody jumps, it is rolled.
const LEAST_GAP: f64 = 0.3;

/// Numbers are given in steps that can be built: 5 cm.
const STEPS_PER_METRE: f64 = 20.0;

/// Which number of the plan to change.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Lever {
    /// The gap of the jump itself.
    Gap,
    /// The height of the start platform.
    Platform,
}

/// A change that lets a jump land clean.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Suggestion {
    /// Index of the lip in the profile.
    pub lip: usize,
    /// What to change.
    pub lever: Lever,
    /// Index of the feature that has the number.
    pub feature: usize,
    /// The number now, m.
    pub now: f64,
    /// The number that works, m.
    pub then: f64,
}

/// A suggestion for every jump that does not go clean and for which a single change is found; a
/// jump that is not reached waits for those before it. None on a surveyed line.
pub fn suggestions(plan: &Plan, rider: usize) -> Vec<Suggestion> {
    let rows = rows(plan, rider).unwrap_or_default();
    let wrong = rows
        .iter()
        .filter(|r| !matches!(r.how, How::Clean | How::NotReached));
    wrong.filter_map(|row| suggest(plan, rider, row)).collect()
}

fn suggest(plan: &Plan, rider: usize, row: &JumpRow) -> Option<Suggestion> {
    let shorter = || moved(plan, rider, row, -1.0);
    let longer = || moved(plan, rider, row, 1.0);
    let higher = || higher(plan, rider, row);
    match row.how {
        How::Short | How::Knuckle => shorter().or_else(higher),
        How::Deep | How::Past => longer(),
        How::Stalled => higher(),
        // Too slow and too fast both end so.
        How::Crashed => shorter().or_else(higher).or_else(longer),
        How::Clean | How::NotReached => None,
    }
}

/// The gap changed in one direction by the least that works, to a step that works as well.
fn moved(plan: &Plan, rider: usize, row: &JumpRow, sign: f64) -> Option<Suggestion> {
    let gap = gap_of(plan, row.feature)?;
    let most = if sign < 0.0 {
        num::min(MOST_GAP, gap - LEAST_GAP)
    } else {
        MOST_GAP
    };
    let works = |by: f64| {
        let changed = with(plan, |features| {
            if let Feature::Jump(jump) = &mut features[row.feature] {
                jump.gap = gap + sign * by;
            }
        });
        changed.and_then(|p| how(&p, rider, row.lip)) == Some(How::Clean)
    };
    let by = smallest(most, 8, works)?;
    Some(Suggestion {
        lip: row.lip,
        lever: Lever::Gap,
        feature: row.feature,
        now: gap,
        then: stepped(most, by, gap, sign, works),
    })
}

fn gap_of(plan: &Plan, feature: usize) -> Option<f64> {
    match &plan.line {
        crate::plan::Line::Features(features) => match features.get(feature)? {
            Feature::Jump(jump) => Some(jump.gap),
            _ => None,
        },
        crate::plan::Line::Surveyed { .. } => None,
    }
}

/// The platform raised by the least that works.
fn higher(plan: &Plan, rider: usize, row: &JumpRow) -> Option<Suggestion> {
    let now = platform(plan)?;
    let most = room_above(plan, now, MOST_HIGHER);
    let works =
        |by: f64| raised(plan, by).and_then(|p| how(&p, rider, row.lip)) == Some(How::Clean);
    let by = smallest(most, 16, works)?;
    Some(Suggestion {
        lip: row.lip,
        lever: Lever::Platform,
        feature: 0,
        now,
        then: stepped(most, by, now, 1.0, works),
    })
}

/// The number that `now` changes to by at least `least`: the next whole step where that works too.
fn stepped(most: f64, least: f64, now: f64, sign: f64, works: impl Fn(f64) -> bool) -> f64 {
    let steps = (now + sign * least) * STEPS_PER_METRE;
    let round = if sign < 0.0 {
        steps.floor()
    } else {
        steps.ceil()
    } / STEPS_PER_METRE;
    let by = sign * (round - now);
    // Where the window is narrower than a step, the exact number has to do.
    if by <= most && works(by) {
        round
    } else {
        now + sign * least
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan;

    fn with_gap(more: f64) -> Plan {
        with(&plan::demo(), |features| {
            if let Feature::Jump(jump) = &mut features[8] {
                jump.gap += more;
            }
        })
        .expect("the demonstration has features")
    }

    /// What is suggested, done, lands clean.
    fn check(plan: &Plan) -> Vec<Suggestion> {
        let found = suggestions(plan, 0);
        for s in &found {
            println!("{s:?}");
            let changed = with(plan, |features| match (&mut features[s.feature], s.lever) {
                (Feature::Jump(jump), Lever::Gap) => jump.gap = s.then,
                (Feature::StartRamp(ramp), Lever::Platform) => ramp.platform_height = s.then,
                other => panic!("{other:?}"),
            })
            .expect("it has features");
            assert_eq!(how(&changed, 0, s.lip), Some(How::Clean));
        }
        found
    }

    #[test]
    fn a_gap_too_long_is_shortened_and_one_too_short_lengthened() {
        let long = check(&with_gap(0.9));
        assert!(
            long.iter().any(|s| s.lip == 2 && s.then < s.now),
            "{long:?}"
        );
        let short = check(&with_gap(-1.2));
        assert!(
            short.iter().any(|s| s.lip == 2 && s.then > s.now),
            "{short:?}"
        );
    }

    /// The demonstration from another start, with a first gap that cannot be shortened.
    fn from(platform_height: f64) -> Plan {
        with(&plan::demo(), |features| {
            if let Feature::StartRamp(ramp) = &mut features[0] {
                ramp.platform_height = platform_height;
            }
            if let Feature::Jump(jump) = &mut features[4] {
                jump.gap = LEAST_GAP;
            }
        })
        .expect("the demonstration has features")
    }

    #[test]
    fn nothing_taller_is_suggested_than_the_builder_wants() {
        let raised = |plan: &Plan| {
            let found = check(plan);
            let found = found.iter().find(|s| s.lever == Lever::Platform);
            found.map(|s| s.then)
        };
        let starts = [1.6, 1.4, 1.2, 1.0, 0.8].map(from);
        let (mut plan, then) = starts
            .into_iter()
            .find_map(|plan| raised(&plan).map(|then| (plan, then)))
            .expect("a higher start helps one of them");
        plan.yard.tallest = Some(then);
        assert!(raised(&plan).is_some_and(|other| other <= then));
        plan.yard.tallest = Some(then - 0.2);
        assert!(raised(&plan).is_none_or(|other| other <= then - 0.2));
    }

    #[test]
    fn no_gap_is_suggested_that_nobody_jumps() {
        let most = |s: &Suggestion| s.lever != Lever::Gap || s.then >= LEAST_GAP;
        for more in [-1.2, -0.9, 0.6, 1.2] {
            let plan = with(&with_gap(more), |features| {
                if let Feature::StartRamp(ramp) = &mut features[0] {
                    ramp.platform_height = 1.4;
                }
            });
            let found = suggestions(&plan.expect("it has features"), 0);
            println!("{found:?}");
            assert!(found.iter().all(most), "{found:?}");
        }
    }

    #[test]
    fn a_line_that_is_clean_needs_nothing() {
        assert_eq!(check(&plan::demo()), []);
    }
}
