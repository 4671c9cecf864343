//! A seeded family of lines for links and for accuracy: steeper yards and taller lips than those that the rider
//! is judged on.
//!
//! Start ramps, none to three rollers, one to three jumps with lips 0.3 to 1.2 m high on circles of
//! 1.8 to 4 m and landings of 18° to 35°; children of 6, 10 and 14 and an adult on fitting wheels.
//! Each gap is placed by a ballistic estimate from the speed and direction that the model itself has
//! at the edge, so that the rear wheel comes down 0.3 to 1 m past the knuckle.

use crate::rider::estimate::{Stance, fit};
use crate::rider::landed::Landed;
use crate::rider::place::ride;
use crate::rider::riders;
use fastrand::Rng;
use sim::plan::{
    Feature, Flat, Jump, Landing, Line, Lip, Mount, Plan, Roller, RunOut, StartRamp, Surface,
    USUAL_WIDTH, Weather, Yard,
};
use sim::setup;

/// A line of the family.
pub struct Member {
    /// The plan; every jump's gap placed.
    pub plan: Plan,
    /// How many of the jumps were placed: beyond them the rider was too slow for any gap.
    pub placed: usize,
}

/// Radius over which every knuckle is rounded, m.
const KNUCKLE: f64 = 0.3;

/// The member of the family with a seed.
pub fn member(seed: u64) -> Member {
    let mut rng = Rng::with_seed(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ 0x0CA2_217E);
    let rider = riders::all()[rng.usize(0..4)].clone();
    let mut features = opening(&mut rng);
    let jumps = 1 + rng.usize(0..3);
    let grade = -pick(&mut rng, 0.0, 0.08);
    let stance = stance(&rider);
    let mut placed = 0;
    for k in 0..jumps {
        let aim = pick(&mut rng, 0.3, 1.0);
        let mut jump = jump(&mut rng);
        let flat = pick(&mut rng, 2.0, 5.0);
        let mut trial = features.clone();
        jump.gap = 3.0;
        trial.push(Feature::Jump(jump.clone()));
        let ridden = ride(&plan(trial, grade, &rider));
        let left = Landed::over(&ridden, k).off.map(|off| off.left);
        let Some(gap) = left.and_then(|left| fit(&mut jump, left, stance, grade, aim)) else {
            break;
        };
        jump.gap = gap;
        features.push(Feature::Jump(jump));
        features.push(Feature::Flat(Flat {
            length: flat,
            surface: Surface::Packed,
        }));
        placed += 1;
    }
    features.push(Feature::RunOut(RunOut {
        length: 12.0,
        surface: Surface::Packed,
    }));
    Member {
        plan: plan(features, grade, &rider),
        placed,
    }
}

/// The bike at touch-down: legs are nearly long as they come down.
fn stance(rider: &Mount) -> Stance {
    let m = setup::mount(rider, &Weather::default());
    Stance::with_reach(rider, m.reach_usual + 0.7 * (m.reach_high - m.reach_usual))
}

fn pick(rng: &mut Rng, low: f64, high: f64) -> f64 {
    low + rng.f64() * (high - low)
}

fn opening(rng: &mut Rng) -> Vec<Feature> {
    let mut features = vec![Feature::StartRamp(StartRamp {
        platform_height: pick(rng, 1.6, 4.0),
        angle_deg: pick(rng, 25.0, 40.0),
        bottom_radius: pick(rng, 2.5, 4.0),
        edge_radius: 0.8,
        push_off: pick(rng, 0.8, 1.6),
        surface: Surface::Wood,
        width: None,
    })];
    features.push(flat(rng, 1.0, 3.0));
    for _ in 0..rng.usize(0..4) {
        let length = pick(rng, 2.2, 4.2);
        features.push(Feature::Roller(Roller {
            height: length * pick(rng, 0.06, 0.13),
            length,
            count: 1,
            surface: Surface::Packed,
            width: None,
        }));
    }
    features.push(flat(rng, 1.5, 4.0));
    features
}

fn flat(rng: &mut Rng, low: f64, high: f64) -> Feature {
    Feature::Flat(Flat {
        length: pick(rng, low, high),
        surface: Surface::Packed,
    })
}

fn jump(rng: &mut Rng) -> Jump {
    let height = pick(rng, 0.3, 1.2);
    let landing = (height * pick(rng, 0.7, 1.2)).max(0.3);
    let angle_deg = pick(rng, 18.0, 35.0);
    // A low steep landing leaves room for no more than this between its two arcs.
    let room = 0.9 * landing / (1.0 - angle_deg.to_radians().cos()) - KNUCKLE;
    Jump {
        lip: Lip {
            height,
            radius: pick(rng, 1.8, 4.0),
            lead_in: None,
            straight_end: None,
            surface: Surface::Wood,
            width: None,
        },
        gap: 0.0,
        decked: false,
        landing: Landing {
            height: landing,
            angle_deg,
            knuckle_radius: KNUCKLE,
            bottom_radius: pick(rng, 2.5, 4.0).min(room),
            length: None,
            surface: Surface::Packed,
            boxed: false,
            width: None,
        },
    }
}

fn plan(features: Vec<Feature>, grade: f64, rider: &Mount) -> Plan {
    Plan {
        name: "Family".into(),
        yard: Yard::even(120.0, grade),
        line: Line::Features(features),
        riders: vec![rider.clone()],
        weather: Weather::default(),
        initial_speed: None,
        seen: Vec::new(),
        seed: 0,
        width: USUAL_WIDTH,
    }
}
