//! Two columns of lengths, as they come out of a spreadsheet or are typed from a field book.
//!
//! A row is two lengths with a tab or a semicolon between them, or a comma or spaces where that can be
//! read in one way only: `1,5 0,2` and `4' 6" 1'` can, `0,5,1` cannot. A row without any figure may
//! stand at the top and give its units in brackets: `Station (m), Elevation (cm)`.

use super::{System, UnitError, number, parse, scale};
use crate::error::Quantity;
use core::fmt;
use serde::Serialize;

/// Longest row that is read, bytes.
const LONGEST: usize = 100;

/// What is wrong with a row.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", content = "with", rename_all = "snake_case")]
pub enum RowWrong {
    /// It is not two lengths.
    NotTwo,
    /// It is two lengths in more ways than one.
    TwoWays,
    /// One of its two is no length.
    Length(UnitError),
    /// The row at the top names something in brackets that is no unit of length.
    UnknownUnit(String),
}

/// A row that cannot be read.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct RowError {
    /// Its number, the first row being 1; empty rows count.
    pub row: usize,
    /// What is wrong with it.
    pub wrong: RowWrong,
}

impl fmt::Display for RowError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "row {}: ", self.row)?;
        match &self.wrong {
            RowWrong::NotTwo => write!(f, "two lengths are wanted, the station and the height"),
            RowWrong::TwoWays => write!(
                f,
                "this can be read in two ways; put a tab or a semicolon between the two"
            ),
            RowWrong::Length(error) => error.fmt(f),
            RowWrong::UnknownUnit(unit) => write!(f, "\"{unit}\" is no unit of length"),
        }
    }
}

impl core::error::Error for RowError {}

/// The lengths of every row of a text, m. Empty rows are passed over.
///
/// # Errors
/// Every row that cannot be read.
pub fn pairs(text: &str, system: System) -> Result<Vec<(f64, f64)>, Vec<RowError>> {
    let mut reader = Reader {
        system,
        units: [None, None],
    };
    let (mut pairs, mut errors) = (Vec::new(), Vec::new());
    let rows = text.trim_start_matches('\u{feff}').lines().zip(1..);
    let rows = rows.filter(|(line, _)| !line.trim().is_empty());
    for (i, (line, row)) in rows.enumerate() {
        let read = if i == 0 && !line.contains(number::begins) {
            reader.take_heading(line)
        } else {
            reader.pair(line).map(|pair| pairs.push(pair))
        };
        if let Err(wrong) = read {
            errors.push(RowError { row, wrong });
        }
    }
    if errors.is_empty() {
        Ok(pairs)
    } else {
        Err(errors)
    }
}

/// What is known before a row is read.
struct Reader<'a> {
    system: System,
    /// Unit of each column, where the heading gives one.
    units: [Option<&'a str>; 2],
}

impl<'a> Reader<'a> {
    /// Takes the units from a heading: one for each column, or one for both.
    fn take_heading(&mut self, line: &'a str) -> Result<(), RowWrong> {
        let mut units = Vec::new();
        let mut rest = line;
        while let Some((_, behind)) = rest.split_once(['(', '[']) {
            let end = behind.find([')', ']']).unwrap_or(behind.len());
            units.push(&behind[..end]);
            rest = &behind[end..];
        }
        let known = |unit: &str| {
            let mut names = scale::units(Quantity::Length).iter().flat_map(|u| u.names);
            names.any(|name| *name == unit)
        };
        if let Some(odd) = units.iter().find(|unit| !known(unit)) {
            return Err(RowWrong::UnknownUnit((*odd).to_owned()));
        }
        self.units = match units[..] {
            [] => [None, None],
            [both] => [Some(both), Some(both)],
            [first, second] => [Some(first), Some(second)],
            _ => return Err(RowWrong::NotTwo),
        };
        Ok(())
    }

    fn pair(&self, line: &str) -> Result<(f64, f64), RowWrong> {
        let line = line.trim();
        if line.len() > LONGEST {
            return Err(RowWrong::NotTwo);
        }
        for sign in ['\t', ';'] {
            if let Some((first, second)) = line.split_once(sign) {
                return self.both(first, second);
            }
        }
        self.only_way(line)
    }

    fn both(&self, first: &str, second: &str) -> Result<(f64, f64), RowWrong> {
        let read = |i, text| self.length(i, text).map_err(RowWrong::Length);
        Ok((read(0, first)?, read(1, second)?))
    }

    /// The one way in which a row without a clear sign can be read.
    fn only_way(&self, line: &str) -> Result<(f64, f64), RowWrong> {
        let (mut way, mut wrong) = (None, None);
        for (at, sign) in line.char_indices() {
            if sign != ',' && !sign.is_whitespace() {
                continue;
            }
            match self.both(&line[..at], &line[at + sign.len_utf8()..]) {
                // Two spaces in a row are one gap.
                Ok(found) if way.is_some_and(|way| way != found) => return Err(RowWrong::TwoWays),
                Ok(found) => way = Some(found),
                // Where there is one gap alone, it is clear which length is at fault.
                Err(why) if wrong.is_none() => wrong = Some(why),
                Err(_) => wrong = Some(RowWrong::NotTwo),
            }
        }
        way.ok_or(wrong.unwrap_or(RowWrong::NotTwo))
    }

    /// A length of a column, in the column's unit where it brings none of its own.
    fn length(&self, column: usize, text: &str) -> Result<f64, UnitError> {
        let bare =
            |c: char| c.is_numeric() || c.is_whitespace() || ".,/-+\u{2212}\u{2044}".contains(c);
        match self.units[column] {
            Some(unit) if text.trim().chars().all(bare) => {
                parse(&format!("{text} {unit}"), Quantity::Length, self.system)
            }
            _ => parse(text, Quantity::Length, self.system),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn metric(text: &str) -> Vec<(f64, f64)> {
        pairs(text, System::Metric).unwrap()
    }

    #[track_caller]
    fn wrong(text: &str) -> Vec<(usize, RowWrong)> {
        let errors = pairs(text, System::Metric).unwrap_err();
        errors.into_iter().map(|e| (e.row, e.wrong)).collect()
    }

    #[test]
    fn every_sign_between_columns_gives_the_same() {
        let two = [(0.0, 1.5), (2.5, -0.25)];
        for text in [
            "0\t1.5\n2.5\t-0.25",
            "0;1,5\r\n2,5;-0,25\r\n",
            "0, 1.5\n2.5, -0.25",
            "0,1.5\n2.5,-0.25",
            "  0 1.5\n\n2,5   \u{2212}0,25\n",
            "\u{feff}Station (m),Elevation (m)\n0,1.5\n2.5,-0.25",
            "Station\tElevation [cm]\n0 m\t150\n250\t-25",
            "at (m) up (mm)\n0 1500\n2.5 -250",
        ] {
            assert_eq!(metric(text), two, "{text:?}");
        }
    }

    #[test]
    fn feet_and_inches_stand_beside_each_other() {
        let rows = pairs("4' 6\" 1'\n10 1/2, 3 in\n4ft 6in\t-2in", System::Feet).unwrap();
        let inches: Vec<_> = rows.iter().map(|(a, b)| (a / 0.0254, b / 0.0254)).collect();
        let expected = [(54.0, 12.0), (126.0, 3.0), (54.0, -2.0)];
        for (got, expected) in inches.iter().zip(expected) {
            assert!(
                (got.0 - expected.0).abs() < 1e-9 && (got.1 - expected.1).abs() < 1e-9,
                "{inches:?}"
            );
        }
    }

    #[test]
    fn a_unit_of_its_own_outdoes_the_heading() {
        assert_eq!(metric("x (cm)\ty (cm)\n100\t1 m"), [(1.0, 1.0)]);
    }

    #[test]
    fn every_bad_row_is_named_by_its_number() {
        let errors = pairs("0 0\n\n1 high\n2\n3 0 0\n4 0", System::Metric).unwrap_err();
        let told: Vec<_> = errors.iter().map(ToString::to_string).collect();
        assert_eq!(errors.iter().map(|e| e.row).collect::<Vec<_>>(), [3, 4, 5]);
        assert!(
            told[0].starts_with("row 3: \"high\" is not understood"),
            "{told:?}"
        );
        assert!(told[1].starts_with("row 4: two lengths"), "{told:?}");
    }

    #[test]
    fn what_can_be_read_in_two_ways_is_not_guessed() {
        assert_eq!(wrong("0,5,1"), [(1, RowWrong::TwoWays)]);
        let unit = RowWrong::UnknownUnit("yd".to_owned());
        assert_eq!(wrong("Station (yd)\n1 2"), [(1, unit)]);
        assert_eq!(wrong(&"1 ".repeat(80)), [(1, RowWrong::NotTwo)]);
    }

    #[test]
    fn nothing_gives_nothing() {
        assert_eq!(metric(" \n\n"), []);
    }
}
