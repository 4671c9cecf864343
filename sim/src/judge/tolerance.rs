//! Tolerance of digging: how far each dimension may be off, as dug, before a jump stops being clean.
//!
//! Each kind of dimension before a jump is set off one way, from little to much, and the whole line is
//! ridden: in even steps up to a limit, and between two of them as often as they differ by much, down to
//! whole centimetres, as nobody digs finer.
//!
//! A ride that is off by a centimetre more may come down a little nearer or farther by hopping over a
//! roller otherwise, and a wheel may pass a knuckle by a hair from one centimetre to the next. So a ride near
//! the edge of what is clean counts in part: half where it lies on that edge, wholly where it is sure. What is
//! told is the sum of what counts, out to the worst so far: where the landings change quickly that is where they
//! stop being clean, and where they hardly change it hangs on nothing that nobody can dig to. A wheel that barely
//! clears the knuckle is no more clean than one that grazes it, though it may come down a metre farther.
//!
//! Start, flats and rollers are off wherever the line has them, so that one ride tells of every jump;
//! what lies behind a jump has no bearing on it, but for what the rider sees ahead. A lip and a gap are
//! off at that jump alone. A kind of dimension takes 8 rides where there is room to spare both ways, and
//! never more than 40: every centimetre both ways.

use super::dug::{Dimension, off, with_room};
use super::feel::clearance;
use super::jump::{How, JumpRow, behind, jumps, to_spare};
use crate::num;
use crate::plan::{Line, Plan};
use crate::profile::{LipEdge, Profile};
use crate::ride::{Accuracy, Mount, Run, ride_to};
use crate::setup;
use serde::Serialize;

/// A step, cm, and how many of them are looked at: more than 20 cm nobody is off who measures.
const STEP: i32 = 5;
const STEPS: i32 = 4;

/// A landing this far from the edge of what is clean is so for sure, m: rides that are all but alike
/// come down within a few centimetres of each other.
const SURE: f64 = 0.08;

/// By how much two rides may differ in what they count before one between them is ridden.
const ALIKE: f64 = 0.25;

/// What either tyre has to clear the knuckle by, m: as much as it comes down between two samples, and the
/// rounding of an edge that is dug.
const CLEAR: f64 = 0.03;

/// How much farther down the slope a flight comes down that passes the knuckle so much higher: flights come
/// down at about one in three.
const FARTHER: f64 = 3.0;

/// One dimension that must not be off by more, one way.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Limit {
    /// Which.
    pub dimension: Dimension,
    /// Whether it is more than planned, and not less.
    pub more: bool,
    /// How far it may be off, m, in whole centimetres.
    pub most: f64,
    /// What becomes of the jump beyond.
    pub beyond: How,
}

/// How far what is dug for a jump may be off.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Tolerance {
    /// Index of the lip in the profile.
    pub lip: usize,
    /// The limits that were found, the tightest first.
    pub limits: Vec<Limit>,
    /// How far was looked, m: whatever has no limit may be off by so much.
    pub looked: f64,
}

/// The tolerance of every jump that is clean as planned. None on a surveyed line.
pub fn tolerances(plan: &Plan, rider: usize) -> Vec<Tolerance> {
    let tried = Tried::of(plan, rider);
    tried.map_or_else(Vec::new, |mut tried| tried.tolerances())
}

fn metres(cm: i32) -> f64 {
    f64::from(cm) / 100.0
}

/// A jump as ridden: its feature, whether it is clean, what else it is or is nearest to being, and how far it
/// counts as clean, from 0 to 1.
#[derive(Clone, Copy)]
struct Jumped {
    feature: usize,
    clean: bool,
    fault: How,
    counts: f64,
}

/// A way in which a line is dug otherwise: a kind of dimension, the feature where it is the only one, and
/// how far off, cm.
type Way = (usize, Option<usize>, i32);

/// The line, and how its jumps go where it is dug otherwise.
struct Tried {
    plan: Plan,
    mount: Mount,
    start: f64,
    rides: Vec<(Way, Option<Vec<Jumped>>)>,
}

impl Tried {
    /// Nothing ridden yet. None on a surveyed line, or without such a rider.
    fn of(plan: &Plan, rider: usize) -> Option<Self> {
        let (Line::Features(_), Ok(who)) = (&plan.line, setup::rider(plan, rider)) else {
            return None;
        };
        Some(Self {
            plan: with_room(plan),
            mount: setup::mount(who, &plan.weather),
            start: setup::start_speed(plan),
            rides: Vec::new(),
        })
    }

    fn tolerances(&mut self) -> Vec<Tolerance> {
        let planned = Profile::build(&self.plan).map(|profile| self.ridden(&profile, None));
        let planned = planned.unwrap_or_default().into_iter().enumerate();
        let clean = planned.filter(|(_, jump)| jump.clean);
        let tolerance = |(lip, jump): (usize, Jumped)| Tolerance {
            lip,
            limits: self.limits(lip, jump.feature),
            looked: metres(STEP * STEPS),
        };
        clean.map(tolerance).collect()
    }

    fn limits(&mut self, lip: usize, feature: usize) -> Vec<Limit> {
        let mut limits: Vec<Limit> = Vec::new();
        for kind in 0..Dimension::ALL.len() {
            let dimension = Dimension::ALL[kind];
            if !self.stands_before(dimension, feature) {
                continue;
            }
            let only = dimension.of_jump().then_some(feature);
            for sign in [1, -1] {
                let found = room(|cm| {
                    let jump = self.jump((kind, only, sign * cm), lip)?;
                    Some((jump.counts, jump.fault))
                });
                let Some((most, beyond)) = found else {
                    continue;
                };
                let most = metres(most);
                let place = limits.partition_point(|tighter| tighter.most <= most);
                let more = sign > 0;
                limits.insert(
                    place,
                    Limit {
                        dimension,
                        more,
                        most,
                        beyond,
                    },
                );
            }
        }
        limits
    }

    /// Whether the line has a dimension up to a jump, itself counted.
    fn stands_before(&mut self, dimension: Dimension, feature: usize) -> bool {
        let Line::Features(features) = &mut self.plan.line else {
            return false;
        };
        let mut before = features.iter_mut().take(feature + 1);
        before.any(|feature| dimension.of(feature).is_some())
    }

    /// How a jump goes; `None` where nothing like that can be built.
    fn jump(&mut self, way: Way, lip: usize) -> Option<Jumped> {
        let known = self.rides.iter().position(|(known, _)| *known == way);
        let place = known.unwrap_or(self.rides.len());
        if known.is_none() {
            let (kind, only, cm) = way;
            let dug = off(&self.plan, Dimension::ALL[kind], only, metres(cm));
            let last = only.map(|_| lip);
            let ridden = dug.map(|(_, profile)| self.ridden(&profile, last));
            self.rides.push((way, ridden));
        }
        self.rides[place].1.as_ref().map(|all| all[lip])
    }

    /// How the jumps go, up to `last` where that is all that is asked for.
    fn ridden(&self, profile: &Profile, last: Option<usize>) -> Vec<Jumped> {
        let to = last.map_or(f64::INFINITY, |lip| behind(&profile.lips[lip]));
        let run = ride_to(profile, &self.mount, self.start, &Accuracy::default(), to);
        let rows = jumps(profile, &run).into_iter().zip(&profile.lips);
        rows.map(|(row, lip)| self.jumped(profile, &run, &row, lip))
            .collect()
    }

    fn jumped(&self, profile: &Profile, run: &Run, row: &JumpRow, lip: &LipEdge) -> Jumped {
        let over = FARTHER * (clearance(profile, &self.mount, run, lip) - CLEAR);
        let [near, far] = to_spare(row, lip).unwrap_or([-SURE; 2]);
        let near = num::min(near, over);
        let clean = row.how == How::Clean;
        Jumped {
            feature: row.feature,
            clean,
            fault: match row.how {
                How::Clean if near < far => How::Knuckle,
                How::Clean => How::Deep,
                how => how,
            },
            counts: num::clamp(0.5 + 0.5 * num::min(near, far) / SURE, 0.0, 1.0),
        }
    }
}

/// How many centimetres count as clean, and what becomes of those that do not; `None` where all that can be built
/// do. `counts` tells of one how far it counts, from 0 to 1, and what it is or is nearest to being.
fn room(mut counts: impl FnMut(i32) -> Option<(f64, How)>) -> Option<(i32, How)> {
    let mut from = (0, 1.0);
    let mut sum = 0.0;
    let mut beyond = None;
    // What is still to be gone through, the nearest last; what cannot be built ends it.
    let mut ahead: Vec<_> = (1..=STEPS).rev().map(|i| i * STEP).collect();
    while let Some(&cm) = ahead.last() {
        let (own, fault) = counts(cm)?;
        let own = num::min(own, from.1);
        if from.1 - own > ALIKE && cm - from.0 > 1 {
            ahead.push((from.0 + cm) / 2);
            continue;
        }
        ahead.pop();
        if own < 1.0 && (beyond.is_none() || own < from.1) {
            beyond = Some(fault);
        }
        sum += 0.5 * (from.1 + own) * f64::from(cm - from.0);
        from = (cm, own);
        if own <= 0.0 {
            break;
        }
    }
    let cm = sum as i32;
    beyond.map(|how| (cm, how)).filter(|_| cm < STEP * STEPS)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::judge::change::with;
    use crate::plan::{self, Feature};
    use std::collections::BTreeMap;

    /// The demonstration with a number of one feature changed, clean or not.
    fn demo_with(change: impl FnOnce(&mut Vec<Feature>)) -> Plan {
        with(&plan::demo(), change).expect("it has features")
    }

    fn gap(features: &mut [Feature], feature: usize) -> &mut f64 {
        Dimension::Gap.of(&mut features[feature]).expect("a jump")
    }

    /// Lines with little room: a long gap, and a low start.
    fn tight() -> [Plan; 2] {
        let long = demo_with(|features| *gap(features, 8) += 0.5);
        let low = demo_with(|features| {
            *Dimension::Start.of(&mut features[0]).expect("a ramp") -= 0.3;
        });
        [long, low]
    }

    /// How a jump goes in a plan that is changed by hand, without any of the code above.
    fn dug(plan: &Plan, limit: &Limit, lip: usize, by: f64) -> How {
        let by = if limit.more { by } else { -by };
        let mut jump = 0;
        let mut plan = plan.clone();
        plan.yard.length += 20.0;
        let Line::Features(features) = &mut plan.line else {
            panic!("it has features")
        };
        for feature in features {
            match (feature, limit.dimension) {
                (Feature::StartRamp(ramp), Dimension::Start) => ramp.platform_height += by,
                (Feature::Flat(flat), Dimension::Flat) => flat.length += by,
                (Feature::Roller(roller), Dimension::Roller) => roller.height += by,
                (Feature::Jump(this), dimension) => {
                    match dimension {
                        Dimension::LipHeight if jump == lip => this.lip.height += by,
                        Dimension::LipRadius if jump == lip => this.lip.radius += by,
                        Dimension::Gap if jump == lip => this.gap += by,
                        _ => {}
                    }
                    jump += 1;
                }
                _ => {}
            }
        }
        let ridden = setup::ride_plan(&plan, 0).expect("it can be built");
        jumps(&ridden.profile, &ridden.run)[lip].how
    }

    /// Of all that is dug within what is told, one in ten at most is not clean: rides differ by chance. Where a
    /// longer gap or a lower start leaves less and less room, a little more is not clean.
    #[test]
    fn what_is_told_is_clean_and_a_little_more_is_not() {
        let mut limits = 0;
        let (mut dug_within, mut wrong_within) = (0, 0);
        for plan in tight() {
            for tolerance in tolerances(&plan, 0) {
                println!("{tolerance:?}");
                let tightest_first = |pair: &[Limit]| pair[0].most <= pair[1].most;
                assert!(tolerance.limits.windows(2).all(tightest_first));
                for limit in &tolerance.limits {
                    let how = |by| dug(&plan, limit, tolerance.lip, by);
                    for cm in 0..(100.0 * limit.most) as i32 {
                        dug_within += 1;
                        wrong_within += usize::from(how(metres(cm)) != How::Clean);
                    }
                    let wrong = |cm| how(limit.most + metres(cm)) != How::Clean;
                    let steady = matches!(limit.dimension, Dimension::Gap | Dimension::Start);
                    assert!(!steady || (1..=3).any(wrong), "{limit:?}");
                    assert!(limit.most < tolerance.looked && limit.beyond != How::Clean);
                    limits += 1;
                }
            }
        }
        println!("{limits} limits, of {dug_within} within them {wrong_within} not clean");
        assert!(limits > 4 && 10 * wrong_within <= dug_within);
    }

    /// So many rides, and with so much the page may reckon.
    #[test]
    fn rides_are_counted() {
        let [long, low] = tight();
        for (plan, most) in [(plan::demo(), 110), (long, 150), (low, 150)] {
            let mut tried = Tried::of(&plan, 0).expect("it has features");
            tried.tolerances();
            let mut kinds = BTreeMap::new();
            for ((kind, only, _), _) in &tried.rides {
                *kinds.entry((kind, only)).or_insert(0) += 1;
            }
            println!("{} rides: {kinds:?}", tried.rides.len());
            assert!(kinds.values().all(|&rides| rides <= 44));
            assert!(tried.rides.len() <= most);
        }
    }

    /// The longer the gap, the less longer it may be dug, centimetre for centimetre.
    #[test]
    fn what_is_planned_longer_leaves_less_room() {
        let room = |more: f64| {
            let plan = demo_with(|features| *gap(features, 8) += more);
            let all = tolerances(&plan, 0);
            let limits = &all.iter().find(|t| t.lip == 2).expect("clean").limits;
            let longer = |l: &&Limit| l.dimension == Dimension::Gap && l.more;
            limits.iter().find(longer).expect("it has an end").most
        };
        let [first, second] = [0.48, 0.52].map(room);
        println!("{first} m, {second} m");
        assert!((first - second - 0.04).abs() < 0.015);
    }

    /// No figure jumps because of something that nobody can dig to: 2 mm.
    #[test]
    fn the_figures_are_calm() {
        for plan in tight() {
            let before = tolerances(&plan, 0);
            for dimension in Dimension::ALL {
                let (moved, _) = off(&plan, dimension, None, 0.002).expect("it can be built");
                for (a, b) in before.iter().zip(tolerances(&moved, 0)) {
                    assert_eq!(a.lip, b.lip);
                    let same =
                        |a: &Limit, b: &Limit| (a.dimension, a.more) == (b.dimension, b.more);
                    for limit in &a.limits {
                        let other = b.limits.iter().find(|other| same(limit, other));
                        let now = other.map_or(b.looked, |other| other.most);
                        println!("{dimension:?} {limit:?} {now}");
                        assert!((limit.most - now).abs() < 0.025, "{limit:?} {other:?}");
                    }
                }
            }
        }
    }

    #[test]
    fn a_jump_that_is_not_clean_says_nothing() {
        let plan = demo_with(|features| *gap(features, 8) += 1.2);
        let lips: Vec<_> = tolerances(&plan, 0).iter().map(|t| t.lip).collect();
        assert_eq!(lips, [0, 1]);
    }

    #[test]
    fn a_surveyed_line_has_none() {
        let text = include_str!("../../plans/surveyed_line.json");
        let plan = Plan::from_json(text).expect("a plan file");
        assert_eq!(tolerances(&plan, 0), []);
    }

    #[test]
    fn room_is_found_to_the_centimetre() {
        for last in 0..STEP * STEPS {
            let mut rides = 0;
            let found = room(|cm| {
                rides += 1;
                Some((if cm > last { 0.0 } else { 1.0 }, How::Short))
            });
            let (cm, how) = found.expect("it has an end");
            assert!(
                (cm - last).abs() <= 1 && how == How::Short,
                "{cm} for {last}"
            );
            assert!(rides <= 10, "{rides} rides for {last} cm");
        }
        assert_eq!(room(|_| Some((1.0, How::Short))), None);
        assert_eq!(room(|_| None), None);
    }

    /// Rides that lie on the edge however much is off count by half, whichever side of it they are on.
    #[test]
    fn what_hardly_changes_hangs_on_no_hair() {
        let on_the_edge =
            |more: f64| room(|cm| Some((0.5 + if cm > 3 { more } else { 0.0 }, How::Knuckle)));
        let [a, b] = [-0.01, 0.01].map(|more| on_the_edge(more).expect("it has an end").0);
        assert!((a - b).abs() <= 1, "{a} {b}");
    }
}
