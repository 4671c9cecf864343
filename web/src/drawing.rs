//! The drawing on the page: the ride shown, the one before it, and the pen.

use crate::paint::{Pencil, svg};
use crate::scene::{Beside, Caption, Grip, Labels, Picture, Poster, Seen, Sheet, Strip, View};
use crate::{Riding, asked, to_page};
use glam::DVec2;
use js_sys::Float64Array;
use serde::{Deserialize, Serialize};
use serde_wasm_bindgen::from_value;
use sim::plan::Plan;
use sim::profile::Profile;
use sim::ride::Sample;
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
    grips: bool,
    before: bool,
    held: Option<[f64; 2]>,
    zoom: f64,
    still: bool,
}

/// Where a feature can be taken hold of, and what the view keeps in sight.
#[derive(Serialize)]
struct Hold {
    focus: [f64; 2],
    grips: Vec<Grip>,
}

/// The canvases on which a ride is drawn: from the side, and from the saddle.
#[wasm_bindgen]
pub struct Drawing {
    pencil: Pencil,
    saddle: Pencil,
    shown: Option<Picture>,
    before: Option<Picture>,
    against: Option<Picture>,
    ghosts: Vec<Picture>,
    labels: Labels,
    sheet: Sheet,
    strips: Vec<Strip>,
}

#[wasm_bindgen]
impl Drawing {
    /// Draws on two canvases, in the colours that their style gives as `--ground`, `--hatch` and so on.
    ///
    /// # Errors
    /// Where the browser gives no context to draw with.
    #[wasm_bindgen(constructor)]
    pub fn new(side: &HtmlCanvasElement, saddle: &HtmlCanvasElement) -> Result<Drawing, JsValue> {
        Ok(Drawing {
            pencil: Pencil::new(side)?,
            saddle: Pencil::new(saddle)?,
            shown: None,
            before: None,
            against: None,
            ghosts: Vec::new(),
            labels: Labels::default(),
            sheet: Sheet::default(),
            strips: Vec::new(),
        })
    }

    /// From now on this ride is shown, with what the page writes on it; the one shown so far is
    /// kept as the one before. Without a ride only the writing changes.
    ///
    /// # Errors
    /// Where the labels are none.
    pub fn show(&mut self, riding: Option<Riding>, labels: JsValue) -> Result<(), JsValue> {
        self.labels = from_value(labels)?;
        if let Some(riding) = riding {
            self.before = self.shown.replace(riding.into_picture());
            self.take_colours()?;
        }
        Ok(())
    }

    /// From now on these figures stand at the measures of the chosen feature.
    pub fn measure(&mut self, figures: Vec<String>) {
        self.labels.measure(figures);
    }

    /// Lays other ground, of a plan, under the rides shown until it is ridden itself.
    ///
    /// # Errors
    /// Every fault of the plan, as an array.
    pub fn lay(&mut self, plan: JsValue) -> Result<(), JsValue> {
        let (plan, profile) = ground(plan)?;
        if let Some(picture) = &mut self.shown {
            picture.lay(&plan, profile);
        }
        Ok(())
    }

    /// From now on what was ridden elsewhere is shown: a plan's riders' traces (see `Riding::traces`), in
    /// place of the ride shown so far.
    ///
    /// # Errors
    /// Every fault of the plan, as an array.
    pub fn show_traces(&mut self, plan: JsValue, traces: Vec<Float64Array>) -> Result<(), JsValue> {
        let (plan, profile) = ground(plan)?;
        let traces = traces.iter().map(|trace| {
            let values = trace.to_vec();
            let (samples, _) = values.as_chunks::<{ Sample::COUNT }>();
            samples.iter().map(|&s| Sample::from(s)).collect()
        });
        if let Some(picture) = Picture::of(&plan, profile, traces) {
            self.shown = Some(picture);
        }
        Ok(())
    }

    /// From now on another line's ride is shown pale under this one; without a ride, none.
    pub fn compare(&mut self, riding: Option<Riding>) {
        self.against = riding.map(Riding::into_picture);
    }

    /// From now on one more ride is shown pale, under the label of its place among them.
    pub fn add_ghost(&mut self, riding: Riding) {
        self.ghosts.push(riding.into_picture());
    }

    /// From now on no ghost is shown.
    pub fn clear_ghosts(&mut self) {
        self.ghosts.clear();
    }

    /// Draws one moment; gives the pixels to the metre.
    ///
    /// # Errors
    /// Where the page asks for something that is no look.
    pub fn paint(&mut self, look: JsValue) -> Result<f64, JsValue> {
        let look: Look = from_value(look)?;
        let Some(picture) = &self.shown else {
            return Ok(1.0);
        };
        let seen = look.seen();
        picture.strips(&seen, &mut self.strips);
        let beside = Beside {
            before: self.before.as_ref().filter(|_| look.before),
            against: self.against.as_ref(),
            ghosts: &self.ghosts,
        };
        picture.compose(&seen, &self.strips, beside, &self.labels, &mut self.sheet);
        self.pencil.draw(&self.sheet, &self.labels, seen.size);
        Ok(self.strips.first().map_or(1.0, |strip| strip.scale))
    }

    /// Draws one moment, s, as the rider sees it, on a canvas of some width and height, px.
    pub fn paint_saddle(&mut self, time: f64, width: f64, height: f64) {
        if let Some(picture) = &self.shown {
            let size = DVec2::new(width, height);
            picture.compose_saddle(time, size, &self.ghosts, &mut self.sheet);
            self.saddle.draw(&self.sheet, &self.labels, size);
        }
    }

    /// Takes the colours anew, as when day turns to night.
    ///
    /// # Errors
    /// Where the browser gives no style.
    pub fn take_colours(&mut self) -> Result<(), JsValue> {
        self.pencil.take_colours()?;
        self.saddle.take_colours()
    }

    /// The whole line with its speeds as an SVG picture of some width and height, px, in the colours of
    /// the canvas; with a title, and words `above` and `below` the drawing. Empty where nothing is drawn.
    pub fn svg(&self, width: f64, height: f64, title: &str, above: &str, below: &str) -> String {
        let Some(picture) = &self.shown else {
            return String::new();
        };
        let size = DVec2::new(width, height);
        let caption = Caption {
            title,
            above,
            below,
        };
        let Poster { sheet, labels } = Poster::new(picture, size, &self.labels, &caption);
        svg::write(&sheet, &labels, size, self.pencil.colours(), above)
    }

    /// Where a feature can be taken hold of on the drawing as it was last painted, at a moment, s.
    pub fn grips(&self, feature: usize, time: f64) -> JsValue {
        to_page(&self.shown.as_ref().map(|picture| Hold {
            focus: picture.focus(time).to_array(),
            grips: picture.grips(feature, &self.strips),
        }))
    }

    /// The feature at a place of the drawing as it was last painted, px.
    pub fn feature_at(&self, x: f64, y: f64) -> Option<usize> {
        let picture = self.shown.as_ref()?;
        picture.feature_at(DVec2::new(x, y), &self.strips)
    }
}

/// A plan and its ground; or its faults, as an array.
fn ground(plan: JsValue) -> Result<(Plan, Profile), JsValue> {
    let plan = asked(plan)?;
    let profile = Profile::build(&plan).map_err(|faults| to_page(&faults))?;
    Ok((plan, profile))
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
            grips: self.grips,
            held: self.held.map(DVec2::from_array),
            zoom: self.zoom,
            still: self.still,
        }
    }
}
