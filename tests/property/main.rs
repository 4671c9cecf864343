//! Laws that hold for every input, tried on random ones.

mod link;
mod plan;
mod units;
