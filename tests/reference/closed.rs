//! The second formulation against closed forms: what it is worth as a reference.

use crate::body::Body;
use crate::constrained::Constrained;
use crate::track::{Moment, Track};
use glam::DVec2;
use sim::constants::GRAVITY;
use sim::profile::Profile;
use tests::bare::ground;
use tests::checks::{
    Bound::{self, Share, Within},
    Check, judge,
};
use tests::curve::Curve;
use tests::forms::elliptic;
use tests::lines::{self, PUSH_OFF};
use tests::rigid::rigid;

/// The child of 10 as a rigid body without losses, and with a drag and rolling of its own.
fn body(rolling: f64, drag: f64) -> Body {
    let mut body = Body::still(&rigid(&lines::mount(1)));
    (body.rolling, body.drag, body.bearings) = ([rolling; 6], drag, false);
    body
}

fn ride(profile: &Profile, body: &Body, speed: f64) -> Track {
    let curve = Curve::over(profile, body.radius);
    Track::ride(
        &Constrained {
            body,
            curve: &curve,
        },
        0.0,
        speed,
    )
}

fn check(
    what: &str,
    source: &'static str,
    unit: &'static str,
    pair: [f64; 2],
    bound: Bound,
) -> Check {
    let why = "tolerance of the integration; the table of moments is read straight between";
    Check::new(what, source, unit, pair, bound, why)
}

/// Energy and losses over a start ramp and rollers.
fn ledger(name: &str, body: &Body) -> Check {
    let plan = lines::rollers(1.2, 0.15, 4.0, 4).plan;
    let profile = Profile::build(&plan).expect("the line can be built");
    let track = ride(&profile, body, PUSH_OFF);
    let sum = |m: &Moment| m.energy + m.rolled + m.dragged;
    let sums = [sum(&track.both[0]), sum(&track.both[track.both.len() - 1])];
    check(
        &format!("energy over ramp and rollers, {name}"),
        "conservation of energy",
        "J",
        sums,
        Share(1e-8),
    )
}

/// A rigid body whose wheels roll in a hollow turns about its centre: a compound pendulum, to whose
/// inertia the wheels add what their own spin takes.
fn hollow() -> Vec<Check> {
    let (radius, angle) = (6.0, 0.7);
    let body = body(0.0, 0.0);
    let track = ride(
        &ground(-angle, &[(1.6 * angle * radius, 1.0 / radius)]),
        &body,
        0.0,
    );
    let pivot = DVec2::from_angle(-angle).perp() * radius;
    let rolls = radius - body.radius;
    let half = 0.5 * body.wheelbase;
    let arm = (rolls * rolls - half * half).sqrt() - body.bike_at.y;
    let spin = rolls / body.radius;
    let inertia =
        body.bike_inertia + body.bike_mass * arm * arm + 2.0 * body.wheel_inertia * spin * spin;
    let from = track.both[0].centre - pivot;
    let swing = (-from.x).atan2(-from.y);
    let turning = (2.0 * body.bike_mass * GRAVITY * arm * (1.0 - swing.cos()) / inertia).sqrt();
    let i = track.both.partition_point(|m| m.middle.x < pivot.x);
    let [a, b] = [&track.both[i - 1], &track.both[i]];
    let share = (pivot.x - a.middle.x) / (b.middle.x - a.middle.x);
    let time = a.t + share * (b.t - a.t);
    let k = elliptic((0.5 * swing).sin());
    let period = (inertia / (body.bike_mass * GRAVITY * arm)).sqrt() * k;
    // Square to the path both wheels stand at the same slant.
    let loads = body.bike_mass * (GRAVITY + turning * turning * arm) * rolls
        / (rolls * rolls - half * half).sqrt();
    let got = [a, b].map(|m| m.loads[0] + m.loads[1]);
    const SOURCE: &str = "compound pendulum (Goldstein, Classical Mechanics)";
    vec![
        check(
            "hollow, R 6 m from 40°: time to the bottom",
            SOURCE,
            "s",
            [period, time],
            Share(1e-7),
        ),
        check(
            "hollow: speed at the bottom",
            SOURCE,
            "m/s",
            [turning * arm, a.velocity.length().max(b.velocity.length())],
            Share(1e-6),
        ),
        check(
            "hollow: loads at the bottom",
            "circular motion",
            "N",
            [loads, got[0].max(got[1])],
            Share(1e-5),
        ),
    ]
}

/// Coasting on level ground, 70 kg, I/r² 1.4 kg, Crr 0.012, CdA 0.40 m², ρ 1.225 kg/m³, 6 m/s.
fn coasting() -> Vec<Check> {
    let mut body = body(0.012, 0.245);
    (body.bike_mass, body.rider_mass) = (0.0, 70.0);
    body.rider = [0, 1].map(|_| crate::motion::Motion::Still(DVec2::new(0.0, 0.5)));
    body.wheel_inertia = 0.7 * body.radius * body.radius;
    let track = ride(&ground(0.0, &[(80.0, 0.0)]), &body, 6.0);
    let rows = [
        (2.0, 5.540860),
        (5.0, 4.913727),
        (10.0, 3.996885),
        (15.0, 3.198081),
    ];
    let row = |(t, expected): (f64, f64)| {
        let m = track
            .both
            .iter()
            .find(|m| m.t > t - 1e-9)
            .expect("it rolls on");
        Check::new(
            format!("coasting for {t} s from 6 m/s"),
            "closed form M v' = −(a + b v²) (Candau et al. 1999)",
            "m/s",
            [expected, m.velocity.x],
            Within(1e-6),
            "the last digit given",
        )
    };
    rows.map(row).into()
}

/// Down 10°, 42 kg, two wheels of 0.06 kg m² that roll on 0.25 m: a = M g sin θ/(M + 2 I/R²).
fn grade() -> Check {
    let mut body = body(0.0, 0.0);
    (body.bike_mass, body.rider_mass) = (42.0, 0.0);
    body.wheel_inertia = 0.06 * (body.radius / 0.25) * (body.radius / 0.25);
    let track = ride(&ground(-10.0_f64.to_radians(), &[(30.0, 0.0)]), &body, 0.0);
    let m = track
        .both
        .iter()
        .find(|m| m.t > 4.0 - 1e-9)
        .expect("it rolls on");
    check(
        "down 10° with spinning wheels, after 4 s",
        "a = M g sin θ/(M + 2 I/R²)",
        "m/s",
        [4.0 * 1.628463, m.velocity.length()],
        Share(4e-7),
    )
}

#[test]
fn closed_forms() {
    let mut checks = vec![
        ledger("no losses", &body(0.0, 0.0)),
        ledger("all losses", &{
            let mut body = body(0.02, 0.2);
            body.bearings = true;
            body
        }),
    ];
    checks.extend(hollow());
    checks.extend(coasting());
    checks.push(grade());
    judge("The second formulation itself", checks);
}
