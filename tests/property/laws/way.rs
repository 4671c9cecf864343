//! Random lines to try laws on: a start ramp, level ground and rollers gentle enough that both
//! wheels stay loaded. Speeds are compared in the middle of level stretches, where the rider has
//! settled.

use proptest::prelude::*;
use sim::plan::{Feature, Flat, Line, Plan, Roller, RunOut, StartRamp, Surface, Weather, Yard};
use sim::profile::Profile;
use sim::ride::{Accuracy, Mount, Run, ride};
use sim::setup;
use tests::rider::riders;

/// A level stretch after a row of rollers.
#[derive(Clone, Debug)]
pub struct Row {
    pub height: f64,
    length: f64,
    count: u32,
    flat: f64,
}

/// A line and who rides it.
#[derive(Clone, Debug)]
pub struct Way {
    ramp: f64,
    angle: f64,
    pub push_off: f64,
    pub rows: Vec<Row>,
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

/// Any of them.
pub fn way() -> impl Strategy<Value = Way> {
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

/// Level dirt.
pub fn flat(length: f64) -> Feature {
    Feature::Flat(Flat {
        length,
        surface: Surface::Packed,
    })
}

impl Way {
    pub fn features(&self) -> Vec<Feature> {
        let mut features = vec![
            Feature::StartRamp(StartRamp {
                platform_height: self.ramp,
                angle_deg: self.angle,
                bottom_radius: 4.0,
                edge_radius: 3.0,
                push_off: self.push_off,
                surface: Surface::Wood,
                width: None,
            }),
            flat(5.0),
        ];
        for row in &self.rows {
            features.push(Feature::Roller(Roller {
                height: row.height,
                length: row.length,
                count: row.count,
                surface: Surface::Packed,
                width: None,
            }));
            features.push(flat(row.flat));
        }
        features
    }

    pub fn plan(&self) -> Plan {
        plan(self.features())
    }

    pub fn mount(&self) -> Mount {
        setup::mount(&riders::all()[self.rider], &Weather::default())
    }

    pub fn ride(&self, m: &Mount) -> Ridden {
        Ridden::new(&self.plan(), m, self.push_off)
    }
}

/// A plan of some features, with a run-out behind them.
pub fn plan(mut features: Vec<Feature>) -> Plan {
    features.push(Feature::RunOut(RunOut {
        length: 12.0,
        surface: Surface::Packed,
    }));
    Plan {
        name: "Law".into(),
        yard: Yard::even(200.0, 0.0),
        line: Line::Features(features),
        riders: riders::all().into(),
        weather: Weather::default(),
        initial_speed: None,
        seen: Vec::new(),
        seed: 0,
        width: sim::plan::USUAL_WIDTH,
    }
}

/// A ride with the places where speeds are compared.
pub struct Ridden {
    pub run: Run,
    /// Middle of each level stretch, m along the line.
    pub places: Vec<f64>,
    /// Where the rider brakes.
    pub brake: f64,
}

impl Ridden {
    pub fn new(plan: &Plan, m: &Mount, speed: f64) -> Self {
        let profile = Profile::build(plan).expect("the line can be built");
        Self::over(&profile, plan, m, speed)
    }

    /// The ride over a profile with the features of a plan.
    pub fn over(profile: &Profile, plan: &Plan, m: &Mount, speed: f64) -> Self {
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
    pub fn speed_at(&self, x: f64) -> f64 {
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

    pub fn speeds(&self) -> Vec<f64> {
        self.places.iter().map(|&x| self.speed_at(x)).collect()
    }

    /// Whether both wheels were loaded all the way to where the rider brakes, or stalls.
    pub fn stays_down(&self) -> bool {
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
