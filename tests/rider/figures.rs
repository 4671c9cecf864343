//! Tables of measured figures, each beside its bar and its floor.

use std::fmt;

/// What a figure ought to be.
#[derive(Clone, Copy, Debug)]
pub enum Bar {
    /// No more than this.
    AtMost(f64),
    /// No less than this.
    AtLeast(f64),
    /// Between these.
    Within(f64, f64),
    /// Only to be known.
    Shown,
}

impl Bar {
    fn met(self, got: f64) -> bool {
        match self {
            Bar::AtMost(bar) => got <= bar,
            Bar::AtLeast(bar) => got >= bar,
            Bar::Within(low, high) => (low..=high).contains(&got),
            Bar::Shown => true,
        }
    }
}

impl fmt::Display for Bar {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Bar::AtMost(bar) => write!(f, "at most {bar}"),
            Bar::AtLeast(bar) => write!(f, "at least {bar}"),
            Bar::Within(low, high) => write!(f, "{low} to {high}"),
            Bar::Shown => write!(f, "-"),
        }
    }
}

/// One figure of a table.
pub struct Figure {
    what: String,
    unit: &'static str,
    got: f64,
    bar: Bar,
    floor: Option<f64>,
}

impl Figure {
    /// Whether the figure is no worse than its floor. A figure that is no number never holds one.
    pub fn holds(&self) -> bool {
        let Some(floor) = self.floor else {
            return true;
        };
        match self.bar {
            Bar::AtMost(_) => self.got <= floor,
            Bar::AtLeast(_) => self.got >= floor,
            Bar::Within(..) | Bar::Shown => self.bar.met(self.got),
        }
    }
}

impl Figure {
    /// Whether the figure is at its floor but not yet at its bar.
    fn is_short(&self) -> bool {
        self.holds() && !self.bar.met(self.got)
    }
}

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self {
            what,
            unit,
            got,
            bar,
            floor,
        } = self;
        let mark = match bar {
            Bar::Shown => "     ",
            _ if bar.met(*got) => "ok   ",
            _ => "under",
        };
        write!(f, "{mark} {what:<74} {got:>9.3} {unit:<3}")?;
        if !matches!(bar, Bar::Shown) {
            write!(f, "  bar {bar}")?;
        }
        floor.map_or(Ok(()), |floor| write!(f, ", floor {floor}"))
    }
}

/// A line of a table.
enum Row {
    Figure(Figure),
    Note(String),
}

/// A table: figures, and lines that tell more.
#[derive(Default)]
pub struct Table {
    title: &'static str,
    rows: Vec<Row>,
}

impl Table {
    /// An empty table.
    pub fn new(title: &'static str) -> Self {
        Self {
            title,
            ..Self::default()
        }
    }

    /// Adds a figure with its bar and, once it is set, its floor.
    pub fn figure(
        &mut self,
        what: impl Into<String>,
        got: f64,
        unit: &'static str,
        bar: Bar,
        floor: Option<f64>,
    ) {
        let what = what.into();
        self.rows.push(Row::Figure(Figure {
            what,
            unit,
            got,
            bar,
            floor,
        }));
    }

    /// Adds a figure that is only shown.
    pub fn shown(&mut self, what: impl Into<String>, got: f64, unit: &'static str) {
        self.figure(what, got, unit, Bar::Shown, None);
    }

    /// Adds a line of text.
    pub fn note(&mut self, note: impl Into<String>) {
        self.rows.push(Row::Note(note.into()));
    }

    fn figures(&self) -> impl Iterator<Item = &Figure> {
        self.rows.iter().filter_map(|row| match row {
            Row::Figure(figure) => Some(figure),
            Row::Note(_) => None,
        })
    }

    /// Prints the table and fails where a figure is worse than its floor.
    ///
    /// # Panics
    /// When a figure is worse than its floor, or when there is none.
    pub fn judge(&self) {
        println!("{self}");
        let worse = self.figures().filter(|f| !f.holds());
        let worse: Vec<String> = worse.map(Figure::to_string).collect();
        assert!(
            self.figures().count() > 0,
            "{}: nothing was measured",
            self.title
        );
        assert!(worse.is_empty(), "{}: {}", self.title, worse.join("; "));
    }
}

impl fmt::Display for Table {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "{}", self.title)?;
        for row in &self.rows {
            match row {
                Row::Figure(figure) => writeln!(f, "  {figure}")?,
                Row::Note(note) => writeln!(f, "          {note}")?,
            }
        }
        let count = |of: fn(&Figure) -> bool| self.figures().filter(|f| of(f)).count();
        let rows = self.figures().count();
        let (out, known) = (count(|f| !f.holds()), count(Figure::is_short));
        writeln!(
            f,
            "  table: {rows} rows, {out} out, {known} known to be out"
        )
    }
}

/// Share of some that are so, per cent; no number where there are none.
pub fn percent<T>(all: &[T], so: impl Fn(&T) -> bool) -> f64 {
    100.0 * all.iter().filter(|x| so(x)).count() as f64 / all.len() as f64
}

/// A quantile, 0 to 1, between the nearest two; no number where there are none.
pub fn quantile(values: &[f64], q: f64) -> f64 {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let Some(last) = sorted.len().checked_sub(1) else {
        return f64::NAN;
    };
    let at = q * last as f64;
    let (low, share) = (at.floor() as usize, at.fract());
    sorted[low] + share * (sorted[(low + 1).min(last)] - sorted[low])
}

/// Median.
pub fn median(values: &[f64]) -> f64 {
    quantile(values, 0.5)
}

/// Three quantiles in a line: 5 %, median, 95 %.
pub fn spread(values: &[f64], places: usize) -> String {
    let [low, mid, high] = [0.05, 0.5, 0.95].map(|q| quantile(values, q));
    format!(
        "5 % {low:.places$}, median {mid:.places$}, 95 % {high:.places$} of {}",
        values.len()
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn figure(got: f64, bar: Bar, floor: Option<f64>) -> Figure {
        let (what, unit) = (String::new(), "");
        Figure {
            what,
            unit,
            got,
            bar,
            floor,
        }
    }

    #[test]
    fn a_floor_is_held_from_its_own_side() {
        assert!(figure(3.0, Bar::AtMost(1.0), Some(4.0)).holds());
        assert!(!figure(5.0, Bar::AtMost(1.0), Some(4.0)).holds());
        assert!(figure(5.0, Bar::AtLeast(9.0), Some(4.0)).holds());
        assert!(!figure(3.0, Bar::AtLeast(9.0), Some(4.0)).holds());
        assert!(!figure(f64::NAN, Bar::AtLeast(9.0), Some(4.0)).holds());
    }

    #[test]
    fn quantiles_lie_between() {
        let values = [3.0, 1.0, 2.0, 4.0];
        assert_eq!((median(&values), quantile(&values, 1.0)), (2.5, 4.0));
        assert_eq!(percent(&values, |&v| v > 3.5), 25.0);
        assert!(median(&[]).is_nan() && percent(&[0; 0], |_| true).is_nan());
    }
}
