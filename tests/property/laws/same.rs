//! What changes nothing, and what changes everything alike.

use super::Law;
use super::way::{Ridden, flat, plan, way};
use proptest::prelude::*;
use proptest::sample::Index;
use sim::plan::{Feature, Line};
use sim::profile::{Piece, Profile};
use sim::ride::{Mount, Sample};
use tests::checks::{Check, judge};
use tests::rigid::{on_hard_tyres, rigid};

/// The most by which two traces differ in speed or place.
fn apart(one: &[Sample], two: &[Sample]) -> f64 {
    if one.len() != two.len() || one.is_empty() {
        return f64::INFINITY;
    }
    let pairs = one.iter().zip(two);
    let each = pairs.map(|(a, b)| (a.speed - b.speed).abs().max((a.bike_x - b.bike_x).abs()));
    each.fold(0.0, f64::max)
}

fn split() -> Check {
    let law = Law {
        what: "a flat in two parts is the same flat",
        source: "the same ground",
        unit: "m, m/s",
        most: 1e-9,
        why: "rounding where the parts meet",
        cases: 64,
    };
    law.tried(
        (way(), 0.05..0.95, any::<Index>()),
        |(way, share, which)| {
            let m = way.mount();
            let mut features = way.features();
            let is_flat = |f: &Feature| matches!(f, Feature::Flat(_));
            let flats: Vec<usize> = (0..features.len())
                .filter(|&i| is_flat(&features[i]))
                .collect();
            let at = flats[which.index(flats.len())];
            let Feature::Flat(whole) = features[at].clone() else {
                return Err(TestCaseError::fail("a flat"));
            };
            features[at] = flat(share * whole.length);
            features.insert(at + 1, flat((1.0 - share) * whole.length));
            let (one, two) = (way.ride(&m), Ridden::new(&plan(features), &m, way.push_off));
            Ok(apart(&one.run.samples, &two.run.samples))
        },
    )
}

fn room() -> Check {
    let law = Law {
        what: "room at the end changes nothing before it",
        source: "a ride does not know what lies behind its end",
        unit: "m, m/s",
        most: 0.0,
        why: "the same bits",
        cases: 64,
    };
    law.tried((way(), 0.0..100.0, 0.0..30.0), |(way, yard, run_out)| {
        let m = way.mount();
        let one = way.ride(&m);
        let mut longer = way.plan();
        longer.yard.length += yard;
        if let Line::Features(features) = &mut longer.line
            && let Some(Feature::RunOut(last)) = features.last_mut()
        {
            last.length += run_out;
        }
        let two = Ridden::new(&longer, &m, way.push_off);
        let before = |r: &Ridden| -> Vec<Sample> {
            r.run
                .samples
                .iter()
                .take_while(|s| s.bike_x < r.brake)
                .copied()
                .collect()
        };
        let (one, two) = (before(&one), before(&two));
        prop_assert!(one.len() > 100);
        prop_assert_eq!(&one, &two);
        Ok(apart(&one, &two))
    })
}

/// Lengths times k, times times √k, without losses. A moving rider is left out: the rates of the
/// control are those of people, and stay the same. So do the bearings, the tyres' damping and the
/// grip's slip, which are too small to show.
fn scaled() -> Check {
    let law = Law {
        what: "lengths times k and times times √k: speeds times √k",
        source: "Froude's law of similarity",
        unit: "of v",
        most: 2e-3,
        why: "bearings take 0.0087 N of drag for each m/s, and grip slips, on any scale",
        cases: 16,
    };
    law.tried((way(), 0.5..2.5), |(way, k)| {
        let mut m = on_hard_tyres(rigid(&way.mount()));
        m.rolling = [0.0; 6];
        let profile = Profile::build(&way.plan()).expect("the line can be built");
        let one = Ridden::over(&profile, &way.plan(), &m, way.push_off);
        let large = enlarged(&profile, k);
        let speed = way.push_off * f64::sqrt(k);
        let two = Ridden::over(&large, &way.plan(), &enlarged_mount(&m, k), speed);
        let off = |(x, v): (&f64, f64)| (two.speed_at(x * k) / (v * f64::sqrt(k)) - 1.0).abs();
        let each = one.places.iter().zip(one.speeds()).map(off);
        // A place that was never reached has no speed there: no number, which breaks the law.
        Ok(each.fold(0.0, |a, b| if b > a || b.is_nan() { b } else { a }))
    })
}

/// A profile k times as large.
fn enlarged(profile: &Profile, k: f64) -> Profile {
    let larger = |p: &Piece| {
        let (length, curvature) = (p.length * k, p.curvature / k);
        Piece::new(
            p.start * k,
            p.heading,
            length,
            curvature,
            p.before * k,
            p.character,
        )
    };
    Profile {
        pieces: profile.pieces.iter().map(larger).collect(),
        ..profile.clone()
    }
}

/// A rigid mount k times as large and of the same mass; tyres give k times as much.
fn enlarged_mount(m: &Mount, k: f64) -> Mount {
    let mut large = m.clone();
    for length in [
        &mut large.stature,
        &mut large.bike_rise,
        &mut large.wheelbase,
        &mut large.tyre.radius,
        &mut large.tyre.height,
        &mut large.reach_low,
        &mut large.reach_usual,
        &mut large.reach_high,
    ] {
        *length *= k;
    }
    large.bike_inertia *= k * k;
    large.wheel_inertia *= k * k;
    large.tyre.stiffness /= k * k.sqrt();
    large
}

#[test]
fn nothing_changes() {
    judge(
        "What changes nothing, or everything alike",
        vec![split(), room(), scaled()],
    );
}
