//! The free bodies and their rates of change.
//!
//! ```text
//! bike    m_b a = Σ tyres + m_b g − F          I_b θ'' = Σ (axle − b) × tyre − (r − b) × F − C
//! rider   m_r a = F + m_r g + drag             I_r φ'' = C
//! wheel   I_w ω' = torque of grip, rolling and brake
//! ```
//!
//! F is the force and C the couple of the rider's legs and arms on the rider. Tyre forces act at
//! the axles, because a free wheel passes no torque to the frame; the brake's does pass.

use super::ground::{Ground, sense};
use crate::body::{
    BIKE, E_ABSORBED, E_BRAKE, E_DRAG, E_PUT_IN, E_ROLL_FRONT, E_ROLL_REAR, E_SLIP, E_TURN,
    E_TYRES, Mount, N, PLACES, Pose, RIDER, SPIN, V_BIKE, V_LEAN, V_PITCH, V_RIDER, WheelForce, Y,
    put, vec,
};
use crate::constants::GRAVITY;
use crate::num;
use crate::rider::{Mind, Senses, Sight, Wrench};
use glam::DVec2;

/// Loads and forces at one moment, beside the rates.
#[derive(Clone, Copy, Debug)]
pub struct Felt {
    /// What the ground does to the wheels.
    pub wheels: [WheelForce; 2],
    /// What the rider does.
    pub rider: Wrench,
}

/// Rider, bike and ground, and what stands between two looks ahead.
pub struct World<'a> {
    pub m: &'a Mount,
    pub ground: &'a Ground,
    pub sight: &'a Sight,
    /// What the rider has in mind.
    pub mind: Mind,
    /// Force the brake is pulled for, N.
    pub brake: f64,
}

impl World<'_> {
    /// Rates of change of a state, and what was felt.
    #[inline]
    pub fn rates(&self, t: f64, y: &Y) -> (Y, Felt) {
        let m = self.m;
        let pose = Pose::of(m, y);
        let wheels = self.wheels_at(&pose, y);
        let rider = Senses {
            m,
            sight: self.sight,
            pose: &pose,
            y,
            wheels: &wheels,
            t,
            mind: &self.mind,
        }
        .act();
        let mut d = [0.0; N];
        d[..PLACES].copy_from_slice(&y[PLACES..2 * PLACES]);
        let press = turn_press(&wheels, &pose);
        let brake = self.brake * m.tyre.radius * sense(y[SPIN]);
        self.bodies(&mut d, y, &pose, &wheels, &rider, press, brake);
        self.energies(&mut d, y, &wheels, &rider, press, brake);
        (d, Felt { wheels, rider })
    }

    /// What the ground does to the wheels in a state.
    pub fn wheels(&self, y: &Y) -> [WheelForce; 2] {
        self.wheels_at(&Pose::of(self.m, y), y)
    }

    #[inline]
    fn wheels_at(&self, pose: &Pose, y: &Y) -> [WheelForce; 2] {
        let wheel = |i| {
            self.ground
                .wheel(self.m, pose.axle[i], pose.v_axle[i], y[SPIN + i])
        };
        [wheel(0), wheel(1)]
    }

    #[allow(clippy::too_many_arguments)]
    fn bodies(
        &self,
        d: &mut Y,
        y: &Y,
        pose: &Pose,
        wheels: &[WheelForce; 2],
        rider: &Wrench,
        press: DVec2,
        brake: f64,
    ) {
        let m = self.m;
        let fall = press - DVec2::Y * GRAVITY;
        let bike = vec(y, BIKE);
        let tyres = wheels[0].force + wheels[1].force;
        put(d, V_BIKE, (tyres - rider.force) / m.bike_mass + fall);
        let moment = (pose.axle[0] - bike).perp_dot(wheels[0].force)
            + (pose.axle[1] - bike).perp_dot(wheels[1].force)
            - (vec(y, RIDER) - bike).perp_dot(rider.force)
            - rider.couple
            - brake;
        d[V_PITCH] = moment / m.bike_inertia;
        put(
            d,
            V_RIDER,
            (rider.force + self.drag(y)) / m.rider_mass + fall,
        );
        d[V_LEAN] = rider.couple / m.rider_inertia;
        d[SPIN] = (wheels[0].torque - brake) / m.wheel_inertia;
        d[SPIN + 1] = wheels[1].torque / m.wheel_inertia;
    }

    fn drag(&self, y: &Y) -> DVec2 {
        let air = vec(y, V_RIDER) - DVec2::X * self.m.tailwind;
        air * (-self.m.drag * num::length(air))
    }

    fn energies(
        &self,
        d: &mut Y,
        y: &Y,
        wheels: &[WheelForce; 2],
        rider: &Wrench,
        press: DVec2,
        brake: f64,
    ) {
        let v_rider = vec(y, V_RIDER);
        let v_bike = vec(y, V_BIKE);
        let arm = vec(y, RIDER) - vec(y, BIKE);
        let apart = v_rider - v_bike - arm.perp() * y[V_PITCH];
        let power = rider.force.dot(apart) + rider.couple * (y[V_LEAN] - y[V_PITCH]);
        d[E_ROLL_REAR] = wheels[0].rolling;
        d[E_ROLL_FRONT] = wheels[1].rolling;
        d[E_DRAG] = -self.drag(y).dot(v_rider);
        d[E_TYRES] = wheels[0].damping + wheels[1].damping;
        d[E_SLIP] = wheels[0].slip + wheels[1].slip;
        d[E_ABSORBED] = -num::min(power, 0.0);
        d[E_PUT_IN] = num::max(power, 0.0);
        // The brake works between wheel and frame.
        d[E_BRAKE] = brake * (y[SPIN] + y[V_PITCH]);
        d[E_TURN] = -press.dot(v_rider * self.m.rider_mass + v_bike * self.m.bike_mass);
    }

    /// Kinetic, potential and stored energy, J.
    pub fn energy(&self, y: &Y, wheels: &[WheelForce; 2]) -> f64 {
        let m = self.m;
        let spin = y[SPIN] * y[SPIN] + y[SPIN + 1] * y[SPIN + 1];
        0.5 * m.bike_mass * vec(y, V_BIKE).length_squared()
            + 0.5 * m.rider_mass * vec(y, V_RIDER).length_squared()
            + 0.5 * m.bike_inertia * y[V_PITCH] * y[V_PITCH]
            + 0.5 * m.rider_inertia * y[V_LEAN] * y[V_LEAN]
            + 0.5 * m.wheel_inertia * spin
            + GRAVITY * (m.bike_mass * y[BIKE + 1] + m.rider_mass * y[RIDER + 1])
            + wheels[0].stored
            + wheels[1].stored
    }
}

/// Acceleration into the ground that a turn adds at the ideal bank: √(g² + (v²/r)²) − g.
#[inline]
fn turn_press(wheels: &[WheelForce; 2], pose: &Pose) -> DVec2 {
    let turn = wheels[0].turn;
    if turn == 0.0 || wheels[0].load <= 0.0 {
        return DVec2::ZERO;
    }
    let side = pose.v_centre.length_squared() * turn;
    let extra = (GRAVITY * GRAVITY + side * side).sqrt() - GRAVITY;
    wheels[0].normal * (-extra / wheels[0].load)
}
