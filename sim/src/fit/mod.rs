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
mod reading;
mod rides;
mod search;
mod solve;
mod surface;
#[cfg(test)]
mod tests;

pub use apply::apply;
pub use inputs::What;
pub use reading::Use;

use crate::error::Fault;
use crate::num;
use crate::plan::{Observation, Plan};
use crate::setup;
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

/// The speed at a lip with the inputs found, m/s.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AtLip {
    /// Index of the lip in the profile.
    pub lip: usize,
    /// As planned.
    pub planned: Option<f64>,
    /// As found.
    pub speed: Option<f64>,
    /// One standard deviation of that, from those of the inputs together.
    pub sigma: f64,
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

/// Fits what is uncertain to what was seen when a rider rode; `None` where nothing was seen, or
/// nothing that can be used.
///
/// # Errors
/// Every fault of the plan, or that it has no such rider.
pub fn fit(plan: &Plan, rider: usize) -> Result<Option<Fit>, Vec<Fault>> {
    setup::rider(plan, rider)?;
    let own = plan.seen.iter().enumerate();
    let own: Vec<(usize, &Observation)> = own.filter(|(_, o)| o.rider() == rider).collect();
    let places: Vec<usize> = own.iter().map(|(index, _)| *index).collect();
    let rides = Rides::new(plan, rider, own.into_iter().map(|(_, o)| o).collect())?;
    let planned: Vec<f64> = rides.inputs.iter().map(|input| input.planned).collect();
    let planned = rides.told(&planned);
    let first = search::first(&rides);
    let Some(found) = search::search(&rides, &first, None) else {
        return Ok(None);
    };
    let doubted = clash::doubted(&rides, &first, &found);
    let solution = &found.solution;
    let far = found.used.iter().zip(&solution.off);
    let far = far
        .filter(|(_, off)| off.abs() > FAR)
        .map(|(&i, _)| places[i]);
    let count = found.used.len() as f64;
    Ok(Some(Fit {
        rider,
        inputs: inputs_of(&rides, &found),
        seen: seen(&rides, &found, &planned, &places),
        misfit: (solution.chi_square / count).sqrt(),
        agrees: solution.agrees(),
        far: far.collect(),
        doubted: doubted.iter().map(|&i| places[i]).collect(),
        lips: at_lips(&rides, &found, &planned),
    }))
}

fn inputs_of(rides: &Rides, found: &Found) -> Vec<Input> {
    let inputs = rides.inputs.iter().enumerate();
    let input = inputs.map(|(i, input)| {
        // However much the observations scatter, no less is known than before.
        let sigma = num::min(found.solution.covariance[(i, i)].sqrt(), input.sigma);
        Input {
            what: input.what,
            planned: input.planned,
            value: found.solution.values[i],
            sigma,
            before: input.sigma,
            sure: sigma < UNSURE * input.sigma,
        }
    });
    input.collect()
}

fn seen(rides: &Rides, found: &Found, planned: &Told, places: &[usize]) -> Vec<Seen> {
    let Found {
        solution, surfaces, ..
    } = found;
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
            found: surface.map(|(value, _)| value),
            give_or_take: rides.seen[i].give_or_take(),
            scatter: surfaces.scatter(i, i).sqrt(),
            off: place.map_or(0.0, |k| solution.off[k]),
        }
    });
    seen.collect()
}

fn at_lips(rides: &Rides, found: &Found, planned: &Told) -> Vec<AtLip> {
    let Found {
        solution, surfaces, ..
    } = found;
    let lips = planned.lips.iter().enumerate();
    let lips = lips.map(|(lip, &planned)| {
        let quantity = rides.seen.len() + lip;
        let surface = surfaces.at(quantity, &solution.values);
        let (speed, slope) = surface.unzip();
        let inputs = slope.map_or(0.0, |g| g.dot(&(&solution.covariance * &g)));
        AtLip {
            lip,
            planned,
            speed,
            sigma: (inputs + surfaces.scatter(quantity, quantity)).sqrt(),
        }
    });
    lips.collect()
}
