//! Coasting on level ground and on a grade.

use super::rig::{ground, passive, past, run, spin_mass};
use sim::constants::GRAVITY;
use tests::checks::{Bound::Share, Check, judge};

const MECHANICS: &str = "closed form of mechanics (Goldstein, Classical Mechanics)";

/// a = M g sin θ / (M + 2 I / R²).
fn grade(degrees: f64) -> Check {
    let m = passive();
    let angle = -f64::to_radians(degrees);
    let run = run(&ground(angle, &[(120.0, 0.0)]), &m, 4.0);
    let (a, b) = (past(&run, 30.0), past(&run, 90.0));
    Check {
        what: format!("acceleration down {degrees}° with spinning wheels"),
        source: MECHANICS,
        unit: "m/s²",
        expected: m.mass() * GRAVITY * -angle.sin() / (m.mass() + spin_mass(&m)),
        got: (b.speed - a.speed) / (b.t - a.t),
        bound: Share(2e-4),
        why: "the tyres are pressed in less on a grade, so R differs by parts of a millimetre",
    }
}

#[test]
fn coasting() {
    judge("Coasting", &[grade(3.0), grade(10.0)]);
}
