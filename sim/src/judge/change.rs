//! The same plan with one thing changed, and the smallest change that does something.

use super::jump::{How, JumpRow, behind, jumps};
use crate::plan::{Feature, Line, Plan};
use crate::profile::Profile;
use crate::setup::{ride_plan, ride_plan_to};

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
    let place = |profile: &Profile| profile.lips.get(lip).map_or(0.0, behind);
    let ridden = ride_plan_to(plan, rider, place).ok()?;
    Some(jumps(&ridden.profile, &ridden.run).get(lip)?.how)
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
    use crate::{num, plan};

    /// Also where jumps end otherwise than clean, some of them for what lies before.
    #[test]
    fn a_jump_goes_as_it_does_in_the_whole_ride() {
        let files = [
            include_str!("../../plans/steps.json"),
            include_str!("../../plans/spine_and_bed.json"),
            include_str!("../../plans/three_tables.json"),
        ];
        let files = files.map(|text| Plan::from_json(text).expect("a plan file"));
        let mut seen: Vec<How> = Vec::new();
        for plan in files.into_iter().chain([plan::demo()]) {
            for by in [-0.6, 0.0, 0.7, 1.6] {
                let changed = with(&plan, |features| {
                    for feature in features {
                        if let Feature::Jump(jump) = feature {
                            jump.gap = num::max(jump.gap + by, 0.0);
                        }
                    }
                });
                let changed = changed.expect("it has features");
                for (lip, row) in rows(&changed, 0).into_iter().flatten().enumerate() {
                    assert_eq!(
                        how(&changed, 0, lip),
                        Some(row.how),
                        "{} {by} {lip}",
                        plan.name
                    );
                    if !seen.contains(&row.how) {
                        seen.push(row.how);
                    }
                }
            }
        }
        assert!(seen.len() > 3, "{seen:?}");
    }

    #[test]
    fn the_smallest_that_works_is_found_and_works() {
        let found = smallest(2.0, 8, |x| x > 0.7).expect("some work");
        assert!(found > 0.7 && found < 0.71);
        assert_eq!(smallest(2.0, 8, |_| false), None);
    }
}
