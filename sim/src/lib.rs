//! Rides a rigid-body rider and bike down a planned jump line.

pub mod constants;
pub mod error;
pub mod judge;
pub mod link;
pub mod num;
pub mod plan;
pub mod profile;
pub mod ride;
pub mod setup;
pub mod units;
