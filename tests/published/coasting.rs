//! Coasting on level ground and on a grade.

use super::rig::{between, centre, passive, past, run, seventy, spin_mass};
use sim::constants::GRAVITY;
use sim::ride::Mount;
use tests::bare::ground;
use tests::checks::{
    Bound::{Share, Within},
    Check,
};
use tests::forms::{bearings, speed_after};

const NEWTON: &str = "Newton's second law, with the bearings of Martin et al. 1998";
const SETTLING: &str =
    "bearings count at the outline's radius, 2.6 % over the rolling one; the body sways";

/// The closed forms that the step-by-step sums below must give before they judge the model.
fn sums() -> Vec<Check> {
    let closed = |what: &str, expected, got| {
        let source = "closed form of mechanics, computed to 7 digits";
        let why = "the last digit given";
        Check::new(what, source, "m/s", [expected, got], Within(1e-6), why)
    };
    let mass = 42.0 + 2.0 * 0.06 / (0.25 * 0.25);
    let rolling = |_: f64| -0.02 * 42.0 * GRAVITY;
    let drag = |v: f64| -0.5 * 1.2 * 0.35 * v * v;
    // Coast-down of the second row of the table below: 70 kg, I/r² 1.4 kg, Crr 0.012, CdA 0.40.
    let both = |v: f64| -0.012 * 70.0 * GRAVITY - 0.245 * v * v;
    vec![
        closed(
            "sum: rolling only, 20 m from 6 m/s",
            5.338318,
            speed_after(mass, rolling, 6.0, 20.0),
        ),
        closed(
            "sum: drag only, 50 m from 6 m/s",
            4.724154,
            speed_after(mass, drag, 6.0, 50.0),
        ),
        closed(
            "sum: both, 49.418101 m from 6 m/s",
            3.996885,
            speed_after(71.4, both, 6.0, 49.418101),
        ),
    ]
}

/// The ride from one place to another, against the sum over the same way.
fn coast(what: &str, m: &Mount, degrees: f64, from: f64, way: [f64; 2], share: f64) -> Check {
    let slope = -degrees.to_radians();
    let run = run(&ground(slope, &[(1.5 * way[1] + 20.0, 0.0)]), m, from);
    let [a, b] = way.map(|x| past(&run, x));
    let weight = m.mass() * GRAVITY;
    let force = |v: f64| {
        let rolling = m.rolling[sim::plan::Surface::Packed as usize];
        weight * (-slope.sin() - rolling * slope.cos()) - m.drag * v * v - bearings(v)
    };
    let distance = centre(m, &b).distance(centre(m, &a));
    let expected = speed_after(m.mass() + spin_mass(m), force, a.speed, distance);
    Check::new(
        what,
        NEWTON,
        "m/s",
        [expected, b.speed],
        Share(share),
        SETTLING,
    )
}

fn terminal() -> Check {
    let mut m = passive();
    m.rolling = [0.02; 6];
    m.drag = 0.5 * 1.2 * 0.35;
    let (sin, cos) = 10_f64.to_radians().sin_cos();
    let push = m.mass() * GRAVITY * (sin - 0.02 * cos) - 0.091;
    // m.drag v² + 0.0087 v = push.
    let expected = (-0.0087 + (0.0087_f64 * 0.0087 + 4.0 * m.drag * push).sqrt()) / (2.0 * m.drag);
    let run = run(&ground(-10_f64.to_radians(), &[(1500.0, 0.0)]), &m, 15.0);
    Check::new(
        "terminal speed on 10°, Crr 0.02, CdA 0.35",
        "balance of forces, with the bearings of Martin et al. 1998",
        "m/s",
        [expected, past(&run, 1400.0).speed],
        Share(5e-4),
        "approached, never reached",
    )
}

/// Coasting on the level from 6 m/s: speed and way after a time.
fn coast_down() -> Vec<Check> {
    const SOURCE: &str = "closed form M v' = −(a + b v²), as in Candau et al. 1999, to 7 digits";
    const WHY: &str =
        "the body's sway as the ride begins; tyres' radii under the load of the moment";
    let run = run(&ground(0.0, &[(90.0, 0.0)]), &seventy(), 6.0);
    let from = run.samples[0].bike_x;
    let figures = [
        (2.0, 5.540860, 11.534802),
        (5.0, 4.913727, 27.199828),
        (10.0, 3.996885, 49.418101),
        (15.0, 3.198081, 67.364515),
    ];
    let rows = figures.map(|(t, speed, way)| {
        let [v, x] = [
            between(&run.samples, |s| s.t, t, |s| s.speed),
            between(&run.samples, |s| s.t, t, |s| s.bike_x - from),
        ];
        [
            Check::new(
                format!("coasting from 6 m/s for {t} s: speed"),
                SOURCE,
                "m/s",
                [speed, v],
                Share(3e-4),
                WHY,
            ),
            Check::new(
                format!("coasting from 6 m/s for {t} s: way"),
                SOURCE,
                "m",
                [way, x],
                Share(3e-4),
                WHY,
            ),
        ]
    });
    rows.concat()
}

/// The table's rows.
pub fn checks() -> Vec<Check> {
    let free = passive();
    let (mut rolling, mut drag) = (passive(), passive());
    rolling.rolling = [0.02; 6];
    drag.drag = 0.5 * 1.2 * 0.35;
    let ways: [(&str, &Mount, f64, f64, [f64; 2]); 6] = [
        (
            "level, no loss but the bearings",
            &free,
            0.0,
            6.0,
            [10.0, 60.0],
        ),
        (
            "level, rolling only, Crr 0.02",
            &rolling,
            0.0,
            6.0,
            [10.0, 30.0],
        ),
        ("level, drag only, CdA 0.35", &drag, 0.0, 6.0, [10.0, 60.0]),
        (
            "down 3° with spinning wheels",
            &free,
            3.0,
            4.0,
            [10.0, 90.0],
        ),
        (
            "down 10° with spinning wheels",
            &free,
            10.0,
            4.0,
            [10.0, 90.0],
        ),
        ("up 3° with spinning wheels", &free, -3.0, 8.0, [10.0, 40.0]),
    ];
    let mut checks = sums();
    checks.extend(
        ways.map(|(what, m, degrees, from, way)| coast(what, m, degrees, from, way, 2.5e-4)),
    );
    checks.push(terminal());
    checks.extend(coast_down());
    checks
}
