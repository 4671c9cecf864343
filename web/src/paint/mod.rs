//! The pens: this one draws on a canvas, the other writes a picture of its own.

mod colours;
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
        let (mut round, mut set) = (None, None);
        for marks in sheet.marks.chunk_by(Mark::alike) {
            match &marks[0] {
                Mark::Line {
                    ink, width, dashed, ..
                } => {
                    // Nobody sees the ends of thin lines, and round ones take long to fill.
                    if round.replace(*width > THIN) != Some(*width > THIN) {
                        c.set_line_cap(if *width > THIN { "round" } else { "butt" });
                        c.set_line_join(if *width > THIN { "round" } else { "bevel" });
                    }
                    c.set_stroke_style_str(self.colours.of(*ink));
                    c.set_line_width(*width);
                    let _ = c.set_line_dash(if *dashed { &self.dashes } else { &self.solid });
                    self.lines(marks, sheet);
                }
                Mark::Area { ink, points } => self.area(*ink, &sheet.points[points.clone()]),
                Mark::Ring {
                    ink,
                    width,
                    centre,
                    radius,
                } => self.ring(*ink, *width, *centre, *radius),
                mark @ Mark::Text { size, label, .. } => {
                    // To set the type takes longer than to write.
                    let wanted = (label.is_bold(), *size);
                    if set.replace(wanted) != Some(wanted) {
                        self.set_type(wanted.0, wanted.1);
                    }
                    self.text(mark, labels);
                }
            }
        }
    }

    /// Lines that are alike, in one go.
    fn lines(&self, marks: &[Mark], sheet: &Sheet) {
        self.context.begin_path();
        for mark in marks {
            if let Mark::Line { points, .. } = mark {
                self.path(&sheet.points[points.clone()]);
            }
        }
        self.context.stroke();
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

    fn area(&self, ink: Ink, points: &[DVec2]) {
        self.context.set_fill_style_str(self.colours.of(ink));
        self.context.begin_path();
        self.path(points);
        self.context.fill();
    }

    fn ring(&self, ink: Ink, width: f64, centre: DVec2, radius: f64) {
        let c = &self.context;
        c.begin_path();
        let _ = c.arc(centre.x, centre.y, radius, 0.0, std::f64::consts::TAU);
        if width > 0.0 {
            let _ = c.set_line_dash(&self.solid);
            c.set_stroke_style_str(self.colours.of(ink));
            c.set_line_width(width);
            c.stroke();
        } else {
            c.set_fill_style_str(self.colours.of(ink));
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

    fn text(&self, mark: &Mark, labels: &Labels) {
        let Mark::Text {
            ink,
            at,
            align,
            label,
            ..
        } = mark
        else {
            return;
        };
        let c = &self.context;
        c.set_text_align(match align {
            Align::Left => "right",
            Align::Middle => "center",
            Align::Right => "left",
        });
        let text = labels.text(*label);
        let _ = c.set_line_dash(&self.solid);
        c.set_stroke_style_str(&self.colours.paper);
        c.set_line_width(HALO);
        let _ = c.stroke_text(text, at.x, at.y);
        c.set_fill_style_str(self.colours.of(*ink));
        let _ = c.fill_text(text, at.x, at.y);
    }
}
