//! Swell, hours and logs as published.

use sim::build::heap::{Earth, Volumes};
use sim::build::labour::Labour;
use sim::build::loads::Carriers;
use sim::build::logs::{BOARD_FOOT, Log, LogRule};
use sim::build::materials::{Buying, Grade, Wanted, Waste, bill};
use sim::plan::Soil;
use tests::checks::{Bound, Check};

const YARD3: f64 = 0.9144 * 0.9144 * 0.9144;
const FOOT3: f64 = YARD3 / 27.0;
const FOOT: f64 = 0.3048;
const INCH: f64 = 0.0254;

/// 200 cubic yards of earth that swells by 40 % and shrinks by 10 %, in trucks of 12.
fn swell() -> Vec<Check> {
    const PAGE: &str = "spikevm.com, Swell and Shrinkage of Excavated Materials, worked example";
    let earth = Earth {
        slope: 1.5,
        swell: 0.40,
        shrinkage: 0.10,
    };
    let dug = earth.dug(200.0 * YARD3);
    let fill = earth.placed(90.0 * YARD3);
    let rest = earth.dug(dug.bank - fill.bank);
    let row = |what, expected: f64, got: f64| {
        let pair = [expected, got / YARD3];
        Check::new(what, PAGE, "yd³", pair, Bound::Within(1e-9), "rounding")
    };
    let carriers = Carriers {
        truck: 12.0 * YARD3,
        ..Carriers::default()
    };
    let trucks = |earth: &Volumes| f64::from(carriers.loads(earth).trucks);
    let bank = Volumes {
        loose: dug.bank,
        ..dug
    };
    let more = trucks(&dug) - trucks(&bank);
    vec![
        row("loose, of 200 dug", 280.0, dug.loose),
        row("in the ground, of 90 packed", 100.0, fill.bank),
        row("loose, of what is left", 140.0, rest.loose),
        Check::new(
            "more truck loads than without swell",
            PAGE,
            "",
            [6.5, more],
            Bound::Within(0.5),
            "six to seven",
        ),
    ]
}

/// The minutes of the time study put together again, without the pace of whole days.
fn hours() -> Vec<Check> {
    const STUDY: &str = "Thompson's time study (Taylor 1911, Shop Management, page 151)";
    let timed = |soil, load: f64| {
        let bank = load * FOOT3;
        let labour = Labour {
            pace: 1.0,
            loosen: 0.0,
            ..Labour::of(soil)
        };
        let one = Volumes {
            bank,
            loose: bank,
            packed: bank,
        };
        labour.move_seconds(&one, 50.0 * FOOT, bank) / 60.0
    };
    let minutes = |what, pair, bound, why| Check::new(what, STUDY, "min", pair, bound, why);
    let rounding = "two figures of the share of rest";
    let mut checks = vec![
        minutes(
            "a barrow of sand, 50 feet, rests included",
            [2.84, timed(Soil::Sand, 2.32)],
            Bound::Share(0.01),
            rounding,
        ),
        minutes(
            "a barrow of hard clay, 50 feet, rests included",
            [3.76, timed(Soil::Clay, 2.15)],
            Bound::Share(0.01),
            rounding,
        ),
    ];
    let day = {
        let earth = Earth::of(Soil::Clay).dug(5.0 * YARD3);
        let load = 2.15 * FOOT3 * 1.4;
        Labour::of(Soil::Clay).move_seconds(&earth, 50.0 * 3.0 * FOOT, load) / 3600.0
    };
    checks.push(Check::new(
        "five cubic yards dug and carried 50 yards",
        "Jefferson, Farm Book, page 66: a day of 12 hours",
        "h",
        [12.0, day],
        Bound::Share(0.03),
        "the pace of whole days has two figures",
    ));
    checks.extend(shovelling());
    checks
}

/// Filling alone, at the pace of whole days.
fn shovelling() -> [Check; 2] {
    let load = |soil| {
        let labour = Labour::of(soil);
        3600.0 / (labour.pace * (1.0 + labour.rest) * labour.fill * YARD3)
    };
    let loosened = Check::new(
        "loading loosened soil",
        "Spalding 1908, Textbook on Roads and Pavements: 1½ to 2 yd³ an hour",
        "yd³/h",
        [1.75, (load(Soil::Sand) + load(Soil::Clay)) / 2.0],
        Bound::Within(0.25),
        "the range that is given",
    );
    let wagon = Check::new(
        "a cubic yard of sand shovelled into a wagon",
        "Ogden and Cleveland, Practical Methods of Sewage Disposal: 40 minutes",
        "min",
        [40.0, 60.0 / load(Soil::Sand)],
        Bound::Share(0.25),
        "a wagon is higher than a barrow",
    );
    [loosened, wagon]
}

fn feet(rule: LogRule, inches: f64, feet: f64) -> f64 {
    rule.board_feet(inches * INCH, feet * FOOT)
}

/// Rounded as printed, halves upward, which inches and feet in metres may miss by their last bits.
fn to(step: f64, value: f64) -> f64 {
    step * (value / step + 1e-9).round()
}

fn doyle() -> Vec<Check> {
    const DOYLE: &str = "Doyle Log Scale, tinytimbers.com, table by whole board feet";
    let table = [
        (8.0, 8.0, 8.0),
        (8.0, 16.0, 16.0),
        (10.0, 10.0, 23.0),
        (12.0, 12.0, 48.0),
        (14.0, 14.0, 88.0),
        (16.0, 8.0, 72.0),
        (18.0, 18.0, 221.0),
        (20.0, 16.0, 256.0),
        (24.0, 20.0, 500.0),
        (30.0, 12.0, 507.0),
        (36.0, 16.0, 1024.0),
    ];
    table
        .iter()
        .map(|&(d, l, expected)| {
            Check::new(
                format!("Doyle, {d} inches by {l} feet"),
                DOYLE,
                "bf",
                [expected, to(1.0, feet(LogRule::Doyle, d, l))],
                Bound::Within(0.0),
                "rounded as the table is",
            )
        })
        .collect()
}

/// By hand from the statute's formula, four feet at a time; and the usual table, to the nearest five.
fn international() -> Vec<Check> {
    let mut checks = Vec::new();
    const STATUTE: &str = "Massachusetts General Laws c. 96 s. 11A, by hand";
    let hand = [
        (12.0, 4.0, 0.904_762 * (31.68 - 8.52)),
        (12.0, 8.0, 0.904_762 * (31.68 - 8.52 + 34.375 - 8.875)),
        (
            12.0,
            10.0,
            0.904_762 * (31.68 - 8.52 + 34.375 - 8.875 + (37.18 - 9.23) / 2.0),
        ),
        (
            12.0,
            16.0,
            0.904_762 * (31.68 - 8.52 + 34.375 - 8.875 + 37.18 - 9.23 + 40.095 - 9.585),
        ),
    ];
    for (d, l, expected) in hand {
        checks.push(Check::new(
            format!("International, {d} inches by {l} feet"),
            STATUTE,
            "bf",
            [expected, feet(LogRule::International, d, l)],
            Bound::Within(1e-9),
            "rounding",
        ));
    }
    for (d, l, expected) in [
        (6.0, 16.0, 20.0),
        (8.0, 16.0, 40.0),
        (10.0, 16.0, 65.0),
        (12.0, 16.0, 95.0),
        (16.0, 16.0, 180.0),
        (20.0, 16.0, 290.0),
    ] {
        checks.push(Check::new(
            format!("International, {d} inches by {l} feet"),
            "from memory: the rule's table, to the nearest five board feet",
            "bf",
            [expected, to(5.0, feet(LogRule::International, d, l))],
            Bound::Within(0.0),
            "rounded as the table is",
        ));
    }
    checks
}

fn wood() -> Vec<Check> {
    const COURSE: &str = "US Army Engineer School, Subcourse EN0113 edition 6, lesson 5";
    // A floor 106 inches wide of boards 5½ inches wide and 10 feet long, with 15 % of waste.
    let boards = Wanted {
        grade: Grade::Board,
        section: [INCH, 5.5 * INCH],
        length: 106.0 / 5.5 * 10.0 * FOOT,
        count: 1,
    };
    let buying = Buying {
        waste: Waste {
            board: 0.15,
            ..Waste::default()
        },
        ..Buying::default()
    };
    let line = &bill([boards], &Volumes::default(), &buying).lines[0];
    let pieces = (line.buy / (10.0 * FOOT)).ceil();
    let log = Log {
        diameter: 0.3,
        length: 3.0,
        count: 4,
    };
    let sawn = LogRule::International.sawn(&[log], [0.025, 0.15]);
    vec![
        Check::new(
            "boards for a floor, waste included",
            COURSE,
            "pieces",
            [23.0, pieces],
            Bound::Within(0.0),
            "whole boards",
        ),
        Check::new(
            "a 2 by 6 of 10 feet",
            "US Army Engineer School, Subcourse EN0069, §4-7: 10 BF",
            "bf",
            [10.0, 2.0 * INCH * 6.0 * INCH * 10.0 * FOOT / BOARD_FOOT],
            Bound::Within(1e-9),
            "rounding",
        ),
        Check::new(
            "length of boards from logs times their section",
            "its own volume",
            "m³",
            [sawn.board_feet * 0.002_359_737, sawn.boards * 0.025 * 0.15],
            Bound::Share(1e-6),
            "seven digits of a board foot (NIST SP 811)",
        ),
    ]
}

pub fn checks() -> Vec<Check> {
    [swell(), hours(), doyle(), international(), wood()].concat()
}
