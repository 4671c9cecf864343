//! Volumes along one piece of the profile.

use super::section::Section;
use crate::num;
use crate::profile::Piece;
use crate::profile::Under;

/// Heights within this of the yard are on it, m: rounding of lengths that were added up.
const FLUSH: f64 = 1e-9;

/// Halvings of a search along a piece: to the last bit.
const HALVINGS: usize = 60;

/// Points and weights of Gauss and Legendre's quadrature with eight points on [−1, 1] (Abramowitz and Stegun 1964,
/// table 25.4), the positive half.
const NODES: [[f64; 2]; 4] = [
    [0.183_434_642_495_649_8, 0.362_683_783_378_362],
    [0.525_532_409_916_329, 0.313_706_645_877_887_3],
    [0.796_666_477_413_626_7, 0.222_381_034_453_374_5],
    [0.960_289_856_497_536_2, 0.101_228_536_290_376_3],
];

/// What was added up, with its moment about station 0.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Sum {
    /// m³.
    pub volume: f64,
    /// m⁴.
    pub moment: f64,
}

impl Sum {
    pub fn add(&mut self, area: f64, x: f64, length: f64) {
        self.volume += area * length;
        self.moment += area * x * length;
    }

    /// Where its middle is, m.
    pub fn middle(&self) -> Option<f64> {
        (self.volume > FLUSH).then(|| self.moment / self.volume)
    }
}

/// Adds up a function of the station over a stretch, m.
pub(super) fn over(from: f64, to: f64, mut at: impl FnMut(f64, f64)) {
    let (middle, half) = ((from + to) / 2.0, (to - from) / 2.0);
    for [node, weight] in NODES {
        for side in [-1.0, 1.0] {
            at(middle + side * node * half, weight * half);
        }
    }
}

/// Fill and cut under a piece, and its height over the yard where that is greatest and least.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Beneath {
    pub fill: Sum,
    pub cut: Sum,
    pub tallest: f64,
    pub deepest: f64,
}

/// How high a piece is over the yard at a length along it, m.
fn height(piece: &Piece, under: &Under, along: f64) -> f64 {
    let point = piece.point(along);
    let over = point.y - under.height(point.x);
    if over.abs() < FLUSH { 0.0 } else { over }
}

/// Where along a piece something becomes true that is false at `from` and true at `to`.
fn first(from: f64, to: f64, is: impl Fn(f64) -> bool) -> f64 {
    let (mut low, mut high) = (from, to);
    for _ in 0..HALVINGS {
        let middle = (low + high) / 2.0;
        if is(middle) {
            high = middle;
        } else {
            low = middle;
        }
    }
    high
}

/// Lengths along a piece between which the yard is one straight line and the height over it only grows or only
/// shrinks, both ends included.
fn ends(piece: &Piece, under: &Under) -> Vec<f64> {
    let mut ends = vec![0.0];
    let reach = [piece.start.x, piece.end.x];
    for bend in under.bends(reach[0], reach[1]) {
        ends.push(first(0.0, piece.length, |t| piece.point(t).x >= bend));
    }
    ends.push(piece.length);
    if piece.curvature == 0.0 {
        return ends;
    }
    let mut all = vec![0.0];
    for pair in ends.windows(2) {
        // On an arc the height is greatest or least where it runs as the yard does.
        let x = piece.point((pair[0] + pair[1]) / 2.0).x;
        let level = (num::atan2(under.grade(x), 1.0) - piece.heading) / piece.curvature;
        if level > pair[0] && level < pair[1] {
            all.push(level);
        }
        all.push(pair[1]);
    }
    all
}

/// Adds up what is under a piece.
///
/// On a straight piece the area is a polynomial of the second degree, which eight points add up exactly. On an arc that
/// turns by δ what is added up is made of sines and cosines of at most n times the heading, n = 3 for the volume and 4
/// for the moment. Its 16th derivative is at most n¹⁶ M by Bernstein's inequality, M being its greatest value round the
/// circle, and the error at most M n¹⁶ δ¹⁷ (8!)⁴/(17 (16!)³): where an arc turns by 80°, the most there is between two
/// ends, 3 parts in 10¹³ of M for the volume and 3 in 10¹¹ for the moment.
pub(super) fn under_piece(piece: &Piece, under: &Under, section: &Section) -> Beneath {
    let mut sums = Beneath::default();
    let mut stretch = |from: f64, to: f64| {
        over(from, to, |along, length| {
            let x = piece.point(along).x;
            let level = length * num::cos(piece.heading_at(along));
            let height = height(piece, under, along);
            sums.fill.add(section.fill(height), x, level);
            sums.cut.add(section.cut(height), x, level);
        });
    };
    let ends = ends(piece, under);
    for pair in ends.windows(2) {
        let [a, b] = [pair[0], pair[1]].map(|t| height(piece, under, t));
        // The section changes its law at the yard, and where its walls begin.
        let mut cuts: Vec<f64> = [0.0, section.walled_from, section.most]
            .into_iter()
            .filter(|law| (a - law) * (b - law) < 0.0)
            .map(|law| {
                first(pair[0], pair[1], |t| {
                    (height(piece, under, t) - law) * (a - law) <= 0.0
                })
            })
            .collect();
        cuts.sort_by(f64::total_cmp);
        cuts.push(pair[1]);
        let mut from = pair[0];
        for to in cuts {
            stretch(from, to);
            from = to;
        }
    }
    for along in ends {
        let height = height(piece, under, along);
        sums.tallest = num::max(sums.tallest, num::min(height, section.most));
        sums.deepest = num::max(sums.deepest, -height);
    }
    sums
}
