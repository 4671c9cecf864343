//! The whole picture of the demonstration ride.

use super::sheet::{Ink, Label, Mark, Sheet};
use super::{Beside, Labels, Picture, Seen, Strip, View};
use glam::DVec2;
use sim::plan::{self, Plan};
use sim::setup::{self, Ridden};

const PHONE: DVec2 = DVec2::new(360.0, 296.0);

fn demo() -> (Plan, Ridden, Picture) {
    let plan = plan::demo();
    let ridden = setup::ride_plan(&plan, 0).unwrap();
    let picture = Picture::new(&plan, vec![ridden.clone()]).unwrap();
    (plan, ridden, picture)
}

fn seen(time: f64, view: View) -> Seen {
    Seen {
        time,
        size: PHONE,
        view,
        chosen: None,
        grips: false,
        held: None,
        zoom: 1.0,
        still: false,
    }
}

fn compose(picture: &Picture, seen: &Seen) -> (Sheet, Vec<Strip>) {
    let (mut sheet, mut strips) = (Sheet::default(), Vec::new());
    picture.strips(seen, &mut strips);
    picture.compose(
        seen,
        &strips,
        Beside::default(),
        &Labels::default(),
        &mut sheet,
    );
    (sheet, strips)
}

/// Centres and radii of the tyres on a sheet, px.
fn tyres(sheet: &Sheet) -> Vec<(DVec2, f64)> {
    let tyre = |mark: &Mark| match *mark {
        Mark::Ring {
            ink: Ink::Tyre,
            width,
            centre,
            radius,
        } if width > 0.0 => Some((centre, radius + 0.5 * width)),
        _ => None,
    };
    sheet.marks.iter().filter_map(tyre).collect()
}

#[test]
fn every_number_on_the_sheet_is_finite_all_the_way() {
    let (_, ridden, picture) = demo();
    let end = ridden.run.samples.last().unwrap().t;
    for view in [View::Follow, View::Whole] {
        for i in 0..=40 {
            let (sheet, _) = compose(&picture, &seen(end * f64::from(i) / 40.0, view));
            assert!(sheet.points.iter().all(|p| p.is_finite()));
            assert_eq!(tyres(&sheet).len(), 2, "one bike, once");
        }
    }
}

#[test]
fn tyres_under_load_are_drawn_on_the_ground() {
    let (_, ridden, picture) = demo();
    let mut checked = 0;
    for s in ridden.run.samples.iter().step_by(7) {
        if s.rear_load < 50.0 || s.front_load < 50.0 {
            continue;
        }
        let (sheet, strips) = compose(&picture, &seen(s.t, View::Follow));
        for (centre, radius) in tyres(&sheet) {
            let away = ridden
                .profile
                .pieces
                .iter()
                .flat_map(|p| (0..=200).map(|i| p.point(p.length * f64::from(i) / 200.0)));
            let nearest = away
                .map(|p| strips[0].place(p).distance(centre))
                .fold(f64::INFINITY, f64::min);
            let gap = (nearest - radius) / strips[0].scale;
            assert!(gap.abs() < 0.03, "{gap} m at {} s", s.t);
            checked += 1;
        }
    }
    assert!(checked > 50, "{checked}");
}

#[test]
fn the_rider_moves_to_the_right_and_back_to_the_left_only_with_a_new_row() {
    let (_, ridden, picture) = demo();
    let end = ridden.run.samples.last().unwrap().t;
    let mut before = (0, f64::NEG_INFINITY);
    for i in 0..=60 {
        let (sheet, strips) = compose(&picture, &seen(end * f64::from(i) / 60.0, View::Whole));
        let at = tyres(&sheet)[0].0;
        let row = strips.iter().position(|s| at.y < s.bottom).unwrap();
        assert!(
            row > before.0 || at.x >= before.1 - 1.0,
            "{at} after {before:?}"
        );
        before = (row, at.x);
    }
}

#[test]
fn each_lip_in_sight_carries_its_speed_on_the_sheet() {
    let (_, ridden, picture) = demo();
    let (sheet, _) = compose(&picture, &seen(0.0, View::Whole));
    let speeds = sheet.marks.iter().filter(|m| {
        matches!(m, Mark::Text { label: Label::Speed(_), at, .. } if at.x > 0.0 && at.x < PHONE.x && at.y < PHONE.y)
    });
    assert_eq!(speeds.count(), ridden.profile.lips.len());
}

#[test]
fn a_tap_on_a_feature_finds_it() {
    let (_, ridden, picture) = demo();
    let (_, strips) = compose(&picture, &seen(0.0, View::Whole));
    for span in &ridden.profile.spans {
        let middle = span.from.lerp(span.to, 0.5);
        let strip = strips.iter().find(|s| s.holds(middle.x)).unwrap();
        let at = strip.place(middle);
        assert_eq!(picture.feature_at(at, &strips), Some(span.feature));
    }
}

#[test]
fn another_line_lies_pale_under_this_one() {
    let (_, _, picture) = demo();
    let other = plan::examples().remove(1);
    let ridden = setup::ride_plan(&other, 0).unwrap();
    let other = Picture::new(&other, vec![ridden]).unwrap();
    let seen = seen(1.0, View::Follow);
    let (mut sheet, mut strips) = (Sheet::default(), Vec::new());
    picture.strips(&seen, &mut strips);
    let beside = Beside {
        before: None,
        against: Some(&other),
        ghosts: &[],
    };
    picture.compose(&seen, &strips, beside, &Labels::default(), &mut sheet);
    let ink = |mark: &Mark| match *mark {
        Mark::Line { ink, .. }
        | Mark::Area { ink, .. }
        | Mark::Ring { ink, .. }
        | Mark::Text { ink, .. } => ink,
    };
    let pale = sheet
        .marks
        .iter()
        .take_while(|m| ink(m) == Ink::Before)
        .count();
    // Ground, wheels, frame and body of the other are all of one colour, and all below.
    assert!(pale > 20, "{pale}");
    assert!(sheet.marks[pale..].iter().any(|m| ink(m) == Ink::Rider));
}

#[test]
fn a_ghost_rides_pale_under_its_label() {
    let (plan, _, picture) = demo();
    let mut stiff = plan.clone();
    stiff.riders[0].rider.style = plan::Style::Passive;
    let ridden = setup::ride_plan(&stiff, 0).unwrap();
    let ghosts = [Picture::new(&stiff, vec![ridden]).unwrap()];
    let seen = seen(2.5, View::Follow);
    let (mut sheet, mut strips) = (Sheet::default(), Vec::new());
    picture.strips(&seen, &mut strips);
    let beside = Beside {
        ghosts: &ghosts,
        ..Beside::default()
    };
    picture.compose(&seen, &strips, beside, &Labels::default(), &mut sheet);
    let label = |m: &Mark| matches!(m, Mark::Text { label: Label::Ghost(0), at, .. } if at.x > 0.0 && at.x < PHONE.x);
    assert_eq!(sheet.marks.iter().filter(|m| label(m)).count(), 1);
    let pale = |m: &&Mark| matches!(m, Mark::Ring { ink: Ink::Pale, .. });
    assert!(
        sheet.marks.iter().filter(pale).count() >= 4,
        "wheels and head"
    );
    assert_eq!(tyres(&sheet).len(), 2, "one bike in full colour");
}

#[test]
fn what_can_be_taken_hold_of_is_drawn_there() {
    let (_, _, picture) = demo();
    let mut seen = seen(0.0, View::Whole);
    seen.chosen = Some(6);
    let without = compose(&picture, &seen).0.marks.len();
    seen.grips = true;
    let (sheet, strips) = compose(&picture, &seen);
    let diamonds = sheet.marks[without..].iter().filter_map(|mark| match mark {
        Mark::Area { points, .. } => Some(&sheet.points[points.clone()]),
        _ => None,
    });
    let middles: Vec<DVec2> = diamonds.map(|d| (d[0] + d[2]) * 0.5).collect();
    // The second jump's lip and its knuckle.
    let grips = picture.grips(6, &strips);
    assert_eq!((middles.len(), grips.len()), (2, 2));
    for (middle, grip) in middles.iter().zip(&grips) {
        assert!(
            middle.distance(DVec2::new(grip.x, grip.y)) < 1e-9,
            "{grip:?} {middle}"
        );
    }
}

#[test]
fn however_near_the_view_comes_the_rider_is_wholly_on_the_sheet() {
    let (plan, ridden, picture) = demo();
    let wheel = plan.riders[0].bike.wheel_radius();
    for zoom in [1.0, 2.0, 3.0] {
        for s in ridden.run.samples.iter().step_by(10) {
            for still in [false, true] {
                let seen = Seen {
                    zoom,
                    still,
                    ..seen(s.t, View::Follow)
                };
                let (sheet, strips) = compose(&picture, &seen);
                let tops = sheet.marks.iter().filter_map(|m| match *m {
                    Mark::Ring {
                        ink: Ink::Pads,
                        centre,
                        radius,
                        ..
                    } => Some(centre.y - radius),
                    _ => None,
                });
                let top = tops.fold(f64::INFINITY, f64::min);
                let ground = strips[0].place(DVec2::new(s.bike_x, s.bike_z - wheel));
                assert!(top >= 0.0, "{top} px at {} s, {zoom} times", s.t);
                assert!(
                    ground.y <= PHONE.y && ground.x > 0.0 && ground.x < PHONE.x,
                    "{ground} at {} s, {zoom} times, still {still}",
                    s.t
                );
            }
        }
    }
}

#[test]
fn whoever_rides_beside_has_a_name() {
    let (_, _, picture) = demo();
    let plan = plan::demo();
    let rides = [0, 1].map(|rider| setup::ride_plan(&plan, rider).unwrap());
    let both = Picture::new(&plan, rides.to_vec()).unwrap();
    let named = |picture: &Picture| {
        let (sheet, _) = compose(picture, &seen(2.5, View::Follow));
        let label = |m: &&Mark| matches!(m, Mark::Text { label: Label::Other(0), at, .. } if at.x > 0.0 && at.x < PHONE.x);
        sheet.marks.iter().filter(label).count()
    };
    assert_eq!((named(&picture), named(&both)), (0, 1));
}

/// Where a piece of writing stands on the sheet, px, by an ample measure across and a letter's height upward.
fn box_of(mark: &Mark, labels: &Labels) -> Option<(Label, [DVec2; 2])> {
    let Mark::Text {
        size,
        at,
        align,
        label,
        ..
    } = *mark
    else {
        return None;
    };
    let wide = 0.9 * super::labels::width(labels.text(label), size);
    let left = match align {
        super::Align::Left => at.x - wide,
        super::Align::Middle => at.x - 0.5 * wide,
        super::Align::Right => at.x,
    };
    let low = DVec2::new(left + wide, at.y);
    Some((label, [DVec2::new(left, at.y - 0.72 * size), low]))
}

#[test]
fn figures_of_a_small_jump_do_not_lie_over_one_another() {
    let mut plan = plan::demo();
    if let plan::Line::Features(features) = &mut plan.line {
        for feature in features {
            if let plan::Feature::Jump(jump) = feature {
                jump.gap = 0.6;
                jump.lip.height = 0.3;
                jump.landing.height = 0.35;
            }
        }
    }
    let ridden = setup::ride_plan(&plan, 0).unwrap();
    let picture = Picture::new(&plan, vec![ridden.clone()]).unwrap();
    let labels = serde_json::json!({
        "features": [], "speeds": ["21.2", "21.2", "21.2"], "ranges": ["17.8–24.0", "17.8–24.0", "17.8–24.0"],
        "dimensions": ["0.30 m", "0.60 m", "0.35 m"], "unit": "km/h", "energy": "", "ghosts": [],
    });
    let labels: Labels = serde_json::from_value(labels).unwrap();
    for (feature, lip) in [(4, 0), (6, 1), (8, 2)] {
        let edge = ridden.profile.lips[lip].edge.x;
        let near = ridden.run.samples.iter().find(|s| s.bike_x > edge - 1.0);
        let mut seen = seen(near.unwrap().t, View::Follow);
        seen.chosen = Some(feature);
        let (mut sheet, mut strips) = (Sheet::default(), Vec::new());
        picture.strips(&seen, &mut strips);
        picture.compose(&seen, &strips, Beside::default(), &labels, &mut sheet);
        let boxes: Vec<_> = sheet
            .marks
            .iter()
            .filter_map(|mark| box_of(mark, &labels))
            .filter(|(label, _)| !labels.text(*label).is_empty())
            .collect();
        assert!(boxes.len() >= 6, "{boxes:?}");
        for (i, (a, [a_from, a_to])) in boxes.iter().enumerate() {
            for (b, [b_from, b_to]) in &boxes[i + 1..] {
                let apart = a_to.x <= b_from.x
                    || b_to.x <= a_from.x
                    || a_to.y <= b_from.y
                    || b_to.y <= a_from.y;
                assert!(apart, "{a:?} and {b:?} of feature {feature}: {boxes:?}");
            }
        }
    }
}

/// More marks than any picture of the demonstration has, several times over.
const MANY: usize = 40_000;

#[test]
fn every_picture_has_an_end_on_any_sheet_at_any_moment() {
    let (_, _, picture) = demo();
    let (mut sheet, mut strips) = (Sheet::default(), Vec::new());
    let sides = [0.0, 0.4, 1.0, 20.0, 57.0, 59.0, 360.0, 5000.0];
    let times = [
        f64::NAN,
        f64::NEG_INFINITY,
        -1.0,
        0.0,
        4.6,
        1e9,
        f64::INFINITY,
    ];
    let all = sides.iter().flat_map(|&x| sides.map(|y| DVec2::new(x, y)));
    for (size, time) in all.flat_map(|size| times.map(|time| (size, time))) {
        for (view, zoom) in [(View::Whole, 1.0), (View::Follow, 0.4), (View::Follow, 3.0)] {
            let seen = Seen {
                size,
                zoom,
                ..seen(time, view)
            };
            picture.strips(&seen, &mut strips);
            let labels = Labels::default();
            picture.compose(&seen, &strips, Beside::default(), &labels, &mut sheet);
            let marks = sheet.marks.len();
            assert!(
                marks < MANY,
                "{marks} marks on {size} at {time} s, {view:?}"
            );
        }
        picture.compose_saddle(time, size, &[], &mut sheet);
        let marks = sheet.marks.len();
        assert!(
            marks < MANY,
            "{marks} marks on {size} at {time} s, from the saddle"
        );
    }
}
