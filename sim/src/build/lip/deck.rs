//! What is ridden on: boards across the lip, or a bent skin of plywood.

use super::super::packing::{Blank, Packing, pack};
use super::super::piece::{Piece, PieceKind, SheetKind, SheetPiece};
use super::bending::{Bend, Grain};
use super::stock::Stock;
use crate::num;
use serde::Serialize;

/// A rest shorter than this is made up by the gaps, m: a saw's line on each board.
const NOTHING: f64 = 0.003;

/// Boards across the lip.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Boards {
    /// How many, the ripped one included.
    pub count: u32,
    /// Width of the board that is ripped, m; none where whole boards come out even. It goes to the foot.
    pub ripped: Option<f64>,
    /// How far the curve lies below the middle of a flat board, m.
    pub hollow: f64,
}

/// A skin of bent plywood, in layers.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Skin {
    /// The plywood and how it lies.
    pub bend: Bend,
    /// Thickness of all layers, m.
    pub thickness: f64,
    /// Pieces of one layer, along the curve and across the lip.
    pub grid: [u32; 2],
    /// Length along the curve and width of a piece, m; narrower by a saw's cut where that saves a sheet.
    pub size: [f64; 2],
    /// How the pieces of all layers and lips are cut from sheets.
    pub layout: Packing,
}

/// What is ridden on.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Deck {
    /// Boards across the lip.
    Boards(Boards),
    /// Bent plywood.
    Skin(Skin),
}

/// What a deck covers: its length along the curve and its width, m, on so many lips.
#[derive(Clone, Copy)]
pub(super) struct Extent {
    pub length: f64,
    pub width: f64,
    pub lips: u32,
}

impl Boards {
    /// Boards over a length along a curve of some radius, m.
    pub(super) fn over(length: f64, radius: Option<f64>, stock: &Stock) -> Self {
        let [_, wide] = stock.board;
        let pitch = wide + stock.gap;
        let whole = ((length + stock.gap + NOTHING) / pitch).floor();
        let rest = length - whole * pitch;
        let ripped = (rest > NOTHING).then_some(rest);
        Self {
            count: whole as u32 + u32::from(ripped.is_some()),
            ripped,
            hollow: radius.map_or(0.0, |r| {
                r - num::max(0.0, r * r - 0.25 * wide * wide).sqrt()
            }),
        }
    }

    fn pieces(&self, extent: Extent, stock: &Stock) -> Vec<Piece> {
        let ripped = u32::from(self.ripped.is_some());
        let piece = |(kind, count)| Piece {
            kind,
            section: stock.board,
            length: extent.width,
            count: count * extent.lips,
        };
        let whole = (PieceKind::DeckBoard, self.count - ripped);
        let pieces = [whole, (PieceKind::RippedDeckBoard, ripped)].map(piece);
        pieces.into_iter().filter(|p| p.count > 0).collect()
    }
}

impl Skin {
    pub(super) fn over(extent: Extent, bend: Bend, stock: &Stock) -> Self {
        let [long, wide] = stock.sheet;
        let [most_along, most_across] = match bend.grain {
            Grain::Along => [long, wide],
            Grain::Across => [wide, long],
        };
        let parts = |length: f64, most: f64| (length / most - 1e-9).ceil() as u32;
        let grid = [
            parts(extent.length, most_along),
            parts(extent.width, most_across),
        ];
        let size = [
            extent.length / f64::from(grid[0]),
            extent.width / f64::from(grid[1]),
        ];
        let count = grid[0] * grid[1] * bend.layers * extent.lips;
        let cut = |size: [f64; 2]| {
            // On the sheet the grain runs along its length, and pieces keep to it.
            let size = match bend.grain {
                Grain::Along => size,
                Grain::Across => [size[1], size[0]],
            };
            let blank = Blank { size, turns: false };
            pack(&vec![blank; count as usize], stock.sheet, stock.kerf)
        };
        let exact = (cut(size), size);
        // Half a sheet is half a saw's cut short of half its length: a skin may be as much narrower than the lip.
        let narrow = [size[0], size[1] - stock.kerf];
        let narrow = (cut(narrow), narrow);
        let (layout, size) = if narrow.0.sheets.len() < exact.0.sheets.len() {
            narrow
        } else {
            exact
        };
        Self {
            bend,
            thickness: bend.thickness * f64::from(bend.layers),
            grid,
            size,
            layout,
        }
    }

    fn piece(&self, lips: u32) -> SheetPiece {
        SheetPiece {
            kind: SheetKind::Skin,
            thickness: self.bend.thickness,
            size: self.size,
            area: self.size[0] * self.size[1],
            count: self.grid[0] * self.grid[1] * self.bend.layers * lips,
        }
    }
}

impl Deck {
    /// Thickness under the riding surface, m.
    pub fn thickness(&self, stock: &Stock) -> f64 {
        match self {
            Deck::Boards(_) => stock.board[0],
            Deck::Skin(skin) => skin.thickness,
        }
    }

    /// Widest that it may reach from panel to panel, m: boards lie on the panels, a skin on ribs between them.
    pub(super) fn span(&self, stock: &Stock) -> f64 {
        match self {
            Deck::Boards(_) => stock.board_span,
            Deck::Skin(_) => stock.rib_span,
        }
    }

    /// The pieces of timber it takes.
    pub(super) fn pieces(&self, extent: Extent, stock: &Stock) -> Vec<Piece> {
        match self {
            Deck::Boards(boards) => boards.pieces(extent, stock),
            Deck::Skin(_) => Vec::new(),
        }
    }

    /// The pieces of sheet it takes.
    pub(super) fn sheets(&self, lips: u32) -> Vec<SheetPiece> {
        match self {
            Deck::Boards(_) => Vec::new(),
            Deck::Skin(skin) => vec![skin.piece(lips)],
        }
    }
}
