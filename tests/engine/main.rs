//! The ride against a general-purpose rigid-body engine, `rapier2d-f64`.
//!
//! The engine is judged first, by closed forms on ground without losses: what it is a reference for
//! is measured and stated, setting by setting, and the test fails when what is stated is no longer
//! what is measured. Only where it is a reference is the ride compared with it; elsewhere the
//! tables say so.

mod bike;
mod closed;
mod duel;
mod ground;
mod settings;
mod table;
mod world;
