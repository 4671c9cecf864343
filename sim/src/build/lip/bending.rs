//! Which plywood bends to a lip's radius.

use super::stock::Stock;
use crate::num;
use serde::Serialize;

/// Thickness of dry panels, mm, and the least radius they bend to, ft: across the grain of their faces, and along
/// it. APA, The Engineered Wood Association: minimum bending radii for mill-run Plyform panels bent dry (Concrete
/// Forming, form V345; the same table in its page on curved forms in Europe). Panels without knots or short grain,
/// or wetted, bend further; some of the others break before.
const TABLE: [(f64, f64, f64); 6] = [
    (6.4, 2.0, 5.0),
    (7.9, 2.0, 6.0),
    (9.5, 3.0, 8.0),
    (12.7, 6.0, 12.0),
    (15.9, 8.0, 16.0),
    (19.1, 12.0, 20.0),
];

/// The international foot, m.
const FOOT: f64 = 0.3048;

/// How a sheet of plywood lies on the lip.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Grain {
    /// The grain of its faces runs along the ride and is bent: stiffer from rib to rib.
    Along,
    /// The grain of its faces runs across the lip: it bends more easily.
    Across,
}

/// One thickness of plywood laid one way.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Bend {
    /// Thickness, m.
    pub thickness: f64,
    /// Which way it lies.
    pub grain: Grain,
    /// Least radius it bends to, m.
    pub least: f64,
    /// Whether the lip is no tighter.
    pub fits: bool,
    /// Layers that make the thickness of the deck.
    pub layers: u32,
}

/// Least radius, m, to which plywood of a thickness, m, bends dry; none where no table says.
///
/// A thickness between two of the table counts as the thicker one.
pub fn least_radius(thickness: f64, grain: Grain) -> Option<f64> {
    let mm = 1000.0 * thickness;
    let row = TABLE.iter().find(|row| mm <= row.0 + 1e-9)?;
    Some(match grain {
        Grain::Across => row.1 * FOOT,
        Grain::Along => row.2 * FOOT,
    })
}

/// Every thickness of the stock, each way, for a riding curve of some radius, m; none where it is straight.
pub(super) fn bends(radius: Option<f64>, stock: &Stock) -> Vec<Bend> {
    let of = |thickness: f64, grain| {
        let least = least_radius(thickness, grain)?;
        Some(Bend {
            thickness,
            grain,
            least,
            fits: radius.is_none_or(|r| r >= least),
            layers: layers(thickness, stock),
        })
    };
    let all = stock.skins.iter();
    all.flat_map(|t| [of(*t, Grain::Along), of(*t, Grain::Across)])
        .flatten()
        .collect()
}

fn layers(thickness: f64, stock: &Stock) -> u32 {
    num::max(1.0, (stock.skin / thickness - 1e-9).ceil()) as u32
}

/// The plywood to take: of what bends, the fewest layers, then the thinnest, then grain along the ride.
pub(super) fn best(bends: &[Bend]) -> Option<Bend> {
    let mut best: Option<Bend> = None;
    for bend in bends.iter().filter(|b| b.fits) {
        let before = |b: &Bend| (bend.layers, bend.thickness) < (b.layers, b.thickness);
        if best.as_ref().is_none_or(before) {
            best = Some(*bend);
        }
    }
    best
}
