//! Plan files: reading one, with a fault that names the field, and writing one.

use super::{Feature, Plan};
use crate::document::{Document, Trouble};
use crate::error::Fault;
use serde::de::Error;
use serde::{Deserialize, Deserializer};

impl Plan {
    /// Reads a plan file. The plan still has to be validated.
    ///
    /// # Errors
    /// The first fault of the text: not JSON, a field of the wrong type, unknown, missing or twice.
    pub fn from_json(text: &str) -> Result<Plan, Fault> {
        Document::from_json(text)?.read()
    }

    /// The plan as a plan file.
    pub fn to_json(&self) -> String {
        serde_json::to_string_pretty(self).expect("plain data with text keys can be written")
    }
}

/// The kinds of feature by their names in a plan file.
const KINDS: [&str; 6] = ["start_ramp", "flat", "roller", "jump", "turn", "run_out"];

// By hand, because the derived reader loses sight of the path inside a feature: the kind has to be known
// before the other fields can be read, and may come last.
impl<'de> Deserialize<'de> for Feature {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        let feature = match Document::deserialize(reader)? {
            Document::Fields(fields) => feature(fields),
            _ => Err(Trouble::custom("expected a feature")),
        };
        feature.map_err(D::Error::custom)
    }
}

fn feature(mut fields: Vec<(String, Document)>) -> Result<Feature, Trouble> {
    let at = fields.iter().position(|(name, _)| name == "kind");
    let at = at.ok_or_else(|| Trouble::missing_field("kind"))?;
    let kind = String::deserialize(fields.swap_remove(at).1);
    let kind = kind.map_err(|trouble| trouble.inside("kind"))?;
    let fields = Document::Fields(fields);
    match kind.as_str() {
        "start_ramp" => Deserialize::deserialize(fields).map(Feature::StartRamp),
        "flat" => Deserialize::deserialize(fields).map(Feature::Flat),
        "roller" => Deserialize::deserialize(fields).map(Feature::Roller),
        "jump" => Deserialize::deserialize(fields).map(Feature::Jump),
        "turn" => Deserialize::deserialize(fields).map(Feature::Turn),
        "run_out" => Deserialize::deserialize(fields).map(Feature::RunOut),
        other => Err(Trouble::unknown_variant(other, &KINDS).inside("kind")),
    }
}
