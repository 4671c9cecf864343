//! Drawings to build by, for the page of sheets: the shed alone draws them.

use crate::paint::colours::Colours;
use crate::paint::svg;
use crate::scene::works::{self, Plate, Reader};
use crate::{asked, panic, to_page};
use serde::Deserialize;
use sim::build::heap::Earth;
use sim::build::lip;
use sim::build::stakes;
use sim::build::supplies::Supplies;
use sim::plan::Plan;
use sim::profile::Profile;
use sim::units::System;
use wasm_bindgen::prelude::*;

/// What is drawn. `sheet` and `index` count from 0 in the lists of the job.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum What {
    /// The line from one station to another, m; without them all of it: see [`works::section`].
    Section {
        /// From where.
        from: Option<f64>,
        /// To where.
        to: Option<f64>,
    },
    /// A lip: see [`works::lip`].
    Lip {
        /// Which.
        sheet: usize,
    },
    /// What its panels and skin are cut from: see [`works::panels`].
    Panels {
        /// Of which lip.
        sheet: usize,
    },
}

/// How it is drawn.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Wants {
    system: System,
    decimal: char,
    /// What was read of the finished line: stations and heights, m.
    #[serde(default)]
    readings: Vec<[f64; 2]>,
    #[serde(default, rename = "tolerances")]
    _tolerances: Option<()>,
}

/// Why there is nothing to draw.
const NO_SUCH: &str = "there is no such sheet";

/// The parts of a line's long section, as stations from and to, m.
///
/// # Errors
/// Every fault of the plan, as an array.
#[wasm_bindgen]
pub fn section_parts(plan: JsValue) -> Result<JsValue, JsValue> {
    panic::tell_console();
    let plan: Plan = asked(plan)?;
    let profile = Profile::build(&plan).map_err(|faults| to_page(&faults))?;
    let stakes = stakes::stakes(&plan, &profile, &Earth::of(plan.yard.soil));
    Ok(to_page(&works::parts(&profile, &stakes)))
}

/// A drawing as an SVG picture: see [`What`]. A tile and a curve are in full size.
///
/// # Errors
/// Every fault of the plan, or of the supplies, as an array; or that the job has no such sheet.
#[wasm_bindgen]
pub fn sketch(
    plan: JsValue,
    supplies: JsValue,
    what: JsValue,
    wants: JsValue,
) -> Result<String, JsValue> {
    panic::tell_console();
    let plan: Plan = asked(plan)?;
    let supplies = crate::job::supplied(supplies)?;
    let (what, wants): (What, Wants) = (asked(what)?, asked(wants)?);
    let profile = Profile::build(&plan).map_err(|faults| to_page(&faults))?;
    let asked = Asked {
        plan: &plan,
        profile: &profile,
        supplies: &supplies,
        wants: &wants,
    };
    Ok(asked.svg(what).ok_or(NO_SUCH)?)
}

/// Everything that a drawing is made from.
pub struct Asked<'a> {
    plan: &'a Plan,
    profile: &'a Profile,
    supplies: &'a Supplies,
    wants: &'a Wants,
}

impl Asked<'_> {
    /// The picture; none where the job has no such sheet.
    fn svg(&self, what: What) -> Option<String> {
        let plate = self.plate(what)?;
        let colours = Colours::plain();
        Some(svg::write(
            &plate.sheet,
            &plate.labels,
            plate.size,
            &colours,
            "",
        ))
    }

    fn plate(&self, what: What) -> Option<Plate> {
        let reader = Reader {
            system: self.wants.system,
            decimal: self.wants.decimal,
        };
        let stock = self.supplies.of_lips();
        let lip = |sheet: usize| {
            let mut lips = lip::lips(self.plan, self.profile, &stock);
            (sheet < lips.len()).then(|| lips.swap_remove(sheet))
        };
        match what {
            What::Section { from, to } => {
                let stakes =
                    stakes::stakes(self.plan, self.profile, &Earth::of(self.plan.yard.soil));
                let ends = [
                    self.profile.pieces.first()?.start.x,
                    self.profile.pieces.last()?.end.x,
                ];
                let shown = [from.unwrap_or(ends[0]), to.unwrap_or(ends[1])];
                Some(works::section(self.profile, &stakes, shown, reader))
            }
            What::Lip { sheet } => Some(works::lip(&lip(sheet)?, &stock, reader)),
            What::Panels { sheet } => Some(works::panels(&lip(sheet)?, &stock, reader)),
        }
    }
}

#[cfg(test)]
mod tests;
