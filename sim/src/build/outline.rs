//! The outline of a flat part: straight and circular edges, exact.
//!
//! An outline is walked with the part on the left. Its arcs turn by less than a right angle, and neither rise
//! and fall nor go to and fro on their way, so that the ends of edges are also the ends of the part.

use crate::num;
use glam::DVec2;
use serde::Serialize;

/// Points nearer than this are one, m.
const SAME: f64 = 1e-9;

/// A straight or circular edge.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Edge {
    /// Where it begins, m.
    pub from: DVec2,
    /// Where it ends, m.
    pub to: DVec2,
    /// Centre of its circle, m; none where it is straight.
    pub centre: Option<DVec2>,
}

impl Edge {
    /// A straight edge.
    pub fn straight(from: DVec2, to: DVec2) -> Self {
        let centre = None;
        Self { from, to, centre }
    }

    /// The same edge walked the other way.
    pub fn reversed(&self) -> Self {
        Self {
            from: self.to,
            to: self.from,
            ..*self
        }
    }

    /// Radius of its circle, m; none where it is straight.
    pub fn radius(&self) -> Option<f64> {
        self.centre.map(|c| num::length(self.from - c))
    }

    /// Length along the edge, m.
    pub fn length(&self) -> f64 {
        match self.centre {
            None => num::length(self.to - self.from),
            Some(c) => num::length(self.from - c) * self.angle(c).abs(),
        }
    }

    /// How far it turns about its centre, rad; positive counterclockwise.
    fn angle(&self, centre: DVec2) -> f64 {
        let (a, b) = (self.from - centre, self.to - centre);
        num::atan2(a.perp_dot(b), a.dot(b))
    }

    /// Twice the area swept by the line from the origin to a point on the edge, m².
    fn swept(&self) -> f64 {
        let chord = self.from.perp_dot(self.to);
        let Some(c) = self.centre else {
            return chord;
        };
        let (radius2, angle) = ((self.from - c).length_squared(), self.angle(c));
        chord + radius2 * (angle - num::sin(angle))
    }

    /// The point where it crosses a line on whose two sides its ends lie.
    fn crossing(&self, line: Line) -> DVec2 {
        let (a, b) = (line.over(self.from), line.over(self.to));
        let straight = self.from + (self.to - self.from) * (a / (a - b));
        let Some(c) = self.centre else {
            return straight;
        };
        let foot = c - line.normal * line.over(c);
        let radius2 = (self.from - c).length_squared();
        let half = num::max(0.0, radius2 - (foot - c).length_squared()).sqrt();
        // Of a circle's points, those of an arc under a half are the ones near its chord's middle.
        let middle = 0.5 * (self.from + self.to);
        let along = line.normal.perp() * half;
        let [p, q] = [foot + along, foot - along];
        let nearer = (p - middle).length_squared() < (q - middle).length_squared();
        if nearer { p } else { q }
    }

    /// The part of it on the inner side of a line.
    pub(crate) fn inside(&self, line: Line) -> Option<Edge> {
        let [from, to] = [self.from, self.to].map(|p| line.over(p));
        let (mut kept, cut) = (*self, from < 0.0 || to < 0.0);
        if from < SAME && to < SAME && cut {
            return None;
        }
        if from < 0.0 {
            kept.from = self.crossing(line);
        } else if to < 0.0 {
            kept.to = self.crossing(line);
        }
        Some(kept)
    }

    /// Least and most of one coordinate where the other is so much; `axis` is the one that is given.
    fn span(&self, axis: usize, at: f64) -> Option<[f64; 2]> {
        let given = [self.from[axis], self.to[axis]];
        let [low, high] = [num::min(given[0], given[1]), num::max(given[0], given[1])];
        if at < low - SAME || at > high + SAME {
            return None;
        }
        let other = [self.from[1 - axis], self.to[1 - axis]];
        if high - low <= SAME {
            return Some([num::min(other[0], other[1]), num::max(other[0], other[1])]);
        }
        let end = (0..2).find(|&i| (given[i] - at).abs() <= SAME);
        let normal = DVec2::AXES[axis];
        let one = end.map_or_else(
            || self.crossing(Line::at(normal * at, normal))[1 - axis],
            |i| other[i],
        );
        Some([one, one])
    }
}

/// Height of a chain of edges that runs to the right, m, where it reaches so far.
pub(crate) fn height(chain: &[Edge], x: f64) -> Option<f64> {
    let line = Line::at(DVec2::new(x, 0.0), DVec2::X);
    let over = |e: &&Edge| line.over(e.from) <= SAME && line.over(e.to) >= -SAME;
    let edge = chain.iter().find(over)?;
    if line.over(edge.to) <= SAME {
        return Some(edge.to.y);
    }
    Some(if line.over(edge.from) >= -SAME {
        edge.from.y
    } else {
        edge.crossing(line).y
    })
}

/// A line with an inner side, to which its unit normal points.
#[derive(Clone, Copy)]
pub(crate) struct Line {
    normal: DVec2,
    level: f64,
}

impl Line {
    pub fn at(point: DVec2, normal: DVec2) -> Self {
        let level = normal.dot(point);
        Self { normal, level }
    }

    fn over(&self, p: DVec2) -> f64 {
        self.normal.dot(p) - self.level
    }
}

/// A closed outline, walked with the part on the left.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Outline {
    /// The edges, each beginning where the one before ends.
    pub edges: Vec<Edge>,
}

impl Outline {
    /// Area, m².
    pub fn area(&self) -> f64 {
        0.5 * self.edges.iter().map(Edge::swept).sum::<f64>()
    }

    /// Its lowest and highest coordinates, m.
    pub fn bounds(&self) -> [DVec2; 2] {
        let first = self.edges.first().map_or(DVec2::ZERO, |e| e.from);
        self.edges.iter().fold([first, first], |[low, high], e| {
            [
                DVec2::new(num::min(low.x, e.from.x), num::min(low.y, e.from.y)),
                DVec2::new(num::max(high.x, e.from.x), num::max(high.y, e.from.y)),
            ]
        })
    }

    /// Length and height of the rectangle it fits, m.
    pub fn size(&self) -> DVec2 {
        let [low, high] = self.bounds();
        high - low
    }

    /// The part of it on the inner side of a line, which meets the line's outer side in one piece at most.
    pub(crate) fn clip(&self, line: Line) -> Outline {
        let mut edges: Vec<Edge> = Vec::new();
        for edge in self.edges.iter().filter_map(|e| e.inside(line)) {
            if let Some(last) = edges.last() {
                close(last.to, edge.from, &mut edges);
            }
            edges.push(edge);
        }
        if let (Some(last), Some(first)) = (edges.last(), edges.first()) {
            close(last.to, first.from, &mut edges);
        }
        Outline { edges }
    }

    /// Least and most x at a height, m.
    pub(crate) fn across(&self, z: f64) -> Option<[f64; 2]> {
        self.span(1, z)
    }

    /// Least and most height at an x, m.
    pub(crate) fn upright(&self, x: f64) -> Option<[f64; 2]> {
        self.span(0, x)
    }

    fn span(&self, axis: usize, at: f64) -> Option<[f64; 2]> {
        let all = self.edges.iter().filter_map(|e| e.span(axis, at));
        all.reduce(|a, b| [num::min(a[0], b[0]), num::max(a[1], b[1])])
    }
}

fn close(from: DVec2, to: DVec2, edges: &mut Vec<Edge>) {
    if num::length(to - from) > SAME {
        edges.push(Edge::straight(from, to));
    }
}

impl Outline {
    /// The same part turned counterclockwise by so many quarters, with the low corner of its bounds at a place.
    pub fn laid(&self, at: DVec2, quarters: u8) -> Outline {
        let turn = |mut p: DVec2| {
            for _ in 0..quarters {
                p = p.perp();
            }
            p
        };
        let moved = |by: DVec2, outline: &Outline, turn: &dyn Fn(DVec2) -> DVec2| {
            let edges = outline.edges.iter().map(|e| Edge {
                from: turn(e.from) + by,
                to: turn(e.to) + by,
                centre: e.centre.map(|c| turn(c) + by),
            });
            let edges = edges.collect();
            Outline { edges }
        };
        let turned = moved(DVec2::ZERO, self, &turn);
        moved(at - turned.bounds()[0], &turned, &|p| p)
    }
}
