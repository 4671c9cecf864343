//! Plans at random that can be ridden, up to the edges of what is accepted and often right on them: wheels larger
//! than a transition, plumb faces, gaps of nothing, bumps of 10 cm and lips of 4 m, the lightest and the heaviest
//! riders, gale, flat yards and cliffs.

use fastrand::Rng;
use sim::plan::{
    Bike, Feature, Flat, Ground, GroundPoint, Jump, Landing, LeadIn, Lie, Line, Lip, Mount, Plan,
    Rider, Roller, Rolling, RunOut, Soil, StartRamp, Style, Surface, Turn, USUAL_WIDTH, Weather,
    Yard,
};
use sim::profile::Profile;
use sim::ride::{Accuracy, CrashKind, EventKind, Outcome, Run, Sample, ride_seen};
use sim::setup;

/// How often a number is one of the two ends of its range.
const AT_AN_END: f64 = 0.2;

/// The plan with a seed; none of its fields is out of its own range, but not all of them go together.
pub fn any(seed: u64) -> Plan {
    let mut rng = Rng::with_seed(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ 0x3B1D_5EED);
    let rng = &mut rng;
    let length = [30.0, 120.0, 500.0][rng.usize(0..3)];
    let line = match rng.u8(0..4) {
        0 => surveyed(rng),
        _ => Line::Features(features(rng)),
    };
    let ramp = line.has_start_ramp();
    Plan {
        name: String::new(),
        yard: Yard {
            length,
            lie: lie(rng, length),
            tallest: None,
            soil: Soil::Loam,
        },
        line,
        riders: vec![mount(rng)],
        weather: weather(rng),
        initial_speed: (!ramp || rng.u8(0..4) == 0).then(|| within(rng, 0.0, 20.0)),
        seen: Vec::new(),
        seed: 0,
        width: USUAL_WIDTH,
    }
}

/// The first plan from a seed on that can be ridden; the yard is as long as the line wants it.
///
/// # Panics
/// Where hardly any plan can.
pub fn ridable(seed: u64) -> Plan {
    const TRIES: u64 = 1000;
    let tries = (0..TRIES).map(|i| any(seed * TRIES + i));
    let fitting = |mut plan: Plan| {
        let faults = plan.validate();
        if let [fault] = &faults[..]
            && fault.field == "yard.length"
            && let (Lie::Grade(_), Some(least)) = (&plan.yard.lie, fault.least)
        {
            plan.yard.length = least;
            return plan.validate().is_empty().then_some(plan);
        }
        faults.is_empty().then_some(plan)
    };
    tries
        .filter_map(fitting)
        .next()
        .expect("some plans can be ridden")
}

/// A number of a range: often an end of it, else as likely small as large.
fn within(rng: &mut Rng, low: f64, high: f64) -> f64 {
    let share = rng.f64();
    if share < AT_AN_END {
        return if share < AT_AN_END / 2.0 { low } else { high };
    }
    if low > 0.0 && rng.bool() {
        return (low * (high / low).powf(rng.f64())).clamp(low, high);
    }
    low + rng.f64() * (high - low)
}

fn maybe<T>(rng: &mut Rng, some: impl FnOnce(&mut Rng) -> T) -> Option<T> {
    rng.bool().then(|| some(rng))
}

fn surface(rng: &mut Rng) -> Surface {
    Surface::ALL[rng.usize(0..Surface::ALL.len())]
}

fn lie(rng: &mut Rng, length: f64) -> Lie {
    match rng.u8(0..4) {
        0 => Lie::Grade(0.0),
        1 => Lie::Grade(within(rng, -0.6, 0.6)),
        2 => Lie::Grade(within(rng, -0.1, 0.1)),
        _ => Lie::Surveyed(ground(rng, length)),
    }
}

/// A yard's ground, at times as steep as is accepted.
fn ground(rng: &mut Rng, length: f64) -> Vec<GroundPoint> {
    let mut points = vec![(0.0, 0.0)];
    let mut at = (0.0, 0.0);
    while at.0 < length {
        let step = within(rng, 0.01, 20.0).max(length / 150.0);
        let grade = within(rng, -0.999, 0.999) * if rng.bool() { 1.0 } else { 0.1 };
        at = (at.0 + step, at.1 + grade * step);
        points.push(at);
    }
    points.into_iter().map(GroundPoint::from).collect()
}

/// An existing line: steps of all sizes, with faces and notches.
fn surveyed(rng: &mut Rng) -> Line {
    let mut points = vec![(0.0, 0.0)];
    let mut at = (0.0, 0.0);
    let steep = within(rng, 0.05, 5.0);
    let mut faced = true;
    for _ in 0..rng.usize(1..40) {
        let step = within(rng, 0.01, 5.0);
        if !faced && rng.u8(0..6) == 0 {
            at.1 += within(rng, -4.0, 4.0);
            faced = true;
        } else {
            at = (
                at.0 + step,
                at.1 + within(rng, -steep, steep) * step.min(1.0),
            );
            faced = false;
        }
        points.push(at);
    }
    Line::Surveyed {
        points: points.into_iter().map(GroundPoint::from).collect(),
        surface: surface(rng),
    }
}

fn features(rng: &mut Rng) -> Vec<Feature> {
    let mut features = Vec::new();
    if rng.u8(0..4) > 0 {
        features.push(start_ramp(rng));
    }
    for _ in 0..rng.usize(1..8) {
        features.push(match rng.u8(0..5) {
            0 => Feature::Flat(Flat {
                length: within(rng, 0.05, 20.0),
                surface: surface(rng),
            }),
            1 => Feature::Roller(Roller {
                height: within(rng, 0.02, 2.0),
                length: within(rng, 0.5, 30.0),
                count: rng.u32(1..4),
                surface: surface(rng),
                width: None,
            }),
            2 => Feature::Turn(Turn {
                radius: within(rng, 1.0, 60.0),
                sweep_deg: within(rng, 1.0, 360.0),
                bank_deg: within(rng, 0.0, 80.0),
                surface: surface(rng),
                width: None,
            }),
            _ => Feature::Jump(jump(rng)),
        });
    }
    if rng.bool() {
        features.push(Feature::RunOut(RunOut {
            length: within(rng, 0.05, 40.0),
            surface: surface(rng),
        }));
    }
    features
}

fn start_ramp(rng: &mut Rng) -> Feature {
    Feature::StartRamp(StartRamp {
        platform_height: within(rng, 0.1, 8.0),
        angle_deg: within(rng, 3.0, 75.0),
        bottom_radius: within(rng, 0.3, 40.0),
        edge_radius: within(rng, 0.0, 20.0),
        push_off: within(rng, 0.0, 8.0),
        surface: surface(rng),
        width: None,
    })
}

fn jump(rng: &mut Rng) -> Jump {
    Jump {
        lip: Lip {
            height: within(rng, 0.05, 4.0),
            radius: within(rng, 0.3, 20.0),
            lead_in: maybe(rng, |rng| LeadIn {
                angle_deg: within(rng, 1.0, 60.0),
                length: within(rng, 0.02, 10.0),
            }),
            straight_end: maybe(rng, |rng| within(rng, 0.0, 5.0)),
            surface: surface(rng),
            width: None,
        },
        gap: within(rng, 0.0, 15.0),
        decked: rng.bool(),
        landing: Landing {
            height: within(rng, 0.0, 5.0),
            angle_deg: within(rng, 2.0, 75.0),
            knuckle_radius: within(rng, 0.0, 20.0),
            bottom_radius: within(rng, 0.3, 40.0),
            length: maybe(rng, |rng| within(rng, 0.0, 40.0)),
            surface: surface(rng),
            boxed: false,
            width: None,
        },
    }
}

/// Anybody on any bike.
fn mount(rng: &mut Rng) -> Mount {
    let bike_mass = within(rng, 3.0, 35.0);
    let bead_seat = within(rng, 0.13, 0.64);
    let tyre_width = within(rng, 0.015, 0.13);
    let radius = 0.5 * bead_seat + tyre_width;
    let wheel_mass = within(rng, 0.2, (0.45 * bike_mass).min(6.0));
    let hoop = wheel_mass * radius * radius;
    Mount {
        label: String::new(),
        rider: Rider {
            mass: within(rng, 10.0, 150.0),
            stature: within(rng, 0.8, 2.2),
            posture: within(rng, 0.0, 1.0),
            drag_area: within(rng, 0.0, 1.5),
            style: [Style::Passive, Style::Absorbing, Style::Pumping][rng.usize(0..3)],
            skill: within(rng, 0.0, 1.0),
        },
        bike: Bike {
            mass: bike_mass,
            wheelbase: within(rng, (2.0 * radius).max(0.5), 1.5),
            bead_seat,
            tyre_width,
            tyre_pressure: within(rng, 5e4, 1e6),
            tyre_stiffness: maybe(rng, |rng| within(rng, 1e4, 5e5)),
            wheel_mass,
            wheel_inertia: within(rng, (0.25 * hoop).max(1e-3), hoop.min(1.0)),
            rolling: rolling(rng),
        },
    }
}

fn rolling(rng: &mut Rng) -> Rolling {
    let all = maybe(rng, |rng| within(rng, 0.0, 0.3));
    Rolling::default().map(|usual| all.unwrap_or(usual))
}

fn weather(rng: &mut Rng) -> Weather {
    Weather {
        altitude: within(rng, -430.0, 5000.0),
        temperature: within(rng, -30.0, 50.0),
        tailwind: within(rng, -20.0, 20.0),
        ground: [Ground::Dry, Ground::Damp, Ground::Soft][rng.usize(0..3)],
    }
}

/// Most steps that a ride is worked out in, at the usual accuracy.
const MOST_STEPS: usize = 60_000;

/// How far a ledger may be off, as a share of the head over the line's lowest place, and the least head it is taken of,
/// m: somebody who only stands is allowed what a step is off by.
const OFF: f64 = 0.01;
const LEAST_HEAD: f64 = 0.3;

/// Rides a plan with its first rider, whom it has; gives how that ended.
///
/// # Errors
/// What no ride may have: too many steps, a figure that is none, moments or happenings out of order, a ledger that does
/// not close.
pub fn ride(plan: &Plan) -> Result<Ridden, String> {
    let faults = |faults: Vec<_>| format!("{faults:?}");
    let profile = Profile::build(plan).map_err(faults)?;
    let mount = setup::mount(&plan.riders[0], &plan.weather);
    let mut steps = 0;
    let mut count = |_: Sample| steps += 1;
    let (speed, accuracy) = (setup::start_speed(plan), Accuracy::default());
    let run = ride_seen(&profile, &mount, speed, &accuracy, &mut count);
    if steps > MOST_STEPS {
        return Err(format!("{steps} steps"));
    }
    if run.told().windows(2).any(|pair| pair[1].t < pair[0].t)
        || run.samples.windows(2).any(|pair| pair[1].t < pair[0].t)
    {
        return Err("out of order".to_owned());
    }
    finite(&run)?;
    let off = residue(&run);
    if off > OFF {
        return Err(format!("the ledger is off by {off} of the head"));
    }
    let lost = run.events.iter().any(|event| {
        let why = CrashKind::Lost;
        event.kind == EventKind::Crashed { why }
    });
    Ok(Ridden {
        outcome: run.outcome,
        lost,
        steps,
        off,
    })
}

/// How a ride went.
#[derive(Clone, Copy, Debug)]
pub struct Ridden {
    /// How it ended.
    pub outcome: Outcome,
    /// Whether its numbers ran away.
    pub lost: bool,
    /// In how many steps it was worked out.
    pub steps: usize,
    /// What its ledger is off by at worst, as a share of the head.
    pub off: f64,
}

/// Every figure of a ride is a number. JSON has no others, and writes null.
fn finite(run: &Run) -> Result<(), String> {
    let ledger = run.ledger;
    let sums = [ledger.start, ledger.end, ledger.weight];
    let figures = run.samples.iter().flat_map(|sample| sample.values());
    let figures = figures.chain(sums).chain(ledger.spent.values());
    let text = serde_json::to_string(&run.events).map_err(|error| error.to_string())?;
    let all = figures.into_iter().all(f64::is_finite) && !text.contains("null");
    all.then_some(())
        .ok_or_else(|| "a figure is no number".to_owned())
}

/// What the ledger is off by at worst, as a share of the head over the lowest place that the mass centre comes to.
fn residue(run: &Run) -> f64 {
    let (start, weight) = (run.ledger.start, run.ledger.weight);
    let off = |s: &Sample| (start - s.head * weight - s.spent.net()).abs();
    let lowest = run
        .samples
        .iter()
        .map(|s| s.height)
        .fold(f64::INFINITY, f64::min);
    let head = (start / weight - lowest).max(LEAST_HEAD);
    run.samples.iter().map(off).fold(0.0, f64::max) / (head * weight)
}
