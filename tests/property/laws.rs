//! Laws of the ride: how a later speed answers to a change, on random lines.
//!
//! They speak of rolling: a start ramp, level ground and rollers gentle enough that both wheels of
//! both rides stay loaded, which each case checks: a rider who is thrown may land well by luck.
//! Speeds are compared in the middle of level stretches, where the rider has settled, except where
//! a law holds sample by sample.

use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use sim::plan::{
    Feature, Flat, Lie, Line, Plan, Roller, RunOut, StartRamp, Surface, Weather, Yard,
};
use sim::profile::{Piece, Profile};
use sim::ride::{Accuracy, Mount, Run, ride};
use sim::setup;
use tests::family::riders;
use tests::rigid::{on_hard_tyres, rigid};

/// A level stretch after a row of rollers.
#[derive(Clone, Debug)]
struct Row {
    height: f64,
    length: f64,
    count: u32,
    flat: f64,
}

#[derive(Clone, Debug)]
struct Way {
    ramp: f64,
    angle: f64,
    push_off: f64,
    rows: Vec<Row>,
    rider: usize,
}

fn row() -> impl Strategy<Value = Row> {
    (0.01..0.05, 3.0..5.0, 1_u32..4, 5.0..8.0).prop_map(|(steep, length, count, flat)| Row {
        height: steep * length,
        length,
        count,
        flat,
    })
}

fn way() -> impl Strategy<Value = Way> {
    let rows = prop::collection::vec(row(), 1..4);
    (0.8..1.8, 12.0..25.0, 0.6..1.6, rows, 0_usize..4).prop_map(
        |(ramp, angle, push_off, rows, rider)| Way {
            ramp,
            angle,
            push_off,
            rows,
            rider,
        },
    )
}

fn flat(length: f64) -> Feature {
    Feature::Flat(Flat {
        length,
        surface: Surface::Packed,
    })
}

impl Way {
    fn features(&self) -> Vec<Feature> {
        let mut features = vec![
            Feature::StartRamp(StartRamp {
                platform_height: self.ramp,
                angle_deg: self.angle,
                bottom_radius: 4.0,
                edge_radius: 3.0,
                push_off: self.push_off,
                surface: Surface::Wood,
            }),
            flat(5.0),
        ];
        for row in &self.rows {
            features.push(Feature::Roller(Roller {
                height: row.height,
                length: row.length,
                count: row.count,
                surface: Surface::Packed,
            }));
            features.push(flat(row.flat));
        }
        features
    }

    fn plan(&self) -> Plan {
        plan(self.features())
    }

    fn mount(&self) -> Mount {
        setup::mount(&riders::all()[self.rider], &Weather::default())
    }

    fn ride(&self, m: &Mount) -> Ridden {
        Ridden::new(&self.plan(), m, self.push_off)
    }
}

fn plan(mut features: Vec<Feature>) -> Plan {
    features.push(Feature::RunOut(RunOut {
        length: 12.0,
        surface: Surface::Packed,
    }));
    Plan {
        name: "Law".into(),
        yard: Yard {
            length: 200.0,
            lie: Lie::Grade(0.0),
        },
        line: Line::Features(features),
        riders: riders::all().into(),
        weather: Weather::default(),
        initial_speed: None,
    }
}

/// A ride with the places where speeds are compared.
struct Ridden {
    run: Run,
    /// Middle of each level stretch, m along the line.
    places: Vec<f64>,
    /// Where the rider brakes.
    brake: f64,
}

impl Ridden {
    fn new(plan: &Plan, m: &Mount, speed: f64) -> Self {
        let profile = Profile::build(plan).expect("the line can be built");
        Self::over(&profile, plan, m, speed)
    }

    /// The ride over a profile with the features of a plan.
    fn over(profile: &Profile, plan: &Plan, m: &Mount, speed: f64) -> Self {
        let Line::Features(features) = &plan.line else {
            panic!("a line of features")
        };
        let level = |s: &&sim::profile::Span| matches!(features[s.feature], Feature::Flat(_));
        let spans = profile.spans.iter().filter(level);
        Self {
            places: spans.map(|s| 0.5 * (s.from.x + s.to.x)).collect(),
            brake: profile.spans.last().map_or(0.0, |s| s.from.x),
            run: ride(profile, m, speed, &Accuracy::default()),
        }
    }

    /// Speed of the common mass centre with the bike's middle at a place; 0 where it never came.
    fn speed_at(&self, x: f64) -> f64 {
        let i = self.run.samples.partition_point(|s| s.bike_x < x);
        let (Some(a), Some(b)) = (
            i.checked_sub(1).and_then(|i| self.run.samples.get(i)),
            self.run.samples.get(i),
        ) else {
            return 0.0;
        };
        let share = (x - a.bike_x) / (b.bike_x - a.bike_x);
        a.speed + share * (b.speed - a.speed)
    }

    fn speeds(&self) -> Vec<f64> {
        self.places.iter().map(|&x| self.speed_at(x)).collect()
    }

    /// Whether both wheels were loaded all the way to where the rider brakes, or stalls.
    fn stays_down(&self) -> bool {
        let on_the_way = self
            .run
            .samples
            .iter()
            .take_while(|s| s.bike_x < self.brake);
        on_the_way
            .into_iter()
            .all(|s| s.rear_load > 0.0 && s.front_load > 0.0)
    }
}

fn tries(cases: u32) -> ProptestConfig {
    ProptestConfig {
        cases,
        rng_seed: RngSeed::Fixed(0x0CA2_217E),
        failure_persistence: None,
        max_global_rejects: 10 * cases,
        ..ProptestConfig::default()
    }
}

/// That no speed of `worse` is over the one of `better` at the same place.
fn never_faster(better: &Ridden, worse: &Ridden, from: usize) -> Result<(), TestCaseError> {
    prop_assume!(better.stays_down() && worse.stays_down());
    let pairs = better.speeds().into_iter().zip(worse.speeds()).skip(from);
    for (i, (b, w)) in pairs.enumerate() {
        prop_assert!(w <= b, "level {}: {b} and then {w} m/s", i + from);
    }
    Ok(())
}

proptest! {
    #![proptest_config(tries(64))]

    #[test]
    fn more_rolling_resistance_is_never_faster(way in way(), more in 1.02..3.0) {
        let m = way.mount();
        let mut stiff = m.clone();
        stiff.rolling = m.rolling.map(|c| c * more);
        never_faster(&way.ride(&m), &way.ride(&stiff), 0)?;
    }

    #[test]
    fn more_headwind_is_never_faster(way in way(), wind in -4.0..4.0, more in 0.1..4.0) {
        let mut m = way.mount();
        m.tailwind = wind;
        let mut against = m.clone();
        against.tailwind = wind - more;
        never_faster(&way.ride(&m), &way.ride(&against), 0)?;
    }

    /// Without drag: over a higher roller a rider is slower for longer, which saves more to drag than
    /// a low roller costs otherwise.
    #[test]
    fn a_higher_roller_is_never_faster(way in way(), more in 1.02..1.6, which in any::<prop::sample::Index>()) {
        let mut m = way.mount();
        m.drag = 0.0;
        let which = which.index(way.rows.len());
        let mut higher = way.clone();
        higher.rows[which].height *= more;
        never_faster(&way.ride(&m), &higher.ride(&m), which + 1)?;
    }

    #[test]
    fn a_heavier_rider_is_not_slower(way in way(), more in 1.02..1.8) {
        let m = way.mount();
        let mut heavy = m.clone();
        heavy.rider_mass *= more;
        heavy.rider_inertia *= more;
        never_faster(&way.ride(&heavy), &way.ride(&m), 0)?;
    }

    #[test]
    fn a_flat_in_two_parts_is_the_same_flat(way in way(), share in 0.05..0.95, which in any::<prop::sample::Index>()) {
        let m = way.mount();
        let mut features = way.features();
        let flats: Vec<usize> = (0..features.len()).filter(|&i| matches!(features[i], Feature::Flat(_))).collect();
        let at = flats[which.index(flats.len())];
        let Feature::Flat(whole) = features[at].clone() else { panic!("a flat") };
        features[at] = flat(share * whole.length);
        features.insert(at + 1, flat((1.0 - share) * whole.length));
        let (one, two) = (way.ride(&m), Ridden::new(&plan(features), &m, way.push_off));
        prop_assert_eq!(one.run.samples.len(), two.run.samples.len());
        for (a, b) in one.run.samples.iter().zip(&two.run.samples) {
            prop_assert!((a.speed - b.speed).abs() < 1e-9 && (a.bike_x - b.bike_x).abs() < 1e-9, "{a:?} {b:?}");
        }
    }

    #[test]
    fn room_at_the_end_changes_nothing_before(way in way(), yard in 0.0..100.0, run_out in 0.0..30.0) {
        let m = way.mount();
        let one = way.ride(&m);
        let mut longer = way.plan();
        longer.yard.length += yard;
        let Line::Features(features) = &mut longer.line else { panic!("a line of features") };
        if let Some(Feature::RunOut(last)) = features.last_mut() {
            last.length += run_out;
        }
        let two = Ridden::new(&longer, &m, way.push_off);
        let before = |r: &Ridden| r.run.samples.iter().take_while(|s| s.bike_x < r.brake).copied().collect::<Vec<_>>();
        prop_assert!(before(&one).len() > 100);
        prop_assert_eq!(before(&one), before(&two));
    }
}

proptest! {
    #![proptest_config(tries(16))]

    /// Lengths times k, times times √k, without losses. A moving rider is left out: the rates of the
    /// control are those of people, and stay the same. So do the bearings, the tyres' damping and
    /// the grip's slip, which are too small to show.
    #[test]
    fn a_larger_world_is_faster_by_the_root(way in way(), k in 0.5..2.5) {
        let mut m = on_hard_tyres(rigid(&way.mount()));
        m.rolling = [0.0; 6];
        let profile = Profile::build(&way.plan()).expect("the line can be built");
        let one = Ridden::over(&profile, &way.plan(), &m, way.push_off);
        let large = enlarged(&profile, k);
        let two = Ridden::over(&large, &way.plan(), &enlarged_mount(&m, k), way.push_off * k.sqrt());
        for (x, v) in one.places.iter().zip(one.speeds()) {
            let got = two.speed_at(x * k);
            prop_assert!(v > 0.0 && (got / (v * k.sqrt()) - 1.0).abs() < SCALED, "at {x}: {v} and {got} m/s");
        }
    }
}

/// How far speeds may be from the law of scaling: bearings take 0.0087 N of drag for each m/s, and
/// grip slips, on any scale.
const SCALED: f64 = 2e-3;

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
