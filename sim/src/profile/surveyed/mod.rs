//! An existing line, surveyed as points, as a chain of arcs through every one of them.

mod biarc;
mod lips;
mod tangents;

use super::pen::Pen;
use super::{Character, Profile};
use crate::num;
use crate::plan::{GroundPoint, Surface};
use glam::DVec2;

/// The survey as points and the straight chords between them.
struct Survey {
    points: Vec<DVec2>,
    /// Heading of each chord, rad.
    headings: Vec<f64>,
    /// Length of each chord, m.
    lengths: Vec<f64>,
}

impl Survey {
    fn new(points: &[GroundPoint]) -> Self {
        let points: Vec<DVec2> = points
            .iter()
            .map(|p| DVec2::new(p.station, p.elevation))
            .collect();
        let chords = points.windows(2).map(|p| p[1] - p[0]);
        Self {
            headings: chords.clone().map(|d| num::atan2(d.y, d.x)).collect(),
            lengths: chords.map(num::length).collect(),
            points,
        }
    }

    /// How much the chords turn at a point, rad; 0 at the ends.
    fn turn(&self, i: usize) -> f64 {
        if i == 0 || i >= self.headings.len() {
            return 0.0;
        }
        num::wrap(self.headings[i] - self.headings[i - 1])
    }
}

/// The chain through the points of an existing line.
///
/// Between two points runs a biarc, two arcs with a common tangent, from an estimated heading to
/// the next; corners stay corners. Lips are found where the surface rises to a corner.
pub(super) fn trace(points: &[GroundPoint], surface: Surface) -> Profile {
    let survey = Survey::new(points);
    let tangents = tangents::estimate(&survey);
    let found = lips::find(&survey, &tangents);
    let mut pen = Pen::new(survey.points[0]);
    for (i, &to) in survey.points.iter().skip(1).enumerate() {
        let character = Character::new(surface, found.intents[i]);
        biarc::draw(
            &mut pen,
            tangents[i].out,
            to,
            tangents[i + 1].into,
            character,
        );
    }
    Profile {
        pieces: pen.pieces,
        lips: found.lips,
        spans: Vec::new(),
        yard: Vec::new(),
    }
}
