//! Wood: parallel strokes under the line, posts down to the ground.

use super::sheet::{Ink, Sheet};
use super::view::Strip;
use super::{earth, land};
use glam::DVec2;
use sim::profile::{Intent, Profile};

/// Depths of the parallel strokes under the line, px.
const BOARDS: [f64; 2] = [4.0, 7.5];
/// Distance between posts, m: what a deck of usual boards bridges (common practice, no source).
const POSTS: f64 = 0.6;
/// Lowest deck that stands on posts, m.
const LOWEST: f64 = 0.2;

/// Lays the wood of a strip on the sheet.
pub fn draw(profile: &Profile, strip: &Strip, sheet: &mut Sheet) {
    for stretch in profile.pieces.split(|p| !land::wooden(p)) {
        let (Some(first), Some(last)) = (stretch.first(), stretch.last()) else {
            continue;
        };
        let (from, to) = (first.start.x, last.end.x);
        if !strip.shows(from, to) {
            continue;
        }
        for depth in BOARDS {
            let points = stretch
                .iter()
                .filter(|p| p.character.intent != Intent::Clear || p.end.x > p.start.x)
                .flat_map(|p| land::along(p, strip))
                .map(|(p, heading)| under(profile, p, heading, depth, strip));
            sheet.line(Ink::Wood, 1.0, points);
        }
        let floor = land::yard_along(profile, from, to, strip);
        sheet.line(Ink::Ground, 1.0, floor.map(|p| strip.place(p)));
        earth::hatch_yard(profile, from, to, strip, sheet);
        for piece in stretch {
            posts(profile, piece, strip, sheet);
        }
    }
}

/// A point so many px under the boards, but never in the ground.
fn under(profile: &Profile, p: DVec2, heading: f64, depth: f64, strip: &Strip) -> DVec2 {
    let into = DVec2::from_angle(heading - std::f64::consts::FRAC_PI_2);
    let at = strip.place(p) + DVec2::new(into.x, -into.y) * depth;
    let ground = strip.place(DVec2::new(p.x, land::yard(profile, p.x)));
    DVec2::new(at.x, at.y.min(ground.y))
}

/// Posts stand at even stations, so that they belong to the line and not to the picture.
fn posts(profile: &Profile, piece: &sim::profile::Piece, strip: &Strip, sheet: &mut Sheet) {
    let mut before: Option<DVec2> = None;
    for (p, _) in land::along(piece, strip) {
        if let Some(a) = before {
            let station = (a.x / POSTS).floor() * POSTS + POSTS;
            if station <= p.x && p.x > a.x {
                let top = a.lerp(p, (station - a.x) / (p.x - a.x));
                let foot = DVec2::new(station, land::yard(profile, station));
                if top.y - foot.y > LOWEST {
                    let place = |p| strip.place(p);
                    sheet.line(Ink::Wood, 1.6, [place(top), place(foot)]);
                }
            }
        }
        before = Some(p);
    }
}
