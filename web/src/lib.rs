//! The simulator in the browser.

pub mod scene;
