//! The same plan gives the same bits, whatever the ride was compiled with.
//!
//! `links.txt` holds plans as links, `digests.txt` what came out of each: plan, rider, samples of the
//! trace, and a checksum of every bit of the run. Where only the checksum differs, values moved; where
//! the count does too, the ride took another course. A changed model changes them, and raises
//! `MODEL_VERSION` with them; the commit says why. The browsers are held to the same list.

use std::process::{Command, Stdio};
use tests::golden::{digests, links, ride_all};

/// Fewest plans that make the comparison worth its name.
const FEWEST: usize = 50;

/// How many lines differ, told one by one.
fn differing(what: &str, got: &str) -> usize {
    let expected = digests();
    let (expected, got): (Vec<&str>, Vec<&str>) =
        (expected.lines().collect(), got.lines().collect());
    println!("{what}: {} rides of {} plans", got.len(), links().len());
    assert_eq!(got.len(), expected.len(), "{what}: not all were ridden");
    let pairs = got.iter().zip(&expected).filter(|(a, b)| a != b);
    pairs
        .inspect(|(a, b)| println!("{what}: got {a}, kept {b}"))
        .count()
}

/// What the example program prints, compiled with a profile.
fn by_example(profile: &str) -> String {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let list = std::fs::File::open(tests::repository().join("tests/golden/links.txt"));
    let output = Command::new(cargo)
        .current_dir(tests::repository())
        .args([
            "run",
            "--quiet",
            "--profile",
            profile,
            "-p",
            "sim",
            "--example",
            "digests",
        ])
        .stdin(Stdio::from(list.expect("the list is there")))
        .output()
        .expect("cargo can be run");
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    String::from_utf8(output.stdout).expect("digests are text")
}

#[test]
fn compiled_for_tests() {
    assert!(links().len() >= FEWEST);
    assert_eq!(differing("compiled for tests", &ride_all()), 0);
}

#[test]
fn compiled_without_optimisation() {
    assert_eq!(differing("without optimisation", &by_example("plain")), 0);
}

#[test]
fn compiled_for_release() {
    assert_eq!(differing("for release", &by_example("release")), 0);
}

#[test]
fn a_bit_changed_anywhere_shows() {
    let run = sim::setup::ride_plan(&sim::plan::demo(), 0)
        .expect("it is sound")
        .run;
    let mut other = run.clone();
    assert_eq!(run.digest(), other.digest());
    let middle = other.samples.len() / 2;
    let head = &mut other.samples[middle].head;
    *head = f64::from_bits(head.to_bits() ^ 1);
    assert_ne!(run.digest(), other.digest());
    let mut other = run.clone();
    other.events[0].x = f64::from_bits(other.events[0].x.to_bits() ^ 1);
    assert_ne!(run.digest(), other.digest());
}
