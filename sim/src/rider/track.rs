//! The rider: what legs and arms do at each moment.
//!
//! The rider pushes on the bike with a force through the own mass centre and a couple beside it:
//! together any load that feet on pedals and hands on grips can make.
//!
//! - **On the ground** the body follows its plan: square to its path as the path bends, about the
//!   bike's middle as its angle is planned. The couple keeps the body's attitude, as far as that leaves
//!   both wheels on the ground.
//! - **In the launch**, front wheel past the edge and rear wheel still on the lip, body and bike turn
//!   together from how they turn to how the flight needs it.
//! - **In the air** no push changes the flight. The body moves toward the landing attitude and the
//!   couple turns the bike to meet the slope, both along the least-effort course to the
//!   touch-down foreseen: a = 6 (target − now)/T² − 4 rate/T.

use super::Mind;
use super::flight::reach_down;
use super::habits;
use super::plan::Now;
use super::sight::Sight;
use super::turning::swing_of;
use crate::body::{
    BIKE, LEAN, Legs, Mount, PITCH, Pose, RIDER, V_LEAN, V_PITCH, V_RIDER, WheelForce, Y, vec,
};
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
    pub sight: &'a Sight,
    pub pose: &'a Pose,
    pub y: &'a Y,
    pub wheels: &'a [WheelForce; 2],
    pub t: f64,
    pub mind: &'a Mind,
}

/// What follows from the senses and is used by every task.
struct View {
    now: Now,
    /// Unit tangent of the body's path.
    along: DVec2,
    rider: DVec2,
    v_rider: DVec2,
    /// From the middle between the axles to the rider.
    arm: DVec2,
    over: Arm,
    /// How far the wheels are loaded, 0 to 1: rear, front.
    on: [f64; 2],
    weight: f64,
    /// How far the launch has begun, 0 to 1.
    launch: f64,
    /// How far this is flight, 0 to 1.
    air: f64,
    to_go: f64,
}

/// The body over the bike, as turning about its middle and stretching away from it.
#[derive(Clone, Copy)]
struct Arm {
    reach: f64,
    /// Unit vectors from the middle to the body, and square to that.
    out: DVec2,
    back: DVec2,
    /// From upright, back positive, rad, and its rate.
    angle: f64,
    rate: f64,
    stretching: f64,
}

impl Arm {
    #[inline]
    fn new(arm: DVec2, v_arm: DVec2) -> Self {
        let reach = num::max(num::length(arm), 1e-6);
        let out = arm / reach;
        Self {
            reach,
            out,
            back: out.perp(),
            angle: swing_of(arm),
            rate: arm.perp_dot(v_arm) / (reach * reach),
            stretching: v_arm.dot(out),
        }
    }
}

impl View {
    /// How far both wheels are off the ground, 0 to 1.
    fn aloft(&self) -> f64 {
        aloft(self.on)
    }

    /// Acceleration square to the path that its bend asks for at the speed of the moment, m/s².
    fn turned(&self) -> f64 {
        let scale = self.along.x;
        let speed = self.v_rider.dot(self.along);
        self.now.bend * scale * scale * scale * speed * speed
    }
}

/// How far both wheels are off the ground, 0 to 1, from how far each is on it.
fn aloft([rear, front]: [f64; 2]) -> f64 {
    (1.0 - rear) * (1.0 - front)
}

impl Senses<'_> {
    /// The rider's push.
    #[inline]
    pub fn act(&self) -> Wrench {
        let v = self.view();
        let ground = 1.0 - v.air;
        let mut force = DVec2::ZERO;
        let launch = num::min(v.launch, ground);
        if ground > launch {
            force += self.on_ground(&v) * (ground - launch);
        }
        if launch > 0.0 {
            force += self.as_one(&v) * launch;
        }
        if v.air > 0.0 {
            force += self.in_air(&v) * v.air;
        }
        force += self.leg_stops(&v);
        let mut couple = 0.0;
        if ground > launch {
            couple += self.hold_lean(&v, force) * (ground - launch);
        }
        if launch > 0.0 {
            let rate = habits::AS_ONE * (self.y[V_PITCH] - self.y[V_LEAN]);
            couple += self.m.rider_inertia * (self.turning(&v) + rate) * launch;
        }
        if v.air > 0.0 {
            couple += self.turn_bike(&v, force) * v.air;
        }
        let most = habits::MOST_COUPLE * v.weight * self.m.stature;
        Wrench {
            force,
            couple: num::clamp(couple, -most, most) + self.twist_stop(most),
        }
    }

    fn view(&self) -> View {
        let (m, y) = (self.m, self.y);
        let rider = vec(y, RIDER);
        let unit = habits::LOADED * m.mass() * GRAVITY;
        let lip = self.sight.lips.get(self.mind.lip);
        let front_past = lip.map_or(-1.0, |l| (self.pose.axle[1] - l.edge).dot(l.along));
        let mut now = self.mind.plan.meant(rider.x, self.t);
        if m.legs == Legs::Passive {
            // Whoever stands stiff stands square to the bike, whatever comes.
            (now.swing, now.swing_rate, now.swing_acc) = (y[PITCH], y[V_PITCH], 0.0);
        }
        let scale = 1.0 / (1.0 + now.slope * now.slope).sqrt();
        let on = [
            num::smooth(self.wheels[0].load / unit),
            num::smooth(self.wheels[1].load / unit),
        ];
        let arm = rider - self.pose.middle;
        View {
            now,
            along: DVec2::new(scale, now.slope * scale),
            rider,
            v_rider: vec(y, V_RIDER),
            arm,
            over: Arm::new(arm, vec(y, V_RIDER) - self.pose.v_middle),
            on,
            weight: m.rider_mass * GRAVITY,
            launch: num::smooth(front_past / (0.1 * m.wheelbase)) * (1.0 - on[1]),
            air: match (self.mind.flying, self.mind.aloft) {
                (false, _) => 0.0,
                (true, true) => 1.0,
                (true, false) => aloft(on),
            },
            to_go: num::max(self.mind.forecast.t - self.t, habits::SHORTEST),
        }
    }

    fn on_ground(&self, v: &View) -> DVec2 {
        let m = self.m;
        let Arm {
            reach,
            out,
            back,
            angle,
            rate,
            stretching,
        } = v.over;
        let w = habits::OVER_RATE;
        let turn = v.now.swing_acc
            + 2.0 * habits::OVER_DAMPING * w * (v.now.swing_rate - rate)
            + w * w * num::wrap(v.now.swing - angle);
        let most = num::min(habits::MOST_HOLD * v.weight, self.borne(v));
        let normal = v.along.perp();
        let square = num::max(out.dot(normal), 0.5);
        let (spring, path) = (self.spring(v), self.square_push(v, normal));
        let legs = |across: f64| {
            let meant = (path - across * back.dot(normal)) / square;
            let push = match m.legs {
                Legs::Passive => spring,
                _ => meant + m.stiff * (spring - meant),
            };
            self.within(v, push)
        };
        // The ground holds the bike up, not the body: what leans falls. What the ground gives is what
        // the legs are about to press it with, not what the tyres give at the moment: nobody answers a
        // tyre's trembling, and a push that did would feed it.
        let led = num::length(self.pose.v_middle) * self.y[V_PITCH] + GRAVITY * v.along.x;
        let ground = num::max(legs(0.0) * square / m.bike_mass + led, 0.0);
        let fall = normal * (ground * (1.0 - v.aloft()));
        let across = num::clamp(
            m.reduced_mass() * (reach * turn + 2.0 * stretching * rate + fall.dot(back)),
            -most,
            most,
        );
        out * legs(across) + back * across
    }

    /// As one piece: body and bike turn alike under what the ground does to the wheels, the legs hold
    /// their length.
    fn as_one(&self, v: &View) -> DVec2 {
        let m = self.m;
        let Arm {
            reach,
            out,
            back,
            angle,
            rate,
            stretching,
        } = v.over;
        let tyres = self.wheels[0].force + self.wheels[1].force;
        let w = habits::AS_ONE;
        let place = self.y[PITCH] + self.mind.launch.back / m.reach_usual;
        let turn = self.turning(v)
            + w * (self.y[V_PITCH] - rate)
            + habits::IN_LAUNCH * habits::IN_LAUNCH * num::wrap(place - angle);
        let across = reach * turn + 2.0 * stretching * rate + tyres.dot(back) / m.bike_mass;
        let most = habits::MOST_HOLD * v.weight;
        let across = num::clamp(m.reduced_mass() * across, -most, most);
        let normal = v.along.perp();
        let square = num::max(out.dot(normal), 0.5);
        let push = m.rider_mass * (v.turned() + GRAVITY * normal.y);
        let push = (push * (1.0 + self.mind.launch.extra) - across * back.dot(normal)) / square;
        back * across + out * self.within(v, push)
    }

    /// How rider and bike as one piece turn faster, rad/s².
    fn turning(&self, v: &View) -> f64 {
        let m = self.m;
        let inertia = m.bike_inertia + m.rider_inertia + m.reduced_mass() * v.arm.length_squared();
        let moment = (0..2)
            .map(|i| (self.pose.axle[i] - self.pose.centre).perp_dot(self.wheels[i].force))
            .sum::<f64>();
        moment / inertia
    }

    /// What the ground gives each kilogram square to the path as planned, m/s².
    fn lift(&self, v: &View) -> f64 {
        num::max(v.turned() + GRAVITY * v.along.x, 0.0)
    }

    /// Force square to the path that keeps the body on it, N.
    fn square_push(&self, v: &View, normal: DVec2) -> f64 {
        let off = (v.rider.y - v.now.z) * v.along.x;
        let w = habits::PATH_RATE;
        let a = v.turned() - w * w * off - 2.0 * habits::PATH_DAMPING * w * v.v_rider.dot(normal);
        self.m.rider_mass * (a + GRAVITY * normal.y)
    }

    /// 2 Hz and 0.6 of critical: a person standing on level pedals (from memory).
    fn spring(&self, v: &View) -> f64 {
        let Arm {
            reach, stretching, ..
        } = v.over;
        let w = 4.0 * num::PI;
        let a = w * w * (self.m.reach_usual - reach) - 1.2 * w * stretching;
        self.m.rider_mass * (a + GRAVITY * v.arm.y / reach)
    }

    /// The push as far as legs can, N.
    #[inline(always)]
    fn within(&self, v: &View, push: f64) -> f64 {
        let m = self.m;
        let Arm {
            reach, stretching, ..
        } = v.over;
        let most = habits::most_push(m);
        let yielding = num::smooth(-stretching / habits::YIELD);
        let most = most + (habits::MOST_HOLD_UP - most) * yielding;
        let left = num::smooth((m.reach_high - reach) / (habits::FADE * m.stature));
        let most = num::min(most * v.weight * left, self.borne(v));
        let least = num::min(habits::MOST_PULL * v.weight, self.borne(v));
        num::clamp(push, -least, most)
    }

    /// Force that the bike can be pushed or pulled with: not much more than the ground bears, as the
    /// bike alone gives way.
    fn borne(&self, v: &View) -> f64 {
        let load = self.wheels[0].load + self.wheels[1].load;
        let alone = habits::MOST_ALOFT * (1.0 - v.launch) + habits::AT_EDGE * v.launch;
        alone * v.weight + load
    }

    /// The body about the bike: to its angle at touch-down, turning evenly, and to long legs.
    fn in_air(&self, v: &View) -> DVec2 {
        let m = self.m;
        let Arm {
            reach,
            out,
            back,
            angle,
            rate,
            stretching,
        } = v.over;
        let t = v.to_go;
        let turn = 3.0 * (num::wrap(self.mind.forecast.swing - angle) / t - rate) / t;
        let stretch =
            (6.0 * (reach_down(m) - reach) / t - 4.0 * stretching) / t - reach * rate * rate;
        let force =
            (back * (reach * turn + 2.0 * stretching * rate) + out * stretch) * m.reduced_mass();
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
        let Arm {
            reach,
            out,
            stretching: rate,
            ..
        } = v.over;
        let past_low = m.reach_low - reach;
        let past_high = reach - m.reach_high;
        let push = if past_low > 0.0 {
            num::max(m.rider_mass * 1600.0 * past_low * (1.0 - 0.4 * rate), 0.0)
        } else if past_high > 0.0 {
            -num::max(m.rider_mass * 900.0 * past_high * (1.0 + 0.8 * rate), 0.0)
        } else {
            0.0
        };
        out * push
    }

    /// Couple that keeps the body's attitude and both wheels down.
    fn hold_lean(&self, v: &View, force: DVec2) -> f64 {
        let (m, y) = (self.m, self.y);
        let with = habits::LEAN_WITH_SLOPE;
        let w = habits::LEAN_RATE;
        let a = with * v.now.swing_acc
            + w * w * (with * v.now.swing - y[LEAN])
            + 2.0 * habits::LEAN_DAMPING * w * (with * v.now.swing_rate - y[V_LEAN]);
        let aloft = v.aloft();
        let mut even = -v.arm.perp_dot(force);
        if aloft > 0.0 {
            even -= aloft * m.bike_inertia * self.along_ground(v);
        }
        let load = m.mass() * self.lift(v) * (1.0 - aloft);
        let room = 0.5 * habits::SHIFT_SHARE * m.wheelbase * load;
        num::clamp(m.rider_inertia * a, even - room, even + room)
    }

    /// Pitch acceleration that keeps the bike in line with the ground under it, rad/s².
    fn along_ground(&self, v: &View) -> f64 {
        let stand = self.sight.stand(self.mind.lip);
        let ahead = 0.05;
        let (here, next) = (stand.read(v.rider.x), stand.read(v.rider.x + ahead));
        let rate = (next.bike - here.bike) / ahead * v.v_rider.x;
        let w = habits::IN_LINE;
        w * w * (here.bike - self.y[PITCH]) + 1.6 * w * (rate - self.y[V_PITCH])
    }

    /// Couple on the rider that turns the bike on its course.
    fn turn_bike(&self, v: &View, force: DVec2) -> f64 {
        let (m, y) = (self.m, self.y);
        let a = self.air_course(v);
        let bike = vec(y, BIKE);
        let tyres = (0..2)
            .map(|i| (self.pose.axle[i] - bike).perp_dot(self.wheels[i].force))
            .sum::<f64>();
        tyres - (v.rider - bike).perp_dot(force) - m.bike_inertia * a
    }

    /// Pitch acceleration that meets the slope at the touch-down, turning evenly.
    fn air_course(&self, v: &View) -> f64 {
        let (y, t) = (self.y, v.to_go);
        let slope = self.mind.forecast.slope + habits::NOSE;
        3.0 * (num::wrap(slope - y[PITCH]) / t - y[V_PITCH]) / t
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
