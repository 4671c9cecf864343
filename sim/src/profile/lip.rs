//! The take-off of a jump: an arc from the ground to its edge, split by a straight lead-in where
//! there is one.

use super::build::{Laying, STEEPEST};
use super::{Character, Intent};
use crate::error::{Fault, Quantity, Why};
use crate::num;
use crate::plan::{Lip, Surface, fault};

/// The lip laid along one heading of the ground. Angles count from that heading.
struct Shape {
    /// Heading of the ground, rad.
    ground: f64,
    /// Turn before the lead-in, rad.
    lead: f64,
    /// Length of the lead-in, m.
    straight: f64,
    /// Turn at the edge, rad; the steepest there is where the lip is higher than its circle allows.
    exit: f64,
    /// Level distance from foot to edge, m.
    reach: f64,
}

impl Shape {
    /// The edge stands h plumb over the ground, h cos α square to it. The lead-in, ℓ long at the
    /// angle a, takes ℓ sin a of that; the circle has turned by θ with
    /// 1 − cos θ = (h cos α − ℓ sin a)/R.
    fn new(lip: &Lip, ground: f64) -> Self {
        let (lead, straight) = lip
            .lead_in
            .as_ref()
            .map_or((0.0, 0.0), |l| (num::radians(l.angle_deg), l.length));
        let (sg, cg) = num::sin_cos(ground);
        let (sl, cl) = num::sin_cos(lead);
        let rise = lip.height * cg;
        let versine = (rise - straight * sl) / lip.radius;
        let exit = num::acos(num::clamp(1.0 - versine, num::cos(STEEPEST), 1.0));
        let along = lip.radius * num::sin(exit) + straight * cl;
        Self {
            ground,
            lead,
            straight,
            exit,
            reach: along * cg - rise * sg,
        }
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
        self.check_lip(lip, &shape)?;
        let launch = Character::new(lip.surface, Intent::Launch);
        let (lead, exit) = (ground + shape.lead, ground + shape.exit);
        if lip.lead_in.is_some() {
            let dirt = Character::new(Surface::Packed, Intent::Launch);
            self.pen.arc(ground, lead, lip.radius, dirt);
            self.pen.line(lead, shape.straight, dirt);
        }
        self.pen.arc(lead, exit, lip.radius, launch);
        Ok(exit)
    }

    fn check_lip(&self, lip: &Lip, shape: &Shape) -> Result<(), Fault> {
        let limit = num::min(STEEPEST, STEEPEST - shape.ground);
        let lead = shape.straight * num::sin(shape.lead);
        let rise = lip.radius * (1.0 - num::cos(limit)) + lead;
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
}
