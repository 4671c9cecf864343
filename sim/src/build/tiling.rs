//! A drawing in full size on pages that are glued together.
//!
//! Pages lie in rows from the lower left. Neighbours overlap by a strip, in the middle of which both have the
//! same two registration marks: the upper page is shifted until marks lie on marks. A bar along and one across
//! show on every page whether the printer kept the size.

use super::outline::{Edge, Line, Outline};
use crate::num;
use glam::DVec2;
use serde::Serialize;

/// What is printed on.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Paper {
    /// Width and height, m.
    pub size: [f64; 2],
    /// What a printer leaves white along each edge, m.
    pub margin: f64,
    /// Width of the strip that neighbouring pages share, m.
    pub overlap: f64,
    /// Length of the bars that show the scale, m.
    pub bar: f64,
}

impl Paper {
    /// A4 upright (ISO 216: 210 × 297 mm). Margin, overlap and bar: common practice, no source.
    pub const A4: Paper = Paper {
        size: [0.210, 0.297],
        margin: 0.010,
        overlap: 0.015,
        bar: 0.100,
    };

    /// Letter upright (ANSI/ASME Y14.1 size A: 8.5 × 11 in). Margin, overlap and bar: common practice, no source.
    pub const LETTER: Paper = Paper {
        size: [0.2159, 0.2794],
        ..Paper::A4
    };

    fn on_its_side(self) -> Self {
        let [a, b] = self.size;
        Self {
            size: [b, a],
            ..self
        }
    }

    /// What is printed of the drawing on one page, m.
    fn printed(&self) -> DVec2 {
        DVec2::from(self.size) - DVec2::splat(2.0 * self.margin)
    }
}

/// One page.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Page {
    /// Column from the left and row from below, from 0.
    pub place: [usize; 2],
    /// Low and high corner of what it shows, in the drawing, m.
    pub shows: [DVec2; 2],
    /// Registration marks on it, in the drawing, m.
    pub marks: Vec<DVec2>,
    /// Bars for the scale, along and across, in the drawing, m.
    pub bars: [[DVec2; 2]; 2],
}

/// A drawing cut into pages.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Tiling {
    /// The paper, upright or on its side.
    pub paper: Paper,
    /// Columns and rows of pages.
    pub grid: [usize; 2],
    /// The pages on which some of the outline is, by rows from below.
    pub pages: Vec<Page>,
}

/// The pages that an outline takes in full size, the paper held the way that takes fewer.
pub fn tile(outline: &Outline, paper: Paper) -> Tiling {
    let [upright, side] = [paper, paper.on_its_side()].map(|p| tiled(outline, p));
    if side.pages.len() < upright.pages.len() {
        side
    } else {
        upright
    }
}

fn tiled(outline: &Outline, paper: Paper) -> Tiling {
    let [low, high] = outline.bounds();
    let printed = paper.printed();
    let step = printed - DVec2::splat(paper.overlap);
    let count =
        |size: f64, step: f64| num::max(1.0, ((size - paper.overlap) / step).ceil()) as usize;
    let size = high - low;
    let grid = [count(size.x, step.x), count(size.y, step.y)];
    let mut pages = Vec::new();
    for row in 0..grid[1] {
        for column in 0..grid[0] {
            let corner = low + step * DVec2::new(column as f64, row as f64);
            let shows = [corner, corner + printed];
            if outline.edges.iter().any(|e| meets(e, shows)) {
                pages.push(page([column, row], grid, shows, &paper));
            }
        }
    }
    Tiling { paper, grid, pages }
}

/// Whether some of an edge lies in a rectangle.
fn meets(edge: &Edge, [low, high]: [DVec2; 2]) -> bool {
    let sides = [
        Line::at(low, DVec2::X),
        Line::at(low, DVec2::Y),
        Line::at(high, DVec2::NEG_X),
        Line::at(high, DVec2::NEG_Y),
    ];
    let cut = |edge: Option<Edge>, side| edge.and_then(|e: Edge| e.inside(side));
    sides.into_iter().fold(Some(*edge), cut).is_some()
}

fn page(place: [usize; 2], grid: [usize; 2], shows: [DVec2; 2], paper: &Paper) -> Page {
    let [low, high] = shows;
    let (size, half) = (high - low, 0.5 * paper.overlap);
    // What neighbours share is told from their common strip, so that its marks are the same on both.
    let inner = size - DVec2::splat(2.0 * paper.overlap);
    let mut marks = Vec::new();
    for share in [0.25, 0.75] {
        let within = low + DVec2::splat(paper.overlap) + inner * share;
        let mut mark = |there: bool, x: f64, y: f64| {
            if there {
                marks.push(DVec2::new(x, y));
            }
        };
        mark(place[0] > 0, low.x + half, within.y);
        mark(place[0] + 1 < grid[0], high.x - half, within.y);
        mark(place[1] > 0, within.x, low.y + half);
        mark(place[1] + 1 < grid[1], within.x, high.y - half);
    }
    let start = low + DVec2::splat(paper.overlap);
    let bars = [DVec2::X, DVec2::Y].map(|along| [start, start + along * paper.bar]);
    Page {
        place,
        shows,
        marks,
        bars,
    }
}
