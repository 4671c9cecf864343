//! The rider, judged over lines and riders drawn from seeds.
//!
//! Start ramps 2.2 to 3.6 m high, up to four rollers, one to three jumps (gaps, decks, steps up and
//! down, spines) with lips of 0.35 to 0.8 m on circles of 1.8 to 4 m, some with a straight last
//! stretch, on ground that falls up to 4 %; children of 6, 10 and 14 and an adult on wheels that fit,
//! who soak up or pump with skills of 0.3 to 1. Jumps are fitted to the rider's own speed, by a
//! ballistic estimate or by riding. Two thirds of the seeds are for tuning, the rest for judging.

pub mod calm;
pub mod cleared;
pub mod draw;
pub mod estimate;
pub mod figures;
pub mod flight;
pub mod floors;
pub mod landed;
pub mod landing;
pub mod optimum;
pub mod order;
pub mod place;
pub mod riders;
pub mod rollers;
pub mod seeds;
pub mod tall;
pub mod track;
