//! Parts dropped onto each other on a sheet, as deep as they go.
//!
//! A part is put at some place along the sheet and comes down until it is a kerf from those below it, the kerf
//! counted along and across. The gap between the top of one, y along the sheet, and the underside of another, x
//! along it, is least where y or x is at a corner: between corners a top bends upward only and an underside
//! downward only, as hollow and straight edges do, however they are turned. So it is found exactly.
//!
//! Each sheet is filled with as much area as a search of some steps finds, then the next.

use super::outline::Outline;
use crate::num;
use glam::DVec2;
use serde::Serialize;

/// Lengths that differ by less are the same, m.
const SAME: f64 = 1e-6;

/// Most looks of one part at one below it, for one sheet.
const STEPS: u32 = 12_000;

/// The same, for all sheets.
const ALL_STEPS: u32 = 60_000;

/// What a sheet is given at least, so that something is laid on it.
const LEAST_STEPS: u32 = 100;

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

/// A part turned one way, from its own low corner.
struct Shape {
    outline: Outline,
    size: DVec2,
    /// Its corners along the sheet, each with the underside and the top there.
    corners: Vec<(f64, [f64; 2])>,
}

impl Shape {
    fn new(outline: &Outline, quarters: u8) -> Self {
        let outline = outline.laid(DVec2::ZERO, quarters);
        let mut corners: Vec<_> = outline.edges.iter().map(|e| e.from.x).collect();
        corners.sort_by(f64::total_cmp);
        corners.dedup_by(|a, b| (*a - *b).abs() < SAME);
        let span = |x: f64| outline.upright(x).map(|span| (x, span));
        Self {
            size: outline.size(),
            corners: corners.into_iter().filter_map(span).collect(),
            outline,
        }
    }

    /// How high another one stands over this one's own foot that is dropped onto it, `by` further along; none
    /// where they are not above each other.
    fn under(&self, other: &Shape, by: f64, kerf: f64) -> Option<f64> {
        if by >= self.size.x + kerf || by + other.size.x + kerf <= 0.0 {
            return None;
        }
        let top = |y: f64| self.outline.upright(y).map(|span| span[1]);
        let underside = |x: f64| other.outline.upright(x - by).map(|span| span[0]);
        let mut most: Option<f64> = None;
        let mut see = |top: Option<f64>, underside: Option<f64>| {
            if let (Some(top), Some(underside)) = (top, underside) {
                let gap = top - underside + kerf;
                most = Some(most.map_or(gap, |m| num::max(m, gap)));
            }
        };
        for &(y, [_, high]) in &self.corners {
            see(Some(high), underside(y - kerf));
            see(Some(high), underside(y + kerf));
            for (x, [low, _]) in &other.corners {
                if (x + by - y).abs() <= kerf {
                    see(Some(high), Some(*low));
                }
            }
        }
        for &(x, [low, _]) in &other.corners {
            see(top(x + by - kerf), Some(low));
            see(top(x + by + kerf), Some(low));
        }
        most
    }
}

struct Filling<'a> {
    shapes: &'a [[Shape; 4]],
    areas: &'a [f64],
    left: Vec<u32>,
    sheet: DVec2,
    kerf: f64,
    laid: Vec<Laid>,
    area: f64,
    best: (f64, Vec<Laid>),
    steps: u32,
    /// Steps that may be taken.
    most: u32,
}

impl Filling<'_> {
    fn shape(&self, laid: &Laid) -> &Shape {
        &self.shapes[laid.part][usize::from(laid.quarters)]
    }

    fn fill(&mut self) {
        if self.area > self.best.0 + SAME * SAME {
            self.best = (self.area, self.laid.clone());
        }
        for part in 0..self.left.len() {
            if self.left[part] == 0 {
                continue;
            }
            for quarters in [0, 2, 1, 3] {
                for x in self.places(part, quarters) {
                    if self.steps >= self.most {
                        return;
                    }
                    self.steps += 1 + self.laid.len() as u32;
                    self.drop(part, quarters, x);
                }
            }
        }
    }

    /// Lays a part where it comes down, and fills on, where it is still on the sheet.
    fn drop(&mut self, part: usize, quarters: u8, x: f64) {
        let shape = &self.shapes[part][usize::from(quarters)];
        let over = |laid: &Laid| {
            let under = self.shape(laid).under(shape, x - laid.at.x, self.kerf);
            under.map(|z| laid.at.y + z)
        };
        let all = self.laid.iter().filter_map(over);
        let z = all.fold(0.0, num::max);
        if z + shape.size.y > self.sheet.y + SAME {
            return;
        }
        let at = DVec2::new(x, z);
        self.laid.push(Laid { part, at, quarters });
        self.left[part] -= 1;
        self.area += self.areas[part];
        self.fill();
        self.area -= self.areas[part];
        self.left[part] += 1;
        self.laid.pop();
    }

    /// Where along the sheet a part is tried: at both ends, and beside those that lie there.
    fn places(&self, part: usize, quarters: u8) -> Vec<f64> {
        let wide = self.shapes[part][usize::from(quarters)].size.x;
        let room = self.sheet.x - wide;
        let mut all = vec![0.0, room];
        for laid in &self.laid {
            let its = self.shape(laid).size.x;
            all.push(laid.at.x + its + self.kerf);
            all.push(laid.at.x - wide - self.kerf);
        }
        let mut places: Vec<f64> = Vec::new();
        for x in all {
            let new = places.iter().all(|p| (p - x).abs() > SAME);
            if new && x >= 0.0 && x <= room + SAME {
                places.push(x);
            }
        }
        places
    }
}

/// Parts, so many of each, dropped onto sheets; none where one of them finds no place on an empty sheet.
pub(super) fn lay(parts: &[(Outline, u32)], sheet: [f64; 2], kerf: f64) -> Option<Vec<Vec<Laid>>> {
    let shapes = parts
        .iter()
        .map(|p| [0, 1, 2, 3].map(|q| Shape::new(&p.0, q)));
    let shapes: Vec<[Shape; 4]> = shapes.collect();
    let areas: Vec<_> = parts.iter().map(|p| p.0.area()).collect();
    let mut left: Vec<_> = parts.iter().map(|p| p.1).collect();
    let mut sheets = Vec::new();
    let mut steps = 0;
    while left.iter().any(|n| *n > 0) {
        let mut filling = Filling {
            shapes: &shapes,
            areas: &areas,
            left: left.clone(),
            sheet: sheet.into(),
            kerf,
            laid: Vec::new(),
            area: 0.0,
            best: (0.0, Vec::new()),
            steps: 0,
            most: (ALL_STEPS - steps).clamp(LEAST_STEPS, STEPS),
        };
        filling.fill();
        steps = ALL_STEPS.min(steps + filling.steps);
        let laid = filling.best.1;
        if laid.is_empty() {
            return None;
        }
        for l in &laid {
            left[l.part] -= 1;
        }
        sheets.push(laid);
    }
    Some(sheets)
}
