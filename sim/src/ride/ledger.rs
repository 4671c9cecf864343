//! Where the energy went.

use super::forces::World;
use super::numbers::numbers;
use super::step::Point;
use crate::body::{
    E_ABSORBED, E_BRAKE, E_DRAG, E_PUT_IN, E_ROLL_FRONT, E_ROLL_REAR, E_SLIP, E_TURN, E_TYRES, Y,
};
use crate::constants::GRAVITY;
use serde::Serialize;

numbers! {
    /// What was lost and put in since the start, J.
    ///
    /// A landing has no entry of its own: what it takes is what `tyres`, `slip` and `absorbed` gain in
    /// it.
    pub struct Spent {
        /// Rolling resistance of the rear wheel, with half the bearings.
        pub rolling_rear: f64,
        /// Rolling resistance of the front wheel, with half the bearings.
        pub rolling_front: f64,
        /// Drag of the air; negative where the wind pushed more than it held.
        pub drag: f64,
        /// Damping in the tyres.
        pub tyres: f64,
        /// Slip of the tyres.
        pub slip: f64,
        /// Taken up by the rider's legs and arms.
        pub absorbed: f64,
        /// Given by the rider's legs and arms.
        pub put_in: f64,
        /// The brake.
        pub brake: f64,
        /// Worked against the press of turns.
        pub turn: f64,
    }
}

impl Spent {
    pub(super) fn of(y: &Y) -> Self {
        Self {
            rolling_rear: y[E_ROLL_REAR],
            rolling_front: y[E_ROLL_FRONT],
            drag: y[E_DRAG],
            tyres: y[E_TYRES],
            slip: y[E_SLIP],
            absorbed: y[E_ABSORBED],
            put_in: y[E_PUT_IN],
            brake: y[E_BRAKE],
            turn: y[E_TURN],
        }
    }

    /// Entry by entry, what `with` makes of this one's and the other's.
    fn each(&self, other: &Self, with: impl Fn(f64, f64) -> f64) -> Self {
        let (own, others) = (self.values(), other.values());
        Self::from(core::array::from_fn(|i| with(own[i], others[i])))
    }

    /// This and another.
    pub fn plus(&self, other: &Self) -> Self {
        self.each(other, |a, b| a + b)
    }

    /// This without another: what was spent between two moments.
    pub fn less(&self, earlier: &Self) -> Self {
        self.each(earlier, |a, b| a - b)
    }

    /// So many times this.
    pub fn scaled(&self, by: f64) -> Self {
        self.each(self, |a, _| a * by)
    }

    /// All that was lost less what was put in, J: by so much the energy has sunk since the start.
    pub fn net(&self) -> f64 {
        let on_wheels = self.rolling_rear + self.rolling_front + self.tyres + self.slip;
        on_wheels + self.drag + self.absorbed + self.brake + self.turn - self.put_in
    }
}

/// Energy at the start and at the end, and all that was lost or put in between, J.
///
/// `start − end` is what [`Spent::net`] gives, but for the error of the integration.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Ledger {
    /// Kinetic, spin, potential and stored energy at the start.
    pub start: f64,
    /// The same at the end.
    pub end: f64,
    /// What went between.
    #[serde(flatten)]
    pub spent: Spent,
    /// Weight of rider and bike, N: a loss over it is a height of start ramp.
    pub weight: f64,
}

impl Ledger {
    pub(super) fn new(start: f64, world: &World, here: &Point) -> Self {
        Self {
            start,
            end: world.energy(&here.y, &here.felt.wheels),
            spent: Spent::of(&here.y),
            weight: world.m.mass() * GRAVITY,
        }
    }

    /// What does not add up at the end, J.
    pub fn residue(&self) -> f64 {
        self.start - self.end - self.spent.net()
    }
}
