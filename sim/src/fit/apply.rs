//! Carrying a fit to the rest of the line.

use super::{Fit, Use, What};
use crate::num;
use crate::plan::{Feature, Line, Plan};

/// The plan with what was found in place of what was planned, rounded far below what is known; what it was
/// found from is carried from then on.
///
/// The ground is everybody's: rolling resistance changes for every rider's bike. The speed at the
/// start belongs to the line. Drag area and skill are those of the rider who rode.
pub fn apply(plan: &Plan, fit: &Fit) -> Plan {
    let mut plan = plan.clone();
    for input in &fit.inputs {
        match input.what {
            What::Rolling => {
                for mount in &mut plan.riders {
                    let changed = |c: f64| rounded(c * input.value, 1e5);
                    mount.bike.rolling = mount.bike.rolling.map(changed);
                }
            }
            What::Drag => {
                if let Some(mount) = plan.riders.get_mut(fit.rider) {
                    mount.rider.drag_area = rounded(mount.rider.drag_area * input.value, 1e3);
                }
            }
            What::Start => start(&mut plan, rounded(input.value, 1e2)),
            What::Skill => {
                if let Some(mount) = plan.riders.get_mut(fit.rider) {
                    mount.rider.skill = rounded(input.value, 1e2);
                }
            }
        }
    }
    let used = fit.seen.iter().filter(|seen| seen.used == Use::Used);
    for seen in used {
        if let Some(observation) = plan.seen.get_mut(seen.index) {
            observation.carry();
        }
    }
    plan
}

fn rounded(value: f64, parts: f64) -> f64 {
    num::max((value * parts).round() / parts, 0.0)
}

fn start(plan: &mut Plan, speed: f64) {
    if plan.initial_speed.is_some() {
        plan.initial_speed = Some(speed);
    } else if let Line::Features(features) = &mut plan.line
        && let Some(Feature::StartRamp(ramp)) = features.first_mut()
    {
        ramp.push_off = speed;
    }
}
