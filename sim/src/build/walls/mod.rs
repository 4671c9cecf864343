//! Walls of timber that hold a landing's fill, in place of slopes of dirt.
//!
//! A box has a front wall under the knuckle and two side walls that follow the slope down. Boards lean against
//! posts that are sunk outside of them. Rods across the fill tie the posts of either side wall to each other;
//! rods from the front wall's posts go to timbers buried in the fill. What pushes and what holds is worked out in
//! `earth.rs`, `post.rs` and `deadman.rs`, each with its formula and its source. Corners count on nobody's help:
//! the ties across them only keep the frame square.
//!
//! No figure is a guarantee, and none stands in for an engineer: the cautions say where codes ask for one.

mod anchors;
mod caution;
mod cut;
pub mod deadman;
mod design;
pub mod earth;
mod outline;
pub mod pieces;
pub mod post;
mod stock;
#[cfg(test)]
mod tests;

pub use anchors::{AnchorCheck, Anchors};
pub use caution::{Caution, Part, Rule};
pub use design::{Post, Tie, Wall};
pub use pieces::{Kind, Piece};
pub use stock::WallStock;

use crate::build::softwood::ACROSS;
use crate::build::soil::Wetness;
use crate::num::{self, PI};
use crate::plan::{Plan, Soil};
use crate::profile::Profile;
use cut::Parts;
use design::Design;
use outline::{LOWEST, Outline};
use serde::Serialize;

/// Everything that is needed to build the walls of one landing.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BoxSheet {
    /// Index of the feature in the plan's line.
    pub feature: usize,
    /// Width of the fill between the walls, m.
    pub width: f64,
    /// Height of the front wall over the ground, m.
    pub height: f64,
    /// Level length of a side wall, m: to where the fill is as low as a sod.
    pub length: f64,
    /// What the fill does to the front wall.
    pub pushes: Vec<Push>,
    /// The wall under the knuckle; its end posts are the first of the side walls.
    pub front: Wall,
    /// Either side wall: both are alike.
    pub side: Wall,
    /// Ties across each of the two corners.
    pub corner_ties: u32,
    /// Length of a rod from one side wall to the other, nuts and all, m.
    pub cross_tie: f64,
    /// What holds the front wall; none where its posts stand by themselves, or where nothing holds it, which is
    /// a caution.
    pub anchors: Option<Anchors>,
    /// The hardest pull on any rod, as a share of what it and the wood under its washer may bear.
    pub rod: f64,
    /// What is cut.
    pub pieces: Vec<Piece>,
    /// What has to be said.
    pub cautions: Vec<Caution>,
}

/// What a fill does to the front wall.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Push {
    /// In which state of the fill.
    pub wetness: Wetness,
    /// Coefficient of active earth pressure.
    pub active: f64,
    /// Pressure at the wall's foot, Pa.
    pub pressure: f64,
    /// Force on a metre of wall, N/m.
    pub thrust: f64,
    /// The part of it that is due to the load on the fill, N/m.
    pub surcharge: f64,
    /// Height at which it acts, m.
    pub arm: f64,
}

/// Height of the side walls' ties, as a share of that of the post: over the middle of what pushes.
const SIDE_TIE: f64 = 0.5;

/// Heights of the front wall's ties that are tried.
const FRONT_TIES: [f64; 2] = [0.5, 0.6];

/// Falls from higher call for a word, m (Public Playground Safety Handbook, CPSC 325: guardrails for small
/// children over 20 inches).
const FALL: f64 = 0.508;

/// A sheet for every boxed landing of a plan, in riding order. None on a surveyed line, and none for a landing
/// that is as low as a sod.
pub fn boxes(plan: &Plan, profile: &Profile, stock: &WallStock) -> Vec<BoxSheet> {
    let soil = plan.yard.soil;
    let outlines = outline::outlines(plan, profile).into_iter();
    let high = outlines.filter(|outline| outline.height(0.0) > LOWEST);
    high.map(|outline| sheet(&Design { stock, soil }, &outline))
        .collect()
}

fn sheet(design: &Design, outline: &Outline) -> BoxSheet {
    let height = outline.height(0.0);
    let length = outline.reach(LOWEST);
    let side = design.wall(length, SIDE_TIE, |at| outline.height(at));
    let (front, anchors) = front(design, outline);
    let parts = Parts {
        stock: design.stock,
        outline,
        front: &front,
        side: &side,
        anchors: anchors.as_ref(),
    };
    let mut sheet = BoxSheet {
        feature: outline.feature,
        width: outline.width,
        height,
        length,
        pushes: Wetness::ALL.map(|w| push(design, height, w)).into(),
        corner_ties: parts.corner_ties(),
        cross_tie: parts.cross_tie(),
        rod: rod(&parts),
        pieces: parts.pieces(),
        front,
        side,
        anchors,
        cautions: Vec::new(),
    };
    sheet.cautions = cautions(design, &sheet);
    sheet
}

fn push(design: &Design, height: f64, wetness: Wetness) -> Push {
    let fill = crate::build::soil::fill(design.soil, wetness);
    let push = design.push(wetness);
    Push {
        wetness,
        active: earth::active(fill.friction),
        pressure: push.at(height),
        thrust: push.thrust(height),
        surcharge: push.even * height,
        arm: push.arm(height),
    }
}

/// The front wall tied at the first height at which anchors hold it; else as they come nearest.
fn front(design: &Design, outline: &Outline) -> (Wall, Option<Anchors>) {
    let tied = FRONT_TIES.map(|share| {
        let wall = design.wall(outline.width, share, |_| outline.height(0.0));
        let anchors = anchors::anchors(design, outline, &wall);
        (wall, anchors)
    });
    let holds = |(wall, anchors): &&(Wall, Option<Anchors>)| {
        let untied = wall.posts.iter().all(|post| post.tie.is_none());
        untied || anchors.as_ref().is_some_and(|a| a.holds)
    };
    let found = tied.iter().find(holds);
    let some = tied.iter().find(|(_, anchors)| anchors.is_some());
    found.or(some).unwrap_or(&tied[0]).clone()
}

/// Tension that mild steel may bear in a rod's thread, Pa: a third of its strength of 400 MPa, over the rod's
/// full section (AISC, allowable stress design, from memory).
const STEEL: f64 = 0.33 * 400e6;

/// The hardest pull on a rod, as a share of what it bears.
fn rod(parts: &Parts) -> f64 {
    let stock = parts.stock;
    let area = 0.25 * PI * stock.rod * stock.rod;
    // The hole is drilled 2 mm wider.
    let hole = stock.rod + 0.002;
    let washer = stock.washer * stock.washer - 0.25 * PI * hole * hole;
    let may_bear = num::min(STEEL * area, ACROSS * washer);
    let level = parts.front.hardest_pull();
    let along = parts.anchors.map_or(level, |anchors| anchors.pull);
    num::max(along, parts.side.hardest_pull()) / may_bear
}

fn cautions(design: &Design, sheet: &BoxSheet) -> Vec<Caution> {
    let posts = || sheet.front.posts.iter().chain(&sheet.side.posts);
    let depth = posts().map(|post| post.depth).fold(0.0, num::max);
    let mut all = Vec::new();
    for rule in Rule::ALL {
        let height = match rule {
            Rule::Designed => sheet.height,
            Rule::Permit => sheet.height + depth,
        };
        let over = rule.over();
        if height > over {
            all.push(Caution::Review { rule, over, height });
        }
    }
    all.push(Caution::Surcharge);
    let tied = sheet.front.posts.iter().any(|post| post.tie.is_some());
    if tied && !sheet.anchors.as_ref().is_some_and(|a| a.holds) {
        all.push(Caution::NoAnchor);
    }
    let bending = sheet.anchors.as_ref().map_or(0.0, |a| a.bending);
    let parts = [
        (
            Part::Sheeting,
            num::max(sheet.front.sheeting, sheet.side.sheeting),
        ),
        (
            Part::Post,
            num::max(sheet.front.post_bending(), sheet.side.post_bending()),
        ),
        (Part::Rod, sheet.rod),
        (Part::Deadman, bending),
    ];
    let over = parts.into_iter().filter(|(_, share)| *share > 1.0);
    all.extend(over.map(|(part, _)| Caution::Overloaded { part }));
    if depth > design.stock.deepest {
        all.push(Caution::DeepHole { depth });
    }
    let checks = sheet.anchors.iter().flat_map(|a| &a.checks);
    let flooded = checks.filter(|check| check.wetness == Wetness::Flooded);
    let floods = flooded.filter(|check| check.factor < design.stock.safety);
    all.extend(floods.map(|check| Caution::Floods {
        factor: check.factor,
    }));
    if design.soil == Soil::Clay {
        all.push(Caution::Clay);
    }
    if sheet.height > FALL {
        all.push(Caution::Edge {
            height: sheet.height,
        });
    }
    all.extend([
        Caution::Drain,
        Caution::TieFirst,
        Caution::Rot,
        Caution::OldSleepers,
        Caution::Splinters,
        Caution::Nails,
        Caution::Services,
    ]);
    all
}
