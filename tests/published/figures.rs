//! Figures that the model takes from published tables and from geometry.

use sim::constants::GRAVITY;
use sim::plan::{Feature, Lie, Line, Plan, Weather, demo};
use sim::profile::{Intent, Profile};
use sim::ride::Tyre;
use sim::setup;
use tests::checks::{Bound::Within, Check};

fn digits(
    what: String,
    source: &'static str,
    unit: &'static str,
    pair: [f64; 2],
    last: f64,
) -> Check {
    Check::new(
        what,
        source,
        unit,
        pair,
        Within(last),
        "the last digit given",
    )
}

fn air() -> Vec<Check> {
    const STANDARD: &str = "ISO 2533:1975, standard atmosphere, geopotential altitude";
    const GAS: &str = "ideal gas at 1013.25 hPa, R = 287.05287 J/(kg K) (ISO 2533)";
    let density = |altitude, temperature| {
        setup::air_density(&Weather {
            altitude,
            temperature,
            ..Weather::default()
        })
    };
    let heights = [
        (0.0, 1.2250),
        (500.0, 1.1673),
        (1000.0, 1.1116),
        (1500.0, 1.0581),
        (2000.0, 1.0065),
    ];
    let days = [
        (0.0, 1.2923),
        (20.0, 1.2041),
        (30.0, 1.1644),
        (40.0, 1.1272),
    ];
    let by_height = heights.map(|(h, expected)| {
        let got = density(h, 15.0 - 0.0065 * h);
        digits(
            format!("air at {h} m"),
            STANDARD,
            "kg/m³",
            [expected, got],
            6e-5,
        )
    });
    let by_day = days.map(|(t, expected)| {
        digits(
            format!("air at {t} °C"),
            GAS,
            "kg/m³",
            [expected, density(0.0, t)],
            6e-5,
        )
    });
    by_height.into_iter().chain(by_day).collect()
}

/// Bead seat diameter plus twice the tyre's width, which stands for its height.
fn wheels() -> Vec<Check> {
    let sizes = [
        (0.203, 0.047, 0.1485),
        (0.254, 0.047, 0.1740),
        (0.305, 0.047, 0.1995),
        (0.355, 0.047, 0.2245),
        (0.406, 0.054, 0.2570),
        (0.457, 0.047, 0.2755),
        (0.507, 0.054, 0.3075),
        (0.559, 0.058, 0.3375),
        (0.584, 0.058, 0.3500),
        (0.622, 0.058, 0.3690),
    ];
    let mut planned = demo().riders.remove(0);
    let check = |(bead_seat, width, expected): (f64, f64, f64)| {
        (planned.bike.bead_seat, planned.bike.tyre_width) = (bead_seat, width);
        let got = setup::mount(&planned, &Weather::default()).tyre.radius;
        let what = format!(
            "outer radius of a {:.0}-{:.0} tyre",
            width * 1e3,
            bead_seat * 1e3
        );
        digits(what, "ISO 5775-1", "m", [expected, got], 1e-9)
    };
    sizes.map(check).into()
}

/// F = p (2π/3) √(2R) d^1.5, a thin inextensible torus pressed on a plane.
fn tyres() -> [Check; 3] {
    let cases = [
        (200e3, 0.257, 300.0, 9.99),
        (300e3, 0.257, 400.0, 9.24),
        (200e3, 0.369, 400.0, 10.73),
    ];
    cases.map(|(pressure, radius, load, expected)| {
        let tyre = Tyre::from_pressure(radius, 0.05, pressure);
        let got = 1e3 * tyre.depth_under(load);
        let what = format!(
            "{load} N on a tyre of {:.0} kPa, R {radius} m",
            pressure / 1e3
        );
        digits(
            what,
            "Renart and Roura-Grabulosa 2019 (power 1.5), closed torus",
            "mm",
            [expected, got],
            6e-3,
        )
    })
}

/// A level line with one jump whose lip has a height and a radius.
fn lip(height: f64, radius: f64) -> Plan {
    let mut plan = demo();
    (plan.yard.lie, plan.yard.length) = (Lie::Grade(0.0), 100.0);
    let Line::Features(features) = &mut plan.line else {
        panic!("the demonstration has features");
    };
    let is_jump = |feature: &&Feature| matches!(feature, Feature::Jump(_));
    let mut jump = features
        .iter()
        .find(is_jump)
        .expect("the demonstration has a jump")
        .clone();
    if let Feature::Jump(jump) = &mut jump {
        (jump.lip.height, jump.lip.radius, jump.lip.lead_in) = (height, radius, None);
    }
    let (first, last) = (features[0].clone(), features[features.len() - 1].clone());
    *features = vec![first, jump, last];
    plan
}

/// Exit angle arccos(1 − h/R), level run √(2Rh − h²), length along it R times the angle.
fn lips() -> Vec<Check> {
    const CIRCLE: &str = "geometry of the circle";
    let foot = 0.3048;
    let cases = [
        ("h 1.2 m, R 2.4 m", 1.2, 2.4, [60.0, 2.078461, 2.513274]),
        ("h 0.9 m, R 2.4 m", 0.9, 2.4, [51.31781, 1.873499, 2.149596]),
        (
            "h 4 ft, R 7.5 ft",
            4.0 * foot,
            7.5 * foot,
            [62.18186, 6.63325 * foot, 8.13959 * foot],
        ),
        (
            "h 3 ft, R 7 ft",
            3.0 * foot,
            7.0 * foot,
            [55.15010, 5.74456 * foot, 6.73786 * foot],
        ),
        (
            "h 6 ft, R 9 ft",
            6.0 * foot,
            9.0 * foot,
            [70.52878, 8.48528 * foot, 11.07863 * foot],
        ),
        ("h 0.6 m, R 2 m", 0.6, 2.0, [45.57300, 1.42829, 1.59080]),
    ];
    let mut checks = Vec::new();
    for (name, height, radius, [angle, run, length]) in cases {
        let profile = Profile::build(&lip(height, radius)).expect("the lip can be built");
        let edge = profile.lips[0];
        let arc = profile
            .pieces
            .iter()
            .filter(|p| p.character.intent == Intent::Launch);
        let arc: f64 = arc.map(|p| p.length).sum();
        let check = |what: &str, unit, pair| {
            digits(format!("lip {name}: {what}"), CIRCLE, unit, pair, 6e-6)
        };
        checks.push(check("exit angle", "°", [angle, edge.exit.to_degrees()]));
        checks.push(check("level run", "m", [run, edge.edge.x - edge.foot.x]));
        checks.push(check("length along it", "m", [length, arc]));
        checks.push(check("height", "m", [height, edge.edge.y - edge.foot.y]));
    }
    checks
}

/// The table's rows.
pub fn checks() -> Vec<Check> {
    let gravity = [9.80665, GRAVITY];
    let mut checks = vec![digits(
        "standard gravity".into(),
        "3rd CGPM (1901)",
        "m/s²",
        gravity,
        0.0,
    )];
    checks.extend(air());
    checks.extend(wheels());
    checks.extend(tyres());
    checks.extend(lips());
    checks
}
