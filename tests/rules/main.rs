//! The repository keeps its own rules.

mod arrows;
mod circles;
mod docs;
mod format;
mod packages;
mod tree;
