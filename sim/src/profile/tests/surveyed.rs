//! Surveyed lines: through every point, smooth where the line is smooth, lips found.

use super::*;
use crate::plan::GroundPoint;

fn traced(points: &[(f64, f64)]) -> Profile {
    let points: Vec<GroundPoint> = points.iter().map(|&p| p.into()).collect();
    let profile = super::super::surveyed::trace(&points, Surface::Packed);
    assert_whole(&profile);
    for p in points {
        let p = DVec2::new(p.station, p.elevation);
        let joints = profile.pieces.iter().map(|piece| piece.start.distance(p));
        let last = profile.pieces.last().expect("pieces").end.distance(p);
        assert!(joints.fold(last, num::min) < 1e-9, "misses {p}");
    }
    profile
}

/// A line as somebody with tape and level would take it: a point wherever the shape changes, and
/// on curves one at least every `step`.
fn survey(profile: &Profile, step: f64) -> Vec<(f64, f64)> {
    let mut points = vec![profile.pieces[0].start];
    for piece in &profile.pieces {
        let parts = if piece.curvature == 0.0 {
            1.0
        } else {
            (piece.length / step).ceil()
        };
        let n = parts as u32;
        points.extend((1..=n).map(|i| piece.point(piece.length * f64::from(i) / parts)));
    }
    points.into_iter().map(|p| (p.x, p.y)).collect()
}

/// Largest difference in height between two profiles, away from their faces.
fn apart(a: &Profile, b: &Profile) -> f64 {
    let end = a.pieces.last().expect("pieces").end.x;
    let at = |i| end * (f64::from(i) + 0.5) / 5000.0;
    let difference = |x| {
        let [a, b] = [a, b].map(|p| p.height_at(x).expect("within"));
        (a - b).abs()
    };
    (0..5000).map(|i| difference(at(i))).fold(0.0, num::max)
}

#[test]
fn the_survey_of_a_built_line_gives_the_line_back() {
    // Where a crest turns into a hollow nobody takes a point just there, and the estimated line
    // may be off by about a sixth of the sagitta of twice the spacing: 8 mm, 2 mm.
    for (step, bound) in [(0.3, 0.008), (0.15, 0.002)] {
        for text in &plans::FILES[..3] {
            // Behind a falling deck one chord over a short knuckle looks like more of the deck.
            let bound = if text.contains("decked") {
                0.013
            } else {
                bound
            };
            let built = built(&Plan::from_json(text).expect("readable"));
            let traced = traced(&survey(&built, step));
            let off = apart(&built, &traced);
            assert!(off < bound, "{off}");
            assert_eq!(traced.lips.len(), built.lips.len());
            for (a, b) in traced.lips.iter().zip(&built.lips) {
                // A roller's hollow may run into a lip without a foot between.
                assert!(a.foot.distance(b.foot) < step, "{a:?} {b:?}");
                assert!(a.edge.distance(b.edge) < 1e-9);
                assert!(a.knuckle.distance(b.knuckle) < 1e-9, "{a:?} {b:?}");
                assert!(a.slope_end.distance(b.slope_end) < 1e-9, "{a:?} {b:?}");
                assert!(a.landing_end.distance(b.landing_end) < 1e-9, "{a:?} {b:?}");
                assert_near(num::degrees(a.exit - b.exit), 0.0, 0.01);
                assert_near(num::degrees(a.slope - b.slope), 0.0, 0.01);
            }
        }
    }
}

#[test]
fn what_was_found_is_what_the_rider_is_asked() {
    let built = built(&one_jump());
    let traced = traced(&survey(&built, 0.3));
    for x in (1..200).map(|i| f64::from(i) * 0.137) {
        let [a, b] = [&built, &traced].map(|p| p.pieces[p.spot(x).expect("within").piece]);
        if a.character.intent != Intent::Brake {
            assert_eq!(a.character.intent, b.character.intent, "at {x}");
        }
    }
}

/// A flat, a lip on a circle of 2.4 m up to 60° taken at some angles, and its back.
fn circle(degrees: &[f64]) -> Profile {
    let on = |d: &f64| {
        let (s, c) = num::sin_cos(num::radians(*d));
        (3.0 + 2.4 * s, 2.4 * (1.0 - c))
    };
    let mut points = vec![(0.0, 0.0), (3.0, 0.0)];
    points.extend(degrees.iter().map(on));
    let edge = points[points.len() - 1];
    points.extend([(edge.0, 0.0), (edge.0 + 3.0, 0.0)]);
    traced(&points)
}

#[test]
fn points_on_a_circle_give_the_circle() {
    for (degrees, bound) in [
        (&[10.0, 20.0, 30.0, 40.0, 50.0, 60.0][..], 1e-9),
        (&[15.0, 30.0, 45.0, 60.0], 1e-9),
        (&[8.0, 20.0, 34.0, 43.0, 52.0, 60.0], 0.06),
    ] {
        let profile = circle(degrees);
        assert_near(num::degrees(profile.lips[0].exit), 60.0, bound);
        assert_eq!(profile.lips[0].foot, DVec2::new(3.0, 0.0));
        for piece in &profile.pieces {
            if piece.character.intent == Intent::Launch {
                assert_near(piece.curvature, 1.0 / 2.4, 0.5 * bound);
            }
        }
    }
}

#[test]
fn planks_stay_straight() {
    let wedge = traced(&[(0.0, 0.0), (3.0, 0.0), (4.5, 0.5), (4.5, 0.0), (9.0, 0.0)]);
    assert!(wedge.pieces.iter().all(|p| p.curvature == 0.0));
    assert_eq!(wedge.pieces.len(), 4);
    assert_near(num::degrees(wedge.lips[0].exit), 18.434949, 1e-6);
    // No landing: the first ground beyond the face has to do.
    assert_eq!(wedge.lips[0].knuckle, DVec2::new(4.5, 0.0));
}

#[test]
fn rollers_and_drops_are_no_lips() {
    let roller = [
        (0.0, 0.0),
        (4.0, 0.0),
        (4.6, 0.08),
        (5.2, 0.25),
        (5.8, 0.33),
        (6.4, 0.25),
        (7.0, 0.08),
        (7.6, 0.0),
        (12.0, 0.0),
    ];
    assert_eq!(traced(&roller).lips, []);
    let coarse = [
        (0.0, 0.0),
        (4.0, 0.0),
        (5.5, 0.4),
        (7.0, 0.0),
        (8.5, 0.4),
        (10.0, 0.0),
        (14.0, 0.0),
    ];
    assert_eq!(traced(&coarse).lips, []);
    let drop = [(0.0, 1.0), (4.0, 1.0), (4.0, 0.6), (8.0, 0.6)];
    assert_eq!(traced(&drop).lips, []);
}
