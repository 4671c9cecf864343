//! Observations that contradict each other.

use super::rides::Rides;
use super::search::{Found, search};
use super::surface::Surfaces;
use std::rc::Rc;

/// The observations without each of which the others go together, where all do not.
pub(crate) fn doubted(rides: &Rides, first: &Rc<Surfaces>, all: &Found) -> Vec<usize> {
    if all.solution.agrees() {
        return Vec::new();
    }
    let fine = |seen: &usize| {
        let rest = search(rides, first, Some(*seen));
        rest.is_some_and(|found| found.solution.agrees())
    };
    all.used.iter().copied().filter(fine).collect()
}
