//! Opens the served page in real browsers.

mod child;
mod drivers;
mod engine;
mod ground;
mod page;

pub use engine::Engine;
pub use ground::{Ground, Screen, cargo};
pub use page::{Page, shades};
