//! What never makes a later rolling speed higher.
//!
//! The laws speak of rolling: each case checks that both wheels of both rides stay loaded, since a
//! rider who is thrown may land well by luck.

use super::Law;
use super::way::{Ridden, Way, way};
use proptest::prelude::*;
use proptest::sample::Index;
use sim::ride::{Legs, Mount};
use tests::checks::{Check, judge};

/// The most by which any speed of `worse` is over the one of `better` at the same place, m/s, from
/// a level stretch on: negative where each is under it. Places that neither came to say nothing.
fn gain(better: &Ridden, worse: &Ridden, from: usize) -> Result<f64, TestCaseError> {
    prop_assume!(better.stays_down() && worse.stays_down());
    let pairs = better.speeds().into_iter().zip(worse.speeds()).skip(from);
    let reached = pairs.filter(|(b, w)| *b > 0.0 || *w > 0.0);
    let most = reached.map(|(b, w)| w - b).reduce(f64::max);
    most.ok_or_else(|| TestCaseError::reject("neither came so far"))
}

fn law(what: &'static str, source: &'static str) -> Law {
    Law {
        what,
        source,
        unit: "m/s",
        most: 0.0,
        why: "highest gain of a later speed; below zero, the least loss",
        cases: 64,
    }
}

fn rolling() -> Check {
    let law = law(
        "more rolling resistance is never faster",
        "work of a force against the way",
    );
    law.tried((way(), 1.02..3.0), |(way, more)| {
        let m = way.mount();
        let mut stiff = m.clone();
        stiff.rolling = m.rolling.map(|c| c * more);
        gain(&way.ride(&m), &way.ride(&stiff), 0)
    })
}

fn headwind() -> Check {
    let law = law(
        "more headwind is never faster",
        "work of a force against the way",
    );
    law.tried((way(), -4.0..4.0, 0.1..4.0), |(way, wind, more)| {
        let mut m = way.mount();
        m.tailwind = wind;
        let mut against = m.clone();
        against.tailwind = wind - more;
        gain(&way.ride(&m), &way.ride(&against), 0)
    })
}

/// Speeds behind a row of rollers that is made higher.
fn higher(way: &Way, m: &Mount, more: f64, which: Index) -> Result<f64, TestCaseError> {
    let which = which.index(way.rows.len());
    let mut higher = way.clone();
    higher.rows[which].height *= more;
    gain(&way.ride(m), &higher.ride(m), which + 1)
}

/// Without drag: over a higher roller a rider is slower for longer, which saves more to drag than a
/// low roller costs otherwise. It holds for riders who keep their legs passive, whom every roller
/// costs something, and for those who absorb; one who pumps takes speed from a roller.
fn rollers(legs: Legs, what: &'static str) -> Check {
    let law = law(what, "legs and tyres lose in bending; no drag");
    law.tried((way(), 1.02..1.6, any::<Index>()), |(way, more, which)| {
        let mut m = way.mount();
        (m.drag, m.legs) = (0.0, legs);
        higher(&way, &m, more, which)
    })
}

fn heavier() -> Check {
    let law = law(
        "a heavier rider with the same drag area is not slower",
        "drag weighs less on more mass",
    );
    law.tried((way(), 1.02..1.8), |(way, more)| {
        let m = way.mount();
        let mut heavy = m.clone();
        heavy.rider_mass *= more;
        heavy.rider_inertia *= more;
        gain(&way.ride(&heavy), &way.ride(&m), 0)
    })
}

#[test]
fn never_faster() {
    judge(
        "What never makes a later rolling speed higher",
        vec![
            rolling(),
            headwind(),
            rollers(
                Legs::Passive,
                "a higher roller is never faster, passive riders",
            ),
            rollers(
                Legs::Absorbing,
                "a higher roller is never faster, absorbing riders",
            ),
            heavier(),
        ],
    );
}
