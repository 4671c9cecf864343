//! Laws that hold for every input, tried on random ones.

mod laws;
mod link;
mod plan;
mod ridden;
mod units;
