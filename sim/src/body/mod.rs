//! Rider and bike as bodies: masses, lengths and coefficients, the tyres, the state in numbers.

mod mount;
mod state;
mod tyre;

pub use mount::{Legs, Mount};
pub use state::*;
pub use tyre::{Tyre, WheelForce};
