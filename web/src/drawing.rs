//! The drawing on the page: the ride shown, the one before it, and the pen.

use crate::Riding;
use crate::convert::from_page;
use crate::paint::Pencil;
use crate::scene::{Labels, Picture, Seen, Sheet, Strip, View};
use glam::DVec2;
use serde::Deserialize;
use wasm_bindgen::prelude::*;
use web_sys::HtmlCanvasElement;

/// What the page asks to see.
#[derive(Deserialize)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
struct Look {
    time: f64,
    width: f64,
    height: f64,
    whole: bool,
    chosen: Option<usize>,
    before: bool,
    night: bool,
}

/// A canvas on which a ride is drawn.
#[wasm_bindgen]
pub struct Drawing {
    pencil: Pencil,
    shown: Option<Picture>,
    before: Option<Picture>,
    labels: Labels,
    sheet: Sheet,
    strips: Vec<Strip>,
    night: bool,
}

#[wasm_bindgen]
impl Drawing {
    /// Draws on a canvas, in the colours that its style gives as `--ground`, `--hatch` and so on.
    ///
    /// # Errors
    /// Where the browser gives no context to draw with.
    #[wasm_bindgen(constructor)]
    pub fn new(canvas: &HtmlCanvasElement) -> Result<Drawing, JsValue> {
        Ok(Drawing {
            pencil: Pencil::new(canvas)?,
            shown: None,
            before: None,
            labels: Labels::default(),
            sheet: Sheet::default(),
            strips: Vec::new(),
            night: false,
        })
    }

    /// From now on this ride is shown, with what the page writes on it; the one shown so far is
    /// kept as the one before. Without a ride only the writing changes.
    ///
    /// # Errors
    /// Where the labels are none.
    pub fn show(&mut self, riding: Option<Riding>, labels: JsValue) -> Result<(), JsValue> {
        self.labels = from_page(&labels)?;
        if let Some(riding) = riding {
            self.before = self.shown.replace(riding.into_picture());
        }
        self.pencil.take_colours()
    }

    /// Draws one moment; gives the pixels to the metre.
    ///
    /// # Errors
    /// Where the page asks for something that is no look.
    pub fn paint(&mut self, look: JsValue) -> Result<f64, JsValue> {
        let look: Look = from_page(&look)?;
        if look.night != self.night {
            self.night = look.night;
            self.pencil.take_colours()?;
        }
        let Some(picture) = &self.shown else {
            return Ok(1.0);
        };
        let seen = look.seen();
        picture.strips(&seen, &mut self.strips);
        let before = self.before.as_ref().filter(|_| look.before);
        picture.compose(&seen, &self.strips, before, &self.labels, &mut self.sheet);
        self.pencil.draw(&self.sheet, &self.labels, seen.size);
        Ok(self.strips.first().map_or(1.0, |strip| strip.scale))
    }

    /// The feature at a place of the drawing as it was last painted, px.
    pub fn feature_at(&self, x: f64, y: f64) -> Option<usize> {
        let picture = self.shown.as_ref()?;
        picture.feature_at(DVec2::new(x, y), &self.strips)
    }
}

impl Look {
    fn seen(&self) -> Seen {
        Seen {
            time: self.time,
            size: DVec2::new(self.width, self.height),
            view: if self.whole {
                View::Whole
            } else {
                View::Follow
            },
            chosen: self.chosen,
        }
    }
}
