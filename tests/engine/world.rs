//! The engine's world: a frame, two wheels on hinges, the ground.

use crate::bike::{Bike, Start};
use crate::ground::{self, from_engine, to_engine};
use crate::settings::Settings;
use glam::DVec2;
use rapier2d_f64::prelude::{
    ColliderBuilder, MassProperties, PhysicsWorld, Pose, RevoluteJointBuilder, RigidBodyBuilder,
    RigidBodyHandle, SharedShape, Vector,
};
use sim::constants::GRAVITY;
use sim::profile::Profile;

/// Share of the mass in each wheel. What counts is the whole, which stays as it is.
const WHEEL: f64 = 0.05;

/// Longest ride, s.
const LONGEST: f64 = 30.0;

/// A moment of the ride.
#[derive(Clone, Copy)]
pub struct Moment {
    pub t: f64,
    /// Centres of the rear and the front wheel.
    pub axles: [DVec2; 2],
    /// Middle between them.
    pub middle: DVec2,
    /// Velocity of the common mass centre.
    pub velocity: DVec2,
    pub pitch: f64,
    /// Energy over weight, m: 0 where the bike stands still on level ground at height 0.
    pub head: f64,
}

struct World<'a> {
    bike: &'a Bike,
    engine: PhysicsWorld,
    frame: RigidBodyHandle,
    wheels: [RigidBodyHandle; 2],
}

impl<'a> World<'a> {
    fn new(profile: &Profile, settings: &Settings, bike: &'a Bike, start: &Start) -> Self {
        let (line, narrow_phase) = ground::of(profile, bike.radius, settings.shape);
        let mut engine = PhysicsWorld {
            gravity: Vector::new(0.0, -GRAVITY),
            integration_parameters: settings.parameters,
            narrow_phase,
            ..PhysicsWorld::new()
        };
        engine.insert(
            RigidBodyBuilder::fixed(),
            ColliderBuilder::new(SharedShape::new(line)).friction(bike.grip),
        );
        let frame = engine.insert_body(
            RigidBodyBuilder::dynamic()
                .pose(Pose::new(to_engine(start.middle), start.pitch))
                .linvel(to_engine(frame_velocity(bike, start)))
                .angvel(start.turning)
                .additional_mass_properties(frame_mass(bike))
                .can_sleep(false),
        );
        let half = 0.5 * bike.wheelbase;
        let wheels = [(-half, start.rims[0]), (half, start.rims[1])]
            .map(|(at, rim)| wheel(&mut engine, bike, start, frame, at, rim));
        Self {
            bike,
            engine,
            frame,
            wheels,
        }
    }

    fn moment(&self, t: f64) -> Moment {
        let frame = &self.engine.bodies[self.frame];
        let wheels = self.wheels.map(|wheel| &self.engine.bodies[wheel]);
        let axles = wheels.map(|wheel| from_engine(wheel.translation()));
        let speeds = wheels.map(|wheel| from_engine(wheel.linvel()));
        let share = 1.0 - 2.0 * WHEEL;
        let velocity = from_engine(frame.linvel()) * share + (speeds[0] + speeds[1]) * WHEEL;
        let pitch = frame.rotation().angle();
        let rise = DVec2::from_angle(pitch).perp() * frame_rise(self.bike);
        let height =
            (from_engine(frame.translation()) + rise).y * share + (axles[0].y + axles[1].y) * WHEEL;
        // Twice the kinetic energy of each body.
        let weighs = frame_mass(self.bike);
        let moving = |m: f64, v: DVec2, i: f64, spin: f64| m * v.length_squared() + i * spin * spin;
        let doubled = moving(
            self.bike.mass * share,
            from_engine(frame.linvel()),
            weighs.principal_inertia(),
            frame.angvel(),
        ) + (0..2)
            .map(|i| {
                let mass = self.bike.mass * WHEEL;
                moving(mass, speeds[i], self.bike.wheel_inertia, wheels[i].angvel())
            })
            .sum::<f64>();
        let rest = self.bike.rise + self.bike.radius;
        Moment {
            t,
            axles,
            middle: (axles[0] + axles[1]) * 0.5,
            velocity,
            pitch,
            head: 0.5 * doubled / (self.bike.mass * GRAVITY) + height - rest,
        }
    }
}

/// Height of the frame's own mass centre over the axles: that of the whole, less the wheels.
fn frame_rise(bike: &Bike) -> f64 {
    bike.rise / (1.0 - 2.0 * WHEEL)
}

/// What the frame weighs, so that frame and wheels together are the bike.
fn frame_mass(bike: &Bike) -> MassProperties {
    let (mass, wheel) = (bike.mass * (1.0 - 2.0 * WHEEL), bike.mass * WHEEL);
    let rise = frame_rise(bike);
    let half = 0.5 * bike.wheelbase;
    let apart = rise - bike.rise;
    let wheels = 2.0 * wheel * (half * half + bike.rise * bike.rise);
    let inertia = bike.inertia - mass * apart * apart - wheels;
    assert!(inertia > 0.0, "the wheels are too heavy");
    MassProperties::new(Vector::new(0.0, rise), mass, inertia)
}

/// Velocity of the frame's own mass centre.
fn frame_velocity(bike: &Bike, start: &Start) -> DVec2 {
    let rise = DVec2::from_angle(start.pitch).perp() * frame_rise(bike);
    start.velocity + rise.perp() * start.turning
}

/// A wheel on a hinge, `at` before the middle of the frame.
fn wheel(
    engine: &mut PhysicsWorld,
    bike: &Bike,
    start: &Start,
    frame: RigidBodyHandle,
    at: f64,
    rim: f64,
) -> RigidBodyHandle {
    let arm = DVec2::from_angle(start.pitch) * at;
    let weighs = MassProperties::new(Vector::ZERO, bike.mass * WHEEL, bike.wheel_inertia);
    let (wheel, _) = engine.insert(
        RigidBodyBuilder::dynamic()
            .translation(to_engine(start.middle + arm))
            .linvel(to_engine(start.velocity + arm.perp() * start.turning))
            .angvel(-rim / bike.radius)
            .additional_mass_properties(weighs)
            .can_sleep(false),
        ColliderBuilder::ball(bike.radius)
            .density(0.0)
            .friction(bike.grip),
    );
    let hinge = RevoluteJointBuilder::new()
        .local_anchor1(Vector::new(at, 0.0))
        .contacts_enabled(false);
    engine.insert_impulse_joint(frame, wheel, hinge);
    wheel
}

/// Rides until a moment that `ends`, and gives every step.
pub fn ride(
    profile: &Profile,
    settings: &Settings,
    bike: &Bike,
    start: &Start,
    ends: impl Fn(&Moment) -> bool,
) -> Vec<Moment> {
    let mut world = World::new(profile, settings, bike, start);
    let mut moments = vec![world.moment(0.0)];
    let step = settings.parameters.dt;
    for i in 1..=(LONGEST / step) as u32 {
        world.engine.step();
        let moment = world.moment(f64::from(i) * step);
        moments.push(moment);
        if ends(&moment) {
            break;
        }
    }
    moments
}

/// The ride at the place where `of` comes to a value, straight between two steps.
pub fn where_it_comes_to(
    moments: &[Moment],
    of: impl Fn(&Moment) -> f64,
    value: f64,
) -> Option<Moment> {
    let i = moments.iter().position(|m| of(m) >= value)?;
    let (a, b) = (&moments[i.checked_sub(1)?], &moments[i]);
    let share = (value - of(a)) / (of(b) - of(a));
    let between = |x: DVec2, y: DVec2| x + (y - x) * share;
    let mix = |x: f64, y: f64| x + (y - x) * share;
    Some(Moment {
        t: mix(a.t, b.t),
        axles: [0, 1].map(|i| between(a.axles[i], b.axles[i])),
        middle: between(a.middle, b.middle),
        velocity: between(a.velocity, b.velocity),
        pitch: mix(a.pitch, b.pitch),
        head: mix(a.head, b.head),
    })
}
