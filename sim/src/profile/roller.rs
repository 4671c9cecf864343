//! Rollers: hollow, crest and hollow, arcs of one radius that meet without a bend.

use super::build::Laying;
use super::piece::STEEPEST;
use super::{Character, Intent};
use crate::error::{Fault, Quantity, Why};
use crate::num;
use crate::plan::{Roller, fault};

impl Laying<'_> {
    /// A quarter of a roller rises by half its height over a quarter of its length: with R the
    /// radius and δ the turn, R sin δ = L/4 and R (1 − cos δ) = H/2, so tan(δ/2) = 2H/L and
    /// R = (L²/16 + H²/4)/H. The height is plumb over the ground, the length along it.
    pub(super) fn roller(&mut self, roller: &Roller) -> Result<(), Fault> {
        let count = f64::from(roller.count);
        let heading = self.ground.chord(self.pen.at, self.bed, |heading| {
            count * roller.length * num::cos(heading)
        });
        let height = roller.height * num::cos(heading);
        let length = roller.length;
        let turn = 2.0 * num::atan2(2.0 * height, length);
        let radius = (length * length / 16.0 + height * height / 4.0) / height;
        self.check_roller(roller, height, turn, radius)?;
        let character = Character::new(roller.surface, Intent::Roll);
        let (up, down) = (heading + turn, heading - turn);
        self.pen.arc(heading, up, radius, character);
        for left in (0..roller.count).rev() {
            self.pen.arc(up, down, radius, character);
            let out = if left == 0 { heading } else { up };
            self.pen.arc(down, out, radius, character);
        }
        Ok(())
    }

    fn check_roller(&self, roller: &Roller, h: f64, turn: f64, radius: f64) -> Result<(), Fault> {
        let least = if turn > STEEPEST {
            2.0 * h / num::tan(STEEPEST / 2.0)
        } else if radius < self.wheel {
            4.0 * (h * (self.wheel - h / 4.0)).sqrt()
        } else {
            return Ok(());
        };
        Err(fault(
            self.field("length"),
            Quantity::Length,
            roller.length,
            (Some(least), None),
            Why::RollerTooShort,
        ))
    }
}
