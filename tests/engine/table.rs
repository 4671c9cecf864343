//! What the engine is worth as a reference, and for what: measured, and held against what is stated.

use crate::closed;
use crate::settings::{self, Kind, Settings};
use tests::lines::RIDERS;

/// Error of the head under which the engine is a reference.
pub const ROOM: f64 = 0.005;

/// One line of the table.
pub struct Row {
    kind: Kind,
    what: String,
    source: &'static str,
    unit: &'static str,
    expected: f64,
    got: f64,
    /// Head that is too much, as a share of the expected one.
    pub off: f64,
}

/// A speed; one that is never come to is 0.
pub fn speed(kind: Kind, what: &str, source: &'static str, expected: f64, got: Option<f64>) -> Row {
    let got = got.unwrap_or(0.0);
    Row {
        kind,
        what: what.into(),
        source,
        unit: "m/s",
        expected,
        got,
        off: got * got / (expected * expected) - 1.0,
    }
}

/// A head, m; one that is never come to is 0.
pub fn head(kind: Kind, what: &str, source: &'static str, expected: f64, got: Option<f64>) -> Row {
    let got = got.unwrap_or(0.0);
    Row {
        kind,
        what: what.into(),
        source,
        unit: "m",
        expected,
        got,
        off: got / expected - 1.0,
    }
}

/// In words, from the head that is too much as a share of what there should be.
pub fn class(off: f64) -> String {
    if off.abs() < ROOM {
        return "reference".into();
    }
    let verb = if off < 0.0 { "loses" } else { "gains" };
    format!(
        "no reference: {verb} {:.1} % of its head",
        100.0 * off.abs()
    )
}

/// The table of one way to set the engine, and whether what is stated of it is what was measured.
fn judge(settings: &Settings) {
    println!("The engine itself, {}", settings.name);
    let mut all = Vec::new();
    for rider in [1, 3] {
        for row in closed::rows(settings, rider) {
            println!(
                "  {:<58} expected {:>9.6} got {:>9.6} {:<3} head {:>+9.4} %, {}; {}",
                format!("{}: {}", RIDERS[rider], row.what),
                row.expected,
                row.got,
                row.unit,
                100.0 * row.off,
                class(row.off),
                row.source
            );
            all.push(row);
        }
    }
    println!();
    let good = |kind: &Kind| {
        let mut of_kind = all.iter().filter(|row| row.kind == *kind).peekable();
        assert!(of_kind.peek().is_some(), "{kind:?} was not measured");
        of_kind.all(|row| row.off.abs() < ROOM)
    };
    let measured: Vec<Kind> = settings::ALL.iter().copied().filter(good).collect();
    assert_eq!(
        measured, settings.reference_for,
        "{}: the engine is a reference for the first, and for the second it was said to be",
        settings.name
    );
}

#[test]
fn as_it_comes() {
    judge(&settings::as_it_comes());
}

#[test]
fn tuned_on_facets() {
    judge(&settings::on_facets());
}

#[test]
fn tuned_on_smooth_ground() {
    judge(&settings::smooth());
}
