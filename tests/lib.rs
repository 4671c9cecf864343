//! Checks that cross crates.

pub mod family;
