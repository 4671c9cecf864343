//! The speeds at which a jump works, found by riding the jump itself at other speeds.
//!
//! A stretch of the line is cut out, from some metres before the lip to behind the landing, and ridden
//! by the whole model from slow to fast. Between the slowest speed that works and the fastest, and the
//! first on either side that does not, the edge is found by halving.

use super::jump::{How, JumpRow, jumps};
use crate::num;
use crate::profile::{LipEdge, Profile};
use crate::ride::{Accuracy, Mount, ride};
use serde::Serialize;

/// How far before the lip's foot the ride sets in, m: long enough to settle, where there is room.
const RUN_UP: f64 = 4.0;

/// Least run-up between the landing before and the lip, in wheelbases: the whole bike and a little.
const LEAST_RUN_UP: f64 = 2.0;

/// How far behind the landing it goes on, m.
const BEHIND: f64 = 2.5;

/// Slowest and fastest speed tried at the start of the stretch, m/s, and the step between two.
const SLOW: f64 = 1.5;
const FAST: f64 = 13.0;
const STEP: f64 = 0.5;

/// How often a step is halved at either edge: to 8 mm/s.
const HALVINGS: u32 = 6;

/// The speeds at which one jump works, m/s at the lip.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Window {
    /// Index of the lip in the profile.
    pub lip: usize,
    /// The slowest that puts both wheels past the knuckle; `None` where no speed works.
    pub slowest: Option<f64>,
    /// The fastest that still lands on the slope.
    pub fastest: Option<f64>,
    /// What happens a little slower than the slowest.
    pub below: How,
    /// What happens a little faster than the fastest.
    pub above: How,
}

/// One trial: the speed at the lip, and how the jump went.
#[derive(Clone, Copy)]
struct Trial {
    at_start: f64,
    at_lip: Option<f64>,
    how: How,
    works: bool,
}

/// The window of every jump of a profile, for one rider. `rows` tell how the ride itself went: where two
/// stretches of speed work, the one counts that the ride would come to first on its way to what it lacks.
pub fn windows(profile: &Profile, mount: &Mount, rows: &[JumpRow]) -> Vec<Window> {
    rows.iter().map(|row| window(profile, mount, row)).collect()
}

/// The window of one jump.
fn window(profile: &Profile, mount: &Mount, row: &JumpRow) -> Window {
    let lip = row.lip;
    let mut window = Window {
        lip,
        slowest: None,
        fastest: None,
        below: How::NotReached,
        above: How::NotReached,
    };
    let Some(stretch) = around(profile, mount, lip) else {
        return window;
    };
    let tried = trials(&stretch, mount);
    let Some((first, last)) = run_that_works(&tried, row, &stretch.lips[0]) else {
        return window;
    };
    let (slow, below) = edge(
        &stretch,
        mount,
        tried[first],
        first.checked_sub(1).map(|i| tried[i]),
    );
    let (fast, above) = edge(&stretch, mount, tried[last], tried.get(last + 1).copied());
    window.slowest = slow.at_lip;
    window.fastest = fast.at_lip;
    window.below = below.map_or(How::NotReached, |t| t.how);
    window.above = above.map_or(How::NotReached, |t| t.how);
    window
}

/// The stretch from before a lip to behind its landing.
fn around(profile: &Profile, mount: &Mount, lip: usize) -> Option<Profile> {
    let edge: &LipEdge = &profile.lips[lip];
    let begin = profile.pieces.first()?.start.x;
    let before = lip
        .checked_sub(1)
        .map_or(begin, |i| profile.lips[i].landing_end.x);
    let foot = edge.foot.x;
    let from = num::max(
        num::min(
            num::max(foot - RUN_UP, before),
            foot - LEAST_RUN_UP * mount.wheelbase,
        ),
        begin,
    );
    let stretch = profile.stretch(from, edge.landing_end.x + BEHIND)?;
    (stretch.lips.len() == 1).then_some(stretch)
}

fn attempt(stretch: &Profile, mount: &Mount, at_start: f64) -> Trial {
    let run = ride(stretch, mount, at_start, &Accuracy::default());
    let row = &jumps(stretch, &run)[0];
    Trial {
        at_start,
        at_lip: row.speed,
        how: row.how,
        works: works(row, &stretch.lips[0]),
    }
}

/// Trials from slow to fast. Where a step leads from too slow to too fast, what works may lie within
/// it: it is looked for by halving.
fn trials(stretch: &Profile, mount: &Mount) -> Vec<Trial> {
    let steps = ((FAST - SLOW) / STEP) as u32;
    let mut tried: Vec<Trial> = Vec::new();
    for i in 0..=steps {
        let next = attempt(stretch, mount, SLOW + STEP * f64::from(i));
        if let Some(&before) = tried.last()
            && is_slow(before)
            && !is_slow(next)
            && !next.works
        {
            tried.extend(between(stretch, mount, before, next));
        }
        tried.push(next);
    }
    tried
}

fn is_slow(trial: Trial) -> bool {
    !trial.works && matches!(trial.how, How::Short | How::Knuckle | How::Stalled)
}

/// A trial that works between one too slow and one too fast.
fn between(stretch: &Profile, mount: &Mount, slow: Trial, fast: Trial) -> Option<Trial> {
    let (mut slow, mut fast) = (slow.at_start, fast.at_start);
    for _ in 0..HALVINGS {
        let middle = attempt(stretch, mount, 0.5 * (slow + fast));
        if middle.works {
            return Some(middle);
        }
        if is_slow(middle) {
            slow = middle.at_start;
        } else {
            fast = middle.at_start;
        }
    }
    None
}

/// Both wheels past the knuckle, the first of them down on the slope, and no crash.
fn works(row: &JumpRow, lip: &LipEdge) -> bool {
    let (Some(rear), Some(front)) = (row.rear_past_knuckle, row.front_past_knuckle) else {
        return false;
    };
    rear > 0.0 && front > 0.0 && rear <= lip.slope_end.x - lip.knuckle.x && row.how != How::Crashed
}

/// What a ride lacks at a jump.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Lacks {
    /// It is too slow.
    Speed,
    /// It is too fast.
    Slowness,
    /// Nothing, or nobody can tell.
    Nothing,
}

fn lacks(row: &JumpRow, lip: &LipEdge) -> Lacks {
    match (row.how, row.rear_past_knuckle) {
        (How::Short | How::Knuckle | How::Stalled, _) => Lacks::Speed,
        (How::Deep | How::Past, _) => Lacks::Slowness,
        (How::Crashed, Some(past)) if past < 0.0 => Lacks::Speed,
        (How::Crashed, Some(past)) if past > lip.slope_end.x - lip.knuckle.x => Lacks::Slowness,
        (How::Crashed | How::Clean | How::NotReached, _) => Lacks::Nothing,
    }
}

/// First and last of the trials in a row that work: of the rows that have what the ride lacks the nearest to
/// its speed at the lip, else the nearest of all; the longest where it never got there.
fn run_that_works(tried: &[Trial], ridden: &JumpRow, lip: &LipEdge) -> Option<(usize, usize)> {
    let mut rows: Vec<(usize, usize)> = Vec::new();
    for (i, _) in tried.iter().enumerate().filter(|(_, t)| t.works) {
        match rows.last_mut() {
            Some(row) if row.1 + 1 == i => row.1 = i,
            _ => rows.push((i, i)),
        }
    }
    let Some(speed) = ridden.speed else {
        return rows.into_iter().max_by_key(|row| row.1 - row.0);
    };
    let at = |i: usize| tried[i].at_lip.unwrap_or(0.0);
    let off = |row: &(usize, usize)| num::max(num::max(at(row.0) - speed, speed - at(row.1)), 0.0);
    let lacks = lacks(ridden, lip);
    let has = |row: &(usize, usize)| match lacks {
        Lacks::Speed => at(row.0) > speed,
        Lacks::Slowness => at(row.1) < speed,
        Lacks::Nothing => true,
    };
    rows.into_iter()
        .min_by(|a, b| has(b).cmp(&has(a)).then(off(a).total_cmp(&off(b))))
}

/// The last trial that works and the first that does not, between one that does and its neighbour.
fn edge(
    stretch: &Profile,
    mount: &Mount,
    works: Trial,
    fails: Option<Trial>,
) -> (Trial, Option<Trial>) {
    let Some(fails) = fails else {
        return (works, None);
    };
    let (mut works, mut fails) = (works, fails);
    for _ in 0..HALVINGS {
        let middle = attempt(stretch, mount, 0.5 * (works.at_start + fails.at_start));
        if middle.works {
            works = middle;
        } else {
            fails = middle;
        }
    }
    (works, Some(fails))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::{self, Feature, Line, Plan};
    use crate::setup::{mount, ride_plan};

    fn of(plan: &Plan, rider: usize) -> (Vec<JumpRow>, Vec<Window>) {
        let ridden = ride_plan(plan, rider).expect("the plan is sound");
        let rows = jumps(&ridden.profile, &ridden.run);
        let mount = mount(&plan.riders[rider], &plan.weather);
        let windows = windows(&ridden.profile, &mount, &rows);
        (rows, windows)
    }

    #[test]
    fn the_demonstration_is_ridden_within_its_windows() {
        for rider in 0..2 {
            let (rows, windows) = of(&plan::demo(), rider);
            for (row, w) in rows.iter().zip(&windows) {
                let v = row.speed.expect("every lip is left");
                let (low, high) = (w.slowest.expect("works"), w.fastest.expect("works"));
                println!(
                    "rider {rider}: {low:.2} < {v:.2} < {high:.2}, {:?} {:?}",
                    w.below, w.above
                );
                assert!(low < v && v < high);
            }
        }
    }

    #[test]
    fn steps_spines_and_beds_have_their_windows() {
        for (text, works) in [
            (include_str!("../../plans/steps.json"), &[true, true][..]),
            (
                include_str!("../../plans/spine_and_bed.json"),
                &[true, true, true],
            ),
            (
                include_str!("../../plans/three_tables.json"),
                &[true, true, true],
            ),
        ] {
            let plan = Plan::from_json(text).expect("a plan file");
            let (_, windows) = of(&plan, 0);
            for (w, works) in windows.iter().zip(works) {
                println!("{}: {w:?}", plan.name);
                assert_eq!(w.slowest.is_some(), *works, "{}: {w:?}", plan.name);
                assert!(w.slowest.unwrap_or(0.0) <= w.fastest.unwrap_or(0.0));
            }
        }
    }

    /// A row of a ride that came to the lip at some speed and ended so.
    fn row(speed: f64, how: How, past: Option<f64>) -> JumpRow {
        let demo = ride_plan(&plan::demo(), 0).expect("the plan is sound");
        JumpRow {
            speed: Some(speed),
            how,
            rear_past_knuckle: past,
            ..jumps(&demo.profile, &demo.run).remove(0)
        }
    }

    #[test]
    fn of_two_stretches_that_work_the_one_counts_that_has_what_the_ride_lacks() {
        let demo = ride_plan(&plan::demo(), 0).expect("the plan is sound");
        let lip = &demo.profile.lips[0];
        // Rolled over slowly, or flown fast: nothing between works.
        let trial = |at: f64| Trial {
            at_start: at,
            at_lip: Some(at),
            how: How::Clean,
            works: !(2.6..=5.4).contains(&at),
        };
        let tried: Vec<_> = (0..=16).map(|i| trial(1.5 + 0.5 * f64::from(i))).collect();
        let found = |row: &JumpRow| {
            let (first, last) = run_that_works(&tried, row, lip).expect("some work");
            (tried[first].at_start, tried[last].at_start)
        };
        let (slow, fast) = ((1.5, 2.5), (5.5, 9.5));
        assert_eq!(found(&row(2.7, How::Short, None)), fast);
        assert_eq!(found(&row(2.7, How::Crashed, Some(-0.4))), fast);
        assert_eq!(found(&row(5.3, How::Past, Some(9.0))), slow);
        assert_eq!(found(&row(2.7, How::Clean, Some(0.4))), slow);
        assert_eq!(found(&row(5.3, How::Crashed, None)), fast);
        // Where none has it, the nearest does.
        assert_eq!(found(&row(11.0, How::Short, Some(-0.2))), fast);
    }

    #[test]
    fn a_longer_gap_asks_for_more_speed() {
        let slowest = |more: f64| {
            let mut plan = plan::demo();
            if let Line::Features(features) = &mut plan.line
                && let Feature::Jump(jump) = &mut features[6]
            {
                jump.gap += more;
            }
            of(&plan, 0).1[1].slowest.expect("some speed works")
        };
        let speeds = [slowest(-0.4), slowest(0.0), slowest(0.4)];
        assert!(speeds[0] < speeds[1] && speeds[1] < speeds[2], "{speeds:?}");
    }
}
