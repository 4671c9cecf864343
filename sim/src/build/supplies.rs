//! What there is to build with: sizes that are sold, what the builder has, asks and pays.

use super::haul::Place;
use super::lip::{DeckKind, Stock};
use super::loads::Carriers;
use super::logs::{Log, LogRule};
use super::materials::{Buying, Waste};
use super::ramp::RampStock;
use super::tiling::Paper;
use super::upkeep::Placing;
use super::walls::WallStock;
use crate::error::{Fault, Quantity, Why};
use crate::plan::Checker;
use core::ops::RangeInclusive;
use serde::{Deserialize, Serialize};

/// Paper that sheets are printed on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PaperKind {
    /// A4 (ISO 216).
    #[default]
    A4,
    /// Letter (ANSI/ASME Y14.1, size A).
    Letter,
}

/// What there is to build with. Lengths in m; sections are thickness and width.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Supplies {
    /// What sheets are printed on.
    pub paper: PaperKind,
    /// The deck of lips.
    pub deck: DeckKind,
    /// Length and width of a sheet of plywood.
    pub sheet: [f64; 2],
    /// Thickness of the side panels of lips.
    pub panel: f64,
    /// Deck board of a lip.
    pub lip_board: [f64; 2],
    /// Ribs, legs, ties and braces of lips; braces and rails of ramps.
    pub frame: [f64; 2],
    /// Deck board of a start ramp.
    pub ramp_board: [f64; 2],
    /// Joists and beams of a start ramp.
    pub joist: [f64; 2],
    /// Posts of ramps and of boxes.
    pub post: [f64; 2],
    /// Sheeting board of boxes.
    pub sheeting: [f64; 2],
    /// Timber that is buried as an anchor: thickness along the pull, and height.
    pub deadman: [f64; 2],
    /// Diameter of rods.
    pub rod: f64,
    /// Lengths that timber is sold in.
    pub lengths: Vec<f64>,
    /// Width of the saw's cut.
    pub kerf: f64,
    /// How earth is heaped.
    pub placing: Placing,
    /// What earth is carried in.
    pub carriers: Carriers,
    /// Places where earth may be taken.
    pub borrow: Vec<Place>,
    /// Prices, waste, and what lies around.
    pub buying: Buying,
    /// The builder's own logs.
    pub logs: Vec<Log>,
    /// By which rule they are reckoned.
    pub log_rule: LogRule,
}

impl Default for Supplies {
    fn default() -> Self {
        let (lip, walls, ramp) = (Stock::default(), WallStock::default(), RampStock::default());
        Self {
            paper: PaperKind::A4,
            deck: lip.deck,
            sheet: lip.sheet,
            panel: lip.panel,
            lip_board: lip.board,
            frame: lip.rib,
            ramp_board: ramp.deck,
            joist: ramp.joist,
            post: walls.post,
            sheeting: walls.board,
            deadman: walls.deadman,
            rod: walls.rod,
            lengths: lip.lengths,
            kerf: lip.kerf,
            placing: Placing::default(),
            carriers: Carriers::default(),
            borrow: Vec::new(),
            buying: Buying {
                waste: Waste {
                    // Whole sheets are counted from the plan by which they are cut.
                    sheet: 0.0,
                    ..Waste::default()
                },
                ..Buying::default()
            },
            logs: Vec::new(),
            log_rule: LogRule::default(),
        }
    }
}

/// Most entries of each list.
const MOST: u32 = 24;

impl Supplies {
    /// What lips are made from.
    pub fn of_lips(&self) -> Stock {
        Stock {
            deck: self.deck,
            sheet: self.sheet,
            panel: self.panel,
            board: self.lip_board,
            rib: self.frame,
            leg: self.frame,
            lengths: self.lengths.clone(),
            kerf: self.kerf,
            paper: match self.paper {
                PaperKind::A4 => Paper::A4,
                PaperKind::Letter => Paper::LETTER,
            },
            ..Stock::default()
        }
    }

    /// What boxes are made from.
    pub fn of_boxes(&self) -> WallStock {
        WallStock {
            board: self.sheeting,
            post: self.post,
            deadman: self.deadman,
            corner_tie: self.frame,
            rod: self.rod,
            longest: self.longest(),
            ..WallStock::default()
        }
    }

    /// What start ramps are made from.
    pub fn of_ramps(&self) -> RampStock {
        RampStock {
            deck: self.ramp_board,
            joist: self.joist,
            bearer: self.joist,
            post: self.post,
            brace: self.frame,
            longest: self.longest(),
            ..RampStock::default()
        }
    }

    fn longest(&self) -> f64 {
        self.lengths.iter().copied().fold(0.0, crate::num::max)
    }

    /// Every fault, each with its field; none where all can be built with.
    pub fn validate(&self) -> Vec<Fault> {
        let mut checker = Checker::default();
        let c = &mut checker;
        let size = |c: &mut Checker, name: &str, value: f64, accepted: RangeInclusive<f64>| {
            c.within(name, Quantity::Sawn, value, accepted, Why::StockSize);
        };
        let sections = [
            ("lip_board", self.lip_board),
            ("frame", self.frame),
            ("ramp_board", self.ramp_board),
            ("joist", self.joist),
            ("post", self.post),
            ("sheeting", self.sheeting),
            ("deadman", self.deadman),
        ];
        for (name, [thick, wide]) in sections {
            size(c, &format!("{name}[0]"), thick, 0.01..=0.4);
            size(c, &format!("{name}[1]"), wide, 0.03..=0.4);
        }
        for (i, side) in self.sheet.into_iter().enumerate() {
            size(c, &format!("sheet[{i}]"), side, 0.5..=4.0);
        }
        size(c, "panel", self.panel, 0.009..=0.04);
        size(c, "rod", self.rod, 0.006..=0.03);
        size(c, "kerf", self.kerf, 0.0..=0.01);
        for (i, length) in self.lengths.iter().enumerate() {
            let name = format!("lengths[{i}]");
            c.within(&name, Quantity::Length, *length, 1.0..=12.0, Why::StockSize);
        }
        self.counts(c);
        self.loads(c);
        self.buying(c);
        checker.faults
    }

    fn counts(&self, c: &mut Checker) {
        let lists = [
            ("lengths", self.lengths.len(), 1),
            ("borrow", self.borrow.len(), 0),
            ("logs", self.logs.len(), 0),
            ("buying.prices", self.buying.prices.len(), 0),
            ("buying.at_hand", self.buying.at_hand.len(), 0),
        ];
        for (name, count, least) in lists {
            c.count(name, count, least..=MOST, Why::StockCount);
        }
    }

    fn loads(&self, c: &mut Checker) {
        use Quantity::{Count, Length, Sawn, Volume};
        let mut within = |name: String, of: Quantity, value: f64, accepted: RangeInclusive<f64>| {
            c.within(&name, of, value, accepted, Why::StockSize);
        };
        let carriers = [
            ("barrow", self.carriers.barrow),
            ("bucket", self.carriers.bucket),
            ("truck", self.carriers.truck),
        ];
        for (name, load) in carriers {
            within(format!("carriers.{name}"), Volume, load, 0.01..=30.0);
        }
        for (i, place) in self.borrow.iter().enumerate() {
            let at = |name: &str| format!("borrow[{i}].{name}");
            within(at("x"), Length, place.x, -200.0..=200.0);
            within(at("y"), Length, place.y, -200.0..=200.0);
            within(at("bank"), Volume, place.bank, 0.0..=1000.0);
        }
        for (i, log) in self.logs.iter().enumerate() {
            let at = |name: &str| format!("logs[{i}].{name}");
            within(at("diameter"), Sawn, log.diameter, 0.05..=2.0);
            within(at("length"), Length, log.length, 0.5..=15.0);
            within(at("count"), Count, f64::from(log.count), 0.0..=200.0);
        }
    }

    fn buying(&self, c: &mut Checker) {
        use Quantity::{Length, Number};
        let buying = &self.buying;
        let mut within = |name: String, of: Quantity, value: f64, accepted: RangeInclusive<f64>| {
            c.within(&name, of, value, accepted, Why::StockSize);
        };
        let wastes = [
            ("timber", buying.waste.timber),
            ("board", buying.waste.board),
            ("sheet", buying.waste.sheet),
            ("earth", buying.waste.earth),
        ];
        for (name, lost) in wastes {
            within(format!("buying.waste.{name}"), Number, lost, 0.0..=0.5);
        }
        for (i, price) in buying.prices.iter().enumerate() {
            let name = format!("buying.prices[{i}].price");
            within(name, Number, price.price, 0.0..=1e6);
        }
        for (i, wood) in buying.at_hand.iter().enumerate() {
            let name = format!("buying.at_hand[{i}].length");
            within(name, Length, wood.length, 0.0..=1000.0);
        }
        let earth = buying.earth_price.unwrap_or(0.0);
        within("buying.earth_price".to_owned(), Number, earth, 0.0..=1e6);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_usual_is_accepted() {
        assert_eq!(Supplies::default().validate(), []);
    }

    #[test]
    fn what_nobody_sells_is_named() {
        let mut supplies = Supplies::default();
        supplies.post[1] = 0.0;
        supplies.kerf = f64::NAN;
        supplies.lengths.clear();
        supplies.carriers.barrow = -1.0;
        let faults = supplies.validate();
        let fields: Vec<_> = faults.iter().map(|f| f.field.as_str()).collect();
        assert_eq!(fields, ["post[1]", "kerf", "lengths", "carriers.barrow"]);
        // Each is told in its own units.
        let quantities: Vec<_> = faults.iter().map(|f| f.quantity).collect();
        let of = [
            Quantity::Sawn,
            Quantity::Sawn,
            Quantity::Count,
            Quantity::Volume,
        ];
        assert_eq!(quantities, of);
    }
}
