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

/// Drops that are tried for one sheet.
const STEPS: u32 = 4_000;

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
    corners: Vec<f64>,
}

impl Shape {
    fn new(outline: &Outline, quarters: u8) -> Self {
        let outline = outline.laid(DVec2::ZERO, quarters);
        let mut corners: Vec<_> = outline.edges.iter().map(|e| e.from.x).collect();
        corners.sort_by(f64::total_cmp);
        corners.dedup_by(|a, b| (*a - *b).abs() < SAME);
        Self {
            size: outline.size(),
            corners,
            outline,
        }
    }

    /// How high another one stands over this one's own foot that is dropped onto it, `by` further along; none
    /// where they are not above each other.
    fn under(&self, other: &Shape, by: f64, kerf: f64) -> Option<f64> {
        if by >= self.size.x + kerf || by + other.size.x + kerf <= 0.0 {
            return None;
        }
        let gap = |y: f64, x: f64| {
            let [_, top] = self.outline.upright(y)?;
            let [bottom, _] = other.outline.upright(x - by)?;
            Some(top - bottom + kerf)
        };
        let mut most: Option<f64> = None;
        let mut see = |y: f64, x: f64| {
            if let Some(gap) = gap(y, x) {
                most = Some(most.map_or(gap, |m| num::max(m, gap)));
            }
        };
        for &y in &self.corners {
            see(y, y - kerf);
            see(y, y + kerf);
            let near = other.corners.iter().map(|c| c + by);
            near.filter(|x| (x - y).abs() <= kerf)
                .for_each(|x| see(y, x));
        }
        for x in other.corners.iter().map(|c| c + by) {
            see(x - kerf, x);
            see(x + kerf, x);
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
                    if self.steps >= STEPS {
                        return;
                    }
                    self.steps += 1;
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

/// Parts that fit a sheet, so many of each, dropped onto sheets.
pub(super) fn lay(parts: &[(Outline, u32)], sheet: [f64; 2], kerf: f64) -> Vec<Vec<Laid>> {
    let shapes = parts
        .iter()
        .map(|p| [0, 1, 2, 3].map(|q| Shape::new(&p.0, q)));
    let shapes: Vec<[Shape; 4]> = shapes.collect();
    let areas: Vec<_> = parts.iter().map(|p| p.0.area()).collect();
    let mut left: Vec<_> = parts.iter().map(|p| p.1).collect();
    let mut sheets = Vec::new();
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
        };
        filling.fill();
        let laid = filling.best.1;
        if laid.is_empty() {
            break;
        }
        for l in &laid {
            left[l.part] -= 1;
        }
        sheets.push(laid);
    }
    sheets
}
