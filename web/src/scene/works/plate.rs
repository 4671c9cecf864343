//! A drawing in the making: marks, what is written, and where there is room to write more.

use super::reader::Reader;
use crate::scene::labels::{self, Labels};
use crate::scene::sheet::{Align, Ink, Label, Mark, Sheet};
use glam::DVec2;

/// Width of a drawing that is not in full size, px: as wide as a printed page, where 12 px are 9 pt.
pub const WIDE: f64 = 680.0;
/// Size of all figures, px.
pub const TYPE: f64 = 13.0;
/// From one line of figures to the next, px.
pub const LEADING: f64 = 16.0;
/// What is left white at the edges, px.
pub const MARGIN: f64 = 6.0;
/// What stays free on either side of a line that has to be kept clear, px: a pen leaves paper round writing.
const HALO: f64 = 3.0;
/// Radius of the ring round a letter, px.
const RING: f64 = 10.0;
/// Rounds in which room is looked for, and places of each.
const ROUNDS: [u32; 2] = [60, 12];

/// A rectangle by its low and high corner, px.
type Room = [DVec2; 2];

/// One drawing, ready for a pen once it is done.
#[derive(Debug)]
pub struct Plate {
    /// The marks.
    pub sheet: Sheet,
    /// What they say.
    pub labels: Labels,
    /// Width and height, px.
    pub size: DVec2,
    /// Who reads it.
    pub reader: Reader,
    taken: Vec<Room>,
}

impl Plate {
    /// An empty one, so wide, px.
    pub fn new(wide: f64, reader: Reader) -> Self {
        Self {
            sheet: Sheet::default(),
            labels: Labels::default(),
            size: DVec2::new(wide, 0.0),
            reader,
            taken: Vec::new(),
        }
    }

    /// Writes at a place, which is taken from then on.
    pub fn write(&mut self, at: DVec2, align: Align, text: String) {
        self.taken.push(room(at, align, &text));
        let label = Label::Caption(self.labels.captions.len());
        self.labels.captions.push(text);
        self.sheet.text(Ink::Figure, TYPE, at, align, label);
    }

    /// Keeps a line through points clear of writing.
    pub fn keep_clear(&mut self, points: &[DVec2]) {
        const STEP: f64 = 12.0;
        for pair in points.windows(2) {
            let steps = ((pair[1] - pair[0]).length() / STEP).ceil().max(1.0) as u32;
            for i in 0..steps {
                let [a, b] =
                    [i, i + 1].map(|k| pair[0].lerp(pair[1], f64::from(k) / f64::from(steps)));
                self.taken.push([a.min(b) - HALO, a.max(b) + HALO]);
            }
        }
    }

    /// Whether nothing is written at a place yet, and it lies between the edges.
    pub fn is_free(&self, at: DVec2, align: Align, text: &str) -> bool {
        self.is_clear(room(at, align, text))
    }

    fn is_clear(&self, [low, high]: Room) -> bool {
        let apart = |[a, b]: &Room| high.x < a.x || b.x < low.x || high.y < a.y || b.y < low.y;
        low.x >= MARGIN && high.x <= self.size.x - MARGIN && self.taken.iter().all(apart)
    }

    /// Writes at the first of some places that is free, else as near as there is room to what it belongs to, with a
    /// leader there.
    pub fn put(&mut self, text: String, to: DVec2, places: &[(DVec2, Align)]) {
        let fits = |(at, align): &&(DVec2, Align)| self.is_free(*at, *align, &text);
        if let Some(&(at, align)) = places.iter().find(fits) {
            self.write(at, align, text);
            return;
        }
        let at = self.around(to, |at| self.is_free(at, Align::Middle, &text));
        let middle = at - DVec2::new(0.0, 0.3 * TYPE);
        let away = (to - middle).normalize_or_zero() * TYPE;
        self.sheet.line(Ink::Figure, 0.6, [middle + away, to]);
        self.write(at, Align::Middle, text);
    }

    /// The nearest place in rounds about one that will do; if none does, one under all the others.
    fn around(&self, to: DVec2, will_do: impl Fn(DVec2) -> bool) -> DVec2 {
        let [rounds, places] = ROUNDS;
        for round in 1..=rounds {
            for i in 0..places {
                let turn = core::f64::consts::TAU * (f64::from(i) + 0.25) / f64::from(places);
                let (sine, cosine) = sim::num::sin_cos(turn);
                let at = to + DVec2::new(cosine, sine) * (20.0 + 8.0 * f64::from(round));
                if will_do(at) {
                    return at;
                }
            }
        }
        let low = self.taken.iter().map(|t| t[1].y).fold(to.y, f64::max);
        DVec2::new(0.5 * self.size.x, low + 2.0 * LEADING)
    }

    /// The letter of a part in a ring, with a leader to the part: A for 0. It stands so far from the part, or where
    /// there is room.
    pub fn letter(&mut self, part: usize, to: DVec2, beside: DVec2) {
        let clear = |at: DVec2| self.is_clear([at - DVec2::splat(RING), at + DVec2::splat(RING)]);
        let wanted = to + beside;
        let at = if clear(wanted) {
            wanted
        } else {
            self.around(to, clear)
        };
        let away = (at - to).normalize_or_zero() * RING;
        self.sheet.line(Ink::Figure, 0.6, [to, at - away]);
        self.sheet.disc(Ink::Figure, to, 2.0);
        self.sheet.disc(Ink::Paper, at, RING);
        self.sheet.ring(Ink::Figure, 0.8, at, RING);
        self.taken
            .push([at - DVec2::splat(RING), at + DVec2::splat(RING)]);
        let label = Label::Caption(self.labels.captions.len());
        self.labels.captions.push(letter(part));
        let base = at + DVec2::new(0.0, 0.36 * TYPE);
        self.sheet
            .text(Ink::Figure, TYPE, base, Align::Middle, label);
    }

    /// The lowest of all that is drawn, px.
    pub fn lowest(&self) -> f64 {
        let boxes = self.sheet.marks.iter().map(|m| self.bounds(m)[1].y);
        boxes.fold(f64::NEG_INFINITY, f64::max)
    }

    /// The rectangle of a mark.
    pub fn bounds(&self, mark: &Mark) -> Room {
        let apart = |points: &[DVec2], by: f64| {
            let low = points.iter().copied().reduce(DVec2::min);
            let high = points.iter().copied().reduce(DVec2::max);
            [low.unwrap_or_default() - by, high.unwrap_or_default() + by]
        };
        match mark {
            Mark::Line { points, width, .. } => {
                apart(&self.sheet.points[points.clone()], 0.5 * width)
            }
            Mark::Area { points, .. } => apart(&self.sheet.points[points.clone()], 0.0),
            Mark::Ring {
                centre,
                radius,
                width,
                ..
            } => apart(&[*centre], radius + 0.5 * width),
            Mark::Text {
                at, align, label, ..
            } => room(*at, *align, self.labels.text(*label)),
        }
    }

    /// The drawing moved so that all of it is on the sheet, which is as high as it needs.
    pub fn done(mut self) -> Self {
        let marks = self.sheet.marks.iter().map(|m| self.bounds(m));
        let both = |a: Room, b: Room| [a[0].min(b[0]), a[1].max(b[1])];
        let [low, high] = marks.reduce(both).unwrap_or_default();
        let by = DVec2::new(0.0, MARGIN - low.y);
        self.sheet.points.iter_mut().for_each(|p| *p += by);
        for mark in &mut self.sheet.marks {
            match mark {
                Mark::Ring { centre, .. } => *centre += by,
                Mark::Text { at, .. } => *at += by,
                Mark::Line { .. } | Mark::Area { .. } => {}
            }
        }
        self.size.y = (high.y - low.y + 2.0 * MARGIN).ceil();
        self
    }
}

/// Ample width of a figure with its unit, px: an m is wider than other letters, in some types half as wide again.
pub fn wide(text: &str) -> f64 {
    let broad = text.chars().filter(|c| *c == 'm').count();
    labels::width(text, TYPE) + 0.4 * TYPE * broad as f64
}

/// The letter of a part.
pub fn letter(part: usize) -> String {
    let letter = char::from(b'A' + (part % 26) as u8).to_string();
    letter.repeat(1 + part / 26)
}

/// The rectangle that a text takes.
fn room(at: DVec2, align: Align, text: &str) -> Room {
    let wide = wide(text);
    let from = match align {
        Align::Left => at.x - wide,
        Align::Middle => at.x - 0.5 * wide,
        Align::Right => at.x,
    };
    [
        DVec2::new(from, at.y - 0.8 * TYPE),
        DVec2::new(from + wide, at.y + 0.25 * TYPE),
    ]
}
