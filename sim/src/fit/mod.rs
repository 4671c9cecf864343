//! What a test ride teaches: the inputs that nobody knows well, fitted to what was seen.
//!
//! Rolling resistance, drag area, the speed at the start and, for a rider who pumps, how well that
//! is done are moved until the ride shows what was seen on the real one, as nearly as it can: least
//! squares, each observation weighted with how far off it may be. Each input is also held to its
//! planned value, weakly, as one more observation whose one standard deviation is half of its range
//! in `judge`. So a single flag gives a sane answer as well: it moves most what is known least, and
//! what it says nothing about stays as planned and is called unsure.
//!
//! What is stated of an input is one standard deviation, from the matrix of the least squares at
//! their minimum; where the observations scatter more than their own uncertainty, it grows with them.
//! It counts no error of the model itself. Wind is taken from the plan: what it does beside that is
//! told as drag area.
//!
//! # References
//! Weighted least squares with prior measurements, their covariance, and the factor for scatter:
//! Particle Data Group, *Review of Particle Physics*, chapters Statistics and Introduction (`from
//! memory`).

mod apply;
mod chance;
mod clash;
mod inputs;
mod lips;
mod reading;
mod rides;
mod search;
mod solve;
mod surface;
#[cfg(test)]
mod tests;

pub use apply::apply;
pub use inputs::What;
pub use lips::AtLip;
pub use reading::Use;

use crate::error::Fault;
use crate::judge::Unknown;
use crate::plan::{Observation, Plan};
use crate::setup;
use lips::at_lips;
use nalgebra::Cholesky;
use rides::{Rides, Told};
use search::Found;
use serde::Serialize;

/// An input is called unsure where the ride leaves it this much of the uncertainty it had before.
const UNSURE: f64 = 0.5;

/// An observation is called far off beyond this many standard deviations.
const FAR: f64 = 3.0;

/// One input as the test ride tells it. A factor on what is planned, or m/s, or a share of 1.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Input {
    /// Which.
    pub what: What,
    /// What the plan says: 1 for a factor.
    pub planned: f64,
    /// What was found.
    pub value: f64,
    /// One standard deviation of it.
    pub sigma: f64,
    /// One standard deviation before anything was seen.
    pub before: f64,
    /// Whether the ride tells much more of it than was known before.
    pub sure: bool,
}

/// One observation beside the ride that was found. Values in its own unit.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Seen {
    /// Index in the plan's list.
    pub index: usize,
    /// Whether it was used.
    pub used: Use,
    /// What the planned ride shows there; `None` where it never gets there.
    pub planned: Option<f64>,
    /// What the ride shows there with the inputs found.
    pub found: Option<f64>,
    /// How far off the measuring may be, one standard deviation.
    pub give_or_take: f64,
    /// How much rides that are all but alike scatter there, one standard deviation.
    pub scatter: f64,
    /// How far the observation lies from what was found, in standard deviations of both; positive
    /// where the ride shows more.
    pub off: f64,
}

/// What a rider's test ride teaches.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Fit {
    /// Index of the rider.
    pub rider: usize,
    /// The inputs.
    pub inputs: Vec<Input>,
    /// The rider's observations, in the plan's order.
    pub seen: Vec<Seen>,
    /// Root mean square of what is left between ride and observations, in their own standard
    /// deviations: about 1 where all is well.
    pub misfit: f64,
    /// Whether ride and observations go together: a misfit like this, or a worse one, comes about by
    /// chance more often than once in a thousand rides.
    pub agrees: bool,
    /// Observations that are far off, more than three standard deviations.
    pub far: Vec<usize>,
    /// Where they do not go together: each observation without which all the others do. One of them
    /// alone contradicts the rest; two contradict each other.
    pub doubted: Vec<usize>,
    /// What it means for the rest of the line.
    pub lips: Vec<AtLip>,
}

/// A rider's observations, their places in the plan's list, and the ride as planned.
struct Day {
    rides: Rides,
    places: Vec<usize>,
    planned: Told,
}

impl Day {
    /// # Errors
    /// Every fault of the plan, or that it has no such rider.
    fn of(plan: &Plan, rider: usize) -> Result<Self, Vec<Fault>> {
        setup::rider(plan, rider)?;
        let own = plan.seen.iter().enumerate();
        let own = own.filter(|(_, seen)| seen.rider() == rider);
        let (places, seen): (Vec<usize>, Vec<Observation>) =
            own.map(|(place, seen)| (place, seen.clone())).unzip();
        let mut rides = Rides::new(plan, rider, seen)?;
        let planned = rides.told(&rides.planned());
        rides.hold(&planned);
        Ok(Self {
            rides,
            places,
            planned,
        })
    }

    /// Whether nothing is used but what was carried: then the plan stands as it is, and how far the surface
    /// lies from the planned ride is no news.
    fn holds(&self, found: &Found) -> bool {
        let seen = &self.rides.seen;
        found.used.iter().all(|&i| seen[i].carried())
    }
}

/// What the planned ride shows of each thing that a rider is seen to do, in its own unit and in the plan's
/// order; `None` where it never gets there.
///
/// # Errors
/// Every fault of the plan, or that it has no such rider.
pub fn planned(plan: &Plan, rider: usize) -> Result<Vec<Option<f64>>, Vec<Fault>> {
    let readings = Day::of(plan, rider)?.planned.readings;
    Ok(readings.into_iter().map(Result::ok).collect())
}

/// How far the inputs may be off: what the observations that were carried to the plan leave of that.
///
/// # Errors
/// Every fault of the plan, or that it has no such rider.
pub fn left(plan: &Plan, rider: usize) -> Result<Unknown, Vec<Fault>> {
    let mut plan = plan.clone();
    plan.seen
        .retain(|seen| seen.carried() && seen.rider() == rider);
    if plan.seen.is_empty() {
        return Ok(Unknown::usual());
    }
    let day = Day::of(&plan, rider)?;
    let found = search::search(&day.rides, &search::first(&day.rides), None);
    let root = found.and_then(|found| Cholesky::new(found.solution.covariance));
    Ok(root.map_or_else(Unknown::usual, |root| {
        let rows = root.unpack();
        let row = |i: usize| rows.row(i).iter().copied().collect();
        Unknown::learnt(&(0..rows.nrows()).map(row).collect::<Vec<_>>())
    }))
}

/// Fits what is uncertain to what was seen when a rider rode; `None` where nothing was seen, or
/// nothing that can be used.
///
/// # Errors
/// Every fault of the plan, or that it has no such rider.
pub fn fit(plan: &Plan, rider: usize) -> Result<Option<Fit>, Vec<Fault>> {
    let day = Day::of(plan, rider)?;
    let Day { rides, places, .. } = &day;
    let first = search::first(rides);
    let Some(found) = search::search(rides, &first, None) else {
        return Ok(None);
    };
    let doubted = clash::doubted(rides, &first, &found);
    let solution = &found.solution;
    let far = found.used.iter().zip(&solution.off);
    let far = far
        .filter(|(_, off)| off.abs() > FAR)
        .map(|(&i, _)| places[i]);
    let count = found.used.len() as f64;
    let mut fit = Fit {
        rider,
        inputs: inputs_of(&day, &found),
        seen: seen(&day, &found),
        misfit: (solution.chi_square / count).sqrt(),
        agrees: solution.agrees(),
        far: far.collect(),
        doubted: doubted.iter().map(|&i| places[i]).collect(),
        lips: Vec::new(),
    };
    fit.lips = at_lips(plan, &fit, &day, &found)?;
    Ok(Some(fit))
}

fn inputs_of(day: &Day, found: &Found) -> Vec<Input> {
    let held = day.holds(found);
    let inputs = day.rides.inputs.iter().enumerate();
    let input = inputs.map(|(i, input)| {
        let sigma = found.solution.covariance[(i, i)].sqrt();
        let found = found.solution.values[i];
        Input {
            what: input.what,
            planned: input.planned,
            value: if held { input.planned } else { found },
            sigma,
            before: input.sigma,
            sure: sigma < UNSURE * input.sigma,
        }
    });
    input.collect()
}

fn seen(day: &Day, found: &Found) -> Vec<Seen> {
    let Day {
        rides,
        places,
        planned,
    } = day;
    let Found {
        solution, surfaces, ..
    } = found;
    let held = day.holds(found);
    let all = places.iter().zip(&planned.readings).enumerate();
    let seen = all.map(|(i, (&index, reading))| {
        let surface = surfaces.at(i, &solution.values);
        let place = found.used.iter().position(|&used| used == i);
        Seen {
            index,
            used: match (place, reading) {
                (Some(_), _) => Use::Used,
                (None, Err(why)) => *why,
                (None, Ok(_)) => Use::NeverThere,
            },
            planned: reading.ok(),
            found: if held {
                reading.ok()
            } else {
                surface.map(|(value, _)| value)
            },
            give_or_take: rides.seen[i].give_or_take(),
            scatter: surfaces.scatter(i, i).sqrt(),
            off: place.map_or(0.0, |k| solution.off[k]),
        }
    });
    seen.collect()
}
