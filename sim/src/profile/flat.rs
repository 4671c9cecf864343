//! Ground left as it lies: flats, turns and the run-out.

use super::build::Laying;
use super::{Character, Intent};
use crate::num;
use crate::plan::{Flat, RunOut, Turn};

impl Laying<'_> {
    pub(super) fn flat(&mut self, flat: &Flat) {
        self.along(flat.length, Character::new(flat.surface, Intent::Roll));
    }

    pub(super) fn run_out(&mut self, run_out: &RunOut) {
        let character = Character::new(run_out.surface, Intent::Brake);
        self.along(run_out.length, character);
    }

    /// A turn, unrolled: as long as the line ridden through it.
    pub(super) fn turn(&mut self, turn: &Turn) {
        let character = Character {
            turn: 1.0 / turn.radius,
            ..Character::new(turn.surface, Intent::Roll)
        };
        self.along(turn.radius * num::radians(turn.sweep_deg), character);
    }

    fn along(&mut self, length: f64, character: Character) {
        let to = self.ground.walk(self.pen.at.x, length);
        self.follow(to, character);
    }
}
