//! Parts that rise to one end, like the side panels of a lip, out of sheets of one size, on few sheets.
//!
//! Two that are alike lie head to foot: one as it is, the other turned by half and pushed into the hollow over
//! its low end. Where their left edges stand at l(z), a height z over their own foot, and they are h high, two
//! that touch are 2 w − min (l(z) + l(h − z)) long, w being the length of one. Between the corners of the edge l
//! bends one way only, as do the hollow arcs of lips, so the minimum is at a corner's height, or at its distance
//! from the top. Moved apart by the kerf both ways, their edges, which nowhere fall to the right, are a kerf
//! apart everywhere. Pairs, or single parts, are then packed as rectangles. Where that is not yet as few sheets
//! as the parts' area asks for, they are also dropped onto each other, hollow upon hollow.

use super::dropping::{self, Laid};
use super::outline::Outline;
use super::packing::{Blank, Packing, pack};
use crate::num;
use glam::DVec2;
use serde::Serialize;

/// Parts laid out on sheets.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Layout {
    /// Length and width of a sheet, m.
    pub sheet: [f64; 2],
    /// The sheets, each with what is cut from it.
    pub sheets: Vec<Vec<Laid>>,
    /// Parts larger than a sheet, by index.
    pub too_large: Vec<usize>,
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
        unpacked(parts, &groups, &pack(&blanks, sheet, kerf))
    };
    let mut layout = of_all(true);
    let fits = |part: &usize| !layout.too_large.contains(part);
    let those: Vec<_> = (0..parts.len()).filter(fits).collect();
    let area = |p: &usize| parts[*p].0.area() * f64::from(parts[*p].1);
    let area: f64 = those.iter().map(area).sum();
    layout.least = (area / (sheet[0] * sheet[1])).ceil() as usize;
    layout.sheet = sheet;
    let single = of_all(false).sheets;
    if single.len() < layout.sheets.len() {
        layout.sheets = single;
    }
    if layout.sheets.len() > layout.least {
        let count = |(part, (outline, count)): (usize, &(Outline, u32))| {
            let count = if those.contains(&part) { *count } else { 0 };
            (outline.clone(), count)
        };
        let all: Vec<_> = parts.iter().enumerate().map(count).collect();
        let dropped = dropping::lay(&all, sheet, kerf);
        let fewer = dropped.filter(|d| d.len() < layout.sheets.len());
        layout.sheets = fewer.unwrap_or(layout.sheets);
    }
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
    let left = |z: f64| Some(outline.across(low.y + z)?[0] - low.x);
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
