//! Checks that cross crates, and what they share.

pub mod plans;
