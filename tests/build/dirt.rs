//! Heaps as solids of flat faces, whose volumes a library for collisions knows.

use glam::DVec2;
use parry3d_f64::mass_properties::MassProperties;
use parry3d_f64::math::Vector;
use sim::build::dirt::{boxed, heaps};
use sim::build::heap::Earth;
use sim::plan::{Feature, Flat, Lie, Line, Plan, Soil, Surface, demo};
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
            .then_some(foot.y + share * (top.y - foot.y))
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
        Bound::Share(1e-5),
        "four thousand flat slices for arcs and ends",
    )
}

/// A straight line from one height over the yard to another, between sections that lie on its flat sides.
fn straight(reach: [f64; 2], heights: [f64; 2], slope: f64) -> f64 {
    let at = |i: i32| {
        let share = f64::from(i) / 64.0;
        let z = heights[0] + share * (heights[1] - heights[0]);
        let x = reach[0] + share * (reach[1] - reach[0]);
        (x, [0.7, z, 0.7 + slope * z])
    };
    Solid {
        at: (0..=64).map(at).collect(),
    }
    .volume()
}

/// Prisms and wedges, exactly: on the yard, in it, from one to the other, and over a bend of the ground.
fn prisms() -> Vec<Check> {
    let earth = Earth::of(Soil::Clay);
    let of = |line: [f64; 2], yard: &[(f64, f64)]| {
        let mut plan = demo();
        plan.initial_speed = Some(4.0);
        plan.width = 1.4;
        plan.yard.length = 6.0;
        plan.yard.lie = Lie::Surveyed(yard.iter().map(|&p| p.into()).collect());
        plan.line = Line::Surveyed {
            points: vec![(0.0, line[0]).into(), (6.0, line[1]).into()],
            surface: Surface::Packed,
        };
        let profile = Profile::build(&plan).expect("it can be built");
        let heap = heaps(&plan, &profile, &earth).remove(0);
        [heap.fill, heap.cut]
    };
    let level = [(0.0, 0.0), (6.0, 0.0)];
    let solid = |reach, heights| straight(reach, heights, earth.slope);
    let bank = solid([0.0, 6.0], [0.7, 0.7]);
    let ramp = solid([0.0, 6.0], [0.0, 0.9]);
    // Down by 1.2 m over 6 m from 0.4 m: it meets the yard after 2 m.
    let [above, below] = [solid([0.0, 2.0], [0.4, 0.0]), solid([2.0, 6.0], [0.0, 0.8])];
    let dip = solid([0.0, 2.0], [0.5, 1.1]) + solid([2.0, 6.0], [1.1, 0.5]);
    let rows = [
        ("a bank of one height", of([0.7, 0.7], &level), [bank, 0.0]),
        (
            "a trench of one depth",
            of([-0.7, -0.7], &level),
            [0.0, bank],
        ),
        ("a straight ramp", of([0.0, 0.9], &level), [ramp, 0.0]),
        (
            "from over the yard to under it",
            of([0.4, -0.8], &level),
            [above, below],
        ),
        (
            "over a bend of the ground",
            of([0.5, 0.5], &[(0.0, 0.0), (2.0, -0.6), (6.0, 0.0)]),
            [dip, 0.0],
        ),
    ];
    let mut checks = Vec::new();
    for (name, got, expected) in rows {
        for (i, what) in ["fill", "cut"].into_iter().enumerate() {
            checks.push(Check::new(
                format!("{name}: {what}"),
                SOLID,
                "m³",
                [expected[i], got[i]],
                Bound::Within(1e-9),
                "rounding",
            ));
        }
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
        Bound::Share(1e-5),
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
