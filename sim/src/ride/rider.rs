//! The rider: what legs and arms do at each moment.
//!
//! The rider pushes on the bike with a force through the own mass centre and a couple beside it:
//! together any load that feet on pedals and hands on grips can make. Three tasks share them,
//! each in charge as far as the wheels are loaded:
//!
//! - **On the ground** the mass centre follows the body's path (see `path`) with the acceleration
//!   a critically damped body would have, and stays over the bike, square to the path. The couple
//!   keeps the body's attitude, as far as that leaves both wheels on the ground.
//! - **In the launch**, front wheel past the edge and rear wheel still on the lip, the load on the
//!   rear wheel turns everything nose-down. The rider knows how much turning the flight needs, and
//!   pushes just so hard that this much is left at the edge.
//! - **In the air** no push changes the flight. The body moves toward the landing attitude and the
//!   couple turns the bike to meet the slope, both along the least-effort course to the
//!   touch-down foreseen: a = 6 (target − now)/T² − 4 rate/T.
//!
//! Nothing here is set per line or per rider: constants are pure numbers, or scale with mass,
//! stature and wheelbase.

use super::aim::{Forecast, reach_down};
use super::habits;
use super::mount::{Legs, Mount};
use super::path::{Aim, Lip, Path};
use super::state::{self, LEAN, PITCH, Pose, RIDER, V_LEAN, V_PITCH, V_RIDER, Y};
use super::turning::Turning;
use super::tyre::WheelForce;
use crate::constants::GRAVITY;
use crate::num;
use glam::DVec2;

/// What the rider does to the own body; the bike gets the opposite.
#[derive(Clone, Copy, Debug, Default)]
pub struct Wrench {
    /// Force on the rider's mass centre, N.
    pub force: DVec2,
    /// Couple on the rider, N m.
    pub couple: f64,
}

/// What the rider is aware of.
pub struct Senses<'a> {
    pub m: &'a Mount,
    pub path: &'a Path,
    pub pose: &'a Pose,
    pub y: &'a Y,
    pub wheels: &'a [WheelForce; 2],
    pub t: f64,
    pub forecast: Forecast,
    /// The lip whose edge the rear wheel has not passed: the next one.
    pub lip: Option<&'a Lip>,
    /// Its index.
    pub lip_index: usize,
    /// Where the body belongs as the front wheel passes its edge, m against the middle.
    pub place: f64,
}

/// What follows from the senses and is used by every task.
struct View {
    aim: Aim,
    rider: DVec2,
    v_rider: DVec2,
    /// From the middle between the axles to the rider.
    arm: DVec2,
    v_arm: DVec2,
    /// How far the wheels are loaded, 0 to 1: rear, front.
    on: [f64; 2],
    weight: f64,
    /// Front axle beyond the lip's edge, m, along the lip's tangent.
    front_past: f64,
    /// How far the launch has begun, 0 to 1.
    launch: f64,
    to_go: f64,
}

impl Senses<'_> {
    /// The rider's push.
    #[inline]
    pub fn act(&self) -> Wrench {
        let v = self.view();
        let [rear, front] = v.on;
        let ground = self.on_ground(&v);
        let launch = v.launch;
        let mut force = ground * front;
        if front < 1.0 {
            let single = if launch > 0.0 && rear > 0.0 {
                self.in_launch(&v, ground) * launch + ground * (1.0 - launch)
            } else {
                ground
            };
            force += (single * rear + self.in_air(&v) * (1.0 - rear)) * (1.0 - front);
        }
        force += self.leg_stops(&v);
        let both = rear * front;
        // Most of a ride is wholly on the ground or wholly off it: then only one of the two counts.
        let couple = if both >= 1.0 {
            self.hold_lean(&v, force)
        } else if both <= 0.0 {
            self.turn_bike(&v, force)
        } else {
            self.hold_lean(&v, force) * both + self.turn_bike(&v, force) * (1.0 - both)
        };
        let most = habits::MOST_COUPLE * v.weight * self.m.stature;
        Wrench {
            force,
            couple: num::clamp(couple, -most, most) + self.twist_stop(most),
        }
    }

    fn view(&self) -> View {
        let (m, y) = (self.m, self.y);
        let rider = state::vec(y, RIDER);
        let v_rider = state::vec(y, V_RIDER);
        let unit = habits::LOADED * m.mass() * GRAVITY;
        let front_past = self.lip.map_or(-f64::INFINITY, |l| {
            (self.pose.axle[1] - l.edge).dot(l.along)
        });
        View {
            aim: self.path.at(rider.x, self.lip_index),
            rider,
            v_rider,
            arm: rider - self.pose.middle,
            v_arm: v_rider - self.pose.v_middle,
            on: [
                num::smooth(self.wheels[0].load / unit),
                num::smooth(self.wheels[1].load / unit),
            ],
            weight: m.rider_mass * GRAVITY,
            front_past,
            launch: num::smooth(front_past / (0.1 * m.wheelbase)),
            to_go: num::max(self.forecast.t - self.t, habits::SHORTEST),
        }
    }

    /// Where along the path the body belongs, against the middle of the bike, m.
    fn place(&self, v: &View) -> f64 {
        let ramp = habits::BEGIN_BACK * self.m.wheelbase;
        self.place * num::smooth(1.0 + v.front_past / ramp)
    }

    fn on_ground(&self, v: &View) -> DVec2 {
        let m = self.m;
        let (along, normal) = (v.aim.along, v.aim.normal);
        let off = self.place(v) - v.arm.dot(along);
        let pull = m.reduced_mass()
            * (habits::OVER_RATE * habits::OVER_RATE * off
                - 2.0 * habits::OVER_DAMPING * habits::OVER_RATE * v.v_arm.dot(along));
        let most = habits::MOST_HOLD * v.weight;
        along * num::clamp(pull, -most, most) + normal * self.legs(v)
    }

    /// Push of the legs along the path's normal, N.
    fn legs(&self, v: &View) -> f64 {
        let m = self.m;
        let normal = v.aim.normal;
        let reach = v.arm.dot(normal);
        let closing = v.v_arm.dot(normal);
        if m.legs == Legs::Passive {
            // 2 Hz and 0.6 of critical: a person standing on level pedals (from memory).
            let w = 4.0 * num::PI;
            let a = w * w * (m.reach_usual - reach) - 1.2 * w * closing;
            let push = m.rider_mass * (a + GRAVITY * normal.y);
            return num::clamp(
                push,
                -habits::MOST_PULL * v.weight,
                habits::MOST_PUSH * v.weight,
            );
        }
        let off = (v.rider - v.aim.point).dot(normal);
        let speed = v.v_rider.dot(v.aim.along);
        let mut back = -habits::PATH_RATE * habits::PATH_RATE * off
            - 2.0 * habits::PATH_DAMPING * habits::PATH_RATE * v.v_rider.dot(normal);
        // A body coming down is met only as hard as stops it within the legs' travel.
        let stop = if closing < 0.0 {
            closing * closing / (2.0 * num::max(reach - m.reach_low, 0.02))
        } else {
            0.0
        };
        back = num::min(back, stop + habits::GENTLE);
        let a = v.aim.curvature * speed * speed + back;
        let push = m.rider_mass * (a + GRAVITY * normal.y);
        let left = num::smooth((m.reach_high - num::length(v.arm)) / (habits::FADE * m.stature));
        num::clamp(
            push,
            -habits::MOST_PULL * v.weight,
            habits::MOST_PUSH * v.weight * left,
        )
    }

    /// As on the ground, but no harder than leaves the turning that the flight needs.
    fn in_launch(&self, v: &View, ground: DVec2) -> DVec2 {
        let m = self.m;
        let Some(lip) = self.lip else { return ground };
        let rear = &self.wheels[0];
        let up = rear.normal / num::max(rear.load, 1e-9);
        // What the rear wheel carries without the legs: the bike itself.
        let bike = m.bike_mass * GRAVITY * up.y;
        let push = num::min(
            self.load_for_turning(v, lip, up) - bike,
            self.push_hands_can_hold(v, up, bike),
        );
        let hold = ground.dot(v.aim.normal);
        let least = habits::LEAST_PUSH * v.weight;
        let push = num::clamp(push, least, num::max(hold * habits::POP, least));
        ground + v.aim.normal * (push - hold)
    }

    /// Load on the rear wheel that leaves, at the edge, just the turning that the flight needs.
    fn load_for_turning(&self, v: &View, lip: &Lip, up: DVec2) -> f64 {
        let m = self.m;
        let rear = self.pose.axle[0];
        let left = -(rear - lip.edge).dot(lip.along);
        let speed = num::max(self.pose.v_axle[0].dot(lip.along), 0.5);
        let time = num::max(left, habits::TOO_LATE * m.wheelbase) / speed;
        let lever = num::min((rear - self.pose.centre).perp_dot(up), -0.02 * m.wheelbase);
        let turning = Turning::of(m, self.pose, self.y);
        let slope = self.forecast.slope;
        let need = turning.remaining(m, self.y, slope, slope) / v.to_go;
        (need - turning.spin) / (lever * time)
    }

    /// Most push at which hands and feet still keep the bike's nose on its course:
    /// couple = tilt (push + bike) − arm × push − I θ'' reaches its limit.
    fn push_hands_can_hold(&self, v: &View, up: DVec2, bike: f64) -> f64 {
        let m = self.m;
        let centre = state::vec(self.y, state::BIKE);
        let tilt = (self.pose.axle[0] - centre).perp_dot(up);
        let lever = tilt - (v.rider - centre).perp_dot(v.aim.normal);
        if lever > -1e-3 {
            return f64::INFINITY;
        }
        let most = habits::MOST_COUPLE * v.weight * m.stature;
        let course = m.bike_inertia * self.pitch_course(v);
        num::max((course - most - tilt * bike) / lever, 0.0)
    }

    fn in_air(&self, v: &View) -> DVec2 {
        let m = self.m;
        let (s, c) = num::sin_cos(self.forecast.swing);
        let target = DVec2::new(-s, c) * reach_down(m);
        let t = v.to_go;
        let a = (target - v.arm) * (6.0 / (t * t)) - v.v_arm * (4.0 / t);
        let force = a * m.reduced_mass();
        let most = habits::MOST_IN_AIR * v.weight;
        let size = num::length(force);
        if size > most {
            force * (most / size)
        } else {
            force
        }
    }

    /// Stiff ends of the legs' travel.
    fn leg_stops(&self, v: &View) -> DVec2 {
        let m = self.m;
        let reach = num::length(v.arm);
        let way = v.arm / num::max(reach, 1e-6);
        let rate = v.v_arm.dot(way);
        let past_low = m.reach_low - reach;
        let past_high = reach - m.reach_high;
        let push = if past_low > 0.0 {
            num::max(m.rider_mass * 1600.0 * past_low * (1.0 - 0.4 * rate), 0.0)
        } else if past_high > 0.0 {
            -num::max(m.rider_mass * 900.0 * past_high * (1.0 + 0.8 * rate), 0.0)
        } else {
            0.0
        };
        way * push
    }

    /// Couple that keeps the body's attitude and both wheels down.
    fn hold_lean(&self, v: &View, force: DVec2) -> f64 {
        let (m, y) = (self.m, self.y);
        let target = habits::LEAN_WITH_SLOPE * num::atan2(v.aim.along.y, v.aim.along.x);
        let a = habits::LEAN_RATE * habits::LEAN_RATE * (target - y[LEAN])
            - 2.0 * habits::LEAN_DAMPING * habits::LEAN_RATE * y[V_LEAN];
        let load = self.wheels[0].load + self.wheels[1].load;
        let even = -v.arm.perp_dot(force);
        let room = 0.5 * habits::SHIFT_SHARE * m.wheelbase * load;
        num::clamp(m.rider_inertia * a, even - room, even + room)
    }

    /// Couple on the rider that turns the bike toward the slope it will meet.
    fn turn_bike(&self, v: &View, force: DVec2) -> f64 {
        let (m, y) = (self.m, self.y);
        let a = self.pitch_course(v);
        let bike = state::vec(y, state::BIKE);
        let tyres = (0..2)
            .map(|i| (self.pose.axle[i] - bike).perp_dot(self.wheels[i].force))
            .sum::<f64>();
        tyres - (v.rider - bike).perp_dot(force) - m.bike_inertia * a
    }

    /// Pitch acceleration that brings the bike to the slope it will meet.
    fn pitch_course(&self, v: &View) -> f64 {
        let y = self.y;
        let t = v.to_go;
        let [rear, front] = v.on;
        let down = (1.0 - v.launch) * (1.0 - (1.0 - rear) * (1.0 - front));
        let (_, slope) = self.path.ground(self.pose.middle.x);
        let slope =
            num::atan2(slope, 1.0) * down + (self.forecast.slope + habits::NOSE) * (1.0 - down);
        6.0 * num::wrap(slope - y[PITCH]) / (t * t) - 4.0 * y[V_PITCH] / t
    }

    /// Stops of the body's rotation against the bike.
    fn twist_stop(&self, most: f64) -> f64 {
        let twist = self.y[LEAN] - self.y[PITCH];
        let rate = self.y[V_LEAN] - self.y[V_PITCH];
        let past = twist.abs() - habits::TWIST;
        if past <= 0.0 {
            return 0.0;
        }
        let sign = if twist > 0.0 { 1.0 } else { -1.0 };
        -sign * num::max(6.0 * most * past * (1.0 + 0.3 * sign * rate), 0.0)
    }
}
