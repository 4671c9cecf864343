mod fields;
mod json;

use super::*;

/// A plan in which every field of every type is written out, optional ones too.
const EVERYTHING: &str = include_str!("everything.json");

const SURVEYED_LINE: &str = include_str!("../../../plans/surveyed_line.json");
