//! Plan files: reading one, with a fault that names the field, and writing one.

use super::{Feature, Observation, Plan};
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

// By hand, both: the kind has to be known before the other fields can be read, and may come last. The
// derived reader would have a second way into every kind, and lose sight of the path inside it.

impl<'de> Deserialize<'de> for Feature {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        let document = Document::deserialize(reader)?;
        feature(document).map_err(D::Error::custom)
    }
}

fn feature(document: Document) -> Result<Feature, Trouble> {
    let (kind, fields) = document.kind("a feature")?;
    match kind.as_str() {
        "start_ramp" => Deserialize::deserialize(fields).map(Feature::StartRamp),
        "flat" => Deserialize::deserialize(fields).map(Feature::Flat),
        "roller" => Deserialize::deserialize(fields).map(Feature::Roller),
        "jump" => Deserialize::deserialize(fields).map(Feature::Jump),
        "turn" => Deserialize::deserialize(fields).map(Feature::Turn),
        "run_out" => Deserialize::deserialize(fields).map(Feature::RunOut),
        other => {
            const KINDS: [&str; 6] = ["start_ramp", "flat", "roller", "jump", "turn", "run_out"];
            Err(Trouble::unknown_variant(other, &KINDS).inside("kind"))
        }
    }
}

impl<'de> Deserialize<'de> for Observation {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        let document = Document::deserialize(reader)?;
        observation(document).map_err(D::Error::custom)
    }
}

fn observation(document: Document) -> Result<Observation, Trouble> {
    let (kind, fields) = document.kind("an observation")?;
    match kind.as_str() {
        "time" => Deserialize::deserialize(fields).map(Observation::Time),
        "speed" => Deserialize::deserialize(fields).map(Observation::Speed),
        "landed" => Deserialize::deserialize(fields).map(Observation::Landed),
        "stopped" => Deserialize::deserialize(fields).map(Observation::Stopped),
        other => {
            const KINDS: [&str; 4] = ["time", "speed", "landed", "stopped"];
            Err(Trouble::unknown_variant(other, &KINDS).inside("kind"))
        }
    }
}
