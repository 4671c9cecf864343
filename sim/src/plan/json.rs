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
    match kind?.as_str()? {
        "start_ramp" => probe::<StartRamp>(path, feature),
        "flat" => probe::<Flat>(path, feature),
        "roller" => probe::<Roller>(path, feature),
        "jump" => probe::<Jump>(path, feature),
        "turn" => probe::<Turn>(path, feature),
        "run_out" => probe::<RunOut>(path, feature),
        _ => None,
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
