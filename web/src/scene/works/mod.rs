//! Drawings to build by: of the line, of lips, boxes and ramps, as on a builder's sketch, for paper.
//!
//! No words stand on them, only figures and the letters of parts, whose meaning stands at each drawing. They are
//! [`WIDE`] px wide and as high as they need; those in full size are as large as they are.

mod built;
mod cutting;
mod lip;
mod lip_shape;
mod measure;
mod mounds;
mod panels;
mod plate;
mod ramp;
mod ramp_notes;
mod ramp_shape;
mod reader;
mod rows;
mod section;
mod shapes;
mod string;
mod tile;
mod walls;
mod walls_notes;
mod walls_shape;

pub use built::built;
pub use cutting::cutting;
pub use lip::lip;
pub use mounds::mounds;
pub use panels::panels;
pub use plate::{Plate, WIDE};
pub use ramp::ramp;
pub use reader::Reader;
pub use section::{parts, section};
pub use tile::{curve, tile};
pub use walls::walls;
