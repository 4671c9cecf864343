//! The landing of a jump: knuckle, slope, hollow.

use super::build::Laying;
use super::{Character, Intent};
use crate::error::{Fault, Quantity, Why};
use crate::num;
use crate::plan::{Landing, fault};
use glam::DVec2;

/// How far a landing given a length may end below the ground, m: a tenth of a millimetre, since
/// lengths reach us rounded.
const FLUSH: f64 = 1e-4;

/// The landing laid along one heading of the ground.
struct Shape {
    /// Heading of the ground, rad.
    ground: f64,
    /// Heading of the slope, rad.
    slope: f64,
    /// Length of the straight slope, m; negative where the arcs need more height than there is.
    straight: f64,
    /// Height of the bed it ends on over the ground, m; negative where it ends below ground.
    bed: f64,
    /// Level distance from knuckle to end, m.
    reach: f64,
}

impl Shape {
    /// Square to the ground, the two arcs fall by (Rk + Rb)(1 − cos a) and the straight slope, L
    /// long, by L sin a. Down to the ground they make up h cos α together.
    fn new(landing: &Landing, bed: f64, ground: f64) -> Self {
        let turn = num::radians(landing.angle_deg);
        let (st, ct) = num::sin_cos(turn);
        let (sg, cg) = num::sin_cos(ground);
        let radii = landing.knuckle_radius + landing.bottom_radius;
        let arcs = radii * (1.0 - ct);
        let top = landing.height + bed;
        let (straight, bed) = match landing.length {
            None => ((top * cg - arcs) / st, 0.0),
            Some(length) => (length, top - (arcs + length * st) / cg),
        };
        let fall = arcs + straight * st;
        Self {
            ground,
            slope: ground - turn,
            straight,
            bed,
            reach: (radii * st + straight * ct) * cg + fall * sg,
        }
    }
}

/// Where a landing was drawn.
pub(super) struct Drawn {
    pub slope: f64,
    pub slope_end: DVec2,
    pub end: DVec2,
}

impl Laying<'_> {
    /// Draws the landing from the knuckle on, where the pen stands.
    pub(super) fn landing(&mut self, landing: &Landing) -> Result<Drawn, Fault> {
        let foot = self.ground.point(self.pen.at.x);
        let reach = |ground| Shape::new(landing, self.bed, ground).reach;
        let ground = self.ground.chord(foot, 0.0, reach);
        self.check_angle("landing.angle_deg", landing.angle_deg, ground)?;
        self.check_wheel("landing.bottom_radius", landing.bottom_radius)?;
        let shape = Shape::new(landing, self.bed, ground);
        self.check_landing(landing, &shape)?;
        let land = Character::new(landing.surface, Intent::Land);
        let slope = shape.slope;
        self.pen.arc(ground, slope, landing.knuckle_radius, land);
        self.pen.line(slope, shape.straight, land);
        let slope_end = self.pen.at;
        self.pen.arc(slope, ground, landing.bottom_radius, land);
        self.bed = if shape.bed < FLUSH { 0.0 } else { shape.bed };
        let end = self.pen.at;
        Ok(Drawn {
            slope,
            slope_end,
            end,
        })
    }

    fn check_landing(&self, landing: &Landing, shape: &Shape) -> Result<(), Fault> {
        let fall = num::sin(shape.ground - shape.slope) / num::cos(shape.ground);
        if shape.straight < 0.0 {
            return Err(self.too_low(landing, landing.height - shape.straight * fall));
        }
        if shape.bed >= -FLUSH {
            return Ok(());
        }
        let most = shape.straight + shape.bed / fall;
        if most < 0.0 {
            return Err(self.too_low(landing, landing.height - most * fall));
        }
        Err(fault(
            self.field("landing.length"),
            Quantity::Length,
            shape.straight,
            (None, Some(most)),
            Why::LandingUnderground,
        ))
    }

    fn too_low(&self, landing: &Landing, least: f64) -> Fault {
        fault(
            self.field("landing.height"),
            Quantity::Length,
            landing.height,
            (Some(least), None),
            Why::LandingOverlap,
        )
    }
}
