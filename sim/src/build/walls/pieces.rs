//! What is cut for a box or a ramp, piece by piece.

use crate::build::piece;
use serde::Serialize;

/// What a piece is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// A board of the sheeting.
    Sheeting,
    /// A post, the part in the ground counted.
    Post,
    /// A timber across a corner, from one wall to the other.
    CornerTie,
    /// A rod from one side wall to the other.
    CrossTie,
    /// A rod from the front wall to the timber that is buried behind it.
    AnchorTie,
    /// A timber buried in the fill.
    Deadman,
    /// A post that keeps the buried timbers on top of each other.
    DeadmanUpright,
    /// A board that is ridden or walked on.
    Deck,
    /// A straight joist under the deck.
    Joist,
    /// A joist sawn to the curve; the width is what it is sawn from.
    Rib,
    /// A beam across, on the posts.
    Bearer,
    /// A brace, corner to corner.
    Brace,
    /// A rail at a side.
    Rail,
    /// A post that holds rails.
    RailPost,
    /// An upright between rails, so close that no child gets through.
    Baluster,
    /// A side or middle of a stair.
    Stringer,
}

/// Pieces of a box or a ramp that are all alike.
pub type Piece = piece::Piece<Kind>;

/// Lengths that differ by less are cut alike, m.
const ALIKE: f64 = 0.005;

/// A list that counts pieces that are alike together.
#[derive(Default)]
pub(in crate::build) struct List(pub Vec<Piece>);

impl List {
    /// Adds pieces; none of no length.
    pub fn add(&mut self, kind: Kind, section: [f64; 2], length: f64, count: u32) {
        if count == 0 || length < ALIKE {
            return;
        }
        let alike = |p: &&mut Piece| {
            p.kind == kind && p.section == section && (p.length - length).abs() < ALIKE
        };
        if let Some(known) = self.0.iter_mut().find(alike) {
            known.count += count;
        } else {
            self.0.push(Piece {
                kind,
                section,
                length,
                count,
            });
        }
    }
}
