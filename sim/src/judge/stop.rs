//! Whether the rider comes to a stand before the line ends, and how much run-out is missing if not.

use super::change::{smallest, with};
use crate::num;
use crate::plan::{Feature, Plan, RunOut, Surface};
use crate::ride::{EventKind, Outcome, Run};
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

/// How a run ends on a line of some length, ridden on a bike of some reach: half the wheelbase and a wheel's
/// radius, all m.
pub fn ending(run: &Run, length: f64, reach: f64) -> Ending {
    if run.outcome != Outcome::Finished {
        return Ending::Never;
    }
    let last = run.events.iter().rev().find_map(|e| match e.kind {
        EventKind::Stopped => Some(Ending::Stands {
            at: e.x,
            left: length - e.x - reach,
        }),
        EventKind::EndOfLine { speed } => Some(Ending::Leaves { speed }),
        _ => None,
    });
    last.unwrap_or(Ending::Never)
}

/// How much longer the run-out has to be for the rider to stand before its end, m, in steps of half a metre;
/// `None` where the rider stands as planned or never comes there, where 40 m more do not do, and on a surveyed
/// line.
pub fn missing(plan: &Plan, rider: usize) -> Option<f64> {
    let ends = |plan: &Plan| -> Option<Ending> {
        let ridden = ride_plan(plan, rider).ok()?;
        let length = ridden.profile.pieces.last()?.end.x;
        Some(ending(&ridden.run, length, 0.0))
    };
    if !matches!(ends(plan)?, Ending::Leaves { .. }) {
        return None;
    }
    let stands = |by: f64| {
        let longer = longer(plan, by).and_then(|plan| ends(&plan));
        matches!(longer, Some(Ending::Stands { .. }))
    };
    let least = smallest(MOST_LONGER, 10, stands)?;
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
    plan.yard.length = num::min(plan.yard.length + by, 500.0);
    Some(plan)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::{self, Line};

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

    fn ends(plan: &Plan) -> Ending {
        let ridden = ride_plan(plan, 0).expect("it can be ridden");
        let length = ridden.profile.pieces.last().expect("there is ground").end.x;
        ending(&ridden.run, length, 0.5)
    }

    #[test]
    fn the_demonstration_stops() {
        for rider in 0..2 {
            let ridden = ride_plan(&plan::demo(), rider).expect("it can be ridden");
            let length = ridden.profile.pieces.last().expect("there is ground").end.x;
            let ending = ending(&ridden.run, length, 0.5);
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
                matches!(ends(&plan), Ending::Leaves { speed } if speed > 2.0),
                "{length:?}"
            );
            let by = missing(&plan, 0).expect("it can be made longer");
            assert!((by / STEP).fract() == 0.0 && by > 0.0, "{by}");
            let total = length.unwrap_or(0.0) + by;
            assert!(
                matches!(ends(&with_run_out(Some(total))), Ending::Stands { .. }),
                "{total}"
            );
            // No more is asked for than it takes, but for the step that somebody paces.
            let less = with_run_out(Some(total - 2.0 * STEP));
            assert!(matches!(ends(&less), Ending::Leaves { .. }), "{total}");
        }
    }
}
