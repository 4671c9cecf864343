//! The height of the body over the ground ahead: a convex optimum, found to the end.
//!
//! A sum over the knots of squares and of squares beyond limits. Newton's method with the limits that are
//! overstepped, each step as far as makes the sum least along it, ends at the optimum after some few
//! steps; from the plan before, mostly after one or two.

use super::super::band::{Band, MOST};
use super::super::habits;
use super::super::secants::crossing;
use super::super::sight::{Row, STEP};
use super::{Task, Times, around};
use crate::body::Mount;
use crate::constants::GRAVITY;
use crate::num;

/// Secants by which the length of a step is found.
const SECANTS: usize = 3;

/// What counts at one knot. Loads are a/g, the load less one, in body weights.
#[derive(Clone, Copy, Default)]
struct Knot {
    /// Height of standing, m, and the weight of it.
    stand: f64,
    ease: f64,
    /// Range of heights that the travel allows, m.
    low: f64,
    high: f64,
    /// Weights of the heights before, at and behind in a/g; nought at both ends.
    c: [f64; 3],
    /// The a/g that pays.
    pays: f64,
    /// Greatest a/g that legs push.
    most: f64,
}

/// The optimum's terms.
pub struct Heights {
    n: usize,
    knots: [Knot; MOST],
}

impl Heights {
    /// The terms for a stretch of standing rows.
    pub fn new(m: &Mount, rows: &[Row], times: &Times, task: &Task) -> Self {
        let n = rows.len();
        let share =
            habits::TRAVEL_SHARE * (habits::LEAST_STROKE + (1.0 - habits::LEAST_STROKE) * m.skill);
        let fold = share * (m.reach_usual - m.reach_low);
        let stretch = share * (m.reach_high - m.reach_usual);
        let push = habits::most_push(m);
        let lag = (habits::LATE * (1.0 - m.skill) * m.wheelbase / STEP).round() as usize;
        // How fast the legs shorten now; giving way they bear more, until that has come to an end.
        let giving = rows[0].slope * task.v_body.x - task.v_body.y;
        let mut passed = 0.0;
        let mut knots = [Knot::default(); MOST];
        for (i, (knot, row)) in knots.iter_mut().zip(rows).enumerate() {
            let sec = (1.0 + row.slope * row.slope).sqrt();
            let lip = in_lip(row.middle.x, task.lip[0], m.wheelbase);
            let inside = i > 0 && i + 1 < n;
            let near = num::smooth(habits::TAPER * (1.0 - i as f64 / n as f64));
            // Whoever lacks skill pushes for what lies behind.
            let late = &rows[i.saturating_sub(lag)];
            let landing = on_landing(row.middle.x, task.landing, m.wheelbase);
            let slope = late.slope + (row.slope - late.slope) * landing;
            let pump = task.pump + (num::max(task.push, task.pump) - task.pump) * landing;
            let left = giving - habits::STOPPING * GRAVITY * passed;
            let bears = push + (habits::MOST_HOLD_UP - push) * num::smooth(left / habits::YIELD);
            passed += if i + 1 < n { times.dt[i] } else { 0.0 };
            *knot = Knot {
                stand: row.z + pop(row.middle.x, task.lip[2], m) * sec,
                ease: habits::AT_EASE
                    + habits::IN_LIP * lip
                    + habits::AFTER_LANDING * behind(row.middle.x, task.landing, m.wheelbase),
                low: row.z - fold * sec,
                high: row.z + stretch * sec,
                c: if inside {
                    times.second(i).map(|c| c / GRAVITY)
                } else {
                    [0.0; 3]
                },
                pays: -pump * (1.0 - lip) * near * slope,
                most: bears / sec - 1.0,
            };
        }
        Self { n, knots }
    }

    /// a/g at a knot.
    #[inline]
    fn load(&self, z: &[f64; MOST], i: usize) -> f64 {
        if i == 0 {
            return 0.0;
        }
        around(&self.knots[i].c, z, i)
    }

    /// The optimum with the first two heights as they are in `z`, beginning from it.
    pub fn solve(&self, z: &mut [f64; MOST]) {
        let mut limits = self.limits(z);
        for _ in 0..habits::PASSES {
            let to = self.newton(z, &limits);
            let there = self.limits(&to);
            if there == limits {
                // The same limits count there: this is the optimum.
                *z = to;
                break;
            }
            let step = self.farthest(z, &to);
            let mut moved: f64 = 0.0;
            for i in 2..self.n {
                let d = step * (to[i] - z[i]);
                moved = num::max(moved, d.abs());
                z[i] += d;
            }
            if moved < habits::SETTLED {
                break;
            }
            limits = if step < 1.0 { self.limits(z) } else { there };
        }
    }

    /// Which limits are overstepped, a bit for each knot: too low, too high, too light, too heavy.
    fn limits(&self, z: &[f64; MOST]) -> [u64; 4] {
        let mut found = [0; 4];
        for i in 0..self.n {
            let k = &self.knots[i];
            found[0] |= u64::from(z[i] < k.low) << i;
            found[1] |= u64::from(z[i] > k.high) << i;
            if i > 0 && i + 1 < self.n {
                let load = self.load(z, i);
                found[2] |= u64::from(load < habits::LEAST_LOAD - 1.0) << i;
                found[3] |= u64::from(load > k.most) << i;
            }
        }
        found
    }

    /// The least of the sum, with these limits counted and no others.
    fn newton(&self, z: &[f64; MOST], limits: &[u64; 4]) -> [f64; MOST] {
        let n = self.n;
        let mut band = Band::new(n);
        let [low, high, light, heavy] = limits;
        for i in 0..n {
            let k = &self.knots[i];
            let over = |which: &u64| which >> i & 1 == 1;
            band.one(i, k.ease, k.stand);
            if over(low) {
                band.one(i, habits::BEYOND_TRAVEL, k.low);
            } else if over(high) {
                band.one(i, habits::BEYOND_TRAVEL, k.high);
            }
            if i == 0 || i + 1 == n {
                continue;
            }
            let (mut weight, mut pull) = (1.0, k.pays);
            if over(light) {
                weight += habits::BEYOND_LOAD;
                pull += habits::BEYOND_LOAD * (habits::LEAST_LOAD - 1.0);
            } else if over(heavy) {
                weight += habits::BEYOND_LOAD;
                pull += habits::BEYOND_LOAD * k.most;
            }
            band.three(i, k.c, weight, pull / weight);
        }
        let mut to = *z;
        band.solve([z[0], z[1]], &mut to);
        to
    }

    /// How far from `z` toward `to` the sum is least, 0 to 1.
    fn farthest(&self, z: &[f64; MOST], to: &[f64; MOST]) -> f64 {
        let full = self.slope(z, to, 1.0);
        if full <= 0.0 {
            return 1.0;
        }
        let now = self.slope(z, to, 0.0);
        if now >= 0.0 {
            return 1.0;
        }
        // The slope along the way grows from below nought to above.
        crossing([now, full], SECANTS, |share| self.slope(z, to, share))
    }

    /// Slope of the sum along the way from `z` to `to`, at a share of it.
    fn slope(&self, z: &[f64; MOST], to: &[f64; MOST], share: f64) -> f64 {
        let mut sum = 0.0;
        for i in 0..self.n {
            let k = &self.knots[i];
            let d = to[i] - z[i];
            let at = z[i] + share * d;
            let mut force = k.ease * (at - k.stand);
            if at < k.low {
                force += habits::BEYOND_TRAVEL * (at - k.low);
            } else if at > k.high {
                force += habits::BEYOND_TRAVEL * (at - k.high);
            }
            sum += force * d;
            if i == 0 || i + 1 == self.n {
                continue;
            }
            let now = self.load(z, i);
            let d = self.load(to, i) - now;
            let at = now + share * d;
            let mut force = at - k.pays;
            if at < habits::LEAST_LOAD - 1.0 {
                force += habits::BEYOND_LOAD * (at - habits::LEAST_LOAD + 1.0);
            } else if at > k.most {
                force += habits::BEYOND_LOAD * (at - k.most);
            }
            sum += force * d;
        }
        sum
    }
}

/// How much a place of the bike's middle is part of a lip that begins at `foot`, 0 to 1.
fn in_lip(middle: f64, foot: f64, wheelbase: f64) -> f64 {
    num::smooth((middle - foot) / wheelbase + 0.5)
}

/// The first two heights, from where the body is and how it moves.
pub fn beginning(origin: f64, task: &Task) -> [f64; 2] {
    let slope = num::clamp(
        task.v_body.y / num::max(task.v_body.x, 0.3),
        -habits::STEEPEST,
        habits::STEEPEST,
    );
    [0.0, STEP].map(|step| {
        let dx = origin + step - task.body.x;
        task.body.y + (slope + 0.5 * task.bend * dx) * dx
    })
}

/// How much a place of the bike's middle is part of a landing, 0 to 1.
fn on_landing(middle: f64, [from, to]: [f64; 2], wheelbase: f64) -> f64 {
    let before = num::smooth((middle - from) / wheelbase + 0.5);
    before * (1.0 - num::smooth((middle - to) / wheelbase + 0.5))
}

fn behind(middle: f64, [from, to]: [f64; 2], wheelbase: f64) -> f64 {
    if from.is_finite() {
        (1.0 - num::smooth((middle - to) / (4.0 * wheelbase)))
            * num::smooth((middle - to) / wheelbase + 0.5)
    } else {
        0.0
    }
}

/// How much taller than usual the body is meant to be at a place of the bike's middle before the rear wheel
/// leaves a lip at `edge`, m: the pop.
fn pop(middle: f64, edge: f64, m: &Mount) -> f64 {
    let way = habits::POP_WAY * m.wheelbase;
    let share = num::clamp((middle - edge) / way + 1.0, 0.0, 1.2);
    habits::POP * m.skill * m.stature * share * share
}

const _: () = assert!(MOST <= 64, "a bit for each knot");
