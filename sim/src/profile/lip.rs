//! The take-off of a jump: an arc from the ground to its edge, split by a straight lead-in where
//! there is one, and ending in a straight stretch where there is one.

use super::build::Laying;
use super::piece::STEEPEST;
use super::{Character, Intent};
use crate::error::{Fault, Quantity, Why};
use crate::num::{self, PI};
use crate::plan::{Lip, Surface, fault};

/// Least turn of an arc that ends in a straight stretch, rad: 1°, as flat as a lead-in may be.
const FLATTEST: f64 = PI / 180.0;

/// The lip laid along one heading of the ground. Angles count from that heading.
struct Shape {
    /// Heading of the ground, rad.
    ground: f64,
    /// Turn before the lead-in, rad.
    lead: f64,
    /// Length of the lead-in, m.
    straight: f64,
    /// Length of the straight last stretch, m.
    end: f64,
    /// Turn at the edge, rad; the steepest there is where the lip is higher than its circle allows.
    exit: f64,
    /// Level distance from foot to edge, m.
    reach: f64,
}

impl Shape {
    /// The edge stands h plumb over the ground, h cos α square to it. The lead-in, ℓ long at the
    /// angle a, takes ℓ sin a of that; the circle, turned by θ, and the last stretch, e long, take
    /// the rest: R (1 − cos θ) + e sin θ = h cos α − ℓ sin a. With tan φ = e/R that is
    /// cos(θ + φ) = (1 − (h cos α − ℓ sin a)/R) cos φ.
    fn new(lip: &Lip, ground: f64) -> Self {
        let (lead, straight) = lip
            .lead_in
            .as_ref()
            .map_or((0.0, 0.0), |l| (num::radians(l.angle_deg), l.length));
        let end = lip.straight_end.unwrap_or(0.0);
        let (sg, cg) = num::sin_cos(ground);
        let (sl, cl) = num::sin_cos(lead);
        let rise = lip.height * cg;
        let versine = (rise - straight * sl) / lip.radius;
        let phase = num::atan2(end, lip.radius);
        let cos = num::cos(phase);
        let leaned = num::clamp((1.0 - versine) * cos, num::cos(STEEPEST + phase), cos);
        let exit = num::acos(leaned) - phase;
        let along = lip.radius * num::sin(exit) + straight * cl + end * num::cos(exit);
        Self {
            ground,
            lead,
            straight,
            end,
            exit,
            reach: along * cg - rise * sg,
        }
    }

    /// How much higher than its arc's first part and its lead-in a lip rises, square to the ground, m.
    fn left(&self, lip: &Lip, turned: f64) -> f64 {
        let rise = lip.height * num::cos(self.ground);
        rise - lip.radius * (1.0 - num::cos(turned)) - self.straight * num::sin(self.lead)
    }
}

impl Laying<'_> {
    /// Draws the lip; gives the heading at its edge, rad.
    pub(super) fn lip(&mut self, lip: &Lip) -> Result<f64, Fault> {
        let reach = |ground| Shape::new(lip, ground).reach;
        let ground = self.ground.chord(self.pen.at, self.bed, reach);
        let shape = Shape::new(lip, ground);
        self.check_wheel("lip.radius", lip.radius)?;
        self.check_lead_in(lip, &shape)?;
        self.check_straight_end(lip, &shape)?;
        self.check_lip(lip, &shape)?;
        let launch = Character::new(lip.surface, Intent::Launch);
        let (lead, exit) = (ground + shape.lead, ground + shape.exit);
        if lip.lead_in.is_some() {
            let dirt = Character::new(Surface::Packed, Intent::Launch);
            self.pen.arc(ground, lead, lip.radius, dirt);
            self.pen.line(lead, shape.straight, dirt);
        }
        self.pen.arc(lead, exit, lip.radius, launch);
        self.pen.line(exit, shape.end, launch);
        Ok(exit)
    }

    fn check_lip(&self, lip: &Lip, shape: &Shape) -> Result<(), Fault> {
        let limit = num::min(STEEPEST, STEEPEST - shape.ground);
        let straights = shape.straight * num::sin(shape.lead) + shape.end * num::sin(limit);
        let rise = lip.radius * (1.0 - num::cos(limit)) + straights;
        let most = rise / num::cos(shape.ground);
        if lip.height <= most {
            return Ok(());
        }
        Err(fault(
            self.field("lip.height"),
            Quantity::Length,
            lip.height,
            (None, Some(most)),
            Why::LipOverCircle,
        ))
    }

    fn check_lead_in(&self, lip: &Lip, shape: &Shape) -> Result<(), Fault> {
        let Some(lead_in) = &lip.lead_in else {
            return Ok(());
        };
        let rise = lip.height * num::cos(shape.ground);
        let left = rise - lip.radius * (1.0 - num::cos(shape.lead));
        if left < 0.0 {
            let most = num::acos(1.0 - rise / lip.radius);
            return Err(fault(
                self.field("lip.lead_in.angle_deg"),
                Quantity::Angle,
                lead_in.angle_deg,
                (None, Some(num::degrees(most))),
                Why::LeadOverLip,
            ));
        }
        let most = left / num::sin(shape.lead);
        if lead_in.length <= most {
            return Ok(());
        }
        Err(fault(
            self.field("lip.lead_in.length"),
            Quantity::Length,
            lead_in.length,
            (None, Some(most)),
            Why::LeadTooLong,
        ))
    }

    /// The longer the last stretch, the less the arc turns before it.
    fn check_straight_end(&self, lip: &Lip, shape: &Shape) -> Result<(), Fault> {
        let Some(end) = lip.straight_end else {
            return Ok(());
        };
        let least = num::max(shape.lead, FLATTEST);
        let most = num::max(shape.left(lip, least), 0.0) / num::sin(least);
        if end <= most {
            return Ok(());
        }
        Err(fault(
            self.field("lip.straight_end"),
            Quantity::Length,
            end,
            (None, Some(most)),
            Why::StraightTooLong,
        ))
    }
}
