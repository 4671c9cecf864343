//! Boards as bars, with what is cut from them.

use super::plate::{Plate, TYPE, WIDE};
use super::reader::Reader;
use crate::scene::labels;
use crate::scene::sheet::{Align, Ink};
use glam::DVec2;
use sim::build::cutting::{Board, Cutting};

/// Where bars begin, and what is left behind them, px.
const ROOM: [f64; 2] = [56.0, 96.0];
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
            bar(board, count, [y, scale], &mut plate);
            y += BAR[1];
        }
        for &length in &one.too_long {
            let [low, high] = [0.0, length].map(|x| DVec2::new(ROOM[0] + x * scale, y));
            plate
                .sheet
                .dashes(Ink::Wood, 1.2, closed(low, high + DVec2::new(0.0, BAR[0])));
            written(reader.fine(length), [low.x, high.x], y, &mut plate);
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

fn bar(board: &Board, count: u32, [y, scale]: [f64; 2], plate: &mut Plate) {
    let reader = plate.reader;
    let px = |x: f64| ROOM[0] + x * scale;
    let base = y + 0.5 * BAR[0] + 0.36 * TYPE;
    let number = format!("{count} ×");
    plate.write(DVec2::new(ROOM[0] - 8.0, base), Align::Left, number);
    let rest = board.length - board.offcut;
    let corner = |x: f64, down: f64| DVec2::new(px(x), y + down);
    if board.offcut * scale > 1.0 {
        let points = closed(corner(rest, 0.0), corner(board.length, BAR[0]));
        plate.sheet.area(Ink::Built, points);
    }
    let mut from = 0.0;
    for &cut in &board.cuts {
        written(reader.fine(cut), [px(from), px(from + cut)], y, plate);
        from += cut;
        // The kerf is shared out: a bar shows no saw's cut.
        let line = [corner(from, 0.0), corner(from, BAR[0])];
        plate.sheet.line(Ink::Wood, 1.2, line);
    }
    let outline = closed(corner(0.0, 0.0), corner(board.length, BAR[0]));
    plate.sheet.line(Ink::Wood, 1.6, outline);
    let behind = DVec2::new(px(board.length) + 8.0, base);
    plate.write(behind, Align::Right, reader.fine(board.length));
}

/// A length in its part of a bar; without its unit, or not at all, where there is no room.
fn written(text: String, [from, to]: [f64; 2], y: f64, plate: &mut Plate) {
    let base = DVec2::new(0.5 * (from + to), y + 0.5 * BAR[0] + 0.36 * TYPE);
    let bare = text.trim_end_matches(" mm").to_owned();
    let fits = |t: &String| labels::width(t, TYPE) < to - from - 2.0;
    if let Some(text) = [text, bare].into_iter().find(fits) {
        plate.write(base, Align::Middle, text);
    }
}

fn closed(low: DVec2, high: DVec2) -> [DVec2; 5] {
    let (a, b) = (DVec2::new(high.x, low.y), DVec2::new(low.x, high.y));
    [low, a, high, b, low]
}
