//! From a plan to what is bought, cut, heaped and staked: plain functions of plan and profile.
//!
//! Nothing here rides. x runs forward along the line, z up, y to the rider's left; metres, kilograms, newtons.
//! Nothing here is a permit or an engineer's word: every sheet says what it defers to.

pub mod cutting;
pub mod dirt;
pub mod dropping;
pub mod haul;
pub mod heap;
pub mod job;
pub mod labour;
pub mod lip;
pub mod loads;
pub mod logs;
pub mod materials;
pub mod nest;
pub mod outline;
pub mod packing;
pub mod piece;
pub mod ramp;
pub mod softwood;
pub mod soil;
pub mod stakes;
pub mod supplies;
pub mod tiling;
pub mod upkeep;
pub mod walls;
mod width;
