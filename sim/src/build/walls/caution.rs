//! What has to be said beside a box.

use serde::Serialize;

/// A rule of a building code that many local codes follow.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Rule {
    /// International Residential Code 2009, section R404.4: a wall that is not held at its top and retains more
    /// than 24 inches of earth has to be designed. It counts earth above the ground before the wall.
    Designed,
    /// International Building Code, section 105.2: a wall over 4 feet needs a permit. It counts from the bottom
    /// of the footing, here of the posts; a wall with a load on its fill needs one whatever its height.
    Permit,
}

impl Rule {
    /// Both, the lower first.
    pub const ALL: [Rule; 2] = [Rule::Designed, Rule::Permit];

    /// Height over which it speaks, m.
    pub fn over(self) -> f64 {
        match self {
            Rule::Designed => 0.610,
            Rule::Permit => 1.219,
        }
    }
}

/// A part that may be loaded too much.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// A board of the sheeting between posts.
    Sheeting,
    /// A post.
    Post,
    /// A rod, or the wood under its washer.
    Rod,
    /// A buried timber between rods.
    Deadman,
}

/// What has to be said beside a box.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Caution {
    /// Local codes usually ask for an engineer or a permit over a height.
    Review {
        /// Which rule.
        rule: Rule,
        /// Over which height, m.
        over: f64,
        /// The wall's own, counted as the rule does, m.
        height: f64,
    },
    /// Riders load the fill: codes that exempt low walls exempt none that bears a load.
    Surcharge,
    /// No anchor that can be dug by hand holds the front wall.
    NoAnchor,
    /// A part bears more than it may.
    Overloaded {
        /// Which.
        part: Part,
    },
    /// A hole deeper than is dug by hand.
    DeepHole {
        /// How deep, m.
        depth: f64,
    },
    /// Standing water brings the front wall's anchors under their factor of safety.
    Floods {
        /// What is left of it.
        factor: f64,
    },
    /// Clay pushes hard, drains badly and swells: another soil is better inside a box.
    Clay,
    /// Water has to run out at the bottom: gaps between the boards, coarse gravel behind them.
    Drain,
    /// Every tie is fixed before the fill goes in, in thin layers, nobody under the wall.
    TieFirst,
    /// Timber in the ground rots: to be looked at each year, and the box taken down in time.
    Rot,
    /// Old railway sleepers hold creosote: not where children play.
    OldSleepers,
    /// Splinters: arrises are taken off where hands and knees come.
    Splinters,
    /// Nails and rod ends that stand out: driven flush, or covered.
    Nails,
    /// An edge to fall from.
    Edge {
        /// How high, m.
        height: f64,
    },
    /// Cables and pipes in the ground: to be found before anything is dug.
    Services,
}
