//! Measures as on a builder's sketch: a thin line between two ticks, and the figure on it.

use super::plate::{LEADING, Plate, TYPE, wide};
use crate::scene::sheet::{Align, Ink};
use glam::DVec2;

/// Half the length of a tick, px.
const TICK: f64 = 4.0;
/// Width of measures, px.
const THIN: f64 = 0.6;

impl Plate {
    /// The measure from one point to another, px, drawn so far beside them.
    pub fn measure(&mut self, a: DVec2, b: DVec2, beside: DVec2, text: String) {
        let (from, to) = (a + beside, b + beside);
        let onward = beside.normalize_or_zero() * TICK;
        if beside != DVec2::ZERO {
            for (p, end) in [(a, from), (b, to)] {
                self.sheet
                    .line(Ink::Figure, THIN, [p + onward, end + onward]);
            }
        }
        let tick = DVec2::new(TICK, -TICK);
        self.sheet.line(Ink::Figure, THIN, [from, to]);
        for p in [from, to] {
            self.sheet.line(Ink::Figure, 1.4, [p - tick, p + tick]);
        }
        let middle = (from + to) * 0.5;
        let places = places(from, to, beside, wide(&text));
        self.put(text, middle, &places);
    }

    /// A chain of measures on one level, px, between stations along the sheet; each gives its figure.
    pub fn chain(&mut self, y: f64, stations: &[f64], figure: impl Fn(usize) -> String) {
        for (i, pair) in stations.windows(2).enumerate() {
            let [a, b] = [pair[0], pair[1]].map(|x| DVec2::new(x, y));
            self.measure(a, b, DVec2::ZERO, figure(i));
        }
    }

    /// The corner of a string or line that is shown shorter than it is.
    pub fn broken(&mut self, at: DVec2, way: DVec2) {
        let (on, across) = (
            way.normalize_or_zero() * 3.0,
            way.normalize_or_zero().perp() * 6.0,
        );
        let points = [
            at - across,
            at - across * 0.3 + on,
            at + across * 0.3 - on,
            at + across,
        ];
        self.sheet.line(Ink::Figure, 0.9, points);
    }

    /// The line of the ground with strokes under it.
    pub fn ground(&mut self, points: &[DVec2]) {
        self.sheet.line(Ink::Ground, 1.2, points.iter().copied());
        for pair in points.windows(2) {
            let long = (pair[1] - pair[0]).length();
            let strokes = (long / 10.0).floor() as u32;
            for i in 0..strokes {
                let p = pair[0].lerp(pair[1], (f64::from(i) + 0.5) / f64::from(strokes));
                self.sheet
                    .line(Ink::Hatch, 0.6, [p, p + DVec2::new(-6.0, 7.0)]);
            }
        }
    }
}

/// Where the figure of a measure may stand, the best first.
fn places(from: DVec2, to: DVec2, beside: DVec2, wide: f64) -> Vec<(DVec2, Align)> {
    let middle = (from + to) * 0.5;
    let half = 0.36 * TYPE;
    let upright = (to.y - from.y).abs() > (to.x - from.x).abs();
    if upright {
        let right = (DVec2::new(6.0, half), Align::Right);
        let left = (DVec2::new(-6.0, half), Align::Left);
        let sides = if beside.x < 0.0 {
            [left, right]
        } else {
            [right, left]
        };
        let along = [0.5, 0.35, 0.65, 0.2, 0.8, 0.0, 1.0];
        let at = |share: f64| sides.map(|(by, align)| (from.lerp(to, share) + by, align));
        return along.into_iter().flat_map(at).collect();
    }
    let over = (middle + DVec2::new(0.0, -4.0), Align::Middle);
    let under = (middle + DVec2::new(0.0, LEADING - 2.0), Align::Middle);
    let (left, right) = if from.x < to.x {
        (from, to)
    } else {
        (to, from)
    };
    let before = (left + DVec2::new(-7.0, half), Align::Left);
    let behind = (right + DVec2::new(7.0, half), Align::Right);
    if right.x - left.x > wide {
        vec![over, under, behind, before]
    } else {
        vec![over, behind, before, under]
    }
}
