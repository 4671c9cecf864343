//! The simulator in the browser.
