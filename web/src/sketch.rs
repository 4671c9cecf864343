//! Drawings to build by, for the page of sheets: the shed alone draws them.

use crate::job::Works;
use crate::paint::colours::Colours;
use crate::paint::svg as pen;
use crate::scene::works::{self, Plate, Reader};
use crate::to_page;
use serde::Deserialize;
use serde_wasm_bindgen::from_value;
use sim::build::upkeep;
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
}

/// Why there is nothing to draw.
const NO_SUCH: &str = "there is no such sheet";

#[wasm_bindgen]
impl Works {
    /// The parts of the line's long section, as stations from and to, m.
    pub fn section_parts(&self) -> JsValue {
        to_page(&works::parts(&self.profile, &self.job.stakes))
    }

    /// A drawing as an SVG picture: see [`What`]. A tile and a curve are in full size.
    ///
    /// # Errors
    /// That the job has no such sheet.
    pub fn sketch(&self, what: JsValue, wants: JsValue) -> Result<String, JsValue> {
        let (what, wants): (What, Wants) = (from_value(what)?, from_value(wants)?);
        Ok(svg(self, what, &wants).ok_or(NO_SUCH)?)
    }
}

/// The picture; none where the job has no such sheet.
fn svg(works: &Works, what: What, wants: &Wants) -> Option<String> {
    let plate = plate(works, what, wants)?;
    let colours = Colours::plain();
    let Plate {
        sheet,
        labels,
        size,
        ..
    } = &plate;
    Some(match what {
        What::Tile { .. } | What::Curve { .. } => {
            pen::write_full_size(sheet, labels, *size, &colours)
        }
        _ => pen::write(sheet, labels, *size, &colours, ""),
    })
}

fn plate(works: &Works, what: What, wants: &Wants) -> Option<Plate> {
    let reader = Reader {
        system: wants.system,
        decimal: wants.decimal,
    };
    let Works {
        profile,
        supplies,
        job,
        ..
    } = works;
    let lip = |sheet: usize| job.lips.get(sheet);
    match what {
        What::Section { from, to } => {
            let ends = [
                profile.pieces.first()?.start.x,
                profile.pieces.last()?.end.x,
            ];
            let shown = [from.unwrap_or(ends[0]), to.unwrap_or(ends[1])];
            Some(works::section(profile, &job.stakes, shown, reader))
        }
        What::Lip { sheet } => Some(works::lip(lip(sheet)?, &supplies.of_lips(), reader)),
        What::Panels { sheet } => Some(works::panels(lip(sheet)?, &supplies.of_lips(), reader)),
        What::Tile { sheet, page } => works::tile(lip(sheet)?, page, pen::FULL_SIZE, reader),
        What::Curve { sheet } => works::curve(lip(sheet)?, pen::FULL_SIZE, reader),
        What::Cutting { sheet } => Some(works::cutting(&lip(sheet)?.cutting, reader)),
        What::Box { sheet } => {
            let sheet = job.boxes.get(sheet)?;
            works::walls(sheet, &supplies.of_boxes(), profile, reader)
        }
        What::Mounds { index } => {
            let boxed = job.dirt.boxed.get(index)?;
            works::mounds(boxed, &job.dirt.earth, profile, reader)
        }
        What::Ramp {} => {
            let (sheet, stock) = (job.ramp.as_ref()?, supplies.of_ramps());
            Some(works::ramp(sheet, &stock, profile, reader))
        }
        What::Built {} => {
            let all = upkeep::compare(profile, &wants.readings);
            works::built(profile, &all, reader)
        }
    }
}

#[cfg(test)]
mod tests;
