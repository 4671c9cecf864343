//! What carries the deck: joists along, rows of posts with a beam across, braces.

use super::shape::Laid;
use super::stock::RampStock;
use crate::build::softwood::{
    BEND, BENDING, MOST_SLENDER, REPETITIVE, SHEAR, STIFFNESS, post_load, section_modulus,
    span_in_bend, span_in_bending, span_under_point,
};
use crate::num;
use serde::Serialize;

/// Joists no farther apart under boards of 38 mm or more, m (24 inches; International Residential Code, section
/// R507, from memory).
const WIDEST: f64 = 0.61;

/// From this height on rows of posts are braced, m (2 feet, DCA 6, from memory).
const BRACED: f64 = 0.61;

/// Most posts of a row.
const MOST_POSTS: u32 = 12;

/// The frame under the deck.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Frame {
    /// Distance between joists, m.
    pub spacing: f64,
    /// How many joists lie side by side.
    pub joists: u32,
    /// Farthest that a joist may reach from one row of posts to the next, m.
    pub may_span: f64,
    /// Rows of posts, from the back on.
    pub rows: Vec<Row>,
    /// Stretches of joists between them, the last one down to the foot on the ground.
    pub stretches: Vec<Stretch>,
}

/// A row of posts across the ramp, with a beam on either side of it under the joists.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Row {
    /// Level distance from the platform's back, m.
    pub at: f64,
    /// Height of the surface over the ground, m.
    pub height: f64,
    /// How many posts.
    pub posts: u32,
    /// Length of a post over the ground, m, up to the joists.
    pub post: f64,
    /// Load on a post, N.
    pub load: f64,
    /// Load as a share of what the post bears.
    pub post_use: f64,
    /// Bending or shear of the beams, as a share of what they bear.
    pub bearer_use: f64,
    /// Side of a square footing under each post, m.
    pub footing: f64,
    /// Whether it is braced.
    pub braced: bool,
}

/// Joists from one row to the next.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Stretch {
    /// From where, level from the platform's back, m.
    pub from: f64,
    /// To where, m.
    pub to: f64,
    /// Length of a joist, m.
    pub length: f64,
    /// How far the surface bends off a straight joist, m.
    pub sagitta: f64,
}

/// Farthest that a deck board may reach between joists, m.
pub(super) fn board_span(stock: &RampStock) -> f64 {
    let [thick, wide] = stock.deck;
    let moment = section_modulus(wide, thick) * BENDING;
    let even = span_in_bending((stock.live + stock.dead) * wide, moment);
    num::min(
        num::min(span_under_point(stock.point, moment), even),
        WIDEST,
    )
}

/// Farthest that a joist may reach, m, at a spacing, m.
///
/// # References
/// Simple beams, with bending under all load, bend under the live load and shear at the ends, as table 2 of
/// DCA 6 is made.
pub(super) fn joist_span(stock: &RampStock, spacing: f64) -> f64 {
    let [thick, deep] = stock.joist;
    let all = (stock.live + stock.dead) * spacing;
    let modulus = section_modulus(thick, deep);
    let bending = span_in_bending(all, modulus * BENDING * REPETITIVE);
    let inertia = 0.5 * modulus * deep;
    let bend = span_in_bend(stock.live * spacing, STIFFNESS, inertia, BEND);
    let shear = 4.0 * SHEAR * thick * deep / (3.0 * all);
    let point = span_under_point(stock.point, modulus * BENDING);
    [bend, shear, point].into_iter().fold(bending, num::min)
}

/// The frame of a ramp on ground that bears so much under a footing, Pa.
pub(super) fn frame(laid: &Laid, stock: &RampStock, bears: f64) -> Frame {
    let gaps = (laid.width / board_span(stock)).ceil();
    let spacing = laid.width / gaps;
    let may_span = num::min(joist_span(stock, spacing), stock.longest);
    let places = places(laid, stock, may_span);
    let row = |i: usize| {
        let near = |j: Option<&f64>| j.map_or(0.0, |&x| (x - places[i]).abs());
        let before = i.checked_sub(1).and_then(|j| places.get(j));
        let after = places.get(i + 1).copied().unwrap_or(laid.run());
        let carries = 0.5 * (near(before) + near(Some(&after)));
        self::row(laid, stock, places[i], carries, bears)
    };
    let rows: Vec<Row> = (0..places.len()).map(row).collect();
    let ends = places.iter().copied().skip(1).chain([laid.run()]);
    let stretch = |(&from, to): (&f64, f64)| Stretch {
        from,
        to,
        length: num::length(laid.point(to) - laid.point(from)),
        sagitta: laid.sagitta(from, to),
    };
    Frame {
        spacing,
        joists: gaps as u32 + 1,
        may_span,
        stretches: places.iter().zip(ends).map(stretch).collect(),
        rows,
    }
}

/// Where rows of posts stand: at the platform's back and edge, and down the slope while joists and beams have
/// room over the ground.
fn places(laid: &Laid, stock: &RampStock, may_span: f64) -> Vec<f64> {
    let needs = stock.deck[0] + stock.joist[1] + stock.bearer[1];
    let last = num::max(laid.reach(needs), laid.platform());
    let mut places = vec![0.0];
    for end in [laid.platform(), last] {
        let from = places[places.len() - 1];
        // Along the slope a joist is longer than from above.
        let long = num::length(laid.point(end) - laid.point(from)) + laid.sagitta(from, end);
        let bays = (long / may_span).ceil();
        let step = (end - from) / num::max(bays, 1.0);
        places.extend((1..=bays as u32).map(|i| from + step * f64::from(i)));
    }
    places
}

fn row(laid: &Laid, stock: &RampStock, at: f64, carries: f64, bears: f64) -> Row {
    let height = laid.height(at);
    let deck = stock.deck[0] + stock.joist[1];
    let line = (stock.live + stock.dead) * carries;
    let [thick, deep] = stock.bearer;
    let post = num::max(height - deck, 0.0);
    let with = |posts: u32| {
        let span = laid.width / f64::from(posts - 1);
        // Beams on more than two posts bend no more than on two, and a middle post bears at most 5/4 of its part.
        let bending = line * span * span / 8.0 / (2.0 * section_modulus(thick, deep) * BENDING);
        let shear = 1.5 * 0.625 * line * span / (2.0 * thick * deep * SHEAR);
        let load = if posts > 2 { 1.25 } else { 0.5 } * line * span;
        Row {
            at,
            height,
            posts,
            post,
            load,
            post_use: post_use(stock, post, load),
            bearer_use: num::max(bending, shear),
            footing: (load / bears).sqrt(),
            braced: height > BRACED,
        }
    };
    let fits = |row: &Row| row.bearer_use <= 1.0 && row.post_use <= 1.0;
    (2..MOST_POSTS)
        .map(with)
        .find(fits)
        .unwrap_or_else(|| with(MOST_POSTS))
}

/// Load as a share of what a post bears; no post is more slender than may be.
fn post_use(stock: &RampStock, length: f64, load: f64) -> f64 {
    let thin = num::min(stock.post[0], stock.post[1]);
    let slender = length / thin / MOST_SLENDER;
    num::max(load / post_load(stock.post, length), slender)
}
