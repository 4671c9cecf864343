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

/// Points at the beginning of the Halton sequence that are left out.
const SKIPPED: usize = 20;

/// Bases of the Halton sequence, one for each input.
const BASES: [usize; 4] = [2, 3, 5, 7];

/// One side of the box of inputs that rides are spread over.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Side {
    /// Its middle.
    pub middle: f64,
    /// Half of its length.
    pub half: f64,
}

impl Side {
    /// The side about a value, shifted so that it stays within an input's limits.
    pub fn about(value: f64, half: f64, [low, high]: [f64; 2]) -> Self {
        let half = num::min(half, 0.5 * (high - low));
        Self {
            middle: num::clamp(value, low + half, high - half),
            half,
        }
    }

    /// From −1 at one end to 1 at the other.
    pub fn share(&self, value: f64) -> f64 {
        // An input that cannot be moved has a side without length.
        if self.half > 0.0 {
            (value - self.middle) / self.half
        } else {
            0.0
        }
    }
}

/// Surfaces of all that is seen, observations before lips.
pub(crate) struct Surfaces {
    pub sides: Vec<Side>,
    /// The numbers of each surface; `None` where hardly any ride gets there.
    numbers: Vec<Option<DVector<f64>>>,
    /// Covariance of the rides about the surfaces.
    scatter: DMatrix<f64>,
}

impl Surfaces {
    /// Rides all over a box of inputs.
    pub fn ridden(rides: &Rides, sides: Vec<Side>) -> Self {
        let (points, told) = spread(rides, &sides);
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
            sides,
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
        let sides = self.sides.iter().zip(values);
        let z: Vec<f64> = sides.map(|(side, &value)| side.share(value)).collect();
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
        for (change, side) in slope.iter_mut().zip(&self.sides) {
            *change = if side.half > 0.0 {
                *change / side.half
            } else {
                0.0
            };
        }
        Some((terms(&z).dot(numbers), slope))
    }

    /// How two quantities scatter together: the square of a standard deviation for one and itself.
    pub fn scatter(&self, a: usize, b: usize) -> f64 {
        self.scatter[(a, b)]
    }
}

/// Rides spread over a box: where in it, each side from −1 to 1, and what they show.
fn spread(rides: &Rides, sides: &[Side]) -> (Vec<Vec<f64>>, Vec<Told>) {
    let point = |k: usize| -> Vec<f64> {
        let bases = BASES.iter().take(sides.len());
        bases.map(|&base| 2.0 * halton(k, base) - 1.0).collect()
    };
    let count = RIDES_EACH * terms(&point(0)).len();
    // The sequence begins with its most uneven points.
    let points: Vec<_> = (0..count).map(|k| point(k + SKIPPED)).collect();
    let ride = |point: &Vec<f64>| {
        let pairs = sides.iter().zip(point);
        let values: Vec<f64> = pairs.map(|(s, z)| s.middle + s.half * z).collect();
        rides.told(&values)
    };
    let told = points.iter().map(ride).collect();
    (points, told)
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
    let all = core::iter::once(1.0)
        .chain(z.iter().copied())
        .chain(products);
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
