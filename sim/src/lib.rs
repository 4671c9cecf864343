//! Rides a rigid-body rider and bike down a planned jump line.
//!
//! A [`plan::Plan`] says what the builder wants: a yard, a line of features, who rides, the day. It
//! becomes a [`profile::Profile`], the side view as a chain of straight and circular pieces. The
//! [`ride`] knows only that ground and a [`ride::Mount`], masses and lengths: a bike with two
//! spinning wheels on elastic tyres, and a rider held to it by legs and arms, who sees what comes
//! and pushes. Nothing is scripted per feature; contact, flight and landing come out of the forces.
//! The [`judge`] says what a run means. [`presets`]
//! offer riders and bikes to start from. [`link`] packs a plan into a short text, and [`units`]
//! reads and writes quantities as builders say them.
//!
//! Nothing here knows of screens, files or clocks, and the same plan gives the same bits everywhere.
//!
//! ```
//! let plan = sim::plan::demo();
//! let ridden = sim::setup::ride_plan(&plan, 0).expect("the demonstration line is sound");
//! for jump in sim::judge::jumps(&ridden.profile, &ridden.run) {
//!     println!("{:.1} m/s at the lip: {:?}", jump.speed.unwrap_or(0.0), jump.how);
//! }
//! ```

mod body;
pub mod build;
pub mod constants;
pub mod draft;
pub mod error;
pub mod fit;
pub mod json;
pub mod judge;
pub mod limits;
pub mod link;
pub mod num;
pub mod plan;
pub mod presets;
pub mod profile;
pub mod ride;
mod rider;
pub mod setup;
pub mod units;
