//! The host program: what `cargo run` does.

pub mod args;
pub mod assets;
pub mod serve;
pub mod site;
