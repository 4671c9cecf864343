//! Joists against a published span table.

use sim::build::ramp::{RampStock, start_ramp};
use sim::build::softwood::{BENDING, section_modulus, span_in_bend, span_in_bending};
use sim::plan::{Feature, Line, Plan, Surface, demo};
use sim::profile::Profile;
use tests::checks::Bound::{NotOver, Within};
use tests::checks::{Check, Table, judge_all};

const INCH: f64 = 0.0254;
const PSI: f64 = 6894.757;
const PSF: f64 = 47.880_26;
const TABLE: &str = "DCA 6 (AWC 2018), table 2: 40 psf live, 10 psf dead, No. 2, wet, L/360";

/// Depth of a joist 1.5 inches thick, its stress in bending (NDS supplement, from memory), how far apart, inches,
/// and the span of the table, feet and inches: southern pine. Where the table ends at 18 feet, for the sake of
/// footings, it says nothing of the span.
const SOUTHERN_PINE: [(f64, f64, f64, [f64; 2]); 11] = [
    (5.5, 1000.0, 12.0, [9.0, 11.0]),
    (5.5, 1000.0, 16.0, [9.0, 0.0]),
    (5.5, 1000.0, 24.0, [7.0, 7.0]),
    (7.25, 925.0, 12.0, [13.0, 1.0]),
    (7.25, 925.0, 16.0, [11.0, 10.0]),
    (7.25, 925.0, 24.0, [9.0, 8.0]),
    (9.25, 800.0, 12.0, [16.0, 2.0]),
    (9.25, 800.0, 16.0, [14.0, 0.0]),
    (9.25, 800.0, 24.0, [11.0, 5.0]),
    (11.25, 750.0, 16.0, [16.0, 6.0]),
    (11.25, 750.0, 24.0, [13.0, 6.0]),
];

fn inches([feet, inches]: [f64; 2]) -> f64 {
    12.0 * feet + inches
}

/// The shorter of what bending and bend under load allow, inches.
fn span(deep: f64, stress: f64, spacing: f64) -> f64 {
    let (thick, deep, spacing) = (1.5 * INCH, deep * INCH, spacing * INCH);
    let modulus = section_modulus(thick, deep);
    let bending = span_in_bending(50.0 * PSF * spacing, 1.15 * stress * PSI * modulus);
    let stiff = 0.9 * 1.4e6 * PSI;
    let bend = span_in_bend(
        40.0 * PSF * spacing,
        stiff,
        0.5 * deep * modulus,
        1.0 / 360.0,
    );
    bending.min(bend) / INCH
}

fn formulas() -> Vec<Check> {
    let row = |(deep, stress, apart, printed)| {
        Check::new(
            format!("southern pine 1.5 by {deep} inches, {apart} inches apart"),
            TABLE,
            "inch",
            [inches(printed), span(deep, stress, apart)],
            Within(0.75),
            "printed to an inch",
        )
    };
    SOUTHERN_PINE.into_iter().map(row).collect()
}

/// Thickness of a deck board 0.14 m wide that reaches so far and no farther under a heel, m.
fn board(reach: f64) -> f64 {
    let modulus = RampStock::default().point * reach / (4.0 * BENDING);
    (6.0 * modulus / 0.14).sqrt()
}

/// A ramp of so many inches' width with joists of a depth, under the table's loads: no span of its own goes over
/// that of the least wood with the same treatment in the table.
fn own(deep: f64, apart: f64, printed: [f64; 2]) -> Check {
    let stock = RampStock {
        deck: [board(1.01 * apart * INCH), 0.14],
        joist: [1.5 * INCH, deep * INCH],
        live: 40.0 * PSF,
        dead: 10.0 * PSF,
        longest: 20.0,
        ..RampStock::default()
    };
    let mut plan: Plan = demo();
    let Line::Features(features) = &mut plan.line else {
        panic!("it has features")
    };
    let Feature::StartRamp(ramp) = &mut features[0] else {
        panic!("it begins with a ramp")
    };
    (ramp.surface, ramp.width) = (Surface::Wood, Some(3.0 * apart * INCH));
    let profile = Profile::build(&plan).expect("it can be built");
    let sheet = start_ramp(&plan, &profile, &stock).expect("it is of wood");
    let frame = &sheet.frame;
    assert!(
        (frame.spacing / INCH - apart).abs() < 1e-9,
        "{}",
        frame.spacing / INCH
    );
    Check::new(
        format!("the ramp's own joists 1.5 by {deep} inches, {apart} inches apart"),
        TABLE,
        "inch",
        [inches(printed) + 0.5, frame.may_span / INCH],
        NotOver,
        "hem-fir with no more for small sizes; printed to an inch",
    )
}

fn ramps() -> Vec<Check> {
    vec![
        own(7.25, 12.0, [12.0, 6.0]),
        own(7.25, 16.0, [11.0, 1.0]),
        own(9.25, 12.0, [15.0, 8.0]),
        own(9.25, 16.0, [13.0, 7.0]),
        own(11.25, 16.0, [15.0, 9.0]),
    ]
}

#[test]
fn joists_span_as_tabulated() {
    let table = |title, checks| Table { title, checks };
    judge_all(&[
        table("Joists, by their formulas", formulas()),
        table("Joists of a start ramp", ramps()),
    ]);
}
