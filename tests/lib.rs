//! Checks that cross crates, and what they share.

pub mod bare;
pub mod checks;
pub mod curve;
pub mod family;
pub mod forms;
pub mod golden;
pub mod lines;
pub mod plans;
pub mod rider;
pub mod rigid;
pub mod trace;
pub mod wild;

use std::path::{Path, PathBuf};

/// Where the repository is.
pub fn repository() -> PathBuf {
    let tests = Path::new(env!("CARGO_MANIFEST_DIR"));
    tests.parent().unwrap_or(tests).to_owned()
}
