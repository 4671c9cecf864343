//! The plan files that come with the project.

use super::*;

pub(super) const FILES: [&str; 5] = [
    include_str!("../../../plans/orchard.json"),
    include_str!("../../../plans/steps.json"),
    include_str!("../../../plans/spine_and_bed.json"),
    include_str!("../../../plans/surveyed_yard.json"),
    include_str!("../../../plans/surveyed_line.json"),
];

#[test]
fn every_plan_file_is_valid_and_makes_a_whole_chain() {
    for text in FILES {
        let plan = Plan::from_json(text).expect("readable");
        let faults = plan.validate();
        assert!(faults.is_empty(), "{}: {faults:#?}", plan.name);
        let profile = Profile::build(&plan).expect("valid");
        assert_whole(&profile);
        println!("## {}", plan.name);
        for p in &profile.pieces {
            println!(
                "{:8.3} {:8.3} -> {:8.3} {:8.3}  {:6.2} {:6.2} {:.3} {:.3} {:?}",
                p.start.x,
                p.start.y,
                p.end.x,
                p.end.y,
                crate::num::degrees(p.heading),
                crate::num::degrees(p.end_heading()),
                p.length,
                p.curvature,
                p.character.intent
            );
        }
        for l in &profile.lips {
            println!("{l:?}");
        }
    }
}
