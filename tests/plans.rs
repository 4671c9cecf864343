//! Plans at random, for checks that must hold for every plan.

use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;
use sim::plan::*;

/// Numbers as people give them in metres, inches or units of speed and mass, and any finite bits.
pub fn number() -> BoxedStrategy<f64> {
    let decimal = (-99_999_i32..99_999, 0_u32..7)
        .prop_map(|(n, places)| f64::from(n) / f64::from(10_u32.pow(places)));
    let inches = (-4000_i32..4000).prop_map(|n| f64::from(n) / 16.0 * 0.0254);
    let per_hour = (0_u32..999).prop_map(|n| f64::from(n) / 10.0 / 3.6);
    let pounds = (0_u32..999).prop_map(|n| f64::from(n) * 0.45359237);
    let bits = any::<u64>().prop_map(f64::from_bits);
    let finite = bits.prop_filter("finite", |x| x.is_finite());
    let odd = select(vec![
        0.0,
        -0.0,
        f64::MIN_POSITIVE,
        f64::MAX,
        -0.04,
        1e300,
        5e-324,
    ]);
    prop_oneof![5 => decimal, 2 => inches, 1 => per_hour, 1 => pounds, 2 => finite, 1 => odd]
        .boxed()
}

/// A plan with every field at random; its numbers make no buildable line.
pub fn plan() -> impl Strategy<Value = Plan> {
    let riders = vec(mount(), 0..3);
    (
        text(),
        yard(),
        line(),
        riders,
        weather(),
        option::of(number()),
        vec(observation(), 0..4),
        prop_oneof![Just(0), any::<u32>()],
        number(),
    )
        .prop_map(
            |(name, yard, line, riders, weather, initial_speed, seen, seed, width)| Plan {
                name,
                yard,
                line,
                riders,
                weather,
                initial_speed,
                seen,
                seed,
                width,
            },
        )
}

fn text() -> impl Strategy<Value = String> {
    prop_oneof!["[A-Za-z ,0-9]{0,40}", ".{0,20}"]
}

fn points() -> impl Strategy<Value = Vec<GroundPoint>> {
    vec((number(), number()).prop_map(GroundPoint::from), 0..40)
}

fn yard() -> impl Strategy<Value = Yard> {
    let lie = prop_oneof![
        number().prop_map(Lie::Grade),
        points().prop_map(Lie::Surveyed)
    ];
    (number(), lie, option::of(number()), soil()).prop_map(|(length, lie, tallest, soil)| Yard {
        length,
        lie,
        tallest,
        soil,
    })
}

fn soil() -> impl Strategy<Value = Soil> {
    select(Soil::ALL.to_vec())
}

fn width() -> impl Strategy<Value = Option<f64>> {
    option::of(number())
}

fn surface() -> impl Strategy<Value = Surface> {
    select(Surface::ALL.to_vec())
}

fn line() -> impl Strategy<Value = Line> {
    prop_oneof![
        3 => vec(feature(), 0..12).prop_map(Line::Features),
        1 => (points(), surface()).prop_map(|(points, surface)| Line::Surveyed { points, surface }),
    ]
}

fn feature() -> impl Strategy<Value = Feature> {
    prop_oneof![start_ramp(), flat(), roller(), jump(), turn(), run_out()]
}

fn start_ramp() -> impl Strategy<Value = Feature> {
    let numbers = (number(), number(), number(), number(), number());
    (numbers, surface(), width()).prop_map(|((a, b, c, d, e), surface, width)| {
        Feature::StartRamp(StartRamp {
            platform_height: a,
            angle_deg: b,
            bottom_radius: c,
            edge_radius: d,
            push_off: e,
            surface,
            width,
        })
    })
}

fn flat() -> impl Strategy<Value = Feature> {
    (number(), surface()).prop_map(|(length, surface)| Feature::Flat(Flat { length, surface }))
}

fn roller() -> impl Strategy<Value = Feature> {
    (number(), number(), any::<u32>(), surface(), width()).prop_map(
        |(height, length, count, surface, width)| {
            Feature::Roller(Roller {
                height,
                length,
                count,
                surface,
                width,
            })
        },
    )
}

fn jump() -> impl Strategy<Value = Feature> {
    (lip(), number(), any::<bool>(), landing()).prop_map(|(lip, gap, decked, landing)| {
        Feature::Jump(Jump {
            lip,
            gap,
            decked,
            landing,
        })
    })
}

fn lip() -> impl Strategy<Value = Lip> {
    let lead_in = option::of((number(), number()))
        .prop_map(|l| l.map(|(angle_deg, length)| LeadIn { angle_deg, length }));
    let straight_end = option::of(number());
    (
        number(),
        number(),
        lead_in,
        straight_end,
        surface(),
        width(),
    )
        .prop_map(
            |(height, radius, lead_in, straight_end, surface, width)| Lip {
                height,
                radius,
                lead_in,
                straight_end,
                surface,
                width,
            },
        )
}

fn landing() -> impl Strategy<Value = Landing> {
    let numbers = (number(), number(), number(), number());
    (
        numbers,
        option::of(number()),
        surface(),
        any::<bool>(),
        width(),
    )
        .prop_map(|((a, b, c, d), length, surface, boxed, width)| Landing {
            height: a,
            angle_deg: b,
            knuckle_radius: c,
            bottom_radius: d,
            length,
            surface,
            boxed,
            width,
        })
}

fn turn() -> impl Strategy<Value = Feature> {
    (number(), number(), number(), surface(), width()).prop_map(|(a, b, c, surface, width)| {
        Feature::Turn(Turn {
            radius: a,
            sweep_deg: b,
            bank_deg: c,
            surface,
            width,
        })
    })
}

fn run_out() -> impl Strategy<Value = Feature> {
    (number(), surface()).prop_map(|(length, surface)| Feature::RunOut(RunOut { length, surface }))
}

fn mount() -> impl Strategy<Value = Mount> {
    (text(), rider(), bike()).prop_map(|(label, rider, bike)| Mount { label, rider, bike })
}

fn rider() -> impl Strategy<Value = Rider> {
    let style = select(vec![Style::Passive, Style::Absorbing, Style::Pumping]);
    let numbers = (number(), number(), number(), number(), number());
    (numbers, style).prop_map(|((a, b, c, d, e), style)| Rider {
        mass: a,
        stature: b,
        posture: c,
        drag_area: d,
        skill: e,
        style,
    })
}

fn bike() -> impl Strategy<Value = Bike> {
    let numbers = [(); 7].map(|()| number());
    (numbers, option::of(number()), rolling()).prop_map(|(n, tyre_stiffness, rolling)| Bike {
        mass: n[0],
        wheelbase: n[1],
        bead_seat: n[2],
        tyre_width: n[3],
        tyre_pressure: n[4],
        wheel_mass: n[5],
        wheel_inertia: n[6],
        tyre_stiffness,
        rolling,
    })
}

fn rolling() -> impl Strategy<Value = Rolling> {
    let other = [(); 6].map(|()| number()).prop_map(|n| Rolling {
        wood: n[0],
        paved: n[1],
        packed: n[2],
        gravel: n[3],
        grass: n[4],
        soft: n[5],
    });
    prop_oneof![Just(Rolling::default()), other]
}

fn weather() -> impl Strategy<Value = Weather> {
    let ground = select(vec![Ground::Dry, Ground::Damp, Ground::Soft]);
    (number(), number(), number(), ground).prop_map(|(altitude, temperature, tailwind, ground)| {
        Weather {
            altitude,
            temperature,
            tailwind,
            ground,
        }
    })
}

fn observation() -> impl Strategy<Value = Observation> {
    prop_oneof![timed(), clocked(), landed(), stopped()]
}

/// How far off a measured value may be: often the usual, which a link leaves out.
fn give_or_take(usual: f64) -> impl Strategy<Value = f64> {
    prop_oneof![Just(usual), number()]
}

/// Whose ride it was, and whether the plan has what it teaches.
fn who() -> impl Strategy<Value = (u32, bool)> {
    (prop_oneof![Just(0), any::<u32>()], any::<bool>())
}

fn timed() -> impl Strategy<Value = Observation> {
    let numbers = (number(), number(), number(), give_or_take(Timed::USUAL));
    (numbers, who()).prop_map(|((from, to, seconds, give_or_take), (rider, carried))| {
        Observation::Time(Timed {
            from,
            to,
            seconds,
            give_or_take,
            rider,
            carried,
        })
    })
}

fn clocked() -> impl Strategy<Value = Observation> {
    let numbers = (number(), number(), give_or_take(Clocked::USUAL));
    (numbers, who()).prop_map(|((at, speed, give_or_take), (rider, carried))| {
        Observation::Speed(Clocked {
            at,
            speed,
            give_or_take,
            rider,
            carried,
        })
    })
}

fn landed() -> impl Strategy<Value = Observation> {
    let numbers = (any::<u32>(), number(), give_or_take(Landed::USUAL));
    (numbers, who()).prop_map(|((jump, past_knuckle, give_or_take), (rider, carried))| {
        Observation::Landed(Landed {
            jump,
            past_knuckle,
            give_or_take,
            rider,
            carried,
        })
    })
}

fn stopped() -> impl Strategy<Value = Observation> {
    (number(), give_or_take(Stopped::USUAL), who()).prop_map(
        |(at, give_or_take, (rider, carried))| {
            Observation::Stopped(Stopped {
                at,
                give_or_take,
                rider,
                carried,
            })
        },
    )
}
