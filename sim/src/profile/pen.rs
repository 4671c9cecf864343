//! Draws the chain, each piece from the end of the one before.

use super::{Character, Piece};
use crate::num::{self, PI};
use glam::DVec2;

/// Shorter pieces than this are left out, m: they would be rounding errors of a length of zero.
const SHORTEST: f64 = 1e-9;

/// Arcs that turn by less than twice this, rad, are drawn straight: a metre of them is off by less
/// than 5 µm, while a circle of a thousand kilometres loses as much to rounding.
const STRAIGHT: f64 = 1e-5;

/// The chain so far and where its end is.
pub(crate) struct Pen {
    pub pieces: Vec<Piece>,
    pub at: DVec2,
    drawn: f64,
}

impl Pen {
    pub fn new(at: DVec2) -> Self {
        Self {
            pieces: Vec::new(),
            at,
            drawn: 0.0,
        }
    }

    /// A straight piece.
    pub fn line(&mut self, heading: f64, length: f64, character: Character) {
        self.draw(heading, length, 0.0, character);
    }

    /// A straight piece to a point; a plumb face where the point is straight above or below.
    pub fn line_to(&mut self, to: DVec2, character: Character) {
        let d = to - self.at;
        if d.x.abs() <= SHORTEST {
            return self.plumb_to(to.y, character);
        }
        self.line(num::atan2(d.y, d.x), num::length(d), character);
    }

    /// A plumb face up or down to a height.
    pub fn plumb_to(&mut self, z: f64, character: Character) {
        let rise = z - self.at.y;
        let heading = if rise < 0.0 { -PI / 2.0 } else { PI / 2.0 };
        self.line(heading, rise.abs(), character);
    }

    /// An arc from one heading to another; a hollow where the heading grows, else a crest.
    pub fn arc(&mut self, from: f64, to: f64, radius: f64, character: Character) {
        let turn = to - from;
        let length = radius * turn.abs();
        if length > SHORTEST {
            self.draw(from, length, turn / length, character);
        }
    }

    /// An arc to a point, leaving with a heading; straight where that leads to the point.
    pub fn arc_to(&mut self, heading: f64, to: DVec2, character: Character) {
        let d = to - self.at;
        let half = num::wrap(num::atan2(d.y, d.x) - heading);
        if half.abs() < STRAIGHT {
            return self.line_to(to, character);
        }
        let length = num::length(d) * (half / num::sin(half));
        self.draw(heading, length, 2.0 * half / length, character);
    }

    fn draw(&mut self, heading: f64, length: f64, curvature: f64, character: Character) {
        if length <= SHORTEST {
            return;
        }
        let piece = Piece::new(self.at, heading, length, curvature, self.drawn, character);
        self.at = piece.end;
        self.drawn += length;
        self.pieces.push(piece);
    }
}
