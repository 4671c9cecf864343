//! A little more is a little more: small changes that help never slow the rider down.

use super::draw::Drawn;
use super::figures::{Bar, Table, percent};
use super::place::{How, Member, ride};
use super::{floors, landed, seeds};
use sim::judge::{self, jumps};
use sim::plan::{Feature, Line, Plan, Style};
use sim::setup::Ridden;

/// The styles and skills that ride each line.
const STYLES: [Style; 2] = [Style::Absorbing, Style::Pumping];
const SKILLS: [f64; 3] = [0.3, 0.6, 1.0];

/// A small change that helps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Change {
    /// The start raised by 5 cm.
    Start,
    /// A roller lowered by 2 cm.
    Roller,
    /// Rolling resistance lowered by a twentieth.
    Rolling,
    /// A push of 0.05 m/s more.
    Push,
}

const CHANGES: [Change; 4] = [Change::Start, Change::Roller, Change::Rolling, Change::Push];

impl Change {
    /// The plan with the change; none where it does not count for this rider.
    fn made(self, drawn: &Drawn, plan: &Plan) -> Option<Plan> {
        let mut plan = plan.clone();
        let Line::Features(features) = &mut plan.line else {
            return None;
        };
        match (self, &mut features[0]) {
            (Change::Start, Feature::StartRamp(ramp)) => ramp.platform_height += 0.05,
            (Change::Push, Feature::StartRamp(ramp)) => ramp.push_off += 0.05,
            (Change::Rolling, _) => {
                let rolling = &mut plan.riders[0].bike.rolling;
                let each = [
                    &mut rolling.wood,
                    &mut rolling.paved,
                    &mut rolling.packed,
                    &mut rolling.gravel,
                    &mut rolling.grass,
                    &mut rolling.soft,
                ];
                each.into_iter().for_each(|c| *c *= 0.95);
            }
            // Who pumps may miss a roller's height.
            (Change::Roller, _) if drawn.style == Style::Absorbing => {
                match &mut features[drawn.a_roller?] {
                    Feature::Roller(roller) => roller.height -= 0.02,
                    _ => return None,
                }
            }
            _ => return None,
        }
        Some(plan)
    }
}

/// One change on one line.
struct Step {
    seed: u64,
    who: usize,
    style: Style,
    skill: f64,
    change: Change,
    lip: usize,
    /// How much slower the lip is left, as a share; negative where it is faster.
    fall: f64,
}

impl Step {
    fn told(&self) -> String {
        let Self {
            seed,
            who,
            style,
            skill,
            change,
            lip,
            fall,
        } = self;
        let lost = 100.0 * fall;
        format!(
            "seed {seed}, rider {who}, {style:?} {skill}, {change:?}, lip {lip}: {lost:.2} % slower"
        )
    }
}

/// The steps on one line, and how many riders did not come to its first lip.
fn steps(seed: u64) -> (Vec<Step>, usize) {
    let drawn = Drawn::rollers(seed);
    let (mut all, mut stranded) = (Vec::new(), 0);
    for style in STYLES {
        for skill in SKILLS {
            let member = Member::new(seed, drawn.ridden_by(drawn.who, style, skill), How::Anyway);
            if landed::lip_speed(&member.ridden, 0) == 0.0 {
                stranded += 1;
                continue;
            }
            for change in CHANGES {
                if let Some(plan) = change.made(&member.drawn, &member.plan) {
                    all.extend(compared(&member, change, &ride(&plan)));
                }
            }
        }
    }
    (all, stranded)
}

/// Every lip of a line left with and without a change, the later ones only behind a jump that was
/// landed clean both times.
fn compared(member: &Member, change: Change, with: &Ridden) -> Vec<Step> {
    let rows = [&member.ridden, with].map(|r| jumps(&r.profile, &r.run));
    let clean = |lip: usize| rows.iter().all(|rows| rows[lip].how == judge::How::Clean);
    let lips = 0..member.placed.len();
    let counted = lips.filter(|&lip| lip == 0 || clean(lip - 1));
    let step = |lip| {
        let [before, after] = [&member.ridden, with].map(|r| landed::lip_speed(r, lip));
        (before > 0.0).then(|| Step {
            seed: member.seed,
            who: member.drawn.who,
            style: member.drawn.style,
            skill: member.drawn.skill,
            change,
            lip,
            fall: (before - after) / before,
        })
    };
    counted.filter_map(step).collect()
}

/// The table.
pub fn table(seeds: &[u64]) -> Table {
    let lines = seeds::each(seeds, |&seed| steps(seed));
    let stranded: usize = lines.iter().map(|(_, n)| n).sum();
    let all: Vec<Step> = lines.into_iter().flat_map(|(steps, _)| steps).collect();
    let (first, later): (Vec<Step>, Vec<Step>) = all.into_iter().partition(|s| s.lip == 0);
    let mut table = Table::new("Calm: small changes that help");
    let worst = first.iter().map(|s| s.fall).fold(f64::NAN, f64::max);
    table.figure(
        "steps that slow the first lip by more than 0.5 %",
        percent(&first, |s| s.fall > 0.005),
        "%",
        Bar::AtMost(0.5),
        floors::CALM_HALF,
    );
    table.figure(
        "steps that slow the first lip by more than 2 %",
        percent(&first, |s| s.fall > 0.02),
        "%",
        Bar::AtMost(0.0),
        floors::CALM_TWO,
    );
    table.shown("worst of them", 100.0 * worst, "%");
    table.figure(
        "steps that slow a later lip by more than 1 %, the jump before clean",
        percent(&later, |s| s.fall > 0.01),
        "%",
        Bar::AtMost(3.0),
        floors::CALM_LATER,
    );
    table.note(format!("{} steps at the first lip, {} at later ones, on {} lines; {stranded} riders of {} did not come to the first lip", first.len(), later.len(), seeds.len(), 6 * seeds.len()));
    for style in STYLES {
        for skill in SKILLS {
            let who = |s: &Step| s.style == style && s.skill == skill;
            group(
                &mut table,
                &format!("{style:?} {skill}"),
                [&first, &later],
                who,
            );
        }
    }
    for change in CHANGES {
        group(&mut table, &format!("{change:?}"), [&first, &later], |s| {
            s.change == change
        });
    }
    worst_ten(&mut table, first);
    worst_ten(&mut table, later);
    table
}

fn group(table: &mut Table, name: &str, [first, later]: [&[Step]; 2], of: impl Fn(&Step) -> bool) {
    let [first, later] = [first, later].map(|all| all.iter().filter(|s| of(s)).collect::<Vec<_>>());
    let worst = first.iter().map(|s| s.fall).fold(f64::NAN, f64::max);
    table.note(format!(
        "{name:<14} first lip: {:.2} % > 0.5 %, {:.2} % > 2 %, worst {:.2} %, of {}; later: {:.1} % > 1 % of {}",
        percent(&first, |s| s.fall > 0.005),
        percent(&first, |s| s.fall > 0.02),
        100.0 * worst,
        first.len(),
        percent(&later, |s| s.fall > 0.01),
        later.len(),
    ));
}

fn worst_ten(table: &mut Table, mut steps: Vec<Step>) {
    steps.sort_by(|a, b| b.fall.total_cmp(&a.fall));
    for step in steps.iter().filter(|s| s.fall > 0.005).take(10) {
        table.note(step.told());
    }
}
