//! From a wide box of inputs to a narrow one about those that fit.

use super::clash;
use super::inputs::Uncertain;
use super::reading::Use;
use super::rides::Rides;
use super::solve::{Solution, solve};
use super::surface::{Span, Surfaces};
use crate::num;

/// Half of the first box, in the standard deviations of the inputs before anything was seen.
const WIDE: f64 = 1.5;

/// Half of a later box, in the standard deviations of what was found; and the least, in those from
/// before, for a ride that tells very much.
const NARROW: f64 = 3.0;
const LEAST: f64 = 0.2;

/// A box this much narrower is worth riding again for.
const WORTH: f64 = 0.6;

/// Most boxes that are ridden.
const BOXES: u32 = 4;

/// What was found.
pub(super) struct Found {
    pub surfaces: Surfaces,
    /// The observations that could be used.
    pub used: Vec<usize>,
    pub solution: Solution,
    /// Those without each of which the others go together, where all do not.
    pub doubted: Vec<usize>,
}

/// Looks for the inputs that fit best; `None` where no observation can be used.
pub(super) fn search(rides: &Rides) -> Option<Found> {
    let mut surfaces = first(rides);
    for left in (0..BOXES).rev() {
        let all = 0..rides.seen.len();
        let used: Vec<usize> = all.filter(|&seen| surfaces.has(seen)).collect();
        if used.is_empty() {
            return None;
        }
        let solution = solve(rides, &surfaces, &used);
        let doubted = if solution.agrees() {
            Vec::new()
        } else {
            clash::doubted(rides, &surfaces, &used)
        };
        let next = next(rides, &surfaces.span, &solution);
        match next {
            Some(span) if left > 0 && solution.agrees() => {
                surfaces = Surfaces::ridden(rides, span);
            }
            _ => {
                return Some(Found {
                    surfaces,
                    used,
                    solution,
                    doubted,
                });
            }
        }
    }
    None
}

/// All about what is planned; or about something quicker, where that ends too soon to show all.
fn first(rides: &Rides) -> Surfaces {
    let about = |centre: fn(&Uncertain) -> f64| Span {
        centre: rides.inputs.iter().map(centre).collect(),
        half: rides.inputs.iter().map(|i| WIDE * i.sigma).collect(),
    };
    let planned = Surfaces::ridden(rides, about(|input| input.planned));
    let count = |s: &Surfaces| (0..rides.seen.len()).filter(|&i| s.has(i)).count();
    let shown = rides.told(&planned.span.centre).readings;
    let never = |r: &Result<f64, Use>| *r == Err(Use::NeverThere);
    if !shown.iter().any(never) {
        return planned;
    }
    let quick = Surfaces::ridden(rides, about(Uncertain::quick));
    if count(&quick) > count(&planned) {
        quick
    } else {
        planned
    }
}

/// The box to ride next; `None` where the last one is narrow enough and holds what was found.
fn next(rides: &Rides, last: &Span, solution: &Solution) -> Option<Span> {
    let mut worth = false;
    let mut half = Vec::new();
    for (i, input) in rides.inputs.iter().enumerate() {
        let known = NARROW * solution.stated[(i, i)].sqrt();
        half.push(num::clamp(known, LEAST * input.sigma, WIDE * input.sigma));
        let outside = (solution.values[i] - last.centre[i]).abs() > last.half[i];
        worth |= outside || half[i] < WORTH * last.half[i];
    }
    worth.then(|| Span {
        centre: solution.values.clone(),
        half,
    })
}
