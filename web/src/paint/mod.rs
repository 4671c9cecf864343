//! The pen: the only file that draws on a canvas.

use crate::scene::{Align, Ink, Label, Labels, Mark, Sheet};
use glam::DVec2;
use wasm_bindgen::prelude::*;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

/// Dashes and gaps of a broken line, px.
const DASHES: [f64; 2] = [5.0, 5.0];
/// Width of the edge of paper left around writing, px.
const HALO: f64 = 5.0;

/// A pen over a canvas.
pub struct Pencil {
    canvas: HtmlCanvasElement,
    context: CanvasRenderingContext2d,
    paper: String,
    colours: Vec<String>,
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
            paper: String::new(),
            colours: Vec::new(),
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
        let colour = |name: &str| style.get_property_value(name);
        self.paper = colour("--paper")?;
        self.colours.clear();
        for ink in Ink::ALL {
            self.colours.push(colour(name(ink))?);
        }
        Ok(())
    }

    /// Draws a sheet of `size` px over all of the canvas.
    pub fn draw(&self, sheet: &Sheet, labels: &Labels, size: DVec2) {
        let c = &self.context;
        let ratio = f64::from(self.canvas.width()) / size.x.max(1.0);
        // These fail only for numbers that are not finite.
        let _ = c.set_transform(ratio, 0.0, 0.0, ratio, 0.0, 0.0);
        c.clear_rect(0.0, 0.0, size.x, size.y);
        c.set_line_cap("round");
        c.set_line_join("round");
        let mut marks = sheet.marks.as_slice();
        while let Some((mark, rest)) = marks.split_first() {
            marks = rest;
            match mark {
                Mark::Line { .. } => {
                    let alike = rest.iter().take_while(|m| alike(mark, m)).count();
                    marks = &rest[alike..];
                    self.lines(mark, &rest[..alike], sheet);
                }
                Mark::Area { ink, points } => self.area(*ink, &sheet.points[points.clone()]),
                Mark::Ring {
                    ink,
                    width,
                    centre,
                    radius,
                } => self.ring(*ink, *width, *centre, *radius),
                Mark::Text { .. } => self.text(mark, labels),
            }
        }
    }

    fn colour(&self, ink: Ink) -> &str {
        self.colours.get(ink as usize).map_or("", String::as_str)
    }

    /// Lines of one colour, width and kind in one go.
    fn lines(&self, first: &Mark, rest: &[Mark], sheet: &Sheet) {
        let Mark::Line {
            ink, width, dashed, ..
        } = first
        else {
            return;
        };
        let c = &self.context;
        c.set_stroke_style_str(self.colour(*ink));
        c.set_line_width(*width);
        let _ = c.set_line_dash(if *dashed { &self.dashes } else { &self.solid });
        c.begin_path();
        for mark in std::iter::once(first).chain(rest) {
            if let Mark::Line { points, .. } = mark {
                self.path(&sheet.points[points.clone()]);
            }
        }
        c.stroke();
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
        self.context.set_fill_style_str(self.colour(ink));
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
            c.set_stroke_style_str(self.colour(ink));
            c.set_line_width(width);
            c.stroke();
        } else {
            c.set_fill_style_str(self.colour(ink));
            c.fill();
        }
    }

    fn text(&self, mark: &Mark, labels: &Labels) {
        let Mark::Text {
            ink,
            size,
            at,
            align,
            label,
        } = mark
        else {
            return;
        };
        let c = &self.context;
        let weight = if matches!(label, Label::Speed(_)) {
            700
        } else {
            400
        };
        c.set_font(&format!("{weight} {size}px system-ui, sans-serif"));
        c.set_text_align(match align {
            Align::Left => "right",
            Align::Middle => "center",
            Align::Right => "left",
        });
        let text = labels.text(*label);
        let _ = c.set_line_dash(&self.solid);
        c.set_stroke_style_str(&self.paper);
        c.set_line_width(HALO);
        let _ = c.stroke_text(text, at.x, at.y);
        c.set_fill_style_str(self.colour(*ink));
        let _ = c.fill_text(text, at.x, at.y);
    }
}

/// Whether two lines can be drawn in one go.
fn alike(a: &Mark, b: &Mark) -> bool {
    match (a, b) {
        (
            Mark::Line {
                ink, width, dashed, ..
            },
            Mark::Line {
                ink: i,
                width: w,
                dashed: d,
                ..
            },
        ) => ink == i && width == w && dashed == d,
        _ => false,
    }
}

/// The name of an ink's colour in the style sheet.
fn name(ink: Ink) -> &'static str {
    match ink {
        Ink::Ground => "--ground",
        Ink::Hatch => "--hatch",
        Ink::Built => "--built",
        Ink::Wood => "--wood",
        Ink::Grass => "--grass",
        Ink::Yard => "--yard",
        Ink::Flight => "--flight",
        Ink::Before => "--before",
        Ink::Chosen => "--chosen",
        Ink::Figure => "--figure",
        Ink::Name => "--name",
        Ink::Frame => "--frame",
        Ink::Tyre => "--tyre",
        Ink::Rider => "--rider",
        Ink::Far => "--far",
        Ink::Pads => "--pads",
        Ink::Pale => "--pale",
        Ink::Energy => "--energy",
    }
}
