//! Prints links to varied plans, one to a line: `links > tests/golden/links.txt`.
//!
//! Every plan file, and members of the family with another rider's style, skill, posture, tyres and
//! day on each: what a ride can meet, so that bits which differ anywhere come to light.

use sim::link;
use sim::plan::{Feature, Ground, Line, Plan, Style, Turn};
use tests::family::member;

/// Members of the family beside the plan files.
const MEMBERS: u64 = 56;

fn main() {
    let mut files: Vec<_> = std::fs::read_dir(tests::repository().join("sim/plans"))
        .expect("the plan files are there")
        .map(|file| file.expect("a folder can be read").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "json"))
        .collect();
    files.sort();
    for file in files {
        let text = std::fs::read_to_string(file).expect("a plan file is text");
        println!(
            "{}",
            link::encode(&Plan::from_json(&text).expect("it is a plan"))
        );
    }
    for seed in 0..MEMBERS {
        let mut plan = member(seed).plan;
        vary(&mut plan, seed);
        println!("{}", link::encode(&plan));
    }
}

fn vary(plan: &mut Plan, seed: u64) {
    let share = |of: u64| (seed % of) as f64 / (of - 1) as f64;
    let mount = &mut plan.riders[0];
    mount.rider.style = [Style::Absorbing, Style::Pumping, Style::Passive][(seed % 3) as usize];
    mount.rider.skill = 0.4 + 0.6 * share(4);
    mount.rider.posture = share(5);
    mount.bike.tyre_stiffness = (seed % 2 == 1).then_some(40_000.0 + 60_000.0 * share(7));
    plan.weather.tailwind = -3.0 + 6.0 * share(6);
    plan.weather.altitude = 1500.0 * share(8);
    plan.weather.ground = [Ground::Dry, Ground::Damp, Ground::Soft][(seed / 3 % 3) as usize];
    if let (true, Line::Features(features)) = (seed % 4 == 2, &mut plan.line) {
        let turn = Turn {
            radius: 6.0,
            sweep_deg: 50.0,
            bank_deg: 20.0,
            surface: Default::default(),
            width: None,
        };
        features.insert(features.len() - 1, Feature::Turn(turn));
    }
}
