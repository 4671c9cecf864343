//! Drawings to build by, for the page of sheets: the shed alone draws them.

use crate::paint::colours::Colours;
use crate::paint::svg;
use crate::scene::works::{self, Plate, Reader};
use crate::{asked, panic, to_page};
use serde::Deserialize;
use serde_wasm_bindgen::from_value;
use sim::build::heap::Earth;
use sim::build::stakes;
use sim::build::supplies::Supplies;
use sim::build::{dirt, lip, ramp, upkeep, walls};
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
        #[serde(deserialize_with = "counted")]
        sheet: usize,
    },
    /// What its panels and skin are cut from: see [`works::panels`].
    Panels {
        /// Of which lip.
        #[serde(deserialize_with = "counted")]
        sheet: usize,
    },
    /// A page of its side panel in full size: see [`works::tile`].
    Tile {
        /// Of which lip.
        #[serde(deserialize_with = "counted")]
        sheet: usize,
        /// Which page of its tiling.
        #[serde(deserialize_with = "counted")]
        page: usize,
    },
    /// The whole side panel in full size: see [`works::curve`].
    Curve {
        /// Of which lip.
        #[serde(deserialize_with = "counted")]
        sheet: usize,
    },
    /// How its timber is cut: see [`works::cutting`].
    Cutting {
        /// Of which lip.
        #[serde(deserialize_with = "counted")]
        sheet: usize,
    },
    /// A boxed landing: see [`works::walls`].
    Box {
        /// Which.
        #[serde(deserialize_with = "counted")]
        sheet: usize,
    },
    /// A landing in walls and as a mound: see [`works::mounds`].
    Mounds {
        /// Which of those in the job's dirt.
        #[serde(deserialize_with = "counted")]
        index: usize,
    },
    /// The start ramp: see [`works::ramp`].
    Ramp {},
    /// What was built over what was planned: see [`works::built`].
    Built {},
}

/// A count that comes as any number of the page's: where a tag is told among the fields, they are read before it is
/// known what they are to be.
fn counted<'de, D: serde::Deserializer<'de>>(from: D) -> Result<usize, D::Error> {
    f64::deserialize(from).map(|number| number as usize)
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
    let (what, wants): (What, Wants) = (from_value(what)?, from_value(wants)?);
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
        let Plate {
            sheet,
            labels,
            size,
            ..
        } = &plate;
        Some(match what {
            What::Tile { .. } | What::Curve { .. } => {
                svg::write_full_size(sheet, labels, *size, &colours)
            }
            _ => svg::write(sheet, labels, *size, &colours, ""),
        })
    }

    fn plate(&self, what: What) -> Option<Plate> {
        let (plan, profile, reader) = (self.plan, self.profile, self.reader());
        let earth = Earth::of(plan.yard.soil);
        match what {
            What::Section { from, to } => {
                let stakes = stakes::stakes(plan, profile, &earth);
                let ends = [
                    profile.pieces.first()?.start.x,
                    profile.pieces.last()?.end.x,
                ];
                let shown = [from.unwrap_or(ends[0]), to.unwrap_or(ends[1])];
                Some(works::section(profile, &stakes, shown, reader))
            }
            What::Lip { sheet }
            | What::Panels { sheet }
            | What::Tile { sheet, .. }
            | What::Curve { sheet }
            | What::Cutting { sheet } => self.of_lip(what, sheet),
            What::Box { sheet } => {
                let stock = self.supplies.of_boxes();
                let boxes = walls::boxes(plan, profile, &stock);
                works::walls(boxes.get(sheet)?, &stock, profile, reader)
            }
            What::Mounds { index } => {
                let boxed = dirt::boxed(plan, profile, &earth);
                works::mounds(boxed.get(index)?, &earth, profile, reader)
            }
            What::Ramp {} => {
                let stock = self.supplies.of_ramps();
                let sheet = ramp::start_ramp(plan, profile, &stock)?;
                Some(works::ramp(&sheet, &stock, profile, reader))
            }
            What::Built {} => {
                let all = upkeep::compare(profile, &self.wants.readings);
                works::built(profile, &all, reader)
            }
        }
    }

    fn of_lip(&self, what: What, sheet: usize) -> Option<Plate> {
        let stock = self.supplies.of_lips();
        let lips = lip::lips(self.plan, self.profile, &stock);
        let (lip, reader) = (lips.get(sheet)?, self.reader());
        match what {
            What::Lip { .. } => Some(works::lip(lip, &stock, reader)),
            What::Panels { .. } => Some(works::panels(lip, &stock, reader)),
            What::Tile { page, .. } => works::tile(lip, page, svg::FULL_SIZE, reader),
            What::Curve { .. } => works::curve(lip, svg::FULL_SIZE, reader),
            What::Cutting { .. } => Some(works::cutting(&lip.cutting, reader)),
            _ => None,
        }
    }

    fn reader(&self) -> Reader {
        Reader {
            system: self.wants.system,
            decimal: self.wants.decimal,
        }
    }
}

#[cfg(test)]
mod tests;
