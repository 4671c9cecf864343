//! Any line of features makes a whole chain or faults, never a number that is none.

use super::*;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use serde_json::json;

/// Widest ranges that the field checks accept, or what a builder would choose.
#[derive(Clone, Copy)]
enum Reach {
    Usual,
    Widest,
}

impl Reach {
    fn pick(
        self,
        usual: core::ops::Range<f64>,
        widest: core::ops::Range<f64>,
    ) -> core::ops::Range<f64> {
        match self {
            Reach::Usual => usual,
            Reach::Widest => widest,
        }
    }
}

fn landing(r: Reach) -> impl Strategy<Value = Value> {
    let length = prop_oneof![2 => Just(None), 1 => r.pick(0.0..1.5, 0.0..40.0).prop_map(Some)];
    let rest = (
        r.pick(0.0..1.5, 0.0..5.0),
        r.pick(10.0..45.0, 2.0..75.0),
        r.pick(0.0..1.5, 0.0..20.0),
        r.pick(0.35..4.0, 0.3..40.0),
    );
    (rest, length).prop_map(|((height, angle, knuckle, bottom), length)| {
        json!({"height": height, "angle_deg": angle, "knuckle_radius": knuckle,
            "bottom_radius": bottom, "length": length})
    })
}

fn lip(r: Reach) -> impl Strategy<Value = Value> {
    let lead_in = (r.pick(5.0..40.0, 1.0..60.0), r.pick(0.1..1.0, 0.02..10.0))
        .prop_map(|(a, l)| json!({"angle_deg": a, "length": l}));
    let lead_in = prop_oneof![2 => Just(Value::Null), 1 => lead_in];
    let size = (r.pick(0.2..1.5, 0.05..4.0), r.pick(1.2..4.0, 0.3..20.0));
    let end = prop_oneof![2 => Just(None), 1 => r.pick(0.1..0.8, 0.0..5.0).prop_map(Some)];
    (size, lead_in, end).prop_map(|((height, radius), lead_in, end)| {
        json!({"height": height, "radius": radius, "lead_in": lead_in, "straight_end": end})
    })
}

fn jump(r: Reach) -> impl Strategy<Value = Value> {
    let gap = prop_oneof![Just(0.0), r.pick(0.3..3.0, 0.0..15.0)];
    (lip(r), gap, any::<bool>(), landing(r)).prop_map(|(lip, gap, decked, landing)| {
        json!({"kind": "jump", "lip": lip, "gap": gap, "decked": decked, "landing": landing})
    })
}

fn feature(r: Reach) -> impl Strategy<Value = Value> {
    let roller = (
        r.pick(0.1..0.6, 0.02..2.0),
        r.pick(2.0..5.0, 0.5..30.0),
        1..4_u32,
    );
    prop_oneof![
        r.pick(0.1..5.0, 0.05..20.0)
            .prop_map(|l| json!({"kind": "flat", "length": l})),
        roller
            .prop_map(|(h, l, n)| json!({"kind": "roller", "height": h, "length": l, "count": n})),
        (r.pick(2.0..8.0, 1.0..10.0), r.pick(10.0..180.0, 1.0..360.0)).prop_map(
            |(r, a)| json!({"kind": "turn", "radius": r, "sweep_deg": a, "bank_deg": 20})
        ),
        jump(r),
    ]
}

fn ramp(r: Reach) -> impl Strategy<Value = Value> {
    let size = (
        r.pick(0.8..4.0, 0.1..8.0),
        r.pick(15.0..55.0, 3.0..75.0),
        r.pick(0.5..4.0, 0.3..40.0),
        r.pick(0.0..2.0, 0.0..20.0),
    );
    size.prop_map(|(height, angle, bottom, edge)| {
        json!({"kind": "start_ramp", "platform_height": height, "angle_deg": angle,
            "bottom_radius": bottom, "edge_radius": edge, "push_off": 1})
    })
}

fn features(r: Reach) -> impl Strategy<Value = Value> {
    let inner = prop::collection::vec(feature(r), 1..8);
    (prop::option::of(ramp(r)), inner)
        .prop_map(|(ramp, inner)| Value::Array(ramp.into_iter().chain(inner).collect()))
}

/// Ground of random steps and falls, long enough for any line.
fn lie(r: Reach) -> impl Strategy<Value = Lie> {
    let step = (r.pick(0.5..9.0, 0.02..9.0), r.pick(-0.25..0.15, -1.0..1.0));
    let surveyed = prop::collection::vec(step, 3..30).prop_map(|steps| {
        let mut at = (0.0, 0.0);
        let mut points = vec![at.into()];
        for (step, grade) in steps.into_iter().chain([(500.0, 0.0)]) {
            at = (at.0 + step, at.1 + step * grade);
            points.push(at.into());
        }
        Lie::Surveyed(points)
    });
    let even = r.pick(-0.3..0.2, -0.6..0.6).prop_map(Lie::Grade);
    prop_oneof![even, surveyed]
}

fn any_plan(r: Reach) -> impl Strategy<Value = Plan> {
    (lie(r), features(r)).prop_map(|(lie, features)| {
        let mut plan = plan(0.0, &features);
        plan.yard.length = 500.0;
        plan.yard.lie = lie;
        plan
    })
}

fn assert_finite(faults: &[Fault]) {
    for fault in faults {
        let told = [fault.given, fault.least, fault.most].into_iter().flatten();
        assert!(told.clone().count() > 1, "{fault}");
        assert!(told.clone().all(f64::is_finite), "{fault}");
        let given = fault.given.expect("a number");
        let outside =
            fault.least.is_some_and(|l| given < l) || fault.most.is_some_and(|m| given > m);
        assert!(outside, "{fault}");
    }
}

/// Ridden pieces that follow each other join without a bend, but where the ground has one.
fn assert_smooth(profile: &Profile, plan: &Plan) {
    let Lie::Grade(_) = plan.yard.lie else {
        return;
    };
    let clear = |p: &Piece| p.character.intent == Intent::Clear;
    let edges: Vec<DVec2> = profile.lips.iter().map(|l| l.edge).collect();
    for pair in profile.pieces.windows(2) {
        if !clear(&pair[0]) && !clear(&pair[1]) && !edges.contains(&pair[0].end) {
            assert_near(pair[0].end_heading(), pair[1].heading, 1e-9);
        }
    }
}

/// What the plan asks for is what was drawn, wherever it stands.
fn assert_as_asked(profile: &Profile, plan: &Plan) {
    let Line::Features(features) = &plan.line else {
        panic!("features");
    };
    let ground = ground::Ground::new(&plan.yard.lie);
    let over = |p: DVec2| p.y - ground.height(p.x);
    for lip in &profile.lips {
        let Feature::Jump(jump) = &features[lip.feature] else {
            panic!("a jump");
        };
        let bed = over(lip.foot);
        assert_near(over(lip.edge), bed + jump.lip.height, 1e-6);
        assert_near(over(lip.knuckle), bed + jump.landing.height, 1e-6);
        assert_near(lip.knuckle.x - lip.edge.x, jump.gap, 1e-9);
        if jump.landing.length.is_none() {
            assert_near(over(lip.landing_end), 0.0, 1e-6);
        }
    }
}

/// The same cases in every run, so that a failure is never luck.
fn same_every_time() -> ProptestConfig {
    ProptestConfig {
        cases: 3000,
        rng_seed: RngSeed::Fixed(20),
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

proptest! {
    #![proptest_config(same_every_time())]

    #[test]
    fn a_line_is_whole_or_faulty(plan in prop_oneof![any_plan(Reach::Usual), any_plan(Reach::Widest)]) {
        match Profile::build(&plan) {
            Ok(profile) => {
                assert_whole(&profile);
                assert_smooth(&profile, &plan);
                assert_as_asked(&profile, &plan);
            }
            Err(faults) => assert_finite(&faults),
        }
    }

    #[test]
    fn any_points_make_a_chain_through_them(steps in prop::collection::vec((0.0..3.0, -1.5..1.5), 1..40)) {
        let mut plan = plan(0.0, &json!([]));
        let mut at = (0.0, 0.0);
        let mut points = vec![at.into()];
        for (x, z) in steps {
            // A few faces among them.
            let x: f64 = if x < 0.2 { 0.0 } else { x };
            at = (at.0 + x, at.1 + z);
            points.push(at.into());
        }
        plan.yard.length = 400.0;
        plan.line = Line::Surveyed { points: points.clone(), surface: Surface::Packed };
        if let Ok(profile) = Profile::build(&plan) {
            assert_whole(&profile);
            let mut joints = profile.pieces.iter().map(|p| p.end);
            for point in &points[1..] {
                let p = DVec2::new(point.station, point.elevation);
                prop_assert!(joints.any(|j| j.distance(p) < 1e-9), "misses {p}");
            }
            let back = |p: &Piece| p.end.x < p.start.x - 1e-12;
            prop_assert!(!profile.pieces.iter().any(back));
        }
    }
}
