//! One list of everything that is bought, with waste, what lies around already, and what it costs.

use super::heap::Volumes;
use super::logs::BOARD_FOOT;
use serde::{Deserialize, Serialize};

/// How a piece of wood is bought.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Grade {
    /// Posts, joists, frames, ties.
    Timber,
    /// Sheeting and deck boards.
    Board,
    /// Plywood, by its area: the section is its thickness and its width.
    Sheet,
}

/// Pieces of one length and section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wanted {
    /// How it is bought.
    pub grade: Grade,
    /// Thickness and width, m.
    pub section: [f64; 2],
    /// Length, m.
    pub length: f64,
    /// How many.
    pub count: u32,
}

/// How much of what is bought is lost in cutting, as a share of what is bought.
///
/// # References
/// Frame: 10 % (US Army Engineer School, Subcourse EN0069, §4-8). Boards: 15 % (Subcourse EN0113, edition 6, lesson
/// 5, a floor of boards). Sheets: 10 % where they are bought to suit (Timber Calculations, furnituremaking.us); cut from
/// a plan for cutting, they need none.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Waste {
    /// Of timber.
    pub timber: f64,
    /// Of boards.
    pub board: f64,
    /// Of sheets.
    pub sheet: f64,
    /// Of earth, spilt and left behind (common practice, no source).
    pub earth: f64,
}

impl Default for Waste {
    fn default() -> Self {
        Self {
            timber: 0.10,
            board: 0.15,
            sheet: 0.10,
            earth: 0.05,
        }
    }
}

impl Waste {
    fn of(&self, grade: Grade) -> f64 {
        match grade {
            Grade::Timber => self.timber,
            Grade::Board => self.board,
            Grade::Sheet => self.sheet,
        }
    }
}

/// What a price is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Per {
    /// A metre of length.
    Metre,
    /// A square metre of its broad side.
    SquareMetre,
    /// A cubic metre.
    CubicMetre,
    /// A board foot.
    BoardFoot,
}

/// The builder's own price of one sort, in whatever money.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Price {
    /// Of which grade.
    pub grade: Grade,
    /// Of which thickness and width, m; of any, where left out.
    #[serde(default)]
    pub section: Option<[f64; 2]>,
    /// What it is for.
    pub per: Per,
    /// How much.
    pub price: f64,
}

/// Wood that lies around already.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AtHand {
    /// Grade.
    pub grade: Grade,
    /// Thickness and width, m.
    pub section: [f64; 2],
    /// Length together, m.
    pub length: f64,
}

/// What the builder says about buying.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Buying {
    /// Waste.
    pub waste: Waste,
    /// Prices of wood; of two that fit, the one that names the section, then the first.
    pub prices: Vec<Price>,
    /// Wood that lies around.
    pub at_hand: Vec<AtHand>,
    /// Price of a cubic metre of loose earth.
    pub earth_price: Option<f64>,
}

/// One line of the list: all pieces of one grade and section.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Line {
    /// Grade.
    pub grade: Grade,
    /// Thickness and width, m.
    pub section: [f64; 2],
    /// How many pieces are cut from it.
    pub pieces: u32,
    /// The longest of them, m.
    pub longest: f64,
    /// Length of all pieces together, m.
    pub length: f64,
    /// Taken from what lies around, m of pieces.
    pub at_hand: f64,
    /// To be bought, waste included, m.
    pub buy: f64,
    /// The same, m³.
    pub volume: f64,
    /// The same, board feet of its own thickness.
    pub board_feet: f64,
    /// What it costs, where there is a price.
    pub cost: Option<f64>,
}

/// The whole list.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Bill {
    /// Wood, in the order in which sorts first came.
    pub lines: Vec<Line>,
    /// Earth to be bought, waste included, m³ loose.
    pub earth: f64,
    /// What the earth costs, where there is a price and any is bought.
    pub earth_cost: Option<f64>,
    /// Sum of all costs that are known.
    pub cost: f64,
    /// How many lines of what is bought have no price, earth included.
    pub unpriced: usize,
}

/// Sections within this of each other are one, m: a tenth of a millimetre.
const SAME: f64 = 1e-4;

fn same(a: [f64; 2], b: [f64; 2]) -> bool {
    (a[0] - b[0]).abs() < SAME && (a[1] - b[1]).abs() < SAME
}

/// Makes the list from pieces and earth that is missing.
///
/// Waste is a share of what is bought: n metres of pieces need n/(1 − waste). What lies around has the same waste.
pub fn bill(pieces: impl IntoIterator<Item = Wanted>, earth: &Volumes, buying: &Buying) -> Bill {
    let mut lines: Vec<Line> = Vec::new();
    for piece in pieces.into_iter().filter(|p| p.count > 0) {
        let known = lines
            .iter_mut()
            .find(|l| l.grade == piece.grade && same(l.section, piece.section));
        let length = f64::from(piece.count) * piece.length;
        match known {
            Some(line) => {
                line.pieces += piece.count;
                line.length += length;
                line.longest = crate::num::max(line.longest, piece.length);
            }
            None => lines.push(Line {
                grade: piece.grade,
                section: piece.section,
                pieces: piece.count,
                longest: piece.length,
                length,
                at_hand: 0.0,
                buy: 0.0,
                volume: 0.0,
                board_feet: 0.0,
                cost: None,
            }),
        }
    }
    for line in &mut lines {
        reckon(line, buying);
    }
    let earth = earth.loose / (1.0 - buying.waste.earth);
    let earth_cost = buying
        .earth_price
        .filter(|_| earth > 0.0)
        .map(|p| p * earth);
    let open = |l: &&Line| l.buy > 0.0 && l.cost.is_none();
    let unpriced = lines.iter().filter(open).count();
    Bill {
        cost: lines.iter().filter_map(|l| l.cost).sum::<f64>() + earth_cost.unwrap_or(0.0),
        unpriced: unpriced + usize::from(earth > 0.0 && earth_cost.is_none()),
        lines,
        earth,
        earth_cost,
    }
}

fn reckon(line: &mut Line, buying: &Buying) {
    let kept = 1.0 - buying.waste.of(line.grade);
    let fits = |a: &&AtHand| a.grade == line.grade && same(a.section, line.section);
    let around: f64 = buying.at_hand.iter().filter(fits).map(|a| a.length).sum();
    line.at_hand = crate::num::min(around * kept, line.length);
    line.buy = (line.length - line.at_hand) / kept;
    line.volume = line.buy * line.section[0] * line.section[1];
    line.board_feet = line.volume / BOARD_FOOT;
    let of = |p: &&Price| p.grade == line.grade;
    let named = |p: &&Price| p.section.is_some_and(|s| same(s, line.section));
    let any = |p: &&Price| p.section.is_none();
    let prices = || buying.prices.iter().filter(of);
    let price = prices().find(named).or_else(|| prices().find(any));
    line.cost = price.map(|p| {
        p.price
            * match p.per {
                Per::Metre => line.buy,
                Per::SquareMetre => line.buy * line.section[1],
                Per::CubicMetre => line.volume,
                Per::BoardFoot => line.board_feet,
            }
    });
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rail(length: f64, count: u32) -> Wanted {
        Wanted {
            grade: Grade::Timber,
            section: [0.1, 0.1],
            length,
            count,
        }
    }

    fn buying() -> Buying {
        Buying {
            waste: Waste {
                timber: 0.2,
                ..Waste::default()
            },
            ..Buying::default()
        }
    }

    #[test]
    fn pieces_of_one_section_are_one_line() {
        let pieces = [rail(2.0, 3), rail(1.0, 2), rail(2.5, 0)];
        let bill = bill(pieces, &Volumes::default(), &buying());
        let [line] = bill.lines.as_slice() else {
            panic!("{bill:?}")
        };
        assert_eq!((line.pieces, line.longest, line.length), (5, 2.0, 8.0));
        assert!((line.buy - 10.0).abs() < 1e-12 && (line.volume - 0.1).abs() < 1e-12);
        assert_eq!((line.cost, bill.unpriced), (None, 1));
    }

    #[test]
    fn what_lies_around_is_taken_off_and_wastes_as_well() {
        let mut buying = buying();
        let around = |grade| AtHand {
            grade,
            section: [0.1, 0.1],
            length: 5.0,
        };
        buying.at_hand = [Grade::Timber, Grade::Board].map(around).into();
        let line = &bill([rail(2.0, 4)], &Volumes::default(), &buying).lines[0];
        assert!((line.at_hand - 4.0).abs() < 1e-12 && (line.buy - 5.0).abs() < 1e-12);
        let line = &bill([rail(1.0, 2)], &Volumes::default(), &buying).lines[0];
        assert_eq!((line.at_hand, line.buy), (2.0, 0.0));
    }

    #[test]
    fn a_price_that_names_the_section_comes_first() {
        let mut buying = buying();
        let price = |section, per, price| Price {
            grade: Grade::Timber,
            section,
            per,
            price,
        };
        buying.prices = vec![price(None, Per::Metre, 3.0)];
        let cost = |buying: &Buying| bill([rail(2.0, 4)], &Volumes::default(), buying).cost;
        assert!((cost(&buying) - 30.0).abs() < 1e-12);
        let own = Some([0.1, 0.1]);
        for (per, expected) in [
            (Per::Metre, 20.0),
            (Per::SquareMetre, 2.0),
            (Per::CubicMetre, 0.2),
            (Per::BoardFoot, 0.2 / BOARD_FOOT),
        ] {
            buying.prices.truncate(1);
            buying.prices.push(price(own, per, 2.0));
            assert!((cost(&buying) - expected).abs() < 1e-9, "{per:?}");
        }
    }

    #[test]
    fn earth_is_bought_loose() {
        let mut buying = buying();
        let earth = Volumes {
            loose: 1.9,
            ..Volumes::default()
        };
        let none: [Wanted; 0] = [];
        assert_eq!(bill(none, &earth, &buying).unpriced, 1);
        buying.earth_price = Some(10.0);
        let bill = bill(none, &earth, &buying);
        assert!((bill.earth - 2.0).abs() < 1e-12 && (bill.cost - 20.0).abs() < 1e-12);
        assert_eq!(bill.unpriced, 0);
    }
}
