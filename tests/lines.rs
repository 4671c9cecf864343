//! Lines for comparing the ride with other solvers, and who rides them.

use crate::rider::riders;
use sim::plan::{
    Feature, Flat, Jump, Landing, Line, Lip, Plan, Roller, RunOut, StartRamp, Surface, USUAL_WIDTH,
    Weather, Yard,
};
use sim::ride::Mount;
use sim::setup;

/// Speed at which every ride begins, m/s.
pub const PUSH_OFF: f64 = 1.0;

/// The family's riders.
pub const RIDERS: [&str; 4] = ["child of 6", "child of 10", "child of 14", "adult"];

/// A line with the name it has in the tables.
pub struct Named {
    /// The name.
    pub name: String,
    /// The line, with the family's riders.
    pub plan: Plan,
}

/// A start ramp that falls 20° over edges so wide that no wheel leaves it, and level dirt.
fn start(platform_height: f64) -> Vec<Feature> {
    let ramp = Feature::StartRamp(StartRamp {
        platform_height,
        angle_deg: 20.0,
        bottom_radius: 5.0,
        edge_radius: 5.0,
        push_off: PUSH_OFF,
        surface: Surface::Wood,
        width: None,
    });
    vec![ramp, flat(3.0)]
}

fn flat(length: f64) -> Feature {
    Feature::Flat(Flat {
        length,
        surface: Surface::Packed,
    })
}

/// A start ramp of a height, m, and level ground.
pub fn ramp(height: f64) -> Named {
    let mut features = start(height);
    features.push(flat(6.0));
    named(format!("ramp {height} m"), features)
}

/// A start ramp and a row of rollers; heights and length in m.
pub fn rollers(ramp: f64, height: f64, length: f64, count: u32) -> Named {
    let mut features = start(ramp);
    features.push(Feature::Roller(Roller {
        height,
        length,
        count,
        surface: Surface::Packed,
        width: None,
    }));
    features.push(flat(4.0));
    let name = format!("ramp {ramp} m, {count} rollers {height} m by {length} m");
    named(name, features)
}

/// A start ramp and a wooden lip; heights and radius in m.
pub fn lip(ramp: f64, height: f64, radius: f64) -> Named {
    let mut features = start(ramp);
    features.push(Feature::Jump(Jump {
        lip: Lip {
            height,
            radius,
            lead_in: None,
            straight_end: None,
            surface: Surface::Wood,
            width: None,
        },
        gap: 2.0,
        decked: false,
        landing: Landing {
            height: 0.6,
            angle_deg: 22.0,
            knuckle_radius: 0.3,
            bottom_radius: 3.0,
            length: None,
            surface: Surface::Packed,
            boxed: false,
            width: None,
        },
    }));
    named(
        format!("ramp {ramp} m, lip {height} m on R {radius} m"),
        features,
    )
}

fn named(name: String, mut features: Vec<Feature>) -> Named {
    features.push(Feature::RunOut(RunOut {
        length: 12.0,
        surface: Surface::Packed,
    }));
    let plan = Plan {
        name: name.clone(),
        yard: Yard::even(150.0, 0.0),
        line: Line::Features(features),
        riders: riders::all().into(),
        weather: Weather::default(),
        initial_speed: None,
        seen: Vec::new(),
        seed: 0,
        width: USUAL_WIDTH,
    };
    Named { name, plan }
}

/// One of the family's riders, by place in [`RIDERS`].
pub fn mount(rider: usize) -> Mount {
    setup::mount(&riders::all()[rider], &Weather::default())
}
