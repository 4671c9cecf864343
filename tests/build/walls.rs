//! Earth that pushes and holds, posts in the ground, buried anchors: worked examples of others.

use sim::build::soil::{Fill, Wetness, earth, fill};
use sim::build::walls::deadman::{resistance, sloped};
use sim::build::walls::earth::{Pressure, active, passive};
use sim::build::walls::post::alone;
use sim::plan::Soil;
use tests::checks::Bound::{NotOver, Share, Within};
use tests::checks::{Check, Table, judge_all};

const FOOT: f64 = 0.3048;
const POUND: f64 = 4.448_222;
const PCF: f64 = POUND / (FOOT * FOOT * FOOT);
const PSF: f64 = POUND / (FOOT * FOOT);

const PRINTED: &str = "as printed";

fn soil(weight: f64, degrees: f64) -> Fill {
    Fill {
        weight,
        holding: weight,
        friction: degrees.to_radians(),
        water: 0.0,
    }
}

fn coefficients() -> Vec<Check> {
    let mse = "Reinforced Earth design example in the Highway Engineering Handbook, chapter 8";
    let das = "Das, Principles of Foundation Engineering, 8th edition, example 14.7";
    let row = |what, source, expected, got, room| {
        Check::new(what, source, "", [expected, got], Within(room), PRINTED)
    };
    let a25 = active(25_f64.to_radians());
    let [a30, p30] = [active, passive].map(|k| k(30_f64.to_radians()));
    vec![
        row("active pressure, 25°", mse, 0.4059, a25, 5e-5),
        row("active pressure, 30°", das, 1.0 / 3.0, a30, 1e-12),
        row("passive pressure, 30°", das, 3.0, p30, 1e-12),
    ]
}

/// Ten feet of sandy gravel; two layers of sand, the lower under water; a load on the surface.
fn thrusts() -> Vec<Check> {
    let gravel = Pressure::of(&soil(115.0 * PCF, 30.0), 0.0);
    let solved = "Lateral-01 of a published set of solved problems: 10 ft, 115 lb/ft³, 30°";
    let wall = Check::new(
        "thrust on a wall of 10 ft",
        solved,
        "kip/ft",
        [1.9, gravel.thrust(10.0 * FOOT) * FOOT / POUND / 1000.0],
        Within(0.05),
        "printed to a tenth",
    );
    let das = "Das, Principles of Foundation Engineering, 8th edition, example 14.7";
    let upper = Pressure::of(&soil(16e3, 30.0), 0.0).at(3.05);
    let lower = Pressure::of(&soil(9.69e3, 30.0), 16e3 * 3.05).at(6.10);
    let pressure = |what, expected: f64, got: f64| {
        let both = [expected, got / 1e3];
        Check::new(
            what,
            das,
            "kPa",
            both,
            Within(0.02),
            "printed to a hundredth",
        )
    };
    let loaded = Pressure::of(&soil(18e3, 28.0), 5e3);
    let part = loaded.thrust(2.0) - Pressure::of(&soil(18e3, 28.0), 0.0).thrust(2.0);
    let moment = loaded.moment(2.0) - Pressure::of(&soil(18e3, 28.0), 0.0).moment(2.0);
    let k = (45_f64 - 14.0).to_radians().tan().powi(2);
    let even = "P = Q kA H, half way up (Day, Geotechnical and Foundation Engineering)";
    let load = |what, unit, expected, got| {
        let bound = Share(1e-12);
        Check::new(what, even, unit, [expected, got], bound, "closed form")
    };
    vec![
        wall,
        pressure("pressure at the water", 16.27, upper),
        pressure("pressure at the bottom, water apart", 35.97, lower),
        load(
            "thrust of a load of 5 kPa on 2 m",
            "N/m",
            5e3 * k * 2.0,
            part,
        ),
        load("height at which it acts", "m", 1.0, moment / part),
    ]
}

/// Passive less active pressure to a depth, as a wall's foot has it and a deadman near the surface.
fn deadmen() -> Vec<Check> {
    let depth = 2.683_623_042_667_309;
    let held = resistance(&soil(19.5e3 - 9.806_65e3, 30.0), depth, depth);
    let library =
        "XC library, solution of Das 8th ed. example 14.7: P − F = 209.184 − 116.104 kN/m";
    let mut checks = vec![Check::new(
        "passive less active pressure to a depth of 2.684 m",
        library,
        "kN/m",
        [209.184_24 - 116.104_40, held / 1e3],
        Share(1e-4),
        "water of 9.80665 kN/m³",
    )];
    // Mean depth, ft, and holding power, lb/ft², by the slope of the pull: 1:1, 1:2, 1:3, 1:4.
    let table: [(f64, [f64; 4]); 5] = [
        (3.0, [950.0, 1300.0, 1450.0, 1500.0]),
        (4.0, [1750.0, 2200.0, 2600.0, 2700.0]),
        (5.0, [2800.0, 3600.0, 4000.0, 4100.0]),
        (6.0, [3800.0, 5100.0, 5800.0, 6000.0]),
        (7.0, [5100.0, 7000.0, 8000.0, 8400.0]),
    ];
    let army = "TM 5-5420-278-10, U.S. Army, table 9: holding power of deadmen in loamy soil";
    let cosine = |run: f64| run / run.hypot(1.0);
    let loam = fill(Soil::Loam, Wetness::Dry);
    for (feet, power) in table {
        let (depth, height) = (feet * FOOT, 0.01);
        let face = resistance(&loam, depth + 0.5 * height, height) / height;
        checks.push(Check::new(
            format!("pressure that a deadman may use at {feet} ft"),
            army,
            "lb/ft²",
            [power[3], face / PSF],
            NotOver,
            "the handbook's formula is on the safe side of the table",
        ));
        for (i, run) in [(1, 2.0), (2, 3.0)] {
            let share = sloped(cosine(run)) / sloped(cosine(4.0));
            checks.push(Check::new(
                format!("what a pull of 1:{run} leaves of one of 1:4, {feet} ft"),
                army,
                "",
                [power[i] / power[3], share],
                Share(0.05),
                "the table's steps are as coarse",
            ));
        }
    }
    checks
}

fn posts() -> Vec<Check> {
    let light = alone(1.33e3, 8.0, 31.4e3, 0.849);
    let side = 2.0 * 150.0 * PSF / FOOT;
    let sign = alone(1740.0 * POUND, 4.17 * FOOT, side, 5.5 * FOOT);
    let row = |what, source, expected, got, why| {
        Check::new(what, source, "m", [expected, got], Share(0.01), why)
    };
    vec![
        row(
            "depth of a light pole of 8 m",
            "published sheet by IBC 2009, equation 18-1: 1.33 kN, b 0.849 m, 31.4 kPa/m",
            1.52,
            light,
            "worked with a trial depth of 1.55 m",
        ),
        row(
            "depth of a sign's footing",
            "calculations by Florida Building Code 1807.3.2.1: 1.74 kip, 4.17 ft, 5.5 ft wide",
            3.97 * FOOT,
            sign,
            "worked with a trial depth of 4 ft",
        ),
    ]
}

/// Two tables of others about the same soils.
fn soils() -> Vec<Check> {
    let em = "EM 1110-2-2504, table 3-1: medium compact, moist 110 to 130 lb/ft³";
    let weight = |what, soil| {
        let got = earth(soil).compacted / PCF;
        Check::new(
            what,
            em,
            "lb/ft³",
            [120.0, got],
            Within(11.0),
            "its range, and a pound",
        )
    };
    let ibc = "International Building Code, table 1806.2";
    let bears = |what, expected, soil| {
        let got = earth(soil).bearing / (PSF / FOOT);
        Check::new(what, ibc, "psf/ft", [expected, got], Share(1e-4), PRINTED)
    };
    vec![
        weight("sand, tamped", Soil::Sand),
        weight("gravel, tamped", Soil::Gravel),
        bears("lateral bearing of sand", 150.0, Soil::Sand),
        bears("lateral bearing of clay", 100.0, Soil::Clay),
    ]
}

#[test]
fn walls_are_reckoned_as_published() {
    let table = |title, checks| Table { title, checks };
    judge_all(&[
        table("Coefficients of earth pressure", coefficients()),
        table("Thrust", thrusts()),
        table("Deadmen", deadmen()),
        table("Posts in the ground", posts()),
        table("Soils", soils()),
    ]);
}
