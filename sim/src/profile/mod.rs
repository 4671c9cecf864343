//! The side view of a line: the ground as a chain of straight and circular pieces.
//!
//! x runs forward along the line, z up, metres; headings in radians, counted upward from level.
//! The air is on the left of the chain as it is walked. Vertical faces are pieces like any other.

mod build;
mod flat;
mod ground;
mod jump;
mod landing;
mod lip;
mod names;
mod pen;
mod piece;
mod query;
mod roller;
mod stand;
mod start_ramp;
mod stretch;
mod surveyed;
#[cfg(test)]
mod tests;
mod under;
mod width;

pub use piece::{Closest, Piece, direction};
pub use query::Spot;
pub use under::Under;

use crate::plan::{Surface, USUAL_WIDTH};
use glam::DVec2;
use serde::Serialize;

/// What a piece of ground asks of whoever rides it. The rider needs no feature names.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Intent {
    /// Ride on over it.
    Roll,
    /// Ride it out to its edge and leave.
    Launch,
    /// Nothing to ride: a face, or the floor or deck of a gap.
    Clear,
    /// Come down on it.
    Land,
    /// Brake.
    Brake,
}

/// The edge of a lip and the landing that belongs to it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct LipEdge {
    /// Index of the feature in the plan's line; 0 on a surveyed line.
    pub feature: usize,
    /// The edge.
    pub edge: DVec2,
    /// Heading of the surface at the edge, rad.
    pub exit: f64,
    /// Where the lip begins to rise.
    pub foot: DVec2,
    /// The knuckle: top of the landing's face.
    pub knuckle: DVec2,
    /// Heading of the landing's straight slope, rad; negative downward.
    pub slope: f64,
    /// End of the straight slope.
    pub slope_end: DVec2,
    /// End of the hollow behind it.
    pub landing_end: DVec2,
}

/// The stretch of ground that one feature takes.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Span {
    /// Index of the feature in the plan's line.
    pub feature: usize,
    /// Its name on the page: "Start ramp", "Roller 2", "Jump 1".
    pub name: String,
    /// Where it begins.
    pub from: DVec2,
    /// Where it ends.
    pub to: DVec2,
}

/// The ground that is ridden.
#[derive(Clone, Debug, Serialize)]
pub struct Profile {
    /// The chain, in riding order; each piece begins where the one before ends.
    pub pieces: Vec<Piece>,
    /// The lips, in riding order.
    pub lips: Vec<LipEdge>,
    /// The features, in riding order; empty on a surveyed line.
    pub spans: Vec<Span>,
    /// The yard before anything was dug, as points along the line.
    pub yard: Vec<DVec2>,
}

/// Surface, intent and turn of a piece.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Character {
    /// What it is made of.
    pub surface: Surface,
    /// What it asks of the rider.
    pub intent: Intent,
    /// Curvature of the turn it is part of, seen from above, 1/m; 0 where the line is straight.
    pub turn: f64,
    /// How wide it is, m.
    pub width: f64,
}

impl Character {
    /// Not part of a turn, and as wide as a line usually is.
    pub(crate) fn new(surface: Surface, intent: Intent) -> Self {
        Self {
            surface,
            intent,
            turn: 0.0,
            width: USUAL_WIDTH,
        }
    }
}
