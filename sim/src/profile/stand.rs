//! How a bike stands where a line begins.

use super::{Profile, direction};
use crate::error::{Fault, Quantity, Why};
use crate::num;
use crate::plan::{Bike, Plan, fault};
use glam::DVec2;

/// Room behind the rear wheel's contact at the start, m.
const ROOM: f64 = 0.05;

/// How deep a wheel may stand in the ground beside the place it stands on, m: a tyre gives way by as much under a
/// rider, and what it stores then is next to nothing.
const SUNK: f64 = 0.01;

/// Steepest that a bike stands at the start, degrees: between 60° and 70° a rider's mass is behind the rear wheel or
/// in front of the front one.
const STEEPEST_DEG: f64 = 60.0;

impl Profile {
    /// Where the axles are, rear and front, of a bike that stands at the beginning with its axles so far `over` the
    /// ground, m, and a `wheelbase` apart. On a profile without ground there is no such place.
    pub(crate) fn stand(&self, wheelbase: f64, over: f64) -> [DVec2; 2] {
        let over = |station: f64| {
            let (point, heading) = self.place(station);
            point + direction(heading).perp() * over
        };
        let rear = over(ROOM);
        // The front axle is a wheelbase away: halve the stretch it must lie in.
        let (mut low, mut high) = (ROOM, ROOM + 2.0 * wheelbase);
        for _ in 0..60 {
            let mid = 0.5 * (low + high);
            if num::length(over(mid) - rear) < wheelbase {
                low = mid;
            } else {
                high = mid;
            }
        }
        [rear, over(low)]
    }

    /// The point of the chain and its heading, at a length along it.
    fn place(&self, station: f64) -> (DVec2, f64) {
        let i = self
            .pieces
            .partition_point(|p| p.before <= station)
            .saturating_sub(1);
        let p = &self.pieces[i];
        let along = num::clamp(station - p.before, 0.0, p.length);
        (p.point(along), p.heading_at(along))
    }

    /// Every bike of a plan has to find a place to stand.
    pub(super) fn check_stand(&self, plan: &Plan) -> Vec<Fault> {
        let field = match plan.line {
            crate::plan::Line::Features(_) => "line.features[0]",
            crate::plan::Line::Surveyed { .. } => "line.surveyed.points[1]",
        };
        let faults = plan.riders.iter().map(|m| self.check_bike(&m.bike, field));
        faults.flatten().take(1).collect()
    }

    fn check_bike(&self, bike: &Bike, field: &str) -> Option<Fault> {
        let field = field.to_owned();
        let radius = bike.wheel_radius();
        let (length, least) = (self.length(), ROOM + bike.wheelbase + radius);
        if length < least {
            let (quantity, range) = (Quantity::Length, (Some(least), None));
            return Some(fault(field, quantity, length, range, Why::ShortLine));
        }
        let axles = self.stand(bike.wheelbase, radius);
        let along = axles[1] - axles[0];
        let pitch = num::degrees(num::atan2(along.y, along.x));
        if pitch.abs() > STEEPEST_DEG {
            let range = (Some(-STEEPEST_DEG), Some(STEEPEST_DEG));
            return Some(fault(field, Quantity::Angle, pitch, range, Why::StartSteep));
        }
        let sunk = axles.map(|axle| radius - self.closest(axle).map_or(radius, |c| c.1.distance));
        let sunk = num::max(sunk[0], sunk[1]);
        let range = (None, Some(SUNK));
        (sunk > SUNK).then(|| fault(field, Quantity::Length, sunk, range, Why::StartBent))
    }
}
