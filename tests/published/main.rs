//! The model against formulas and figures that others have published.
//!
//! Each check names its source. Where a formula speaks of a point or a rigid body, the ride is
//! brought as near to it as it goes: losses off, a passive rider, ground that bends little.

mod arcs;
mod coasting;
mod figures;
mod flight;
mod rig;
