//! What is cut for a box: boards course by course, posts, ties and buried timbers.

use super::outline::Outline;
use super::pieces::{Kind, List, Piece};
use super::stock::WallStock;
use super::{BoxSheet, Wall};
use crate::num;

/// Length of a rod that nuts and washers take, both ends together, m (common practice, no source).
pub(super) const NUT: f64 = 0.1;

/// How far a corner tie reaches along either wall, m (common practice, no source).
const CORNER: f64 = 0.5;

pub(super) fn pieces(stock: &WallStock, outline: &Outline, sheet: &BoxSheet) -> Vec<Piece> {
    let mut list = List::default();
    sheeting(stock, outline, sheet, &mut list);
    posts(stock, sheet, &mut list);
    ties(stock, sheet, &mut list);
    buried(stock, sheet, &mut list);
    list.0
}

/// Courses from the ground up; a course of a side wall ends where the fill is below its lower edge, which leaves
/// enough to be cut along the slope.
fn sheeting(stock: &WallStock, outline: &Outline, sheet: &BoxSheet, list: &mut List) {
    let [thick, wide] = stock.board;
    let courses = (sheet.height / wide).ceil() as u32;
    for course in 0..courses {
        let lower = num::max(wide * f64::from(course), super::LOWEST);
        let length = num::min(outline.reach(lower), sheet.length);
        runs(stock, &sheet.side, length, 2, list);
        // The front boards cover the ends of the side boards.
        runs(stock, &sheet.front, sheet.width + 2.0 * thick, 1, list);
    }
}

/// A course in pieces that end at posts, none longer than what is sold, where the posts stand close enough.
fn runs(stock: &WallStock, wall: &Wall, length: f64, walls: u32, list: &mut List) {
    let bays = num::max(1.0, (stock.longest / wall.spacing).floor());
    let longest = if length <= stock.longest {
        length
    } else {
        num::min(bays * wall.spacing, length)
    };
    let whole = (length / longest + 1e-9).floor();
    list.add(Kind::Sheeting, stock.board, longest, walls * whole as u32);
    list.add(Kind::Sheeting, stock.board, length - whole * longest, walls);
}

fn posts(stock: &WallStock, sheet: &BoxSheet, list: &mut List) {
    let front = &sheet.front.posts;
    let corner = front.first().map_or(0.0, |post| post.height + post.depth);
    for (i, post) in sheet.side.posts.iter().enumerate() {
        let own = post.height + post.depth;
        let length = if i == 0 { num::max(own, corner) } else { own };
        list.add(Kind::Post, stock.post, length, 2);
    }
    let inner = front.len().saturating_sub(2);
    for post in front.iter().skip(1).take(inner) {
        list.add(Kind::Post, stock.post, post.height + post.depth, 1);
    }
}

fn ties(stock: &WallStock, sheet: &BoxSheet, list: &mut List) {
    let diagonal = num::hypot(CORNER, CORNER);
    list.add(Kind::CornerTie, stock.corner_tie, diagonal, sheet.corner_ties);
    let rod = [stock.rod; 2];
    let tied = sheet.side.posts.iter().filter(|post| post.tie.is_some());
    list.add(Kind::CrossTie, rod, sheet.cross_tie, tied.count() as u32);
    if let Some(anchors) = &sheet.anchors {
        let through = stock.board[0] + stock.post[0] + stock.deadman[0] + stock.post[0] + NUT;
        list.add(Kind::AnchorTie, rod, anchors.tie_length + through, anchors.ties);
    }
}

fn buried(stock: &WallStock, sheet: &BoxSheet, list: &mut List) {
    let Some(anchors) = &sheet.anchors else {
        return;
    };
    list.add(Kind::Deadman, stock.deadman, anchors.length, anchors.courses);
    let high = f64::from(anchors.courses) * stock.deadman[1];
    list.add(Kind::DeadmanUpright, stock.post, high, anchors.ties);
}
