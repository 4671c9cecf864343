//! What a ride means to a builder: each jump told in the trade's words.

mod change;
mod cost;
mod dug;
mod feel;
mod impact;
mod jump;
mod rollers;
mod spread;
mod stop;
mod suggest;
mod test_day;
mod tolerance;
mod what_ifs;
mod window;

pub use cost::{Cost, costs};
pub use dug::Dimension;
pub use feel::{Felt, felt, over};
pub use impact::{Impact, impacts};
pub use jump::{How, JumpRow, jumps};
pub use rollers::{Toll, tolls};
pub use spread::{Spread, spreads};
pub use stop::{Ending, ending, missing, stands};
pub use suggest::{Lever, Suggestion, suggestions};
pub use test_day::{Stops, TestDay, Trial, test_day};
pub use tolerance::{Limit, Tolerance, tolerances};
pub use what_ifs::{DRAG, ROLLING, SKILL, START, Unknown};
pub use window::{Window, windows};
