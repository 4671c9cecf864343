//! Lines on surveyed ground, and lines that do not fit their yard.

use super::*;
use crate::plan::Yard;

const ORCHARD: &str = plans::FILES[0];
const BENT: &str = plans::FILES[3];

#[test]
fn a_survey_of_an_even_slope_gives_the_same_line_as_the_slope() {
    for text in [ORCHARD, plans::FILES[1], plans::FILES[2]] {
        let even = Plan::from_json(text).expect("readable");
        let Lie::Grade(grade) = even.yard.lie else {
            panic!("a grade");
        };
        let points = (0..=9).map(|i| f64::from(i) * even.yard.length / 9.0);
        let mut surveyed = even.clone();
        surveyed.yard.lie = Lie::Surveyed(points.map(|x| (x, grade * x).into()).collect());
        let (a, b) = (built(&even), built(&surveyed));
        for (a, b) in a.lips.iter().zip(&b.lips) {
            assert!(a.edge.distance(b.edge) < 1e-9);
            assert!(a.landing_end.distance(b.landing_end) < 1e-9);
            assert_near(a.exit, b.exit, 1e-9);
        }
        assert_near(a.length(), b.length(), 1e-9);
    }
}

#[test]
fn on_bent_ground_every_feature_begins_and_ends_on_it() {
    let plan = Plan::from_json(BENT).expect("readable");
    let ground = ground::Ground::new(&plan.yard.lie);
    let profile = built(&plan);
    for span in &profile.spans {
        assert_near(span.to.y, ground.height(span.to.x), 1e-9);
    }
    for lip in &profile.lips {
        assert_near(lip.edge.y - ground.height(lip.edge.x), 0.6, 1e-9);
        assert_near(lip.knuckle.y - ground.height(lip.knuckle.x), 0.5, 1e-9);
    }
    let start = profile.spans[0].from.y;
    assert_near(start - profile.spans[0].to.y, 2.2, 1e-9);
}

#[test]
fn flats_follow_the_bends_of_the_ground_at_their_full_length() {
    let plan = Plan::from_json(BENT).expect("readable");
    let profile = built(&plan);
    let (from, to) = (&profile.spans[1].from, &profile.spans[1].to);
    let bend = DVec2::new(9.0, 2.7);
    assert!(from.x < bend.x && bend.x < to.x);
    assert_near(profile.height_at(9.0).expect("flat"), 2.7, 1e-12);
    assert_near(from.distance(bend) + bend.distance(*to), 4.0, 1e-9);
}

#[test]
fn the_yard_is_drawn_as_it_was_given() {
    let plan = Plan::from_json(BENT).expect("readable");
    let profile = built(&plan);
    assert_eq!(
        (profile.yard.len(), profile.yard[3]),
        (10, DVec2::new(13.0, 2.62))
    );
    let even = built(&one_jump());
    assert_eq!(even.yard, [DVec2::ZERO, DVec2::new(60.0, -0.04 * 60.0)]);
}

#[test]
fn what_does_not_fit_the_yard_is_said_by_how_much() {
    let mut plan = one_jump();
    let end = built(&plan).pieces.last().expect("pieces").end.x;
    plan.yard = Yard {
        length: end - 1.75,
        ..plan.yard
    };
    let faults = refused(&plan);
    assert_eq!(faults.len(), 1);
    assert_eq!(faults[0].field, "yard.length");
    let excess = faults[0].least.expect("least") - faults[0].given.expect("given");
    assert_near(excess, 1.75, 1e-9);
    plan.yard.length = end;
    built(&plan);
}
