//! One wall of a box: posts, boards between them, and how much each bears.

use super::earth::Pressure;
use super::post::{alone, foot_grows, tied};
use super::stock::WallStock;
use crate::build::softwood::{BENDING, PERMANENT, section_modulus};
use crate::build::soil::{Wetness, earth, fill};
use crate::num;
use crate::plan::Soil;
use serde::Serialize;

/// Least depth of a post, m (common practice, no source).
const LEAST_SUNK: f64 = 0.45;

/// Most bays of a wall that are tried.
const MOST_BAYS: u32 = 60;

/// A post of a wall.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Post {
    /// Where it stands, m: behind the front face in a side wall, from the middle in the front wall.
    pub at: f64,
    /// Height over the ground, m.
    pub height: f64,
    /// How much of the wall leans on it, m along the wall.
    pub wide: f64,
    /// Depth in the ground, m.
    pub depth: f64,
    /// The tie that holds it; none where the ground alone does.
    pub tie: Option<Tie>,
    /// Bending, as a share of what it may bear.
    pub bending: f64,
}

impl Post {
    /// One that nothing leans on yet.
    fn upright(at: f64, height: f64, wide: f64) -> Self {
        Self {
            at,
            height,
            wide,
            depth: LEAST_SUNK,
            tie: None,
            bending: 0.0,
        }
    }
}

/// What holds a post over the ground.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Tie {
    /// Height over the ground, m.
    pub height: f64,
    /// Greatest level pull, N, in dry fill and in wet.
    pub pull: f64,
}

/// A wall.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Wall {
    /// Length, m.
    pub length: f64,
    /// Distance between posts, m.
    pub spacing: f64,
    /// The posts, from the front on, or from the left.
    pub posts: Vec<Post>,
    /// Bending of the lowest board of the highest bay, as a share of what it may bear.
    pub sheeting: f64,
}

impl Wall {
    /// The most that a post bends, as a share of what it may.
    pub fn post_bending(&self) -> f64 {
        self.posts.iter().map(|p| p.bending).fold(0.0, num::max)
    }

    /// The hardest pull on a tie, N, level.
    pub fn hardest_pull(&self) -> f64 {
        let pulls = self.posts.iter().filter_map(|p| p.tie);
        pulls.map(|tie| tie.pull).fold(0.0, num::max)
    }
}

/// What a box is designed against.
pub(super) struct Design<'a> {
    pub stock: &'a WallStock,
    pub soil: Soil,
}

/// The states that a wall has to stand; a flooded one is kept from it by its drainage.
pub(super) const STANDS: [Wetness; 2] = [Wetness::Dry, Wetness::Wet];

impl Design<'_> {
    /// The push of the fill in a state.
    pub fn push(&self, wetness: Wetness) -> Pressure {
        Pressure::of(&fill(self.soil, wetness), self.stock.surcharge)
    }

    /// What the ground holds at a post's foot, N/m².
    pub fn foot(&self, wetness: Wetness) -> f64 {
        foot_grows(&fill(self.soil, wetness), self.stock.post[1])
    }

    fn may_bear(&self) -> f64 {
        let [thick, wide] = self.stock.post;
        section_modulus(wide, thick) * BENDING * PERMANENT
    }

    /// A post before so much of a wall, tied at a share of its height where the ground alone does not hold it.
    fn post(&self, at: f64, height: f64, wide: f64, share: f64) -> Post {
        let by_itself = self.standing(at, height, wide);
        if by_itself.depth <= self.stock.deepest && by_itself.bending <= 1.0 {
            return by_itself;
        }
        let tie = share * height;
        let states = STANDS.iter().filter_map(|&wetness| {
            tied(&self.push(wetness), [wide, height], tie, self.foot(wetness))
        });
        let mut post = Post::upright(at, height, wide);
        let mut pull = 0.0;
        for state in states {
            post.depth = num::max(post.depth, state.depth);
            post.bending = num::max(post.bending, state.moment / self.may_bear());
            pull = num::max(pull, state.pull);
        }
        post.tie = Some(Tie { height: tie, pull });
        post
    }

    /// The same without a tie. Where it bends most lies no deeper than a third of its depth.
    fn standing(&self, at: f64, height: f64, wide: f64) -> Post {
        let [a, b] = self.stock.post;
        let mut post = Post::upright(at, height, wide);
        for wetness in STANDS {
            let push = self.push(wetness);
            let (force, arm) = (wide * push.thrust(height), push.arm(height));
            let depth = alone(force, arm, earth(self.soil).bearing, num::hypot(a, b));
            post.depth = num::max(post.depth, depth);
            let moment = force * (arm + depth / 3.0);
            post.bending = num::max(post.bending, moment / self.may_bear());
        }
        post
    }

    /// Bending of a board whose middle lies so deep in the fill, between posts so far apart.
    fn sheeting(&self, depth: f64, span: f64) -> f64 {
        let [thick, _] = self.stock.board;
        let hardest = STANDS.iter().map(|&w| self.push(w).at(depth));
        let pressure = hardest.fold(0.0, num::max);
        let may_bear = section_modulus(1.0, thick) * BENDING * PERMANENT;
        pressure * span * span / 8.0 / may_bear
    }

    /// A wall of a length with as few posts as bear it; its height at a place along it; tied at a share of that.
    pub fn wall(&self, length: f64, share: f64, height: impl Fn(f64) -> f64) -> Wall {
        let fewest = num::max(1.0, (length / self.stock.farthest).ceil()) as u32;
        let mut bays = fewest;
        loop {
            let wall = self.with_bays(bays, length, share, &height);
            let bears = wall.sheeting <= 1.0 && wall.post_bending() <= 1.0;
            if bears || bays >= num::max(f64::from(fewest), f64::from(MOST_BAYS)) as u32 {
                return wall;
            }
            bays += 1;
        }
    }

    fn with_bays(&self, bays: u32, length: f64, share: f64, height: impl Fn(f64) -> f64) -> Wall {
        let spacing = length / f64::from(bays);
        let post = |i: u32| {
            let at = spacing * f64::from(i);
            let end = i == 0 || i == bays;
            let wide = if end { 0.5 * spacing } else { spacing };
            self.post(at, height(at), wide, share)
        };
        let posts: Vec<Post> = (0..=bays).map(post).collect();
        let highest = posts.iter().map(|p| p.height).fold(0.0, num::max);
        let middle = num::max(0.0, highest - 0.5 * self.stock.board[1]);
        Wall {
            length,
            spacing,
            sheeting: self.sheeting(middle, spacing),
            posts,
        }
    }
}
