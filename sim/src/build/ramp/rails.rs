//! Rails where a fall hurts, and a stair up to the platform.

use super::frame::board_span;
use super::shape::Laid;
use super::stock::RampStock;
use crate::build::softwood::{BENDING, section_modulus};
use crate::num;
use serde::Serialize;

/// A rail keeps small children from falls from over this height, m, and nobody gets through it from the next on
/// (Public Playground Safety Handbook, CPSC 325, table 4: 20 and 30 inches for children before school; 30 inches
/// is also where the International Residential Code asks for a guard, section R312).
pub(super) const FALLS: [f64; 2] = [0.508, 0.762];

/// Height of a rail beside somebody on a bike, m (42 inches, AASHTO Guide for the Development of Bicycle
/// Facilities 2012, from memory).
const HIGH: f64 = 1.067;

/// Widest gap that no child gets through, m (3.5 inches, CPSC 325, table 4).
const CHILD: f64 = 0.089;

/// Posts of rails no farther apart, m (6 feet, DCA 6, from memory).
const APART: f64 = 1.83;

/// Load on a rail, N (200 lb, International Residential Code, table R301.5).
const LEANS: f64 = 890.0;

/// What wood bears more for a moment (ten minutes, NDS table 2.3.2, from memory).
const MOMENT: f64 = 1.6;

/// Highest riser and least going of a stair, m (7 3/4 and 10 inches, International Residential Code, section
/// R311.7.5).
const RISER: f64 = 0.196;
const GOING: f64 = 0.254;

/// Width of the stair, m (36 inches, International Residential Code, section R311.7.1).
const STAIR: f64 = 0.914;

/// Rails along the ramp.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Rails {
    /// Height over the deck, m.
    pub height: f64,
    /// Either side has a rail from the platform's back to here, measured level, m.
    pub to: f64,
    /// Either side is closed with balusters to here, m; 0 where it need not be.
    pub closed_to: f64,
    /// Length of the rail across the back, beside the stair, m.
    pub back: f64,
    /// Widest gap between balusters, m.
    pub gap: f64,
    /// Posts of one side.
    pub posts: u32,
    /// Balusters of both sides and the back.
    pub balusters: u32,
    /// Bending of a post that somebody falls against, as a share of what it bears.
    pub bending: f64,
}

/// A stair behind the platform.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Stair {
    /// Width, m.
    pub width: f64,
    /// How many risers.
    pub risers: u32,
    /// Height of each, m.
    pub rise: f64,
    /// Depth of a tread, m; there is one less than risers.
    pub going: f64,
    /// Stringers side by side.
    pub stringers: u32,
    /// Length of each, m.
    pub length: f64,
}

/// Rails, where the platform is high enough to need them.
pub(super) fn rails(laid: &Laid, stock: &RampStock) -> Option<Rails> {
    let to = laid.reach(FALLS[0]);
    if laid.height(0.0) <= FALLS[0] && to <= 0.0 {
        return None;
    }
    let closed_to = laid.reach(FALLS[1]);
    let back = num::max(0.0, laid.width - STAIR);
    let baluster = stock.brace[0];
    let closed = 2.0 * closed_to + if closed_to > 0.0 { back } else { 0.0 };
    let [thick, wide] = stock.post;
    let may_bear = section_modulus(wide, thick) * BENDING * MOMENT;
    Some(Rails {
        height: HIGH,
        to,
        closed_to,
        back,
        gap: CHILD,
        posts: (to / APART).ceil() as u32 + 1,
        balusters: (closed / (CHILD + baluster)).ceil() as u32,
        bending: LEANS * HIGH / may_bear,
    })
}

/// The stair, where the platform is higher than a step.
pub(super) fn stair(laid: &Laid, stock: &RampStock) -> Option<Stair> {
    let height = laid.height(0.0);
    let risers = (height / RISER).ceil();
    if risers < 2.0 {
        return None;
    }
    let width = num::min(STAIR, laid.width);
    Some(Stair {
        width,
        risers: risers as u32,
        rise: height / risers,
        going: GOING,
        stringers: (width / board_span(stock)).ceil() as u32 + 1,
        length: num::hypot(height, GOING * (risers - 1.0)),
    })
}
