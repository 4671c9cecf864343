//! The lines of the made-up rides, short ones, and what is looked at on each.

use super::made_up::Look::{self, Landing, Speed, Stop, Time};
use sim::plan::{
    Feature, Flat, Jump, Landing as Slope, Line, Lip, Plan, Roller, RunOut, StartRamp, Style,
    Surface, Yard, demo,
};

/// A line with its rider, and what is looked at on a test day.
pub struct Day {
    pub name: &'static str,
    pub plan: Plan,
    pub looks: Vec<Look>,
}

fn flat(length: f64) -> Feature {
    Feature::Flat(Flat {
        length,
        surface: Surface::Packed,
    })
}

fn plan(grade: f64, features: Vec<Feature>) -> Plan {
    let mut plan = demo();
    plan.yard = Yard::even(80.0, grade);
    plan.line = Line::Features(features);
    plan.riders.truncate(1);
    plan
}

/// A ramp and a jump: two flags, two speeds, and the mark of the rear wheel.
pub fn one_jump() -> Day {
    let ramp = Feature::StartRamp(StartRamp {
        platform_height: 1.8,
        angle_deg: 35.0,
        bottom_radius: 3.0,
        edge_radius: 0.8,
        push_off: 1.2,
        surface: Surface::Wood,
        width: None,
    });
    let jump = Feature::Jump(Jump {
        lip: Lip {
            height: 0.5,
            radius: 3.0,
            lead_in: None,
            straight_end: None,
            surface: Surface::Wood,
            width: None,
        },
        gap: 1.2,
        decked: false,
        landing: Slope {
            height: 0.5,
            angle_deg: 20.0,
            knuckle_radius: 0.6,
            bottom_radius: 3.0,
            length: None,
            surface: Surface::Packed,
            boxed: false,
            width: None,
        },
    });
    Day {
        name: "one jump",
        plan: plan(-0.04, vec![ramp, flat(8.0), jump, flat(3.0)]),
        looks: vec![
            Time(0.0, 6.0),
            Time(6.0, 12.0),
            Speed(6.0),
            Speed(12.0),
            Landing(0),
        ],
    }
}

/// Rollers under a rider who pumps: flags and speeds before, among and behind them.
pub fn pumped() -> Day {
    let rollers = Feature::Roller(Roller {
        height: 0.3,
        length: 3.2,
        count: 3,
        surface: Surface::Packed,
        width: None,
    });
    let mut plan = plan(-0.03, vec![flat(6.0), rollers, flat(2.0)]);
    plan.initial_speed = Some(4.5);
    plan.riders[0].rider.style = Style::Pumping;
    plan.riders[0].rider.skill = 0.7;
    Day {
        name: "pumped rollers",
        plan,
        looks: vec![
            Time(0.0, 5.0),
            Speed(5.0),
            Time(5.0, 16.5),
            Speed(12.4),
            Speed(16.5),
        ],
    }
}

/// Along the flat and out onto loose dirt, to a stand: two stretches timed, one speed, the stop.
pub fn rolled_out() -> Day {
    let run_out = Feature::RunOut(RunOut {
        length: 30.0,
        surface: Surface::Soft,
    });
    let mut plan = plan(0.0, vec![flat(5.0), run_out]);
    plan.initial_speed = Some(3.5);
    Day {
        name: "rolled out",
        plan,
        looks: vec![Time(0.0, 4.0), Time(4.0, 8.0), Speed(5.0), Stop],
    }
}
