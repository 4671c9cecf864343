//! The pens: this one draws on a canvas, the other writes a picture of its own.

pub mod colours;
pub mod svg;

use crate::scene::{Align, Ink, Labels, Mark, Sheet};
use colours::Colours;
use glam::DVec2;
use sim::units::decimals;
use wasm_bindgen::prelude::*;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

/// Dashes and gaps of a broken line, px.
const DASHES: [f64; 2] = [5.0, 5.0];
/// Width of the edge of paper left around writing, px.
const HALO: f64 = 5.0;

/// Lines up to this width have plain ends, px.
const THIN: f64 = 2.5;

/// What is set already, so far as a sheet is drawn.
#[derive(Default)]
struct Held {
    line: Option<Ink>,
    width: Option<f64>,
    dashed: Option<bool>,
    round: Option<bool>,
    area: Option<Ink>,
    letters: Option<(bool, f64)>,
}

/// A pen over a canvas.
pub struct Pencil {
    canvas: HtmlCanvasElement,
    context: CanvasRenderingContext2d,
    colours: Colours,
    dashes: JsValue,
    solid: JsValue,
}

impl Pencil {
    /// A pen for a canvas.
    pub fn new(canvas: &HtmlCanvasElement) -> Result<Self, JsValue> {
        let context = canvas.get_context("2d")?.ok_or("no drawing context")?;
        let mut pencil = Self {
            canvas: canvas.clone(),
            context: context.dyn_into()?,
            colours: Colours::default(),
            dashes: js_sys::Array::of2(&DASHES[0].into(), &DASHES[1].into()).into(),
            solid: js_sys::Array::new().into(),
        };
        pencil.take_colours()?;
        Ok(pencil)
    }

    /// Takes the colours from the canvas's style, where they stand for day and night.
    pub fn take_colours(&mut self) -> Result<(), JsValue> {
        let window = web_sys::window().ok_or("no window")?;
        let style = window.get_computed_style(&self.canvas)?.ok_or("no style")?;
        self.colours = Colours::named(|name| style.get_property_value(name))?;
        Ok(())
    }

    /// The colours it draws with.
    pub fn colours(&self) -> &Colours {
        &self.colours
    }

    /// Draws a sheet of `size` px over all of the canvas.
    pub fn draw(&self, sheet: &Sheet, labels: &Labels, size: DVec2) {
        let c = &self.context;
        let ratio = f64::from(self.canvas.width()) / size.x.max(1.0);
        // These fail only for numbers that are not finite.
        let _ = c.set_transform(ratio, 0.0, 0.0, ratio, 0.0, 0.0);
        c.clear_rect(0.0, 0.0, size.x, size.y);
        let mut held = Held::default();
        for marks in sheet.marks.chunk_by(Mark::alike) {
            match &marks[0] {
                Mark::Line {
                    ink, width, dashed, ..
                } => {
                    self.take(&mut held, *ink, *width, *dashed);
                    // Nobody sees the ends of thin lines, and round ones take long to fill.
                    if held.round.replace(*width > THIN) != Some(*width > THIN) {
                        c.set_line_cap(if *width > THIN { "round" } else { "butt" });
                        c.set_line_join(if *width > THIN { "round" } else { "bevel" });
                    }
                    self.paths(marks, sheet);
                    c.stroke();
                }
                Mark::Area { ink, .. } => {
                    self.dip(&mut held, *ink);
                    self.paths(marks, sheet);
                    c.fill();
                }
                mark @ Mark::Ring { .. } => self.ring(&mut held, mark),
                mark @ Mark::Text { .. } => self.text(&mut held, mark, labels),
            }
        }
    }

    /// Takes a pen for lines, where another is held: to hand over what is held already takes longer than to
    /// draw with it.
    fn take(&self, held: &mut Held, ink: Ink, width: f64, dashed: bool) {
        let c = &self.context;
        if held.line.replace(ink) != Some(ink) {
            c.set_stroke_style_str(self.colours.of(ink));
        }
        if held.width.replace(width) != Some(width) {
            c.set_line_width(width);
        }
        if held.dashed.replace(dashed) != Some(dashed) {
            let _ = c.set_line_dash(if dashed { &self.dashes } else { &self.solid });
        }
    }

    /// Takes a colour for areas and writing, where another is held.
    fn dip(&self, held: &mut Held, ink: Ink) {
        if held.area.replace(ink) != Some(ink) {
            self.context.set_fill_style_str(self.colours.of(ink));
        }
    }

    /// Paths of marks that are alike.
    fn paths(&self, marks: &[Mark], sheet: &Sheet) {
        self.context.begin_path();
        for mark in marks {
            self.path(&sheet.points[mark.points()]);
        }
    }

    fn path(&self, points: &[DVec2]) {
        for (i, p) in points.iter().enumerate() {
            if i == 0 {
                self.context.move_to(p.x, p.y);
            } else {
                self.context.line_to(p.x, p.y);
            }
        }
    }

    fn ring(&self, held: &mut Held, mark: &Mark) {
        let Mark::Ring {
            ink,
            width,
            centre,
            radius,
        } = mark
        else {
            return;
        };
        let c = &self.context;
        c.begin_path();
        let _ = c.arc(centre.x, centre.y, *radius, 0.0, std::f64::consts::TAU);
        if *width > 0.0 {
            self.take(held, *ink, *width, false);
            c.stroke();
        } else {
            self.dip(held, *ink);
            c.fill();
        }
    }

    /// Sets type of some size, px.
    fn set_type(&self, bold: bool, size: f64) {
        let weight = if bold { 700 } else { 400 };
        let size = decimals(size, 2);
        let font = format!("{weight} {size}px system-ui, sans-serif");
        self.context.set_font(&font);
    }

    fn text(&self, held: &mut Held, mark: &Mark, labels: &Labels) {
        let Mark::Text {
            ink,
            at,
            align,
            label,
            size,
        } = mark
        else {
            return;
        };
        let c = &self.context;
        // To set the type takes longer than to write.
        let wanted = (label.is_bold(), *size);
        if held.letters.replace(wanted) != Some(wanted) {
            self.set_type(wanted.0, wanted.1);
        }
        c.set_text_align(match align {
            Align::Left => "right",
            Align::Middle => "center",
            Align::Right => "left",
        });
        let text = labels.text(*label);
        self.take(held, Ink::Paper, HALO, false);
        let _ = c.stroke_text(text, at.x, at.y);
        self.dip(held, *ink);
        let _ = c.fill_text(text, at.x, at.y);
    }
}
