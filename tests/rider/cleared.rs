//! Jumps at fitting speeds are cleared, and those that are too long are not.

use super::draw::{Drawn, Kind};
use super::estimate::{Stance, Throw};
use super::figures::{Bar, Table, median, percent, spread};
use super::landed::{Landed, Wrong, between};
use super::place::{How, Member, PAST};
use super::{floors, seeds};
use sim::plan::Style;
use std::collections::BTreeMap;

/// How far the rear wheel may be from the estimate, m.
const NEAR: f64 = 0.25;

/// How much too long a gap is, m, that nobody clears.
const TOO_LONG: f64 = 1.3;

/// One jump that was ridden.
struct Jump {
    seed: u64,
    index: usize,
    kind: Kind,
    style: Style,
    skill: f64,
    aim: f64,
    landed: Landed,
    /// Where the estimate has the rear wheel past the knuckle, from the ride's own take-off: with legs
    /// as on level ground, and as long as they were at touch-down, m.
    own: [Option<f64>; 2],
}

impl Jump {
    /// No crash, in line with the slope, and the rear wheel past the knuckle.
    fn cleared(&self) -> bool {
        self.landed.wrong().is_none()
    }

    fn told(&self) -> String {
        format!("{}.{}", self.seed, self.index)
    }
}

/// The jumps of a line whose lips were reached, and those that a crash before kept from it.
fn jumps(member: &Member) -> Vec<Jump> {
    let mut all = Vec::new();
    for (lip, (placed, landed)) in member.landed().into_iter().enumerate() {
        if landed.off.is_none() && !matches!(landed.crash, Some(Wrong::Crash(_))) {
            break;
        }
        all.push(Jump {
            seed: member.seed,
            index: placed.index,
            kind: placed.kind,
            style: member.drawn.style,
            skill: member.drawn.skill,
            aim: placed.aim,
            landed,
            own: own(member, lip, &landed),
        });
        if landed.crash.is_some() {
            break;
        }
    }
    all
}

fn own(member: &Member, lip: usize, landed: &Landed) -> [Option<f64>; 2] {
    let (Some(off), Some(down)) = (landed.off, landed.down) else {
        return [None; 2];
    };
    let rider = &member.plan.riders[0];
    let samples = between(&member.ridden.run.samples, down.t - 0.02, down.t);
    let reach = samples.last().map(|s| Stance::with_reach(rider, s.reach));
    [Some(Stance::usual(rider)), reach].map(|stance| {
        let (left, grade, jump) = (off.left, member.drawn.grade, member.jump(lip));
        Throw {
            left,
            stance: stance?,
            grade,
            jump,
        }
        .past()
    })
}

/// The family's lines placed by riding, for this table and those of flight and landing.
pub fn family(seeds: &[u64]) -> Vec<Member> {
    seeds::each(seeds, |&seed| {
        Member::new(seed, Drawn::family(seed), How::Riding)
    })
}

/// The table; `placed` are the lines of [`family`].
pub fn table(seeds: &[u64], placed: &[Member]) -> Table {
    let mut table = Table::new("Cleared: jumps at fitting speeds");
    let lines = ridden(seeds, How::Estimate(0.0));
    let all: Vec<Jump> = lines.iter().flat_map(jumps).collect();
    by_estimate(&mut table, &lines, &all);
    by_riding(&mut table, placed);
    too_long(&mut table, seeds);
    points(&mut table, seeds);
    table
}

fn ridden(seeds: &[u64], how: How) -> Vec<Member> {
    seeds::each(seeds, |&seed| Member::new(seed, Drawn::family(seed), how))
}

/// How riders fare who are truly too slow: over gaps far too long the rear wheel strikes before the
/// knuckle, whatever the rider does. Whoever still cleared them could not fail at all.
pub struct TooSlow {
    /// Open gaps that were reached.
    pub jumps: usize,
    /// Share that is cleared, per cent.
    pub cleared: f64,
    /// Share that ends without a crash and in line, if short, per cent.
    pub well: f64,
    told: String,
}

/// Rides the family with gaps that are 1.3 m too long.
pub fn too_slow(seeds: &[u64]) -> TooSlow {
    let all: Vec<Jump> = ridden(seeds, How::Estimate(TOO_LONG))
        .iter()
        .flat_map(jumps)
        .filter(|j| !matches!(j.kind, Kind::Spine | Kind::Deck))
        .collect();
    let cleared = all.iter().filter(|j| j.cleared()).map(Jump::told);
    TooSlow {
        jumps: all.len(),
        cleared: percent(&all, Jump::cleared),
        well: percent(&all, |j| j.landed.well()),
        told: cleared.collect::<Vec<_>>().join(" "),
    }
}

fn too_long(table: &mut Table, seeds: &[u64]) {
    let slow = too_slow(seeds);
    let (what, bar) = ("gaps 1.3 m too long: cleared", Bar::AtMost(5.0));
    table.figure(what, slow.cleared, "%", bar, floors::TOO_LONG);
    let what = "gaps 1.3 m too long: no crash and in line, if short";
    let bar = Bar::AtMost(75.0);
    table.figure(what, slow.well, "%", bar, floors::TOO_LONG_WELL);
    table.note(format!("of {}; cleared: {}", slow.jumps, slow.told));
}

/// Gaps set by throwing a point from the edge are too long for a bike, which comes down with its mass
/// centre ahead of its rear wheel.
fn points(table: &mut Table, seeds: &[u64]) {
    let all: Vec<Jump> = ridden(seeds, How::Point).iter().flat_map(jumps).collect();
    let off: Vec<f64> = all
        .iter()
        .filter_map(|j| Some(j.landed.past()? - j.aim))
        .collect();
    let what = "gaps as for a mere point: rear wheel past the aim, median";
    table.figure(what, median(&off), "m", Bar::AtMost(0.0), floors::POINT);
    table.note(spread(&off, 2));
}

/// How the jumps placed by the estimate went.
fn by_estimate(table: &mut Table, lines: &[Member], all: &[Jump]) {
    let what = "gaps by the estimate: no crash, within 15° of the slope, past the knuckle";
    let share = percent(all, Jump::cleared);
    table.figure(what, share, "%", Bar::AtLeast(95.0), floors::CLEARED);
    table.shown(
        "the same, but for the knuckle",
        percent(all, |j| j.landed.well()),
        "%",
    );
    let mut group = |name: String, of: &dyn Fn(&Jump) -> bool| {
        let of: Vec<&Jump> = all.iter().filter(|j| of(j)).collect();
        let share = percent(&of, |j| j.cleared());
        table.note(format!("{name}: {share:.1} % of {} cleared", of.len()));
    };
    for kind in [
        Kind::Gap,
        Kind::Deck,
        Kind::StepUp,
        Kind::StepDown,
        Kind::Spine,
    ] {
        group(format!("{kind:?}"), &|j| j.kind == kind);
    }
    for style in [Style::Absorbing, Style::Pumping] {
        for (low, high) in [(0.3, 0.65), (0.65, 1.0)] {
            let within = |j: &Jump| j.style == style && j.skill >= low && j.skill < high;
            group(format!("{style:?}, skill {low} to {high}"), &within);
        }
    }
    let wrong = all
        .iter()
        .filter_map(|j| Some((j.landed.wrong()?.words(), j.told())));
    let out = lines.iter().flat_map(left_out);
    kinds(table, wrong.chain(out));
    against_estimate(table, all);
}

fn against_estimate(table: &mut Table, all: &[Jump]) {
    let far = |to: fn(&Jump) -> Option<f64>| -> Vec<f64> {
        let both = all.iter().filter_map(|j| Some((j.landed.past()?, to(j)?)));
        both.map(|(past, to)| past - to).collect()
    };
    let near = |off: &[f64]| percent(off, |o| o.abs() <= NEAR);
    let own = far(|j| j.own[0]);
    let what = "rear wheel within 0.25 m of the estimate from its own take-off";
    table.figure(
        what,
        near(&own),
        "%",
        Bar::AtLeast(90.0),
        floors::CLEARED_NEAR,
    );
    table.note(format!("off by, m: {}", spread(&own, 2)));
    let reach = far(|j| j.own[1]);
    table.shown(
        "the same, legs taken as long as they were at touch-down",
        near(&reach),
        "%",
    );
    table.note(format!("off by, m: {}", spread(&reach, 2)));
    let aims = far(|j| Some(j.aim));
    table.shown("rear wheel within 0.25 m of the aim", near(&aims), "%");
    table.note(format!("off by, m: {}", spread(&aims, 2)));
}

/// The jumps of a line that found no place: why, and which.
fn left_out(member: &Member) -> Vec<(String, String)> {
    let told = |(i, why): &(usize, String)| {
        let kind = member.drawn.jumps[*i].kind;
        (
            format!("not placed: {why}"),
            format!("{}.{i}({kind:?})", member.seed),
        )
    };
    member.left_out.iter().map(told).collect()
}

fn by_riding(table: &mut Table, placed: &[Member]) {
    let stood: usize = placed.iter().map(|m| m.placed.len()).sum();
    let out: usize = placed.iter().map(|m| m.left_out.len()).sum();
    let share = 100.0 * stood as f64 / (stood + out) as f64;
    table.figure(
        format!("jumps drawn that can be placed by riding, rear wheel {PAST} m past the knuckle"),
        share,
        "%",
        Bar::AtLeast(92.0),
        floors::PLACED,
    );
    table.note(format!("{stood} of {}", stood + out));
    let all: Vec<Landed> = placed
        .iter()
        .flat_map(|m| m.landed().into_iter().map(|(_, l)| l).collect::<Vec<_>>())
        .collect();
    table.shown(
        "of those placed, on the whole line: cleared",
        percent(&all, |l| l.wrong().is_none()),
        "%",
    );
    let pitch: Vec<f64> = all
        .iter()
        .filter_map(|l| Some(l.down?.pitch_to_slope.to_degrees()))
        .collect();
    table.note(format!(
        "pitch to the slope at touch-down, °: {}; median {:.1}",
        spread(&pitch, 1),
        median(&pitch)
    ));
    kinds(table, placed.iter().flat_map(left_out));
}

fn kinds(table: &mut Table, all: impl Iterator<Item = (String, String)>) {
    let mut kinds: BTreeMap<String, Vec<String>> = BTreeMap::new();
    all.for_each(|(kind, which)| kinds.entry(kind).or_default().push(which));
    for (kind, which) in kinds {
        let shown = which[..which.len().min(25)].join(" ");
        table.note(format!("{:3} {kind}: {shown}", which.len()));
    }
}
