//! The least squares.

use super::chance;
use super::rides::Rides;
use super::surface::{Side, Surfaces};
use crate::num;
use levenberg_marquardt::{LeastSquaresProblem, LevenbergMarquardt};
use nalgebra::storage::Owned;
use nalgebra::{Cholesky, DMatrix, DVector, Dyn};

/// The inputs that fit best, and how well they are known.
pub(crate) struct Solution {
    /// The inputs.
    pub values: Vec<f64>,
    /// Their covariance by what is stated of the observations.
    pub stated: DMatrix<f64>,
    /// Their covariance, the observations as far off as they scatter where that is more: less than before
    /// anything was seen is never known.
    pub covariance: DMatrix<f64>,
    /// How far each observation used is off, in its standard deviations.
    pub off: Vec<f64>,
    /// Sum of squares over the observations, what they have in common counted once.
    pub chi_square: f64,
    /// How many observations are left over once the inputs have taken what they tell.
    freedom: f64,
}

impl Solution {
    /// Whether chance explains what is left.
    pub fn agrees(&self) -> bool {
        self.chi_square <= chance::most_by_chance(self.freedom)
    }
}

/// Finds the inputs that fit best to some of the observations; each of them has its surface.
pub(crate) fn solve(rides: &Rides, surfaces: &Surfaces, used: &[usize]) -> Solution {
    let sigmas = DMatrix::from_fn(used.len(), used.len(), |i, j| {
        let own = rides.seen[used[i]].give_or_take();
        let measured = if i == j { own * own } else { 0.0 };
        measured + surfaces.scatter(used[i], used[j])
    });
    let off = |i: usize| sigmas[(i, i)].sqrt();
    let each = (0..used.len()).map(off).collect();
    // Scatter is a square and the measuring stands on its diagonal, so there is a root.
    let root = Cholesky::new(sigmas.clone()).map_or(sigmas, |c| c.unpack());
    let problem = Problem {
        rides,
        surfaces,
        used,
        root,
        free: DVector::zeros(rides.inputs.len()),
    };
    let (problem, _) = LevenbergMarquardt::new().minimize(problem);
    problem.solution(each)
}

/// The problem as the search sees it: an input within the box that was ridden as a free number, and a
/// row for each observation and each input. Outside its box a surface says nothing.
struct Problem<'a> {
    rides: &'a Rides,
    surfaces: &'a Surfaces,
    used: &'a [usize],
    /// Root of the observations' covariance: solved for, their rows no longer hang together.
    root: DMatrix<f64>,
    free: DVector<f64>,
}

impl Problem<'_> {
    /// Each input, middle + half · u / √(1 + u²) of its free number u, and its change with that.
    fn bound(&self) -> (Vec<f64>, Vec<f64>) {
        let sides = self.surfaces.sides.iter().zip(&self.free);
        let bound = |(side, &free): (&Side, &f64)| {
            let root = (1.0 + free * free).sqrt();
            let value = side.middle + side.half * free / root;
            (value, side.half / (root * root * root))
        };
        sides.map(bound).unzip()
    }

    /// How far the observations are off, in their own units, and the change of that with each input.
    fn apart(&self, values: &[f64]) -> (DVector<f64>, DMatrix<f64>) {
        let (rows, columns) = (self.used.len(), values.len());
        let (mut off, mut slopes) = (DVector::zeros(rows), DMatrix::zeros(rows, columns));
        for (row, &seen) in self.used.iter().enumerate() {
            if let Some((value, slope)) = self.surfaces.at(seen, values) {
                off[row] = value - self.rides.seen[seen].value();
                slopes.row_mut(row).copy_from(&slope.transpose());
            }
        }
        (off, slopes)
    }

    /// All rows that are to become small, and their change with each input: the observations', then
    /// the inputs' own.
    fn rows(&self, values: &[f64]) -> (DVector<f64>, DMatrix<f64>) {
        let (mut off, mut slopes) = self.apart(values);
        self.root.solve_lower_triangular_mut(&mut off);
        self.root.solve_lower_triangular_mut(&mut slopes);
        let (seen, count) = (self.used.len(), values.len());
        let mut off = off.resize_vertically(seen + count, 0.0);
        let mut slopes = slopes.resize_vertically(seen + count, 0.0);
        for (i, input) in self.rides.inputs.iter().enumerate() {
            off[seen + i] = (values[i] - input.planned) / input.sigma;
            slopes[(seen + i, i)] = 1.0 / input.sigma;
        }
        (off, slopes)
    }

    fn solution(&self, sigmas: Vec<f64>) -> Solution {
        let (values, _) = self.bound();
        let (rows, slopes) = self.rows(&values);
        let squares = |from: usize, to: usize| rows.rows(from, to - from).norm_squared();
        let n = self.used.len();
        let before = |i: usize| self.rides.inputs[i].sigma * self.rides.inputs[i].sigma;
        let told = slopes.rows(0, n);
        let told = told.transpose() * told;
        // What is known with the observations `more` times as far off, in squares.
        let known = |more: f64| {
            let mut square = &told / more;
            for i in 0..values.len() {
                square[(i, i)] += 1.0 / before(i);
            }
            // Each input is known a little before, so the square is never singular.
            let prior = || {
                DMatrix::from_fn(values.len(), values.len(), |i, j| {
                    if i == j { before(i) } else { 0.0 }
                })
            };
            Cholesky::new(square).map_or_else(prior, |c| c.inverse())
        };
        let stated = known(1.0);
        let taken: f64 = (0..values.len())
            .map(|i| 1.0 - stated[(i, i)] / before(i))
            .sum();
        let more = num::max(squares(0, rows.len()) / n as f64, 1.0);
        let (off, _) = self.apart(&values);
        Solution {
            covariance: known(more),
            stated,
            off: off
                .iter()
                .zip(sigmas)
                .map(|(off, sigma)| off / sigma)
                .collect(),
            chi_square: squares(0, n),
            freedom: n as f64 - taken,
            values,
        }
    }
}

impl LeastSquaresProblem<f64, Dyn, Dyn> for Problem<'_> {
    type ParameterStorage = Owned<f64, Dyn>;
    type ResidualStorage = Owned<f64, Dyn>;
    type JacobianStorage = Owned<f64, Dyn, Dyn>;

    fn set_params(&mut self, free: &DVector<f64>) {
        self.free.copy_from(free);
    }

    fn params(&self) -> DVector<f64> {
        self.free.clone()
    }

    fn residuals(&self) -> Option<DVector<f64>> {
        Some(self.rows(&self.bound().0).0)
    }

    fn jacobian(&self) -> Option<DMatrix<f64>> {
        let (values, changes) = self.bound();
        let (_, mut slopes) = self.rows(&values);
        for (mut column, change) in slopes.column_iter_mut().zip(changes) {
            column *= change;
        }
        Some(slopes)
    }
}
