//! Plan files: reading one, with a fault that names the field, and writing one.

use super::{Feature, Observation, Plan};
use crate::error::Fault;
use crate::json::{self, kinds};

impl Plan {
    /// Reads a plan file. The plan still has to be validated.
    ///
    /// # Errors
    /// The first fault of the text: not JSON, a field of the wrong kind, unknown, missing or twice.
    pub fn from_json(text: &str) -> Result<Plan, Fault> {
        json::from_text(text)
    }

    /// The plan as a plan file.
    pub fn to_json(&self) -> String {
        serde_json::to_string_pretty(self).expect("plain data with text keys can be written")
    }
}

kinds!(Feature {
    "start_ramp": StartRamp,
    "flat": Flat,
    "roller": Roller,
    "jump": Jump,
    "turn": Turn,
    "run_out": RunOut,
});

kinds!(Observation {
    "time": Time,
    "speed": Speed,
    "landed": Landed,
    "stopped": Stopped,
});
