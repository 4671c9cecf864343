//! The whole job of a plan, for the page of sheets: the shed alone knows it.

use crate::{asked, panic, to_page};
use serde::Serialize;
use sim::build::job::{self, Job};
use sim::build::supplies::Supplies;
use sim::build::upkeep::{self, Difference};
use sim::error::Fault;
use sim::judge::{self, JumpRow};
use sim::plan::Plan;
use sim::profile::Profile;
use sim::setup;
use wasm_bindgen::prelude::*;

/// A line's job, and its jumps after a season.
#[derive(Serialize)]
struct Told<'a> {
    job: &'a Job,
    /// The jumps as the first rider rides them once every heap of dirt has settled; none where what is left cannot be
    /// built.
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

/// A line's job as it is worked out once, to be told and drawn.
#[wasm_bindgen]
pub struct Works {
    pub(crate) plan: Plan,
    pub(crate) profile: Profile,
    pub(crate) supplies: Supplies,
    pub(crate) job: Job,
}

impl Works {
    /// The job of a plan, with what there is to build with.
    pub(crate) fn of(plan: Plan, supplies: Supplies) -> Result<Self, Vec<Fault>> {
        let faults = supplies.validate();
        if !faults.is_empty() {
            return Err(faults);
        }
        let profile = Profile::build(&plan)?;
        let job = job::job(&plan, &profile, &supplies);
        Ok(Self {
            plan,
            profile,
            supplies,
            job,
        })
    }
}

#[wasm_bindgen]
impl Works {
    /// Works the job of a plan out, with what there is to build with.
    ///
    /// # Errors
    /// Every fault of the supplies, or of the plan, as an array.
    #[wasm_bindgen(constructor)]
    pub fn new(plan: JsValue, supplies: JsValue) -> Result<Works, JsValue> {
        panic::tell_console();
        let (plan, supplies) = (asked(plan)?, asked(supplies)?);
        Self::of(plan, supplies).map_err(|faults| to_page(&faults))
    }

    /// All of it as data: see [`Job`].
    pub fn told(&self) -> JsValue {
        let settled = upkeep::settled(&self.plan, self.job.settling);
        let ridden = setup::ride_plan(&settled, 0).ok();
        to_page(&Told {
            job: &self.job,
            settled: ridden.map(|ridden| judge::jumps(&ridden.profile, &ridden.run)),
        })
    }

    /// Readings of what was built, each a station and a height, m, against what was planned.
    ///
    /// # Errors
    /// Where the readings are no pairs of numbers.
    pub fn built(&self, readings: JsValue) -> Result<JsValue, JsValue> {
        let readings: Vec<[f64; 2]> = asked(readings)?;
        let all = upkeep::compare(&self.profile, &readings);
        let largest = upkeep::largest(&all);
        Ok(to_page(&Built { all, largest }))
    }
}
