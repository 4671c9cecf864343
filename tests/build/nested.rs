//! How many panels lie on one sheet, against a search of every place of a grid.
//!
//! The search knows polygons only. It sets panels on every place of the grid, turned by every quarter, finds
//! which two places go together, and then the most places of which any two do.

use super::lips::{line, sheet};
use sim::build::lip::Stock;
use sim::build::nest::lay;
use sim::build::outline::Outline;
use tests::checks::{Bound::NotOver, Check};

type Point = (f64, f64);

/// A panel turned by some quarters, from its own low corner.
struct Turned {
    points: Vec<Point>,
    size: Point,
}

fn turned(outline: &Outline, quarters: u8) -> Turned {
    let mut points = Vec::new();
    for e in &outline.edges {
        let sides = if e.centre.is_some() { 12 } else { 1 };
        for i in 0..sides {
            let p = e.from + (e.to - e.from) * (f64::from(i) / f64::from(sides));
            let p = e
                .centre
                .map_or(p, |c| c + (p - c).normalize() * (e.from - c).length());
            let (x, y) = (p.x, p.y);
            points.push(match quarters {
                0 => (x, y),
                1 => (-y, x),
                2 => (-x, -y),
                _ => (y, -x),
            });
        }
    }
    let least = |of: fn(&Point) -> f64| points.iter().map(of).fold(f64::INFINITY, f64::min);
    let low = (least(|p| p.0), least(|p| p.1));
    let points: Vec<_> = points.iter().map(|p| (p.0 - low.0, p.1 - low.1)).collect();
    let most = |of: fn(&Point) -> f64| points.iter().map(of).fold(0.0, f64::max);
    let size = (most(|p| p.0), most(|p| p.1));
    Turned { points, size }
}

fn inside(polygon: &[Point], p: Point) -> bool {
    let next = polygon.iter().cycle().skip(1);
    let crossed = polygon.iter().zip(next).filter(|(a, b)| {
        (a.1 > p.1) != (b.1 > p.1) && p.0 < a.0 + (b.0 - a.0) * (p.1 - a.1) / (b.1 - a.1)
    });
    crossed.count() % 2 == 1
}

fn cross(a: Point, b: Point, c: Point) -> f64 {
    (b.0 - a.0) * (c.1 - a.1) - (b.1 - a.1) * (c.0 - a.0)
}

/// Whether two polygons have more than their edges in common, the second moved.
fn overlap(a: &[Point], b: &[Point], by: Point) -> bool {
    let b: Vec<_> = b.iter().map(|p| (p.0 + by.0, p.1 + by.1)).collect();
    let sides = |p: &[Point]| -> Vec<(Point, Point)> {
        p.iter()
            .copied()
            .zip(p.iter().copied().cycle().skip(1))
            .collect()
    };
    let (ours, theirs) = (sides(a), sides(&b));
    let crossing = ours.iter().any(|&(p, q)| {
        theirs.iter().any(|&(r, s)| {
            cross(p, q, r) * cross(p, q, s) < -1e-12 && cross(r, s, p) * cross(r, s, q) < -1e-12
        })
    });
    let middle = |p: &[Point]| {
        // A point well within: over the base, near the back, where a panel is thick.
        let (x, y) = p.iter().fold((0.0, 0.0), |m, q| (m.0 + q.0, m.1 + q.1));
        let n = p.len() as f64;
        (x / n, y / n)
    };
    crossing || inside(a, middle(&b)) || inside(&b, middle(a))
}

/// The most panels on one sheet whose corners stand on a grid.
fn most(outline: &Outline, sheet: [f64; 2], grid: f64) -> usize {
    let ways = [0, 1, 2, 3].map(|q| turned(outline, q));
    let mut places = Vec::new();
    for (way, turned) in ways.iter().enumerate() {
        let room = (sheet[0] - turned.size.0, sheet[1] - turned.size.1);
        if room.0 < 0.0 || room.1 < 0.0 {
            continue;
        }
        let along = |room: f64| -> Vec<f64> {
            let mut all: Vec<_> = (0..=(room / grid) as u32)
                .map(|i| f64::from(i) * grid)
                .collect();
            all.push(room);
            all
        };
        for x in along(room.0) {
            for y in along(room.1) {
                places.push((way, (x, y)));
            }
        }
    }
    let goes = |a: &(usize, Point), b: &(usize, Point)| {
        let by = (b.1.0 - a.1.0, b.1.1 - a.1.1);
        !overlap(&ways[a.0].points, &ways[b.0].points, by)
    };
    let goes: Vec<Vec<bool>> = places
        .iter()
        .map(|a| places.iter().map(|b| goes(a, b)).collect())
        .collect();
    let all: Vec<_> = (0..places.len()).collect();
    deepest(&all, &goes)
}

/// The most places of a list of which any two go together.
fn deepest(among: &[usize], goes: &[Vec<bool>]) -> usize {
    let mut best = 0;
    for (i, &a) in among.iter().enumerate() {
        let rest: Vec<_> = among[i + 1..]
            .iter()
            .copied()
            .filter(|&b| goes[a][b])
            .collect();
        best = best.max(1 + deepest(&rest, goes));
    }
    best
}

/// Panels of so many lips: what one sheet holds.
pub fn checks() -> Vec<Check> {
    let stock = Stock::default();
    let cases = [(0.75, 3.5), (0.9, 4.0), (0.9, 2.4), (1.1, 3.0), (1.1, 2.2)];
    let row = |(height, radius): (f64, f64)| {
        let plan = line(0.0, |lip| {
            lip.height = height;
            lip.radius = radius;
        });
        let outline = sheet(&plan, &stock).lip_box.expect("a box").panels.outline;
        let searched = most(&outline, stock.sheet, 0.12);
        let layout = lay(&[(outline, 12)], stock.sheet, 0.0);
        let needed = 12_usize.div_ceil(searched);
        Check::new(
            format!("sheets for 12 panels, h {height} R {radius} m, {searched} to a sheet"),
            "search of every place of a grid of 0.12 m, four ways round (own computation)",
            "sheets",
            [needed as f64, layout.sheets.len() as f64],
            NotOver,
            "between places of the grid there is room for more",
        )
    };
    cases.into_iter().map(row).collect()
}
