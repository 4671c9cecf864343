//! Take-off and flight over the family's jumps at fitting speeds.

use super::figures::{Bar, Table, median, percent, spread};
use super::landed::{Landed, between};
use super::place::{Member, ride};
use super::{floors, riders, seeds};
use sim::plan::{Plan, Style};

/// How far the bike's pitch may be from the lip's angle, degrees.
const ALONG: f64 = 8.0;

/// How far the body may lean against the bike, degrees: forward, and back.
const FORWARD: f64 = 45.0;
const BACK: f64 = 30.0;

/// The skills whose pops are compared.
const SKILLS: [f64; 2] = [0.3, 1.0];

/// One jump, in degrees.
struct Flight {
    told: String,
    /// Bike's pitch less the lip's angle as the rear wheel leaves.
    pitch: f64,
    /// Direction of the mass centre less the lip's angle.
    direction: f64,
    /// Farthest lean against the bike in the air, forward (negative) and back.
    lean: [f64; 2],
}

fn flights(member: &Member) -> Vec<Flight> {
    let landed = member.landed().into_iter().enumerate();
    landed
        .filter_map(|(lip, (placed, landed))| flight(member, lip, placed.index, &landed))
        .collect()
}

fn flight(member: &Member, lip: usize, index: usize, landed: &Landed) -> Option<Flight> {
    let off = landed.off?;
    let exit = member.ridden.profile.lips[lip].exit;
    // A flight that ends in a crash without a touch-down is looked at to its end.
    let down = landed.down.map_or(f64::INFINITY, |d| d.t);
    let air = between(&member.ridden.run.samples, off.t, down);
    let lean = air.iter().map(|s| (s.lean - s.pitch).to_degrees());
    let [least, most] = [lean.clone().fold(0.0, f64::min), lean.fold(0.0, f64::max)];
    Some(Flight {
        told: format!("{}.{index}", member.seed),
        pitch: (off.pitch - exit).to_degrees(),
        direction: (off.direction - exit).to_degrees(),
        lean: [least, most],
    })
}

/// How the first lip of a line is left by its rider with other skills: direction of the mass centre
/// less the lip's angle, degrees.
fn pops(member: &Member) -> Option<[f64; 2]> {
    let lip = member.ridden.profile.lips.first()?;
    let off = |skill: f64| {
        let riders = vec![riders::who(member.drawn.who, member.drawn.style, skill)];
        let ridden = ride(&Plan {
            riders,
            ..member.plan.clone()
        });
        Some((Landed::over(&ridden, 0).off?.direction - lip.exit).to_degrees())
    };
    Some([off(SKILLS[0])?, off(SKILLS[1])?])
}

/// The table; `placed` are the family's lines placed by riding.
pub fn table(placed: &[Member]) -> Table {
    let all: Vec<Flight> = placed.iter().flat_map(flights).collect();
    let mut table = Table::new("Take-off and flight");
    let pitch: Vec<f64> = all.iter().map(|f| f.pitch).collect();
    table.figure(
        "bike's pitch within 8° of the lip's angle as the rear wheel leaves",
        percent(&pitch, |p| p.abs() <= ALONG),
        "%",
        Bar::AtLeast(90.0),
        floors::FLIGHT_PITCH,
    );
    table.figure(
        "pitch less the lip's angle, median",
        median(&pitch),
        "°",
        Bar::Within(-3.0, 3.0),
        floors::FLIGHT_PITCH_MEDIAN,
    );
    table.note(spread(&pitch, 1));
    table.note(worst(&all, |f| f.pitch.abs()));
    let direction: Vec<f64> = all.iter().map(|f| f.direction).collect();
    table.figure(
        "direction of the mass centre less the lip's angle, median",
        median(&direction),
        "°",
        Bar::AtLeast(-4.0),
        floors::FLIGHT_DIRECTION,
    );
    table.note(spread(&direction, 1));
    pop(&mut table, placed);
    let [forward, back] = [0, 1].map(|i| all.iter().map(|f| f.lean[i]).collect::<Vec<f64>>());
    let held = |f: &Flight| f.lean[0] >= -FORWARD && f.lean[1] <= BACK;
    table.figure(
        "body's lean against the bike within 45° forward and 30° back",
        percent(&all, held),
        "%",
        Bar::AtLeast(95.0),
        floors::FLIGHT_LEAN,
    );
    for (name, lean) in [("forward", &forward), ("back", &back)] {
        table.shown(format!("farthest lean {name}, median"), median(lean), "°");
        table.note(spread(lean, 1));
    }
    table.note(worst(&all, |f| {
        (-f.lean[0] - FORWARD).max(f.lean[1] - BACK)
    }));
    table
}

fn pop(table: &mut Table, placed: &[Member]) {
    let lines: Vec<&Member> = placed
        .iter()
        .filter(|m| m.drawn.style != Style::Passive)
        .collect();
    let both: Vec<(Style, [f64; 2])> = seeds::each(&lines, |m| Some((m.drawn.style, pops(m)?)))
        .into_iter()
        .flatten()
        .collect();
    for style in [Style::Absorbing, Style::Pumping] {
        let of: Vec<[f64; 2]> = both.iter().filter(|b| b.0 == style).map(|b| b.1).collect();
        let steeper: Vec<f64> = of
            .iter()
            .map(|[unskilled, skilled]| skilled - unskilled)
            .collect();
        let [low, high] = [0, 1].map(|i| median(&of.iter().map(|b| b[i]).collect::<Vec<f64>>()));
        table.figure(
            format!("{style:?}: direction at skill 1 less at skill 0.3, first lip, median"),
            median(&steeper),
            "°",
            Bar::AtLeast(0.0),
            floors::FLIGHT_POP,
        );
        table.note(format!(
            "medians {low:.1}° and {high:.1}° of {}; steeper in {:.0} %",
            of.len(),
            percent(&steeper, |s| *s > 0.0)
        ));
    }
}

fn worst(all: &[Flight], by: impl Fn(&Flight) -> f64) -> String {
    let mut sorted: Vec<&Flight> = all.iter().collect();
    sorted.sort_by(|a, b| by(b).total_cmp(&by(a)));
    let told = |f: &&Flight| {
        format!(
            "{} ({:.0}°, lean {:.0} {:+.0})",
            f.told, f.pitch, f.lean[0], f.lean[1]
        )
    };
    let ten: Vec<String> = sorted.iter().take(10).map(told).collect();
    format!("worst: {}", ten.join(" "))
}
