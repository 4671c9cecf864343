//! The equations of a bike whose wheels are bound to the ground's parallel curve.
//!
//! Unknown at a moment are the rear axle's acceleration a along the curve, the pitch's θ'', and at
//! each wheel the load N along the curve's normal n and the grip T along its tangent t. With d the
//! way from the rear axle to a mass, w the way of the rider in the bike's frame, c the way from the
//! rear axle to the front one and ρ a wheel's moment of rolling resistance and bearing:
//!
//! The rider's place in the bike's frame, and lean ψ against it, are functions of the rear wheel's
//! place, so that the rider too has a part that goes with a.
//!
//! ```text
//! Σ m (acceleration − g)     = Σ (N n + T t) + drag
//! Σ m d × (acceleration − g) + Σ I θ'' + I_r ψ'' = c × (N n + T t)_front + d_r × drag
//! I_w v'/r                   = −T r − ρ                               at each wheel
//! θ''                        = what the curve asks of it              while both wheels are bound
//! ```

use crate::body::Body;
use crate::motion::Held;
use glam::DVec2;
use nalgebra::{SMatrix, SVector};
use sim::constants::GRAVITY;
use tests::curve::{Curve, Spot};

/// Where everything is and how it moves.
#[derive(Clone, Copy)]
pub struct Place {
    /// Rear wheel's centre along the curve, and its speed.
    pub rear: f64,
    pub speed: f64,
    pub pitch: f64,
    pub turning: f64,
    /// Front wheel's centre along the curve, and its speed, while it is bound.
    pub front: Option<(f64, f64)>,
}

/// What follows from a place.
#[derive(Clone, Copy, Debug)]
pub struct Found {
    /// Of the rear axle along the curve, m/s².
    pub acceleration: f64,
    pub pitch_acceleration: f64,
    pub loads: [f64; 2],
    /// Power lost to rolling and bearings, and to drag, W.
    pub rolling: f64,
    pub drag: f64,
}

/// A body on a curve.
pub struct Constrained<'a> {
    pub body: &'a Body,
    pub curve: &'a Curve,
}

/// One mass: how far from the rear axle, and its acceleration: by a, and without a and θ''.
struct Mass {
    mass: f64,
    from_rear: DVec2,
    velocity: DVec2,
    by_a: DVec2,
    known: DVec2,
}

impl Constrained<'_> {
    /// The place with both wheels bound, from where the rear one is.
    pub fn place(&self, rear: f64, speed: f64) -> Place {
        let stand = self.curve.stand(rear, speed, self.body.wheelbase);
        Place {
            rear,
            speed,
            pitch: stand.pitch,
            turning: stand.turning,
            front: Some((stand.front, stand.front_speed)),
        }
    }

    fn held(&self, p: &Place) -> Held {
        self.body.rider[usize::from(p.front.is_none())].at(p.rear)
    }

    /// Masses at a place: bike, rider.
    fn masses(&self, p: &Place, rear: &Spot) -> [Mass; 2] {
        let body = self.body;
        let held = self.held(p);
        let [along, across] = [
            DVec2::from_angle(p.pitch),
            DVec2::from_angle(p.pitch).perp(),
        ];
        let turned = |v: DVec2| along * v.x + across * v.y;
        let half = DVec2::X * (0.5 * body.wheelbase);
        let mass = |mass, at: [DVec2; 3]| {
            let [d, by_way, bend] = [turned(at[0] + half), turned(at[1]), turned(at[2])];
            Mass {
                mass,
                from_rear: d,
                velocity: (rear.tangent + by_way) * p.speed + d.perp() * p.turning,
                by_a: rear.tangent + by_way,
                known: (rear.tangent.perp() * rear.curvature + bend) * (p.speed * p.speed)
                    - d * (p.turning * p.turning)
                    + by_way.perp() * (2.0 * p.speed * p.turning),
            }
        };
        [
            mass(body.bike_mass, [body.bike_at, DVec2::ZERO, DVec2::ZERO]),
            mass(body.rider_mass, held.at),
        ]
    }

    /// Common mass centre and its velocity.
    pub fn centre(&self, p: &Place) -> (DVec2, DVec2) {
        let rear = self.curve.at(p.rear);
        let masses = self.masses(p, &rear);
        let total = self.body.mass();
        let sum =
            |f: fn(&Mass) -> DVec2| masses.iter().map(|m| f(m) * m.mass).sum::<DVec2>() / total;
        (rear.point + sum(|m| m.from_rear), sum(|m| m.velocity))
    }

    /// Kinetic and potential energy, J.
    pub fn energy(&self, p: &Place) -> f64 {
        let rear = self.curve.at(p.rear);
        let body = self.body;
        let of = |m: &Mass| {
            m.mass * (0.5 * m.velocity.length_squared() + GRAVITY * (rear.point + m.from_rear).y)
        };
        let lean = p.turning + self.held(p).lean[1] * p.speed;
        let front = p.front.map_or(0.0, |(_, speed)| speed);
        let spins = (p.speed * p.speed + front * front) / (body.radius * body.radius);
        self.masses(p, &rear).iter().map(of).sum::<f64>()
            + 0.5 * body.bike_inertia * p.turning * p.turning
            + 0.5 * body.rider_inertia * lean * lean
            + 0.5 * body.wheel_inertia * spins
    }

    /// Accelerations and loads at a place.
    pub fn solve(&self, p: &Place) -> Found {
        let body = self.body;
        let rear = self.curve.at(p.rear);
        let masses = self.masses(p, &rear);
        let air = masses[1].velocity - DVec2::X * body.tailwind;
        let drag = air * (-body.drag * air.length());
        // Columns: a, θ'', N and T of the rear wheel, N and T of the front one.
        let mut left = SMatrix::<f64, 6, 6>::zeros();
        let mut right = SVector::<f64, 6>::zeros();
        let mut add = |row: usize, values: [f64; 6], known: f64| {
            for (column, value) in values.into_iter().enumerate() {
                left[(row, column)] += value;
            }
            right[row] += known;
        };
        for m in &masses {
            let (a, turn) = (m.by_a * m.mass, m.from_rear.perp() * m.mass);
            let known = (m.known + DVec2::Y * GRAVITY) * -m.mass;
            add(0, [a.x, turn.x, 0.0, 0.0, 0.0, 0.0], known.x);
            add(1, [a.y, turn.y, 0.0, 0.0, 0.0, 0.0], known.y);
            let d = m.from_rear;
            add(
                2,
                [d.perp_dot(a), d.perp_dot(turn), 0.0, 0.0, 0.0, 0.0],
                d.perp_dot(known),
            );
        }
        let push = rear.tangent.perp();
        add(0, [0.0, 0.0, -push.x, -rear.tangent.x, 0.0, 0.0], drag.x);
        add(1, [0.0, 0.0, -push.y, -rear.tangent.y, 0.0, 0.0], drag.y);
        let inertia = body.bike_inertia + body.rider_inertia;
        let [_, twist, bend] = self.held(p).lean.map(|l| l * body.rider_inertia);
        let lever = masses[1].from_rear.perp_dot(drag);
        let bend = bend * p.speed * p.speed;
        add(2, [twist, inertia, 0.0, 0.0, 0.0, 0.0], lever - bend);
        let spin = body.wheel_inertia / (body.radius * body.radius);
        add(
            3,
            [spin, 0.0, body.rolling[rear.surface], 1.0, 0.0, 0.0],
            -body.bearing(p.speed),
        );
        let mut surfaces = [rear.surface; 2];
        if let Some((at, speed)) = p.front {
            let front = self.curve.at(at);
            surfaces[1] = front.surface;
            for row in self.front_rows(p, &rear, &front, speed) {
                add(row.0, row.1, row.2);
            }
        } else {
            add(4, [0.0, 0.0, 0.0, 0.0, 1.0, 0.0], 0.0);
            add(5, [0.0, 0.0, 0.0, 0.0, 0.0, 1.0], 0.0);
        }
        let x = left
            .lu()
            .solve(&right)
            .expect("the equations have one solution");
        self.found(p, &x, surfaces, -drag.dot(masses[1].velocity))
    }

    /// The front wheel's part of each equation.
    fn front_rows(
        &self,
        p: &Place,
        rear: &Spot,
        front: &Spot,
        speed: f64,
    ) -> [(usize, [f64; 6], f64); 5] {
        let body = self.body;
        let long = body.wheelbase;
        let along = DVec2::from_angle(p.pitch);
        let (t, n) = (front.tangent, front.tangent.perp());
        let between = along * long;
        let (turned_n, turned_t) = (between.perp_dot(n), between.perp_dot(t));
        // The front axle's acceleration along the curve is ratio · a + rest.
        let onto = t.dot(along);
        let ratio = rear.tangent.dot(along) / onto;
        let bend_rear = rear.tangent.perp() * (p.speed * p.speed * rear.curvature);
        let bend_front = n * (speed * speed * front.curvature);
        let rest = ((bend_rear - bend_front).dot(along) - long * p.turning * p.turning) / onto;
        let across = along.perp() / long;
        let by_a = (t * ratio - rear.tangent).dot(across);
        let by_none = (t * rest + bend_front - bend_rear).dot(across);
        let spin = body.wheel_inertia / (body.radius * body.radius);
        let rolling = body.rolling[front.surface];
        [
            (0, [0.0, 0.0, 0.0, 0.0, -n.x, -t.x], 0.0),
            (1, [0.0, 0.0, 0.0, 0.0, -n.y, -t.y], 0.0),
            (2, [0.0, 0.0, 0.0, 0.0, -turned_n, -turned_t], 0.0),
            (
                4,
                [spin * ratio, 0.0, 0.0, 0.0, rolling, 1.0],
                -body.bearing(speed) - spin * rest,
            ),
            (5, [-by_a, 1.0, 0.0, 0.0, 0.0, 0.0], by_none),
        ]
    }

    fn found(&self, p: &Place, x: &SVector<f64, 6>, surfaces: [usize; 2], drag: f64) -> Found {
        let body = self.body;
        let speeds = [p.speed, p.front.map_or(0.0, |(_, speed)| speed)];
        let loads = [x[2], x[4]];
        let lost = |i: usize| {
            let bearing = if i == 0 || p.front.is_some() {
                body.bearing(speeds[i])
            } else {
                0.0
            };
            (body.rolling[surfaces[i]] * loads[i] + bearing) * speeds[i]
        };
        Found {
            acceleration: x[0],
            pitch_acceleration: x[1],
            loads,
            rolling: lost(0) + lost(1),
            drag,
        }
    }
}
