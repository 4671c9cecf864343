//! Upkeep: where water stands, what a season of settling does, and what was built against what was planned.

mod compare;
mod drainage;
mod settling;

pub use compare::{Difference, compare, largest};
pub use drainage::{Low, Of, low_points};
pub use settling::{Placing, settled, settling};
