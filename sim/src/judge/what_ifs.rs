//! The what-ifs: the inputs that nobody knows well, each at either end.
//!
//! Rolling resistance, drag area, wind and the push-off are never known well in a yard, and what the
//! rider will do, and how well, is known least of all. Each of these six is taken at the end that slows
//! and at the end that quickens. Of the 64 combinations sixteen are ridden beside the ride planned:
//! every one of the first four inputs, with skill slow where an odd number of the first three are, and
//! habit where an odd number of the last three are. So each input is at either end in eight rides, any
//! two or three of them meet in every way equally often, and the two rides in which all six slow or all
//! six quicken are there.
//!
//! # References
//! Box and Hunter 1961, Technometrics 3:311-351: a quarter of all combinations, of resolution IV.

use crate::num;
use crate::ride::{Legs, Mount};

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

/// Rides beside the one planned: a quarter of all combinations.
pub(super) const CORNERS: usize = 1 << (INPUTS - 2);

/// How many inputs are taken at either end.
const INPUTS: usize = 6;

/// At which end each input is in ride `i`: 0 slows, 1 quickens. In the order rolling, drag, wind,
/// start, skill, habit.
fn ends(i: usize) -> [usize; INPUTS] {
    let [a, b, c, d] = [0, 1, 2, 3].map(|input| (i >> input) & 1);
    [a, b, c, d, a ^ b ^ c, b ^ c ^ d]
}

/// Rider, bike, day and speed at the start of ride `i`.
pub(super) fn corner(mount: &Mount, start: f64, i: usize) -> (Mount, f64) {
    at(mount, start, ends(i))
}

/// Rider, bike, day and speed at the start with each input at an end.
fn at(mount: &Mount, start: f64, ends: [usize; INPUTS]) -> (Mount, f64) {
    let [rolling, drag, wind, push, skill, habit] = ends;
    let mut m = mount.clone();
    m.rolling = m.rolling.map(|c| c * ROLLING[rolling]);
    m.drag *= DRAG[drag];
    m.tailwind += WIND[wind];
    m.skill = num::clamp(m.skill + SKILL[skill], 0.0, 1.0);
    other_habit(&mut m, habit);
    (m, num::max(start + START[push], 0.0))
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
    use crate::judge::jumps;
    use crate::plan::{self, Plan, Style};
    use crate::profile::Profile;
    use crate::ride::{Accuracy, ride};
    use crate::setup;

    /// Speed at the first lip with each input at an end; `None` where it is not left.
    fn first(plan: &Plan, ends: [usize; INPUTS]) -> Option<f64> {
        let profile = Profile::build(plan).expect("it is sound");
        let mount = setup::mount(&plan.riders[0], &plan.weather);
        let (m, speed) = at(&mount, setup::start_speed(plan), ends);
        jumps(&profile, &ride(&profile, &m, speed, &Accuracy::default()))[0].speed
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
            let plan = with(style);
            let [slow, quick] = [0, 1].map(|e| first(&plan, [0, 0, 0, 0, 0, e]).unwrap_or(0.0));
            println!("{style:?}: {slow:.2} to {quick:.2} m/s");
            assert!(quick > slow + 0.1, "{style:?}: {slow} to {quick}");
        }
    }

    #[test]
    fn skill_moves_the_speed_of_a_rider_who_pumps() {
        let plan = with(Style::Pumping);
        let [slow, quick] = [0, 1].map(|e| first(&plan, [0, 0, 0, 0, e, 1]).expect("left"));
        println!("{slow:.2} to {quick:.2} m/s");
        assert!(quick > slow + 0.05, "{slow} to {quick}");
    }

    /// Nobody is thought more skilled than perfect, nor less than not at all.
    #[test]
    fn skill_stays_within_its_scale() {
        let mut plan = with(Style::Pumping);
        for (skill, ends) in [(0.1, [0.0, 0.3]), (0.95, [0.75, 1.0])] {
            plan.riders[0].rider.skill = skill;
            let mount = setup::mount(&plan.riders[0], &plan.weather);
            let got = [0, 1].map(|e| at(&mount, 1.0, [0, 0, 0, 0, e, 1]).0.skill);
            for (got, end) in got.into_iter().zip(ends) {
                assert!((got - end).abs() < 1e-12, "{got} for {end}");
            }
        }
    }

    /// Sixteen rides find the range that all 64 have at the first lip, to half of the last digit that is
    /// shown: skill hardly matters to whoever soaks up, and may matter either way.
    #[test]
    fn a_quarter_of_the_combinations_gives_the_whole_range() {
        let plan = plan::demo();
        let range = |rides: &[[usize; INPUTS]]| {
            let speeds = rides.iter().filter_map(|&ends| first(&plan, ends));
            speeds.fold([f64::INFINITY, 0.0], |[low, high], v| {
                [num::min(low, v), num::max(high, v)]
            })
        };
        let all: Vec<_> = (0..1 << INPUTS)
            .map(|i| [0, 1, 2, 3, 4, 5].map(|input| (i >> input) & 1))
            .collect();
        let some: Vec<_> = (0..CORNERS).map(ends).collect();
        let ([low, high], [slowest, fastest]) = (range(&all), range(&some));
        println!("{low:.3} to {high:.3} m/s of 64, {slowest:.3} to {fastest:.3} of 16");
        assert!(slowest - low < 0.05 && high - fastest < 0.05);
    }
}
