//! Coming down: what a landing takes, and the fall that hits as hard.

use super::rig::{bench, centre, flight, loaded_radius, passive, run, velocity};
use glam::DVec2;
use sim::constants::GRAVITY;
use sim::judge::jumps;
use sim::plan::demo;
use sim::profile::Profile;
use sim::ride::{EventKind, Mount, Run, Sample};
use sim::setup;
use tests::checks::{
    Bound::{self, Share},
    Check,
};

/// Slope of the landing, rad.
const FALL: f64 = 15.0 * std::f64::consts::PI / 180.0;

/// How long after the touch-down the landing is over and done with, in samples.
const OVER: usize = 200;

/// A passive rider who drops from a bench onto a slope: the ride, the last three samples in the air
/// and three when all has settled.
struct Landed {
    run: Run,
    before: usize,
}

impl Landed {
    fn new(m: &Mount) -> Self {
        let run = run(&bench(0.6, FALL), m, 7.0);
        let last = flight(&run)[flight(&run).len() - 1];
        let before = run.samples.iter().position(|s| s.t == last.t).unwrap_or(0) - 2;
        Self { run, before }
    }

    fn ends(&self) -> [&[Sample]; 2] {
        let (s, i) = (&self.run.samples, self.before);
        [&s[i..i + 3], &s[i + OVER..i + OVER + 3]]
    }
}

/// A landing takes what goes into the slope and leaves what goes along it: sliding wheels, and
/// wheels that come in spinning for the bench and are spun up to what the slope asks.
fn along() -> [Check; 2] {
    let (mut slides, rolls) = (passive(), passive());
    slides.tyre.grip = 0.0;
    [
        keeps(
            "sliding wheels",
            &slides,
            1e-9,
            "nothing but weight acts along the slope",
        ),
        keeps(
            "rolling wheels",
            &rolls,
            2e-3,
            "bearings; tyres roll smaller while pressed",
        ),
    ]
}

/// The speed along the slope after a landing, from that before it.
fn keeps(what: &str, m: &Mount, share: f64, why: &'static str) -> Check {
    let landed = Landed::new(m);
    let [before, after] = landed.ends();
    let [a, b] = [before, after].map(|s| velocity(m, s).dot(DVec2::from_angle(-FALL)));
    let pull = GRAVITY * FALL.sin() * (after[1].t - before[1].t);
    // What a wheel spins with counts at its rim; where it does not grip it takes no part.
    let radius = loaded_radius(m);
    let grips = m.tyre.grip > 0.0;
    let rim = f64::from(u8::from(grips)) * m.wheel_inertia / (radius * radius);
    let turned = |s: &Sample| s.rear_turned + s.front_turned;
    let spins = radius * (turned(&before[2]) - turned(&before[0])) / (before[2].t - before[0].t);
    let expected = (m.mass() * (a + pull) + rim * spins) / (m.mass() + 2.0 * rim);
    Check::new(
        format!("speed along the slope after a landing, {what}"),
        "inelastic impact: the momentum along the slope stays (any textbook of mechanics)",
        "m/s",
        [expected, b],
        Share(share),
        why,
    )
}

/// Everything but the motion along the slope: what the landing takes.
fn taken() -> Check {
    let mut m = passive();
    (m.tyre.grip, m.bearings) = (0.0, [0.0; 2]);
    let landed = Landed::new(&m);
    let [before, after] = landed.ends();
    let normal = DVec2::from_angle(-FALL).perp();
    let into = velocity(&m, before).dot(normal);
    let sunk = (centre(&m, &before[1]) - centre(&m, &after[1])).dot(normal);
    let dt = before[2].t - before[0].t;
    let rate = |of: fn(&Sample) -> f64| (of(&before[2]) - of(&before[0])) / dt;
    let turning =
        m.bike_inertia * rate(|s| s.pitch).powi(2) + m.rider_inertia * rate(|s| s.lean).powi(2);
    let arm = |s: &Sample| {
        DVec2::new(s.rider_x - s.bike_x, s.rider_z - s.bike_z)
            - DVec2::from_angle(s.pitch).perp() * m.bike_rise
    };
    let apart = (arm(&before[2]) - arm(&before[0])) / dt;
    let expected = 0.5
        * (m.mass() * into * into + turning + m.reduced_mass() * apart.length_squared())
        + m.mass() * GRAVITY * FALL.cos() * sunk;
    let net = |s: &Sample| s.spent.net();
    Check::new(
        "energy that tyres and legs take in a landing",
        "inelastic impact: ½ M v² of the part into the slope, and the fall of the mass centre in it",
        "J",
        [expected, net(&after[1]) - net(&before[1])],
        Share(5e-3),
        "rates from samples; what the tyres keep stored at rest",
    )
}

/// (v sin γ)²/2g, as the ride's touch-down has it, from the flight before it and the slope from under the rear
/// wheel to under the front wheel.
fn fall_height(
    what: &str,
    m: &Mount,
    run: &Run,
    slope: impl Fn([f64; 2]) -> f64,
    told: impl Fn(f64) -> f64,
    (bound, reason): (Bound, &'static str),
) -> Check {
    let s = flight(run);
    let down = run.events.iter().find_map(|e| match e.kind {
        EventKind::TouchedDown {
            into_ground,
            rear_x,
            front_x,
            ..
        } if e.t > s[1].t => Some((e.t, into_ground, [rear_x, front_x])),
        _ => None,
    });
    let (touched, into, wheels) = down.expect("it comes down");
    let v = velocity(m, s) - DVec2::Y * (GRAVITY * (touched - s[1].t));
    let into_slope = v.length() * (v.to_angle() - slope(wheels)).sin();
    Check::new(
        format!("equivalent fall height, {what}"),
        "(v sin γ)²/2g (Hubbard 2009; McNeil, Hubbard and Swedberg 2012)",
        "m",
        [into_slope * into_slope / (2.0 * GRAVITY), told(into)],
        bound,
        reason,
    )
}

fn fall_heights() -> [Check; 2] {
    let m = passive();
    let drop = run(&bench(1.0, FALL), &m, 5.0);
    let fallen = |into: f64| into * into / (2.0 * GRAVITY);
    let bench = fall_height(
        "drop of 1 m onto 15°",
        &m,
        &drop,
        |_| -FALL,
        fallen,
        (
            Share(1e-6),
            "the touch-down lies within a step, read from a cubic, which a parabola is",
        ),
    );
    // The demonstration's longest jump, in still air that holds nobody back.
    let plan = demo();
    let mut rider = setup::mount(&plan.riders[0], &plan.weather);
    rider.drag = 0.0;
    let profile = Profile::build(&plan).expect("the demonstration can be built");
    let ridden = run(&profile, &rider, setup::start_speed(&plan));
    let rows = jumps(&profile, &ridden);
    let longest = rows
        .iter()
        .max_by(|a, b| a.airtime.partial_cmp(&b.airtime).expect("numbers"));
    let judged = |_| longest.and_then(|row| row.fall_height).unwrap_or(f64::NAN);
    let height = |x| profile.height_at(x).expect("ground");
    let ground = |[rear, front]: [f64; 2]| (height(front) - height(rear)).atan2(front - rear);
    let line = fall_height(
        "as the longest jump is judged",
        &rider,
        &ridden,
        ground,
        judged,
        (
            Share(3e-2),
            "the wheel that is still off is seen square to the ground of the other",
        ),
    );
    [bench, line]
}

/// The table's rows.
pub fn checks() -> Vec<Check> {
    let mut checks = along().to_vec();
    checks.push(taken());
    checks.extend(fall_heights());
    checks
}
