//! The host program: what `cargo run` does.

pub mod args;
pub mod assets;
mod join;
mod layout;
mod limits;
mod packed;
pub mod serve;
pub mod site;
