//! More skill and more work are never worse.

use super::draw::Drawn;
use super::figures::{Bar, Table, median, percent};
use super::landed::{self, lip_speed};
use super::place::{How, Member, ride};
use super::{floors, riders, seeds};
use sim::constants::GRAVITY;
use sim::plan::{Plan, Style};
use sim::setup::Ridden;

/// The skills of the ladder.
const LADDER: [f64; 8] = [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0];

/// What came of one line.
struct Ladders {
    seed: u64,
    who: usize,
    stiff: f64,
    /// Speed at the first lip by skill, soaking up and pumping, m/s.
    ladder: [[f64; LADDER.len()]; 2],
    /// Skills at which the rider crashed pumping and not soaking up: before the first edge, before the
    /// first landing's end, anywhere, and over the first jump fitted to each by itself.
    crashed: [Vec<f64>; 4],
    /// Skills at which both found a place for the first jump by themselves.
    fitted_alone: usize,
}

/// A line fitted to a rider who soaks up with a skill of a half.
fn fitted(seed: u64) -> Member {
    let drawn = Drawn::rollers(seed);
    let drawn = drawn.ridden_by(drawn.who, Style::Absorbing, 0.5);
    Member::new(seed, drawn, How::Anyway)
}

fn with(member: &Member, style: Style, skill: f64) -> Ridden {
    let riders = vec![riders::who(member.drawn.who, style, skill)];
    ride(&Plan {
        riders,
        ..member.plan.clone()
    })
}

fn on(seed: u64) -> Ladders {
    let member = fitted(seed);
    let mut crashed = [const { Vec::new() }; 4];
    let mut ladder = [[0.0; LADDER.len()]; 2];
    let mut fitted_alone = 0;
    for (i, skill) in LADDER.into_iter().enumerate() {
        let rides = [Style::Absorbing, Style::Pumping].map(|style| with(&member, style, skill));
        ladder[0][i] = lip_speed(&rides[0], 0);
        ladder[1][i] = lip_speed(&rides[1], 0);
        let [soaking, pumping] = rides.each_ref().map(landed::crash);
        let lip = member.ridden.profile.lips[0];
        for (k, end) in [lip.edge.x, lip.landing_end.x, f64::INFINITY]
            .into_iter()
            .enumerate()
        {
            let by = |crash: Option<(f64, _)>| crash.is_some_and(|(x, _)| x < end);
            if by(pumping) && !by(soaking) {
                crashed[k].push(skill);
            }
        }
        if [0.3, 0.6, 1.0].contains(&skill)
            && let Some(worse) = alone(&member, skill)
        {
            fitted_alone += 1;
            if worse {
                crashed[3].push(skill);
            }
        }
    }
    Ladders {
        seed,
        who: member.drawn.who,
        stiff: lip_speed(&with(&member, Style::Passive, 0.5), 0),
        ladder,
        crashed,
        fitted_alone,
    }
}

/// Whether the rider crashes pumping and not soaking up, over the first jump fitted to each by itself;
/// none where one of them finds no place for it.
fn alone(member: &Member, skill: f64) -> Option<bool> {
    let [soaking, pumping] = [Style::Absorbing, Style::Pumping].map(|style| {
        let mut drawn = member.drawn.ridden_by(member.drawn.who, style, skill);
        drawn.jumps.truncate(1);
        let member = Member::new(member.seed, drawn, How::Estimate(0.0));
        (!member.placed.is_empty()).then(|| landed::crash(&member.ridden).is_some())
    });
    Some(pumping? && !soaking?)
}

/// How far out of order a line is allowed to be, as a share: not at all, but for rounding.
const EVEN: f64 = 1e-9;

/// The skills compared by style.
const HALF: usize = 2;
const ONE: usize = LADDER.len() - 1;

/// Speeds that ought to be in order, the greater first, m/s.
type Pair = (&'static str, fn(&Ladders) -> [f64; 2]);

/// The order of the styles; the last pair is only shown.
const PAIRS: [Pair; 4] = [
    ("pumping at 1 against pumping at 0.5", |l| {
        [l.ladder[1][ONE], l.ladder[1][HALF]]
    }),
    ("pumping at 0.5 against soaking up at 0.5", |l| {
        [l.ladder[1][HALF], l.ladder[0][HALF]]
    }),
    ("soaking up at 0.5 against stiff legs", |l| {
        [l.ladder[0][HALF], l.stiff]
    }),
    ("pumping at 1 against soaking up at 1", |l| {
        [l.ladder[1][ONE], l.ladder[0][ONE]]
    }),
];

fn ordered([more, less]: [f64; 2]) -> bool {
    more >= less * (1.0 - EVEN)
}

/// The table.
pub fn table(seeds: &[u64]) -> Table {
    let lines = seeds::each(seeds, |&seed| on(seed));
    let mut table = Table::new("Order: more skill, more work");
    let whole = |l: &Ladders| PAIRS[..3].iter().all(|(_, pair)| ordered(pair(l)));
    let what = "lines with the styles in order at the first lip";
    table.figure(
        what,
        percent(&lines, whole),
        "%",
        Bar::AtLeast(99.0),
        floors::ORDER_STYLES,
    );
    for (name, pair) in PAIRS {
        let heads: Vec<f64> = lines.iter().map(|l| head(pair(l))).collect();
        table.shown(
            format!("{name}, in order"),
            percent(&lines, |l| ordered(pair(l))),
            "%",
        );
        let out = lines.iter().filter(|l| !ordered(pair(l)));
        let out: Vec<String> = out
            .map(|l| format!("{} ({:.2})", l.seed, head(pair(l))))
            .collect();
        let mid = median(&heads);
        table.note(format!(
            "median {mid:+.3} m of head; out of order: {}",
            out[..out.len().min(20)].join(" ")
        ));
    }
    skills(&mut table, &lines);
    crashes(&mut table, &lines);
    table
}

/// Head gained from the slower to the faster, m.
fn head([more, less]: [f64; 2]) -> f64 {
    (more * more - less * less) / (2.0 * GRAVITY)
}

fn skills(table: &mut Table, lines: &[Ladders]) {
    let mut all = Vec::new();
    for (style, name) in ["soaking up", "pumping"].into_iter().enumerate() {
        let steps: Vec<(u64, f64, f64)> = lines.iter().flat_map(|l| falls(l, style)).collect();
        let worst = steps.iter().map(|s| s.2).fold(f64::NAN, f64::max);
        table.shown(
            format!("a tenth of skill more, {name}: slower by more than 0.5 %"),
            percent(&steps, |s| s.2 > 0.005),
            "%",
        );
        let mut bad: Vec<_> = steps.iter().filter(|s| s.2 > 0.005).collect();
        bad.sort_by(|a, b| b.2.total_cmp(&a.2));
        let bad: Vec<String> = bad
            .iter()
            .take(10)
            .map(|s| format!("{}@{} ({:.1} %)", s.0, s.1, 100.0 * s.2))
            .collect();
        table.note(format!(
            "worst {:.2} % slower, of {}; {}",
            100.0 * worst,
            steps.len(),
            bad.join(" ")
        ));
        all.extend(steps);
    }
    table.figure(
        "a tenth of skill more: not slower by more than 0.5 %",
        percent(&all, |s| s.2 <= 0.005),
        "%",
        Bar::AtLeast(99.0),
        floors::ORDER_SKILL,
    );
}

/// Seed, skill and share by which the next tenth of skill is slower.
fn falls(line: &Ladders, style: usize) -> Vec<(u64, f64, f64)> {
    let speeds = line.ladder[style];
    let pairs = speeds.windows(2).zip(LADDER);
    let reached = pairs.filter(|(pair, _)| pair[0] > 0.0);
    reached
        .map(|(pair, skill)| (line.seed, skill, 1.0 - pair[1] / pair[0]))
        .collect()
}

fn crashes(table: &mut Table, lines: &[Ladders]) {
    let names = [
        "lines with a crash before the first edge",
        "lines with a crash before the first landing's end",
        "lines with a crash anywhere, gaps as who soaks up at 0.5 has them",
        "lines with a crash up to the first landing, its gap fitted to each",
    ];
    for (i, name) in names.into_iter().enumerate() {
        let (bar, floor) = match i {
            0 | 3 => (Bar::AtMost(0.0), floors::ORDER_CRASHES),
            _ => (Bar::Shown, None),
        };
        table.figure(
            format!("{name}, pumping only"),
            percent(lines, |l| !l.crashed[i].is_empty()),
            "%",
            bar,
            floor,
        );
        let told: Vec<String> = lines
            .iter()
            .filter(|l| !l.crashed[i].is_empty())
            .map(|l| format!("{} ({}) at {:?}", l.seed, l.who, l.crashed[i]))
            .collect();
        table.note(told.join(" "));
    }
    let alone: usize = lines.iter().map(|l| l.fitted_alone).sum();
    table.note(format!("{alone} pairs of rides with gaps fitted to each"));
}
