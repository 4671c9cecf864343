//! Plain data from outside, as JSON (RFC 8259): read so that every fault names its field.
//!
//! A text becomes a [`Value`], and a value becomes a plan or whatever else is asked for. A page reads the text
//! by the browser's own means, and comes in by the second door.

mod strict;

use crate::error::{Fault, Quantity, Unreadable, Why};
use serde::de::{Deserialize, DeserializeOwned, Deserializer, Error};
use serde_json::{Map, Value};
use std::fmt::Display;
use strict::{Strict, Wrong};

/// Reads a text.
///
/// # Errors
/// That it is no JSON, and where; or the first fault: a field of the wrong kind, unknown, missing or twice.
pub fn from_text<T: DeserializeOwned>(text: &str) -> Result<T, Fault> {
    let value = serde_json::from_str(text).map_err(|error| no_json(&error.to_string()))?;
    once(text)?;
    from_value(value)
}

/// The fault of a text that is no JSON, for the reason that a reader of JSON gives.
pub fn no_json(why: &str) -> Fault {
    let told = format!("this cannot be read as JSON: {why}");
    fault("", Unreadable::NotJson, told)
}

/// How deep a text may be nested: a plan's reading is six deep. What reads values goes down as deep as they are, and
/// nothing holds it where there is no room left.
const DEEPEST: usize = 32;

/// Makes sure that a text, which is JSON, gives no field twice: readers of JSON take the last without a word.
///
/// # Errors
/// That it is nested too deep;
/// The first field that stands there twice; or whose name is written in a roundabout way, with a backslash.
pub fn once(text: &str) -> Result<(), Fault> {
    // What is open around the place: the names of an object so far, and the place in a list.
    let mut around: Vec<(Vec<&str>, usize)> = Vec::new();
    let mut rest = text;
    while let Some(at) = rest.find(['"', '{', '[', '}', ']', ',']) {
        let mark = rest.as_bytes()[at];
        rest = &rest[at + 1..];
        match (mark, around.last_mut()) {
            (b'{' | b'[', _) => {
                around.push((Vec::new(), 0));
                if around.len() > DEEPEST {
                    let told = "this is nested deeper than any plan".to_owned();
                    return Err(fault("", Unreadable::Kind, told));
                }
            }
            (b'}' | b']', _) => drop(around.pop()),
            (b',', Some((_, place))) => *place += 1,
            (b'"', Some((names, _))) => {
                let (word, after) = rest.split_at(end(rest));
                rest = &after[1..];
                if rest.trim_start().starts_with(':') {
                    let twice = names.contains(&word);
                    names.push(word);
                    name(word, twice).map_err(|(what, told)| fault(&path(&around), what, told))?;
                }
            }
            _ => {}
        }
    }
    Ok(())
}

/// What is wrong with a field's name: that it was there before, or hides behind another spelling.
fn name(word: &str, twice: bool) -> Result<(), (Unreadable, String)> {
    if twice {
        Err((Unreadable::Twice, format!("duplicate field `{word}`")))
    } else if word.contains('\\') {
        Err((Unreadable::Unknown, format!("unknown field `{word}`")))
    } else {
        Ok(())
    }
}

/// Where a text ends that begins here: at a quotation mark that no backslash stands before.
fn end(text: &str) -> usize {
    let mut escaped = false;
    let ends = |byte: u8| {
        let end = byte == b'"' && !escaped;
        escaped = byte == b'\\' && !escaped;
        end
    };
    text.bytes().position(ends).unwrap_or(text.len() - 1)
}

fn path(around: &[(Vec<&str>, usize)]) -> String {
    around
        .iter()
        .fold(String::new(), |path, (names, place)| match names.last() {
            Some(name) => joined(&path, name),
            None => format!("{path}[{place}]"),
        })
}

/// Reads a value.
///
/// # Errors
/// The first fault: a field of the wrong kind, unknown or missing.
pub fn from_value<T: DeserializeOwned>(value: Value) -> Result<T, Fault> {
    serde_path_to_error::deserialize(Strict(value))
        .map_err(|error| unreadable(&error.path().to_string(), &error.inner().to_string()))
}

/// Between a path and the reason, where both have to go through one error.
const INSIDE: char = '\u{1f}';

/// Implements `Deserialize` for an enum whose field `kind` says which of its structs the other fields are.
///
/// The derived reader would lose sight of the path inside.
macro_rules! kinds {
    ($name:ident { $($kind:literal: $variant:ident),* $(,)? }) => {
        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
                let (kind, fields) = crate::json::kind(reader)?;
                match kind.as_str() {
                    $($kind => crate::json::inside(fields).map($name::$variant),)*
                    other => Err(crate::json::unknown_kind(other, &[$($kind),*])),
                }
            }
        }
    };
}
pub(crate) use kinds;

/// Takes fields apart into their kind, which may come last, and the others.
pub(crate) fn kind<'de, D: Deserializer<'de>>(reader: D) -> Result<(String, Value), D::Error> {
    let mut fields = Map::deserialize(reader)?;
    let kind = fields.remove("kind").ok_or(Error::missing_field("kind"))?;
    let kind = String::deserialize(Strict(kind)).map_err(|error| at("kind", &error))?;
    Ok((kind, Value::Object(fields)))
}

/// Reads the fields of one kind.
pub(crate) fn inside<T: DeserializeOwned, E: Error>(fields: Value) -> Result<T, E> {
    serde_path_to_error::deserialize(Strict(fields))
        .map_err(|error| at(&error.path().to_string(), error.inner()))
}

pub(crate) fn unknown_kind<E: Error>(kind: &str, known: &'static [&'static str]) -> E {
    at("kind", &Wrong::unknown_variant(kind, known))
}

fn at<E: Error>(path: &str, error: &dyn Display) -> E {
    E::custom(format_args!("{path}{INSIDE}{error}"))
}

/// Beginnings of what serde says, and what is wrong then.
const WRONG: [(&str, Unreadable); 2] = [
    ("missing field", Unreadable::Missing),
    ("unknown field", Unreadable::Unknown),
];

/// What serde expects, in a builder's words.
const EXPECTED: [(&str, &str); 8] = [
    ("f64", "a number"),
    (
        "u32",
        "a whole number, not less than nothing and not too large",
    ),
    ("a boolean", "yes or no: `true` or `false`"),
    ("a string", "a text"),
    ("a sequence", "a list"),
    ("a tuple of size 2", "two numbers"),
    ("2 elements in sequence", "two numbers and no more"),
    ("a map", "named fields"),
];

/// The fault that serde's error at a path is.
fn unreadable(path: &str, told: &str) -> Fault {
    if let Some((inner, told)) = told.split_once(INSIDE) {
        return unreadable(&joined(path, inner), told);
    }
    let wrong = WRONG.iter().find(|(words, _)| told.starts_with(words));
    let what = wrong.map_or(Unreadable::Kind, |&(_, what)| what);
    // A field that is not there is told by what would be around it.
    let name = match what {
        Unreadable::Missing => told.split('`').nth(1).unwrap_or_default(),
        _ => "",
    };
    let told = match told.strip_prefix("expected ") {
        Some(expected) => format!("expected {}", plainly(expected)),
        None => told.replace("unknown variant", "unknown choice"),
    };
    fault(&joined(path, name), what, told)
}

fn plainly(expected: &str) -> &str {
    let known = EXPECTED.iter().find(|(words, _)| *words == expected);
    match known {
        Some((_, plain)) => plain,
        None if expected.starts_with("struct ") => "named fields",
        None => expected,
    }
}

/// The path of what lies inside another.
fn joined(outer: &str, inner: &str) -> String {
    // As the library writes the path of the whole.
    let outer = if outer == "." { "" } else { outer };
    let inner = if inner == "." { "" } else { inner };
    let dot = if outer.is_empty() || inner.is_empty() || inner.starts_with('[') {
        ""
    } else {
        "."
    };
    format!("{outer}{dot}{inner}")
}

fn fault(field: &str, what: Unreadable, told: String) -> Fault {
    Fault {
        field: if field.is_empty() { "plan" } else { field }.to_owned(),
        given: None,
        least: None,
        most: None,
        quantity: Quantity::Text,
        why: Why::Unreadable { what, told },
    }
}
