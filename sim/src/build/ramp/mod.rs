//! A start ramp of wood: deck, joists, rows of posts, braces, rails, stair.
//!
//! The deck follows the profile exactly: level platform, rounded edge, slope, hollow. Spans come from the formulas
//! behind published span tables; loads and heights from building codes, each named where it stands. Above a
//! height the sheet defers to somebody licensed, and says so.

mod frame;
mod rails;
mod shape;
mod stock;
#[cfg(test)]
mod tests;

pub use frame::{Frame, Row, Stretch};
pub use rails::{Rails, Stair};
pub use shape::RampShape;
pub use stock::RampStock;

use crate::build::soil::earth;
use crate::build::walls::pieces::{Kind, List, Piece};
use crate::num;
use crate::plan::Plan;
use crate::profile::Profile;
use rails::FALLS;
use serde::Serialize;
use shape::Laid;

/// Everything that is needed to build a start ramp.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RampSheet {
    /// What it is like from the side.
    pub shape: RampShape,
    /// How many deck boards, each as long as the ramp is wide.
    pub deck_boards: u32,
    /// What carries the deck.
    pub frame: Frame,
    /// Rails, where a fall hurts.
    pub rails: Option<Rails>,
    /// The stair, where the platform is higher than a step.
    pub stair: Option<Stair>,
    /// What is cut.
    pub pieces: Vec<Piece>,
    /// What has to be said.
    pub cautions: Vec<Caution>,
}

/// A height over which others are to be asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Rule {
    /// International Building Code, section 105.2, and many local codes: a platform over 30 inches above the
    /// ground needs a permit.
    Permit,
    /// DCA 6 has 4 by 4 inch posts end at 8 feet (from memory): above that it is for a licensed person.
    Licensed,
}

impl Rule {
    /// Both, the lower first.
    pub const ALL: [Rule; 2] = [Rule::Permit, Rule::Licensed];

    /// Height over which it speaks, m.
    pub fn over(self) -> f64 {
        match self {
            Rule::Permit => 0.762,
            Rule::Licensed => 2.438,
        }
    }
}

/// A part that may be loaded too much.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// A post under the deck.
    Post,
    /// A beam across.
    Bearer,
    /// A post of a rail.
    RailPost,
}

/// What has to be said beside a start ramp.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Caution {
    /// Others are to be asked over a height.
    Review {
        /// Which rule.
        rule: Rule,
        /// Over which height, m.
        over: f64,
        /// The platform's own, m.
        height: f64,
    },
    /// A part bears more than it may.
    Overloaded {
        /// Which.
        part: Part,
    },
    /// A fall from here hurts: rails before anybody rides.
    Fall {
        /// How high, m.
        height: f64,
    },
    /// Rails stand outside of the deck, so that no handlebar catches in them.
    Handlebars,
    /// Wet wood is slippery: grip on the deck, and nobody rides it wet.
    Slippery,
    /// Boards lie across, so that no gap takes a wheel.
    Gaps,
    /// Braced before anybody climbs it, nobody under it.
    BraceFirst,
    /// Footings reach below frost and stand on ground that was not dug.
    Footings,
    /// Timber rots where it stays wet: to be looked at each year.
    Rot,
    /// Splinters: arrises are taken off.
    Splinters,
    /// Screws and nails that stand out: driven flush, looked at before each day.
    Nails,
    /// Cables and pipes in the ground: to be found before anything is dug.
    Services,
}

/// The sheet of a plan's start ramp; none where the plan has none of wood.
pub fn start_ramp(plan: &Plan, profile: &Profile, stock: &RampStock) -> Option<RampSheet> {
    let laid = shape::laid(plan, profile)?;
    let shape = laid.shape();
    let boards = shape.deck_length / (stock.deck[1] + stock.gap);
    let mut sheet = RampSheet {
        deck_boards: boards.ceil() as u32,
        frame: frame::frame(&laid, stock, earth(plan.yard.soil).footing),
        rails: rails::rails(&laid, stock),
        stair: rails::stair(&laid, stock),
        shape,
        pieces: Vec::new(),
        cautions: Vec::new(),
    };
    sheet.pieces = pieces(&laid, stock, &sheet);
    sheet.cautions = cautions(&sheet);
    Some(sheet)
}

/// A joist that the surface leaves by less is cut straight, m.
const STRAIGHT: f64 = 0.002;

fn pieces(laid: &Laid, stock: &RampStock, sheet: &RampSheet) -> Vec<Piece> {
    let mut list = List::default();
    let width = laid.width;
    list.add(Kind::Deck, stock.deck, width, sheet.deck_boards);
    for stretch in &sheet.frame.stretches {
        let [thick, deep] = stock.joist;
        let last = stretch.to >= sheet.shape.run;
        let (kind, deep) = if stretch.sagitta > STRAIGHT || last {
            (Kind::Rib, deep + stretch.sagitta)
        } else {
            (Kind::Joist, deep)
        };
        list.add(kind, [thick, deep], stretch.length, sheet.frame.joists);
    }
    for row in &sheet.frame.rows {
        list.add(Kind::Bearer, stock.bearer, width, 2);
        list.add(Kind::Post, stock.post, row.post, row.posts);
    }
    braces(laid, stock, &sheet.frame, &mut list);
    if let Some(rails) = &sheet.rails {
        guard(laid, stock, rails, &mut list);
    }
    if let Some(stair) = &sheet.stair {
        let boards = (stair.going / stock.deck[1]).ceil() as u32;
        let treads = boards * (stair.risers - 1);
        list.add(Kind::Stringer, stock.joist, stair.length, stair.stringers);
        list.add(Kind::Deck, stock.deck, stair.width, treads);
    }
    list.0
}

/// Two braces across each row, and one on either side from the foot of a row to the head of the next.
fn braces(laid: &Laid, stock: &RampStock, frame: &Frame, list: &mut List) {
    for (i, row) in frame.rows.iter().enumerate().filter(|(_, row)| row.braced) {
        list.add(
            Kind::Brace,
            stock.brace,
            num::hypot(laid.width, row.post),
            2,
        );
        if let Some(next) = frame.rows.get(i + 1) {
            let long = num::hypot(next.at - row.at, row.post);
            list.add(Kind::Brace, stock.brace, long, 2);
        }
    }
}

/// A rail on top and one half way up along either side and the back, posts that reach down past the joists.
fn guard(laid: &Laid, stock: &RampStock, rails: &Rails, list: &mut List) {
    let along = num::length(laid.point(rails.to) - laid.point(0.0)) + laid.sagitta(0.0, rails.to);
    let lengths = (along / stock.longest).ceil();
    list.add(Kind::Rail, stock.brace, along / lengths, 4 * lengths as u32);
    list.add(Kind::Rail, stock.brace, rails.back, 2);
    let post = rails.height + stock.deck[0] + stock.joist[1];
    list.add(Kind::RailPost, stock.post, post, 2 * rails.posts);
    let square = [stock.brace[0]; 2];
    list.add(Kind::Baluster, square, rails.height, rails.balusters);
}

fn cautions(sheet: &RampSheet) -> Vec<Caution> {
    let height = sheet.shape.height;
    let rules = Rule::ALL.into_iter().map(|rule| (rule, rule.over()));
    let mut all: Vec<Caution> = rules
        .filter(|(_, over)| height > *over)
        .map(|(rule, over)| Caution::Review { rule, over, height })
        .collect();
    let rows = &sheet.frame.rows;
    let most = |part: fn(&Row) -> f64| rows.iter().map(part).fold(0.0, num::max);
    let parts = [
        (Part::Post, most(|row| row.post_use)),
        (Part::Bearer, most(|row| row.bearer_use)),
        (
            Part::RailPost,
            sheet.rails.as_ref().map_or(0.0, |r| r.bending),
        ),
    ];
    let over = parts.into_iter().filter(|(_, share)| *share > 1.0);
    all.extend(over.map(|(part, _)| Caution::Overloaded { part }));
    if height > FALLS[0] {
        all.extend([Caution::Fall { height }, Caution::Handlebars]);
    }
    all.extend([
        Caution::Slippery,
        Caution::Gaps,
        Caution::BraceFirst,
        Caution::Footings,
        Caution::Rot,
        Caution::Splinters,
        Caution::Nails,
        Caution::Services,
    ]);
    all
}
