//! What a ride means to a builder: each jump told in the trade's words.

mod jump;

pub use jump::{How, JumpRow, jumps};
