//! The ground as the picture needs it: points along the chain, and the yard under it.

use super::view::Strip;
use glam::DVec2;
use sim::num;
use sim::plan::Surface;
use sim::profile::{Piece, Profile, Under};

/// Longest stretch between two points of a drawn line, m: where a row of the sheet breaks, the
/// line is cut to this.
const FINEST: f64 = 0.25;

/// How far a drawn arc may stray from its circle, px.
const STRAY: f64 = 0.15;

/// Most stretches that the yard is drawn in: more than the longest has.
const MOST: f64 = 2000.0;

/// Whether a piece is made of boards.
pub fn wooden(piece: &Piece) -> bool {
    piece.character.surface == Surface::Wood
}

/// The pieces that a strip shows.
pub fn shown<'a>(profile: &'a Profile, strip: &Strip) -> impl Iterator<Item = &'a Piece> {
    let strip = *strip;
    let shown = move |p: &&Piece| strip.shows(p.start.x, p.end.x);
    profile.pieces.iter().filter(shown)
}

/// Points along a piece within a strip, its ends included, as place and heading.
pub fn along(piece: &Piece, strip: &Strip) -> impl Iterator<Item = (DVec2, f64)> + use<> {
    let steps = steps(piece, strip.scale);
    let (piece, strip) = (*piece, *strip);
    (0..=steps).filter_map(move |i| {
        let along = piece.length * f64::from(i) / f64::from(steps);
        let p = piece.point(along);
        strip.holds(p.x).then(|| (p, piece.heading_at(along)))
    })
}

fn steps(piece: &Piece, scale: f64) -> u32 {
    let turn = (piece.curvature * piece.length).abs();
    let chord = (8.0 * STRAY * piece.curvature.abs() / scale).sqrt();
    let round = if turn > 0.0 { turn / chord } else { 0.0 };
    num::clamp((piece.length / FINEST).max(round).ceil(), 1.0, 500.0) as u32
}

/// Height of the yard at a station, m.
pub fn yard(profile: &Profile, x: f64) -> f64 {
    Under(&profile.yard).height(x)
}

/// Points of the yard between two stations, in a strip.
pub fn yard_along(
    profile: &Profile,
    from: f64,
    to: f64,
    strip: &Strip,
) -> impl DoubleEndedIterator<Item = DVec2> {
    let from = from.max(strip.from - strip.beyond);
    let to = to.min(strip.to + strip.beyond);
    // A strip without a width has no end.
    let steps = num::clamp(((to - from) / FINEST).ceil(), 0.0, MOST) as u32;
    (0..=steps)
        .filter(move |_| to > from)
        .map(move |i| from + (to - from) * f64::from(i) / f64::from(steps.max(1)))
        .map(|x| DVec2::new(x, yard(profile, x)))
}

/// Lowest and highest ground between two stations, m.
pub fn relief(profile: &Profile, from: f64, to: f64) -> (f64, f64) {
    let mut range = (f64::INFINITY, f64::NEG_INFINITY);
    let mut take = |z: f64| range = (range.0.min(z), range.1.max(z));
    for piece in profile
        .pieces
        .iter()
        .filter(|p| p.end.x >= from && p.start.x <= to)
    {
        for i in 0..=4 {
            let p = piece.point(piece.length * f64::from(i) * 0.25);
            if p.x >= from - 0.5 && p.x <= to + 0.5 {
                take(p.y);
            }
        }
    }
    take(yard(profile, from));
    take(yard(profile, to));
    range
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::view;
    use sim::plan;

    fn demo() -> Profile {
        Profile::build(&plan::demo()).unwrap()
    }

    #[test]
    fn drawn_points_lie_on_the_piece_and_run_forward() {
        let profile = demo();
        let strip = view::follow(DVec2::new(360.0, 290.0), DVec2::new(15.0, 0.0), 0.0, 1.0);
        for piece in shown(&profile, &strip) {
            let points: Vec<_> = along(piece, &strip).collect();
            for pair in points.windows(2) {
                assert!(pair[1].0.x >= pair[0].0.x - 1e-9);
                let stray = pair[0].0.lerp(pair[1].0, 0.5);
                let on = piece.foot(stray).map_or(0.0, |c| c.distance.abs());
                assert!(on * strip.scale < 2.0 * STRAY, "{on}");
            }
        }
    }

    #[test]
    fn relief_holds_every_piece() {
        let profile = demo();
        let end = profile.pieces[profile.pieces.len() - 1].end.x;
        let (low, high) = relief(&profile, 0.0, end);
        for p in &profile.pieces {
            assert!(p.start.y >= low && p.start.y <= high);
        }
    }
}
