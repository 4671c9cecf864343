//! An elastic tyre that only pushes.
//!
//! ```text
//! N = (K d^1.5 + rim) (1 + χ ḋ)      d depth of the ground into the tyre's outline, m
//! ```
//!
//! The power 1.5 is that of a thin inextensible torus pressed on a plane (Renart and
//! Roura-Grabulosa 2019, Am. J. Phys. 87:102); K = p (2π/3) √(2R) follows for a closed torus at
//! pressure p and rolling radius R. The damping grows with the force itself (Hunt and Crossley
//! 1975, J. Appl. Mech. 42:440), so that a touch begins without a jump.

use crate::num;
use glam::DVec2;

/// Share of the tyre's height that may be pressed in before the rim bears on it.
///
/// Common practice, no source. Without it a hard case would sink the wheel without end.
const RIM_SHARE: f64 = 0.7;

/// Stiffness of the rim's bearing on the ground, N/m.
///
/// Some ten times a tyre's: hard, but no harder than the time step can follow.
const RIM_STIFFNESS: f64 = 6e5;

/// Damping, s/m: a tenth to a quarter of critical for a bike hopping on its tyres.
///
/// Common practice, no source; lip speeds hardly depend on it.
const DAMPING: f64 = 0.6;

/// Grip of a tyre on boards or packed dirt.
///
/// Wilson, *Bicycling Science* (from memory).
const GRIP: f64 = 0.9;

/// Slip force for each metre per second of slip, N s/m.
///
/// Stiff enough that rolling loses nothing to slip that could be seen, soft enough that it is not
/// what limits the time step.
const SLIP_STIFFNESS: f64 = 400.0;

/// One tyre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tyre {
    /// Radius of the undeformed outline, m.
    pub radius: f64,
    /// Height over the bead seat, m.
    pub height: f64,
    /// K of the force law, N/m^1.5.
    pub stiffness: f64,
    /// χ of the force law, s/m.
    pub damping: f64,
    /// Coefficient of friction on the ground.
    pub grip: f64,
}

/// Load and stored energy of a tyre pressed in.
#[derive(Clone, Copy, Debug, Default)]
pub struct Press {
    /// Force square to the ground, N.
    pub load: f64,
    /// The part of it that is damping, N.
    pub damping: f64,
    /// Energy stored, J.
    pub stored: f64,
}

impl Tyre {
    /// A tyre from its pressure, Pa.
    pub fn from_pressure(radius: f64, height: f64, pressure: f64) -> Self {
        Self {
            radius,
            height,
            stiffness: pressure * (2.0 * num::PI / 3.0) * (2.0 * radius).sqrt(),
            damping: DAMPING,
            grip: GRIP,
        }
    }

    /// A tyre from its stiffness, N/m, under a load of 400 N.
    pub fn from_stiffness(radius: f64, height: f64, stiffness: f64) -> Self {
        // F = K d^1.5 and dF/dd = 1.5 K d^0.5 give K = (k / 1.5)^1.5 / √F.
        let s = stiffness / 1.5;
        Self {
            radius,
            height,
            stiffness: s * s.sqrt() / 400.0_f64.sqrt(),
            damping: DAMPING,
            grip: GRIP,
        }
    }

    /// Depth under a load at rest, m.
    pub fn depth_under(&self, load: f64) -> f64 {
        num::pow(load / self.stiffness, 2.0 / 3.0)
    }

    /// Load at a depth `d` that grows by `rate` m/s.
    #[inline]
    pub fn press(&self, d: f64, rate: f64) -> Press {
        let root = d.sqrt();
        let mut force = self.stiffness * d * root;
        let mut stored = 0.4 * force * d;
        let past = d - RIM_SHARE * self.height;
        if past > 0.0 {
            force += RIM_STIFFNESS * past;
            stored += 0.5 * RIM_STIFFNESS * past * past;
        }
        let load = num::max(force * (1.0 + self.damping * rate), 0.0);
        Press {
            load,
            damping: load - force,
            stored,
        }
    }

    /// Force along the ground at a slip speed under a load: Coulomb's, rounded off at the middle.
    #[inline]
    pub fn friction(&self, load: f64, slip: f64) -> f64 {
        let most = self.grip * load;
        if most <= 0.0 {
            return 0.0;
        }
        let linear = SLIP_STIFFNESS * slip;
        -linear / (1.0 + (linear / most) * (linear / most)).sqrt()
    }
}

/// What the ground does to one wheel.
#[derive(Clone, Copy, Debug, Default)]
pub struct WheelForce {
    /// Force on the axle, N.
    pub force: DVec2,
    /// Sum of the loads, N.
    pub load: f64,
    /// Load-weighted sum of the normals, N; its direction is the ground's.
    pub normal: DVec2,
    /// Torque on the wheel, forward positive, N m.
    pub torque: f64,
    /// Power lost to rolling resistance, W.
    pub rolling: f64,
    /// Power lost to damping in the tyre, W.
    pub damping: f64,
    /// Power lost to slip, W.
    pub slip: f64,
    /// Energy stored, J.
    pub stored: f64,
    /// Curvature of the turn ridden, 1/m.
    pub turn: f64,
}
