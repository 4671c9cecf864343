//! Rectangles out of sheets of one size, on the fewest sheets.
//!
//! Some packing on the fewest sheets has every rectangle pushed left and down until it touches another or the
//! edge, so its corner stands at sums of other rectangles' sides (Herz 1972, IBM J. Res. Dev. 16(5); Christofides
//! and Whitlock 1977, Oper. Res. 25(1): normal patterns). So only such places are tried; all of them, where that
//! takes no longer than a moment. Cuts need not go through from edge to edge: a hand-held saw stops where it must.

use serde::Serialize;

/// Lengths that differ by less are the same, m.
const SAME: f64 = 1e-6;

/// Most places that one search looks at before it takes what it has.
const STEPS: u32 = 200_000;

/// Most places along one axis that are tried.
const PLACES: usize = 100;

/// A rectangle to be cut out.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Blank {
    /// Along and across the sheet, m.
    pub size: [f64; 2],
    /// Whether it may be turned by a quarter: not where the grain has to run its way.
    pub turns: bool,
}

/// Where a rectangle lies.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Placed {
    /// Index of the rectangle.
    pub blank: usize,
    /// Its corner nearest to the sheet's own corner, along and across, m.
    pub at: [f64; 2],
    /// Whether it is turned by a quarter.
    pub turned: bool,
}

/// Rectangles laid out on sheets.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Packing {
    /// The sheets, each with what is cut from it.
    pub sheets: Vec<Vec<Placed>>,
    /// Rectangles larger than a sheet, by index.
    pub too_large: Vec<usize>,
    /// Whether no packing of these rectangles takes fewer sheets.
    pub fewest: bool,
}

/// Packs rectangles; `sheet` is its length and width, m, `kerf` what the saw takes between two of them, m.
pub fn pack(blanks: &[Blank], sheet: [f64; 2], kerf: f64) -> Packing {
    // Every rectangle takes its kerf with it, and the sheet is larger by the one that its edge spares.
    let room = sheet.map(|s| s + kerf);
    let items = blanks.iter().enumerate();
    let items = items.map(|(blank, b)| Item {
        blank,
        ways: ways(b, room, kerf),
    });
    let (mut items, none): (Vec<_>, Vec<_>) = items.partition(|item| !item.ways.is_empty());
    items.sort_by(|a, b| b.area().total_cmp(&a.area()));
    let [columns, rows] = [0, 1].map(|axis| places(&items, axis, room[axis]));
    let whole = columns.len() < PLACES && rows.len() < PLACES;
    let mut search = Search {
        items,
        room,
        columns,
        rows,
        most: usize::MAX,
        placed: Vec::new(),
        steps: 0,
    };
    let fewest = search.run() && whole;
    let mut sheets = vec![Vec::new(); search.used()];
    for (sheet, placed, _) in search.placed {
        sheets[sheet].push(placed);
    }
    Packing {
        sheets,
        too_large: none.into_iter().map(|item| item.blank).collect(),
        fewest,
    }
}

/// A rectangle with the sizes it may have on the sheet, kerf and all: as it is, and turned.
struct Item {
    blank: usize,
    ways: Vec<([f64; 2], bool)>,
}

impl Item {
    fn area(&self) -> f64 {
        self.ways[0].0[0] * self.ways[0].0[1]
    }
}

fn ways(blank: &Blank, room: [f64; 2], kerf: f64) -> Vec<([f64; 2], bool)> {
    let [a, b] = blank.size.map(|s| s + kerf);
    let mut ways = vec![([a, b], false)];
    if blank.turns && (a - b).abs() > SAME {
        ways.push(([b, a], true));
    }
    ways.retain(|(w, _)| w[0] <= room[0] + SAME && w[1] <= room[1] + SAME);
    ways
}

/// The places along one axis where a corner may stand: sums of sides, up to so many.
fn places(items: &[Item], axis: usize, room: f64) -> Vec<f64> {
    let mut places = vec![0.0];
    for item in items {
        for from in places.clone() {
            for (size, _) in &item.ways {
                let to = from + size[axis];
                let known = places.iter().any(|p: &f64| (p - to).abs() < SAME);
                if to < room - SAME && !known && places.len() < PLACES {
                    places.push(to);
                }
            }
        }
    }
    places.sort_by(f64::total_cmp);
    places
}

/// A rectangle on a sheet: which sheet, where, and its size with the kerf.
type Laid = (usize, Placed, [f64; 2]);

struct Search {
    items: Vec<Item>,
    room: [f64; 2],
    columns: Vec<f64>,
    rows: Vec<f64>,
    /// Sheets that may be taken.
    most: usize,
    /// What is placed so far, in the order of the items.
    placed: Vec<Laid>,
    steps: u32,
}

impl Search {
    /// Packs on as few sheets as it finds; tells whether fewer are ruled out.
    fn run(&mut self) -> bool {
        while self.placed.len() < self.items.len() {
            let n = self.placed.len();
            let alone = self.next(n, None).map(|(_, laid)| laid);
            self.placed
                .push(alone.expect("a sheet of its own holds it"));
        }
        let needed: f64 = self.items.iter().map(Item::area).sum();
        let least = (needed / (self.room[0] * self.room[1]) - SAME).ceil() as usize;
        while self.used() > least {
            self.most = self.used() - 1;
            self.steps = 0;
            let found = core::mem::take(&mut self.placed);
            if !self.place(0) {
                self.placed = found;
                return self.steps < STEPS;
            }
        }
        true
    }

    fn used(&self) -> usize {
        self.placed.iter().map(|p| p.0 + 1).max().unwrap_or(0)
    }

    /// Places the rectangles from the `n`-th on, where they all find a place.
    fn place(&mut self, n: usize) -> bool {
        if n == self.items.len() {
            return true;
        }
        let mut from = None;
        while let Some((at, laid)) = self.next(n, from) {
            self.placed.push(laid);
            if self.place(n + 1) {
                return true;
            }
            self.placed.pop();
            from = Some(at);
        }
        false
    }

    /// The next free place of the `n`-th rectangle after one, with its number; none once all steps are taken.
    ///
    /// Places are counted by sheet, then along, across and way. Of sheets that are still whole one is tried, and
    /// rectangles that are alike are placed in order.
    fn next(&mut self, n: usize, after: Option<usize>) -> Option<(usize, Laid)> {
        let (columns, rows) = (self.columns.len(), self.rows.len());
        let ways = self.items[n].ways.len();
        let sheets = self.most.min(self.used() + 1);
        let alike = n > 0 && self.items[n - 1].ways == self.items[n].ways;
        let before = alike.then(|| self.placed[n - 1]);
        let first = before.map_or(0, |laid| laid.0 * columns * rows * ways);
        let from = after.map_or(first, |at| at + 1);
        for at in from..sheets * columns * rows * ways {
            let (rest, way) = (at / ways, at % ways);
            let (sheet, place) = (rest / (columns * rows), rest % (columns * rows));
            let corner = [self.columns[place / rows], self.rows[place % rows]];
            if before.is_some_and(|laid| laid.0 == sheet && corner <= laid.1.at) {
                continue;
            }
            if self.steps >= STEPS && self.most < usize::MAX {
                return None;
            }
            self.steps = self.steps.saturating_add(1);
            let (size, turned) = self.items[n].ways[way];
            if self.is_free(sheet, corner, size) {
                let blank = self.items[n].blank;
                let at_corner = Placed {
                    blank,
                    at: corner,
                    turned,
                };
                return Some((at, (sheet, at_corner, size)));
            }
        }
        None
    }

    fn is_free(&self, sheet: usize, at: [f64; 2], size: [f64; 2]) -> bool {
        let inside = (0..2).all(|i| at[i] + size[i] <= self.room[i] + SAME);
        let clear = |(on, other, its): &Laid| {
            *on != sheet
                || (0..2).any(|i| {
                    at[i] + size[i] <= other.at[i] + SAME || other.at[i] + its[i] <= at[i] + SAME
                })
        };
        inside && self.placed.iter().all(clear)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Whether rectangles of whole sizes fit on so many sheets, by trying every whole place.
    fn fits(rest: &[([u32; 2], bool)], room: [u32; 2], sheets: &mut [Vec<bool>]) -> bool {
        let Some(((size, turns), rest)) = rest.split_first() else {
            return true;
        };
        for i in 0..sheets.len() {
            for size in [*size, [size[1], size[0]]]
                .iter()
                .take(1 + usize::from(*turns))
            {
                for x in 0..(room[0] + 1).saturating_sub(size[0]) {
                    for y in 0..(room[1] + 1).saturating_sub(size[1]) {
                        let cell = |a: u32, b: u32| (a * room[1] + b) as usize;
                        let cells = (x..x + size[0])
                            .flat_map(|a| (y..y + size[1]).map(move |b| cell(a, b)));
                        let cells: Vec<_> = cells.collect();
                        if cells.iter().any(|&c| sheets[i][c]) {
                            continue;
                        }
                        cells.iter().for_each(|&c| sheets[i][c] = true);
                        if fits(rest, room, sheets) {
                            return true;
                        }
                        cells.iter().for_each(|&c| sheets[i][c] = false);
                    }
                }
            }
        }
        false
    }

    fn brute(blanks: &[([u32; 2], bool)], room: [u32; 2]) -> usize {
        let fit = |n: &usize| {
            let mut sheets = vec![vec![false; (room[0] * room[1]) as usize]; *n];
            fits(blanks, room, &mut sheets)
        };
        (0..=blanks.len())
            .find(fit)
            .expect("each has a sheet of its own")
    }

    fn blank(size: [f64; 2], turns: bool) -> Blank {
        Blank { size, turns }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(300))]

        #[test]
        fn no_packing_takes_fewer_sheets(
            sizes in prop::collection::vec(((1_u32..5, 1_u32..4), any::<bool>()), 1..6),
            room in (4_u32..7, 3_u32..5),
        ) {
            let whole: Vec<_> = sizes.iter().map(|&((a, b), turns)| ([a, b], turns)).collect();
            let room = [room.0, room.1];
            let blanks: Vec<_> = whole.iter().map(|(s, t)| blank(s.map(f64::from), *t)).collect();
            let packing = pack(&blanks, room.map(f64::from), 0.0);
            prop_assert!(packing.fewest && packing.too_large.is_empty());
            prop_assert_eq!(packing.sheets.len(), brute(&whole, room));
        }

        #[test]
        fn all_lie_on_a_sheet_a_kerf_apart(
            sizes in prop::collection::vec(((0.1..1.2_f64, 0.1..1.2_f64), any::<bool>()), 1..14),
            kerf in 0.0..0.01_f64,
        ) {
            let blanks: Vec<_> = sizes.iter().map(|&((a, b), t)| blank([a, b], t)).collect();
            let sheet = [2.44, 1.22];
            let packing = pack(&blanks, sheet, kerf);
            let mut seen = vec![0; blanks.len()];
            for on in &packing.sheets {
                let boxes: Vec<_> = on.iter().map(|p| {
                    let [a, b] = blanks[p.blank].size;
                    let [a, b] = if p.turned { [b, a] } else { [a, b] };
                    assert!(!p.turned || blanks[p.blank].turns);
                    seen[p.blank] += 1;
                    [p.at, [p.at[0] + a, p.at[1] + b]]
                }).collect();
                for (i, [low, high]) in boxes.iter().enumerate() {
                    prop_assert!((0..2).all(|k| low[k] >= 0.0 && high[k] <= sheet[k] + 2e-6));
                    for [from, to] in &boxes[..i] {
                        let apart = |k: usize| to[k] + kerf <= low[k] + 2e-6
                            || high[k] + kerf <= from[k] + 2e-6;
                        prop_assert!(apart(0) || apart(1));
                    }
                }
            }
            prop_assert!(seen.iter().all(|n| *n == 1));
        }
    }

    /// Four of 3 × 2 turn round the middle of 5 × 5: no cut goes through from edge to edge.
    #[test]
    fn cuts_need_not_go_through() {
        let packing = pack(&[blank([3.0, 2.0], true); 4], [5.0, 5.0], 0.0);
        assert_eq!(packing.sheets.len(), 1);
    }

    #[test]
    fn what_is_larger_than_a_sheet_is_named() {
        let packing = pack(
            &[blank([1.0, 3.0], false), blank([1.0, 3.0], true)],
            [4.0, 2.0],
            0.0,
        );
        assert_eq!(packing.too_large, [0]);
        assert_eq!(packing.sheets.len(), 1);
    }
}
