//! Boxes as a whole.

use super::*;
use crate::plan::{self, Feature, Landing, Lie, Line};
use crate::profile::Under;

/// The short line in a soil, its landing changed.
fn with_landing(soil: Soil, change: impl Fn(&mut Landing)) -> (Plan, Profile) {
    let mut plan = plan::one_jump();
    plan.yard.soil = soil;
    plan.yard.length += 20.0;
    let Line::Features(features) = &mut plan.line else {
        panic!("it has features")
    };
    for feature in features {
        if let Feature::Jump(jump) = feature {
            jump.landing.boxed = true;
            change(&mut jump.landing);
        }
    }
    let profile = Profile::build(&plan).expect("it can be built");
    (plan, profile)
}

fn sheet_of(height: f64, soil: Soil) -> BoxSheet {
    let (plan, profile) = with_landing(soil, |landing| landing.height = height);
    let mut sheets = boxes(&plan, &profile, &WallStock::default());
    assert_eq!(sheets.len(), 1);
    sheets.remove(0)
}

#[test]
fn only_what_is_boxed_and_no_sod_has_a_sheet() {
    let stock = WallStock::default();
    let none = |change: fn(&mut Landing)| {
        let (plan, profile) = with_landing(Soil::Loam, change);
        boxes(&plan, &profile, &stock).is_empty()
    };
    assert!(none(|landing| landing.boxed = false));
    assert!(none(|landing| {
        (landing.height, landing.angle_deg) = (0.08, 5.0);
        landing.knuckle_radius = 0.2;
        landing.bottom_radius = 0.6;
    }));
    assert!(!none(|_| ()));
}

/// The plan's height at the front, the profile's along the slope.
#[test]
fn posts_are_as_high_as_the_fill() {
    let (plan, profile) = with_landing(Soil::Loam, |landing| landing.height = 1.2);
    let sheet = &boxes(&plan, &profile, &WallStock::default())[0];
    assert!((sheet.height - 1.2).abs() < 1e-9 && sheet.width == plan.width);
    let lip = profile.lips[0];
    let Lie::Grade(grade) = plan.yard.lie else {
        panic!("it is even")
    };
    let ground = lip.knuckle.y - 1.2;
    for post in &sheet.side.posts {
        let top = profile.height_at(lip.knuckle.x + post.at).expect("ground");
        let high = top - (ground + grade * post.at);
        assert!((post.height - high).abs() < 1e-9, "{post:?}");
    }
    let last = sheet.side.posts.last().expect("posts");
    assert!((last.height - LOWEST).abs() < 0.01);
    assert!(
        sheet
            .side
            .posts
            .windows(2)
            .all(|p| p[1].height < p[0].height)
    );
}

/// A landing on a raised bed: its walls begin at the bed, not at the ground.
#[test]
fn on_a_bed_walls_are_no_higher() {
    let text = include_str!("../../../plans/spine_and_bed.json");
    let mut plan = Plan::from_json(text).expect("a plan file of our own");
    let mut heights = Vec::new();
    if let Line::Features(features) = &mut plan.line {
        for feature in features {
            if let Feature::Jump(jump) = feature {
                jump.landing.boxed = true;
                heights.push(jump.landing.height);
            }
        }
    }
    let profile = Profile::build(&plan).expect("it can be built");
    let sheets = boxes(&plan, &profile, &WallStock::default());
    assert_eq!(sheets.len(), heights.len());
    for (sheet, height) in sheets.iter().zip(heights) {
        assert!((sheet.height - height).abs() < 1e-9);
    }
}

/// Sheeting covers the walls, and wastes no more than a course and an end of each.
#[test]
fn boards_cover_the_walls() {
    let stock = WallStock::default();
    for height in [0.5, 0.9, 1.3] {
        let (plan, profile) = with_landing(Soil::Sand, |landing| landing.height = height);
        let sheet = &boxes(&plan, &profile, &stock)[0];
        let boards = sheet.pieces.iter().filter(|p| p.kind == Kind::Sheeting);
        let area = |p: &Piece| p.section[1] * p.length * f64::from(p.count);
        let bought: f64 = boards.clone().map(area).sum();
        let knuckle = profile.lips[0].knuckle;
        let strips = 4000;
        let strip = sheet.length / f64::from(strips);
        let high = |i: u32| {
            let x = knuckle.x + strip * (f64::from(i) + 0.5);
            let ground = Under(&profile.yard).height(x) - Under(&profile.yard).height(knuckle.x);
            profile.height_at(x).expect("ground") - ground - (knuckle.y - height)
        };
        let side: f64 = (0..strips).map(|i| high(i) * strip).sum();
        let walls = 2.0 * side + sheet.width * sheet.height;
        let waste = stock.board[1] * (2.0 * sheet.length + sheet.width) + 0.1 * sheet.height * 2.0;
        println!("{height} m: {bought:.3} m² for {walls:.3} m²");
        assert!(bought >= walls - 0.02 && bought <= walls + waste);
        for board in boards {
            assert!(board.length <= stock.longest + 1e-9);
        }
    }
}

/// A fill as high as some boards, or higher by what a number is rounded by, takes so many courses and no empty one.
#[test]
fn as_many_courses_as_boards_make_the_height() {
    let stock = WallStock::default();
    for boards in 2..=6 {
        for rounding in [-1e-12, 0.0, 1e-12] {
            let height = stock.board[1] * f64::from(boards) + rounding;
            let (plan, profile) = with_landing(Soil::Sand, |landing| landing.height = height);
            let sheet = &boxes(&plan, &profile, &stock)[0];
            let across = sheet.width + 2.0 * stock.board[0];
            let of = |p: &&Piece| p.kind == Kind::Sheeting;
            let front = sheet.pieces.iter().filter(of);
            let front = front.filter(|p| (p.length - across).abs() < 1e-9);
            let count: u32 = front.map(|p| p.count).sum();
            // Both side walls may have a course that is as long by chance.
            assert_eq!(count % 2, boards % 2, "{height} m: {:?}", sheet.pieces);
            assert!(sheet.pieces.iter().all(|p| p.length > 0.0), "{height} m");
        }
    }
}

/// Where boards are sold short, courses are made of several, and none is longer.
#[test]
fn no_board_is_longer_than_what_is_sold() {
    let (plan, profile) = with_landing(Soil::Sand, |landing| landing.height = 1.2);
    let bought = |longest: f64| {
        let stock = WallStock {
            longest,
            ..WallStock::default()
        };
        let sheet = boxes(&plan, &profile, &stock).remove(0);
        let boards = sheet.pieces.into_iter();
        let boards: Vec<_> = boards.filter(|p| p.kind == Kind::Sheeting).collect();
        assert!(
            boards.iter().all(|b| b.length <= longest + 1e-9),
            "{boards:?}"
        );
        let all: f64 = boards.iter().map(|b| b.length * f64::from(b.count)).sum();
        all
    };
    let [short, long] = [2.0, 20.0].map(bought);
    assert!((short / long - 1.0).abs() < 0.01, "{short} m, {long} m");
}

#[test]
fn what_is_higher_or_wetter_pushes_more() {
    let mut before = sheet_of(0.4, Soil::Loam);
    for height in [0.6, 0.8, 1.0, 1.2] {
        let sheet = sheet_of(height, Soil::Loam);
        for (more, less) in sheet.pushes.iter().zip(&before.pushes) {
            assert!(more.thrust > less.thrust && more.arm > less.arm);
        }
        assert!(sheet.pushes.windows(2).all(|p| p[1].thrust > p[0].thrust));
        before = sheet;
    }
}

/// What is said to hold holds with the factor asked for, in wedges that stay clear of each other; what does not is
/// said.
#[test]
fn anchors_hold_or_the_sheet_says_so() {
    let stock = WallStock::default();
    let (mut held, mut failed) = (0, 0);
    for soil in Soil::ALL {
        for height in [0.5, 0.8, 1.1, 1.4, 1.8] {
            let sheet = sheet_of(height, soil);
            let says = sheet.cautions.contains(&Caution::NoAnchor);
            let Some(anchors) = &sheet.anchors else {
                assert!(says || sheet.front.posts.iter().all(|p| p.tie.is_none()));
                continue;
            };
            let stands = &anchors.checks[..2];
            let least = stands
                .iter()
                .map(|c| c.factor)
                .fold(f64::INFINITY, num::min);
            println!("{soil:?} {height} m: {least:.2} dug {:.1}", anchors.dug);
            assert_eq!(anchors.holds, least >= stock.safety);
            assert_eq!(anchors.holds, !says);
            assert!(anchors.depth >= f64::from(anchors.courses) * stock.deadman[1]);
            assert!(anchors.distance > sheet.height * 0.5 && anchors.dug <= stock.deepest + 1e-9);
            if anchors.holds {
                held += 1;
            } else {
                failed += 1;
            }
        }
    }
    assert!(held >= 8 && failed >= 2, "{held} held, {failed} did not");
}

/// A tie's pull: what pushes less what the foot holds, summed again from the sheet.
#[test]
fn what_pulls_is_what_pushes_less_what_feet_hold() {
    let sheet = sheet_of(1.2, Soil::Sand);
    let anchors = sheet.anchors.expect("it has anchors");
    let cosine = anchors.distance / anchors.tie_length;
    for check in &anchors.checks {
        let level = check.pull * cosine;
        assert!(
            level < check.thrust && level > 0.5 * check.thrust,
            "{check:?}"
        );
        assert!((check.factor - check.resistance / check.pull).abs() < 1e-12);
    }
    let pulls: f64 = sheet
        .front
        .posts
        .iter()
        .filter_map(|p| p.tie)
        .map(|t| t.pull)
        .sum();
    let hardest = num::max(anchors.checks[0].pull, anchors.checks[1].pull) * cosine;
    assert!((pulls - hardest).abs() < 1e-6 * pulls);
}

/// Nothing bears more than it may without a word; more posts stand where they would.
#[test]
fn nothing_is_overloaded_without_a_word() {
    for soil in Soil::ALL {
        for height in [0.5, 1.0, 1.6, 2.4] {
            let sheet = sheet_of(height, soil);
            let says = |part| sheet.cautions.contains(&Caution::Overloaded { part });
            assert_eq!(sheet.rod > 1.0, says(Part::Rod));
            let bends = num::max(sheet.front.post_bending(), sheet.side.post_bending());
            assert_eq!(bends > 1.0, says(Part::Post));
        }
    }
    let thin = WallStock {
        board: [0.02, 0.2],
        ..WallStock::default()
    };
    let (plan, profile) = with_landing(Soil::Loam, |landing| landing.height = 1.2);
    let [thick, thin] = [WallStock::default(), thin].map(|stock| {
        let sheet = boxes(&plan, &profile, &stock).remove(0);
        assert!(sheet.side.sheeting <= 1.0);
        sheet.side.posts.len()
    });
    assert!(thin > thick);
}

/// Heights over which codes speak, each counted as it counts.
#[test]
fn codes_speak_over_their_heights() {
    let reviews = |height| {
        let sheet = sheet_of(height, Soil::Sand);
        let review = |c: &Caution| match *c {
            Caution::Review { rule, over, height } => Some((rule, over, height)),
            _ => None,
        };
        sheet.cautions.iter().filter_map(review).collect::<Vec<_>>()
    };
    assert_eq!(reviews(0.6), []);
    let high = reviews(0.62);
    assert_eq!(high.len(), 1);
    assert_eq!((high[0].0, high[0].1), (Rule::Designed, 0.610));
    let both = reviews(0.9);
    assert_eq!(both.len(), 2);
    assert!(both[1].2 > 0.9 + 0.44 && both[1].1 == 1.219);
}
