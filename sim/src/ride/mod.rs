//! The rigid-body model that rides the ground. It knows masses and a profile, no feature names.

mod run;

pub use run::{CrashKind, Event, EventKind, Outcome, Run, Sample, Wheel};
