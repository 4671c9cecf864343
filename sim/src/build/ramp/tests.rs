//! Start ramps as a whole.

use super::*;
use crate::build::softwood::MOST_SLENDER;
use crate::plan::{self, Feature, Lie, Line, StartRamp, Surface};

fn with_ramp(change: impl Fn(&mut StartRamp)) -> (Plan, Profile) {
    let mut plan = plan::demo();
    plan.yard.lie = Lie::Grade(0.0);
    plan.yard.length += 40.0;
    let Line::Features(features) = &mut plan.line else {
        panic!("it has features")
    };
    let Feature::StartRamp(ramp) = &mut features[0] else {
        panic!("it begins with a ramp")
    };
    ramp.surface = Surface::Wood;
    (ramp.angle_deg, ramp.edge_radius, ramp.bottom_radius) = (25.0, 0.4, 1.0);
    change(ramp);
    let profile = Profile::build(&plan).expect("it can be built");
    (plan, profile)
}

fn sheet_of(height: f64) -> RampSheet {
    let (plan, profile) = with_ramp(|ramp| ramp.platform_height = height);
    start_ramp(&plan, &profile, &RampStock::default()).expect("it is of wood")
}

#[test]
fn only_wood_has_a_sheet() {
    let (plan, profile) = with_ramp(|ramp| ramp.surface = Surface::Packed);
    assert_eq!(start_ramp(&plan, &profile, &RampStock::default()), None);
    let mut plan = plan::one_jump();
    if let Line::Features(features) = &mut plan.line {
        features.retain(|feature| !matches!(feature, Feature::StartRamp(_)));
    }
    plan.initial_speed = Some(3.0);
    let profile = Profile::build(&plan).expect("it can be built");
    assert_eq!(start_ramp(&plan, &profile, &RampStock::default()), None);
}

/// The plan's numbers come back, and the lengths close: what the pieces fall by is the platform's height.
#[test]
fn the_shape_is_the_plan_s() {
    let (plan, profile) = with_ramp(|ramp| {
        (ramp.platform_height, ramp.angle_deg) = (1.9, 31.0);
        (ramp.edge_radius, ramp.bottom_radius) = (0.9, 3.5);
        ramp.width = Some(1.5);
    });
    let sheet = start_ramp(&plan, &profile, &RampStock::default()).expect("it is of wood");
    let shape = &sheet.shape;
    println!("{shape:?}");
    assert_eq!(shape.width, 1.5);
    assert!((shape.height - 1.9).abs() < 1e-9);
    assert!((num::degrees(shape.slope) - 31.0).abs() < 1e-9);
    assert!((shape.edge[0] - 0.9).abs() < 1e-9 && (shape.hollow[0] - 3.5).abs() < 1e-9);
    let (s, c) = num::sin_cos(shape.slope);
    let fall = (0.9 + 3.5) * (1.0 - c) + shape.slope_length * s;
    assert!((fall - 1.9).abs() < 1e-9);
    let run = shape.platform + (0.9 + 3.5) * s + shape.slope_length * c;
    assert!((run - shape.run).abs() < 1e-9);
    assert!((shape.edge[1] - 0.9 * shape.slope).abs() < 1e-9);
    let along = shape.platform + (0.9 + 3.5) * shape.slope + shape.slope_length;
    assert!((along - shape.deck_length).abs() < 1e-9);
    let pitch = 0.14 + 0.005;
    let boards = f64::from(sheet.deck_boards);
    assert!(boards * pitch >= along && (boards - 1.0) * pitch < along);
}

/// No joist reaches farther than it may, no post or beam bears more, and rows go down the slope.
#[test]
fn the_frame_bears_the_deck() {
    for height in [0.4, 0.8, 1.5, 2.2, 3.5] {
        let sheet = sheet_of(height);
        let frame = &sheet.frame;
        let bearing = frame.stretches.len() - 1;
        for stretch in &frame.stretches[..bearing] {
            assert!(stretch.length <= frame.may_span + 1e-9, "{stretch:?}");
        }
        assert!(frame.stretches[0].from == 0.0 && frame.stretches[bearing].to == sheet.shape.run);
        for row in &frame.rows {
            assert!(row.post_use <= 1.0 && row.bearer_use <= 1.0, "{row:?}");
            assert!(row.post <= 0.1 * MOST_SLENDER && row.footing < 0.5);
        }
        assert!(
            frame
                .rows
                .windows(2)
                .all(|r| r[1].height <= r[0].height + 1e-9)
        );
        println!(
            "{height} m: {} joists, {} rows, may span {:.2} m, {:.0} N",
            frame.joists,
            frame.rows.len(),
            frame.may_span,
            frame.rows[0].load
        );
    }
}

/// The wider a ramp, the more posts stand in a row, so that its beams bear the deck.
#[test]
fn a_wide_ramp_has_more_posts() {
    let posts = |width| {
        let (plan, profile) = with_ramp(|ramp| {
            (ramp.platform_height, ramp.width) = (1.8, Some(width));
        });
        let sheet = start_ramp(&plan, &profile, &RampStock::default()).expect("a ramp");
        let rows = &sheet.frame.rows;
        assert!(
            rows.iter()
                .all(|row| row.bearer_use <= 1.0 && row.post_use <= 1.0)
        );
        rows.iter().map(|row| row.posts).max()
    };
    assert_eq!(posts(1.2), Some(2));
    assert!(posts(4.0) > Some(2) && posts(6.0) > posts(4.0));
}

/// All of the deck's load goes into posts or, at its foot, into the ground.
#[test]
fn posts_bear_at_least_the_whole_load() {
    let stock = RampStock::default();
    let sheet = sheet_of(1.8);
    let posts: f64 = sheet
        .frame
        .rows
        .iter()
        .map(|r| r.load * f64::from(r.posts))
        .sum();
    let last = sheet.frame.rows.last().expect("rows");
    let even = (stock.live + stock.dead) * sheet.shape.width;
    let carried = even * 0.5 * (last.at + sheet.shape.run);
    assert!(posts >= carried * (1.0 - 1e-9), "{posts} of {carried}");
}

#[test]
fn rails_stand_where_a_fall_hurts() {
    assert!(sheet_of(0.45).rails.is_none());
    let low = sheet_of(0.7).rails.expect("a rail");
    assert!(low.closed_to == 0.0 && low.balusters == 0 && low.to > 1.6);
    let (plan, profile) = with_ramp(|ramp| ramp.platform_height = 1.8);
    let high = start_ramp(&plan, &profile, &RampStock::default()).expect("a ramp");
    let rails = high.rails.expect("a rail");
    assert!(rails.bending <= 1.0 && rails.closed_to > 0.0 && rails.closed_to < rails.to);
    for (to, fall) in [(rails.to, 0.508), (rails.closed_to, 0.762)] {
        let x = profile.pieces[0].start.x + to;
        let at = |x| profile.height_at(x).expect("ground");
        assert!(at(x) >= fall - 1e-9 && at(x + 0.011) < fall);
    }
    let closed = 2.0 * rails.closed_to + rails.back;
    let gap = closed / f64::from(rails.balusters) - 0.045;
    assert!(gap <= 0.089 + 1e-9);
}

#[test]
fn a_stair_has_steps_that_can_be_climbed() {
    assert!(sheet_of(0.19).stair.is_none());
    for height in [0.4, 1.0, 2.7] {
        let stair = sheet_of(height).stair.expect("a stair");
        assert!(stair.rise <= 0.196 && stair.rise > 0.12);
        assert!((stair.rise * f64::from(stair.risers) - height).abs() < 1e-9);
    }
}

#[test]
fn it_defers_over_its_heights() {
    let rules = |height| {
        let sheet = sheet_of(height);
        let rule = |c: &Caution| match *c {
            Caution::Review { rule, .. } => Some(rule),
            _ => None,
        };
        sheet.cautions.iter().filter_map(rule).collect::<Vec<_>>()
    };
    assert_eq!(rules(0.75), []);
    assert_eq!(rules(0.78), [Rule::Permit]);
    assert_eq!(rules(2.43), [Rule::Permit]);
    assert_eq!(rules(2.45), Rule::ALL);
}

/// Joists on arcs are sawn from boards that the curve fits into: chord, radius and rise of a circle.
#[test]
fn ribs_are_deep_enough_for_the_curve() {
    let stock = RampStock::default();
    let (plan, profile) = with_ramp(|ramp| {
        (ramp.platform_height, ramp.angle_deg) = (1.2, 30.0);
        (ramp.edge_radius, ramp.bottom_radius) = (0.8, 3.0);
    });
    let sheet = start_ramp(&plan, &profile, &stock).expect("a ramp");
    let bent: Vec<_> = sheet
        .frame
        .stretches
        .iter()
        .filter(|s| s.sagitta > 0.01)
        .collect();
    assert!(!bent.is_empty());
    for stretch in bent {
        let deep = stock.joist[1] + stretch.sagitta;
        let rib = |p: &&Piece| p.kind == Kind::Rib && (p.section[1] - deep).abs() < 1e-9;
        assert!(sheet.pieces.iter().any(|p| rib(&p)), "{stretch:?}");
    }
    let laid = shape::laid(&plan, &profile).expect("a ramp");
    let hollow = laid.pieces.last().expect("pieces");
    let back = profile.pieces[0].start.x;
    let chord = num::length(hollow.end - hollow.start);
    let rise = 3.0 - (9.0 - 0.25 * chord * chord).sqrt();
    let got = laid.sagitta(hollow.start.x - back, hollow.end.x - back);
    assert!((got - rise).abs() < 1e-3, "{got} {rise}");
}
