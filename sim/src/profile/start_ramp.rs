//! The start ramp: platform, rounded edge, slope, hollow.

use super::build::Laying;
use super::piece::STEEPEST;
use super::{Character, Intent};
use crate::error::{Fault, Quantity, Why};
use crate::num::{self, PI};
use crate::plan::{StartRamp, fault};
use glam::DVec2;

/// Length of the platform, m: both wheels of the longest bike stand on it with a foot of room
/// (wheelbases run up to 1.3 m).
const PLATFORM: f64 = 1.6;

/// Least fall of the slope against level, rad: 3°. A flatter one would run on without end.
const FLATTEST: f64 = 3.0 * (PI / 180.0);

/// The ramp laid along one heading of the ground.
struct Shape {
    /// Heading of the ground at the foot, rad.
    foot: f64,
    /// Heading of the slope, rad; no flatter than the flattest.
    slope: f64,
    /// Length of the straight slope, m; negative where the arcs need more height than there is.
    straight: f64,
    /// Level distance from the platform's back to the foot, m.
    reach: f64,
}

impl Shape {
    fn new(ramp: &StartRamp, foot: f64) -> Self {
        let slope = num::min(foot - num::radians(ramp.angle_deg), -FLATTEST);
        let (ss, cs) = num::sin_cos(slope);
        let (sf, cf) = num::sin_cos(foot);
        let arcs = ramp.edge_radius * (1.0 - cs) + ramp.bottom_radius * (cf - cs);
        let straight = (ramp.platform_height - arcs) / -ss;
        let rounded = ramp.edge_radius * -ss + ramp.bottom_radius * (sf - ss);
        Self {
            foot,
            slope,
            straight,
            reach: PLATFORM + rounded + straight * cs,
        }
    }
}

impl Laying<'_> {
    pub(super) fn start_ramp(&mut self, ramp: &StartRamp) -> Result<(), Fault> {
        let back = self.pen.at;
        let reach = |foot| Shape::new(ramp, foot).reach;
        let foot = self.ground.chord(back, 0.0, reach);
        self.check_angle("angle_deg", ramp.angle_deg, foot)?;
        self.check_wheel("bottom_radius", ramp.bottom_radius)?;
        let shape = Shape::new(ramp, foot);
        self.check_start(ramp, &shape)?;
        let top = self.ground.height(back.x + shape.reach) + ramp.platform_height;
        self.pen.at = DVec2::new(back.x, top);
        let roll = Character::new(ramp.surface, Intent::Roll);
        self.pen.line(0.0, PLATFORM, roll);
        self.pen.arc(0.0, shape.slope, ramp.edge_radius, roll);
        self.pen.line(shape.slope, shape.straight, roll);
        self.pen
            .arc(shape.slope, shape.foot, ramp.bottom_radius, roll);
        Ok(())
    }

    fn check_start(&self, ramp: &StartRamp, shape: &Shape) -> Result<(), Fault> {
        if shape.slope == -FLATTEST {
            return Err(fault(
                self.field("angle_deg"),
                Quantity::Angle,
                ramp.angle_deg,
                (
                    Some(num::degrees(shape.foot + FLATTEST)),
                    Some(num::degrees(STEEPEST)),
                ),
                Why::RisingGround,
            ));
        }
        if shape.straight >= 0.0 {
            return Ok(());
        }
        let missing = shape.straight * num::sin(shape.slope);
        Err(fault(
            self.field("platform_height"),
            Quantity::Length,
            ramp.platform_height,
            (Some(ramp.platform_height + missing), None),
            Why::RampOverlap,
        ))
    }
}
