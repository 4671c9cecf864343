//! How the error falls with the step: the order that holds, and why it is not always the method's.
//!
//! The method is of order 3. That holds where the forces are smooth: on one straight or one arc, with
//! both wheels down. Where the ground's curvature jumps (each joint of its pieces), at a corner, and
//! where the rider's path is read from a table, forces have a kink: their rate jumps. The step that
//! goes over a kink is off by h², whatever the method's order, and there are as many kinks at any
//! step: order 2, once the step is so small that they count most. A touch-down is milder, as a
//! tyre's force begins with d^1.5, which costs h^2.5. Rolling resistance jumps from one surface to the
//! next, and the bearings' torque as a wheel comes down, which costs h; they are so small that they show
//! where all else is off by less than a millionth.
//!
//! Where a step meets a kink is chance, so that single errors scatter: means of many are judged.

use crate::lip_speeds;
use sim::plan::{Plan, demo};
use sim::profile::Profile;
use sim::ride::{Accuracy, Legs, Mount, ride};
use sim::setup;
use std::f64::consts::FRAC_PI_2;
use tests::bare::{add, ground};
use tests::checks::{
    Bound::{NotOver, Within},
    Check, judge,
};
use tests::rigid::rigid;

const METHOD: &str = "Bogacki and Shampine 1989, Appl. Math. Lett. 2(4):321-325";
const KINK: &str =
    "a kink costs a step h² (Hairer, Norsett and Wanner, Solving ODEs I, II.6, from memory)";

/// Steps of one length, s, that divide the time between two samples; no error is looked at.
fn fixed(step: f64) -> Accuracy {
    Accuracy {
        tolerance: f64::MAX,
        longest: step,
    }
}

const STEPS: [f64; 5] = [1e-3, 5e-4, 2.5e-4, 1.25e-4, 6.25e-5];

/// So fine that what is left of its own error hardly counts.
const FINEST: f64 = 2e-5;

/// Slope of log error over log step, by least squares.
fn slope(points: &[(f64, f64)]) -> f64 {
    let n = points.len() as f64;
    let logs: Vec<(f64, f64)> = points.iter().map(|(h, e)| (h.ln(), e.ln())).collect();
    let mean = |of: fn(&(f64, f64)) -> f64| logs.iter().map(of).sum::<f64>() / n;
    let (x, y) = (mean(|p| p.0), mean(|p| p.1));
    let over: f64 = logs.iter().map(|p| (p.0 - x) * (p.1 - y)).sum();
    over / logs.iter().map(|p| (p.0 - x) * (p.0 - x)).sum::<f64>()
}

/// Relative errors of some speeds.
fn errors(got: &[f64], right: &[f64]) -> Vec<f64> {
    assert_eq!(got.len(), right.len(), "as many speeds either way");
    let pairs = got.iter().zip(right);
    pairs.map(|(a, b)| (a / b - 1.0).abs()).collect()
}

/// Root of the mean square: for errors that are alike but for chance.
fn mean_square(errors: &[f64]) -> f64 {
    (errors.iter().map(|e| e * e).sum::<f64>() / errors.len() as f64).sqrt()
}

/// Mean by logarithms: for errors of different size, each counts alike.
fn mean_log(errors: &[f64]) -> f64 {
    (errors.iter().map(|e| e.ln()).sum::<f64>() / errors.len() as f64).exp()
}

/// How errors fall over runs: prints them and gives their slope.
fn fall(runs: &[(f64, Vec<f64>)], right: &[f64], mean: fn(&[f64]) -> f64) -> f64 {
    let point = |(x, speeds): &(f64, Vec<f64>)| (*x, mean(&errors(speeds, right)));
    let points: Vec<(f64, f64)> = runs.iter().map(point).collect();
    for (x, e) in &points {
        println!("    {x:.2e}: {e:.1e}");
    }
    slope(&points)
}

/// Speeds after 1.5 s from several speeds at the start.
fn after(profile: &Profile, m: &Mount, accuracy: &Accuracy) -> Vec<f64> {
    let from = (0..16).map(|i| 2.0 + 0.08 * f64::from(i));
    from.map(|v| ride(profile, m, v, accuracy).samples[150].speed)
        .collect()
}

/// A row for the order over some fixed steps.
fn order(
    what: &str,
    source: &'static str,
    [expected, room]: [f64; 2],
    steps: &[f64],
    (profile, m): (&Profile, &Mount),
) -> Check {
    println!("  {what}");
    let speeds = |h: f64| after(profile, m, &fixed(h));
    let runs: Vec<_> = steps.iter().map(|&h| (h, speeds(h))).collect();
    let got = fall(&runs, &speeds(FINEST), mean_square);
    let why = "four steps, 16 speeds each";
    Check::new(
        format!("order, {what}"),
        source,
        "",
        [expected, got],
        Within(room),
        why,
    )
}

/// One arc; joints where the curvature jumps; a corner and a drop.
fn grounds() -> [Profile; 3] {
    let arc = ground(-0.5, &[(12.0, 1.0 / 12.0)]);
    let joint = ground(-0.4, &[(4.0, 0.0), (2.4, 1.0 / 6.0), (4.5, 0.0)]);
    let mut drop = ground(-0.4, &[(2.0, 0.0)]);
    add(&mut drop, -FRAC_PI_2, &[(0.25, 0.0)]);
    add(&mut drop, -0.4, &[(9.0, 0.0)]);
    [arc, joint, drop]
}

#[test]
fn order_on_bare_ground() {
    const JUMP: &str = "a jump costs a step h (as kinks cost h²): between 1 and 2";
    let rider = setup::mount(&demo().riders[0], &demo().weather);
    let mut passive = rider.clone();
    passive.legs = Legs::Passive;
    let body = rigid(&rider);
    let mut free = body.clone();
    free.bearings = [0.0; 2];
    let [arc, joint, drop] = grounds();
    // Finer steps leave nothing but rounding on smooth ground; at the coarsest, kinks are not yet
    // what counts most.
    let (coarse, fine) = (&STEPS[..4], &STEPS[1..]);
    let (three, two, less) = ([3.0, 0.3], [2.0, 0.3], [1.5, 0.5]);
    judge(
        "Error against a fixed step, bare ground",
        vec![
            order(
                "one arc, one rigid body",
                METHOD,
                three,
                coarse,
                (&arc, &body),
            ),
            order(
                "one arc, passive legs",
                METHOD,
                three,
                coarse,
                (&arc, &passive),
            ),
            order(
                "straight, arc, straight, one rigid body",
                KINK,
                two,
                fine,
                (&joint, &body),
            ),
            order(
                "straight, arc, straight, passive legs",
                KINK,
                two,
                fine,
                (&joint, &passive),
            ),
            order(
                "off a corner and down, one rigid body, no bearings",
                KINK,
                two,
                fine,
                (&drop, &free),
            ),
            order(
                "off a corner and down, one rigid body",
                JUMP,
                less,
                fine,
                (&drop, &body),
            ),
        ],
    );
}

/// Five lines: rollers, tables, gaps, a spine, a bed.
fn lines() -> [(Profile, Mount, f64); 5] {
    [
        include_str!("../../sim/plans/one_jump.json"),
        include_str!("../../sim/plans/orchard.json"),
        include_str!("../../sim/plans/tall_gap.json"),
        include_str!("../../sim/plans/spine_and_bed.json"),
        include_str!("../../sim/plans/steps.json"),
    ]
    .map(|text| {
        let plan = Plan::from_json(text).expect("a plan file of our own");
        let profile = Profile::build(&plan).expect("it can be built");
        let mount = setup::mount(&plan.riders[0], &plan.weather);
        (profile, mount, setup::start_speed(&plan))
    })
}

/// Where rolling resistance jumps from one surface to the next, and bearings come in as a wheel comes down,
/// a step is off by h: they are left out here. As usually ridden, they are in.
#[test]
fn lip_speeds_converge_on_five_lines() {
    let lines = lines();
    let ridden = |accuracy: &Accuracy, smooth: bool| -> Vec<f64> {
        let each = lines.iter().map(|(p, m, v)| {
            let mut m = m.clone();
            if smooth {
                m.rolling = [m.rolling[0]; 6];
                m.bearings = [0.0; 2];
            }
            lip_speeds(&ride(p, &m, *v, accuracy))
        });
        each.flatten().collect()
    };
    let speeds = |accuracy: &Accuracy| ridden(accuracy, true);
    let right = speeds(&fixed(FINEST));
    let by_step: Vec<_> = STEPS.map(|h| (h, speeds(&fixed(h)))).into();
    let by_tolerance: Vec<_> = [1e-4, 1e-5, 1e-6, 1e-7]
        .map(|tolerance| {
            let longest = Accuracy::default().longest;
            (tolerance, speeds(&Accuracy { tolerance, longest }))
        })
        .into();
    let lips = right.len();
    let usual = ridden(&Accuracy::default(), false);
    let worst = errors(&usual, &ridden(&fixed(FINEST), false))
        .into_iter()
        .fold(0.0, f64::max);
    judge(
        "Error of lip speeds on five lines",
        vec![
            Check::new(
                format!("order in a fixed step, {lips} lips"),
                KINK,
                "",
                [2.0, fall(&by_step, &right, mean_log)],
                Within(0.4),
                "five steps; few lips, each with its own kinks",
            ),
            Check::new(
                format!("order in the tolerance, {lips} lips"),
                "each kink is off by the error accepted in a step, and there are as many at any tolerance",
                "",
                [1.0, fall(&by_tolerance, &right, mean_log)],
                Within(0.25),
                "four tolerances; few lips, each with its own kinks",
            ),
            Check::new(
                "largest error of a lip speed as usually ridden",
                "common practice, no source: a tape measures a line no better",
                "",
                [1e-3, worst],
                NotOver,
                "0.1 %",
            ),
        ],
    );
}
