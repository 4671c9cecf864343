//! A jump: lip, gap, landing, and the edge that belongs to them.

use super::build::Laying;
use super::{Character, Intent, LipEdge};
use crate::error::Fault;
use crate::plan::{Jump, Surface};
use glam::DVec2;

impl Laying<'_> {
    pub(super) fn jump(&mut self, jump: &Jump) -> Result<(), Fault> {
        let foot = self.pen.at;
        let exit = self.lip(&jump.lip)?;
        let edge = self.pen.at;
        let knuckle = self.gap(jump);
        let drawn = self.landing(&jump.landing)?;
        self.lips.push(LipEdge {
            feature: self.feature,
            edge,
            exit,
            foot,
            knuckle,
            slope: drawn.slope,
            slope_end: drawn.slope_end,
            landing_end: drawn.end,
        });
        Ok(())
    }

    /// Draws what lies between edge and knuckle; gives the knuckle.
    fn gap(&mut self, jump: &Jump) -> DVec2 {
        let x = self.pen.at.x + jump.gap;
        let top = self.ground.height(x) + self.bed + jump.landing.height;
        let face = Character::new(jump.lip.surface, Intent::Clear);
        let front = Character::new(jump.landing.surface, Intent::Clear);
        if jump.decked && jump.gap > 0.0 {
            self.pen.line_to(DVec2::new(x, top), face);
        } else if jump.gap > 0.0 {
            let floor = Character::new(Surface::Packed, Intent::Clear);
            let ground = self.ground.height(self.pen.at.x) + self.bed;
            self.pen.plumb_to(ground, face);
            self.follow(x, floor);
        }
        self.pen.plumb_to(top, front);
        self.pen.at
    }
}
