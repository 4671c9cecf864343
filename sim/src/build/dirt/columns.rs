//! What stands under each part of a feature: dirt up to the ride, or open room.

use super::bed;
use super::section::Section;
use crate::build::width::{self, Widths};
use crate::plan::{Feature, Jump, Line, Plan, Surface};
use crate::profile::{LipEdge, Piece, Profile, Span};

/// Ends of stretches differ by rounding only, m.
const JOINT: f64 = 1e-6;

/// What a piece of the profile rests on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Column<'a> {
    /// Dirt right up to the ride.
    Solid(&'a Piece, Section),
    /// Nothing but the bed, from one station to another.
    Open([f64; 2]),
}

/// A column with the feature that it belongs to.
pub(super) struct Part<'a> {
    pub feature: usize,
    pub column: Column<'a>,
}

/// The parts of a line in riding order. A surveyed line is dirt all along.
pub(super) fn parts<'a>(plan: &Plan, profile: &'a Profile, slope: f64) -> Vec<Part<'a>> {
    let level = |p: &&Piece| p.end.x > p.start.x;
    let Line::Features(features) = &plan.line else {
        let section = Section::sloped(plan.width, slope);
        let solid = |piece| Part {
            feature: 0,
            column: Column::Solid(piece, section),
        };
        return profile.pieces.iter().filter(level).map(solid).collect();
    };
    let mut parts = Vec::new();
    for (span, feature) in profile.spans.iter().zip(features) {
        let widths = width::of(plan, span.feature);
        let lip = profile.lips.iter().find(|l| l.feature == span.feature);
        let on = Standing {
            feature,
            lip,
            widths,
            slope,
            bed: bed::under(profile, span),
        };
        for piece in within(profile, span).filter(level) {
            let column = on.column(piece);
            let feature = span.feature;
            parts.push(Part { feature, column });
        }
    }
    parts
}

/// The pieces of a feature.
pub(in crate::build) fn within<'a>(
    profile: &'a Profile,
    span: &Span,
) -> impl Iterator<Item = &'a Piece> {
    let [from, to] = [span.from.x - JOINT, span.to.x + JOINT];
    let pieces = profile.pieces.iter();
    pieces.filter(move |p| p.start.x >= from && p.end.x <= to)
}

struct Standing<'a> {
    feature: &'a Feature,
    lip: Option<&'a LipEdge>,
    widths: Widths,
    slope: f64,
    bed: f64,
}

impl Standing<'_> {
    fn column<'p>(&self, piece: &'p Piece) -> Column<'p> {
        let open = Column::Open([piece.start.x, piece.end.x]);
        let wood = piece.character.surface == Surface::Wood;
        let first = Section::sloped(self.widths.first, self.slope);
        let (Feature::Jump(jump), Some(lip)) = (self.feature, self.lip) else {
            return if wood {
                open
            } else {
                Column::Solid(piece, first)
            };
        };
        if piece.start.x >= lip.knuckle.x - JOINT {
            return Column::Solid(piece, self.landing(jump, wood));
        }
        let on_lip = piece.end.x <= lip.edge.x + JOINT;
        // What closes the gap of a lip of dirt is dirt, too: a tabletop.
        if !wood && (on_lip || jump.decked) {
            Column::Solid(piece, first)
        } else {
            open
        }
    }

    /// A landing comes down from its bed: where it is of wood, the dirt under it is no higher than the bed.
    fn landing(&self, jump: &Jump, wood: bool) -> Section {
        let section = Section::sloped(self.widths.landing, self.slope);
        if wood {
            Section {
                most: self.bed,
                ..section
            }
        } else if jump.landing.boxed {
            Section {
                walled_from: self.bed,
                ..section
            }
        } else {
            section
        }
    }
}
