//! A landing shaped to be as soft wherever it is met, after Hubbard 2009.

use super::rig::{passive, run};
use glam::DVec2;
use sim::constants::GRAVITY;
use sim::ride::EventKind;
use tests::bare::{add, ground};
use tests::checks::{
    Bound::{Share, Within},
    Check,
};
use tests::rigid::point;

/// Fall height that Hubbard's landing is shaped for, m, and the take-off's angle.
const SAFE: f64 = 0.5;
const TAKE_OFF: f64 = 20.0 * std::f64::consts::PI / 180.0;

/// Slope of Hubbard's landing at a place from the take-off, dz/dx:
/// tan(atan(2 z/x − tan θ) + asin √(h/(x²/(4 cos²θ (x tan θ − z)) − z))).
fn slope(x: f64, z: f64) -> f64 {
    let tan = TAKE_OFF.tan();
    let fallen = x * x / (4.0 * TAKE_OFF.cos().powi(2) * (x * tan - z)) - z;
    ((2.0 * z / x - tan).atan() + (SAFE / fallen).sqrt().asin()).tan()
}

/// Distance between two points of the landing, m.
const SPACING: f64 = 0.01;

/// The landing from 4 m on, as points and headings there.
fn landing() -> Vec<(DVec2, f64)> {
    let h = SPACING;
    let mut z = -0.5;
    (0..1000)
        .map(|i| {
            let x = 4.0 + f64::from(i) * h;
            let here = (DVec2::new(x, z), slope(x, z).atan());
            let a = slope(x, z);
            let b = slope(x + 0.5 * h, z + 0.5 * h * a);
            let c = slope(x + 0.5 * h, z + 0.5 * h * b);
            z += h * (a + 2.0 * b + 2.0 * c + slope(x + h, z + h * c)) / 6.0;
            here
        })
        .collect()
}

/// The wheels' radius on that landing, m: more than a step's way into the ground.
const RADIUS: f64 = 0.05;

/// The table's rows: from a straight ramp of 20° onto that landing.
pub fn checks() -> Vec<Check> {
    let mut m = point(&passive(), 1.0);
    (m.tyre.radius, m.tyre.height, m.wheelbase) = (RADIUS, 0.025, 0.004);
    let along = DVec2::from_angle(TAKE_OFF);
    let mut profile = ground(TAKE_OFF, &[(1.0, 0.0)]);
    // The mass centre flies from where it is as the rear wheel leaves the edge.
    let origin = profile.pieces[0].end + along.perp() * RADIUS + along * (0.5 * m.wheelbase);
    let wheels: Vec<(DVec2, f64)> = landing();
    let under =
        |(p, heading): &(DVec2, f64)| origin + *p - DVec2::from_angle(*heading).perp() * RADIUS;
    let edge = profile.pieces[0].end;
    let first = under(&wheels[0]);
    // Straight on to where the landing begins: every flight is over that.
    let way = first - edge;
    add(&mut profile, way.to_angle(), &[(way.length(), 0.0)]);
    let bends: Vec<_> = wheels
        .windows(2)
        .map(|w| {
            let length = under(&w[0]).distance(under(&w[1]));
            (length, (w[1].1 - w[0].1) / length)
        })
        .collect();
    add(&mut profile, wheels[0].1, &bends);
    let speeds = [
        (6.0, 8.12861),
        (8.0, 9.08566),
        (10.0, 9.79838),
        (12.0, 10.35881),
    ];
    let start = 0.05 + 0.5 * m.wheelbase;
    let rise = (1.0 - start + 0.5 * m.wheelbase) * TAKE_OFF.sin();
    let mut checks = Vec::new();
    for (x, speed) in speeds {
        let from = f64::sqrt(speed * speed + 2.0 * GRAVITY * rise);
        let run = run(&profile, &m, from);
        let down = run.events.iter().find_map(|e| match e.kind {
            EventKind::TouchedDown {
                into_ground,
                rear_x,
                ..
            } => Some((into_ground, rear_x)),
            _ => None,
        });
        let (into, at) = down.expect("it comes down");
        let (_, heading) = wheels[((x - 4.0) / SPACING) as usize];
        checks.push(Check::new(
            format!("Hubbard's landing for 0.5 m, left at {speed} m/s: fall height"),
            "Hubbard 2009, J. ASTM Int. 6(1), first-order equation, solved anew",
            "m",
            [SAFE, into * into / (2.0 * GRAVITY)],
            Share(4e-3),
            "two wheels 4 mm apart; pieces of a centimetre",
        ));
        checks.push(Check::new(
            format!("Hubbard's landing for 0.5 m, left at {speed} m/s: where"),
            "the same, with a flight in a vacuum",
            "m",
            [x, at - origin.x - RADIUS * heading.sin()],
            Within(0.02),
            "the rear wheel is down a little before the mass centre is over it",
        ));
    }
    checks
}
