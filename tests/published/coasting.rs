//! Coasting on level ground and on a grade.

use super::rig::{bearings, centre, ground, passive, past, run, speed_after, spin_mass};
use sim::constants::GRAVITY;
use sim::ride::Mount;
use tests::checks::{
    Bound::{Share, Within},
    Check, judge,
};

const NEWTON: &str = "Newton's second law, with the bearings of Martin et al. 1998";
const SETTLING: &str =
    "bearings count at the outline's radius, 2.6 % over the rolling one; the body sways";

/// The closed forms that the step-by-step sums below must give before they judge the model.
fn sums() -> Vec<Check> {
    let closed = |what: &str, expected, got| Check {
        what: what.into(),
        source: "closed form of mechanics, computed to 7 digits",
        unit: "m/s",
        expected,
        got,
        bound: Within(1e-6),
        why: "the last digit given",
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
    Check {
        what: what.into(),
        source: NEWTON,
        unit: "m/s",
        expected: speed_after(m.mass() + spin_mass(m), force, a.speed, distance),
        got: b.speed,
        bound: Share(share),
        why: SETTLING,
    }
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
    Check {
        what: "terminal speed on 10°, Crr 0.02, CdA 0.35".into(),
        source: "balance of forces, with the bearings of Martin et al. 1998",
        unit: "m/s",
        expected,
        got: past(&run, 1400.0).speed,
        bound: Share(5e-4),
        why: "approached, never reached",
    }
}

#[test]
fn coasting() {
    let free = passive();
    let (mut rolling, mut drag) = (passive(), passive());
    rolling.rolling = [0.02; 6];
    drag.drag = 0.5 * 1.2 * 0.35;
    let mut checks = sums();
    checks.push(coast(
        "level, no loss but the bearings",
        &free,
        0.0,
        6.0,
        [10.0, 60.0],
        2.5e-4,
    ));
    checks.push(coast(
        "level, rolling only, Crr 0.02",
        &rolling,
        0.0,
        6.0,
        [10.0, 30.0],
        2.5e-4,
    ));
    checks.push(coast(
        "level, drag only, CdA 0.35",
        &drag,
        0.0,
        6.0,
        [10.0, 60.0],
        2.5e-4,
    ));
    checks.push(coast(
        "down 3° with spinning wheels",
        &free,
        3.0,
        4.0,
        [10.0, 90.0],
        2.5e-4,
    ));
    checks.push(coast(
        "down 10° with spinning wheels",
        &free,
        10.0,
        4.0,
        [10.0, 90.0],
        2.5e-4,
    ));
    checks.push(coast(
        "up 3° with spinning wheels",
        &free,
        -3.0,
        8.0,
        [10.0, 40.0],
        2.5e-4,
    ));
    checks.push(terminal());
    judge("Coasting", &checks);
}
