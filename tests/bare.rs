//! Bare ground, made of pieces without a plan.

use glam::DVec2;
use sim::plan::Surface;
use sim::profile::{Character, Intent, Piece, Profile};

/// A piece of ground: length, m, and curvature, 1/m.
pub type Bend = (f64, f64);

/// Ground that begins at the origin with a heading in radians; a bend with a heading of its own
/// begins a corner.
pub fn ground(heading: f64, bends: &[Bend]) -> Profile {
    let mut profile = Profile {
        pieces: Vec::new(),
        lips: Vec::new(),
        spans: Vec::new(),
        yard: Vec::new(),
    };
    add(&mut profile, heading, bends);
    profile
}

/// Adds pieces that begin with a heading where the ground ends.
pub fn add(profile: &mut Profile, mut heading: f64, bends: &[Bend]) {
    let character = Character {
        surface: Surface::Packed,
        intent: Intent::Roll,
        turn: 0.0,
        width: sim::plan::USUAL_WIDTH,
    };
    let last = profile.pieces.last();
    let (mut start, mut before) = last.map_or((DVec2::ZERO, 0.0), |p| (p.end, p.before + p.length));
    for &(length, curvature) in bends {
        let piece = Piece::new(start, heading, length, curvature, before, character);
        (start, heading, before) = (piece.end, piece.end_heading(), before + length);
        profile.pieces.push(piece);
    }
}
