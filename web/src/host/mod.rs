//! The host program: what `cargo run` does.

pub mod args;
pub mod assets;
mod join;
mod layout;
mod limits;
mod packed;
mod script;
pub mod serve;
pub mod site;
mod split;
