//! How heavy and how tall riders of an age are, by the CDC growth charts.

use super::charts::{BOYS_MASS, BOYS_STATURE, GIRLS_MASS, GIRLS_STATURE, Row, YEARS};
use crate::num;
use core::ops::RangeInclusive;
use serde::{Deserialize, Serialize};

/// Ages on the charts, years. They end at 20, which stands for every adult here.
pub const AGES: RangeInclusive<u32> = 2..=20;

/// Standard score of the 90th percentile of a normal distribution; the 10th has its negative.
const NINE_IN_TEN: f64 = 1.281_551_6;

/// Whose charts are read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Sex {
    /// Girls and women.
    Girl,
    /// Boys and men.
    Boy,
    /// The mean of the two.
    #[default]
    Either,
}

/// What is usual among all of an age.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Usual {
    /// One in ten has less: the 10th percentile.
    pub low: f64,
    /// Half have less: the median.
    pub middle: f64,
    /// One in ten has more: the 90th percentile.
    pub high: f64,
}

impl Usual {
    /// From a row of the charts, in a unit.
    fn of([l, m, s]: Row, unit: f64) -> Self {
        // L is nowhere 0 on the charts, so the formula's other form is never needed.
        let at = |z: f64| unit * m * num::pow(1.0 + l * s * z, 1.0 / l);
        Self {
            low: at(-NINE_IN_TEN),
            middle: unit * m,
            high: at(NINE_IN_TEN),
        }
    }

    fn mean(a: Self, b: Self) -> Self {
        Self {
            low: 0.5 * (a.low + b.low),
            middle: 0.5 * (a.middle + b.middle),
            high: 0.5 * (a.high + b.high),
        }
    }
}

/// Body mass at an age, kg, without clothes; `None` where the charts have no such age.
///
/// # References
/// The charts named in `charts.rs`; a percentile is M (1 + L S z)^(1/L).
pub fn mass(age: u32, sex: Sex) -> Option<Usual> {
    usual(age, sex, [&GIRLS_MASS, &BOYS_MASS], 1.0)
}

/// Standing height at an age, m, without shoes; `None` where the charts have no such age.
///
/// # References
/// As for [`mass`].
pub fn stature(age: u32, sex: Sex) -> Option<Usual> {
    usual(age, sex, [&GIRLS_STATURE, &BOYS_STATURE], 0.01)
}

fn usual(age: u32, sex: Sex, [girls, boys]: [&[Row; YEARS]; 2], unit: f64) -> Option<Usual> {
    let year = age.checked_sub(*AGES.start())? as usize;
    let girl = Usual::of(*girls.get(year)?, unit);
    let boy = Usual::of(*boys.get(year)?, unit);
    Some(match sex {
        Sex::Girl => girl,
        Sex::Boy => boy,
        Sex::Either => Usual::mean(girl, boy),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Age, then the columns P10, M and P90 of the file, which the charts' makers worked out.
    type Published = [(u32, [f64; 3]); 4];

    fn check(name: &str, of: fn(u32, Sex) -> Option<Usual>, sex: Sex, unit: f64, rows: Published) {
        for (age, published) in rows {
            let got = of(age, sex).expect("the age is on the charts");
            for (got, published) in [got.low, got.middle, got.high].into_iter().zip(published) {
                let off = (got / unit - published).abs();
                assert!(
                    off < 1e-5,
                    "{name}, {sex:?} of {age}: {published}, got {got}"
                );
            }
        }
    }

    #[test]
    fn weights_are_those_of_the_charts() {
        let boys = [
            (2, [11.11490406, 12.74154396, 14.6671577]),
            (7, [19.55135989, 23.16741888, 28.72538282]),
            (10, [26.20745042, 32.08799062, 41.96894158]),
            (20, [58.41104572, 70.59761453, 88.80643527]),
        ];
        check("weight", mass, Sex::Boy, 1.0, boys);
        let girls = [
            (2, [10.64075988, 12.13455523, 14.03902482]),
            (6, [17.14326985, 20.33635961, 25.3714519]),
            (10, [26.33131782, 33.06392318, 43.85001322]),
            (20, [48.38346004, 58.21897289, 75.35164989]),
        ];
        check("weight", mass, Sex::Girl, 1.0, girls);
    }

    #[test]
    fn statures_are_those_of_the_charts() {
        let boys = [
            (3, [90.49788649, 95.27359106, 100.4071992]),
            (7, [115.1355915, 122.0305342, 129.0230015]),
            (10, [130.4809221, 138.8234114, 147.421432]),
            (20, [167.6592824, 176.8492322, 185.9599411]),
        ];
        check("stature", stature, Sex::Boy, 0.01, boys);
        let girls = [
            (5, [102.0108651, 107.9566031, 114.2701285]),
            (10, [129.7752299, 138.2111552, 147.0322225]),
            (14, [152.0508033, 160.4776996, 168.9238654]),
            (20, [155.0180729, 163.338251, 171.6128653]),
        ];
        check("stature", stature, Sex::Girl, 0.01, girls);
    }

    /// The mean of 33.06392318 and 32.08799062 kg.
    #[test]
    fn either_lies_in_the_middle() {
        let got = mass(10, Sex::Either).expect("the age is on the charts");
        assert!((got.middle - 32.5759569).abs() < 1e-9, "{got:?}");
    }

    #[test]
    fn the_charts_begin_at_two_and_end_at_twenty() {
        assert_eq!(mass(1, Sex::Girl), None);
        assert_eq!(stature(21, Sex::Boy), None);
    }
}
