//! Plan files: reading one, with a fault that names the field, and writing one.

use super::{Clocked, Flat, Jump, Landed, Plan, Roller, RunOut, StartRamp, Stopped, Timed, Turn};
use crate::error::{Fault, NOT_JSON, Quantity, Why};
use serde::de::DeserializeOwned;
use serde_json::Value;

impl Plan {
    /// Reads a plan file. The plan still has to be validated.
    ///
    /// # Errors
    /// The first fault of the text: not JSON, a field of the wrong type, unknown, missing or twice.
    pub fn from_json(text: &str) -> Result<Plan, Fault> {
        let mut reader = serde_json::Deserializer::from_str(text);
        let plan = serde_path_to_error::deserialize(&mut reader).map_err(|error| {
            let path = error.path().to_string();
            let told = told(&path, error.inner());
            let inside = choice_at(text, &path).and_then(|c| fault_inside(&path, c));
            inside.unwrap_or(told)
        })?;
        reader.end().map_err(|error| told(".", &error))?;
        Ok(plan)
    }

    /// The plan as a plan file.
    pub fn to_json(&self) -> String {
        serde_json::to_string_pretty(self).expect("plain data with text keys can be written")
    }
}

/// A reader's complaint as a fault.
fn told(path: &str, error: &serde_json::Error) -> Fault {
    let mut field = path.trim_start_matches('.').to_owned();
    let mut why = plain(&error.to_string());
    if error.is_data() {
        // The path says where; the line and column that follow the reason say it again.
        why.truncate(why.rfind(" at line ").unwrap_or(why.len()));
        if let Some(name) = why.strip_prefix("missing field `") {
            let dot = if field.is_empty() { "" } else { "." };
            field = format!("{field}{dot}{}", name.trim_end_matches('`'));
        }
    } else {
        why = format!("{NOT_JSON}: {why}");
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
        why: Why::unreadable(why),
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
        .replace(
            "expected internally tagged enum Observation",
            "expected an observation",
        )
        .replace("expected struct ", "expected a whole ")
}

/// The feature or observation a path ends at. Its kind has to be known before its fields can be
/// read, so the reader collects a whole one first and loses sight of the path inside it.
fn choice_at(text: &str, path: &str) -> Option<Value> {
    let (list, index) = path.strip_suffix(']')?.rsplit_once('[')?;
    let index: usize = index.parse().ok()?;
    let mut plan: Value = serde_json::from_str(text).ok()?;
    let list = match list {
        "line.features" => &mut plan["line"]["features"],
        "seen" => &mut plan["seen"],
        _ => return None,
    };
    Some(list[index].take())
}

/// Reads a feature or observation once more as its own kind, to find the path inside it.
fn fault_inside(path: &str, mut choice: Value) -> Option<Fault> {
    let kind = choice.as_object_mut()?.remove("kind");
    match kind?.as_str()? {
        "start_ramp" => probe::<StartRamp>(path, choice),
        "flat" => probe::<Flat>(path, choice),
        "roller" => probe::<Roller>(path, choice),
        "jump" => probe::<Jump>(path, choice),
        "turn" => probe::<Turn>(path, choice),
        "run_out" => probe::<RunOut>(path, choice),
        "time" => probe::<Timed>(path, choice),
        "speed" => probe::<Clocked>(path, choice),
        "landed" => probe::<Landed>(path, choice),
        "stopped" => probe::<Stopped>(path, choice),
        _ => None,
    }
}

fn probe<T: DeserializeOwned>(path: &str, choice: Value) -> Option<Fault> {
    let error = serde_path_to_error::deserialize::<_, T>(choice).err()?;
    let inside = match error.path().to_string().as_str() {
        "." => path.to_owned(),
        inner => format!("{path}.{inner}"),
    };
    Some(told(&inside, error.inner()))
}
