//! A seeded family of lines that nobody tuned on.
//!
//! Start ramps, none to three rollers, one to three jumps with lips 0.3 to 1.2 m high on circles of
//! 1.8 to 4 m and landings of 18° to 35°; children of 6, 10 and 14 and an adult on fitting wheels.
//! Each gap is placed where a plain ballistic estimate, thrown from the edge with the speed and
//! direction the model itself has there, puts the rear wheel 0.3 to 1 m past the knuckle. Even
//! seeds are for tuning, odd ones for judging.

mod line;
pub mod riders;
pub mod rollers;
mod score;

pub use line::{Jumped, Member, member};
pub use score::{How, Score, score};
