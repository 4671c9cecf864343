//! What a lip is made from: sizes that are sold, and choices of the builder.

use super::super::tiling::Paper;
use serde::{Deserialize, Serialize};

/// What is ridden on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DeckKind {
    /// Boards across the lip.
    Boards,
    /// Thin plywood bent along the lip, in layers.
    Skin,
}

/// Sizes of stock, spacings and densities. Lengths in m, densities in kg/m³.
///
/// Sizes and spacings by default: common practice, no source.
#[derive(Clone, Debug, PartialEq)]
pub struct Stock {
    /// The deck that is wanted; boards are taken where no plywood bends enough.
    pub deck: DeckKind,
    /// Length and width of a sheet of plywood; the grain of its faces runs along.
    pub sheet: [f64; 2],
    /// Thickness of the side panels.
    pub panel: f64,
    /// Least height of a side panel at its low end: less breaks off.
    pub nose: f64,
    /// Thicknesses of plywood that a skin may be made of.
    pub skins: Vec<f64>,
    /// Least thickness of the skin, all layers.
    pub skin: f64,
    /// Thickness and width of a deck board.
    pub board: [f64; 2],
    /// Gap between two deck boards.
    pub gap: f64,
    /// Thickness and width of a rib; it lies flat under the deck.
    pub rib: [f64; 2],
    /// Spacing of ribs, and of the stations at which the curve is told, along the ground line.
    pub rib_spacing: f64,
    /// Widest that a rib reaches from panel to panel.
    pub rib_span: f64,
    /// Widest that a deck board reaches from panel to panel.
    pub board_span: f64,
    /// Thickness and width of legs, ties and braces.
    pub leg: [f64; 2],
    /// Lengths that timber is sold in.
    pub lengths: Vec<f64>,
    /// Width of the saw's cut.
    pub kerf: f64,
    /// Density of timber.
    pub timber: f64,
    /// Density of plywood.
    pub plywood: f64,
    /// What each of two people may lift, kg.
    pub lifters: [f64; 2],
    /// What the template is printed on.
    pub paper: Paper,
}

impl Default for Stock {
    fn default() -> Self {
        Self {
            deck: DeckKind::Skin,
            sheet: [2.44, 1.22],
            panel: 0.018,
            nose: 0.03,
            skins: vec![0.0065, 0.009, 0.012, 0.015, 0.018],
            skin: 0.018,
            board: [0.028, 0.120],
            gap: 0.005,
            rib: [0.045, 0.095],
            rib_spacing: 0.3,
            rib_span: 1.3,
            board_span: 0.5,
            leg: [0.045, 0.095],
            lengths: vec![2.4, 3.0, 3.6, 4.2, 4.8],
            kerf: 0.003,
            // Mean density of strength class C24 at 12 % of moisture: EN 338, as tabled by The Engineering ToolBox.
            timber: 420.0,
            // Pine plywood as declared by a maker to EN 13986, tested to EN 323. Spruce is lighter, about 460
            // (from memory), birch heavier, about 680: what is lifted is rather taken too heavy.
            plywood: 545.0,
            // A man and a woman, load held close between knuckle and elbow height: the filter values of the Health
            // and Safety Executive's leaflet INDG143. Not safe limits, and not for a child.
            lifters: [25.0, 16.0],
            paper: Paper::A4,
        }
    }
}
