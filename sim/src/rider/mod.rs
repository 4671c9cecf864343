//! The rider: a person who sees the ground ahead, plans, and pushes.

mod band;
mod flight;
mod ground_by_x;
mod habits;
mod launch;
mod plan;
mod secants;
mod sight;
mod track;
mod turning;

pub use sight::Sight;
pub use track::{Senses, Wrench};

use crate::body::{Legs, Mount, Pose, RIDER, V_RIDER, WheelForce, Y, vec};
use crate::num;
use flight::Forecast;
use launch::Launch;
use plan::{Plan, Task};
use turning::Turning;

/// What the rider has in mind between two looks ahead.
#[derive(Clone)]
pub struct Mind {
    /// Index of the lip whose edge the rear wheel has not passed.
    pub lip: usize,
    pub(crate) plan: Plan,
    pub(crate) forecast: Forecast,
    pub(crate) launch: Launch,
    /// Whether being off the ground counts as flight: behind a lip's edge, until it ends.
    pub(crate) flying: bool,
    /// Whether the wheels were off the ground at the last look.
    pub(crate) aloft: bool,
}

impl Mind {
    /// Before the first look.
    pub fn new() -> Self {
        Self {
            lip: 0,
            plan: Plan::none(),
            forecast: Forecast {
                t: 0.0,
                slope: 0.0,
                swing: 0.0,
            },
            launch: Launch::default(),
            flying: false,
            aloft: false,
        }
    }

    /// Whether a flight has ended since the last look: a wheel has come down.
    pub fn surprised(&self, wheels: &[WheelForce; 2]) -> bool {
        self.flying && self.aloft && wheels.iter().any(|w| w.load > 0.0)
    }

    /// Whether the body has come to where to plan anew, on the ground.
    pub fn comes_to(&self, y: &Y) -> bool {
        y[RIDER] >= self.plan.until && !(self.aloft && self.flying)
    }

    /// The rider looks ahead, on the way to lip `lip`. Says whether anything has changed in the mind.
    pub fn look(
        &mut self,
        m: &Mount,
        sight: &Sight,
        t: f64,
        y: &Y,
        wheels: &[WheelForce; 2],
        lip: usize,
    ) -> bool {
        let pose = Pose::of(m, y);
        // A lip is left only once the rear wheel's load is gone: the last of it still turns the bike.
        let held = lip.checked_sub(1).filter(|&i| {
            let edge = sight.lips[i].edge;
            wheels[0].load > 0.0 && num::length(pose.axle[0] - edge) < m.tyre.radius
        });
        let lip = held.unwrap_or(lip);
        let passed = lip != self.lip;
        self.lip = lip;
        let aloft = wheels.iter().all(|w| w.load <= 0.0);
        let left = lip.checked_sub(1).and_then(|i| sight.lips.get(i));
        let over_gap = left.is_some_and(|l| pose.middle.x < l.knuckle.x);
        let landed = self.flying && self.aloft && !aloft;
        let before = (self.aloft, self.flying);
        // What has become a flight stays one until it ends; a hop off the ground is none.
        self.flying = over_gap || (aloft && self.flying);
        self.aloft = aloft;
        let mut changed = before != (self.aloft, self.flying);
        changed |= self.look_at_lip(m, sight, t, y, &pose);
        if passed {
            self.launch = Launch::default();
        }
        let due = self.plan.due(t, y[RIDER]);
        if (due && !(aloft && self.flying)) || landed || passed {
            self.make_plan(m, sight, t, y, &pose, landed || passed);
            changed = true;
        }
        changed
    }

    /// The launch over the next lip and the flight from it or from the last one, where they are at hand.
    fn look_at_lip(&mut self, m: &Mount, sight: &Sight, t: f64, y: &Y, pose: &Pose) -> bool {
        let next = sight.lips.get(self.lip);
        let past = next.map_or(f64::NEG_INFINITY, |l| (pose.axle[1] - l.edge).dot(l.along));
        let launching = next.filter(|_| past > -0.5 * m.wheelbase);
        let left = self.lip.checked_sub(1).and_then(|i| sight.lips.get(i));
        let Some(over) = launching.or(left.filter(|_| self.aloft)) else {
            return false;
        };
        let back = if self.aloft {
            let last = self.forecast.swing - habits::SWING_DOWN * self.forecast.slope;
            0.5 * (last + flight::set_back(m, pose, y, &self.forecast, t))
        } else {
            0.0
        };
        self.forecast = flight::forecast(m, sight, (pose, y), t, over.knuckle.x, back);
        if past > 0.0 {
            self.launch.extra = launch::extra(m, sight, self.lip, pose, y, self.launch.push);
        }
        true
    }

    fn make_plan(&mut self, m: &Mount, sight: &Sight, t: f64, y: &Y, pose: &Pose, fresh: bool) {
        let (body, v_body) = (vec(y, RIDER), vec(y, V_RIDER));
        let turning = Turning::of(m, pose, y);
        let next = sight.lips.get(self.lip);
        let before = if fresh { None } else { self.plan.known(body.x) };
        let mut task = Task {
            t,
            body,
            v_body,
            speed: num::length(pose.v_centre),
            bend: before.map_or(0.0, |now| now.bend),
            swing: [
                turning.swing,
                turning.rate,
                before.map_or(0.0, |now| now.swing_acc),
            ],
            lip: next.map_or([f64::INFINITY; 3], |l| [l.foot.x, l.off[0], l.off[1]]),
            exit: next.map_or(0.0, |l| l.along.y / num::max(l.along.x, 0.1)),
            back: self.launch.back,
            pump: if m.legs == Legs::Pumping {
                habits::PUMP * m.skill * self.plan.strength
            } else {
                habits::SOAK[0] + m.skill * (habits::SOAK[1] - habits::SOAK[0])
            },
            landing: self.lip.checked_sub(1).map_or([f64::NEG_INFINITY; 2], |i| {
                [sight.lips[i].knuckle.x, sight.lips[i].end.x]
            }),
            push: habits::LANDING,
        };
        self.plan
            .make(m, sight, self.lip, &mut task, before.is_none());
        if let Some(off) = self.plan.off {
            self.launch.back = task.back;
            self.launch.push = off.push;
        }
    }
}
