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
    ghosts: Vec<String>,
    #[serde(default)]
    others: Vec<String>,
    /// The name of the line, where it is a picture by itself.
    #[serde(skip)]
    pub(super) title: String,
    /// What stands round such a picture, line by line.
    #[serde(skip)]
    pub(super) captions: Vec<String>,
}

/// Width of a letter of a plain sans-serif, in heights of its type: ample, so that what is said
/// to fit does.
const LETTER: f64 = 0.6;

/// Width of a letter of the scripts of East Asia, in heights of its type.
const SQUARE: f64 = 1.0;

/// Where those scripts begin in Unicode.
const FIRST_SQUARE: char = '\u{2e80}';

/// Ample width of a text in type of some size, px.
pub fn width(text: &str, size: f64) -> f64 {
    let letter = |c| if c < FIRST_SQUARE { LETTER } else { SQUARE };
    text.chars().map(letter).sum::<f64>() * size
}

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
            Label::Ghost(i) => self.ghosts.get(i),
            Label::Other(i) => self.others.get(i),
            Label::Title => Some(&self.title),
            Label::Caption(i) => self.captions.get(i),
        };
        text.map_or("", String::as_str)
    }

    /// Writes other figures at the measures of the chosen feature.
    pub fn measure(&mut self, figures: Vec<String>) {
        self.dimensions = figures;
    }

    /// Whether a label goes into `room` px in type of some size, px.
    pub fn fits(&self, label: Label, size: f64, room: f64) -> bool {
        width(self.text(label), size) < room
    }
}
