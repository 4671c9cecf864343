//! The sheet of each wooden lip: its template, what it is cut from, how it stands, what it weighs.
//!
//! A lip is a box: side panels with the curve on top, ribs between them, a deck along the curve, legs and braces
//! at the back. Lips of the same shape, on ground of the same slope, are one sheet.

mod bending;
mod deck;
mod frame;
mod panels;
mod stock;
mod template;
#[cfg(test)]
mod tests;
mod weight;

pub use bending::{Bend, Grain, least_radius};
pub use deck::{Boards, Deck, Skin};
pub use frame::{Frame, Legs};
pub use panels::Panels;
pub use stock::{DeckKind, Stock};
pub use template::{Place, Station, Stretch, Strung, Takeover, Template};
pub use weight::{Movers, Weight};

use super::cutting::{Cutting, cut};
use super::piece::{Piece, SheetPiece};
use crate::plan::{Feature, Line, Lip, Plan, Surface};
use crate::profile::Profile;
use deck::Extent;
use serde::Serialize;
use template::Drawn;

/// Ground lines whose headings differ by less, rad, are alike: a millimetre in ten metres.
const ALIKE: f64 = 1e-4;

/// An edge from this height on asks for ground that is soft to fall on, m: EN 1176-1, free height of fall.
const FALL: f64 = 0.6;

/// What has to be minded, besides what holds for every lip.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Caution {
    /// No plywood of the stock bends to this radius dry: the deck is of boards.
    TooTight,
    /// The edge is so high that a fall over its side hurts.
    HighEdge,
    /// Too heavy for three people to lift.
    Heavy,
    /// Too low for side panels: the deck lies on packed dirt.
    TooLow,
    /// Side panels are put together from parts.
    Joints,
    /// A part is larger than a sheet, or a piece longer than any board.
    OverStock,
}

/// The box of a lip: what carries its deck.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LipBox {
    /// The side panels.
    pub panels: Panels,
    /// What stands between and behind them.
    pub frame: Frame,
}

/// All that a carpenter needs for lips that are alike.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LipSheet {
    /// How many.
    pub count: u32,
    /// Indices of their features in the plan's line.
    pub features: Vec<usize>,
    /// Width, m.
    pub width: f64,
    /// The riding curve.
    pub template: Template,
    /// Every plywood of the stock, and whether it bends so far.
    pub bends: Vec<Bend>,
    /// What is ridden on.
    pub deck: Deck,
    /// What carries it; none where the lip is too low for that.
    pub lip_box: Option<LipBox>,
    /// Timber for all of them.
    pub pieces: Vec<Piece>,
    /// Plywood for all of them.
    pub sheets: Vec<SheetPiece>,
    /// How the timber is cut from boards.
    pub cutting: Vec<Cutting>,
    /// What one weighs.
    pub weight: Weight,
    /// What has to be minded.
    pub cautions: Vec<Caution>,
}

/// A lip as planned, with all that its shape hangs on.
struct Planned<'a> {
    lip: &'a Lip,
    width: f64,
    drawn: Drawn,
}

impl Planned<'_> {
    fn is_like(&self, other: &Self) -> bool {
        let plain = |lip: &Lip| Lip {
            width: None,
            ..lip.clone()
        };
        plain(self.lip) == plain(other.lip)
            && self.width == other.width
            && (self.drawn.frame.ground - other.drawn.frame.ground).abs() < ALIKE
    }
}

/// The sheets of all wooden lips of a plan, in riding order; none on a surveyed line.
pub fn lips(plan: &Plan, profile: &Profile, stock: &Stock) -> Vec<LipSheet> {
    let Line::Features(features) = &plan.line else {
        return Vec::new();
    };
    let mut kinds: Vec<(Planned, Vec<usize>)> = Vec::new();
    for ends in &profile.lips {
        let Some(Feature::Jump(jump)) = features.get(ends.feature) else {
            continue;
        };
        let lip = &jump.lip;
        let drawn = template::draw(lip, profile, ends);
        let Some(drawn) = drawn.filter(|_| lip.surface == Surface::Wood) else {
            continue;
        };
        let width = lip.width.unwrap_or(plan.width);
        let planned = Planned { lip, width, drawn };
        match kinds.iter_mut().find(|(known, _)| known.is_like(&planned)) {
            Some((_, all)) => all.push(ends.feature),
            None => kinds.push((planned, vec![ends.feature])),
        }
    }
    let sheets = kinds.into_iter();
    sheets
        .map(|(planned, all)| sheet(planned, all, stock))
        .collect()
}

fn sheet(planned: Planned, features: Vec<usize>, stock: &Stock) -> LipSheet {
    let Planned { drawn, width, .. } = planned;
    let count = features.len() as u32;
    let radius = drawn.wood.iter().find_map(|e| e.radius());
    let bends = bending::bends(radius, stock);
    let extent = Extent {
        length: drawn.template.wood,
        width,
        lips: count,
    };
    let skin = bending::best(&bends).filter(|_| stock.deck == DeckKind::Skin);
    let deck = match skin {
        Some(bend) => Deck::Skin(Skin::over(extent, bend, stock)),
        None => Deck::Boards(Boards::over(extent.length, radius, stock)),
    };
    let top = deck.thickness(stock);
    let outline = panels::outline(&drawn, top, stock);
    let panel = |along| {
        outline
            .as_ref()
            .and_then(|o| panels::top(o, along))
            .unwrap_or(0.0)
    };
    let template = drawn.with_stations(panel, stock.rib_spacing);
    let lip_box = outline.map(|outline| {
        let each = frame::panels_across(&deck, width, stock);
        let at: Vec<_> = template.stations.iter().map(|s| s.at.along).collect();
        let panels = Panels::new(outline, each, count, &at, stock);
        let frame = Frame::new(&panels, &template.stations, width, stock);
        LipBox { panels, frame }
    });
    let mut pieces = deck.pieces(extent, stock);
    let mut sheets = deck.sheets(count);
    if let Some(LipBox { panels, frame }) = &lip_box {
        pieces.extend(frame.pieces(count, stock));
        sheets.extend(panels.sheets(count, stock));
    }
    let cutting = cut(&pieces, &stock.lengths, stock.kerf);
    let weight = Weight::of(&pieces, &sheets, count, stock);
    let mut sheet = LipSheet {
        count,
        features,
        width,
        template,
        bends,
        deck,
        lip_box,
        pieces,
        sheets,
        cutting,
        weight,
        cautions: Vec::new(),
    };
    sheet.cautions = cautions(&sheet, stock);
    sheet
}

fn cautions(sheet: &LipSheet, stock: &Stock) -> Vec<Caution> {
    let panels = sheet.lip_box.as_ref().map(|b| &b.panels);
    let boards = matches!(sheet.deck, Deck::Boards(_));
    let over = panels.is_some_and(|p| !p.layout.too_large.is_empty());
    let long = sheet.cutting.iter().any(|c| !c.too_long.is_empty());
    let all = [
        (Caution::TooTight, boards && stock.deck == DeckKind::Skin),
        (Caution::HighEdge, sheet.template.height >= FALL),
        (Caution::Heavy, sheet.weight.movers == Movers::InParts),
        (Caution::TooLow, panels.is_none()),
        (Caution::Joints, panels.is_some_and(|p| p.parts.len() > 1)),
        (Caution::OverStock, over || long),
    ];
    let there = all.into_iter().filter(|(_, there)| *there);
    there.map(|(caution, _)| caution).collect()
}
