//! What a season of settling does to a line.

use crate::num;
use crate::plan::{Feature, Jump, Landing, Line, Lip, Plan, StartRamp, Surface};
use serde::{Deserialize, Serialize};

/// How earth was heaped.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Placing {
    /// In thin layers, damp, each one packed.
    Packed,
    /// Shovelled up and beaten firm on the outside.
    #[default]
    Heaped,
}

/// How much of its height a heap loses until it has settled, as a share, where nothing better is known.
///
/// # References
/// 5 % of the height of a fill rolled in thin layers, 10 % of any other low one, whatever its soil (US Natural
/// Resources Conservation Service, Agriculture Handbook 590, Ponds, settlement allowance).
pub fn settling(placing: Placing) -> f64 {
    match placing {
        Placing::Packed => 0.05,
        Placing::Heaped => 0.10,
    }
}

/// The plan after every heap of dirt has lost a share of its height. What is of wood stays as it is; so does a lip of
/// wood with the dirt ramp under it, which is kept up to it.
///
/// Heights shrink, lengths along the ground stay: angles flatten as their tangents do, and arcs become as much wider as
/// they become lower. An arc that is squeezed is no circle any more; the circle through its ends stands for it.
pub fn settled(plan: &Plan, share: f64) -> Plan {
    let kept = 1.0 - share;
    let mut plan = plan.clone();
    if let Line::Features(features) = &mut plan.line {
        for feature in features {
            settle(feature, kept);
        }
    }
    plan
}

fn settle(feature: &mut Feature, kept: f64) {
    match feature {
        Feature::StartRamp(ramp) => settle_ramp(ramp, kept),
        Feature::Roller(roller) if roller.surface != Surface::Wood => roller.height *= kept,
        Feature::Turn(turn) if turn.surface != Surface::Wood => {
            turn.bank_deg = flatter(turn.bank_deg, kept);
        }
        Feature::Jump(Jump { lip, landing, .. }) => {
            settle_lip(lip, kept);
            settle_landing(landing, kept);
        }
        Feature::Flat(_) | Feature::Roller(_) | Feature::Turn(_) | Feature::RunOut(_) => {}
    }
}

fn settle_ramp(ramp: &mut StartRamp, kept: f64) {
    if ramp.surface == Surface::Wood {
        return;
    }
    ramp.platform_height *= kept;
    let flat = flatter(ramp.angle_deg, kept);
    ramp.edge_radius = wider(ramp.edge_radius, ramp.angle_deg, flat);
    ramp.bottom_radius = wider(ramp.bottom_radius, ramp.angle_deg, flat);
    ramp.angle_deg = flat;
}

/// A lip's arc of run L and height h has the radius (L² + h²)/(2h).
fn settle_lip(lip: &mut Lip, kept: f64) {
    if lip.surface == Surface::Wood {
        return;
    }
    let run = num::max(lip.height * (2.0 * lip.radius - lip.height), 0.0);
    let height = lip.height * kept;
    lip.radius = (run + height * height) / (2.0 * height);
    lip.height = height;
    if let Some(lead_in) = &mut lip.lead_in {
        let level = lead_in.length * num::cos(num::radians(lead_in.angle_deg));
        lead_in.angle_deg = flatter(lead_in.angle_deg, kept);
        lead_in.length = level / num::cos(num::radians(lead_in.angle_deg));
    }
}

fn settle_landing(landing: &mut Landing, kept: f64) {
    if landing.surface == Surface::Wood {
        return;
    }
    landing.height *= kept;
    let steep = landing.angle_deg;
    let flat = flatter(steep, kept);
    landing.knuckle_radius = wider(landing.knuckle_radius, steep, flat);
    landing.bottom_radius = wider(landing.bottom_radius, steep, flat);
    if let Some(length) = &mut landing.length {
        *length *= num::cos(num::radians(steep)) / num::cos(num::radians(flat));
    }
    landing.angle_deg = flat;
}

/// An angle whose tangent shrinks to a share, degrees.
fn flatter(degrees: f64, kept: f64) -> f64 {
    num::degrees(num::atan2(kept * num::tan(num::radians(degrees)), 1.0))
}

/// The radius of an arc that takes as much level room for a smaller turn, m.
fn wider(radius: f64, steep: f64, flat: f64) -> f64 {
    radius * num::sin(num::radians(steep)) / num::sin(num::radians(flat))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan;
    use crate::profile::Profile;
    use crate::profile::Under;

    /// A line of every kind of dirt.
    fn dirt() -> Plan {
        let mut plan = plan::demo();
        let Line::Features(features) = &mut plan.line else {
            panic!("it has features")
        };
        for feature in features {
            match feature {
                Feature::StartRamp(ramp) => ramp.surface = Surface::Packed,
                Feature::Jump(jump) => jump.lip.surface = Surface::Packed,
                _ => {}
            }
        }
        plan
    }

    #[test]
    fn what_has_settled_can_be_built_and_is_lower_by_the_share() {
        let plan = dirt();
        let before = Profile::build(&plan).expect("it can be built");
        for share in [0.05, 0.10, 0.25] {
            let settled = settled(&plan, share);
            let after = Profile::build(&settled).expect("it can be built");
            for (a, b) in before.lips.iter().zip(&after.lips) {
                let [run, ran] = [a, b].map(|lip| lip.edge.x - lip.foot.x);
                assert!((run - ran).abs() < 5e-3, "{run} {ran}");
                let over =
                    |profile: &Profile, p: glam::DVec2| p.y - Under(&profile.yard).height(p.x);
                for [x, y] in [[a.edge, b.edge], [a.knuckle, b.knuckle]] {
                    let ratio = over(&after, y) / over(&before, x);
                    assert!((ratio - (1.0 - share)).abs() < 1e-9, "{ratio}");
                }
            }
            let [end, ended] =
                [&before, &after].map(|p| p.pieces.last().expect("it has some").end.x);
            assert!((end - ended).abs() < 0.02 * end, "{end} {ended}");
        }
    }

    #[test]
    fn wood_does_not_settle() {
        let plan = plan::demo();
        let settled = settled(&plan, 0.1);
        let [Line::Features(a), Line::Features(b)] = [&plan.line, &settled.line] else {
            panic!("they have features")
        };
        for pair in a.iter().zip(b) {
            match pair {
                (Feature::StartRamp(a), Feature::StartRamp(b)) => assert_eq!(a, b),
                (Feature::Jump(a), Feature::Jump(b)) => {
                    assert_eq!(a.lip, b.lip);
                    assert!((b.landing.height - 0.9 * a.landing.height).abs() < 1e-12);
                }
                _ => {}
            }
        }
    }

    #[test]
    fn nothing_changes_without_settling() {
        let plan = dirt();
        let same = Profile::build(&settled(&plan, 0.0)).expect("it can be built");
        let before = Profile::build(&plan).expect("it can be built");
        for (a, b) in before.pieces.iter().zip(&same.pieces) {
            assert!(a.end.distance(b.end) < 1e-9);
        }
    }
}
