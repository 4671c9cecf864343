//! From a wide box of inputs to a narrow one about those that fit.

use super::inputs::Uncertain;
use super::reading::Use;
use super::rides::Rides;
use super::solve::{Solution, solve};
use super::surface::{Side, Surfaces};
use crate::num;
use std::rc::Rc;

/// Half of the first box, in the standard deviations of the inputs before anything was seen.
const WIDE: f64 = 1.5;

/// Half of a later box, in the standard deviations of what was found; and the least, in those from
/// before, for a ride that tells very much.
const NARROW: f64 = 2.0;
const LEAST: f64 = 0.2;

/// A box this much narrower is worth riding again for.
const WORTH: f64 = 0.6;

/// Nearer than this to the end of a side, as a share of half of it, what fits may lie outside.
const EDGE: f64 = 0.8;

/// Most boxes that are ridden.
const BOXES: u32 = 6;

/// What was found.
pub(crate) struct Found {
    pub surfaces: Rc<Surfaces>,
    /// The observations that could be used.
    pub used: Vec<usize>,
    pub solution: Solution,
}

/// Looks for the inputs that fit best, beginning with a box that was ridden; `without` is an
/// observation that is left out. `None` where none can be used.
pub(crate) fn search(rides: &Rides, first: &Rc<Surfaces>, without: Option<usize>) -> Option<Found> {
    let mut surfaces = Rc::clone(first);
    let mut left = BOXES;
    loop {
        left -= 1;
        let all = 0..rides.seen.len();
        let used = all.filter(|&seen| surfaces.has(seen) && Some(seen) != without);
        let used: Vec<usize> = used.collect();
        if used.is_empty() {
            return None;
        }
        let solution = solve(rides, &surfaces, &used);
        match next(rides, &surfaces.sides, &solution) {
            Some(sides) if left > 0 => surfaces = Rc::new(Surfaces::ridden(rides, sides)),
            _ => {
                return Some(Found {
                    surfaces,
                    used,
                    solution,
                });
            }
        }
    }
}

/// All about what is planned; or about something quicker, where that ends too soon to show all.
pub(crate) fn first(rides: &Rides) -> Rc<Surfaces> {
    let about = |middle: fn(&Uncertain) -> f64| {
        let side = |i: &Uncertain| Side::about(middle(i), WIDE * i.sigma, i.within);
        Surfaces::ridden(rides, rides.inputs.iter().map(side).collect())
    };
    let planned = about(|input| input.planned);
    let values: Vec<f64> = planned.sides.iter().map(|side| side.middle).collect();
    let shown = rides.told(&values).readings;
    if !shown.contains(&Err(Use::NeverThere)) {
        return Rc::new(planned);
    }
    let quick = about(Uncertain::quick);
    let count = |s: &Surfaces| (0..rides.seen.len()).filter(|&i| s.has(i)).count();
    let more = count(&quick) > count(&planned);
    Rc::new(if more { quick } else { planned })
}

/// The box to ride next; `None` where the last one is narrow enough and holds what was found.
fn next(rides: &Rides, last: &[Side], solution: &Solution) -> Option<Vec<Side>> {
    let mut worth = false;
    let mut sides = Vec::new();
    for (i, (input, last)) in rides.inputs.iter().zip(last).enumerate() {
        let known = NARROW * solution.stated[(i, i)].sqrt();
        let known = num::clamp(known, LEAST * input.sigma, WIDE * input.sigma);
        let value = solution.values[i];
        let at_edge = last.share(value).abs() > EDGE;
        let half = if at_edge { last.half } else { known };
        let side = Side::about(value, half, input.within);
        // At the end of an input's own limits there is nowhere to go on to.
        let moved = (side.middle - last.middle).abs() > 0.5 * last.half;
        worth |= (at_edge && moved) || side.half < WORTH * last.half;
        sides.push(side);
    }
    worth.then_some(sides)
}
