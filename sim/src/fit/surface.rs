//! How what is seen changes with the inputs: a smooth surface through many rides.
//!
//! A bike that hops over a roller lands a little before or behind its crest, and leaves it quicker or
//! slower by more than a stopwatch tells. Two rides that are all but alike differ like that, in the
//! model as in a yard, so a ride cannot be differentiated. Some tens of rides are spread over a box of
//! inputs instead, and a surface of the second degree is laid through them by least squares. It says
//! how a reading changes with the inputs; how far the rides lie from it says how much the ride itself
//! scatters, and how one reading scatters with another: that counts beside the measuring.
//!
//! # References
//! Response surfaces: Box and Wilson 1951, J. R. Stat. Soc. B 13:1-45. Points spread evenly: Halton
//! 1960, Numer. Math. 2:84-90.

use super::rides::{Rides, Told};
use crate::num;
use nalgebra::{Cholesky, DMatrix, DVector};

/// Rides for each number that the surface has.
const RIDES_EACH: usize = 3;

/// Rides beyond the numbers of the surface that are least needed to say how much they scatter.
const SPARE: usize = 5;

/// Bases of the Halton sequence, one for each input.
const BASES: [usize; 4] = [2, 3, 5, 7];

/// Part of the inputs that rides are spread over.
#[derive(Clone, Debug)]
pub(super) struct Span {
    /// Middle of the box.
    pub centre: Vec<f64>,
    /// Half of its width.
    pub half: Vec<f64>,
}

/// Surfaces of all that is seen, observations before lips.
pub(super) struct Surfaces {
    pub span: Span,
    /// The numbers of each surface; `None` where hardly any ride gets there.
    numbers: Vec<Option<DVector<f64>>>,
    /// Covariance of the rides about the surfaces.
    scatter: DMatrix<f64>,
}

impl Surfaces {
    /// Rides all over a box of inputs.
    pub fn ridden(rides: &Rides, span: Span) -> Self {
        let (points, told) = spread(rides, &span);
        let count = terms(&points[0]).len();
        let rows: Vec<_> = points.iter().map(|z| terms(z)).collect();
        let seen = rides.seen.len();
        let spare = (points.len() - count) as f64;
        let mut numbers = Vec::new();
        let mut left = DMatrix::zeros(points.len(), seen + rides.lips());
        for quantity in 0..seen + rides.lips() {
            let value = |told: &Told| match quantity.checked_sub(seen) {
                None => told.readings[quantity].ok(),
                Some(lip) => told.lips[lip],
            };
            let values: Vec<_> = told.iter().map(value).collect();
            let surface = laid(&rows, &values);
            if let Some(surface) = &surface {
                let there = values.iter().flatten().count();
                // As if every ride had got there.
                let share = (spare / (there - count) as f64).sqrt();
                for (ride, value) in values.iter().enumerate() {
                    let off = value.map_or(0.0, |value| value - rows[ride].dot(surface));
                    left[(ride, quantity)] = off * share;
                }
            }
            numbers.push(surface);
        }
        Self {
            span,
            numbers,
            scatter: left.transpose() * left / spare,
        }
    }

    /// Whether rides get there.
    pub fn has(&self, quantity: usize) -> bool {
        self.numbers[quantity].is_some()
    }

    /// What is seen with some inputs, and its change with each of them; nothing where rides do not
    /// get there.
    pub fn at(&self, quantity: usize, values: &[f64]) -> Option<(f64, DVector<f64>)> {
        let numbers = self.numbers[quantity].as_ref()?;
        let Span { centre, half } = &self.span;
        let scaled = |i: usize| (values[i] - centre[i]) / half[i];
        let z: Vec<f64> = (0..values.len()).map(scaled).collect();
        let n = z.len();
        let mut slope = DVector::from_fn(n, |i, _| numbers[1 + i]);
        let mut next = 1 + n;
        for i in 0..n {
            for j in i..n {
                slope[i] += numbers[next] * z[j];
                slope[j] += numbers[next] * z[i];
                next += 1;
            }
        }
        for (change, half) in slope.iter_mut().zip(half) {
            *change /= half;
        }
        Some((terms(&z).dot(numbers), slope))
    }

    /// How two quantities scatter together: the square of a standard deviation for one and itself.
    pub fn scatter(&self, a: usize, b: usize) -> f64 {
        self.scatter[(a, b)]
    }
}

/// Rides spread over a box: where in it, each side from −1 to 1, and what they show.
fn spread(rides: &Rides, span: &Span) -> (Vec<Vec<f64>>, Vec<Told>) {
    let n = span.centre.len();
    let count = RIDES_EACH * terms(&span.centre).len();
    let point = |k: usize| -> Vec<f64> {
        let values = (0..n).map(|i| {
            let [low, high] = rides.inputs[i].within;
            let aim = 2.0 * halton(k, BASES[i]) - 1.0;
            num::clamp(span.centre[i] + span.half[i] * aim, low, high)
        });
        values.collect()
    };
    // The sequence begins with its worst points.
    let values: Vec<_> = (1..=count).map(|k| point(k + 20)).collect();
    let told = values.iter().map(|values| rides.told(values)).collect();
    let scaled = |values: &Vec<f64>| {
        let sides = (0..n).map(|i| (values[i] - span.centre[i]) / span.half[i]);
        sides.collect()
    };
    (values.iter().map(scaled).collect(), told)
}

/// The k-th number of the Halton sequence: the digits of k mirrored at the point.
fn halton(k: usize, base: usize) -> f64 {
    let (mut k, mut place, mut sum) = (k, 1.0, 0.0);
    while k > 0 {
        place /= base as f64;
        sum += place * (k % base) as f64;
        k /= base;
    }
    sum
}

/// 1, every side, and every product of two sides.
fn terms(z: &[f64]) -> DVector<f64> {
    let products = (0..z.len()).flat_map(|i| (i..z.len()).map(move |j| z[i] * z[j]));
    let all = core::iter::once(1.0).chain(z.iter().copied()).chain(products);
    DVector::from_vec(all.collect())
}

/// The surface nearest to the values that there are.
fn laid(rows: &[DVector<f64>], values: &[Option<f64>]) -> Option<DVector<f64>> {
    let count = rows[0].len();
    if values.iter().flatten().count() < count + SPARE {
        return None;
    }
    let mut square = DMatrix::zeros(count, count);
    let mut right = DVector::zeros(count);
    for (row, value) in rows.iter().zip(values) {
        if let Some(value) = value {
            square += row * row.transpose();
            right += row * *value;
        }
    }
    Some(Cholesky::new(square)?.solve(&right))
}
