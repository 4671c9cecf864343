//! Rolling down a grade: hoop, disc and bike, and the load on each wheel.

use super::rig::{TEXTBOOK, between, loaded_radius, passive, past, run, seventy};
use sim::constants::GRAVITY;
use sim::ride::{Mount, Run, Sample};
use tests::bare::ground;
use tests::checks::{Bound::Share, Check};
use tests::forms::speed_after;
use tests::rigid::rigid;

const SLOPE: f64 = 10.0 * std::f64::consts::PI / 180.0;

/// Down the grade for 5 s.
fn down(m: &Mount) -> Run {
    run(&ground(-SLOPE, &[(60.0, 0.0)]), m, 1.0)
}

/// From 1 s on: what the start set swinging has died down.
fn settled(run: &Run) -> &[Sample] {
    &run.samples[100..500]
}

fn acceleration(run: &Run) -> f64 {
    let s = settled(run);
    let last = s[s.len() - 1];
    (last.speed - s[0].speed) / (last.t - s[0].t)
}

/// One rigid body whose wheels' spin adds `share` of its mass: all of it in two hoops, or two discs.
fn rolling(share: f64) -> Mount {
    let mut m = rigid(&passive());
    m.bearings = [0.0; 2];
    let radius = m.tyre.radius - m.tyre.depth_under(0.5 * m.mass() * GRAVITY * SLOPE.cos());
    m.wheel_inertia = 0.5 * share * m.mass() * radius * radius;
    m
}

/// a = g sin θ/(1 + share).
fn roller(name: &str, share: f64, expected: f64) -> Check {
    Check::new(
        format!("{name}, rolling down 10°"),
        "Halliday, Resnick and Walker, Fundamentals of Physics (from memory)",
        "m/s²",
        [expected, acceleration(&down(&rolling(share)))],
        Share(1e-4),
        "the wheels bear unlike loads and so roll on unlike radii",
    )
}

/// a = M g sin θ/(M + 2 I/R²), M 42 kg, I 0.06 kg m², R 0.25 m.
fn bike() -> Check {
    let mut m = passive();
    m.rider_mass = 42.0 - m.bike_mass;
    (m.wheel_inertia, m.bearings) = (0.06, [0.0; 2]);
    m.tyre.radius += 0.25 - loaded_radius(&m);
    Check::new(
        "a bike of 42 kg with its rider, rolling down 10°",
        "a = M g sin θ/(M + 2 I/R²), computed to 7 digits",
        "m/s²",
        [1.628463, acceleration(&down(&m))],
        Share(1e-4),
        "the wheels' radii under the load of the moment",
    )
}

/// Loads of a body on two wheels whose spin is fed by grip T at either axle's height: half the load
/// each, less or more T b/½L, b the height of the mass centre over the axles.
fn loads() -> Vec<Check> {
    let m = rolling(0.5);
    let run = down(&m);
    let s = settled(&run);
    let mean = |of: fn(&Sample) -> f64| s.iter().map(of).sum::<f64>() / s.len() as f64;
    let (sin, cos) = SLOPE.sin_cos();
    let half = 0.5 * m.mass() * GRAVITY * cos;
    let grip = m.mass() * GRAVITY * sin * 0.5 / 1.5;
    let shift = grip * m.bike_rise / m.wheelbase;
    let row = |name: &str, expected, got| {
        Check::new(
            format!("load on the {name} wheel, two discs rolling down 10°"),
            "balance of moments (any textbook of mechanics)",
            "N",
            [expected, got],
            Share(2e-3),
            "mean of 4 s, in which the body hops a little on its tyres",
        )
    };
    vec![
        row("rear", half - shift, mean(|s| s.rear_load)),
        row("front", half + shift, mean(|s| s.front_load)),
    ]
}

/// 1.5 m down a grade of 20°, from rest: without loss, with rolling and spin, with drag as well.
fn roll_in() -> Vec<Check> {
    let slope = 20.0_f64.to_radians();
    let row = |what: &str, m: &Mount, expected: f64| {
        let run = run(&ground(-slope, &[(10.0, 0.0)]), m, 0.0);
        let from = run.samples[0].bike_x;
        let to = from + 1.5 / slope.tan();
        let got = between(&run.samples, |s| s.bike_x, to, |s| s.speed);
        Check::new(
            format!("1.5 m down 20° from rest, {what}"),
            "energy balance, computed to 7 digits",
            "m/s",
            [expected, got],
            Share(1e-3),
            "the body sways against the bike as the ride begins",
        )
    };
    let full = seventy();
    let (mut free, mut rolling) = (full.clone(), full.clone());
    // Wheels that slide are not spun up.
    (free.tyre.grip, free.drag) = (0.0, 0.0);
    rolling.drag = 0.0;
    let mut checks = vec![
        row("no loss", &free, 5.42402),
        row("rolling and spin", &rolling, 5.28130),
        row("rolling, spin and drag", &full, 5.241810),
    ];
    // The sum that coasting is judged by gives the last figure as well.
    let force = |v: f64| 70.0 * GRAVITY * (slope.sin() - 0.012 * slope.cos()) - 0.245 * v * v;
    let sum = speed_after(71.4, force, 0.0, 1.5 / slope.sin());
    checks.push(Check::new(
        "sum: 1.5 m down 20°",
        TEXTBOOK,
        "m/s",
        [5.241810, sum],
        Share(1e-6),
        "the last digit given",
    ));
    checks
}

/// A slope whose tangent is Crr holds a speed, and that far rolls who starts with it on the level.
fn steady() -> Vec<Check> {
    let mut m = passive();
    m.bearings = [0.0; 2];
    let row = |what: &str, crr: f64, degrees: f64| {
        let mut m = m.clone();
        m.rolling = [crr; 6];
        let run = run(&ground(-degrees.to_radians(), &[(60.0, 0.0)]), &m, 5.0);
        let [a, b] = [10.0, 50.0].map(|x| past(&run, x).speed);
        Check::new(
            format!("steady speed down {degrees}° on Crr {crr}, {what}"),
            "tan θ = Crr, to 4 digits",
            "m/s",
            [a, b],
            Share(2e-4),
            "the angle's last digit; the body sways a little",
        )
    };
    vec![
        row("asphalt", 0.004, 0.2292),
        row("dirt course", 0.0214, 1.226),
        row("soil", 0.08, 4.574),
    ]
}

/// The table's rows.
pub fn checks() -> Vec<Check> {
    let mut checks = vec![
        roller("two hoops", 1.0, 0.851453),
        roller("two discs", 0.5, 1.135271),
        bike(),
    ];
    checks.extend(loads());
    checks.extend(roll_in());
    checks.extend(steady());
    checks
}
