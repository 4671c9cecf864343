//! Opens the served page in real browsers.

mod capabilities;
mod child;
mod drivers;
mod engine;
mod ground;
mod host;
mod page;
mod screen;
mod shades;
mod visit;
mod work;

pub use engine::Engine;
pub use ground::{Ground, cargo};
pub use host::Host;
pub use page::Page;
pub use screen::Screen;
pub use shades::shades;
pub use visit::{ENGLISH, Visit};
pub use work::{Gauge, SLOWER, Since, Task, Work};
