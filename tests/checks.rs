//! Tables of checks: what was expected, on whose word, and what the model gave.

use std::fmt::Write;

/// How far a result may be from what was expected, and why so far.
#[derive(Clone, Copy, Debug)]
pub enum Bound {
    /// As a share of the expected value.
    Share(f64),
    /// In the unit of the value.
    Within(f64),
    /// What is expected is a limit, which the result does not go over.
    NotOver,
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
    /// Whether the model is known not to hold it.
    known_out: bool,
}

impl Check {
    /// A row: what, on whose word, its unit, the value expected and the one got, how far apart they
    /// may be and why.
    pub fn new(
        what: impl Into<String>,
        source: &'static str,
        unit: &'static str,
        [expected, got]: [f64; 2],
        bound: Bound,
        why: &'static str,
    ) -> Self {
        Self {
            what: what.into(),
            source,
            unit,
            expected,
            got,
            bound,
            why,
            known_out: false,
        }
    }

    /// The same row, which the model is known not to hold: it is shown and counted as such, and
    /// fails once it holds, so that the mark is taken off.
    pub fn known_out(self) -> Self {
        Self {
            known_out: true,
            ..self
        }
    }

    fn as_expected(&self) -> bool {
        self.holds() != self.known_out
    }

    /// Whether the model is within the bound; never where it gave no number.
    pub fn holds(&self) -> bool {
        let off = self.got - self.expected;
        match self.bound {
            Bound::Share(share) => off.abs() <= share * self.expected.abs(),
            Bound::Within(room) => off.abs() <= room,
            Bound::NotOver => off <= 0.0,
        }
    }

    fn line(&self) -> String {
        let verdict = match (self.holds(), self.known_out) {
            (true, false) => "ok   ",
            (false, false) => "OUT  ",
            (false, true) => "known",
            (true, true) => "HOLDS",
        };
        let bound = match self.bound {
            Bound::Share(share) => format!("{:.1e}", share * self.expected.abs()),
            Bound::Within(room) => format!("{room:.1e}"),
            Bound::NotOver => "not over".into(),
        };
        let Self {
            what,
            source,
            unit,
            expected,
            got,
            why,
            ..
        } = self;
        let off = got - expected;
        format!(
            "{verdict} {what:<58} expected {expected:>12.6} got {got:>12.6} {unit:<8} off {off:>9.2e}, bound {bound} ({why}); {source}"
        )
    }
}

/// A group of checks.
pub struct Table {
    /// What they are about.
    pub title: &'static str,
    /// The rows.
    pub checks: Vec<Check>,
}

impl Table {
    /// How many rows are not as expected, and how many are known to be out.
    fn out(&self) -> [usize; 2] {
        let count = |of: fn(&&Check) -> bool| self.checks.iter().filter(of).count();
        [count(|c| !c.as_expected()), count(|c| c.known_out)]
    }

    fn text(&self) -> String {
        let mut text = format!("{}\n", self.title);
        for check in &self.checks {
            writeln!(text, "  {}", check.line()).expect("text takes every line");
        }
        let (rows, [out, known]) = (self.checks.len(), self.out());
        writeln!(
            text,
            "  table: {rows} rows, {out} out, {known} known to be out"
        )
        .expect("text takes every line");
        text
    }
}

/// Prints a table and fails where a check does not hold.
///
/// # Panics
/// When a check does not hold, or when there is none.
pub fn judge(title: &'static str, checks: Vec<Check>) {
    judge_all(&[Table { title, checks }]);
}

/// Prints tables and one line over all of them, and fails where a check does not hold.
///
/// # Panics
/// When a check does not hold, or a table has none.
pub fn judge_all(tables: &[Table]) {
    let (text, fault) = judged(tables);
    println!("{text}");
    if let Some(fault) = fault {
        panic!("{fault}");
    }
}

/// The tables as text, and what is wrong with them.
fn judged(tables: &[Table]) -> (String, Option<String>) {
    let rows: usize = tables.iter().map(|t| t.checks.len()).sum();
    let [out, known] = [0, 1].map(|i| tables.iter().map(|t| t.out()[i]).sum::<usize>());
    let mut text: String = tables.iter().map(|t| t.text() + "\n").collect();
    let groups = tables.len();
    write!(
        text,
        "{rows} rows in {groups} groups: {out} out of bound, {known} known to be out"
    )
    .expect("text takes it");
    let empty = tables.iter().find(|t| t.checks.is_empty());
    let empty = empty.map(|t| format!("{}: nothing was checked", t.title));
    let bad = tables.iter().filter(|t| t.out()[0] > 0).map(Table::text);
    let bad: String = bad.collect();
    let fault = (out > 0).then(|| format!("{out} of {rows} checks do not hold\n{bad}"));
    (text, empty.or(fault))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(got: f64) -> Check {
        let bound = Bound::Share(0.01);
        Check::new("a check", "made up", "m", [2.0, got], bound, "made up")
    }

    #[test]
    fn only_a_number_within_the_bound_holds() {
        assert!(check(2.015).holds() && check(1.985).holds());
        assert!(!check(2.03).holds() && !check(f64::NAN).holds());
    }

    #[test]
    fn a_limit_is_kept_from_below() {
        let check = |got| Check {
            bound: Bound::NotOver,
            ..check(got)
        };
        assert!(check(2.0).holds() && check(-9.0).holds());
        assert!(!check(2.0 + 1e-15).holds() && !check(f64::NAN).holds());
    }

    fn fault(checks: Vec<Check>) -> Option<String> {
        let title = "Made up";
        judged(&[Table { title, checks }]).1
    }

    #[test]
    fn one_check_that_does_not_hold_fails_the_table() {
        assert_eq!(fault(vec![check(2.0), check(2.001)]), None);
        let fault = fault(vec![check(2.0), check(3.0)]).expect("a fault");
        assert!(fault.starts_with("1 of 2 checks do not hold"), "{fault}");
    }

    #[test]
    fn a_row_known_to_be_out_fails_once_it_holds() {
        assert_eq!(fault(vec![check(3.0).known_out()]), None);
        assert!(fault(vec![check(2.0).known_out()]).is_some());
    }

    #[test]
    fn an_empty_table_fails() {
        let fault = fault(Vec::new()).expect("a fault");
        assert_eq!(fault, "Made up: nothing was checked");
    }
}
