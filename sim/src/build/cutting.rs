//! Lengths out of stock boards, on the fewest boards.
//!
//! Pieces of one section are packed into boards of the longest length there is: a bin packing, searched whole
//! where that takes no longer than a moment, else as good as pieces sorted by length get. Then each board is
//! bought as short as what is cut from it allows. A cut takes its kerf; the last piece of a board may end with it.

use super::piece::Piece;
use crate::num;
use serde::Serialize;

/// Lengths that differ by less are the same, m: a tenth of a saw's line.
const SAME: f64 = 1e-6;

/// Most steps of the search before it takes what it has.
const STEPS: u32 = 50_000;

/// A stock board and what is cut from it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Board {
    /// Length bought, m.
    pub length: f64,
    /// Lengths cut from it, the longest first, m.
    pub cuts: Vec<f64>,
    /// What is left over, m.
    pub offcut: f64,
}

/// Boards of one section that a list of pieces is cut from.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Cutting {
    /// Thickness and width, m.
    pub section: [f64; 2],
    /// The boards, the longest piece first.
    pub boards: Vec<Board>,
    /// Lengths that are longer than any stock board, m: they are spliced, or bought elsewhere.
    pub too_long: Vec<f64>,
    /// Whether no other plan takes fewer boards of the longest length.
    pub fewest: bool,
}

/// One cutting plan for each section of a list, the sections in the order of the list.
///
/// `lengths` are those that are sold, m; `kerf` is the width of the saw's cut, m.
pub fn cut(pieces: &[Piece], lengths: &[f64], kerf: f64) -> Vec<Cutting> {
    let mut sections: Vec<[f64; 2]> = Vec::new();
    for piece in pieces {
        if piece.count > 0 && !sections.contains(&piece.section) {
            sections.push(piece.section);
        }
    }
    let of = |section: [f64; 2]| {
        let same = pieces.iter().filter(|p| p.section == section);
        let all: Vec<_> = same
            .flat_map(|p| vec![p.length; p.count as usize])
            .collect();
        cut_section(section, all, lengths, kerf)
    };
    sections.into_iter().map(of).collect()
}

fn cut_section(section: [f64; 2], mut all: Vec<f64>, lengths: &[f64], kerf: f64) -> Cutting {
    let longest = lengths.iter().copied().fold(0.0, num::max);
    all.sort_by(|a, b| b.total_cmp(a));
    let (too_long, all): (Vec<_>, Vec<_>) = all.into_iter().partition(|l| *l > longest + SAME);
    // Every piece takes its kerf with it, and the board is longer by the one that its last piece can spare.
    let sizes: Vec<_> = all.iter().map(|l| l + kerf).collect();
    let (bins, fewest) = fewest_bins(&sizes, longest + kerf);
    let board = |bin: Vec<usize>| {
        let cuts: Vec<_> = bin.into_iter().map(|i| all[i]).collect();
        let taken = cuts.iter().sum::<f64>() + kerf * (cuts.len() as f64 - 1.0);
        let holds = |l: &f64| *l >= taken - SAME;
        let length = lengths
            .iter()
            .copied()
            .filter(holds)
            .fold(longest, num::min);
        let offcut = num::max(0.0, length - taken);
        Board {
            length,
            cuts,
            offcut,
        }
    };
    Cutting {
        section,
        boards: bins.into_iter().map(board).collect(),
        too_long,
        fewest,
    }
}

/// Items of falling size into the fewest bins of one capacity, by index; and whether that is proven.
///
/// Branch and bound: each item in turn goes into a bin that holds it, or into one new bin. Bins that are
/// equally full are tried once, items of equal size go into bins in order, and what the bins taken so far
/// cannot hold of the rest bounds the number from below.
fn fewest_bins(sizes: &[f64], capacity: f64) -> (Vec<Vec<usize>>, bool) {
    let mut search = Search {
        sizes,
        capacity,
        best: first_fit(sizes, capacity),
        steps: 0,
    };
    search.place(0, &mut Vec::new(), &mut Vec::new());
    let proven = search.steps < STEPS;
    (search.best, proven)
}

/// Each item into the first bin that holds it.
fn first_fit(sizes: &[f64], capacity: f64) -> Vec<Vec<usize>> {
    let mut room: Vec<f64> = Vec::new();
    let mut bins: Vec<Vec<usize>> = Vec::new();
    for (i, size) in sizes.iter().enumerate() {
        let fits = room.iter().position(|r| *r >= size - SAME);
        let at = fits.unwrap_or_else(|| {
            room.push(capacity);
            bins.push(Vec::new());
            bins.len() - 1
        });
        room[at] -= size;
        bins[at].push(i);
    }
    bins
}

struct Search<'a> {
    sizes: &'a [f64],
    capacity: f64,
    best: Vec<Vec<usize>>,
    steps: u32,
}

impl Search<'_> {
    fn place(&mut self, item: usize, bins: &mut Vec<Vec<usize>>, room: &mut Vec<f64>) {
        if self.steps >= STEPS {
            return;
        }
        self.steps += 1;
        let Some(&size) = self.sizes.get(item) else {
            if bins.len() < self.best.len() {
                self.best = bins.clone();
            }
            return;
        };
        if bins.len() + self.more(item, room) >= self.best.len() {
            return;
        }
        // An item as long as the one before it goes into the same bin as that one or a later one.
        let alike = item > 0 && (self.sizes[item - 1] - size).abs() < SAME;
        let from = if alike { holder(bins, item - 1) } else { 0 };
        for at in from..bins.len() {
            let tried = (from..at).any(|before| (room[before] - room[at]).abs() < SAME);
            if room[at] < size - SAME || tried {
                continue;
            }
            room[at] -= size;
            bins[at].push(item);
            self.place(item + 1, bins, room);
            bins[at].pop();
            room[at] += size;
        }
        bins.push(vec![item]);
        room.push(self.capacity - size);
        self.place(item + 1, bins, room);
        bins.pop();
        room.pop();
    }

    /// How many more bins the rest takes at least: what is longer than the room of those there are,
    /// were it as fluid as water.
    fn more(&self, item: usize, room: &[f64]) -> usize {
        let rest = &self.sizes[item..];
        // Room that is too short for the shortest piece is no room.
        let shortest = rest.last().copied().unwrap_or(0.0);
        let usable = room.iter().filter(|r| **r >= shortest - SAME);
        let over = rest.iter().sum::<f64>() - usable.sum::<f64>();
        // A margin for rounding: the bound may be too low, never too high.
        num::max(0.0, ((over - 1e3 * SAME) / self.capacity).ceil()) as usize
    }
}

fn holder(bins: &[Vec<usize>], item: usize) -> usize {
    let holds = |bin: &Vec<usize>| bin.last() == Some(&item);
    bins.iter().position(holds).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::super::piece::PieceKind;
    use super::*;
    use proptest::prelude::*;

    const SECTION: [f64; 2] = [0.045, 0.095];

    fn pieces(lengths: &[f64]) -> Vec<Piece> {
        let piece = |&length: &f64| Piece {
            kind: PieceKind::Rib,
            section: SECTION,
            length,
            count: 1,
        };
        lengths.iter().map(piece).collect()
    }

    /// The fewest boards, by trying every way to part the pieces into groups, in whole millimetres.
    fn brute(lengths: &[u32], board: u32, kerf: u32) -> usize {
        fn part(rest: &[u32], groups: &mut Vec<Vec<u32>>, board: u32, kerf: u32) -> usize {
            let Some((first, rest)) = rest.split_first() else {
                return groups.len();
            };
            let mut best = usize::MAX;
            for i in 0..=groups.len() {
                if i == groups.len() {
                    groups.push(Vec::new());
                }
                groups[i].push(*first);
                let taken = groups[i].iter().sum::<u32>() + kerf * (groups[i].len() as u32 - 1);
                if taken <= board {
                    best = best.min(part(rest, groups, board, kerf));
                }
                groups[i].pop();
                if groups[i].is_empty() {
                    groups.pop();
                }
            }
            best
        }
        part(lengths, &mut Vec::new(), board, kerf)
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(400))]

        #[test]
        fn no_plan_takes_fewer_boards(
            mm in prop::collection::vec(300_u32..1700, 1..9),
            board in 1700_u32..2600,
            kerf in 0_u32..6,
        ) {
            let metres: Vec<_> = mm.iter().map(|&l| f64::from(l) / 1000.0).collect();
            let board_m = f64::from(board) / 1000.0;
            let cuts = cut(&pieces(&metres), &[board_m], f64::from(kerf) / 1000.0);
            prop_assert!(cuts[0].fewest);
            prop_assert_eq!(cuts[0].boards.len(), brute(&mm, board, kerf));
        }

        #[test]
        fn every_piece_is_cut_once_and_fits(
            lengths in prop::collection::vec(0.1..3.5_f64, 1..40),
            kerf in 0.0..0.006_f64,
        ) {
            let sold = [1.8, 2.4, 3.0];
            let cuts = cut(&pieces(&lengths), &sold, kerf);
            let mut all = cuts[0].too_long.clone();
            for board in &cuts[0].boards {
                all.extend(&board.cuts);
                let kerfs = kerf * (board.cuts.len() as f64 - 1.0);
                let taken = board.cuts.iter().sum::<f64>() + kerfs;
                prop_assert!(sold.contains(&board.length) && taken <= board.length + 1e-5);
                prop_assert!((board.length - taken - board.offcut).abs() < 1e-5);
                let shorter = sold.iter().filter(|l| **l < board.length);
                prop_assert!(shorter.into_iter().all(|l| *l < taken), "a shorter board would do");
            }
            let mut given = lengths;
            given.sort_by(f64::total_cmp);
            all.sort_by(f64::total_cmp);
            prop_assert_eq!(all, given);
        }
    }

    /// First fit alone takes three boards: 6, 5, 4, 4, 3, 2 on 12 goes to 6+5, 4+4+3, 2.
    #[test]
    fn it_looks_further_than_the_first_that_fits() {
        let cuts = cut(&pieces(&[0.6, 0.5, 0.4, 0.4, 0.3, 0.2]), &[1.2], 0.0);
        assert_eq!(cuts[0].boards.len(), 2);
        assert!(cuts[0].fewest);
    }

    #[test]
    fn the_last_piece_may_end_with_the_board() {
        let three = cut(&pieces(&[1.0, 1.0, 0.994]), &[3.0], 0.003);
        assert_eq!(three[0].boards.len(), 1);
        let wide = cut(&pieces(&[1.0, 1.0, 0.995]), &[3.0], 0.003);
        assert_eq!(wide[0].boards.len(), 2);
    }

    #[test]
    fn each_section_has_its_own_boards() {
        let mut all = pieces(&[1.0, 1.0]);
        all[1].section = [0.028, 0.12];
        let cuts = cut(&all, &[2.4], 0.003);
        let sections: Vec<_> = cuts.iter().map(|c| c.section).collect();
        assert_eq!(sections, [SECTION, [0.028, 0.12]]);
    }
}
