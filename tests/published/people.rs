//! Riders' sizes, and what they and the ground are given without being asked.

use sim::plan::{Mount, Rolling, demo};
use tests::checks::{
    Bound::{Share, Within},
    Check,
};
use tests::rider::riders;

const ROUNDED: &str = "rounded, as people say it";

/// Frontal area of an upright rider with the bike, m².
fn frontal(stature: f64, mass: f64) -> f64 {
    0.0276 * stature.powf(0.725) * mass.powf(0.425) + 0.1647
}

/// Frontal area of a racer on aero bars, m².
fn crouched(stature: f64, mass: f64) -> f64 {
    0.0293 * stature.powf(0.725) * mass.powf(0.425) + 0.0604
}

/// Medians of boys in the month of their birthday: age, weight in kg, stature in cm.
const MEDIANS: [(usize, f64, f64); 3] = [
    (6, 20.78, 115.66),
    (10, 32.08799062, 138.8234114),
    (14, 51.23, 164.14),
];

/// The riders whom the demonstration and the family of lines are for are of the usual size.
fn sizes() -> Vec<Check> {
    const CHARTS: &str =
        "CDC 2000 growth charts (Vital Health Stat 11(246)), boys, median of the birthday's month";
    let [six, ten, fourteen, _] = riders::all();
    let shown = demo().riders.remove(0);
    let people = [
        ("6", six, 0),
        ("10", ten, 1),
        ("14", fourteen, 2),
        ("10, as shown", shown, 1),
    ];
    let mut checks = Vec::new();
    for (name, Mount { rider, .. }, row) in people {
        let (_, mass, stature) = MEDIANS[row];
        let row = |what, unit, pair| {
            Check::new(
                format!("child of {name}: {what}"),
                CHARTS,
                unit,
                pair,
                Share(0.01),
                ROUNDED,
            )
        };
        checks.push(row("mass", "kg", [mass, rider.mass]));
        checks.push(row("stature", "m", [0.01 * stature, rider.stature]));
    }
    checks
}

/// Drag areas: frontal area times a drag coefficient of 1.0 to 1.1.
fn drag() -> Vec<Check> {
    const AREA: &str = "A = 0.0276 H^0.725 m^0.425 + 0.1647 m² (Faria et al. 2005, Sports Med 35:313, from memory), Cd 1.0 to 1.1";
    const RACER: &str = "A = 0.0293 H^0.725 m^0.425 + 0.0604 m² (Bassett et al. 1999, Med Sci Sports Exerc 31:1665)";
    let cases = [
        ("1.80 m, 75 kg, upright", AREA, 0.4295, frontal(1.80, 75.0)),
        (
            "1.3882 m, 32.088 kg, upright",
            AREA,
            0.3176,
            frontal(1.3882, 32.088),
        ),
        (
            "1.80 m, 75 kg, on aero bars",
            RACER,
            0.3415,
            crouched(1.80, 75.0),
        ),
        (
            "1.3882 m, 32.088 kg, on aero bars",
            RACER,
            0.2227,
            crouched(1.3882, 32.088),
        ),
    ];
    let digits = cases.map(|(what, source, area, got)| {
        let what = format!("frontal area, {what}");
        Check::new(
            what,
            source,
            "m²",
            [area, got],
            Within(6e-5),
            "the last digit given",
        )
    });
    let mut checks = digits.to_vec();
    let child = demo().riders.remove(0).rider;
    checks.push(Check::new(
        "the child as shown: drag area",
        AREA,
        "m²",
        [1.05 * frontal(child.stature, child.mass), child.drag_area],
        Share(0.1),
        "the spread of the drag coefficient",
    ));
    checks.push(Check::new(
        "the adult: drag area",
        "off-road racer on 20-inch wheels, 68 kg (Gross, Kyle and Malewicki 1983, Sci Am 249(6))",
        "m²",
        [0.5007, demo().riders[1].rider.drag_area],
        Share(0.01),
        ROUNDED,
    ));
    checks
}

/// What a surface gets without being asked lies within what was measured or is handed down.
fn rolling() -> Vec<Check> {
    const HANDBOOK: &str = "Carvill, Mechanical Engineer's Data Handbook, 1993";
    const WILSON: &str = "values as in Wilson, Bicycling Science (handbook table)";
    let usual = Rolling::default();
    let within = |what: &str, source, [low, high]: [f64; 2], got, why| {
        let room = Within(0.5 * (high - low) + 1e-12);
        Check::new(
            format!("rolling resistance on {what}"),
            source,
            "",
            [0.5 * (low + high), got],
            room,
            why,
        )
    };
    vec![
        within(
            "pavement",
            WILSON,
            [0.004, 0.008],
            usual.paved,
            "from asphalt to rough paving",
        ),
        within(
            "packed dirt",
            "20-inch knobby on pavement (Gross et al. 1983) to a cross-country course (Maier et al. 2018)",
            [0.014, 0.0214],
            usual.packed,
            "the range",
        ),
        within(
            "gravel",
            HANDBOOK,
            [0.01, 0.04],
            usual.gravel,
            "from rolled new to loose worn gravel",
        ),
        within(
            "soft dirt",
            HANDBOOK,
            [0.04, 0.10],
            usual.soft,
            "solid soil, and medium-hard soil at 0.08, to the best of sand",
        ),
        within(
            "short grass",
            "common practice, no source",
            [0.03, 0.06],
            usual.grass,
            "the range",
        ),
        within(
            "boards",
            "common practice, no source",
            [0.004, 0.008],
            usual.wood,
            "rougher than a track's boards at 0.001, no rougher than rough paving",
        ),
    ]
}

/// The table's rows.
pub fn checks() -> Vec<Check> {
    let mut checks = sizes();
    checks.extend(drag());
    checks.extend(rolling());
    checks
}
