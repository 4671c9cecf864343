//! The yard's own ground under the line.

use crate::num;
use glam::DVec2;

/// The yard as points along the line, m, straight between them; the first and last stretch go on beyond the ends.
#[derive(Clone, Copy, Debug)]
pub struct Under<'a>(pub &'a [DVec2]);

impl Under<'_> {
    /// The ends of the stretch over a station: of two that meet there, the one beyond. It takes two points to have any.
    pub(super) fn stretch(&self, x: f64) -> [DVec2; 2] {
        let last = self.0.len().saturating_sub(2);
        let i = self.0.iter().rposition(|p| p.x <= x).unwrap_or(0);
        let i = if i > last { last } else { i };
        [self.0[i], self.0[i + 1]]
    }

    /// Rise for each metre along, at a station.
    pub fn grade(&self, x: f64) -> f64 {
        if self.0.len() < 2 {
            return 0.0;
        }
        let [a, b] = self.stretch(x);
        (b.y - a.y) / (b.x - a.x)
    }

    /// Elevation at a station, m; 0 where there is no yard.
    pub fn height(&self, x: f64) -> f64 {
        if self.0.len() < 2 {
            return self.0.first().map_or(0.0, |p| p.y);
        }
        let [a, b] = self.stretch(x);
        a.y + (b.y - a.y) * ((x - a.x) / (b.x - a.x))
    }

    /// Stations strictly between two others where the ground bends, in order.
    pub fn bends(&self, from: f64, to: f64) -> impl Iterator<Item = f64> {
        let inner = self.0.len().saturating_sub(2);
        let within = move |x: &f64| *x > from && *x < to;
        self.0
            .iter()
            .skip(1)
            .take(inner)
            .map(|p| p.x)
            .filter(within)
    }

    /// Length of a tape laid on the ground from one station on to another, m.
    pub fn tape(&self, from: f64, to: f64) -> f64 {
        let mut at = DVec2::new(from, self.height(from));
        let mut length = 0.0;
        for x in self.bends(from, to).chain([to]) {
            let next = DVec2::new(x, self.height(x));
            length += num::length(next - at);
            at = next;
        }
        length
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn yard() -> [DVec2; 4] {
        [(0.0, 1.0), (4.0, 4.0), (10.0, 4.0), (14.0, 1.0)].map(DVec2::from)
    }

    #[test]
    fn ground_is_straight_between_readings_and_goes_on() {
        let yard = yard();
        let under = Under(&yard);
        for (x, z) in [
            (-4.0, -2.0),
            (2.0, 2.5),
            (4.0, 4.0),
            (7.0, 4.0),
            (18.0, -2.0),
        ] {
            assert!((under.height(x) - z).abs() < 1e-12, "{x}");
        }
        assert!((under.grade(4.0)).abs() < 1e-12 && (under.grade(12.0) + 0.75).abs() < 1e-12);
        assert_eq!(under.bends(3.0, 10.0).collect::<Vec<_>>(), [4.0]);
    }

    /// Twice five metres up and down a three-four-five triangle, and six between.
    #[test]
    fn a_tape_follows_the_ground() {
        let yard = yard();
        let under = Under(&yard);
        assert!((under.tape(0.0, 14.0) - 16.0).abs() < 1e-12);
        assert!((under.tape(2.0, 5.0) - 3.5).abs() < 1e-12);
    }
}
