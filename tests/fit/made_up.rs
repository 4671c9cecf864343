//! Made-up test rides: known inputs, a ride with them, what was seen of it, and a noisy hand.
//!
//! What is seen is read off the trace here, by code of its own.

use fastrand::Rng;
use sim::fit::What;
use sim::plan::{Clocked, Feature, Landed, Line, Observation, Plan, Stopped, Style, Timed};
use sim::profile::{Intent, Profile};
use sim::ride::{Accuracy, Run, ride};
use sim::setup::{mount, start_speed};

/// What is looked at on a test ride; the values follow from the ride.
#[derive(Clone, Copy)]
pub enum Look {
    /// From one flag to another, m along the line.
    Time(f64, f64),
    /// At a flag.
    Speed(f64),
    /// At a jump.
    Landing(usize),
    /// Where the bike rolls out to.
    Stop,
}

/// Inputs that a made-up ride is ridden with, as `sim::fit` counts them.
#[derive(Clone, Copy, Debug)]
pub struct Truth {
    pub rolling: f64,
    pub drag: f64,
    pub start: f64,
    pub skill: f64,
}

impl Truth {
    /// Anywhere in the ranges of `sim::judge`, even odds; skill within 0.2 of what is planned.
    pub fn drawn(plan: &Plan, rng: &mut Rng) -> Self {
        let mut within = |half: f64| half * (2.0 * rng.f64() - 1.0);
        let rider = &plan.riders[0].rider;
        Self {
            rolling: 1.0 + within(0.3),
            drag: 1.0 + within(0.18),
            start: (start_speed(plan) + within(0.3)).max(0.0),
            skill: match rider.style {
                Style::Pumping => (rider.skill + within(0.2)).clamp(0.0, 1.0),
                _ => rider.skill,
            },
        }
    }

    pub fn of(&self, what: What) -> f64 {
        match what {
            What::Rolling => self.rolling,
            What::Drag => self.drag,
            What::Start => self.start,
            What::Skill => self.skill,
        }
    }

    /// The plan with these in place of what is planned.
    pub fn put_into(&self, plan: &Plan) -> Plan {
        let mut plan = plan.clone();
        let mount = &mut plan.riders[0];
        let rolling = &mut mount.bike.rolling;
        for c in [
            &mut rolling.wood,
            &mut rolling.paved,
            &mut rolling.packed,
            &mut rolling.gravel,
            &mut rolling.grass,
            &mut rolling.soft,
        ] {
            *c *= self.rolling;
        }
        mount.rider.drag_area *= self.drag;
        mount.rider.skill = self.skill;
        if let Line::Features(features) = &mut plan.line
            && let Feature::StartRamp(ramp) = &mut features[0]
        {
            ramp.push_off = self.start;
        } else {
            plan.initial_speed = Some(self.start);
        }
        plan
    }
}

/// Rides a plan with its first rider, who brakes in the run-out or does not.
fn ridden(plan: &Plan, brakes: bool) -> (Profile, Run) {
    let mut profile = Profile::build(plan).unwrap_or_else(|faults| panic!("{faults:?}"));
    for piece in &mut profile.pieces {
        if piece.character.intent == Intent::Brake && !brakes {
            piece.character.intent = Intent::Roll;
        }
    }
    let mount = mount(&plan.riders[0], &plan.weather);
    let run = ride(&profile, &mount, start_speed(plan), &Accuracy::default());
    (profile, run)
}

/// Time and speed where the middle of the bike passes a place.
fn passing(run: &Run, x: f64) -> Option<(f64, f64)> {
    let pair = run
        .samples
        .windows(2)
        .find(|w| w[0].bike_x < x && w[1].bike_x >= x)?;
    let share = (x - pair[0].bike_x) / (pair[1].bike_x - pair[0].bike_x);
    let between = |a: f64, b: f64| a + share * (b - a);
    Some((
        between(pair[0].t, pair[1].t),
        between(pair[0].speed, pair[1].speed),
    ))
}

/// Where the rear wheel comes down behind a lip: its axle a wheel's radius from the ground.
fn mark(profile: &Profile, run: &Run, plan: &Plan, lip: usize) -> Option<f64> {
    let lip = profile.lips[lip];
    let bike = &plan.riders[0].bike;
    let gap = |i: usize| {
        let s = &run.samples[i];
        let x = s.bike_x - 0.5 * bike.wheelbase * s.pitch.cos();
        let z = s.bike_z - 0.5 * bike.wheelbase * s.pitch.sin();
        let (_, closest) = profile.closest((x, z).into())?;
        Some((closest.distance - bike.wheel_radius(), closest.point.x))
    };
    let behind = |i: &usize| run.samples[*i].bike_x > lip.edge.x + bike.wheelbase;
    let from = (0..run.samples.len()).find(behind)?;
    let aloft = (from..run.samples.len()).find(|&i| run.samples[i].rear_load <= 0.0)?;
    let down = (aloft..run.samples.len()).find(|&i| run.samples[i].rear_load > 0.0)?;
    let (before, after) = (gap(down - 1)?, gap(down)?);
    let share = before.0 / (before.0 - after.0);
    Some(before.1 + share * (after.1 - before.1) - lip.knuckle.x)
}

/// A made-up test ride of a plan: the observations, each off by what its uncertainty makes likely.
/// What the rider never gets to is not seen.
pub fn seen(plan: &Plan, truth: &Truth, looks: &[Look], rng: &mut Rng) -> Vec<Observation> {
    let brakes = !looks.iter().any(|look| matches!(look, Look::Stop));
    let plan = truth.put_into(plan);
    let (profile, run) = ridden(&plan, brakes);
    let mut noisy = |value: f64, sigma: f64| value + sigma * normal(rng);
    let looked = looks.iter().filter_map(|look| {
        Some(match *look {
            Look::Time(from, to) => Observation::Time(Timed {
                from,
                to,
                seconds: noisy(
                    passing(&run, to)?.0 - passing(&run, from).map_or(0.0, |p| p.0),
                    Timed::USUAL,
                ),
                give_or_take: Timed::USUAL,
                rider: 0,
                carried: false,
            }),
            Look::Speed(at) => Observation::Speed(Clocked {
                at,
                speed: noisy(passing(&run, at)?.1, Clocked::USUAL),
                give_or_take: Clocked::USUAL,
                rider: 0,
                carried: false,
            }),
            Look::Landing(jump) => Observation::Landed(Landed {
                jump: jump as u32,
                past_knuckle: noisy(mark(&profile, &run, &plan, jump)?, Landed::USUAL),
                give_or_take: Landed::USUAL,
                rider: 0,
                carried: false,
            }),
            Look::Stop => Observation::Stopped(Stopped {
                at: noisy(run.samples.last()?.bike_x, Stopped::USUAL),
                give_or_take: Stopped::USUAL,
                rider: 0,
                carried: false,
            }),
        })
    });
    looked.collect()
}

/// A normally distributed number, by the method of Box and Muller (1958).
fn normal(rng: &mut Rng) -> f64 {
    let (a, b) = (1.0 - rng.f64(), rng.f64());
    (-2.0 * a.ln()).sqrt() * (std::f64::consts::TAU * b).cos()
}
