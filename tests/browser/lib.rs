//! Opens the served page in real browsers.

mod child;
mod drivers;
mod engine;
mod ground;
mod host;
mod page;

pub use engine::Engine;
pub use ground::{ENGLISH, Ground, Screen, Visit, cargo};
pub use host::Host;
pub use page::{Page, shades};
