//! Tables of checks: what was expected, on whose word, and what the model gave.

use std::fmt::Write;

/// How far a result may be from what was expected, and why so far.
#[derive(Clone, Copy, Debug)]
pub enum Bound {
    /// As a share of the expected value.
    Share(f64),
    /// In the unit of the value.
    Within(f64),
}

/// One line of a table.
#[derive(Clone, Debug)]
pub struct Check {
    /// What is checked.
    pub what: String,
    /// Where the expected value comes from.
    pub source: &'static str,
    /// Unit of both values.
    pub unit: &'static str,
    /// What the source says.
    pub expected: f64,
    /// What the model gave.
    pub got: f64,
    /// How far apart they may be.
    pub bound: Bound,
    /// Why so far.
    pub why: &'static str,
}

impl Check {
    fn room(&self) -> f64 {
        match self.bound {
            Bound::Share(share) => share * self.expected.abs(),
            Bound::Within(room) => room,
        }
    }

    /// Whether the model is within the bound; never where it gave no number.
    pub fn holds(&self) -> bool {
        (self.got - self.expected).abs() <= self.room()
    }

    fn line(&self) -> String {
        let verdict = if self.holds() { "ok " } else { "OUT" };
        let (off, room) = (self.got - self.expected, self.room());
        format!(
            "{verdict} {:<46} expected {:>12.6} got {:>12.6} {:<6} off {off:>11.2e}, bound {room:.1e} ({}); {}",
            self.what, self.expected, self.got, self.unit, self.why, self.source
        )
    }
}

/// Prints a table and fails where a check does not hold.
///
/// # Panics
/// When a check does not hold, or when there is none.
pub fn judge(title: &str, checks: &[Check]) {
    let mut table = format!("{title}\n");
    for check in checks {
        writeln!(table, "  {}", check.line()).expect("text takes every line");
    }
    println!("{table}");
    let out = checks.iter().filter(|check| !check.holds()).count();
    assert!(!checks.is_empty(), "{title}: nothing was checked");
    assert_eq!(
        out,
        0,
        "{title}: {out} of {} checks do not hold\n{table}",
        checks.len()
    );
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(got: f64) -> Check {
        Check {
            what: "a check".into(),
            source: "made up",
            unit: "m",
            expected: 2.0,
            got,
            bound: Bound::Share(0.01),
            why: "made up",
        }
    }

    #[test]
    fn only_a_number_within_the_bound_holds() {
        assert!(check(2.015).holds() && check(1.985).holds());
        assert!(!check(2.03).holds() && !check(f64::NAN).holds());
    }

    #[test]
    #[should_panic(expected = "1 of 2 checks do not hold")]
    fn one_check_that_does_not_hold_fails_the_table() {
        judge("Made up", &[check(2.0), check(3.0)]);
    }

    #[test]
    #[should_panic(expected = "nothing was checked")]
    fn an_empty_table_fails() {
        judge("Made up", &[]);
    }
}
