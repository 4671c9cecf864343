//! The second formulation's ride: from rest or a push-off to the edge of the first lip.

use crate::constrained::{Constrained, Place};
use differential_equations::prelude::*;
use glam::DVec2;

/// Relative and absolute error accepted in a step.
const TOLERANCE: f64 = 1e-11;

/// Longest step, s: the end is found within a step, between whose ends the ground may bend.
const LONGEST_STEP: f64 = 5e-3;

/// Time between two points of a track, s.
const STEP: f64 = 1e-3;

/// Longest ride, s.
const LONGEST: f64 = 60.0;

/// A moment of the ride.
#[derive(Clone, Copy, Debug)]
pub struct Moment {
    pub t: f64,
    /// Middle between the axles.
    pub middle: DVec2,
    /// Common mass centre and its velocity.
    pub centre: DVec2,
    pub velocity: DVec2,
    pub pitch: f64,
    pub turning: f64,
    pub loads: [f64; 2],
    /// Whether the front wheel is bound.
    pub front: bool,
    /// Kinetic and potential energy, and what was lost to rolling and to drag, J.
    pub energy: f64,
    pub rolled: f64,
    pub dragged: f64,
}

/// Rear place and speed, pitch and its rate while the front wheel is free, losses.
type State = [f64; 6];

/// One stretch of the ride: both wheels bound, or the rear one only.
struct Stretch<'a> {
    bike: &'a Constrained<'a>,
    front: bool,
}

impl Stretch<'_> {
    fn place(&self, y: &State) -> Place {
        if self.front {
            return self.bike.place(y[0], y[1]);
        }
        Place {
            rear: y[0],
            speed: y[1],
            pitch: y[2],
            turning: y[3],
            front: None,
        }
    }

    fn moment(&self, t: f64, y: &State) -> Moment {
        let p = self.place(y);
        let (centre, velocity) = self.bike.centre(&p);
        let half = DVec2::from_angle(p.pitch) * (0.5 * self.bike.body.wheelbase);
        Moment {
            t,
            middle: self.bike.curve.at(p.rear).point + half,
            centre,
            velocity,
            pitch: p.pitch,
            turning: p.turning,
            loads: self.bike.solve(&p).loads,
            front: self.front,
            energy: self.bike.energy(&p),
            rolled: y[4],
            dragged: y[5],
        }
    }

    /// Rides from a state until the wheel that leads has come to the curve's end.
    fn ride(&self, from: f64, y: State) -> (Vec<Moment>, f64, State) {
        let solution = IVP::ode(self, from, LONGEST, y)
            .even(STEP)
            .event(self)
            .method(
                ExplicitRungeKutta::dop853()
                    .rtol(TOLERANCE)
                    .atol(TOLERANCE)
                    .h_max(LONGEST_STEP)
                    .max_steps(1_000_000),
            )
            .solve()
            .expect("the ride can be integrated");
        let last = solution.t.len() - 1;
        let (t, y) = (solution.t[last], solution.y[last]);
        let short = self.event(t, &y);
        assert!(
            short.abs() < 1e-4,
            "the ride stops {short} m before the end"
        );
        // The last step goes on past the end; its even points are no part of the ride.
        let inside = solution.iter().filter(|(at, _)| **at <= t);
        let moments = inside.map(|(t, y)| self.moment(*t, y)).collect();
        (moments, t, y)
    }
}

impl ODE<f64, State> for Stretch<'_> {
    fn diff(&self, _: f64, y: &State, d: &mut State) {
        let p = self.place(y);
        let found = self.bike.solve(&p);
        *d = [
            y[1],
            found.acceleration,
            0.0,
            0.0,
            found.rolling,
            found.drag,
        ];
        if !self.front {
            (d[2], d[3]) = (y[3], found.pitch_acceleration);
        }
    }
}

impl Event<f64, State> for Stretch<'_> {
    fn config(&self) -> EventConfig {
        EventConfig::new(CrossingDirection::Positive, Some(1))
    }

    fn event(&self, _: f64, y: &State) -> f64 {
        let p = self.place(y);
        p.front.map_or(p.rear, |(at, _)| at) - self.bike.curve.length
    }
}

/// A whole ride.
pub struct Track {
    /// Both wheels on the ground, every millisecond and as the front one comes to the end.
    pub both: Vec<Moment>,
    /// The rear wheel alone, until it comes to the lip's edge.
    pub rear: Vec<Moment>,
}

impl Track {
    /// Rides from where the rear wheel's centre is along the curve, at a speed in m/s.
    pub fn ride(bike: &Constrained, rear: f64, speed: f64) -> Self {
        let start = [rear, speed, 0.0, 0.0, 0.0, 0.0];
        let (both, t, y) = Stretch { bike, front: true }.ride(0.0, start);
        let last = both[both.len() - 1];
        let free = [y[0], y[1], last.pitch, last.turning, y[4], y[5]];
        let rear = if bike.curve.ends_in_a_lip {
            Stretch { bike, front: false }.ride(t, free).0
        } else {
            Vec::new()
        };
        Self { both, rear }
    }

    /// Speed of the common mass centre with both wheels bound and the bike's middle at `x`, m/s.
    pub fn speed_at(&self, x: f64) -> Option<f64> {
        let i = self.both.partition_point(|m| m.middle.x < x);
        let (a, b) = (self.both.get(i.checked_sub(1)?)?, self.both.get(i)?);
        let share = (x - a.middle.x) / (b.middle.x - a.middle.x);
        Some(a.velocity.length() * (1.0 - share) + b.velocity.length() * share)
    }
}
