//! Shapes on level ground against the elementary geometry of the circle, and features on a slope.
//!
//! For a lip of height h on a circle of radius R: exit angle acos(1 − h/R), run √(2Rh − h²), arc
//! length R times the angle, area under the curve ∫ (R − √(R² − x²)) dx; sagitta of a chord c:
//! R − √(R² − c²/4). The expected figures were computed from these with other software.

use super::*;
use serde_json::json;

const FOOT: f64 = 0.3048;

fn lip(height: f64, radius: f64) -> Profile {
    let landing =
        json!({"height": 0.6, "angle_deg": 24, "knuckle_radius": 0.6, "bottom_radius": 3});
    let lip = json!({"height": height, "radius": radius});
    built(&plan(
        0.0,
        &json!([{"kind": "jump", "lip": lip, "gap": 1.2, "landing": landing}]),
    ))
}

#[test]
fn lips_have_the_angle_run_and_arc_of_their_circle() {
    for (height, radius, unit, degrees, run, arc) in [
        (1.2, 2.4, 1.0, 60.0, 2.078461, 2.513274),
        (0.9, 2.4, 1.0, 51.31781, 1.873499, 2.149596),
        (0.6, 2.0, 1.0, 45.57300, 1.42829, 1.59080),
        (4.0, 7.5, FOOT, 62.18186, 6.63325, 8.13959),
        (6.0, 9.0, FOOT, 70.52878, 8.48528, 11.07863),
        (3.0, 7.0, FOOT, 55.15010, 5.74456, 6.73786),
    ] {
        let profile = lip(height * unit, radius * unit);
        let (edge, arc_piece) = (profile.lips[0], profile.pieces[0]);
        assert_near(num::degrees(edge.exit), degrees, 6e-6);
        assert_near(edge.edge.x / unit, run, 6e-6);
        assert_near(edge.edge.y / unit, height, 1e-12);
        assert_near(arc_piece.length / unit, arc, 6e-6);
        assert_eq!(edge.foot, DVec2::ZERO);
    }
}

#[test]
fn the_area_under_a_lip_is_the_circles() {
    for (height, radius, area) in [(1.2, 2.4, 0.72530), (0.6, 2.0, 0.26597)] {
        let profile = lip(height, radius);
        let run = profile.lips[0].edge.x;
        let n = 4000;
        let middle = |i| profile.height_at((f64::from(i) + 0.5) * run / f64::from(n));
        let sum: f64 = (0..n).map(|i| middle(i).expect("on the lip")).sum();
        assert_near(sum * run / f64::from(n), area, 6e-6);
    }
}

#[test]
fn a_string_across_a_lip_stands_off_by_the_sagitta() {
    for (radius, chord, sagitta) in [
        (2.4, 1.2, 0.076210),
        (8.0, 4.0, 0.254033),
        (10.0, 2.0, 0.050126),
    ] {
        let arc = lip(1.0, radius).pieces[0];
        // Two points of the arc one chord apart: their arc is 2 R asin(c/2R).
        let half = num::atan2(chord / 2.0, (radius * radius - chord * chord / 4.0).sqrt());
        let (a, b) = (arc.point(0.1), arc.point(0.1 + 2.0 * half * radius));
        assert_near(a.distance(b), chord, 1e-9);
        let middle = arc.point(0.1 + half * radius);
        assert_near(middle.distance((a + b) / 2.0), sagitta, 6e-7);
    }
}

#[test]
fn a_lead_in_splits_the_arc_and_keeps_the_height() {
    let lip = json!({"height": 0.9, "radius": 2.4, "lead_in": {"angle_deg": 20, "length": 0.5}});
    let landing =
        json!({"height": 0.6, "angle_deg": 24, "knuckle_radius": 0.6, "bottom_radius": 3});
    let profile = built(&plan(
        0.0,
        &json!([{"kind": "jump", "lip": lip, "gap": 1.2, "landing": landing}]),
    ));
    // cos θ = 1 − (h − ℓ sin a)/R = 1 − (0.9 − 0.5 sin 20°)/2.4
    let exit = 45.872755;
    assert_near(num::degrees(profile.lips[0].exit), exit, 1e-6);
    assert_near(profile.lips[0].edge.y, 0.9, 1e-12);
    let [first, straight, last] = [0, 1, 2].map(|i| profile.pieces[i]);
    assert_near(num::degrees(straight.heading), 20.0, 1e-9);
    assert_near(straight.length, 0.5, 1e-12);
    assert_eq!(
        [first, straight].map(|p| p.character.surface),
        [Surface::Packed; 2]
    );
    assert_eq!(last.character.surface, Surface::Wood);
    assert_near(first.end_heading(), last.heading, 1e-12);
}

/// A lip from h, R and its other fields, on level ground or a slope.
fn lip_with(grade: f64, lip: &Value) -> Profile {
    let landing =
        json!({"height": 0.6, "angle_deg": 24, "knuckle_radius": 0.6, "bottom_radius": 3});
    let jump = json!({"kind": "jump", "lip": lip, "gap": 1.2, "landing": landing});
    built(&plan(grade, &json!([jump])))
}

/// The turn θ of the arc solves R (1 − cos θ) + e sin θ = h; it was found by halving an interval in
/// other software.
#[test]
fn a_straight_end_leaves_the_arc_as_it_ends_and_keeps_the_height() {
    for (height, radius, end, degrees, run, arc) in [
        (0.6, 2.0, 0.5, 33.1904222, 1.5132746, 1.1585643),
        (0.5, 2.2, 0.8, 23.4477939, 1.6093477, 0.9003307),
        (0.05, 3.0, 1.0, 2.6780385, 1.1390786, 0.1402218),
    ] {
        let lip = json!({"height": height, "radius": radius, "straight_end": end});
        let profile = lip_with(0.0, &lip);
        let edge = profile.lips[0];
        assert_near(num::degrees(edge.exit), degrees, 1e-6);
        assert_near(edge.edge.x, run, 1e-6);
        assert_near(edge.edge.y, height, 1e-12);
        let [bend, straight] = [0, 1].map(|i| profile.pieces[i]);
        assert_near(bend.length, arc, 1e-6);
        assert_near(bend.curvature, 1.0 / radius, 1e-12);
        assert_near(straight.length, end, 1e-12);
        assert_near(straight.heading, bend.end_heading(), 1e-12);
        assert_eq!((straight.curvature, straight.end), (0.0, edge.edge));
        assert_eq!(straight.character, bend.character);
    }
}

#[test]
fn a_straight_end_goes_with_a_lead_in_and_a_slope() {
    let lip = json!({"height": 0.9, "radius": 2.4, "lead_in": {"angle_deg": 20, "length": 0.5},
        "straight_end": 0.4});
    let profile = lip_with(0.0, &lip);
    assert_near(num::degrees(profile.lips[0].exit), 37.1618508, 1e-6);
    assert_near(profile.lips[0].edge.x, 2.2383839, 1e-6);
    assert_near(profile.lips[0].edge.y, 0.9, 1e-12);
    let surfaces = [0, 1, 2, 3].map(|i| profile.pieces[i].character.surface);
    let (dirt, wood) = (Surface::Packed, Surface::Wood);
    assert_eq!(surfaces, [dirt, dirt, wood, wood]);
    for grade in [-0.2, -0.04, 0.1] {
        let edge = lip_with(grade, &lip).lips[0];
        assert_near(edge.edge.y - grade * edge.edge.x, 0.9, 1e-12);
    }
}

#[test]
fn a_straight_end_of_nothing_is_the_whole_arc() {
    let lip = json!({"height": 0.7, "radius": 2.6});
    let mut ended = lip.clone();
    ended["straight_end"] = json!(0.0);
    let grade = -0.03;
    assert_eq!(lip_with(grade, &lip).pieces, lip_with(grade, &ended).pieces);
}

#[test]
fn a_roller_is_as_high_and_long_as_it_says() {
    let rollers = json!([{"kind": "roller", "height": 0.4, "length": 3.2, "count": 3}]);
    let profile = built(&plan(0.0, &rollers));
    // R = (L²/16 + H²/4)/H = (0.64 + 0.04)/0.4
    for piece in &profile.pieces {
        assert_near(piece.curvature.abs(), 1.0 / 1.7, 1e-12);
    }
    for i in 0..3 {
        let trough = 3.2 * f64::from(i);
        assert_near(profile.height_at(trough).expect("trough"), 0.0, 1e-12);
        let crest = profile.spot(trough + 1.6).expect("crest");
        assert_near(crest.point.y, 0.4, 1e-12);
        assert_near(crest.heading, 0.0, 1e-12);
        assert_near(profile.height_at(trough + 0.8).expect("flank"), 0.2, 1e-12);
    }
    assert_near(profile.pieces.last().expect("pieces").end.x, 9.6, 1e-12);
}

#[test]
fn a_start_ramp_stands_over_its_foot_and_leads_out_along_the_ground() {
    for grade in [-0.1, 0.0, 0.05] {
        let ramp = json!([{"kind": "start_ramp", "platform_height": 2.4, "angle_deg": 35,
            "bottom_radius": 3, "push_off": 1}]);
        let profile = built(&plan(grade, &ramp));
        let ground = num::atan2(grade, 1.0);
        let [platform, edge, slope, hollow] = [0, 1, 2, 3].map(|i| profile.pieces[i]);
        assert_near(platform.start.y - hollow.end.y, 2.4, 1e-12);
        assert_near(hollow.end.y, grade * hollow.end.x, 1e-12);
        assert_eq!(platform.heading, 0.0);
        assert_near(edge.curvature, -1.0 / 0.8, 1e-12);
        assert_near(slope.heading, ground - num::radians(35.0), 1e-12);
        assert_near(hollow.curvature, 1.0 / 3.0, 1e-12);
        assert_near(hollow.end_heading(), ground, 1e-12);
    }
}

#[test]
fn on_a_slope_heights_are_plumb_and_angles_count_from_the_ground() {
    for grade in [-0.2, -0.04, 0.1] {
        let profile = built(&plan(
            grade,
            &json!([
                {"kind": "flat", "length": 2},
                {"kind": "jump", "lip": {"height": 0.8, "radius": 2.6}, "gap": 1.5,
                 "landing": {"height": 0.9, "angle_deg": 24, "knuckle_radius": 0.6, "bottom_radius": 3}},
            ]),
        ));
        let edge = profile.lips[0];
        let ground = num::atan2(grade, 1.0);
        assert_near(edge.edge.y - grade * edge.edge.x, 0.8, 1e-12);
        assert_near(edge.knuckle.y - grade * edge.knuckle.x, 0.9, 1e-12);
        assert_near(edge.knuckle.x - edge.edge.x, 1.5, 1e-12);
        // The circle's versine is the height square to the ground over the radius.
        let versine = 0.8 * num::cos(ground) / 2.6;
        assert_near(num::cos(edge.exit - ground), 1.0 - versine, 1e-12);
        assert_near(edge.slope, ground - num::radians(24.0), 1e-12);
        assert_near(edge.landing_end.y, grade * edge.landing_end.x, 1e-12);
    }
}

fn jump(gap: f64, decked: bool, landing_height: f64, length: Option<f64>) -> Value {
    json!({"kind": "jump", "lip": {"height": 0.7, "radius": 2.6}, "gap": gap, "decked": decked,
        "landing": {"height": landing_height, "angle_deg": 24, "knuckle_radius": 0.5,
            "bottom_radius": 2.5, "length": length}})
}

fn clear(profile: &Profile) -> Vec<(f64, f64)> {
    let faces = profile
        .pieces
        .iter()
        .filter(|p| p.character.intent == Intent::Clear);
    faces.map(|p| (num::degrees(p.heading), p.length)).collect()
}

#[test]
fn an_open_gap_has_plumb_faces_and_a_floor() {
    let profile = built(&plan(0.0, &json!([jump(1.4, false, 0.9, None)])));
    let found = clear(&profile);
    let expected = [(-90.0, 0.7), (0.0, 1.4), (90.0, 0.9)];
    assert_eq!(found.len(), 3);
    for (found, expected) in found.iter().zip(expected) {
        assert_near(found.0, expected.0, 1e-9);
        assert_near(found.1, expected.1, 1e-9);
    }
    let faces = profile.pieces.iter().filter(|p| p.heading.abs() > 1.5);
    assert!(faces.clone().count() == 2 && faces.clone().all(|p| p.start.x == p.end.x));
}

#[test]
fn a_deck_is_one_straight_piece() {
    let profile = built(&plan(0.0, &json!([jump(2.0, true, 0.5, None)])));
    let [deck] = clear(&profile)[..] else {
        panic!("one piece");
    };
    // Down by 0.2 over 2: atan 0.1, √4.04.
    assert_near(deck.0, -5.710593, 1e-6);
    assert_near(deck.1, 2.009975, 1e-6);
}

#[test]
fn a_spine_goes_from_lip_to_landing_by_a_face_at_most() {
    assert_eq!(
        clear(&built(&plan(0.0, &json!([jump(0.0, false, 0.7, None)])))),
        []
    );
    let up = clear(&built(&plan(0.0, &json!([jump(0.0, false, 1.0, None)]))));
    assert!(up.len() == 1 && up[0].0 == 90.0);
    assert_near(up[0].1, 0.3, 1e-12);
    let down = clear(&built(&plan(0.0, &json!([jump(0.0, true, 0.6, None)]))));
    assert!(down.len() == 1 && down[0].0 == -90.0);
    assert_near(down[0].1, 0.1, 1e-12);
}

#[test]
fn a_short_landing_leaves_a_bed_that_carries_what_follows_until_one_runs_to_the_ground() {
    for grade in [0.0, -0.06] {
        let profile = built(&plan(
            grade,
            &json!([
                jump(1.2, false, 1.0, Some(0.6)),
                {"kind": "flat", "length": 2},
                jump(1.2, false, 0.7, None),
                {"kind": "flat", "length": 2},
            ]),
        ));
        let over = |p: DVec2| p.y - grade * p.x;
        let ground = num::atan2(grade, 1.0);
        // The two arcs fall by (0.5 + 2.5)(1 − cos 24°), the slope by 0.6 sin 24°.
        let fall = (3.0 * 0.086_454_542_357_4 + 0.6 * 0.406_736_643_075_8) / num::cos(ground);
        let bed = 1.0 - fall;
        let [first, second] = [profile.lips[0], profile.lips[1]];
        assert_near(over(first.landing_end), bed, 1e-9);
        assert_near(over(profile.spans[1].to), bed, 1e-9);
        assert_near(over(second.edge), bed + 0.7, 1e-9);
        assert_near(over(second.knuckle), bed + 0.7, 1e-9);
        let floor = profile
            .pieces
            .iter()
            .rev()
            .find(|p| p.character.intent == Intent::Clear && p.heading.abs() < 1.0);
        assert_near(over(floor.expect("a floor").start), bed, 1e-9);
        assert_near(over(second.landing_end), 0.0, 1e-9);
        assert_near(over(profile.spans[3].to), 0.0, 1e-9);
    }
}

#[test]
fn a_turn_is_as_long_as_its_line_and_keeps_its_curvature() {
    let turn = json!([{"kind": "turn", "radius": 4, "sweep_deg": 45, "bank_deg": 30}]);
    let profile = built(&plan(-0.05, &turn));
    assert_near(profile.length(), num::PI, 1e-12);
    assert_eq!(profile.pieces[0].character.turn, 0.25);
    assert_eq!(profile.pieces[0].curvature, 0.0);
}

#[test]
fn pieces_say_what_they_ask_of_the_rider() {
    let profile = built(&one_jump());
    let intents = |feature: usize| {
        let span = &profile.spans[feature];
        let inside = |p: &&Piece| p.start.x >= span.from.x - 1e-9 && p.end.x <= span.to.x + 1e-9;
        let mut all: Vec<_> = profile
            .pieces
            .iter()
            .filter(inside)
            .map(|p| p.character.intent)
            .collect();
        all.dedup();
        all
    };
    assert_eq!(intents(0), [Intent::Roll]);
    assert_eq!(intents(2), [Intent::Roll]);
    assert_eq!(intents(4), [Intent::Launch, Intent::Clear, Intent::Land]);
    assert_eq!(intents(6), [Intent::Brake]);
}

#[test]
fn features_are_named_and_counted_by_kind() {
    let flat = json!({"kind": "flat", "length": 1});
    let roller = |count| json!({"kind": "roller", "height": 0.3, "length": 3, "count": count});
    let turn = json!({"kind": "turn", "radius": 4, "sweep_deg": 90, "bank_deg": 30});
    let profile = built(&plan(
        0.0,
        &json!([flat, roller(1), roller(2), turn, jump(1.0, false, 0.7, None),
        flat, roller(1), jump(1.0, true, 0.7, None), {"kind": "run_out", "length": 3}]),
    ));
    let names: Vec<&str> = profile.spans.iter().map(|s| s.name.as_str()).collect();
    let expected = [
        "Flat 1",
        "Roller 1",
        "Rollers 2–3",
        "Turn 1",
        "Jump 1",
        "Flat 2",
        "Roller 4",
        "Jump 2",
        "Run-out",
    ];
    assert_eq!(names, expected);
    assert_eq!([profile.lips[0].feature, profile.lips[1].feature], [4, 7]);
    for pair in profile.spans.windows(2) {
        assert_eq!(pair[0].to, pair[1].from);
    }
}
