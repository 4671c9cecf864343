//! The repository keeps its own rules.

mod arrows;
mod docs;
mod tree;
