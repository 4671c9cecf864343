//! Plan files: reading one, with a fault that names the field, and writing one.
//!
//! Text becomes a document, the document a plan. Every struct is read from documents alone: a reader
//! of its own for each kind of input would be a third of the program that a browser fetches.

mod strict;

use super::{Feature, Plan};
use crate::error::{Fault, Quantity};
use serde::de::{DeserializeOwned, Error};
use serde::{Deserialize, Deserializer};
use serde_json::Value;
use strict::Strict;

impl Plan {
    /// Reads a plan file. The plan still has to be validated.
    ///
    /// # Errors
    /// The first fault of the text: not JSON, a field of the wrong type, unknown, missing or twice.
    pub fn from_json(text: &str) -> Result<Plan, Fault> {
        let mut reader = serde_json::Deserializer::from_str(text);
        let Strict(document) = read(&mut reader)?;
        reader.end().map_err(|error| told(".", &error))?;
        read(document)
    }

    /// The plan as a plan file.
    pub fn to_json(&self) -> String {
        serde_json::to_string_pretty(self).expect("plain data with text keys can be written")
    }
}

fn read<'a, T, D>(reader: D) -> Result<T, Fault>
where
    T: Deserialize<'a>,
    D: Deserializer<'a, Error = serde_json::Error>,
{
    serde_path_to_error::deserialize(reader)
        .map_err(|error| told(&error.path().to_string(), error.inner()))
}

/// A reader's complaint as a fault.
fn told(path: &str, error: &serde_json::Error) -> Fault {
    let mut field = path.trim_start_matches('.').to_owned();
    let mut why = plain(&error.to_string());
    if error.is_data() {
        // The path says where; the line and column that follow the reason say it again.
        why.truncate(why.rfind(" at line ").unwrap_or(why.len()));
        // The path ends at a feature, which says itself where it is wrong inside.
        if let Some((inside, rest)) = why.split_once(INSIDE) {
            field = format!("{field}.{inside}");
            why = rest.to_owned();
        }
        if let Some(name) = why.strip_prefix("missing field `") {
            let dot = if field.is_empty() { "" } else { "." };
            field = format!("{field}{dot}{}", name.trim_end_matches('`'));
        }
    } else {
        why = format!("this cannot be read as JSON: {why}");
    }
    Fault {
        field: if field.is_empty() {
            "plan".to_owned()
        } else {
            field
        },
        given: None,
        least: None,
        most: None,
        quantity: Quantity::Text,
        why,
    }
}

/// The reader's words for what it expected, without the names that the code has for it.
fn plain(why: &str) -> String {
    why.replace("expected f64", "expected a number")
        .replace("expected u32", "expected a whole number")
        .replace("unknown variant", "unknown choice")
        .replace("expected variant identifier", "expected a choice")
        .replace(
            "expected internally tagged enum Feature",
            "expected a feature",
        )
        .replace("expected struct ", "expected a whole ")
}

/// Between the path inside a feature and what is wrong there.
const INSIDE: &str = " in this feature: ";

// By hand, because the derived reader would read every feature by a second way: the kind has to be known
// before the other fields can be read, and may come last.
impl<'de> Deserialize<'de> for Feature {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        let mut fields = serde_json::Map::deserialize(reader)?;
        let kind = fields.remove("kind");
        let kind = kind.ok_or_else(|| Error::missing_field("kind"))?;
        let fields = Value::Object(fields);
        match kind.as_str() {
            Some("start_ramp") => inside(fields).map(Feature::StartRamp),
            Some("flat") => inside(fields).map(Feature::Flat),
            Some("roller") => inside(fields).map(Feature::Roller),
            Some("jump") => inside(fields).map(Feature::Jump),
            Some("turn") => inside(fields).map(Feature::Turn),
            Some("run_out") => inside(fields).map(Feature::RunOut),
            _ => Err(Error::custom(format!(
                "kind{INSIDE}unknown choice {kind}, expected one of `start_ramp`, `flat`, `roller`, `jump`, `turn`, `run_out`"
            ))),
        }
    }
}

fn inside<T: DeserializeOwned, E: Error>(fields: Value) -> Result<T, E> {
    serde_path_to_error::deserialize(fields).map_err(|error| {
        let why = error.inner();
        match error.path().to_string().as_str() {
            "." => E::custom(why),
            path => E::custom(format!("{path}{INSIDE}{why}")),
        }
    })
}
