//! What people who dig and ride such lines expect. None of it has a source; each row can fail.

use sim::judge::jumps;
use sim::plan::{Feature, Flat, Line, Plan, Roller, RunOut, StartRamp, Style, Surface, Yard, demo};
use sim::profile::Profile;
use sim::ride::{Run, Sample};
use sim::setup::{Ridden, ride_plan};
use tests::checks::{Bound::Within, Check};

const PRACTICE: &str = "common practice, no source";

/// A row for a range.
fn within(what: impl Into<String>, unit: &'static str, [low, high]: [f64; 2], got: f64) -> Check {
    let pair = [0.5 * (low + high), got];
    Check::new(
        what,
        PRACTICE,
        unit,
        pair,
        Within(0.5 * (high - low)),
        "the range that is usual",
    )
}

/// A start ramp, two rollers and level ground on which the rider rolls out.
fn rollers(height: f64, length: f64, style: Style) -> Plan {
    let surface = Surface::Packed;
    let flat = |length| Feature::Flat(Flat { length, surface });
    let mut plan = demo();
    plan.yard = Yard::even(60.0, 0.0);
    plan.line = Line::Features(vec![
        Feature::StartRamp(StartRamp {
            width: None,
            platform_height: 2.5,
            angle_deg: 30.0,
            bottom_radius: 3.5,
            edge_radius: 0.8,
            push_off: 1.0,
            surface: Surface::Wood,
        }),
        flat(3.0),
        Feature::Roller(Roller {
            width: None,
            height,
            length,
            count: 2,
            surface,
        }),
        flat(4.0),
        Feature::RunOut(RunOut {
            length: 12.0,
            surface,
        }),
    ]);
    plan.riders.iter_mut().for_each(|m| m.rider.style = style);
    plan
}

/// What a line's rollers take from a rider through legs and tyres, as head, m, and the speed before
/// them, m/s. Rolling and drag are left out: level ground takes them as well.
fn over_rollers(plan: &Plan, rider: usize) -> (f64, f64) {
    let Ridden { profile, run } = ride_plan(plan, rider).expect("the line can be ridden");
    let rollers = profile
        .spans
        .iter()
        .filter(|s| s.name.starts_with("Roller"));
    let ends: Vec<[f64; 2]> = rollers.map(|s| [s.from.x, s.to.x]).collect();
    let [a, b] = [ends[0][0] - 0.5, ends[ends.len() - 1][1] + 2.0].map(|x| at(&run, x));
    let taken = |s: &Sample| s.spent.tyres + s.spent.slip + s.spent.absorbed - s.spent.put_in;
    ((taken(&b) - taken(&a)) / run.ledger.weight, a.speed)
}

fn at(run: &Run, x: f64) -> Sample {
    let found = run.samples.iter().find(|s| s.bike_x >= x);
    *found.unwrap_or(&run.samples[run.samples.len() - 1])
}

/// The demonstration with one style for all.
fn shown(style: Style) -> Plan {
    let mut plan = demo();
    plan.riders.iter_mut().for_each(|m| m.rider.style = style);
    plan
}

/// What a train of rollers costs.
fn trains() -> Vec<Check> {
    let mut checks = Vec::new();
    for (rider, name) in ["child", "adult"].into_iter().enumerate() {
        let [passive, absorbing] =
            [Style::Passive, Style::Absorbing].map(|style| over_rollers(&shown(style), rider).0);
        let what = format!("head that three rollers of 0.25 m cost an absorbing {name}");
        // Whoever bears an even load does no work over a train: with the legs' optimum three low rollers cost
        // what they roll and no more.
        checks.push(within(what, "m", [0.1, 1.0], absorbing).known_out());
        let what = format!("and a passive {name} more by");
        checks.push(within(what, "m", [0.1, 1.5], passive - absorbing));
    }
    let low = |style| over_rollers(&rollers(0.25, 3.0, style), 0).0;
    let what = "head that pumping saves a child over two rollers of 0.25 m";
    let saved = low(Style::Absorbing) - low(Style::Pumping);
    checks.push(within(what, "m", [0.0, 0.5], saved));
    let mut tall = rollers(0.45, 3.5, Style::Absorbing);
    tall.riders.iter_mut().for_each(|m| m.rider.skill = 1.0);
    let (cost, speed) = over_rollers(&tall, 0);
    checks.push(within(
        "speed of a child before two tall rollers",
        "m/s",
        [6.0, 7.0],
        speed,
    ));
    let what = "head that two rollers of 0.45 m by 3.5 m cost a perfect child";
    checks.push(within(what, "m", [0.1, 0.6], cost));
    checks
}

/// The demonstration's lips, landings and flights.
fn line() -> Vec<Check> {
    let plan = demo();
    let profile = Profile::build(&plan).expect("the demonstration can be built");
    let Line::Features(features) = &plan.line else {
        panic!("the demonstration has features");
    };
    let mut checks = Vec::new();
    for (i, lip) in profile.lips.iter().enumerate() {
        let n = i + 1;
        let Feature::Jump(jump) = &features[lip.feature] else {
            panic!("a lip belongs to a jump");
        };
        checks.push(within(
            format!("exit angle of lip {n}"),
            "°",
            [30.0, 60.0],
            lip.exit.to_degrees(),
        ));
        checks.push(within(
            format!("radius of lip {n} over its height"),
            "",
            [2.0, 6.0],
            jump.lip.radius / jump.lip.height,
        ));
        checks.push(within(
            format!("slope of landing {n}"),
            "°",
            [15.0, 35.0],
            -lip.slope.to_degrees(),
        ));
    }
    for (rider, name) in ["child", "adult"].into_iter().enumerate() {
        let Ridden { profile, run } = ride_plan(&plan, rider).expect("it can be ridden");
        for row in jumps(&profile, &run) {
            let n = row.lip + 1;
            let time = row.airtime.unwrap_or(f64::NAN);
            checks.push(within(
                format!("time in the air, jump {n}, {name}"),
                "s",
                [0.3, 1.0],
                time,
            ));
            let fall = row.fall_height.unwrap_or(f64::NAN);
            checks.push(within(
                format!("equivalent fall height, jump {n}, {name}"),
                "m",
                [0.0, 1.0],
                fall,
            ));
        }
    }
    checks
}

/// The table's rows.
pub fn checks() -> Vec<Check> {
    let mut checks = trains();
    checks.extend(line());
    checks
}
