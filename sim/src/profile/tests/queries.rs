//! Height, heading and the closest point, against a search over many points of the chain.

use super::*;

/// Distance from a point to the chain by brute force: many points, then the best one refined.
fn searched(profile: &Profile, p: DVec2) -> f64 {
    let mut best = f64::INFINITY;
    for piece in &profile.pieces {
        let far = |t: f64| piece.point(t * piece.length).distance(p);
        let n = 60;
        let near = (0..=n).map(|i| f64::from(i) / f64::from(n));
        let at = near
            .reduce(|a, b| if far(b) < far(a) { b } else { a })
            .expect("points");
        let step = 1.0 / f64::from(n);
        let (mut low, mut high) = (num::max(0.0, at - step), num::min(1.0, at + step));
        for _ in 0..100 {
            let third = (high - low) / 3.0;
            if far(low + third) < far(high - third) {
                high -= third;
            } else {
                low += third;
            }
        }
        best = num::min(best, far((low + high) / 2.0));
    }
    best
}

#[test]
fn the_closest_point_is_the_closest() {
    for text in plans::FILES {
        let profile = built(&Plan::from_json(text).expect("readable"));
        let end = profile.pieces.last().expect("pieces").end.x;
        for i in 0..600_u32 {
            let x = -1.0 + (end + 2.0) * f64::from(i) / 599.0;
            let base = profile.height_at(num::clamp(x, 0.0, end)).expect("within");
            let p = DVec2::new(x, base + f64::from(i * 37 % 100) * 0.02 - 0.6);
            let (piece, found) = profile.closest(p).expect("a chain");
            assert_near(found.distance.abs(), searched(&profile, p), 1e-7);
            assert_near(found.point.distance(p), found.distance.abs(), 1e-9);
            let on = profile.pieces[piece].point(found.along);
            assert!(on.distance(found.point) < 1e-7);
            assert!(p.distance(found.point + found.normal * found.distance) < 1e-7);
        }
    }
}

#[test]
fn the_side_is_told_by_the_sign() {
    for text in plans::FILES {
        let profile = built(&Plan::from_json(text).expect("readable"));
        let end = profile.pieces.last().expect("pieces").end.x;
        for i in 1..2000 {
            let x = end * f64::from(i) / 2000.0;
            let top = profile.height_at(x).expect("within");
            let air = profile
                .closest(DVec2::new(x, top + 0.05))
                .expect("a chain")
                .1;
            let earth = profile
                .closest(DVec2::new(x, top - 0.001))
                .expect("a chain")
                .1;
            assert!(air.distance > 0.0, "{x}: {air:?}");
            assert!(earth.distance < 0.0, "{x}: {earth:?}");
        }
    }
}

#[test]
fn corners_belong_to_the_side_they_stand_out_to() {
    let profile = built(&one_jump());
    let lip = profile.lips[0];
    // Up and ahead of the edge, between the normals of lip and face.
    let (_, air) = profile
        .closest(lip.edge + DVec2::new(0.03, 0.1))
        .expect("a chain");
    assert_eq!(air.point, lip.edge);
    assert_near(air.distance, num::hypot(0.03, 0.1), 1e-12);
    // Below the corner at the foot of the face.
    let foot = DVec2::new(lip.edge.x, lip.edge.y - 0.6);
    let (_, earth) = profile
        .closest(foot + DVec2::new(-0.1, -0.1))
        .expect("a chain");
    assert_near(earth.point.distance(foot), 0.0, 1e-9);
    assert!(earth.distance < 0.0);
}

#[test]
fn heights_and_headings_are_those_of_the_surface_seen_from_above() {
    let profile = built(&one_jump());
    let end = profile.pieces.last().expect("pieces").end;
    assert_eq!(profile.height_at(-1e-6), None);
    assert_eq!(profile.height_at(end.x + 1e-6), None);
    assert_near(profile.height_at(end.x).expect("the end"), end.y, 1e-12);
    let lip = profile.lips[0];
    assert_near(
        profile.height_at(lip.edge.x).expect("edge"),
        lip.edge.y,
        1e-12,
    );
    assert_near(
        profile.height_at(lip.knuckle.x).expect("knuckle"),
        lip.knuckle.y,
        1e-12,
    );
    let gap = (lip.edge.x + lip.knuckle.x) / 2.0;
    assert_near(profile.height_at(gap).expect("floor"), -0.04 * gap, 1e-12);
    let h = 1e-6;
    for i in 1..3000 {
        let x = end.x * f64::from(i) / 3000.0;
        let [a, b] = [x - h, x + h].map(|x| profile.spot(x).expect("within"));
        let spot = profile.spot(x).expect("within");
        if a.piece == b.piece {
            let slope = (b.point.y - a.point.y) / (2.0 * h);
            assert_near(num::tan(spot.heading), slope, 1e-6);
            assert_near(
                (b.heading - a.heading) * num::cos(spot.heading),
                2.0 * h * spot.curvature,
                1e-9,
            );
        }
    }
}
