//! The anchors of the front wall: rods from its posts to timbers buried behind it.

use super::deadman::{STEEPEST, clear, resistance, sloped};
use super::design::{Design, Post, STANDS, Wall};
use super::outline::Outline;
use super::post::tied;
use crate::build::softwood::{BENDING, PERMANENT, section_modulus};
use crate::build::soil::{Wetness, fill};
use crate::num;
use serde::Serialize;

/// How far the buried timbers stay away from either side wall, m (common practice, no source).
const ROOM: f64 = 0.05;

/// Steps in which a place is looked for, m: down, and back from the wall.
const STEPS: [f64; 2] = [0.1, 0.05];

/// What holds the front wall.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Anchors {
    /// How many rods, one from each post of the front wall.
    pub ties: u32,
    /// Height of the rods at the wall over its foot, m.
    pub tie_height: f64,
    /// Length of a rod from the wall's inner face to the buried timbers, m.
    pub tie_length: f64,
    /// Hardest pull along one rod, N.
    pub pull: f64,
    /// Level distance from the wall to the buried timbers, m.
    pub distance: f64,
    /// Depth of their bottom below the fill's surface over them, m.
    pub depth: f64,
    /// Depth of their bottom below the foot of the front wall, m: so deep it is dug before the fill goes in.
    pub dug: f64,
    /// How many timbers lie on top of each other.
    pub courses: u32,
    /// Length of each, m.
    pub length: f64,
    /// Height of the place where the rods take hold of them, over their bottom, m.
    pub hold: f64,
    /// Bending of a timber between rods, as a share of what it may bear.
    pub bending: f64,
    /// What they hold against what pulls, in each state of the fill.
    pub checks: Vec<AnchorCheck>,
    /// Whether dry and wet fill leave the factor of safety asked for.
    pub holds: bool,
}

/// What holds against what pulls.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct AnchorCheck {
    /// In which state of the fill.
    pub wetness: Wetness,
    /// Push of the fill on the whole wall, N.
    pub thrust: f64,
    /// Pull along all rods, N.
    pub pull: f64,
    /// What the buried timbers hold along the rods before they give way, N.
    pub resistance: f64,
    /// How many times the pull that is.
    pub factor: f64,
}

/// Where buried timbers may lie.
#[derive(Clone, Copy)]
struct Place {
    distance: f64,
    depth: f64,
    dug: f64,
    courses: u32,
    /// Cosine of the rods' slope.
    cosine: f64,
    hold: f64,
}

/// Anchors of a front wall: the shallowest that hold it, or, where none do, those that come nearest. None where
/// no post has a tie, or there is no place for them.
pub(super) fn anchors(design: &Design, outline: &Outline, front: &Wall) -> Option<Anchors> {
    let tie = front.posts.iter().find_map(|post| post.tie)?.height;
    let mut best: Option<Anchors> = None;
    let steps = (design.stock.deepest / STEPS[0]).round() as u32;
    for i in 0..=steps {
        let dug = STEPS[0] * f64::from(i);
        let Some(place) = place(design, outline, tie, dug) else {
            continue;
        };
        let found = at(design, outline, front, tie, &place);
        if found.holds {
            return Some(found);
        }
        if best
            .as_ref()
            .is_none_or(|b| least(&found.checks) > least(&b.checks))
        {
            best = Some(found);
        }
    }
    best
}

/// The least factor of safety in dry fill and in wet.
fn least(checks: &[AnchorCheck]) -> f64 {
    let stands = checks.iter().filter(|c| STANDS.contains(&c.wetness));
    stands.map(|c| c.factor).fold(f64::INFINITY, num::min)
}

/// The nearest place behind the wall where the wedges stay clear of each other.
fn place(design: &Design, outline: &Outline, tie: f64, dug: f64) -> Option<Place> {
    let height = outline.height(0.0);
    let friction = |w: &Wetness| fill(design.soil, *w).friction;
    let timber = design.stock.deadman[1];
    let steps = (outline.length / STEPS[1]) as u32;
    (1..=steps).find_map(|i| {
        let distance = STEPS[1] * f64::from(i);
        let depth = outline.over_foot(distance) + dug;
        let courses = num::max(1.0, (0.5 * depth / timber).ceil());
        let needed = STANDS.iter().map(|w| clear(height, depth, friction(w)));
        // Passive pressure grows with depth: it acts a third of the depth over the bottom.
        let hold = num::min(depth / 3.0, courses * timber);
        let rise = tie - (hold - dug);
        let fits = depth >= courses * timber
            && distance >= needed.fold(0.0, num::max)
            && rise.abs() <= STEEPEST * distance;
        fits.then(|| Place {
            distance,
            depth,
            dug,
            courses: courses as u32,
            cosine: distance / num::hypot(distance, rise),
            hold,
        })
    })
}

/// Pull of the fill on all posts of a wall, N, level.
fn pull(design: &Design, front: &Wall, wetness: Wetness) -> f64 {
    let push = design.push(wetness);
    let of = |post: &Post| {
        let tie = post.tie.map_or(0.0, |tie| tie.height);
        let size = [post.wide, post.height];
        let held = tied(&push, size, tie, design.foot(wetness));
        held.map_or(post.wide * push.thrust(post.height), |held| held.pull)
    };
    front.posts.iter().map(of).sum()
}

fn at(design: &Design, outline: &Outline, front: &Wall, tie: f64, place: &Place) -> Anchors {
    let length = outline.width - 2.0 * ROOM;
    let [thick, timber] = design.stock.deadman;
    let face = f64::from(place.courses) * timber;
    let check = |&wetness: &Wetness| {
        let pull = pull(design, front, wetness) / place.cosine;
        let face = resistance(&fill(design.soil, wetness), place.depth, face);
        let resistance = face * length * sloped(place.cosine);
        AnchorCheck {
            wetness,
            thrust: front.length * design.push(wetness).thrust(outline.height(0.0)),
            pull,
            resistance,
            factor: resistance / pull,
        }
    };
    let checks: Vec<AnchorCheck> = Wetness::ALL.iter().map(check).collect();
    let pull = front.hardest_pull() / place.cosine;
    let even = front.hardest_pull() / front.spacing / f64::from(place.courses);
    let may_bear = section_modulus(timber, thick) * BENDING * PERMANENT;
    Anchors {
        ties: front.posts.len() as u32,
        tie_height: tie,
        tie_length: place.distance / place.cosine,
        pull,
        distance: place.distance,
        depth: place.depth,
        dug: place.dug,
        courses: place.courses,
        length,
        hold: place.hold,
        bending: even * front.spacing * front.spacing / 8.0 / may_bear,
        holds: least(&checks) >= design.stock.safety,
        checks,
    }
}
