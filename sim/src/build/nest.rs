//! Parts that rise to one end, like the side panels of a lip, out of sheets of one size, on the fewest sheets.
//!
//! Two that are alike lie head to foot: one as it is, the other turned by half and pushed into the hollow over
//! its low end. Where their left edges stand at l(z), a height z over their own foot, and they are h high, two
//! that touch are 2 w − min (l(z) + l(h − z)) long, w being the length of one. Between the corners of the edge l
//! bends one way only, as do the hollow arcs of lips, so the minimum is at a corner's height, or at its distance
//! from the top. Moved apart by the kerf both ways, their edges, which nowhere fall to the right, are a kerf
//! apart everywhere. Pairs and single parts are then packed as rectangles.

use super::outline::Outline;
use super::packing::{Blank, Packing, pack};
use crate::num;
use glam::DVec2;
use serde::Serialize;

/// Where a part lies on a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Laid {
    /// Index of the part.
    pub part: usize,
    /// The low corner of its bounds, along and across the sheet, m.
    pub at: DVec2,
    /// By how many quarters it is turned, counterclockwise.
    pub quarters: u8,
}

/// Parts laid out on sheets.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Layout {
    /// Length and width of a sheet, m.
    pub sheet: [f64; 2],
    /// The sheets, each with what is cut from it.
    pub sheets: Vec<Vec<Laid>>,
    /// Parts larger than a sheet, by index.
    pub too_large: Vec<usize>,
    /// Whether no other layout in pairs, or in single rectangles, takes fewer sheets.
    pub fewest: bool,
    /// Sheets that no layout whatever could do without: the parts' area over a sheet's.
    pub least: usize,
}

/// What is packed as one rectangle: a part, and whether two of it lie head to foot.
#[derive(Clone, Copy)]
struct Group {
    part: usize,
    pair: bool,
    size: DVec2,
}

/// Lays out parts, so many of each; `sheet` is its length and width, m, `kerf` what the saw takes, m.
pub fn lay(parts: &[(Outline, u32)], sheet: [f64; 2], kerf: f64) -> Layout {
    let of_all = |pairs: bool| {
        let groups: Vec<_> = (0..parts.len())
            .flat_map(|part| groups(parts, part, pairs, sheet, kerf))
            .collect();
        let blank = |g: &Group| Blank {
            size: g.size.into(),
            turns: true,
        };
        let blanks: Vec<_> = groups.iter().map(blank).collect();
        (pack(&blanks, sheet, kerf), groups)
    };
    let [single, paired] = [of_all(false), of_all(true)];
    let proven = single.0.fewest && paired.0.fewest;
    let (packing, groups) = if single.0.sheets.len() < paired.0.sheets.len() {
        single
    } else {
        paired
    };
    let small = (0..parts.len()).filter(|p| !packing.too_large.iter().any(|g| groups[*g].part == *p));
    let area: f64 = small.map(|p| parts[p].0.area() * f64::from(parts[p].1)).sum();
    let least = (area / (sheet[0] * sheet[1])).ceil() as usize;
    let mut layout = unpacked(parts, &groups, &packing);
    layout.sheet = sheet;
    layout.fewest = proven || layout.sheets.len() == least;
    layout.least = least;
    layout
}

/// The groups that all of one part make: pairs, where a pair finds room on a sheet, and what is left over.
fn groups(
    parts: &[(Outline, u32)],
    part: usize,
    pairs: bool,
    sheet: [f64; 2],
    kerf: f64,
) -> Vec<Group> {
    let (outline, count) = &parts[part];
    let alone = Group {
        part,
        pair: false,
        size: outline.size(),
    };
    let two = Group {
        part,
        pair: true,
        size: pair(outline) + DVec2::splat(kerf),
    };
    let holds = |long: f64, wide: f64| two.size.x <= long && two.size.y <= wide;
    let pairs = pairs && (holds(sheet[0], sheet[1]) || holds(sheet[1], sheet[0]));
    let paired = if pairs { count / 2 } else { 0 };
    let mut groups = vec![two; paired as usize];
    groups.extend(vec![alone; (count - 2 * paired) as usize]);
    groups
}

/// Length and height of two parts that touch head to foot, m.
fn pair(outline: &Outline) -> DVec2 {
    let [low, _] = outline.bounds();
    let size = outline.size();
    let left = |z: f64| outline.left(low.y + z).map(|x| x - low.x);
    let both = |z: f64| Some(left(z)? + left(size.y - z)?);
    let corners = outline.edges.iter().map(|e| e.from.y - low.y);
    let heights = corners.flat_map(|z| [z, size.y - z]);
    let least = heights.filter_map(both).fold(size.x, num::min);
    DVec2::new(2.0 * size.x - least, size.y)
}

fn unpacked(parts: &[(Outline, u32)], groups: &[Group], packing: &Packing) -> Layout {
    let mut layout = Layout::default();
    for sheet in &packing.sheets {
        let mut laid = Vec::new();
        for placed in sheet {
            let group = groups[placed.blank];
            let at = DVec2::from(placed.at);
            let size = parts[group.part].0.size();
            // Within the group: the part at its lower right, the other, turned by half, at its upper left.
            let mut members = vec![(DVec2::new(group.size.x - size.x, 0.0), 0)];
            if group.pair {
                members.push((DVec2::new(0.0, group.size.y - size.y), 2));
            }
            for (corner, quarters) in members {
                let (at, quarters) = if placed.turned {
                    let up = group.size.y - corner.y - size.y;
                    (at + DVec2::new(up, corner.x), quarters + 1)
                } else {
                    (at + corner, quarters)
                };
                let part = group.part;
                laid.push(Laid { part, at, quarters });
            }
        }
        layout.sheets.push(laid);
    }
    let mut large: Vec<_> = packing.too_large.iter().map(|g| groups[*g].part).collect();
    large.dedup();
    layout.too_large = large;
    layout
}
