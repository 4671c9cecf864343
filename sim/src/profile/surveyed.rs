//! An existing line, as surveyed.

use super::pen::Pen;
use super::{Character, Intent, Profile};
use crate::plan::{GroundPoint, Surface};
use glam::DVec2;

/// The chain through the points, straight between them.
pub(super) fn trace(points: &[GroundPoint], surface: Surface) -> Profile {
    let roll = Character::new(surface, Intent::Roll);
    let mut points = points.iter().map(|p| DVec2::new(p.station, p.elevation));
    let mut pen = Pen::new(points.next().unwrap_or_default());
    for point in points {
        pen.line_to(point, roll);
    }
    Profile {
        pieces: pen.pieces,
        lips: Vec::new(),
        spans: Vec::new(),
        yard: Vec::new(),
    }
}
