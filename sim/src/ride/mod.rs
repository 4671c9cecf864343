#![doc = include_str!("model.md")]

mod aim;
mod digest;
mod forces;
mod ground;
mod habits;
mod ledger;
mod mount;
mod path;
mod rider;
mod run;
mod start;
mod state;
mod step;
mod turning;
mod tyre;
mod watch;

pub use ledger::{Ledger, Spent};
pub use mount::{Legs, Mount};
pub use run::{CrashKind, Event, EventKind, Outcome, Run, SAMPLE_STEP, Sample, Wheel};
pub use step::Accuracy;
pub use tyre::Tyre;

use crate::constants::GRAVITY;
use crate::num;
use crate::profile::{Intent, Profile};
use aim::forecast;
use forces::{Mind, World};
use ground::Ground;
use path::Path;
use state::{LEAN, PITCH, Pose, RIDER, TURNED, vec};
use step::Point;
use watch::Watch;

/// Longest ride, s.
const LONGEST: f64 = 120.0;

/// Most of the speed a rider sheds by braking, m/s².
///
/// Half of what a bike stands before it pitches over (common practice, no source).
const BRAKING: f64 = 4.0;

/// How far before an edge the launch is planned, in wheelbases of the front wheel's way: a step of
/// looking ahead more than where the body begins to move.
const PLAN_FROM: f64 = habits::BEGIN_BACK + 1.0;

/// Rides a profile from its beginning at `speed` m/s. The result is the same on every machine.
pub fn ride(profile: &Profile, m: &Mount, speed: f64, accuracy: &Accuracy) -> Run {
    let ground = Ground::new(profile, m.tyre.radius);
    let path = Path::new(profile, m);
    let world = World {
        m,
        ground: &ground,
        path: &path,
    };
    let end = profile.pieces.last().map_or(0.0, |p| p.end.x);
    let brake = brake_from(profile);
    let mut watch = Watch::new(end, brake);
    let mut mind = Mind {
        forecast: aim::Forecast {
            t: 0.0,
            slope: 0.0,
            swing: 0.0,
        },
        lip: 0,
        place: 0.0,
        brake: 0.0,
    };
    let mut here = Point::new(
        &world,
        0.0,
        start::at_start(profile, m, &path, speed),
        &mind,
    );
    let start_energy = world.energy(&here.y, &here.felt.wheels);
    let mut samples = Vec::with_capacity(2048);
    let mut h = accuracy.longest;
    let mut tick = 0;
    let outcome = 'ride: loop {
        samples.push(sample(&world, &here));
        if here.t >= LONGEST {
            break Outcome::TimedOut;
        }
        mind = look(&world, &here, &mind, watch.lip, brake, end);
        here = Point::new(&world, here.t, here.y, &mind);
        tick += 1;
        let until = f64::from(tick) * SAMPLE_STEP;
        while here.t < until {
            let next = step::advance(&world, &here, &mind, until, &mut h, accuracy);
            let ended = watch.step(&world, &here, &next);
            here = next;
            if let Some(outcome) = ended {
                samples.push(sample(&world, &here));
                break 'ride outcome;
            }
        }
    };
    let ledger = Ledger::new(start_energy, &world, &here);
    Run {
        samples,
        events: watch.events,
        outcome,
        ledger,
    }
}

/// Where the rider begins to brake, m along the line.
fn brake_from(profile: &Profile) -> f64 {
    profile
        .pieces
        .iter()
        .find(|p| p.character.intent == Intent::Brake)
        .map_or(f64::INFINITY, |p| p.start.x)
}

/// The rider looks ahead.
fn look(world: &World, here: &Point, mind: &Mind, lip: usize, brake_x: f64, end: f64) -> Mind {
    let m = world.m;
    let pose = Pose::of(m, &here.y);
    // A lip is left only once the rear wheel's load is gone: the last of it still turns the bike.
    let held = lip.checked_sub(1).filter(|&i| {
        let edge = world.path.lips[i].edge;
        here.felt.wheels[0].load > 0.0 && num::length(pose.axle[0] - edge) < m.tyre.radius
    });
    let lip = held.unwrap_or(lip);
    let launching = world
        .path
        .lips
        .get(lip)
        .filter(|l| (pose.axle[1] - l.edge).dot(l.along) > -0.5 * m.wheelbase);
    let flying = lip.checked_sub(1).and_then(|i| world.path.lips.get(i));
    let from_x = launching
        .or(flying)
        .map_or(f64::NEG_INFINITY, |l| l.knuckle.x);
    let brake = if pose.middle.x > brake_x {
        let room = num::max(
            end - 0.5 * m.wheelbase - m.tyre.radius - 0.5 - pose.middle.x,
            0.2,
        );
        let v = num::length(pose.v_centre);
        m.mass() * num::min(v * v / (2.0 * room), BRAKING)
    } else {
        0.0
    };
    let flying = here.felt.wheels.iter().all(|w| w.load <= 0.0);
    let back = if flying {
        aim::set_back(m, &pose, &here.y, &mind.forecast, here.t)
    } else {
        0.0
    };
    Mind {
        forecast: forecast(m, world.path, &pose, here.t, from_x, back),
        lip,
        // Nobody moves back for a lip that is still far off, and the forecast for it is not cheap.
        place: world
            .path
            .lips
            .get(lip)
            .filter(|l| (pose.axle[1] - l.edge).dot(l.along) > -PLAN_FROM * m.wheelbase)
            .map_or(0.0, |l| aim::place(m, world.path, &pose, l)),
        brake,
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
