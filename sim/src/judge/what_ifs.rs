//! The what-ifs: the inputs that nobody knows well, each at either end.
//!
//! Rolling resistance, drag area, wind and the push-off are never known well in a yard, and what the
//! rider will do, and how well, is known least of all. And nobody digs to the centimetre: what bears on
//! the speeds is a little off, and so is what comes of them, gaps and lips. Each of these eight is taken at the end that
//! slows, or lets a jump come up short, and at the other. Of the 256 combinations sixteen are ridden
//! beside the ride planned: every one of the first four inputs, and each of the other four where an odd
//! number of three of those are quick. So each input is at either end in eight rides, any two or three
//! of them meet in every way equally often, and the two rides in which all eight slow or all eight
//! quicken are there.
//!
//! What a test ride has told of the first inputs takes the place of what is usual: see [`Unknown`].
//!
//! # References
//! Box and Hunter 1961, Technometrics 3:311-351: a sixteenth of all combinations, of resolution IV.

use super::dug::as_dug;
use super::jump::{JumpRow, jumps};
use crate::error::Fault;
use crate::num;
use crate::plan::Plan;
use crate::profile::Profile;
use crate::ride::{Accuracy, Legs, Mount, ride};
use crate::setup;
use std::cell::OnceCell;

/// Rolling resistance, as shares of what the plan says.
///
/// Packed dirt is planned as 0.016 and given as 0.012 to 0.02, other ground likewise as a middle with
/// a quarter to a third either way (Wilson, *Bicycling Science*, `from memory`; no measured value of
/// packed dirt or grass could be found).
pub const ROLLING: [f64; 2] = [1.3, 0.7];

/// Drag area, as shares of what the plan says.
///
/// Half the way between a racer's crouch and sitting upright: the two formulas of Bassett et al. 1999
/// (Med. Sci. Sports Exerc. 31:1665) and its upright form give 0.223 and 0.318 m² for a child of ten.
pub const DRAG: [f64; 2] = [1.18, 0.82];

/// Wind along the line beside what the plan says, m/s: up to here it is not felt on the face.
///
/// Upper end of force 1 of the Beaufort scale (WMO-No. 306).
const WIND: [f64; 2] = [-1.5, 1.5];

/// Speed at the start beside what the plan says, m/s: one push is not like the other
/// (common practice, no source).
pub const START: [f64; 2] = [-0.3, 0.3];

/// Skill beside what the plan says, on its scale from 0 to 1 and within it
/// (common practice, no source).
pub const SKILL: [f64; 2] = [-0.2, 0.2];

/// How stiff a rider may stay who is meant to soak up: a fifth of the way to a board, as far as skill is
/// taken either way (common practice, no source).
const STIFFER: f64 = 0.2;

/// How stiff a rider may be at the least who is meant to stand stiff as a board: half, as legs give way
/// by themselves (common practice, no source).
const GIVING: f64 = 0.5;

/// How well a rider may pump who is meant to soak up, of the skill there is: half, as nobody means to
/// (common practice, no source).
const PUMPING_A_LITTLE: f64 = 0.5;

/// The corner in which everything slows.
pub(super) const SLOWEST: usize = 0;

/// Rides beside the one planned: a sixteenth of all combinations.
pub(super) const CORNERS: usize = 1 << (INPUTS - 4);

/// How many inputs are taken at either end.
const INPUTS: usize = 8;

/// How many inputs a test ride may tell more of: rolling, drag, start and skill.
const LEARNT: usize = 4;

/// What is not known of a ride, and how far it may be off.
#[derive(Clone, Debug, PartialEq)]
pub struct Unknown {
    /// Rolling, drag, start and skill, as so many steps that have nothing to do with each other: each takes
    /// the four by so much toward what quickens its own. Factors on what is planned, m/s, and a share of 1.
    steps: [[f64; LEARNT]; LEARNT],
    /// Whether the rider has ridden the line: what the legs do by habit and what was dug is in what was seen.
    ridden: bool,
}

impl Unknown {
    /// Before anybody rode: each input by itself, over its usual range.
    pub fn usual() -> Self {
        let mut steps = [[0.0; LEARNT]; LEARNT];
        let ranges = [ROLLING, DRAG, START, SKILL];
        for (i, [slow, quick]) in ranges.into_iter().enumerate() {
            steps[i][i] = 0.5 * (quick - slow);
        }
        let ridden = false;
        Self { steps, ridden }
    }

    /// What a test ride leaves: `root` is the lower root of the covariance of the first inputs, row by row.
    /// The wind of another day is as little known as before.
    pub fn learnt(root: &[Vec<f64>]) -> Self {
        let mut steps = [[0.0; LEARNT]; LEARNT];
        for (i, row) in root.iter().enumerate().take(LEARNT) {
            for (j, &share) in row.iter().enumerate().take(i + 1) {
                // The first two quicken where they are less.
                steps[j][i] = if j < 2 { -share } else { share };
            }
        }
        let ridden = true;
        Self { steps, ridden }
    }

    /// How far each of the four is off with each step at an end.
    fn off(&self, ends: [usize; LEARNT]) -> [f64; LEARNT] {
        let mut off = [0.0; LEARNT];
        for (step, end) in self.steps.iter().zip(ends) {
            for (sum, by) in off.iter_mut().zip(step) {
                *sum += by * [-1.0, 1.0][end];
            }
        }
        off
    }
}

/// At which end each input is in ride `i`: 0 slows, 1 quickens. In the order rolling, drag, wind,
/// start, skill, habit, what is dug for the speeds, what is dug for the flights.
fn ends(i: usize) -> [usize; INPUTS] {
    let [a, b, c, d] = [0, 1, 2, 3].map(|input| (i >> input) & 1);
    [a, b, c, d, a ^ b ^ c, b ^ c ^ d, a ^ b ^ d, a ^ c ^ d]
}

/// A plan with one of its riders, ready to be ridden otherwise.
pub(super) struct WhatIfs {
    plan: Plan,
    planned: Profile,
    /// The ground with both of what is dug at either end, once it is asked for.
    dug: [[OnceCell<Profile>; 2]; 2],
    mount: Mount,
    start: f64,
    unknown: Unknown,
}

impl WhatIfs {
    /// # Errors
    /// Every fault of the plan, or that it has no such rider.
    pub fn of(plan: &Plan, rider: usize, unknown: &Unknown) -> Result<Self, Vec<Fault>> {
        let planned = Profile::build(plan)?;
        Ok(Self {
            plan: plan.clone(),
            dug: Default::default(),
            mount: setup::mount(setup::rider(plan, rider)?, &plan.weather),
            start: setup::start_speed(plan),
            unknown: unknown.clone(),
            planned,
        })
    }

    /// How many lips the line has.
    pub fn lips(&self) -> usize {
        self.planned.lips.len()
    }

    /// The jumps as planned.
    pub fn planned(&self) -> Vec<JumpRow> {
        rows(&self.planned, &self.mount, self.start)
    }

    /// The jumps in ride `i` of the what-ifs.
    pub fn corner(&self, i: usize) -> Vec<JumpRow> {
        self.at(ends(i))
    }

    /// The jumps with each input at an end.
    fn at(&self, ends: [usize; INPUTS]) -> Vec<JumpRow> {
        let (mount, start) = self.inputs(ends);
        let [.., speed, flight] = ends;
        let profile = if self.unknown.ridden {
            &self.planned
        } else {
            let dug = || as_dug(&self.plan, &self.planned, [speed, flight]);
            self.dug[speed][flight].get_or_init(dug)
        };
        rows(profile, &mount, start)
    }

    /// Rider, bike, day and speed at the start with each input at an end.
    fn inputs(&self, ends: [usize; INPUTS]) -> (Mount, f64) {
        let [rolling, drag, wind, push, skill, habit, ..] = ends;
        let off = self.unknown.off([rolling, drag, push, skill]);
        let mut m = self.mount.clone();
        m.rolling = m.rolling.map(|c| c * num::max(1.0 + off[0], 0.0));
        m.drag *= num::max(1.0 + off[1], 0.0);
        m.tailwind += WIND[wind];
        m.skill = num::clamp(m.skill + off[3], 0.0, 1.0);
        if !self.unknown.ridden {
            other_habit(&mut m, habit);
        }
        (m, num::max(self.start + off[2], 0.0))
    }
}

fn rows(profile: &Profile, mount: &Mount, start: f64) -> Vec<JumpRow> {
    let run = ride(profile, mount, start, &Accuracy::default());
    jumps(profile, &run)
}

/// What the legs may do in place of what is planned, at the end that slows or quickens.
///
/// Whoever is meant to soak up stays a little stiff, as the frightened do, or pumps a little without
/// meaning to. Whoever is meant to pump may only soak up, and to pump better is a matter of skill.
/// Whoever is meant to stand stiff gives way by half, and cannot be stiffer.
fn other_habit(m: &mut Mount, end: usize) {
    match (m.legs, end) {
        (Legs::Absorbing, 0) => m.stiff = STIFFER,
        (Legs::Absorbing, _) => {
            m.legs = Legs::Pumping;
            m.skill *= PUMPING_A_LITTLE;
        }
        (Legs::Pumping, 0) => m.legs = Legs::Absorbing,
        (Legs::Passive, 1) => {
            m.legs = Legs::Absorbing;
            m.stiff = GIVING;
        }
        _ => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::{self, Line, Style};

    fn of(plan: &Plan) -> WhatIfs {
        WhatIfs::of(plan, 0, &Unknown::usual()).expect("it is sound")
    }

    /// Speed at the first lip with each input at an end; `None` where it is not left.
    fn first(what_ifs: &WhatIfs, ends: [usize; INPUTS]) -> Option<f64> {
        what_ifs.at(ends)[0].speed
    }

    /// The demonstration with another style.
    fn with(style: Style) -> Plan {
        let mut plan = plan::demo();
        plan.riders[0].rider.style = style;
        plan
    }

    #[test]
    fn any_three_inputs_meet_in_every_way_twice() {
        let all: Vec<_> = (0..CORNERS).map(ends).collect();
        for (a, b, c) in (0..INPUTS)
            .flat_map(|a| (0..a).map(move |b| (a, b)))
            .flat_map(|(a, b)| (0..b).map(move |c| (a, b, c)))
        {
            let mut met = [0; 8];
            for e in &all {
                met[e[a] + 2 * e[b] + 4 * e[c]] += 1;
            }
            assert_eq!(met, [2; 8], "inputs {a}, {b} and {c}");
        }
        assert_eq!(ends(SLOWEST), [0; INPUTS]);
        assert_eq!(ends(CORNERS - 1), [1; INPUTS]);
    }

    /// What the rider does moves the first lip by more than nothing that could be seen, whatever is
    /// planned, and the right way.
    #[test]
    fn habit_moves_the_speed_of_every_style() {
        for style in [Style::Passive, Style::Absorbing, Style::Pumping] {
            let all = of(&with(style));
            let habit = |e| first(&all, [0, 0, 0, 0, 0, e, 0, 0]).unwrap_or(0.0);
            let [slow, quick] = [0, 1].map(habit);
            println!("{style:?}: {slow:.2} to {quick:.2} m/s");
            assert!(quick > slow + 0.1, "{style:?}: {slow} to {quick}");
        }
    }

    #[test]
    fn skill_moves_the_speed_of_a_rider_who_pumps() {
        let all = of(&with(Style::Pumping));
        let skill = |e| first(&all, [0, 0, 0, 0, e, 1, 0, 0]).expect("left");
        let [slow, quick] = [0, 1].map(skill);
        println!("{slow:.2} to {quick:.2} m/s");
        assert!(quick > slow + 0.05, "{slow} to {quick}");
    }

    /// Nobody is thought more skilled than perfect, nor less than not at all.
    #[test]
    fn skill_stays_within_its_scale() {
        let mut plan = with(Style::Pumping);
        for (skill, ends) in [(0.1, [0.0, 0.3]), (0.95, [0.75, 1.0])] {
            plan.riders[0].rider.skill = skill;
            let all = of(&plan);
            let got = [0, 1].map(|e| all.inputs([0, 0, 0, 0, e, 1, 0, 0]).0.skill);
            for (got, end) in got.into_iter().zip(ends) {
                assert!((got - end).abs() < 1e-12, "{got} for {end}");
            }
        }
    }

    /// Sixteen rides find the range that all 256 have at the first lip, to half of the last digit that is
    /// shown: skill hardly matters to whoever soaks up, and may matter either way.
    #[test]
    fn a_sixteenth_of_the_combinations_gives_the_whole_range() {
        let what_ifs = of(&plan::demo());
        let range = |rides: &[[usize; INPUTS]]| {
            let speeds = rides.iter().filter_map(|&ends| first(&what_ifs, ends));
            speeds.fold([f64::INFINITY, 0.0], |[low, high], v| {
                [num::min(low, v), num::max(high, v)]
            })
        };
        let all: Vec<_> = (0..1 << INPUTS)
            .map(|i| [0, 1, 2, 3, 4, 5, 6, 7].map(|input| (i >> input) & 1))
            .collect();
        let some: Vec<_> = (0..CORNERS).map(ends).collect();
        let ([low, high], [slowest, fastest]) = (range(&all), range(&some));
        println!("{low:.3} to {high:.3} m/s of 256, {slowest:.3} to {fastest:.3} of 16");
        assert!(slowest - low < 0.05 && high - fastest < 0.05);
    }

    /// A start dug lower, flats longer, rollers and lips higher slow whoever soaks up; a jump dug longer
    /// and flatter lands shorter at the same speed.
    #[test]
    fn what_is_dug_otherwise_is_ridden_otherwise() {
        let what_ifs = of(&plan::demo());
        let at = |speed, flight| {
            what_ifs
                .at([1, 1, 1, 1, 1, 1, speed, flight])
                .swap_remove(0)
        };
        let [slow, quick] = [0, 1].map(|end| at(end, 0).speed.expect("left"));
        println!("{slow:.3} to {quick:.3} m/s");
        assert!(quick > slow + 0.05, "{slow} to {quick}");
        let [short, far] = [0, 1].map(|end| at(0, end).rear_past_knuckle.expect("landed"));
        println!("{short:.3} to {far:.3} m past the knuckle");
        assert!(far > short + 0.05, "{short} to {far}");
    }

    /// What fills its yard to the end is dug longer all the same, on even ground and on surveyed.
    #[test]
    fn a_full_yard_is_no_shorter_line() {
        for mut plan in [plan::demo(), plan::one_jump()] {
            let planned = Profile::build(&plan).expect("it is sound");
            plan.yard.length = planned.pieces.last().expect("it has pieces").end.x;
            let dug = as_dug(&plan, &planned, [0, 0]);
            let edge = |profile: &Profile| profile.lips[0].edge.x;
            let Line::Features(features) = &plan.line else {
                panic!("it has features")
            };
            println!(
                "{} features: {} to {}",
                features.len(),
                edge(&planned),
                edge(&dug)
            );
            assert!((edge(&dug) - edge(&planned)).abs() > 0.02);
        }
    }
}
