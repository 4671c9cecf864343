//! The page's own simulator: the functions that the page calls, and nothing else.

use crate::qr::Code;
use crate::story::Story;
use crate::{asked, chance, panic, scene, to_page};
use js_sys::{Float64Array, JSON, Reflect};
use serde::Serialize;
use serde_wasm_bindgen::from_value;
use sim::constants::MODEL_VERSION;
use sim::error::{Fault, Quantity};
use sim::link::LinkError;
use sim::plan::{self, Plan};
use sim::presets::{self, AGES, Preset, Wheel};
use sim::ride::Sample;
use sim::units::{self, System};
use sim::{json, link, setup};
use wasm_bindgen::prelude::*;

/// A plan and what there is to say of the link it came in.
#[derive(Serialize)]
struct Opened {
    plan: Plan,
    /// Why the link is no good, where it is not.
    trouble: Option<LinkError>,
    /// What is wrong with the plan in it, where it cannot be ridden.
    fault: Option<Fault>,
    /// The model that the link was made with, where it is another than this one.
    other_model: Option<u16>,
}

/// A quantity as the reader sees it.
#[derive(Serialize)]
struct Written {
    /// Where it is typed.
    field: String,
    /// The number alone, for another program.
    plain: String,
    /// The unit of that.
    unit: &'static str,
    /// Difference between two neighbouring values, in the plan's unit.
    step: f64,
}

/// What a rider can be made from, and the one that was made.
#[derive(Serialize)]
struct Offer {
    /// Youngest and oldest age, years; the oldest stands for every adult.
    ages: [u32; 2],
    /// Every size of wheel, the smallest first.
    wheels: [Wheel; Wheel::ALL.len()],
    preset: Preset,
}

/// The compiled simulator itself, to be handed to a worker, which then need not compile it again.
#[wasm_bindgen]
pub fn compiled() -> JsValue {
    wasm_bindgen::module()
}

/// The demonstration line, as a plan.
///
/// # Errors
/// Where it cannot be read.
#[wasm_bindgen]
pub fn demo() -> Result<JsValue, JsValue> {
    panic::tell_console();
    open_file(plan::EXAMPLES[0])
}

/// Opens the plan in the part of an address after `#`. A link that is damaged, or holds a plan that cannot be
/// ridden, opens the demonstration line, and says why.
///
/// # Errors
/// Where the demonstration line itself cannot be read.
#[wasm_bindgen]
pub fn open(fragment: &str) -> Result<JsValue, JsValue> {
    panic::tell_console();
    let (decoded, trouble) = match link::decode(fragment.trim_start_matches('#')) {
        Ok(decoded) => (Some(decoded), None),
        Err(error) => (None, Some(error)),
    };
    let fault = decoded
        .as_ref()
        .and_then(|d| d.plan.validate().into_iter().next());
    let sound = decoded.filter(|_| fault.is_none());
    let made = sound.as_ref().map(|d| d.model_version);
    let opened = Opened {
        plan: sound.map_or_else(|| plan_in(plan::EXAMPLES[0]), |d| Ok(d.plan))?,
        trouble,
        fault,
        other_model: made.filter(|&made| made != MODEL_VERSION),
    };
    Ok(to_page(&opened))
}

/// The plan in a plan file, with all that the file leaves open. It may have faults, but none that nobody could mend on
/// the page.
///
/// # Errors
/// The first fault of the file, as an array.
#[wasm_bindgen]
pub fn open_file(text: &str) -> Result<JsValue, JsValue> {
    let plan = plan_in(text)?;
    match plan.beyond_mending() {
        Some(fault) => Err(to_page(&[fault])),
        None => Ok(to_page(&plan)),
    }
}

/// The part of an address after `#` that holds a plan.
///
/// # Errors
/// The faults of a plan that cannot be read, as an array.
#[wasm_bindgen]
pub fn link_to(plan: JsValue) -> Result<String, JsValue> {
    Ok(link::encode(&asked(plan)?))
}

/// A text as a QR code: see `Code` in `qr.rs`.
///
/// # Errors
/// That the text is longer than any code can hold.
#[wasm_bindgen]
pub fn qr(text: &str) -> Result<JsValue, JsValue> {
    let code = Code::of(text).ok_or("too long for a code")?;
    Ok(to_page(&code))
}

/// The rides of a plan's riders, with all that is told and drawn of them.
#[wasm_bindgen]
pub struct Riding {
    picture: scene::Picture,
    story: Story,
}

/// Rides a plan. The first riders ride, at most so many; without a number, all.
///
/// # Errors
/// Every fault of the plan, as an array.
#[wasm_bindgen]
pub fn ride(plan: JsValue, most: Option<usize>) -> Result<Riding, JsValue> {
    let plan: Plan = asked(plan)?;
    let rides: Result<Vec<_>, _> = (0..plan.riders.len().min(most.unwrap_or(usize::MAX)))
        .map(|rider| setup::ride_plan(&plan, rider))
        .collect();
    let rides = rides.map_err(|faults| to_page(&faults))?;
    let story = Story::of(&plan, &rides).ok_or("nobody rides")?;
    let picture = scene::Picture::new(&plan, rides).ok_or("nobody rides")?;
    Ok(Riding { picture, story })
}

/// A seed drawn by chance.
///
/// # Errors
/// Where the browser has no source of chance.
#[wasm_bindgen]
pub fn draw_seed() -> Result<u32, JsValue> {
    chance::seed().map_err(|error| error.to_string().into())
}

/// A first line from four answers: see [`sim::draft::Answers`]; with a seed of its own.
///
/// # Errors
/// What is wrong with the answers, as an array of faults.
#[wasm_bindgen]
pub fn draft(answers: JsValue) -> Result<JsValue, JsValue> {
    let plan = sim::draft::draft(&asked(answers)?).map_err(|faults| to_page(&faults))?;
    let seed = draw_seed()?;
    Ok(to_page(&Plan { seed, ..plan }))
}

/// The lines to start from, as plans.
///
/// # Errors
/// Where one of them cannot be read.
#[wasm_bindgen]
pub fn examples() -> Result<JsValue, JsValue> {
    let plans: Result<Vec<_>, _> = plan::EXAMPLES.into_iter().map(plan_in).collect();
    Ok(to_page(&plans?))
}

/// Makes a rider on a bike from an age and a size of wheel: see [`sim::presets::Choice`].
///
/// # Errors
/// The fault of a choice that nothing can be made from, as an array.
#[wasm_bindgen]
pub fn preset(choice: JsValue) -> Result<JsValue, JsValue> {
    let preset = presets::preset(&asked(choice)?).map_err(|fault| to_page(&[fault]))?;
    Ok(to_page(&Offer {
        ages: [*AGES.start(), *AGES.end()],
        wheels: Wheel::ALL,
        preset,
    }))
}

/// The plan in a plan file. The browser reads the text, so that no reader of JSON has to be fetched.
///
/// # Errors
/// The first fault of the file, as an array.
fn plan_in(text: &str) -> Result<Plan, JsValue> {
    let parsed = JSON::parse(text).map_err(|error| {
        let why = error.dyn_ref::<js_sys::Error>();
        let why = why.map_or_else(String::new, |error| error.message().into());
        to_page(&[json::no_json(&why)])
    })?;
    json::once(text).map_err(|fault| to_page(&[fault]))?;
    asked(parsed)
}

#[wasm_bindgen]
impl Riding {
    /// What the page tells of the ride: see `Story` in `story.rs`, with the trace as one array of numbers.
    pub fn story(&self) -> JsValue {
        let story = to_page(&self.story);
        let trace = Float64Array::from(self.story.trace.as_slice());
        // Setting a property of a plain object that was just made cannot fail.
        let _ = Reflect::set(&story, &"trace".into(), &trace);
        story
    }
}

#[wasm_bindgen]
impl Riding {
    /// The traces of all riders, sample by sample, each sample's values in the order of [`Sample`].
    pub fn traces(&self) -> Vec<Float64Array> {
        let flat =
            |trace: &[Sample]| -> Vec<f64> { trace.iter().flat_map(|s| s.values()).collect() };
        let traces = self.picture.traces();
        traces
            .map(|t| Float64Array::from(flat(t).as_slice()))
            .collect()
    }
}

impl Riding {
    pub(crate) fn into_picture(self) -> scene::Picture {
        self.picture
    }
}

/// Reads what was typed for a quantity: the number in the plan's own unit.
///
/// # Errors
/// What is wrong with it: see [`units::UnitError`].
#[wasm_bindgen]
pub fn read(text: &str, quantity: JsValue, system: JsValue) -> Result<f64, JsValue> {
    let (quantity, system): (Quantity, System) = (from_value(quantity)?, from_value(system)?);
    units::parse(text, quantity, system).map_err(|error| to_page(&error))
}

/// Reads two columns of lengths, as pasted from a spreadsheet, m, row by row: see [`units::pairs`].
///
/// # Errors
/// What is wrong with each row that cannot be read, as an array: see [`units::RowError`].
#[wasm_bindgen]
pub fn readings(text: &str, system: JsValue) -> Result<Vec<f64>, JsValue> {
    let pairs = units::pairs(text, from_value(system)?).map_err(|rows| to_page(&rows))?;
    Ok(pairs.into_iter().flat_map(<[f64; 2]>::from).collect())
}

/// Writes a number of a plan as it is shown, in the reader's units.
///
/// # Errors
/// Where the quantity or the system is unknown.
#[wasm_bindgen]
pub fn show(value: f64, quantity: JsValue, system: JsValue) -> Result<String, JsValue> {
    Ok(units::format(
        value,
        from_value(quantity)?,
        from_value(system)?,
    ))
}

/// Writes a number of a plan in the reader's units in all other ways: as typed, alone, and the step between
/// two values.
///
/// # Errors
/// Where the quantity or the system is unknown.
#[wasm_bindgen]
pub fn write(value: f64, quantity: JsValue, system: JsValue) -> Result<JsValue, JsValue> {
    let (quantity, system): (Quantity, System) = (from_value(quantity)?, from_value(system)?);
    Ok(to_page(&Written {
        field: units::edit(value, quantity, system),
        plain: units::plain(value, quantity, system),
        unit: units::usual_unit(quantity, system),
        step: units::step(quantity, system),
    }))
}
