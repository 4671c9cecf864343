//! The whole job of a plan, for the page of sheets: the shed alone knows it.

use crate::{asked, panic, to_page};
use serde::Serialize;
use sim::build::job::{self, Job};
use sim::build::supplies::Supplies;
use sim::build::upkeep::{self, Difference};
use sim::judge::{self, JumpRow};
use sim::plan::Plan;
use sim::profile::Profile;
use sim::setup;
use wasm_bindgen::prelude::*;

/// A line's job, and its jumps as planned and after a season.
#[derive(Serialize)]
struct Worked {
    job: Job,
    /// The jumps as the first rider rides them.
    planned: Vec<JumpRow>,
    /// The same once every heap of dirt has settled; none where what is left cannot be built.
    settled: Option<Vec<JumpRow>>,
}

/// What was built against what was planned.
#[derive(Serialize)]
struct Built {
    /// Every reading.
    all: Vec<Difference>,
    /// Of each feature the one that is farthest off.
    largest: Vec<Difference>,
}

/// What there usually is to build with.
#[wasm_bindgen]
pub fn usual_supplies() -> JsValue {
    to_page(&Supplies::default())
}

/// The whole job of a plan, with what there is to build with: see [`Job`].
///
/// # Errors
/// Every fault of the plan, or of the supplies, as an array.
#[wasm_bindgen]
pub fn job(plan: JsValue, supplies: JsValue) -> Result<JsValue, JsValue> {
    panic::tell_console();
    let plan: Plan = asked(plan)?;
    let supplies = supplied(supplies)?;
    let profile = Profile::build(&plan).map_err(|faults| to_page(&faults))?;
    let job = job::job(&plan, &profile, &supplies);
    let settled = upkeep::settled(&plan, job.settling);
    let worked = Worked {
        planned: rows(&plan).map_err(|faults| to_page(&faults))?,
        settled: rows(&settled).ok(),
        job,
    };
    Ok(to_page(&worked))
}

pub(crate) fn supplied(supplies: JsValue) -> Result<Supplies, JsValue> {
    let supplies: Supplies = asked(supplies)?;
    let faults = supplies.validate();
    if faults.is_empty() {
        Ok(supplies)
    } else {
        Err(to_page(&faults))
    }
}

fn rows(plan: &Plan) -> Result<Vec<JumpRow>, Vec<sim::error::Fault>> {
    let ridden = setup::ride_plan(plan, 0)?;
    Ok(judge::jumps(&ridden.profile, &ridden.run))
}

/// Readings of what was built, each a station and a height, m, against what was planned.
///
/// # Errors
/// Every fault of the plan, as an array.
#[wasm_bindgen]
pub fn built(plan: JsValue, readings: JsValue) -> Result<JsValue, JsValue> {
    panic::tell_console();
    let plan: Plan = asked(plan)?;
    let readings: Vec<[f64; 2]> = asked(readings)?;
    let profile = Profile::build(&plan).map_err(|faults| to_page(&faults))?;
    let all = upkeep::compare(&profile, &readings);
    let largest = upkeep::largest(&all);
    Ok(to_page(&Built { all, largest }))
}
