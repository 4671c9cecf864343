//! What holds a lip's panels: ribs and ties between them, legs and braces.
//!
//! All panels stand in a row across the lip. Between each two of them is a bay; ribs and ties fill the bays, so
//! their length is the bay's clear width. A leg stands against each panel at its back, and where its parts meet.

use super::super::outline::Outline;
use super::super::piece::{Piece, PieceKind};
use super::deck::Deck;
use super::panels::{Panels, top};
use super::stock::Stock;
use super::template::Station;
use crate::num;
use serde::Serialize;

/// From this height on the back has two braces that cross, not one, m (common practice, no source).
const CROSSED: f64 = 0.6;

/// Legs that are alike.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Legs {
    /// Where along the ground line they stand, m.
    pub along: f64,
    /// Their height, from the ground line to the underside of a rib, m.
    pub height: f64,
    /// How many to a lip.
    pub count: u32,
}

/// The frame of one lip.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Frame {
    /// Panels side by side.
    pub panels: u32,
    /// Clear width between two of them, m: the length of ribs and ties.
    pub bay: f64,
    /// Ribs in a bay: one at each station where the panel is high enough for it.
    pub ribs: u32,
    /// Ties in a bay: one at the nose, and one at each row of legs.
    pub ties: u32,
    /// Legs, from the foot to the back; the last row stands below the edge.
    pub legs: Vec<Legs>,
    /// Length of a brace across the back, from foot to head of the outer legs, m.
    pub brace: f64,
    /// Braces across the back.
    pub braces: u32,
}

/// How many panels stand side by side under a deck of some width, m.
pub(super) fn panels_across(deck: &Deck, width: f64, stock: &Stock) -> u32 {
    let bays = ((width - stock.panel) / deck.span(stock) - 1e-9).ceil();
    num::max(1.0, bays) as u32 + 1
}

impl Frame {
    /// The frame of a lip of some width, m.
    pub(super) fn new(panels: &Panels, stations: &[Station], width: f64, stock: &Stock) -> Self {
        let count = panels.each;
        let [thick, _] = stock.rib;
        let clear = width - f64::from(count) * stock.panel;
        let standing = |s: &&Station| s.panel >= thick;
        let outline = &panels.outline;
        let back = back(outline);
        let mut legs: Vec<_> = panels
            .joints
            .iter()
            .map(|&along| (along, top(outline, along).unwrap_or(0.0)))
            .collect();
        legs.push((outline.edges[0].to.x, back));
        let legs = legs.into_iter().map(|(along, height)| Legs {
            along,
            height: height - thick,
            count,
        });
        let legs: Vec<_> = legs.filter(|l| l.height > thick).collect();
        let across = width - 2.0 * stock.panel;
        Self {
            panels: count,
            bay: clear / f64::from(count - 1),
            ribs: stations.iter().filter(standing).count() as u32,
            ties: 1 + legs.len() as u32,
            brace: num::hypot(across, num::max(0.0, back - thick)),
            braces: match back {
                b if b >= CROSSED => 2,
                _ => u32::from(!legs.is_empty()),
            },
            legs,
        }
    }

    /// The pieces of timber it takes, for so many lips.
    pub(super) fn pieces(&self, lips: u32, stock: &Stock) -> Vec<Piece> {
        let bays = self.panels - 1;
        let piece = |kind, section, length, count: u32| Piece {
            kind,
            section,
            length,
            count: count * lips,
        };
        let mut pieces = vec![
            piece(PieceKind::Rib, stock.rib, self.bay, self.ribs * bays),
            piece(PieceKind::Tie, stock.leg, self.bay, self.ties * bays),
        ];
        let legs = self.legs.iter();
        pieces.extend(legs.map(|l| piece(PieceKind::Leg, stock.leg, l.height, l.count)));
        pieces.push(piece(PieceKind::Brace, stock.leg, self.brace, self.braces));
        pieces.retain(|p| p.count > 0);
        pieces
    }
}

/// Length of a panel's back, plumb, m.
fn back(outline: &Outline) -> f64 {
    outline.edges[1].length()
}
