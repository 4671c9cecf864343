//! Pieces of timber and of sheets as they are cut: what a list of materials is made of.

use serde::Serialize;

/// What a piece of a lip's timber is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PieceKind {
    /// Between two side panels, under the deck.
    Rib,
    /// Between two side panels, on the ground.
    Tie,
    /// Across the deck.
    DeckBoard,
    /// A deck board to be ripped to what is left of the length; its section is as bought.
    RippedDeckBoard,
    /// Upright against a side panel.
    Leg,
    /// Slanting from leg to leg.
    Brace,
}

/// Pieces that are all alike; `K` tells what they are for.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Piece<K = PieceKind> {
    /// What they are for.
    pub kind: K,
    /// Thickness and width, m; the diameter twice where it is a rod.
    pub section: [f64; 2],
    /// Length, m.
    pub length: f64,
    /// How many.
    pub count: u32,
}

impl<K> Piece<K> {
    /// Volume of all of them, m³.
    pub fn volume(&self) -> f64 {
        self.section[0] * self.section[1] * self.length * f64::from(self.count)
    }
}

/// What a piece of sheet is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum SheetKind {
    /// A side panel, or a part of one.
    Panel,
    /// A part of a bent skin.
    Skin,
}

/// Pieces of sheet that are all alike.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SheetPiece {
    /// What they are for.
    pub kind: SheetKind,
    /// Thickness, m.
    pub thickness: f64,
    /// Length and width of the rectangle it is cut from, m; of a bent skin, along the arc and across the lip.
    pub size: [f64; 2],
    /// How much of that rectangle one of them is, m².
    pub area: f64,
    /// How many.
    pub count: u32,
}

impl SheetPiece {
    /// Volume of all of them, m³.
    pub fn volume(&self) -> f64 {
        self.area * self.thickness * f64::from(self.count)
    }
}
