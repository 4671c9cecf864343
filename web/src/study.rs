//! What is found out of a plan by riding it again and again: in the page's own simulator, and in the shed, which
//! also knows what test rides teach.

use crate::{asked, learnt, panic, to_page};
use sim::error::Fault;
use sim::plan::Plan;
use sim::{fit, judge, setup};
use wasm_bindgen::prelude::*;

/// Whether this simulator knows what test rides teach; what it never comes to is left out of what is fetched.
const LEARNS: bool = cfg!(any(feature = "shed", not(target_arch = "wasm32")));

/// One part of what can be found out of a plan by riding it again and again: `spreads`, `windows`,
/// `tolls`, `suggestions`, `missing`, `test_day` or `tolerances` (see [`sim::judge`]), or `fit`, what was learnt
/// from what was seen. Each takes as long as some tens of rides; but `planned`, what the planned ride shows of
/// what was seen, as long as one. Only the shed knows what was learnt, and what it leaves unknown: it studies a plan
/// that has anything seen.
///
/// # Errors
/// Every fault of the plan, as an array; that there is no such part, or that it is for the shed to tell.
#[wasm_bindgen]
pub fn study(plan: JsValue, part: &str) -> Result<JsValue, JsValue> {
    panic::tell_console();
    let plan: Plan = asked(plan)?;
    let faults = |faults: Vec<Fault>| to_page(&faults);
    if !LEARNS && !plan.seen.is_empty() && part != "planned" {
        return Err(JsValue::from_str("the shed studies test rides"));
    }
    Ok(match part {
        "spreads" => to_page(&spreads(&plan).map_err(faults)?),
        "windows" => to_page(&windows(&plan).map_err(faults)?),
        "tolls" => to_page(&judge::tolls(&plan, 0)),
        "suggestions" => to_page(&judge::suggestions(&plan, 0)),
        "missing" => to_page(&judge::missing(&plan, 0)),
        "test_day" => to_page(&judge::test_day(&plan, 0)),
        "tolerances" => to_page(&judge::tolerances(&plan, 0)),
        // From nothing seen nothing is learnt.
        "fit" if !LEARNS => JsValue::NULL,
        "fit" => to_page(&learnt::taught(&plan).map_err(faults)?),
        "planned" => to_page(&fit::planned(&plan, 0).map_err(faults)?),
        _ => return Err(JsValue::from_str("there is no such part")),
    })
}

fn spreads(plan: &Plan) -> Result<Vec<judge::Spread>, Vec<Fault>> {
    if LEARNS {
        return learnt::spreads(plan);
    }
    judge::spreads(plan, 0, &judge::Unknown::usual())
}

fn windows(plan: &Plan) -> Result<Vec<judge::Window>, Vec<Fault>> {
    let ridden = setup::ride_plan(plan, 0)?;
    let mount = setup::mount(setup::rider(plan, 0)?, &plan.weather);
    let rows = judge::jumps(&ridden.profile, &ridden.run);
    Ok(judge::windows(&ridden.profile, &mount, &rows))
}
