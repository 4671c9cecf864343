//! What is written on the drawing, in the reader's words and units.

use super::sheet::Label;
use serde::Deserialize;

/// The texts, as the page supplies them.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Labels {
    features: Vec<String>,
    speeds: Vec<String>,
    ranges: Vec<String>,
    dimensions: Vec<String>,
    unit: String,
    energy: String,
}

/// Width of a letter of a plain sans-serif, in heights of its type: ample, so that what is said
/// to fit does.
const LETTER: f64 = 0.6;

impl Labels {
    /// The text of a label; empty where there is none.
    pub fn text(&self, label: Label) -> &str {
        let text = match label {
            Label::Feature(i) => self.features.get(i),
            Label::Speed(i) => self.speeds.get(i),
            Label::Range(i) => self.ranges.get(i),
            Label::Dimension(i) => self.dimensions.get(i),
            Label::Unit => Some(&self.unit),
            Label::Energy => Some(&self.energy),
        };
        text.map_or("", String::as_str)
    }

    /// Whether a label goes into `room` px in type of some size, px.
    pub fn fits(&self, label: Label, size: f64, room: f64) -> bool {
        self.text(label).chars().count() as f64 * LETTER * size < room
    }
}
