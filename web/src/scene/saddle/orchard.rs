//! What stands beside the line: grass, rows of fruit trees, hills and the village school behind them.
//!
//! It is the same for every line, so that speed shows in how it goes by; nothing of it is simulated.

use super::lens::Lens;
use super::{BESIDE, beside, even, rod};
use crate::scene::land;
use crate::scene::sheet::{Ink, Sheet};
use glam::{DVec2, DVec3};
use sim::num;
use sim::profile::{Profile, Under};
use std::f64::consts::TAU;

/// Trees stand this far apart along the line, and in rows this far beside it, m.
const APART: f64 = 4.6;
const ROWS: [f64; 4] = [3.4, -3.8, 8.2, -8.8];
/// Tufts of grass for each metre of the line, and how far from the middle they begin and end, m.
const TUFTS: u64 = 9;
const TUFTS_FROM: (f64, f64) = (0.9, 6.0);
/// From this distance on grass is not drawn, m.
const GRASS_TO: f64 = 13.0;
/// Trees farther than this are plainer, m.
const DETAILED: f64 = 17.0;
/// How far over both ends of the line the yard goes on, m.
const OVER: f64 = 45.0;

/// A tree.
#[derive(Clone, Copy, Debug)]
pub struct Tree {
    /// Its foot: station and height, m.
    pub at: DVec2,
    left: f64,
    tall: f64,
    seed: u64,
}

/// Trees and yard of a line.
#[derive(Clone, Debug)]
pub struct Orchard {
    yard: Vec<DVec2>,
    trees: Vec<Tree>,
}

/// A number from 0 to 1 that belongs to another number: the same for everybody, always.
fn chance(n: u64) -> f64 {
    // Steele, Lea and Flood 2014, "Fast splittable pseudorandom number generators": the mixer.
    let n = n.wrapping_mul(0x9e37_79b9_7f4a_7c15);
    let n = (n ^ (n >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    let n = (n ^ (n >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    ((n ^ (n >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
}

impl Orchard {
    /// The orchard round a line.
    pub fn of(profile: &Profile) -> Self {
        let (from, to) = match (profile.yard.first(), profile.yard.last()) {
            (Some(a), Some(b)) => (a.x - 4.0, b.x + OVER),
            _ => (0.0, OVER),
        };
        let mut trees = Vec::new();
        let count = ((to - from) / APART) as u64;
        for (row, &left) in ROWS.iter().enumerate() {
            for i in 0..count {
                let seed = i * ROWS.len() as u64 + row as u64;
                let x = from + (i as f64 + 0.6 * chance(seed) + 0.25 * row as f64) * APART;
                trees.push(Tree {
                    at: DVec2::new(x, land::yard(profile, x)),
                    left: left + 0.8 * (chance(seed + 7919) - 0.5),
                    tall: 2.6 + 1.3 * chance(seed + 104_729),
                    seed,
                });
            }
        }
        trees.sort_unstable_by(|a, b| a.at.x.total_cmp(&b.at.x));
        let yard = profile.yard.clone();
        Self { yard, trees }
    }

    /// The trees between two stations, farthest first.
    pub fn back_from(&self, far: f64, near: f64) -> impl Iterator<Item = &Tree> {
        let to = self.trees.partition_point(|t| t.at.x < far);
        let from = self.trees.partition_point(|t| t.at.x < near).min(to);
        self.trees[from..to].iter().rev()
    }

    /// Lays what is endlessly far on the sheet: the line of the hills, and the school.
    pub fn draw_far(&self, lens: &Lens, sheet: &mut Sheet) {
        let hills = (-16..=16).filter_map(|i| {
            let across = f64::from(i) * 0.08;
            let high =
                0.035 + 0.022 * num::sin(3.1 * across) + 0.012 * num::sin(9.7 * across + 1.0);
            lens.far(across, high)
        });
        let hills: Vec<_> = hills.collect();
        // Down to well under the horizon, where the yard begins.
        let feet = [1.28, -1.28].map(|across| lens.far(across, -0.35));
        sheet.area(
            Ink::Lawn,
            hills.iter().copied().chain(feet.into_iter().flatten()),
        );
        sheet.line(Ink::Hatch, 1.2, hills);
        let school = [
            (0.0, 0.0),
            (0.0, 0.045),
            (0.05, 0.075),
            (0.1, 0.045),
            (0.1, 0.0),
        ];
        let tower = [
            (0.1, 0.0),
            (0.1, 0.085),
            (0.115, 0.115),
            (0.13, 0.085),
            (0.13, 0.0),
        ];
        for shape in [school, tower] {
            let points = shape.map(|(across, up)| lens.far(0.3 + across, up));
            sheet.area(Ink::Paper, points.into_iter().flatten());
            sheet.line(Ink::Hatch, 1.2, points.into_iter().flatten());
        }
    }

    /// Lays the yard between two stations on the sheet, with its grass.
    pub fn draw_yard(&self, from: f64, to: f64, lens: &Lens, sheet: &mut Sheet) {
        let inner = self
            .yard
            .iter()
            .map(|p| p.x)
            .filter(|&x| x > from && x < to);
        let edges: Vec<_> = std::iter::once(from).chain(inner).chain([to]).collect();
        let at = |x: f64, left: f64| DVec3::new(x, left, Under(&self.yard).height(x));
        for pair in edges.windows(2).rev() {
            let (a, b) = (pair[0], pair[1]);
            let corners = [at(a, BESIDE), at(b, BESIDE), at(b, -BESIDE), at(a, -BESIDE)];
            sheet.area(Ink::Lawn, lens.quad(corners));
        }
        // Metre by metre, so that grass stands still in the room.
        for metre in ((from.floor() as i64)..((from + GRASS_TO) as i64)).rev() {
            self.draw_grass(metre, lens, sheet);
        }
    }

    fn draw_grass(&self, metre: i64, lens: &Lens, sheet: &mut Sheet) {
        // One width for all of a metre, so that it is drawn in one go.
        let middle = metre as f64 + 0.5;
        let middle = DVec2::new(middle, Under(&self.yard).height(middle));
        let width = even(0.014 * lens.scale(lens.depth(beside(middle, 0.0))));
        for i in (0..TUFTS).rev() {
            // Stations before the start count down from zero; their grass is as good as any other.
            let seed = (metre.unsigned_abs() * 2 + u64::from(metre < 0)) * TUFTS + i;
            let (near, far) = TUFTS_FROM;
            let side = if seed.is_multiple_of(2) { 1.0 } else { -1.0 };
            let left = side * (near + (far - near) * chance(seed + 31));
            let x = metre as f64 + 1.0 - i as f64 / TUFTS as f64;
            let foot = DVec3::new(x, left, Under(&self.yard).height(x));
            let tip = foot + DVec3::new(0.0, 0.1 * (chance(seed + 77) - 0.5), 0.14);
            for tip in [tip, tip + DVec3::new(0.0, 0.07, -0.03)] {
                if let Some(blade) = lens.line(foot, tip) {
                    sheet.line(Ink::Grass, width, blade);
                }
            }
        }
    }
}

/// Least radius of a crown with an outline, px.
const OUTLINED: f64 = 14.0;

/// A tree as it is seen.
struct Sighted<'a> {
    tree: &'a Tree,
    foot: DVec3,
    crown: DVec3,
    /// The crown's middle on the sheet, px.
    centre: DVec2,
    depth: f64,
    /// Pixels to the metre where it stands.
    scale: f64,
}

/// Lays trees on the sheet, farthest first.
pub fn draw_trees<'a>(trees: impl Iterator<Item = &'a Tree>, lens: &Lens, sheet: &mut Sheet) {
    let sighted: Vec<_> = trees.filter_map(|tree| tree.sighted(lens)).collect();
    let near = sighted.iter().position(|t| t.radius() >= OUTLINED);
    // What is alike is drawn in one go: so the far ones' stems, which are threads, before their crowns.
    let (far, near) = sighted.split_at(near.unwrap_or(sighted.len()));
    far.iter().for_each(|tree| tree.draw_stem(lens, sheet));
    far.iter().for_each(|tree| tree.draw_crown(sheet));
    for tree in near {
        tree.draw_stem(lens, sheet);
        tree.draw_crown(sheet);
    }
}

impl Tree {
    /// Where it is on the sheet; `None` where it is not, or too near.
    fn sighted(&self, lens: &Lens) -> Option<Sighted<'_>> {
        let foot = beside(self.at, self.left);
        let depth = lens.depth(foot);
        let scale = lens.scale(depth);
        let crown = foot + DVec3::Z * (0.62 * self.tall);
        let seen = |c: &DVec2| depth >= 0.5 && lens.near_sheet(*c, self.tall * scale);
        let centre = lens.place(crown).filter(seen)?;
        Some(Sighted {
            tree: self,
            foot,
            crown,
            centre,
            depth,
            scale,
        })
    }
}

impl Sighted<'_> {
    /// The crown's, px.
    fn radius(&self) -> f64 {
        0.38 * self.tree.tall * self.scale
    }

    fn draw_stem(&self, lens: &Lens, sheet: &mut Sheet) {
        rod(Ink::Wood, 0.13, self.foot, self.crown, lens, sheet);
    }

    fn draw_crown(&self, sheet: &mut Sheet) {
        let radius = self.radius();
        let points = if self.depth < DETAILED { 14 } else { 8 };
        let blob = (0..points).map(|i| {
            let wobble = 0.82 + 0.3 * chance(self.tree.seed * 131 + i);
            self.centre + DVec2::from_angle(TAU * i as f64 / points as f64) * (radius * wobble)
        });
        let blob: Vec<_> = blob.collect();
        sheet.area(Ink::Leaf, blob.iter().copied());
        // Far crowns are too small for an outline of their own, which takes longer than all the rest of them.
        if radius >= OUTLINED {
            let width = even(0.035 * self.scale).min(3.0);
            sheet.line(Ink::Grass, width, blob.iter().chain(blob.first()).copied());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn chance_is_even_enough_for_a_row_of_trees() {
        let mean = (0..1000).map(chance).sum::<f64>() / 1000.0;
        // Standard error 0.009.
        assert!((mean - 0.5).abs() < 0.04, "{mean}");
    }

    #[test]
    fn no_tree_stands_on_the_line() {
        let profile = Profile::build(&sim::plan::demo()).unwrap();
        let orchard = Orchard::of(&profile);
        assert!(orchard.trees.len() > 40);
        assert!(orchard.trees.iter().all(|t| t.left.abs() > 2.5));
    }
}
