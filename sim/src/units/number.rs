//! Numbers as people write them: `4`, `4.5`, `4,5`, `1/2`, `6 1/2`, `6-1/2`, `6½`.

use super::Wrong;
use num_rational::Ratio;
use num_traits::CheckedAdd;

/// Most digits that are taken in one go.
const DIGITS: usize = 12;

/// Whether a number can begin with this character.
pub fn begins(c: char) -> bool {
    c.is_ascii_digit() || single(c).is_some()
}

/// The number at the front of a text, exact, and the text after it.
pub fn number(text: &str) -> Result<(Ratio<i64>, &str), Wrong> {
    if let Some((fraction, rest)) = vulgar(text) {
        return Ok((fraction, rest));
    }
    let (whole, rest) = if text.starts_with('.') {
        (0, text)
    } else {
        digits(text)?
    };
    match rest.chars().next() {
        Some('.' | ',') => decimal(whole, rest),
        Some('/' | '\u{2044}') => over(whole, rest),
        _ => match mixed(rest)? {
            Some((fraction, rest)) => {
                let sum = Ratio::from(whole).checked_add(&fraction);
                Ok((sum.ok_or(Wrong::TooManyDigits)?, rest))
            }
            None => Ok((Ratio::from(whole), rest)),
        },
    }
}

fn digits(text: &str) -> Result<(i64, &str), Wrong> {
    let end = text
        .find(|c: char| !c.is_ascii_digit())
        .unwrap_or(text.len());
    let (digits, rest) = text.split_at(end);
    if digits.len() > DIGITS {
        return Err(Wrong::TooManyDigits);
    }
    digits
        .parse()
        .map(|n| (n, rest))
        .map_err(|_| Wrong::NotANumber)
}

fn decimal(whole: i64, rest: &str) -> Result<(Ratio<i64>, &str), Wrong> {
    let (point, rest) = rest.split_at(1);
    let before = rest.len();
    let (places, rest) = digits(rest)?;
    let length = before - rest.len();
    if point == "," && length == 3 {
        return Err(Wrong::Comma);
    }
    let parts = 10_i64.pow(length as u32);
    let sum = Ratio::from(whole).checked_add(&Ratio::new(places, parts));
    Ok((sum.ok_or(Wrong::TooManyDigits)?, rest))
}

/// The rest of a fraction whose upper number was read.
fn over(top: i64, rest: &str) -> Result<(Ratio<i64>, &str), Wrong> {
    let bar = rest.chars().next().map_or(0, char::len_utf8);
    let (bottom, rest) = digits(&rest[bar..])?;
    if bottom == 0 {
        return Err(Wrong::Fraction);
    }
    Ok((Ratio::new(top, bottom), rest))
}

/// A proper fraction right behind a whole number, where there is one.
fn mixed(rest: &str) -> Result<Option<(Ratio<i64>, &str)>, Wrong> {
    let behind = rest.trim_start_matches([' ', '-']);
    if let Some(found) = vulgar(behind) {
        return Ok(Some(found));
    }
    let apart = behind.len() < rest.len();
    let Ok((top, bar)) = digits(behind) else {
        return Ok(None);
    };
    if !apart || !bar.starts_with(['/', '\u{2044}']) {
        return Ok(None);
    }
    let (fraction, rest) = over(top, bar)?;
    if fraction >= Ratio::from(1) {
        return Err(Wrong::Fraction);
    }
    Ok(Some((fraction, rest)))
}

/// A fraction that is one character, and the text after it.
fn vulgar(text: &str) -> Option<(Ratio<i64>, &str)> {
    let mut chars = text.chars();
    let fraction = single(chars.next()?)?;
    Some((fraction, chars.as_str()))
}

fn single(c: char) -> Option<Ratio<i64>> {
    let (top, bottom) = match c {
        '½' => (1, 2),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        _ => return None,
    };
    Some(Ratio::new(top, bottom))
}
