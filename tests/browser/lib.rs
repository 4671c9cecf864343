//! Opens the served page in real browsers.

mod child;
mod ground;
mod page;

pub use ground::{Ground, Screen, cargo};
pub use page::Page;
