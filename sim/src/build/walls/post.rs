//! Posts sunk into the ground: how deep, what a tie takes off them, how they bend.

use super::earth::{Pressure, active, passive};
use crate::build::soil::Fill;
use crate::num;

/// Depth, m, of a post that stands by itself, pushed with a force, N, so high over the ground, in ground that
/// bears so much, Pa for each metre of depth, against its diagonal, m: `d = A/2 (1 + √(1 + 4.36 h/A))`,
/// `A = 2.34 P/(S₁ b)`, S₁ what the ground bears at a third of the depth.
///
/// # References
/// International Building Code, section 1807.3.2.1, posts that are not held at the ground.
pub fn alone(force: f64, height: f64, bearing: f64, diagonal: f64) -> f64 {
    let needed = |depth: f64| {
        let a = 2.34 * force / (bearing * depth / 3.0 * diagonal);
        0.5 * a * (1.0 + (1.0 + 4.36 * height / a).sqrt())
    };
    if force <= 0.0 {
        return 0.0;
    }
    // The deeper it stands the less it needs: halve the stretch in which both are the same.
    let (mut low, mut high) = (0.0, 1.0);
    while needed(high) > high {
        high *= 2.0;
    }
    for _ in 0..60 {
        let mid = 0.5 * (low + high);
        if needed(mid) > mid {
            low = mid;
        } else {
            high = mid;
        }
    }
    high
}

/// Factor of safety of the ground that holds a post's foot (2; EM 1110-2-2504 asks 1.5 of passive pressure, from
/// memory).
const FOOT_SAFETY: f64 = 2.0;

/// What the ground may hold at a post's foot, N for each metre of its length and metre of depth: passive less
/// active pressure before a strip wider than the post, since earth arches between posts.
///
/// # References
/// Trenching and Shoring Manual, California Department of Transportation: a post is as good as one 0.08 φ times
/// as wide, φ in degrees, but no more than 3 times (from memory).
pub fn foot_grows(ground: &Fill, width: f64) -> f64 {
    let arching = num::clamp(0.08 * num::degrees(ground.friction), 1.0, 3.0);
    let k = passive(ground.friction) - active(ground.friction);
    arching * width * ground.holding * k / FOOT_SAFETY
}

/// A post that is tied at one height: its depth, the pull of its tie and how it bends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tied {
    /// Depth in the ground, m.
    pub depth: f64,
    /// Pull of the tie, N, level.
    pub pull: f64,
    /// Greatest bending moment, N·m.
    pub moment: f64,
}

/// A post behind a strip of wall `wide`, m, and `high`, m, tied at a height, m, over ground that holds its foot
/// with `grows`, N/m². None where the tie is at the ground, or the push goes over it.
///
/// The foot turns about the tie until push and hold balance there (free earth support):
/// `P (t − a) = g d²/2 · (t + 2d/3)`; what the foot does not take the tie does.
///
/// # References
/// Free earth support: Das, Principles of Foundation Engineering, chapter on sheet-pile walls.
pub fn tied(push: &Pressure, [wide, high]: [f64; 2], tie: f64, grows: f64) -> Option<Tied> {
    let (thrust, arm) = (wide * push.thrust(high), push.arm(high));
    let over = thrust * (tie - arm);
    if tie <= 0.0 || grows <= 0.0 || over < 0.0 {
        return None;
    }
    let held = |d: f64| 0.5 * grows * d * d * (tie + 2.0 * d / 3.0);
    let (mut low, mut deep) = (0.0, 1.0);
    while held(deep) < over {
        deep *= 2.0;
    }
    for _ in 0..60 {
        let mid = 0.5 * (low + deep);
        if held(mid) < over {
            low = mid;
        } else {
            deep = mid;
        }
    }
    let pull = thrust - 0.5 * grows * deep * deep;
    let post = Bent {
        push,
        wide,
        high,
        tie,
        grows,
        pull,
    };
    Some(Tied {
        depth: deep,
        pull,
        moment: post.most(deep),
    })
}

/// A tied post in balance.
struct Bent<'a> {
    push: &'a Pressure,
    wide: f64,
    high: f64,
    tie: f64,
    grows: f64,
    pull: f64,
}

/// Places at which the moment is looked at.
const PLACES: u32 = 64;

impl Bent<'_> {
    /// Moment at a height over the ground, N·m; below it where negative.
    fn at(&self, y: f64) -> f64 {
        let pull = self.pull * num::max(0.0, self.tie - y);
        let depth = self.high - y;
        if y >= 0.0 {
            return pull - self.wide * self.push.moment(depth);
        }
        let push = self.wide * self.push.thrust(self.high) * (self.push.arm(self.high) - y);
        pull - push + self.grows * (-y * y * y) / 6.0
    }

    /// The greatest, from the foot to the top.
    fn most(&self, depth: f64) -> f64 {
        let step = (self.high + depth) / f64::from(PLACES);
        let places = (0..=PLACES).map(|i| self.at(f64::from(i) * step - depth).abs());
        places.chain([self.at(self.tie).abs()]).fold(0.0, num::max)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::build::soil::{Wetness, fill};
    use crate::plan::Soil;

    fn loam() -> (Pressure, f64) {
        let loam = fill(Soil::Loam, Wetness::Wet);
        (Pressure::of(&loam, 2400.0), foot_grows(&loam, 0.1))
    }

    #[test]
    fn a_post_that_nothing_pushes_needs_no_depth() {
        assert_eq!(alone(0.0, 1.0, 15e3, 0.14), 0.0);
        let (push, grows) = loam();
        assert!(tied(&push, [1.2, 0.5], 0.0, grows).is_none());
    }

    /// Force and moment of what pushes and what holds are nothing together, and the foot's end bears no moment.
    #[test]
    fn a_tied_post_is_in_balance() {
        let (push, grows) = loam();
        let (wide, high, tie) = (1.2, 1.1, 0.55);
        let post = tied(&push, [wide, high], tie, grows).expect("it stands");
        println!("{post:?}");
        let foot = 0.5 * grows * post.depth * post.depth;
        assert!((post.pull + foot - wide * push.thrust(high)).abs() < 1e-6);
        let bent = Bent {
            push: &push,
            wide,
            high,
            tie,
            grows,
            pull: post.pull,
        };
        assert!(bent.at(high).abs() < 1e-9 && bent.at(-post.depth).abs() < 1e-6);
        assert!((bent.at(-1e-9) - bent.at(0.0)).abs() < 1e-4);
        assert!(post.moment > bent.at(tie).abs() - 1e-9);
    }
}
