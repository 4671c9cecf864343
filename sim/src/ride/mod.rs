#![doc = include_str!("model.md")]

mod digest;
mod forces;
mod ground;
mod guard;
mod ledger;
mod numbers;
mod run;
mod start;
mod step;
mod watch;

pub use crate::body::{Legs, Mount, Tyre};
pub use ledger::{Ledger, Spent};
pub use run::{CrashKind, Event, EventKind, Outcome, Run, SAMPLE_STEP, Sample, Wheel};
pub use step::Accuracy;

use crate::body::{LEAN, PITCH, Pose, RIDER, TURNED, vec};
use crate::constants::GRAVITY;
use crate::num;
use crate::profile::{Intent, Profile};
use crate::rider::{Mind, Sight};
use forces::World;
use ground::Ground;
use guard::Books;
use step::Point;
use watch::Watch;

/// Longest ride, s.
const LONGEST: f64 = 120.0;

/// Halvings of a step in which something calls for a look: to a nanosecond.
const CALL_HALVINGS: usize = 22;

/// Most of the speed a rider sheds by braking, m/s².
///
/// Half of what a bike stands before it pitches over (common practice, no source).
const BRAKING: f64 = 4.0;

/// Rides a profile from its beginning at `speed` m/s. The result is the same on every machine.
pub fn ride(profile: &Profile, m: &Mount, speed: f64, accuracy: &Accuracy) -> Run {
    ride_to(profile, m, speed, accuracy, f64::INFINITY)
}

/// As [`ride`], up to a sample beyond `x` m along the line: whoever asks about a jump need not wait for the end.
pub fn ride_to(profile: &Profile, m: &Mount, speed: f64, accuracy: &Accuracy, x: f64) -> Run {
    ride_on(profile, m, (speed, x), accuracy, &mut |_, _| ())
}

/// As [`ride`], and shows the state after each step of the solver, which is closer than the samples
/// are.
pub fn ride_seen(
    profile: &Profile,
    m: &Mount,
    speed: f64,
    accuracy: &Accuracy,
    seen: &mut dyn FnMut(Sample),
) -> Run {
    let mut shown = |world: &World, here: &Point| seen(sample(world, here));
    ride_on(profile, m, (speed, f64::INFINITY), accuracy, &mut shown)
}

/// From its beginning at a speed, m/s, to a place along the line, m.
fn ride_on(
    profile: &Profile,
    m: &Mount,
    (speed, to): (f64, f64),
    accuracy: &Accuracy,
    seen: &mut dyn FnMut(&World, &Point),
) -> Run {
    let ground = Ground::new(profile, m.tyre.radius);
    let sight = Sight::new(profile, m);
    let mut world = World {
        m,
        ground: &ground,
        sight: &sight,
        mind: Mind::new(),
        brake: 0.0,
    };
    let brake = brake_from(profile);
    let y = start::at_start(profile, m, speed);
    let mut watch = Watch::new(profile, &Pose::of(m, &y), brake);
    let end = watch.end_x;
    let wheels = world.wheels(&y);
    world.mind.look(m, &sight, 0.0, &y, &wheels, 0);
    let mut here = Point::new(&world, 0.0, y);
    let start_energy = world.energy(&here.y, &here.felt.wheels);
    let mut books = Books::open(start_energy, m.mass() * GRAVITY, &here);
    let mut steps = guard::most_steps(accuracy);
    let mut h = accuracy.longest;
    let mut tick = 0;
    let outcome = 'ride: loop {
        let now = sample(&world, &here);
        let there = now.bike_x > to;
        if !books.enter(now, &here, watch.events.len()) {
            break None;
        }
        if let Some(outcome) = enough(&here, there) {
            break Some(outcome);
        }
        if world.look(&here, watch.lip, brake, end) {
            here = Point::new(&world, here.t, here.y);
        }
        tick += 1;
        let until = f64::from(tick) * SAMPLE_STEP;
        while here.t < until {
            let next = step(&world, &here, until, &mut h, accuracy);
            let ended = watch.step(&world, &here, &next);
            here = next;
            seen(&world, &here);
            steps -= 1;
            if let Some(outcome) = ended.or((steps == 0).then_some(Outcome::BrokenOff)) {
                let closes = books.enter(sample(&world, &here), &here, watch.events.len());
                break 'ride closes.then_some(outcome);
            }
            if world.calls(&here) && world.look(&here, watch.lip, brake, end) {
                here = Point::new(&world, here.t, here.y);
            }
        }
    };
    if outcome.is_none() {
        here = books.cross_out(&mut watch.events);
    }
    Run {
        samples: books.samples,
        events: watch.events,
        outcome: outcome.unwrap_or(Outcome::Crashed),
        ledger: Ledger::new(start_energy, &world, &here),
    }
}

/// How a ride ends that is ridden no further: none is endless, and who asks about a jump is soon `there`.
fn enough(here: &Point, there: bool) -> Option<Outcome> {
    if here.t >= LONGEST {
        return Some(Outcome::TimedOut);
    }
    there.then_some(Outcome::BrokenOff)
}

/// One step, which ends where something calls for a look: the rider takes the ground as it comes, not as the steps
/// happen to fall.
fn step(world: &World, from: &Point, until: f64, h: &mut f64, accuracy: &Accuracy) -> Point {
    let next = step::advance(world, from, until, h, accuracy);
    if !world.calls(&next) {
        return next;
    }
    step::advance(world, from, call(world, from, &next), h, accuracy)
}

/// When the first wheel comes down, or the body comes to where to plan anew, between two points, s.
fn call(world: &World, from: &Point, to: &Point) -> f64 {
    let (mut before, mut after) = (from.t, to.t);
    for _ in 0..CALL_HALVINGS {
        let half = 0.5 * (before + after);
        let y = from.between(to, half);
        if world.mind.comes_to(&y) || world.mind.surprised(&world.wheels(&y)) {
            after = half;
        } else {
            before = half;
        }
    }
    after
}

/// Where the rider begins to brake, m along the line.
fn brake_from(profile: &Profile) -> f64 {
    profile
        .pieces
        .iter()
        .find(|p| p.character.intent == Intent::Brake)
        .map_or(f64::INFINITY, |p| p.start.x)
}

impl World<'_> {
    /// Whether the rider has to look ahead at once.
    fn calls(&self, here: &Point) -> bool {
        self.mind.comes_to(&here.y) || self.mind.surprised(&here.felt.wheels)
    }

    /// The rider looks ahead, and brakes beyond `brake_x` to stand before `end`. Says whether anything has
    /// changed.
    fn look(&mut self, here: &Point, lip: usize, brake_x: f64, end: f64) -> bool {
        let m = self.m;
        let felt = &here.felt.wheels;
        let changed = self.mind.look(m, self.sight, here.t, &here.y, felt, lip);
        let pose = Pose::of(m, &here.y);
        let before = self.brake;
        self.brake = if pose.middle.x > brake_x {
            let standing = end - 0.5 * m.wheelbase - m.tyre.radius - 0.5;
            let room = num::max(standing - pose.middle.x, 0.2);
            let v = num::length(pose.v_centre);
            // Downhill the brake holds against the slope too, or nobody would ever stand.
            let fall = num::max(-num::sin(here.y[PITCH]), 0.0);
            m.mass() * num::min(v * v / (2.0 * room) + GRAVITY * fall, BRAKING)
        } else {
            0.0
        };
        changed || self.brake != before
    }
}

fn sample(world: &World, p: &Point) -> Sample {
    let m = world.m;
    let pose = Pose::of(m, &p.y);
    let rider = vec(&p.y, RIDER);
    Sample {
        t: p.t,
        bike_x: pose.middle.x,
        bike_z: pose.middle.y,
        pitch: p.y[PITCH],
        rider_x: rider.x,
        rider_z: rider.y,
        lean: p.y[LEAN],
        rear_turned: p.y[TURNED],
        front_turned: p.y[TURNED + 1],
        speed: num::length(pose.v_centre),
        height: pose.centre.y,
        rear_load: p.felt.wheels[0].load,
        front_load: p.felt.wheels[1].load,
        g: watch::load_on(m, p),
        reach: num::length(rider - pose.middle),
        head: world.energy(&p.y, &p.felt.wheels) / (m.mass() * GRAVITY),
        spent: Spent::of(&p.y),
    }
}
