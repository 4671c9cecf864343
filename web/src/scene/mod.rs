//! What is drawn, as plain data: from the ground, the ride and a moment to marks on a sheet.
//!
//! Nothing here knows a canvas. World coordinates are metres, x forward and z up; the sheet's are
//! CSS pixels, x to the right and y down.

mod bike;
mod body;
mod camera;
mod dimensions;
mod earth;
mod energy;
mod figures;
mod flight;
mod grips;
mod labels;
mod land;
mod limb;
mod moment;
mod picture;
mod poster;
mod rode;
mod saddle;
mod seen;
mod sheet;
mod trail;
mod view;
mod wood;
#[cfg(any(feature = "shed", not(target_arch = "wasm32")))]
pub mod works;

pub use flight::flights;
pub use grips::{Grip, Part};
pub use labels::Labels;
pub use picture::{Beside, Picture};
pub use poster::{Caption, Poster};
pub use seen::Seen;
pub use sheet::{Align, Ink, Label, Mark, Sheet};
pub use view::{Strip, View};

#[cfg(test)]
mod made_up;
#[cfg(test)]
mod tests;
