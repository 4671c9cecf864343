//! A limb of two bones: where its joint is when both ends are given.

use glam::DVec2;
use sim::num;

/// Which way a joint bends, seen along the limb from its root to its tip.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bend {
    /// To the left, as a knee does from hip to foot, riding to the right.
    Left,
    /// To the right, as an elbow does from shoulder to hand.
    Right,
}

/// A limb laid between two places.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limb {
    /// Hip or shoulder.
    pub root: DVec2,
    /// Knee or elbow.
    pub joint: DVec2,
    /// Foot or hand. Short of the place asked for where that is out of reach.
    pub tip: DVec2,
}

impl Limb {
    /// Lays bones of two lengths from `root` toward `tip`: both keep their length whatever is
    /// asked.
    pub fn lay(root: DVec2, tip: DVec2, upper: f64, lower: f64, bend: Bend) -> Self {
        let way = tip - root;
        let asked = way.length();
        let along = if asked > 1e-9 { way / asked } else { DVec2::X };
        let far = num::clamp(asked, (upper - lower).abs() + 1e-6, upper + lower);
        let foot = (far * far + upper * upper - lower * lower) / (2.0 * far);
        let out = (upper * upper - foot * foot).max(0.0).sqrt();
        let side = match bend {
            Bend::Left => along.perp(),
            Bend::Right => -along.perp(),
        };
        Self {
            root,
            joint: root + along * foot + side * out,
            tip: root + along * far,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bones_keep_their_length_within_reach_and_beyond_it() {
        for x in [0.01, 0.2, 0.5, 0.86, 2.0] {
            let limb = Limb::lay(DVec2::ZERO, DVec2::new(x, -0.1), 0.42, 0.45, Bend::Left);
            assert!((limb.joint.length() - 0.42).abs() < 1e-6, "{x}");
            assert!((limb.joint.distance(limb.tip) - 0.45).abs() < 1e-5, "{x}");
        }
    }

    #[test]
    fn a_knee_bends_forward_under_a_rider_who_goes_right() {
        let knee = Limb::lay(DVec2::Y, DVec2::new(0.0, 0.2), 0.5, 0.5, Bend::Left).joint;
        assert!(knee.x > 0.1, "{knee}");
    }
}
