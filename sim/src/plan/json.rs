//! Plan files: reading one, with a fault that names the field, and writing one.

use super::{Flat, Jump, Plan, Roller, RunOut, StartRamp, Turn};
use crate::error::{Fault, Quantity};
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
            let feature = feature_at(text, &path);
            let inside = feature.and_then(|f| fault_inside(&path, f));
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
    let mut why = error.to_string().replace(" f64", " a number");
    let mut field = path.to_owned();
    if error.is_data() {
        // The path says where; the line and column that follow the reason say it again.
        why.truncate(why.rfind(" at line ").unwrap_or(why.len()));
        if let Some(name) = why.strip_prefix("missing field `") {
            field = format!("{path}.{}", name.trim_end_matches('`'));
        }
    } else {
        why = format!("this is not JSON: {why}");
        field.clear();
    }
    let field = field.trim_start_matches('.');
    unreadable(if field.is_empty() { "plan" } else { field }, &why)
}

/// The feature a path ends at. Its kind has to be known before its fields can be read, so the
/// reader collects a whole feature first and loses sight of the path inside it.
fn feature_at(text: &str, path: &str) -> Option<Value> {
    let index = path.strip_prefix("line.features[")?.strip_suffix(']')?;
    let index: usize = index.parse().ok()?;
    let mut plan: Value = serde_json::from_str(text).ok()?;
    Some(plan["line"]["features"][index].take())
}

/// Reads a feature once more as its own kind, to find the path inside it.
fn fault_inside(path: &str, mut feature: Value) -> Option<Fault> {
    let kind = feature.as_object_mut()?.remove("kind");
    let at = format!("{path}.kind");
    let Some(Value::String(kind)) = kind else {
        return Some(unreadable(
            &at,
            "the kind of feature is missing or not a text",
        ));
    };
    match kind.as_str() {
        "start_ramp" => probe::<StartRamp>(path, feature),
        "flat" => probe::<Flat>(path, feature),
        "roller" => probe::<Roller>(path, feature),
        "jump" => probe::<Jump>(path, feature),
        "turn" => probe::<Turn>(path, feature),
        "run_out" => probe::<RunOut>(path, feature),
        _ => Some(unreadable(&at, "there is no such kind of feature")),
    }
}

fn probe<T: DeserializeOwned>(path: &str, feature: Value) -> Option<Fault> {
    let error = serde_path_to_error::deserialize::<_, T>(feature).err()?;
    let inside = match error.path().to_string().as_str() {
        "." => path.to_owned(),
        inner => format!("{path}.{inner}"),
    };
    Some(told(&inside, error.inner()))
}

fn unreadable(field: &str, why: &str) -> Fault {
    Fault {
        field: field.to_owned(),
        given: None,
        least: None,
        most: None,
        quantity: Quantity::Text,
        why: why.to_owned(),
    }
}
