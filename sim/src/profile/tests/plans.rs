//! The plan files that come with the project.

use super::*;

pub(super) const FILES: [&str; 7] = [
    include_str!("../../../plans/one_jump.json"),
    include_str!("../../../plans/steps.json"),
    include_str!("../../../plans/spine_and_bed.json"),
    include_str!("../../../plans/surveyed_yard.json"),
    include_str!("../../../plans/surveyed_line.json"),
    include_str!("../../../plans/orchard.json"),
    include_str!("../../../plans/tall_gap.json"),
];

#[test]
fn every_plan_file_is_valid_and_makes_a_whole_chain() {
    for text in FILES {
        let plan = Plan::from_json(text).expect("readable");
        assert_eq!(plan.validate(), [], "{}", plan.name);
        assert!(!built(&plan).lips.is_empty(), "{}", plan.name);
    }
}
