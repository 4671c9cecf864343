//! Heaps as solids of flat faces, whose volumes a library for collisions knows.

use glam::DVec2;
use parry3d_f64::mass_properties::MassProperties;
use parry3d_f64::math::Vector;
use sim::build::dirt::{boxed, heaps};
use sim::build::heap::Earth;
use sim::plan::{Feature, Flat, GroundPoint, Lie, Line, Plan, Soil, Surface, demo};
use sim::profile::Profile;
use tests::checks::{Bound, Check};

const SOLID: &str = "parry3d, mass of a closed mesh of density 1";

/// Sections across the line, each the half width and height at the ride and the half width on the ground.
struct Solid {
    at: Vec<(f64, [f64; 3])>,
}

impl Solid {
    fn volume(&self) -> f64 {
        let mut points = Vec::new();
        for (x, [top, height, foot]) in &self.at {
            for (y, z) in [(-foot, 0.0), (-top, *height), (*top, *height), (*foot, 0.0)] {
                points.push(Vector::new(*x, y, z));
            }
        }
        let mut faces: Vec<[u32; 3]> = Vec::new();
        let mut quad = |a: u32, b: u32, c: u32, d: u32| faces.extend([[a, b, c], [a, c, d]]);
        let sections = self.at.len() as u32;
        for i in 0..sections - 1 {
            let (a, b) = (4 * i, 4 * i + 4);
            for side in 0..4 {
                let next = (side + 1) % 4;
                quad(a + side, b + side, b + next, a + next);
            }
        }
        quad(0, 1, 2, 3);
        let end = 4 * (sections - 1);
        quad(end + 3, end + 2, end + 1, end);
        let mass = MassProperties::from_trimesh(1.0, &points, &faces).mass();
        assert!(mass > 0.0, "the faces look outward");
        mass
    }
}

fn of(feature: &Feature) -> Plan {
    let mut plan = demo();
    plan.yard.lie = Lie::Grade(0.0);
    plan.yard.length = 60.0;
    plan.initial_speed = Some(4.0);
    let flat = Feature::Flat(Flat {
        length: 4.0,
        surface: Surface::Packed,
    });
    plan.line = Line::Features(vec![flat.clone(), feature.clone(), flat]);
    plan
}

/// The features of the demonstration that are heaped, and a lip of dirt with a gap.
fn heaped() -> Vec<(&'static str, Plan)> {
    let Line::Features(features) = demo().line else {
        panic!("it has features")
    };
    let roller = features.iter().find(|f| matches!(f, Feature::Roller(_)));
    let jump = features.iter().find(|f| matches!(f, Feature::Jump(_)));
    let mut open = jump.expect("it has a jump").clone();
    if let Feature::Jump(jump) = &mut open {
        (jump.gap, jump.decked) = (4.0, false);
        jump.lip.surface = Surface::Packed;
        jump.lip.width = Some(1.0);
        jump.landing.width = Some(1.8);
    }
    vec![
        ("rollers", of(roller.expect("it has rollers"))),
        ("lip, gap and landing of dirt", of(&open)),
    ]
}

/// Heights along a line from above, every few millimetres, with slopes of dirt where faces are plumb.
fn height(profile: &Profile, slopes: &[[DVec2; 2]], x: f64) -> f64 {
    let on = slopes.iter().find_map(|[foot, top]| {
        let share = (x - foot.x) / (top.x - foot.x);
        (0.0..1.0)
            .contains(&share)
            .then(|| foot.y + share * (top.y - foot.y))
    });
    on.or(profile.height_at(x)).unwrap_or(0.0)
}

fn whole(name: &str, plan: &Plan, soil: Soil) -> Check {
    let profile = Profile::build(plan).expect("it can be built");
    let earth = Earth::of(soil);
    let heap = &heaps(plan, &profile, &earth)[1];
    let span = &profile.spans[1];
    let split = profile
        .lips
        .first()
        .map_or(span.to.x, |l| (l.edge.x + l.knuckle.x) / 2.0);
    let steps = 4000;
    let mut solids = [const { Vec::new() }; 2];
    let widths = profile.lips.first().map_or([plan.width; 2], |_| [1.0, 1.8]);
    for (part, [from, to]) in [[span.from.x, split], [split, span.to.x]]
        .into_iter()
        .enumerate()
    {
        let half = widths[part] / 2.0;
        for i in 0..=steps {
            // A hair inside, so that the ends of plumb faces are their tops.
            let share = f64::from(i) / f64::from(steps);
            let x = from + (to - from) * share;
            let z = height(&profile, &heap.slopes, x);
            solids[part].push((x, [half, z, half + earth.slope * z]));
        }
    }
    let volume = |at: Vec<_>| {
        if at.last().map(|l: &(f64, _)| l.0) > at.first().map(|f| f.0) {
            Solid { at }.volume()
        } else {
            0.0
        }
    };
    let expected: f64 = solids.into_iter().map(volume).sum();
    Check::new(
        format!("{name}, {soil:?}"),
        SOLID,
        "m³",
        [expected, heap.fill],
        Bound::Share(1e-3),
        "four thousand flat slices for arcs and ends",
    )
}

/// A prism and a wedge, exactly.
fn prisms() -> Vec<Check> {
    let mut checks = Vec::new();
    for (name, heights) in [
        ("a bank of one height", [0.7, 0.7]),
        ("a straight ramp", [0.0, 0.9]),
    ] {
        let point = |station: f64, elevation: f64| GroundPoint { station, elevation };
        let mut plan = demo();
        plan.initial_speed = Some(4.0);
        plan.width = 1.4;
        plan.yard.lie = Lie::Grade(0.0);
        plan.line = Line::Surveyed {
            points: vec![point(0.0, heights[0]), point(6.0, heights[1])],
            surface: Surface::Packed,
        };
        let profile = Profile::build(&plan).expect("it can be built");
        let earth = Earth::of(Soil::Clay);
        let got = heaps(&plan, &profile, &earth)[0].fill;
        let at = |x: f64, z: f64| (x, [0.7, z, 0.7 + earth.slope * z]);
        // A ramp's sides are flat, so that sections in between lie on them.
        let between = |i: i32| {
            let share = f64::from(i) / 64.0;
            at(6.0 * share, heights[0] + share * (heights[1] - heights[0]))
        };
        let expected = Solid {
            at: (0..=64).map(between).collect(),
        }
        .volume();
        checks.push(Check::new(
            name,
            SOLID,
            "m³",
            [expected, got],
            Bound::Within(1e-9),
            "rounding",
        ));
    }
    checks
}

/// What walls save is the slopes beside and before the landing, and nothing else.
fn saved() -> Check {
    let mut plans = heaped();
    let (_, plan) = plans.remove(1);
    let profile = Profile::build(&plan).expect("it can be built");
    let earth = Earth::of(Soil::Loam);
    let pair = &boxed(&plan, &profile, &earth)[0];
    let lip = profile.lips[0];
    let half = 0.9;
    let (mut with, mut without) = (Vec::new(), Vec::new());
    let run = earth.slope * lip.knuckle.y;
    for i in 0..=4000 {
        let share = f64::from(i) / 4000.0;
        let x = lip.knuckle.x + (lip.landing_end.x - lip.knuckle.x) * share;
        let z = profile.height_at(x).expect("it has ground");
        with.push((x, [half, z, half + earth.slope * z]));
        without.push((x, [half, z, half]));
    }
    let before = (0..=400).map(|i| {
        let share = f64::from(i) / 400.0;
        let z = share * lip.knuckle.y;
        let x = lip.knuckle.x - run * (1.0 - share);
        (x, [half, z, half + earth.slope * z])
    });
    let expected = Solid { at: with }.volume() - Solid { at: without }.volume()
        + Solid {
            at: before.collect(),
        }
        .volume();
    Check::new(
        "what walls save at a landing",
        SOLID,
        "m³",
        [expected, pair.saved],
        Bound::Share(1e-3),
        "four thousand flat slices for arcs",
    )
}

pub fn checks() -> Vec<Check> {
    let mut checks = prisms();
    for (name, plan) in heaped() {
        for soil in [Soil::Loam, Soil::Clay] {
            checks.push(whole(name, &plan, soil));
        }
    }
    checks.push(saved());
    checks
}
