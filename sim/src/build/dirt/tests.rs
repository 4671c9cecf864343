use super::section::Section;
use super::*;
use crate::plan::{Soil, Turn, demo};

fn loam() -> Earth {
    Earth::of(Soil::Loam)
}

/// The demonstration with one of its features changed.
fn changed(change: impl Fn(&mut Feature)) -> Plan {
    let mut plan = demo();
    let Line::Features(features) = &mut plan.line else {
        panic!("it has features")
    };
    features.iter_mut().for_each(change);
    plan
}

fn of(plan: &Plan) -> Vec<Heap> {
    let profile = Profile::build(plan).expect("it can be built");
    heaps(plan, &profile, &loam())
}

fn kinds(plan: &Plan) -> &[Feature] {
    match &plan.line {
        Line::Features(features) => features,
        Line::Surveyed { .. } => panic!("it has features"),
    }
}

/// Volume of a feature of the demonstration, the first of its kind.
fn first(plan: &Plan, is: impl Fn(&Feature) -> bool) -> Heap {
    let at = kinds(plan).iter().position(is).expect("it has one");
    of(plan).swap_remove(at)
}

fn jump(feature: &Feature) -> bool {
    matches!(feature, Feature::Jump(_))
}

#[test]
fn only_what_is_heaped_has_dirt() {
    let plan = demo();
    for (heap, feature) in of(&plan).iter().zip(kinds(&plan)) {
        let dirt = matches!(feature, Feature::Roller(_) | Feature::Jump(_));
        println!("{feature:?}\n  {heap:?}");
        assert_eq!(heap.fill > 0.0, dirt, "{feature:?}");
        assert_eq!(heap.cut, 0.0, "{feature:?}");
        assert_eq!(heap.fill_at.is_some(), dirt);
    }
}

/// Hollow and crest are the same arc turned over, so that a roller is half as large as the box around it.
#[test]
fn a_roller_between_walls_is_half_of_its_box() {
    let plan = demo();
    let Some(Feature::Roller(roller)) = kinds(&plan)
        .iter()
        .find(|f| matches!(f, Feature::Roller(_)))
    else {
        panic!("it has a roller")
    };
    let profile = Profile::build(&plan).expect("it can be built");
    let upright = Earth {
        slope: 0.0,
        ..loam()
    };
    let at = kinds(&plan)
        .iter()
        .position(|f| matches!(f, Feature::Roller(_)));
    let heap = &heaps(&plan, &profile, &upright)[at.expect("it has one")];
    let span = &profile.spans[heap.feature];
    let level = span.to.x - span.from.x;
    let half = plan.width * level * roller.height / 2.0;
    assert!((heap.fill - half).abs() < 1e-9, "{} {half}", heap.fill);
    assert!((heap.foot - plan.width).abs() < 1e-12);
}

#[test]
fn a_wider_heap_has_as_much_more_as_its_middle() {
    let wide = |width| {
        let mut plan = demo();
        plan.width = width;
        first(&plan, jump).fill
    };
    let [a, b, c] = [1.0, 1.5, 2.5].map(wide);
    assert!((c - b - 2.0 * (b - a)).abs() < 1e-9 && b > a);
}

#[test]
fn walls_save_the_slopes_and_a_plan_without_them_says_the_same() {
    let plan = demo();
    let profile = Profile::build(&plan).expect("it can be built");
    let both = boxed(&plan, &profile, &loam());
    assert_eq!(both.len(), kinds(&plan).iter().filter(|f| jump(f)).count());
    for pair in &both {
        assert!(pair.saved > 0.0 && pair.walls.slopes.is_empty());
        assert_eq!(pair.mound.slopes.len(), 1, "{pair:?}");
        assert!((pair.walls.foot - pair.walls.top).abs() < 1e-12);
        let planned = &of(&plan)[pair.feature];
        assert!(planned == &pair.mound || planned == &pair.walls);
    }
}

/// A lip of dirt slopes into the gap behind it; under one of wood there is nothing.
#[test]
fn a_lip_of_dirt_is_heaped() {
    let dirt = changed(|feature| {
        if let Feature::Jump(jump) = feature {
            (jump.lip.surface, jump.decked) = (Surface::Packed, false);
            jump.gap = 6.0;
        }
    });
    let mut dirt = dirt;
    dirt.yard.length += 60.0;
    let wood = {
        let mut plan = dirt.clone();
        let Line::Features(features) = &mut plan.line else {
            panic!("it has features")
        };
        for feature in features {
            if let Feature::Jump(jump) = feature {
                jump.lip.surface = Surface::Wood;
            }
        }
        plan
    };
    let [dirt, wood] = [&dirt, &wood].map(|plan| first(plan, jump));
    assert!(dirt.fill > wood.fill + 0.1);
    assert_eq!((dirt.slopes.len(), wood.slopes.len()), (2, 1));
    assert!(!dirt.crowded && !wood.crowded);
}

#[test]
fn a_landing_too_near_for_its_slope_is_crowded() {
    let gap = |gap: f64| {
        let mut plan = changed(|feature| {
            if let Feature::Jump(jump) = feature {
                jump.gap = gap;
                jump.lip.surface = Surface::Packed;
                jump.decked = false;
                jump.landing.boxed = false;
            }
        });
        plan.yard.length += 60.0;
        first(&plan, jump)
    };
    assert!(gap(0.0).crowded && gap(0.2).crowded && !gap(5.0).crowded);
    assert!(gap(0.2).fill < gap(5.0).fill);
}

/// What carries a line from one jump to the next is dirt all along.
#[test]
fn a_raised_bed_is_filled_under_everything() {
    let text = include_str!("../../../plans/spine_and_bed.json");
    let plan = Plan::from_json(text).expect("a plan file");
    let profile = Profile::build(&plan).expect("it can be built");
    let under = Under(&profile.yard);
    let heaps = heaps(&plan, &profile, &loam());
    let mut beds = 0;
    for (heap, span) in heaps.iter().zip(&profile.spans) {
        let height = |p: glam::DVec2| p.y - under.height(p.x);
        let bed = num::min(height(span.from), height(span.to));
        if bed > 0.05
            && matches!(
                kinds(&plan)[span.feature],
                Feature::Flat(_) | Feature::Turn(_)
            )
        {
            let length = span.to.x - span.from.x;
            let least = plan.width * bed * length;
            assert!(heap.fill > least, "{heap:?}");
            beds += 1;
        }
    }
    println!("{beds} beds");
    assert!(beds > 0);
    // Under a lip of wood and in its gap there is the bed, as wide as the line and with its slopes.
    let on_bed = profile
        .lips
        .iter()
        .find(|l| l.foot.y - under.height(l.foot.x) > 0.05);
    let lip = on_bed.expect("a jump stands on the bed");
    let bed = lip.foot.y - under.height(lip.foot.x);
    let area = plan.width * bed + loam().slope * bed * bed;
    let mut alone = plan.clone();
    if let Line::Features(features) = &mut alone.line
        && let Feature::Jump(jump) = &mut features[lip.feature]
    {
        (jump.lip.surface, jump.landing.surface) = (Surface::Wood, Surface::Wood);
    }
    // On the landing's own slope no more than the ride is high.
    let (steps, mut expected) = (100_000, (lip.knuckle.x - lip.foot.x) * area);
    let step = (lip.landing_end.x - lip.knuckle.x) / f64::from(steps);
    for i in 0..steps {
        let x = lip.knuckle.x + (f64::from(i) + 0.5) * step;
        let ride = profile.height_at(x).expect("it has ground") - under.height(x);
        let z = num::min(ride, bed);
        expected += (plan.width * z + loam().slope * z * z) * step;
    }
    let heap = &of(&alone)[lip.feature];
    assert!((heap.fill - expected).abs() < 1e-4, "{heap:?} {expected}");
    assert!(heap.slopes.is_empty() && (heap.tallest - bed).abs() < 1e-9);
}

/// Walls stand on the bed that a landing begins on; the bed itself keeps its slopes.
#[test]
fn a_box_on_a_bed_stands_on_its_slopes() {
    let text = include_str!("../../../plans/spine_and_bed.json");
    let mut plan = Plan::from_json(text).expect("a plan file");
    let Line::Features(features) = &mut plan.line else {
        panic!("it has features")
    };
    let at = features.iter().rposition(jump).expect("it has one");
    let at = features[..at].iter().rposition(jump).expect("it has more");
    let Feature::Jump(jump) = &mut features[at] else {
        panic!("it is one")
    };
    (jump.lip.surface, jump.landing.boxed) = (Surface::Wood, true);
    let profile = Profile::build(&plan).expect("it can be built");
    let under = Under(&profile.yard);
    let lip = profile
        .lips
        .iter()
        .find(|l| l.feature == at)
        .expect("it has one");
    let bed = lip.foot.y - under.height(lip.foot.x);
    assert!(bed > 0.05, "{bed}");
    let (width, slope) = (plan.width, loam().slope);
    let mut expected = (lip.knuckle.x - lip.foot.x) * (width * bed + slope * bed * bed);
    let steps = 100_000;
    let step = (lip.landing_end.x - lip.knuckle.x) / f64::from(steps);
    for i in 0..steps {
        let x = lip.knuckle.x + (f64::from(i) + 0.5) * step;
        let z = profile.height_at(x).expect("it has ground") - under.height(x);
        let sloped = num::min(z, bed);
        expected += (width * z + slope * sloped * sloped) * step;
    }
    let heap = &of(&plan)[at];
    assert!((heap.fill - expected).abs() < 1e-4, "{heap:?} {expected}");
}

/// Slices of the bank turned about the middle, one by one.
#[test]
fn a_bank_is_its_section_turned_about_the_middle() {
    let turn = Turn {
        radius: 4.0,
        sweep_deg: 120.0,
        bank_deg: 40.0,
        surface: Surface::Packed,
        width: None,
    };
    let (volume, height) = berm::bank(&turn, 1.5, 1.5);
    let (sine, cosine) = num::sin_cos(num::radians(40.0));
    assert!((height - 1.5 * sine).abs() < 1e-12);
    let inner = 4.0 - 0.75 * cosine;
    let outer = inner + 1.5 * cosine;
    let (steps, mut sum) = (200_000, 0.0);
    let step = (outer + 1.5 * height - inner) / f64::from(steps);
    for i in 0..steps {
        let r = inner + (f64::from(i) + 0.5) * step;
        let z = num::min((r - inner) * sine / cosine, height - (r - outer) / 1.5);
        sum += z * r * step * num::radians(120.0);
    }
    assert!((volume - sum).abs() < 1e-6, "{volume} {sum}");
}

/// On ground that dips a straight line is heaped in one place and dug in another.
#[test]
fn where_the_line_is_below_the_yard_it_is_cut() {
    let text = include_str!("../../../plans/surveyed_line.json");
    let mut plan = Plan::from_json(text).expect("a plan file");
    let Line::Surveyed { points, .. } = &plan.line else {
        panic!("it is surveyed")
    };
    let top = points.iter().map(|p| p.elevation).fold(0.0, num::max);
    let reach = plan.yard.length;
    let level = |z: f64| crate::plan::Lie::Surveyed(vec![(0.0, z).into(), (reach, z).into()]);
    let mut fills = Vec::new();
    for z in [0.0, 0.3 * top, top] {
        plan.yard.lie = level(z);
        let heap = of(&plan).swap_remove(0);
        println!("{z}: {heap:?}");
        fills.push((heap.fill, heap.cut));
    }
    assert!(fills[0].0 > fills[1].0 && fills[1].0 > fills[2].0);
    assert!(fills[0].1 < fills[1].1 && fills[1].1 < fills[2].1);
    assert_eq!(fills[2].0, 0.0);
}

/// Height over the yard times its section, added up in thin slices from above.
fn slices(plan: &Plan, profile: &Profile, reach: [f64; 2], slope: f64) -> f64 {
    let under = Under(&profile.yard);
    let (steps, mut sum) = (100_000, 0.0);
    let step = (reach[1] - reach[0]) / f64::from(steps);
    for i in 0..steps {
        let x = reach[0] + (f64::from(i) + 0.5) * step;
        let z = profile.height_at(x).expect("it has ground") - under.height(x);
        sum += (plan.width * z + slope * z * z) * step;
    }
    sum
}

/// Behind its platform a ramp of dirt slopes down, too.
#[test]
fn a_start_ramp_of_dirt_has_a_back() {
    let mut plan = changed(|feature| {
        if let Feature::StartRamp(ramp) = feature {
            ramp.surface = Surface::Packed;
        }
    });
    plan.yard.lie = crate::plan::Lie::Grade(0.0);
    let profile = Profile::build(&plan).expect("it can be built");
    let (heap, span) = (&of(&plan)[0], &profile.spans[0]);
    let (high, slope) = (span.from.y, loam().slope);
    let back = plan.width * slope * high * high / 2.0 + slope * slope * high * high * high / 3.0;
    let expected = back + slices(&plan, &profile, [span.from.x, span.to.x], slope);
    assert!(
        (heap.fill - expected).abs() < 1e-4,
        "{} {expected}",
        heap.fill
    );
    let [[foot, top]] = heap.slopes.as_slice() else {
        panic!("{heap:?}")
    };
    assert!((foot.x + slope * high).abs() < 1e-12 && (top.y - high).abs() < 1e-12);
}

/// A deck of dirt is a tabletop, filled from lip to landing.
#[test]
fn a_table_of_dirt_is_filled_all_along() {
    let mut plan = changed(|feature| {
        if let Feature::Jump(jump) = feature {
            jump.lip.surface = Surface::Packed;
            jump.decked = true;
        }
    });
    plan.yard.lie = crate::plan::Lie::Grade(0.0);
    let profile = Profile::build(&plan).expect("it can be built");
    let at = kinds(&plan).iter().position(jump).expect("it has one");
    let (heap, span) = (&of(&plan)[at], &profile.spans[at]);
    let expected = slices(&plan, &profile, [span.from.x, span.to.x], loam().slope);
    assert!(
        (heap.fill - expected).abs() < 1e-4,
        "{} {expected}",
        heap.fill
    );
    assert!(heap.slopes.is_empty() && !heap.crowded);
}

/// A crest that comes out of the yard and goes down into it again: a segment of a circle, R²(φ − sin φ cos φ).
#[test]
fn an_arc_that_dips_into_the_yard_twice_is_filled_between() {
    use crate::profile::{Character, Intent, Piece};
    let (radius, half, depth) = (3.0, 0.6, 0.9);
    let character = Character::new(Surface::Packed, Intent::Roll);
    let start = glam::DVec2::new(2.0, 0.0);
    let arc = Piece::new(
        start,
        depth,
        2.0 * depth * radius,
        -1.0 / radius,
        0.0,
        character,
    );
    let level = arc.centre.y + radius * num::cos(half);
    let yard = [(0.0, level), (40.0, level)].map(glam::DVec2::from);
    let sums = sum::under_piece(&arc, &Under(&yard), &Section::sloped(1.0, 0.0));
    let segment = |angle: f64| radius * radius * (angle - num::sin(angle) * num::cos(angle));
    assert!((sums.fill.volume - segment(half)).abs() < 1e-12);
    let box_under = 2.0 * radius * num::sin(depth) * radius * (num::cos(half) - num::cos(depth));
    let cut = box_under - (segment(depth) - segment(half));
    assert!(
        (sums.cut.volume - cut).abs() < 1e-12,
        "{} {cut}",
        sums.cut.volume
    );
    assert!((sums.tallest - radius * (1.0 - num::cos(half))).abs() < 1e-12);
    let middle = sums.fill.middle().expect("it is filled");
    assert!((middle - arc.centre.x).abs() < 1e-9);
}

/// Two slopes that meet in a gap: none counts twice.
#[test]
fn slopes_that_meet_fill_a_valley() {
    let slope = 1.2;
    let end = |height: f64, top: f64| {
        let section = Section::sloped(top, slope);
        open::End { height, section }
    };
    let bed = end(0.1, 1.0);
    let heaps = [Some(end(1.0, 0.8)), Some(end(0.6, 1.4))];
    let reach = [3.0, 4.2];
    let filled = open::Open { reach, bed, heaps }.fill(slope);
    let (steps, mut sum) = (200_000, 0.0);
    let step = 1.2 / f64::from(steps);
    for i in 0..steps {
        let x = (f64::from(i) + 0.5) * step;
        let [a, b] = [1.0 - x / slope, 0.6 - (1.2 - x) / slope];
        let (z, top) = if a > b { (a, 0.8) } else { (b, 1.4) };
        sum += (top * z + slope * z * z) * step;
    }
    assert!(
        (filled.fill.volume - sum).abs() < 1e-5,
        "{} {sum}",
        filled.fill.volume
    );
    let [[a, _], [b, _]] = filled.slopes.as_slice() else {
        panic!("{filled:?}")
    };
    assert!(a.distance(*b) < 1e-12 && !filled.crowded);
}
