//! The line as a ribbon of some width: its points in riding order, ready for the eye.

use crate::scene::land;
use glam::DVec2;
use sim::num;
use sim::plan::Surface;
use sim::profile::{Intent, Profile};

/// Longest stretch between two points, m.
const FINEST: f64 = 0.2;

/// A point of the ribbon.
#[derive(Clone, Copy, Debug)]
pub struct Knot {
    /// Place, m.
    pub at: DVec2,
    /// Way along the chain to it, m.
    pub along: f64,
    /// Height of the yard beneath, m.
    pub yard: f64,
    /// What the stretch behind it is made of.
    pub surface: Surface,
    /// What that asks of whoever rides it.
    pub intent: Intent,
    /// Half its width, m.
    pub half: f64,
    /// Whether one piece of ground ends here: never left out, however far away.
    pub joint: bool,
    /// Whether the line ends here.
    pub end: bool,
}

impl Knot {
    /// The point a part of the way to another, made of the same.
    pub fn toward(&self, to: &Knot, part: f64) -> Knot {
        let mix = |a: f64, b: f64| a + (b - a) * part;
        Knot {
            at: self.at.lerp(to.at, part),
            along: mix(self.along, to.along),
            yard: mix(self.yard, to.yard),
            ..*self
        }
    }
}

/// All points of a line.
#[derive(Clone, Debug)]
pub struct Ribbon(pub Vec<Knot>);

impl Ribbon {
    /// The ribbon of a line.
    pub fn of(profile: &Profile) -> Self {
        let mut knots = Vec::new();
        for piece in &profile.pieces {
            let steps = (piece.length / FINEST).ceil().max(1.0) as u32;
            for i in 0..steps {
                let along = piece.length * f64::from(i) / f64::from(steps);
                let at = piece.point(along);
                knots.push(Knot {
                    at,
                    along: piece.before + along,
                    yard: land::yard(profile, at.x),
                    surface: piece.character.surface,
                    intent: piece.character.intent,
                    half: 0.5 * piece.character.width,
                    joint: i == 0,
                    end: false,
                });
            }
        }
        if let (Some(last), Some(end)) = (knots.last().copied(), profile.pieces.last()) {
            knots.push(Knot {
                at: end.end,
                along: end.before + end.length,
                yard: land::yard(profile, end.end.x),
                joint: true,
                end: true,
                ..last
            });
        }
        Self(knots)
    }

    /// The stretches of which a part lies between two stations, nearest first, as pairs of neighbours.
    pub fn pairs(&self, from: f64, to: f64) -> impl Iterator<Item = (&Knot, &Knot)> {
        let first = self.0.partition_point(|k| k.at.x < from).saturating_sub(1);
        let last = (self.0.partition_point(|k| k.at.x <= to) + 1).min(self.0.len());
        let held = self.0.get(first..last).unwrap_or_default();
        held.windows(2).map(|pair| (&pair[0], &pair[1]))
    }

    /// Height of the line at a station, m; at its ends where the station lies outside.
    pub fn height(&self, x: f64) -> f64 {
        let after = self.0.partition_point(|k| k.at.x <= x);
        let Some(b) = self.0.get(after).or(self.0.last()) else {
            return 0.0;
        };
        let a = after.checked_sub(1).map_or(b, |i| &self.0[i]);
        let run = b.at.x - a.at.x;
        if run > 0.0 {
            a.at.y + (b.at.y - a.at.y) * num::clamp((x - a.at.x) / run, 0.0, 1.0)
        } else {
            b.at.y
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use sim::plan;

    #[test]
    fn it_has_the_lines_own_heights_from_its_start_to_its_end() {
        let profile = Profile::build(&plan::demo()).unwrap();
        let ribbon = Ribbon::of(&profile);
        let (first, last) = (ribbon.0[0], ribbon.0[ribbon.0.len() - 1]);
        assert_eq!(first.at, profile.pieces[0].start);
        assert_eq!(last.at, profile.pieces[profile.pieces.len() - 1].end);
        for i in 0..200 {
            let x = last.at.x * f64::from(i) / 200.0;
            let known = profile.height_at(x).unwrap();
            // A chord of 0.2 m strays by 7 mm from a circle of 0.7 m.
            let chord = (ribbon.height(x) - known).abs();
            let face = profile
                .pieces
                .iter()
                .any(|p| (p.end.x - p.start.x).abs() < 0.02 && (p.start.x - x).abs() < 0.25);
            assert!(chord < 0.01 || face, "{chord} m at {x}");
        }
    }

    #[test]
    fn stretches_come_nearest_first_and_cover_what_was_asked() {
        let ribbon = Ribbon::of(&Profile::build(&plan::demo()).unwrap());
        let pairs: Vec<_> = ribbon.pairs(10.0, 14.0).collect();
        assert!(pairs[0].0.at.x <= 10.0 && pairs[pairs.len() - 1].1.at.x >= 14.0);
        assert!(pairs.windows(2).all(|w| w[0].1.along == w[1].0.along));
    }
}
