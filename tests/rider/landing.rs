//! What a clean landing (on the slope, in line with it, no crash) takes, and what a skilled rider gets back of it.

use super::draw::Drawn;
use super::figures::{Bar, Table, median, percent, spread};
use super::landed::{at, between, spent};
use super::place::{How, Member};
use super::{floors, seeds};
use sim::constants::GRAVITY;
use sim::judge::{self, jumps};
use sim::plan::Style;
use sim::ride::Sample;
use sim::setup;

/// Head that a landing may take beyond its equivalent fall height, m.
const MORE: f64 = 0.1;

/// Head below which a landing took nothing worth getting back, m.
const WORTH: f64 = 0.05;

/// One clean landing, m of head.
struct Landing {
    told: String,
    /// Equivalent fall height.
    fall: f64,
    /// What legs, tyres and slip took from the touch-down to the end of the hollow.
    taken: f64,
    /// What the legs took there, without what they gave, and the tyres and slip.
    absorbed: f64,
    /// What the legs gave there and on to the next lip.
    given: f64,
    /// What legs took and gave, and what tyres and slip took, each from touch-down to the end of the hollow.
    parts: [f64; 4],
}

fn landings(member: &Member) -> Vec<Landing> {
    let ridden = &member.ridden;
    let rows = jumps(&ridden.profile, &ridden.run);
    let clean = member.landed().into_iter().enumerate();
    let clean =
        clean.filter(|(lip, (_, l))| rows[*lip].how == judge::How::Clean && l.crash.is_none());
    clean
        .filter_map(|(lip, (placed, landed))| {
            let down = landed.down?;
            let samples = &ridden.run.samples;
            let touch = between(samples, 0.0, down.t).last()?;
            let hollow = at(samples, ridden.profile.lips[lip].landing_end.x)?;
            let next = ridden
                .profile
                .lips
                .get(lip + 1)
                .and_then(|l| at(samples, l.edge.x));
            Some(Landing {
                told: format!("{}.{}", member.seed, placed.index),
                fall: rows[lip].fall_height?,
                ..taken(member, touch, hollow, next.unwrap_or(hollow))
            })
        })
        .collect()
}

fn taken(member: &Member, touch: &Sample, hollow: &Sample, next: &Sample) -> Landing {
    let m = setup::mount(&member.plan.riders[0], &member.plan.weather);
    let weight = m.mass() * GRAVITY;
    let here = spent(touch, hollow).scaled(1.0 / weight);
    let absorbed = here.absorbed + here.tyres + here.slip;
    Landing {
        told: String::new(),
        fall: 0.0,
        taken: absorbed - here.put_in,
        absorbed,
        given: spent(touch, next).put_in / weight,
        parts: [here.absorbed, here.put_in, here.tyres, here.slip],
    }
}

/// Lines placed by riding for riders who pump as well as can be.
pub fn pumpers(seeds: &[u64]) -> Vec<Member> {
    let half: Vec<u64> = seeds.iter().copied().step_by(2).collect();
    seeds::each(&half, |&seed| {
        let drawn = Drawn::family(seed);
        Member::new(
            seed,
            drawn.ridden_by(drawn.who, Style::Pumping, 1.0),
            How::Riding,
        )
    })
}

/// The table; `placed` are the family's lines placed by riding, `pumpers` those of [`pumpers`].
pub fn table(placed: &[Member], pumpers: &[Member]) -> Table {
    let mut table = Table::new("Landing");
    let all: Vec<Landing> = placed.iter().flat_map(landings).collect();
    let within = |l: &Landing| l.taken <= l.fall + MORE;
    table.figure(
        "clean landings that take at most their equivalent fall height and 0.1 m",
        percent(&all, within),
        "%",
        Bar::AtLeast(90.0),
        floors::LANDING,
    );
    let of = |what: fn(&Landing) -> f64| all.iter().map(what).collect::<Vec<f64>>();
    table.note(format!("taken, m: {}", spread(&of(|l| l.taken), 2)));
    table.note(format!(
        "equivalent fall height, m: {}",
        spread(&of(|l| l.fall), 2)
    ));
    table.note(format!(
        "taken beyond it, m: {}",
        spread(&of(|l| l.taken - l.fall), 2)
    ));
    for (i, part) in ["legs take", "legs give", "tyres", "slip"]
        .iter()
        .enumerate()
    {
        let all: Vec<f64> = all.iter().map(|l| l.parts[i]).collect();
        table.note(format!("{part}, m: {}", spread(&all, 2)));
    }
    let mut worst: Vec<&Landing> = all.iter().filter(|l| !within(l)).collect();
    worst.sort_by(|a, b| (b.taken - b.fall).total_cmp(&(a.taken - a.fall)));
    let told = |l: &&Landing| format!("{} ({:.2} of {:.2})", l.told, l.taken, l.fall);
    table.note(
        worst
            .iter()
            .take(10)
            .map(told)
            .collect::<Vec<_>>()
            .join(" "),
    );
    let skilled: Vec<Landing> = pumpers.iter().flat_map(landings).collect();
    let back: Vec<f64> = skilled
        .iter()
        .filter(|l| l.absorbed > WORTH)
        .map(|l| l.given / l.absorbed)
        .collect();
    let what = "pumping at 1: share of it got back by the next lip, median";
    table.figure(
        what,
        median(&back),
        "",
        Bar::AtLeast(0.5),
        floors::LANDING_BACK,
    );
    table.note(format!("share got back: {}", spread(&back, 2)));
    table
}
