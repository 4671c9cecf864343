//! Figures in a row under, or beside, the places they belong to.

use super::plate::{self, LEADING, MARGIN, Plate, TYPE};
use crate::scene::sheet::{Align, Ink};
use glam::DVec2;

/// Room between two figures of a row, px.
const APART: f64 = 6.0;
/// Width of leaders, px.
const THIN: f64 = 0.6;

/// A place with the lines of figures that belong to it.
pub type Noted = (DVec2, Vec<String>);

impl Plate {
    /// Writes what belongs to places, which run along the sheet, in a row whose upper edge is at `base`, as near to
    /// each as the others allow, with leaders. Where not all goes into one row there are as many as it takes.
    pub fn row(&mut self, base: f64, notes: &[Noted]) {
        self.row_between(base, [MARGIN, self.size.x - MARGIN], notes);
    }

    /// The same between two places along the sheet.
    pub fn row_between(&mut self, base: f64, bounds: [f64; 2], notes: &[Noted]) {
        let wide = |lines: &[String]| lines.iter().map(|l| plate::wide(l)).fold(0.0, f64::max);
        let sizes: Vec<_> = notes.iter().map(|n| wide(&n.1) + APART).collect();
        let room = bounds[1] - bounds[0];
        let rows = (sizes.iter().sum::<f64>() / room).ceil().max(1.0) as usize;
        let lines = notes.iter().map(|n| n.1.len()).max().unwrap_or(0);
        let high = LEADING * lines as f64 + 4.0;
        let mut all = Vec::new();
        for row in 0..rows {
            let these = || (row..notes.len()).step_by(rows);
            let wanted: Vec<_> = these().map(|i| notes[i].0.x).collect();
            let taken: Vec<_> = these().map(|i| sizes[i]).collect();
            let places = spread(&wanted, &taken, bounds);
            let top = base + high * row as f64;
            all.extend(these().zip(places).map(|(i, x)| (i, DVec2::new(x, top))));
        }
        // Leaders lie under the figures of other rows.
        for (i, at) in &all {
            self.leader(notes[*i].0, *at, DVec2::Y);
        }
        for (i, at) in all {
            for (k, line) in notes[i].1.iter().enumerate() {
                let base = at + DVec2::new(0.0, TYPE + LEADING * k as f64);
                self.write(base, Align::Middle, line.clone());
            }
        }
    }

    /// The same to the left of places, which run up the sheet, in a column that ends at `edge`.
    pub fn column(&mut self, edge: f64, notes: &[(DVec2, String)]) {
        let wanted: Vec<_> = notes.iter().map(|n| n.0.y).collect();
        let sizes = vec![LEADING; notes.len()];
        let places = spread(&wanted, &sizes, [f64::NEG_INFINITY, f64::INFINITY]);
        for ((place, text), y) in notes.iter().zip(places) {
            self.leader(*place, DVec2::new(edge, y), DVec2::NEG_X);
            let base = DVec2::new(edge - 3.0, y + 0.36 * TYPE);
            self.write(base, Align::Left, text.clone());
        }
    }

    /// Straight on from a place, and then aslant to where its figure stands.
    fn leader(&mut self, from: DVec2, to: DVec2, way: DVec2) {
        let long = (to - from).dot(way);
        let straight = from + way * (0.5 * long).max(long - 14.0).max(0.0);
        self.sheet.line(Ink::Figure, THIN, [from, straight, to]);
    }
}

/// Middles of things of some sizes, as near to where they are wanted as they find room beside each other in their
/// order, between two bounds; beyond the second where these are too near.
fn spread(wanted: &[f64], sizes: &[f64], [low, high]: [f64; 2]) -> Vec<f64> {
    let mut order: Vec<usize> = (0..wanted.len()).collect();
    order.sort_by(|&a, &b| wanted[a].total_cmp(&wanted[b]));
    // Pushed on as little as need be, and pushed back as little: both keep apart, and so does the middle of both.
    let mut on = vec![0.0; wanted.len()];
    let mut edge = low;
    for &i in &order {
        on[i] = wanted[i].max(edge + 0.5 * sizes[i]);
        edge = on[i] + 0.5 * sizes[i];
    }
    let mut back = vec![0.0; wanted.len()];
    edge = high;
    for &i in order.iter().rev() {
        back[i] = wanted[i].min(edge - 0.5 * sizes[i]);
        edge = back[i] - 0.5 * sizes[i];
    }
    let mut places: Vec<_> = on.iter().zip(&back).map(|(a, b)| 0.5 * (a + b)).collect();
    keep_within(&mut places, &order, sizes, [low, high]);
    places
}

/// Moves what stands over a bound within it, and pushes the others on.
fn keep_within(places: &mut [f64], order: &[usize], sizes: &[f64], [low, high]: [f64; 2]) {
    let mut edge = high;
    for &i in order.iter().rev() {
        places[i] = places[i].min(edge - 0.5 * sizes[i]);
        edge = places[i] - 0.5 * sizes[i];
    }
    edge = low;
    for &i in order {
        places[i] = places[i].max(edge + 0.5 * sizes[i]);
        edge = places[i] + 0.5 * sizes[i];
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_has_room_stays_and_the_rest_keeps_apart_in_its_order() {
        assert_eq!(
            spread(&[10.0, 50.0], &[8.0, 8.0], [0.0, 100.0]),
            [10.0, 50.0]
        );
        let wanted = [50.0, 2.0, 51.0, 52.0, 99.0, 98.0];
        let sizes = [10.0; 6];
        let places = spread(&wanted, &sizes, [0.0, 100.0]);
        for (i, a) in places.iter().enumerate() {
            assert!(*a >= 5.0 - 1e-9 && *a <= 95.0 + 1e-9, "{places:?}");
            for (k, b) in places.iter().enumerate().take(i) {
                assert!((a - b).abs() >= 10.0 - 1e-9, "{places:?}");
                assert_eq!(a > b, wanted[i] > wanted[k], "{places:?}");
            }
        }
    }
}
