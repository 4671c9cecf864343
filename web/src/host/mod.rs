//! The host program: what `cargo run` does.

pub mod args;
pub mod assets;
mod limits;
pub mod serve;
pub mod site;
