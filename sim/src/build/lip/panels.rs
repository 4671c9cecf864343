//! The side panels of a lip: their outline, and how it is cut from sheets.
//!
//! A panel's top is the riding curve less the deck's thickness, drawn with a string that is longer by as much.
//! It ends at its back plumb below the lip's edge, at its foot on the ground line, and in front where it would be
//! lower than the nose: from there forward the deck lies on packed dirt.

use super::super::nest::{Layout, lay};
use super::super::outline::{Edge, Line, Outline, height};
use super::super::piece::{SheetKind, SheetPiece};
use super::super::tiling::{Tiling, tile};
use super::stock::Stock;
use super::template::Drawn;
use crate::num;
use glam::DVec2;
use serde::Serialize;

/// Parts smaller than this are dust, m².
const DUST: f64 = 1e-6;

/// The side panels of a lip.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Panels {
    /// The outline, m: x along the ground line from the foot, y square to it.
    pub outline: Outline,
    /// Length of the string that draws its top, m, about the same centre as the riding curve; none where that is
    /// straight.
    pub string: Option<f64>,
    /// How many to a lip: two sides, and what stands between them under a wide deck. One half are mirrored.
    pub each: u32,
    /// What a panel is cut into where it is larger than a sheet, in its own place; else the panel itself.
    pub parts: Vec<Outline>,
    /// Where along the ground line parts meet, m: a leg stands behind each of these joints.
    pub joints: Vec<f64>,
    /// How all of them are cut from sheets.
    pub layout: Layout,
    /// The outline in full size on pages.
    pub tiling: Tiling,
}

/// The outline of a panel under a deck of some thickness; none where the lip is too low for
/// any, or for a rib at its back.
///
/// Its edges: the foot, the back, the top from back to front, and the front.
pub(super) fn outline(drawn: &Drawn, deck: f64, stock: &Stock) -> Option<Outline> {
    let edge = drawn.wood.last()?.to;
    let up = drawn.frame.up();
    let before_back = Line::at(edge, up.perp());
    let over_nose = Line::at(DVec2::new(0.0, stock.nose), DVec2::Y);
    let top = drawn.wood.iter().map(|e| lowered(e, deck));
    let top = top.filter_map(|e| e.inside(before_back)?.inside(over_nose));
    let top: Vec<_> = top.collect();
    let (front, back) = (top.first()?.from, top.last()?.to);
    let foot = DVec2::new(front.x, 0.0);
    let below_back = edge - up * (edge.y / up.y);
    let too_low = num::length(back - below_back) < stock.rib[0];
    if too_low || below_back.x <= foot.x {
        return None;
    }
    let mut edges = vec![
        Edge::straight(foot, below_back),
        Edge::straight(below_back, back),
    ];
    edges.extend(top.iter().rev().map(Edge::reversed));
    edges.push(Edge::straight(front, foot));
    Some(Outline { edges })
}

/// An edge of the riding curve moved down, square to itself.
pub(super) fn lowered(edge: &Edge, by: f64) -> Edge {
    let chord = edge.to - edge.from;
    let lower = |p: DVec2| match edge.centre {
        None => p - chord.normalize_or_zero().perp() * by,
        Some(c) => p + (p - c).normalize_or_zero() * by,
    };
    Edge {
        from: lower(edge.from),
        to: lower(edge.to),
        ..*edge
    }
}

impl Panels {
    /// The panels of so many lips that are alike.
    pub(super) fn new(outline: Outline, each: u32, lips: u32, at: &[f64], stock: &Stock) -> Self {
        let [long, wide] = stock.sheet;
        let cut = |cell| {
            let (parts, joints) = split(&outline, at, cell);
            let counted = parts.iter().map(|p| (p.clone(), each * lips));
            let counted: Vec<_> = counted.collect();
            (lay(&counted, stock.sheet, stock.kerf), parts, joints)
        };
        let mut best = cut([long, wide]);
        if best.1.len() > 1 {
            // Sheets lie along the lip, or stand upright where that takes fewer.
            let upright = cut([wide, long]);
            let cost = |way: &(Layout, Vec<Outline>, Vec<f64>)| (way.0.sheets.len(), way.1.len());
            if cost(&upright) < cost(&best) {
                best = upright;
            }
        }
        let (layout, parts, joints) = best;
        let radius = outline.edges.iter().find_map(Edge::radius);
        Self {
            string: radius,
            each,
            parts,
            joints,
            layout,
            tiling: tile(&outline, stock.paper),
            outline,
        }
    }

    /// The pieces of sheet they take, for so many lips.
    pub(super) fn sheets(&self, lips: u32, stock: &Stock) -> Vec<SheetPiece> {
        let piece = |part: &Outline| SheetPiece {
            kind: SheetKind::Panel,
            thickness: stock.panel,
            size: part.size().into(),
            area: part.area(),
            count: self.each * lips,
        };
        self.parts.iter().map(piece).collect()
    }
}

/// Height of a panel over the ground line at a place along it, m; none before its front and behind its top.
pub(super) fn top(outline: &Outline, along: f64) -> Option<f64> {
    let [_, _, top @ .., _] = outline.edges.as_slice() else {
        return None;
    };
    let chain: Vec<_> = top.iter().rev().map(Edge::reversed).collect();
    height(&chain, along)
}

/// An outline cut into parts that fit a cell of some length and height; where along it they meet.
///
/// Cuts square to the ground line fall on ribs, where there is one within reach; others lie along it, evenly.
fn split(outline: &Outline, ribs: &[f64], [long, high]: [f64; 2]) -> (Vec<Outline>, Vec<f64>) {
    let [low, top] = outline.bounds();
    let mut cuts = vec![low.x];
    let mut from = low.x;
    while top.x - from > long {
        let reached = ribs
            .iter()
            .copied()
            .filter(|r| *r > from && *r <= from + long);
        from = reached.fold(from, num::max);
        if from == cuts[cuts.len() - 1] {
            from += long;
        }
        cuts.push(from);
    }
    let rows = num::max(1.0, ((top.y - low.y) / high).ceil());
    let mut parts = Vec::new();
    for (i, x) in cuts.iter().enumerate() {
        let column = outline.clip(Line::at(DVec2::new(*x, 0.0), DVec2::X));
        let column = match cuts.get(i + 1) {
            Some(end) => column.clip(Line::at(DVec2::new(*end, 0.0), DVec2::NEG_X)),
            None => column,
        };
        for row in 0..rows as usize {
            let at = |n: usize| DVec2::new(0.0, low.y + (top.y - low.y) * n as f64 / rows);
            let part = column.clip(Line::at(at(row), DVec2::Y));
            let part = part.clip(Line::at(at(row + 1), DVec2::NEG_Y));
            if part.area() > DUST {
                parts.push(part);
            }
        }
    }
    (parts, cuts.split_off(1))
}
