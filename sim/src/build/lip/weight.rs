//! What a lip weighs, and who can move it.

use super::super::piece::{Piece, SheetPiece};
use super::stock::Stock;
use crate::num;
use serde::Serialize;

/// Screws and fittings as a share of the wood's weight (common practice, no source).
const FASTENERS: f64 = 0.03;

/// Moisture at which densities are told, as a share of dry wood: EN 338 and EN 323 condition at 20 °C and 65 % of
/// relative humidity, about 12 %.
const DRY: f64 = 0.12;

/// Moisture of wood that rain has soaked: the fibre saturation point, about 30 % on average (Forest Products
/// Laboratory, Wood Handbook, ch. 4). In puddles it takes up still more.
const SOAKED: f64 = 0.30;

/// What two and three people can lift together, as a share of the sum of what each can lift: Health and Safety
/// Executive, Manual handling (L23), guidance on team handling. Less where the ground slopes.
const TEAM: [f64; 2] = [2.0 / 3.0, 1.0 / 2.0];

/// A lip's weight and what becomes of it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Weight {
    /// Timber, plywood and fasteners of one lip, dry, kg.
    pub dry: f64,
    /// The same after rain, kg.
    pub soaked: f64,
    /// What two people may lift together, kg, by the guideline.
    pub two: f64,
    /// What three may, the third like the stronger of the two, kg.
    pub three: f64,
    /// Who can move it after rain.
    pub movers: Movers,
}

/// Who can move a lip.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Movers {
    /// Two people.
    Two,
    /// Three people.
    Three,
    /// It is built where it stands, or taken there in parts.
    InParts,
}

impl Weight {
    /// Of so many lips together that are alike, one.
    pub(super) fn of(pieces: &[Piece], sheets: &[SheetPiece], lips: u32, stock: &Stock) -> Self {
        let timber: f64 = pieces.iter().map(Piece::volume).sum();
        let plywood: f64 = sheets.iter().map(SheetPiece::volume).sum();
        let wood = (timber * stock.timber + plywood * stock.plywood) / f64::from(lips);
        let fasteners = wood * FASTENERS;
        let soaked = wood * (1.0 + SOAKED) / (1.0 + DRY) + fasteners;
        let [a, b] = stock.lifters;
        let two = TEAM[0] * (a + b);
        let three = TEAM[1] * (a + b + num::max(a, b));
        Self {
            dry: wood + fasteners,
            soaked,
            two,
            three,
            movers: match soaked {
                kg if kg <= two => Movers::Two,
                kg if kg <= three => Movers::Three,
                _ => Movers::InParts,
            },
        }
    }
}
