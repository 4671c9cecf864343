//! How the jumps of a line went.

use super::line::{Member, member};
use super::place::Estimate;
use sim::profile::LipEdge;
use sim::ride::{CrashKind, Event, EventKind, Outcome, Run};
use std::collections::BTreeMap;

/// Steepest accepted angle between bike and slope at touch-down, rad: 15°.
const ALIGNED: f64 = 15.0 * core::f64::consts::PI / 180.0;

/// How one jump went.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum How {
    /// Landed without a crash, in line with the slope: bike's pitch less the slope, rad.
    Well(f64),
    /// Landed at too steep an angle to the slope: bike's pitch less the slope, rad.
    Askew(f64),
    /// Crashed on the lip, in the air or on the landing.
    Crash(CrashKind),
    /// The ride ended without a touch-down.
    Nowhere,
}

/// One jump: how it went, and the rear wheel's touch-down past the knuckle, m, if there was one.
#[derive(Clone, Copy, Debug)]
pub struct Landed {
    /// How it went.
    pub how: How,
    /// Rear wheel past the knuckle, m.
    pub past: Option<f64>,
}

/// What became of a line.
pub struct Score {
    /// The jumps that were reached.
    pub jumps: Vec<Landed>,
    /// A crash where there is no jump: on ramp, rollers or flat.
    pub elsewhere: Option<CrashKind>,
}

/// Looks at the jumps of a line, those only whose gap was placed and whose lip was reached.
pub fn score(member: &Member) -> Score {
    let run = &member.ridden.run;
    let lips = &member.ridden.profile.lips;
    let crash = run.events.iter().find_map(|e| match e.kind {
        EventKind::Crashed { why } => Some((e.x, why)),
        _ => None,
    });
    let mut score = Score {
        jumps: Vec::new(),
        elsewhere: crash.map(|c| c.1),
    };
    for (k, lip) in lips.iter().enumerate().take(member.placed) {
        let down = touched_down(run, k, lip);
        let past = down.map(|(rear_x, _)| rear_x - lip.knuckle.x);
        let here = crash.filter(|(x, _)| *x > lip.foot.x && *x < lip.landing_end.x + 1.0);
        if let Some((_, why)) = here {
            let how = How::Crash(why);
            score.jumps.push(Landed { how, past });
            score.elsewhere = None;
            break;
        }
        let left = |e: &Event| matches!(e.kind, EventKind::LipLeft { lip, .. } if lip == k);
        if !run.events.iter().any(left) {
            break;
        }
        let how = match down {
            Some((_, p)) if p.abs() <= ALIGNED => How::Well(p),
            Some((_, p)) => How::Askew(p),
            None => How::Nowhere,
        };
        score.jumps.push(Landed { how, past });
    }
    score
}

/// Rear wheel's place and pitch against the slope at the first touch-down beyond a lip's edge.
fn touched_down(run: &Run, index: usize, lip: &LipEdge) -> Option<(f64, f64)> {
    let left = |e: &Event| matches!(e.kind, EventKind::LipLeft { lip, .. } if lip == index);
    let from = run.events.iter().position(left)?;
    run.events[from..].iter().find_map(|e| match e.kind {
        EventKind::TouchedDown {
            rear_x,
            pitch_to_slope,
            ..
        } if rear_x > lip.edge.x => Some((rear_x, pitch_to_slope)),
        _ => None,
    })
}

/// A half of the family, counted.
#[derive(Debug, Default)]
pub struct Tally {
    /// Lines ridden.
    pub lines: u32,
    /// Lines ridden to their end.
    pub finished: u32,
    /// Jumps whose lip was reached.
    pub jumps: u32,
    /// Those that went well.
    pub well: u32,
    /// Those whose rear wheel came down past the knuckle, too.
    pub cleared: u32,
    /// The others, and crashes elsewhere, by kind, each with its seed, jump and rider.
    pub kinds: BTreeMap<String, Vec<String>>,
    /// Rear wheel's touch-down against the aim, m, sorted.
    pub misses: Vec<f64>,
}

impl Tally {
    /// Share of the jumps that went well.
    pub fn rate(&self) -> f64 {
        f64::from(self.well) / f64::from(self.jumps.max(1))
    }

    fn add(&mut self, seed: u64, estimate: Estimate) {
        let member = member(seed, estimate);
        let score = score(&member);
        let rider = &member.plan.riders[0].label;
        self.lines += 1;
        self.finished += u32::from(member.ridden.run.outcome == Outcome::Finished);
        for (landed, aim) in score.jumps.iter().zip(&member.aims) {
            self.misses.extend(landed.past.map(|p| p - aim));
            let clear = landed.past.is_some_and(|p| p > 0.0);
            self.cleared += u32::from(clear && matches!(landed.how, How::Well(_)));
        }
        if let Some(why) = score.elsewhere {
            let kind = format!("crash off the jumps, {why:?}");
            self.kinds
                .entry(kind)
                .or_default()
                .push(format!("{seed} ({rider})"));
        }
        for (k, landed) in score.jumps.iter().enumerate() {
            self.jumps += 1;
            let kind = match landed.how {
                How::Well(_) => {
                    self.well += 1;
                    continue;
                }
                How::Askew(p) if p > 0.0 => "nose up against the slope".into(),
                How::Askew(_) => "nose down against the slope".into(),
                How::Crash(why) => format!("crash, {why:?}"),
                How::Nowhere => "no touch-down".into(),
            };
            self.kinds
                .entry(kind)
                .or_default()
                .push(format!("{seed}.{k} ({rider})"));
        }
    }
}

/// Rides the members with these seeds and counts.
pub fn tally(seeds: impl Iterator<Item = u64>, estimate: Estimate) -> Tally {
    let mut tally = Tally::default();
    seeds.for_each(|seed| tally.add(seed, estimate));
    tally.misses.sort_by(f64::total_cmp);
    tally
}

impl std::fmt::Display for Tally {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let Self {
            lines,
            finished,
            jumps,
            well,
            cleared,
            ..
        } = self;
        let rate = 100.0 * self.rate();
        writeln!(
            f,
            "{well} of {jumps} jumps went well: {rate:.1} %, {cleared} of them with the rear wheel past the knuckle; {finished} of {lines} lines finished"
        )?;
        if let Some(last) = self.misses.len().checked_sub(1) {
            let at = |q: usize| self.misses[last * q / 100];
            writeln!(
                f,
                "  rear wheel against the estimate: 5 % {:.2} m, median {:.2} m, 95 % {:.2} m",
                at(5),
                at(50),
                at(95)
            )?;
        }
        for (kind, where_) in &self.kinds {
            writeln!(f, "  {:3} {kind}: {}", where_.len(), where_.join(" "))?;
        }
        Ok(())
    }
}
