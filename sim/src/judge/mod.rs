//! What a ride means to a builder: each jump told in the trade's words.

mod jump;
mod spread;

pub use jump::{How, JumpRow, jumps};
pub use spread::{Spread, spreads};
