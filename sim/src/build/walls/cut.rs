//! What is cut for a box: boards course by course, posts, ties and buried timbers.

use super::anchors::Anchors;
use super::design::{Post, Wall};
use super::outline::{LOWEST, Outline};
use super::pieces::{Kind, List, Piece};
use super::stock::WallStock;
use crate::num;

/// Length of a rod that nuts and washers take, both ends together, m (common practice, no source).
const NUT: f64 = 0.1;

/// Walls higher than this have two ties across a corner, m (common practice, no source).
const TWO_TIES: f64 = 0.5;

/// How far a corner tie reaches along either wall, m (common practice, no source).
const CORNER: f64 = 0.5;

/// A course that would hold less of the fill than this, as a share of its height, is none.
const ALL_BUT: f64 = 1e-6;

/// What a box is made of, as far as it is cut.
pub(super) struct Parts<'a> {
    pub stock: &'a WallStock,
    pub outline: &'a Outline<'a>,
    pub front: &'a Wall,
    pub side: &'a Wall,
    pub anchors: Option<&'a Anchors>,
}

impl Parts<'_> {
    /// Ties across each corner.
    pub fn corner_ties(&self) -> u32 {
        let high = self.outline.height(0.0) > TWO_TIES;
        if high { 2 } else { 1 }
    }

    /// Length of a rod from one side wall to the other, nuts and all, m.
    pub fn cross_tie(&self) -> f64 {
        self.outline.width + 2.0 * (self.stock.board[0] + self.stock.post[0]) + NUT
    }

    pub fn pieces(&self) -> Vec<Piece> {
        let mut list = List::default();
        self.sheeting(&mut list);
        self.posts(&mut list);
        self.ties(&mut list);
        self.buried(&mut list);
        list.0
    }

    /// Courses from the ground up; a course of a side wall ends where the fill is below its lower edge, which
    /// leaves enough to be cut along the slope.
    fn sheeting(&self, list: &mut List) {
        let [thick, wide] = self.stock.board;
        let courses = (self.outline.height(0.0) / wide - ALL_BUT).ceil() as u32;
        for course in 0..courses {
            let lower = num::max(wide * f64::from(course), LOWEST);
            let length = num::min(self.outline.reach(lower), self.side.length);
            self.runs(self.side, length, 2, list);
            // The front boards cover the ends of the side boards.
            let across = self.outline.width + 2.0 * thick;
            self.runs(self.front, across, 1, list);
        }
    }

    /// A course in pieces that end at posts, none longer than what is sold, where the posts stand close enough.
    fn runs(&self, wall: &Wall, length: f64, walls: u32, list: &mut List) {
        // A course that begins as high as the fill is has nothing to hold.
        if length <= 0.0 {
            return;
        }
        let board = self.stock.board;
        let bays = num::max(1.0, (self.stock.longest / wall.spacing).floor());
        let longest = if length <= self.stock.longest {
            length
        } else {
            num::min(bays * wall.spacing, length)
        };
        let whole = (length / longest + 1e-9).floor();
        list.add(Kind::Sheeting, board, longest, walls * whole as u32);
        list.add(Kind::Sheeting, board, length - whole * longest, walls);
    }

    fn posts(&self, list: &mut List) {
        let section = self.stock.post;
        let long = |post: &Post| post.height + post.depth;
        let corner = self.front.posts.first().map_or(0.0, long);
        for (i, post) in self.side.posts.iter().enumerate() {
            let length = if i == 0 {
                num::max(long(post), corner)
            } else {
                long(post)
            };
            list.add(Kind::Post, section, length, 2);
        }
        let inner = self.front.posts.len().saturating_sub(2);
        for post in self.front.posts.iter().skip(1).take(inner) {
            list.add(Kind::Post, section, long(post), 1);
        }
    }

    fn ties(&self, list: &mut List) {
        let stock = self.stock;
        let diagonal = num::hypot(CORNER, CORNER);
        list.add(
            Kind::CornerTie,
            stock.corner_tie,
            diagonal,
            2 * self.corner_ties(),
        );
        let rod = [stock.rod; 2];
        let tied = self.side.posts.iter().filter(|post| post.tie.is_some());
        list.add(Kind::CrossTie, rod, self.cross_tie(), tied.count() as u32);
        if let Some(anchors) = self.anchors {
            let wall = stock.board[0] + stock.post[0];
            let buried = stock.deadman[0] + stock.post[0];
            let length = anchors.tie_length + wall + buried + NUT;
            list.add(Kind::AnchorTie, rod, length, anchors.ties);
        }
    }

    fn buried(&self, list: &mut List) {
        let Some(anchors) = self.anchors else {
            return;
        };
        let timber = self.stock.deadman;
        list.add(Kind::Deadman, timber, anchors.length, anchors.courses);
        let high = f64::from(anchors.courses) * timber[1];
        list.add(Kind::DeadmanUpright, self.stock.post, high, anchors.ties);
    }
}
