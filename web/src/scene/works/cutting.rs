//! Boards as bars, with what is cut from them.

use super::plate::{Plate, TYPE, WIDE, wide};
use super::reader::Reader;
use crate::scene::sheet::{Align, Ink};
use glam::DVec2;
use sim::build::cutting::{Board, Cutting};

/// Where bars begin, and what is left behind them, px.
const ROOM: [f64; 2] = [56.0, 96.0];
/// From the upper edge of a bar to the base line of what stands in it, px.
const MIDDLE: f64 = 0.5 * BAR[0] + 0.36 * TYPE;
/// Height of a bar and from one to the next, px.
const BAR: [f64; 2] = [22.0, 34.0];

/// Each section with its boards, alike ones once with their number before them and the length bought behind them. What
/// is left over is grey. A bar in broken lines is longer than any board.
pub fn cutting(all: &[Cutting], reader: Reader) -> Plate {
    let mut plate = Plate::new(WIDE, reader);
    let boards = all.iter().flat_map(|c| &c.boards).map(|b| b.length);
    let long = all.iter().flat_map(|c| &c.too_long).copied();
    let longest = boards.chain(long).fold(0.1, f64::max);
    let scale = (WIDE - ROOM[0] - ROOM[1]) / longest;
    let mut y = TYPE;
    for one in all {
        let section = one.section.map(|side| reader.fine(side)).join(" × ");
        plate.write(DVec2::new(6.0, y), Align::Right, section);
        y += 10.0;
        for (board, count) in grouped(&one.boards) {
            y = bar(board, count, [y, scale], &mut plate);
        }
        for &length in &one.too_long {
            let [low, high] = [0.0, length].map(|x| DVec2::new(ROOM[0] + x * scale, y));
            plate
                .sheet
                .dashes(Ink::Wood, 1.2, closed(low, high + DVec2::new(0.0, BAR[0])));
            let base = DVec2::new(0.5 * (low.x + high.x), y + MIDDLE);
            plate.write(base, Align::Middle, reader.fine(length));
            y += BAR[1];
        }
        y += 18.0;
    }
    plate.done()
}

/// Boards that are cut alike, once with their number.
fn grouped(boards: &[Board]) -> Vec<(&Board, u32)> {
    let mut groups: Vec<(&Board, u32)> = Vec::new();
    let near = |a: &[f64], b: &[f64]| {
        a.len() == b.len() && a.iter().zip(b).all(|(a, b)| (a - b).abs() < 5e-4)
    };
    for board in boards {
        let alike = |known: &Board| known.length == board.length && near(&known.cuts, &board.cuts);
        match groups.iter_mut().find(|(known, _)| alike(known)) {
            Some((_, count)) => *count += 1,
            None => groups.push((board, 1)),
        }
    }
    groups
}

/// A bar; gives where the next may begin.
fn bar(board: &Board, count: u32, [y, scale]: [f64; 2], plate: &mut Plate) -> f64 {
    let reader = plate.reader;
    let px = |x: f64| ROOM[0] + x * scale;
    let base = y + MIDDLE;
    let number = format!("{count} ×");
    plate.write(DVec2::new(ROOM[0] - 8.0, base), Align::Left, number);
    let rest = board.length - board.offcut;
    let corner = |x: f64, down: f64| DVec2::new(px(x), y + down);
    if board.offcut * scale > 1.0 {
        let points = closed(corner(rest, 0.0), corner(board.length, BAR[0]));
        plate.sheet.area(Ink::Built, points);
    }
    let mut from = 0.0;
    let mut under = Vec::new();
    for &cut in &board.cuts {
        let text = reader.fine(cut);
        let middle = px(from + 0.5 * cut);
        if wide(&text) < cut * scale - 2.0 {
            plate.write(DVec2::new(middle, base), Align::Middle, text);
        } else {
            under.push((DVec2::new(middle, y + BAR[0]), vec![text]));
        }
        from += cut;
        // Too thin to be drawn, the saw's cut is left to what is left over.
        let line = [corner(from, 0.0), corner(from, BAR[0])];
        plate.sheet.line(Ink::Wood, 1.2, line);
    }
    let outline = closed(corner(0.0, 0.0), corner(board.length, BAR[0]));
    plate.sheet.line(Ink::Wood, 1.6, outline);
    let behind = DVec2::new(px(board.length) + 8.0, base);
    plate.write(behind, Align::Right, reader.fine(board.length));
    if under.is_empty() {
        return y + BAR[1];
    }
    // What finds no room in its part stands under it.
    plate.row_between(y + BAR[0] + 8.0, [ROOM[0], WIDE - 6.0], &under);
    plate.lowest().max(y + BAR[1]) + 10.0
}

fn closed(low: DVec2, high: DVec2) -> [DVec2; 5] {
    let (a, b) = (DVec2::new(high.x, low.y), DVec2::new(low.x, high.y));
    [low, a, high, b, low]
}
