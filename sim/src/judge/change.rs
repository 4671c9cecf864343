//! The same plan with one thing changed, and the smallest change that does something.

use super::jump::{How, JumpRow, jumps};
use crate::plan::{Feature, Line, Plan};
use crate::setup::ride_plan;

/// How often the way to the smallest change is halved.
const HALVINGS: u32 = 6;

/// A plan with its features changed; `None` where the line was surveyed.
pub(super) fn with(plan: &Plan, change: impl FnOnce(&mut Vec<Feature>)) -> Option<Plan> {
    let mut plan = plan.clone();
    let Line::Features(features) = &mut plan.line else {
        return None;
    };
    change(features);
    Some(plan)
}

/// The jumps of a plan as one of its riders rides them; `None` where the plan has faults.
pub(super) fn rows(plan: &Plan, rider: usize) -> Option<Vec<JumpRow>> {
    let ridden = ride_plan(plan, rider).ok()?;
    Some(jumps(&ridden.profile, &ridden.run))
}

/// How one jump of a plan goes.
pub(super) fn how(plan: &Plan, rider: usize, lip: usize) -> Option<How> {
    Some(rows(plan, rider)?.get(lip)?.how)
}

/// The smallest amount up to `most` at which `works` is true, found from `steps` even steps and
/// then by halving; `None` where none of the steps works.
pub(super) fn smallest(most: f64, steps: u32, works: impl Fn(f64) -> bool) -> Option<f64> {
    if most <= 0.0 {
        return None;
    }
    let step = most / f64::from(steps);
    let found = (1..=steps).find(|&i| works(step * f64::from(i)))?;
    let (mut no, mut yes) = (step * f64::from(found - 1), step * f64::from(found));
    for _ in 0..HALVINGS {
        let middle = 0.5 * (no + yes);
        if works(middle) {
            yes = middle;
        } else {
            no = middle;
        }
    }
    Some(yes)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_smallest_that_works_is_found_and_works() {
        let found = smallest(2.0, 8, |x| x > 0.7).expect("some work");
        assert!(found > 0.7 && found < 0.71);
        assert_eq!(smallest(2.0, 8, |_| false), None);
    }
}
