//! How earth pushes a wall and holds it: Rankine's theory.
//!
//! Level ground behind a plumb, smooth wall: at a depth z under a load q the earth pushes with
//! `Ka (γ z + q)`, holds with `Kp γ z`, and standing water pushes with `γw z` besides;
//! `Ka = (1 − sin φ)/(1 + sin φ) = 1/Kp`. Behind a landing the ground falls away, which pushes less.
//!
//! # References
//! Rankine 1857, Phil. Trans. R. Soc. 147; any textbook of soil mechanics.

use crate::build::soil::Fill;
use crate::num;

/// Coefficient of active earth pressure at a friction angle, rad.
pub fn active(friction: f64) -> f64 {
    let s = num::sin(friction);
    (1.0 - s) / (1.0 + s)
}

/// Coefficient of passive earth pressure at a friction angle, rad.
pub fn passive(friction: f64) -> f64 {
    1.0 / active(friction)
}

/// The pressure on a wall: at a depth z below its top, `even + growing · z`, Pa.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pressure {
    /// What is there at the top, Pa: the load's part.
    pub even: f64,
    /// What is added with each metre, Pa/m.
    pub growing: f64,
}

impl Pressure {
    /// From a fill under a load, Pa.
    pub fn of(fill: &Fill, load: f64) -> Self {
        let ka = active(fill.friction);
        Self {
            even: ka * load,
            growing: ka * fill.weight + fill.water,
        }
    }

    /// At a depth, Pa.
    pub fn at(&self, depth: f64) -> f64 {
        self.even + self.growing * depth
    }

    /// On all of a wall to a depth, N for each metre along it.
    pub fn thrust(&self, depth: f64) -> f64 {
        depth * (self.even + 0.5 * self.growing * depth)
    }

    /// Moment of that about the depth, N·m for each metre along it.
    pub fn moment(&self, depth: f64) -> f64 {
        depth * depth * (0.5 * self.even + self.growing * depth / 6.0)
    }

    /// Height over the depth at which it acts as one force, m; a third of the way up where there is none.
    pub fn arm(&self, depth: f64) -> f64 {
        let thrust = self.thrust(depth);
        if thrust > 0.0 {
            self.moment(depth) / thrust
        } else {
            depth / 3.0
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::build::soil::{Wetness, fill};
    use crate::plan::Soil;

    /// A wall of no height is not pushed; earth without friction pushes and holds as water does.
    #[test]
    fn at_the_limits_it_is_nothing_or_water() {
        let loam = fill(Soil::Loam, Wetness::Dry);
        let push = Pressure::of(&loam, 2400.0);
        assert_eq!(
            [push.thrust(0.0), push.moment(0.0), push.arm(0.0)],
            [0.0; 3]
        );
        let slurry = Fill {
            friction: 0.0,
            ..loam
        };
        assert_eq!([active(0.0), passive(0.0)], [1.0; 2]);
        assert_eq!(Pressure::of(&slurry, 0.0).growing, slurry.weight);
    }

    /// Force and moment against sums over thin strips.
    #[test]
    fn the_whole_is_the_sum_of_its_strips() {
        let push = Pressure::of(&fill(Soil::Clay, Wetness::Flooded), 2400.0);
        let (depth, strips) = (1.3, 2000);
        let mut sums = [0.0; 2];
        for i in 0..strips {
            let strip = depth / f64::from(strips);
            let z = (f64::from(i) + 0.5) * strip;
            sums[0] += push.at(z) * strip;
            sums[1] += push.at(z) * strip * (depth - z);
        }
        assert!((sums[0] / push.thrust(depth) - 1.0).abs() < 1e-6);
        assert!((sums[1] / push.moment(depth) - 1.0).abs() < 1e-6);
    }
}
