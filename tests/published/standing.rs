//! What tyres and legs give under a steady load, and how it is shared between the wheels.

use super::rig::{TEXTBOOK, bowl, centre, passive, past, run};
use glam::DVec2;
use sim::constants::GRAVITY;
use sim::plan::demo;
use std::f64::consts::PI;
use tests::bare::ground;
use tests::checks::{
    Bound::{Share, Within},
    Check,
};
use tests::rigid::rigid;

/// Height of the axles over level ground: a closed torus under half the weight.
fn tyres() -> Check {
    let m = passive();
    let bike = &demo().riders[0].bike;
    let radius = 0.5 * bike.bead_seat + bike.tyre_width;
    let stiffness = bike.tyre_pressure * 2.0 * PI / 3.0 * (2.0 * radius).sqrt();
    let give = (0.5 * m.mass() * GRAVITY / stiffness).powf(2.0 / 3.0);
    let run = run(&ground(0.0, &[(20.0, 0.0)]), &m, 3.0);
    Check::new(
        "tyres' give under the child",
        "F = p (2π/3) √(2R) d^1.5 (Renart and Roura-Grabulosa 2019)",
        "mm",
        [1e3 * give, 1e3 * (radius - past(&run, 15.0).bike_z)],
        Share(1e-5),
        "the body has swayed itself to rest",
    )
}

/// Legs are set so that they carry the body's weight at their usual length; a hollow adds v²/ρ.
fn legs(radius: f64, speed: f64) -> Check {
    let m = passive();
    let (ground, pivot) = bowl(radius, 0.5);
    let run = run(&ground, &m, speed);
    let s = past(&run, pivot.x);
    let around = DVec2::new(s.rider_x, s.rider_z).distance(pivot);
    let fast = s.speed * around / centre(&m, &s).distance(pivot);
    let spring = 2.0 * PI * 2.0;
    Check::new(
        format!("legs' give at the bottom of a hollow, R {radius} m, from {speed} m/s"),
        "Hooke's law, a body on legs of 2 Hz (from memory)",
        "mm",
        [
            1e3 * fast * fast / around / (spring * spring),
            1e3 * (m.reach_usual - s.reach),
        ],
        Share(0.03),
        "not quite steady: the speed still changes by a tenth in the legs' own period",
    )
}

fn legs_at_rest() -> Check {
    let m = passive();
    let run = run(&ground(0.0, &[(20.0, 0.0)]), &m, 3.0);
    Check::new(
        "legs' length on level ground",
        TEXTBOOK,
        "m",
        [m.reach_usual, past(&run, 15.0).reach],
        Within(1e-6),
        "a micrometre of sway",
    )
}

/// One rigid body that slides through a hollow, at an angle from its bottom. With d the mass centre's
/// distance from the hollow's own centre, I the inertia about it and β half the angle between the
/// wheels, seen from there:
///
/// ```text
/// (N_r + N_f) cos β = M (g cos φ + v²/d)
/// (N_r − N_f) sin β = M g sin φ (1 − M d²/I)
/// ```
fn wheels(radius: f64, at: f64) -> Vec<Check> {
    let mut m = rigid(&passive());
    // Ten times the usual damping: what counts here is the steady load.
    (m.tyre.grip, m.tyre.damping) = (0.0, 10.0 * m.tyre.damping);
    let (ground, pivot) = bowl(radius, 0.8);
    let run = run(&ground, &m, 1.0);
    let from_bottom = |s: &sim::ride::Sample| {
        let arm = centre(&m, s) - pivot;
        arm.x.atan2(-arm.y)
    };
    let s = run
        .samples
        .iter()
        .find(|s| from_bottom(s) >= at.to_radians());
    let s = s.expect("it gets there");
    let (phi, d) = (from_bottom(s), centre(&m, s).distance(pivot));
    let axle = DVec2::new(s.bike_x, s.bike_z).distance(pivot);
    let beta = (0.5 * m.wheelbase / axle).atan();
    let inertia = m.bike_inertia + m.mass() * d * d;
    let sum = m.mass() * (GRAVITY * phi.cos() + s.speed * s.speed / d) / beta.cos();
    let apart = m.mass() * GRAVITY * phi.sin() * (1.0 - m.mass() * d * d / inertia) / beta.sin();
    let row = |name: &str, expected, got| {
        Check::new(
            format!("load on the {name} wheel in a hollow, R {radius} m, at {at}°"),
            "circular motion and balance of moments (any textbook of mechanics)",
            "N",
            [expected, got],
            Share(2e-3),
            "hops a little on its tyres",
        )
    };
    vec![
        row("rear", 0.5 * (sum + apart), s.rear_load),
        row("front", 0.5 * (sum - apart), s.front_load),
    ]
}

/// The table's rows.
pub fn checks() -> Vec<Check> {
    let mut checks = vec![tyres(), legs_at_rest(), legs(30.0, 5.0), legs(20.0, 6.0)];
    checks.extend(wheels(8.0, -15.0));
    checks.extend(wheels(8.0, 15.0));
    checks
}
