//! The repository keeps its own rules.

mod arrows;
mod docs;
mod format;
mod tree;
