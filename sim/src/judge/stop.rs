//! Whether the rider comes to a stand before the line ends, and how much run-out is missing if not.

use super::change::{smallest, with};
use crate::num;
use crate::plan::{Feature, LONGEST_YARD, Plan, RunOut, Surface};
use crate::profile::Profile;
use crate::ride::{EventKind, Mount, Outcome, Run};
use crate::setup::ride_plan;
use serde::Serialize;

/// Most run-out that is looked for beyond what is planned, m.
const MOST_LONGER: f64 = 40.0;

/// Run-out is given in steps that somebody would pace, m.
const STEP: f64 = 0.5;

/// How a ride ends behind its last feature.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "how", rename_all = "snake_case")]
pub enum Ending {
    /// At a stand, with so much of the line left, m.
    Stands {
        /// Place of the bike's middle along the line, m.
        at: f64,
        /// From the front wheel's foremost point to the line's end, m.
        left: f64,
    },
    /// Over the line's end, still rolling.
    Leaves {
        /// Speed there, m/s.
        speed: f64,
    },
    /// Before its end: a crash, or rolled back.
    Never,
}

/// How a run on a profile ends.
pub fn ending(profile: &Profile, m: &Mount, run: &Run) -> Ending {
    if run.outcome != Outcome::Finished {
        return Ending::Never;
    }
    let end = profile.pieces.last().map_or(0.0, |p| p.end.x);
    let last = run.events.iter().rev().find_map(|e| match e.kind {
        EventKind::Stopped => Some(Ending::Stands {
            at: e.x,
            left: end - e.x - 0.5 * m.wheelbase - m.tyre.radius,
        }),
        EventKind::EndOfLine { speed } => Some(Ending::Leaves { speed }),
        _ => None,
    });
    last.unwrap_or(Ending::Never)
}

/// Whether the rider of a run comes to a stand before the line ends.
pub fn stands(run: &Run) -> bool {
    run.events.iter().any(|e| e.kind == EventKind::Stopped)
}

/// How much longer the run-out has to be for the rider to stand before its end, m, in steps of half a metre;
/// `None` where the rider stands as planned or never comes there, where 40 m more do not do, and on a surveyed
/// line.
pub fn missing(plan: &Plan, rider: usize) -> Option<f64> {
    let run = |plan: &Plan| Some(ride_plan(plan, rider).ok()?.run);
    let planned = run(plan)?;
    if planned.outcome != Outcome::Finished || stands(&planned) {
        return None;
    }
    let longer = |by: f64| longer(plan, by).and_then(|plan| run(&plan));
    let enough = |by: f64| longer(by).is_some_and(|run| stands(&run));
    let least = smallest(MOST_LONGER, 10, enough)?;
    Some(STEP * (least / STEP - 1e-9).ceil())
}

/// The plan with so much more run-out behind its end, in a yard as much longer.
fn longer(plan: &Plan, by: f64) -> Option<Plan> {
    let mut plan = with(plan, |features| match features.last_mut() {
        Some(Feature::RunOut(run_out)) => run_out.length += by,
        _ => features.push(Feature::RunOut(RunOut {
            length: by,
            surface: Surface::Packed,
        })),
    })?;
    plan.yard.length = num::min(plan.yard.length + by, LONGEST_YARD);
    Some(plan)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::{self, Line};
    use crate::setup;

    /// The demonstration with a run-out of another length, or with none.
    fn with_run_out(length: Option<f64>) -> Plan {
        let mut plan = plan::demo();
        let Line::Features(features) = &mut plan.line else {
            panic!("the demonstration has features");
        };
        features.retain(|f| !matches!(f, Feature::RunOut(_)));
        features.extend(length.map(|length| {
            Feature::RunOut(RunOut {
                length,
                surface: Surface::Packed,
            })
        }));
        plan.yard.length += 20.0;
        plan
    }

    fn ends(plan: &Plan, rider: usize) -> Ending {
        let ridden = ride_plan(plan, rider).expect("it can be ridden");
        let m = setup::mount(&plan.riders[rider], &plan.weather);
        ending(&ridden.profile, &m, &ridden.run)
    }

    #[test]
    fn the_demonstration_stops() {
        for rider in 0..2 {
            let ending = ends(&plan::demo(), rider);
            assert!(
                matches!(ending, Ending::Stands { left, .. } if left > 0.0),
                "{ending:?}"
            );
            assert_eq!(missing(&plan::demo(), rider), None);
        }
    }

    #[test]
    fn who_cannot_stop_is_told_how_much_is_missing() {
        for length in [None, Some(1.0), Some(4.0)] {
            let plan = with_run_out(length);
            assert!(
                matches!(ends(&plan, 0), Ending::Leaves { speed } if speed > 2.0),
                "{length:?}"
            );
            let by = missing(&plan, 0).expect("it can be made longer");
            assert!((by / STEP).fract() == 0.0 && by > 0.0, "{by}");
            let total = length.unwrap_or(0.0) + by;
            assert!(
                matches!(ends(&with_run_out(Some(total)), 0), Ending::Stands { .. }),
                "{total}"
            );
            // No more is asked for than it takes, but for the step that somebody paces.
            let less = with_run_out(Some(total - 2.0 * STEP));
            assert!(matches!(ends(&less, 0), Ending::Leaves { .. }), "{total}");
        }
    }
}
