//! What test rides teach.

use serde::Serialize;
use sim::error::Fault;
use sim::plan::Plan;
use sim::{fit, judge};

/// What a test ride teaches.
#[derive(Serialize)]
pub struct Taught {
    fit: fit::Fit,
    /// The plan with it.
    plan: Plan,
    /// What may become of every jump then, where there is anything that the plan has not yet.
    ahead: Option<Vec<judge::Spread>>,
}

/// What the first rider's test rides teach, where there are any.
pub fn taught(plan: &Plan) -> Result<Option<Taught>, Vec<Fault>> {
    let Some(fit) = fit::fit(plan, 0)? else {
        return Ok(None);
    };
    let then = fit::apply(plan, &fit);
    let ahead = (then.seen != plan.seen).then(|| spreads(&then));
    Ok(Some(Taught {
        ahead: ahead.transpose()?,
        plan: then,
        fit,
    }))
}

/// What may become of every jump, with what is left unknown once the plan has what was taught.
pub fn spreads(plan: &Plan) -> Result<Vec<judge::Spread>, Vec<Fault>> {
    judge::spreads(plan, 0, &fit::left(plan, 0)?)
}
