//! A seeded family of lines that nobody tuned on.
//!
//! Start ramps, none to three rollers, one to three jumps with lips 0.3 to 1.2 m high on circles of
//! 1.8 to 4 m and landings of 18° to 35°; children of 6, 10 and 14 and an adult on fitting wheels.
//! Each gap is placed by a ballistic estimate from the speed and direction that the model itself has
//! at the edge, so that the rear wheel comes down 0.3 to 1 m past the knuckle. Even seeds are for
//! tuning, odd ones for judging.

mod line;
mod place;
pub use crate::rider::{riders, rollers};
mod score;

pub use line::{Member, member};
pub use place::{Estimate, Left};
pub use score::{How, Score, Tally, score, tally};
