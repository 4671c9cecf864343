//! What the body will do over the ground ahead: its height and its place over the bike, by an optimum.
//!
//! The height z(x) of the body is planned at even steps of x, from where the body is and how it moves.
//! With v the speed foreseen along x, the legs bear n = 1 + a/g body weights, a = d²z/dt². Over a
//! stretch they do the work −∫ n s' dx (in body weights, s the standing height): to gain, be heavy where
//! the ground falls and light where it rises. The plan makes least
//!
//! ```text
//! ∫ ½ (a/g + k s')² + ½ w (z − s)² dx
//! ```
//!
//! k = 0 only soaks up: the load is as even as the travel of the legs allows. w is next to nothing within
//! the travel and large beyond it, and larger in a lip. Loads below the least and above the most that legs
//! push count as well.
//!
//! The place is the body's angle σ about the bike's middle. The legs push through the middle where
//! σ − σ''/ν² is the bike's pitch, ν² = load/(reduced mass · reach): the plan comes as near to that as it
//! can from how the body moves now, and is in place for the launch as the front wheel passes the edge.
//! Slow slopes are then ridden square to the bike, quick ones under a body that stays.

mod edge;
mod height;
mod swing;

use super::band::MOST;
use super::habits;
use super::launch::Off;
use super::sight::{Row, STEP, Sight, Stand, between};
use crate::body::{Legs, Mount};
use crate::constants::GRAVITY;
use crate::num;
use glam::DVec2;
use height::Heights;
use swing::Swing;

/// What a plan is made for.
#[derive(Clone, Copy, Debug)]
pub struct Task {
    /// Time now, s.
    pub t: f64,
    /// The body's place and velocity.
    pub body: DVec2,
    pub v_body: DVec2,
    /// Speed of the common mass centre, m/s.
    pub speed: f64,
    /// How its way bends as it was planned last, d²z/dx², 1/m.
    pub bend: f64,
    /// Angle of the body about the middle, back positive, rad, its rate, rad/s, and how that was planned
    /// last to change, rad/s².
    pub swing: [f64; 3],
    /// x of the lip's foot, and of the bike's middle as front and rear wheel pass its edge; infinite
    /// where there is none.
    pub lip: [f64; 3],
    /// Slope dz/dx of the lip at its edge.
    pub exit: f64,
    /// How far behind the middle the body is to be as the front wheel passes the edge, m.
    pub back: f64,
    /// k of the plan.
    pub pump: f64,
    /// x of the knuckle of the landing behind, and of its hollow's end; both far back where there is none.
    pub landing: [f64; 2],
    /// The least k on it.
    pub push: f64,
}

/// Fewest knots of a plan: a bend takes three.
const FEWEST: usize = 3;

/// Times from knot to knot.
#[derive(Clone)]
pub struct Times {
    dt: [f64; MOST],
}

impl Times {
    /// Weights of the second difference in time at knot `i`, 1/s².
    #[inline(always)]
    fn second(&self, i: usize) -> [f64; 3] {
        let (a, b) = (self.dt[i - 1], self.dt[i]);
        let both = 2.0 / (a + b);
        let (down, up) = (both / a, both / b);
        [down, -down - up, up]
    }
}

/// The sum of a value and its neighbours at knot `i`, each with its weight.
#[inline(always)]
fn around(w: &[f64; 3], v: &[f64; MOST], i: usize) -> f64 {
    w[0] * v[i - 1] + w[1] * v[i] + w[2] * v[i + 1]
}

/// The plan, at knots that are rows of the table it was made over.
#[derive(Clone)]
pub struct Plan {
    /// When it was made, s.
    pub made: f64,
    /// How it all is to move as the front wheel passes the next edge, where that is within sight.
    pub off: Option<Off>,
    /// Share of the pumping meant that strength allows.
    pub strength: f64,
    /// x of the body where the next is made, m.
    pub until: f64,
    /// x of the first knot, m.
    origin: f64,
    n: usize,
    z: [f64; MOST],
    slope: [f64; MOST],
    bend: [f64; MOST],
    swing: Swing,
    times: Times,
    /// What was planned before, at the same knots; how long from `made` on it still counts, s.
    old: Box<[Now; MOST]>,
    fade: f64,
}

/// The plan at one place.
#[derive(Clone, Copy, Debug, Default)]
pub struct Now {
    /// Height of the body, m.
    pub z: f64,
    /// Its slope dz/dx.
    pub slope: f64,
    /// d²z/dx², 1/m.
    pub bend: f64,
    /// The body's angle about the middle, rad, with its rates.
    pub swing: f64,
    pub swing_rate: f64,
    pub swing_acc: f64,
}

impl Now {
    /// A share of the way from this to another.
    #[inline(always)]
    fn toward(&self, to: &Self, share: f64) -> Self {
        let mix = |a: f64, b: f64| a + share * (b - a);
        Self {
            z: mix(self.z, to.z),
            slope: mix(self.slope, to.slope),
            bend: mix(self.bend, to.bend),
            swing: mix(self.swing, to.swing),
            swing_rate: mix(self.swing_rate, to.swing_rate),
            swing_acc: mix(self.swing_acc, to.swing_acc),
        }
    }
}

impl Plan {
    /// Nothing planned yet.
    pub fn none() -> Self {
        Self {
            made: f64::NEG_INFINITY,
            until: f64::NEG_INFINITY,
            off: None,
            strength: 1.0,
            origin: 0.0,
            n: 0,
            z: [0.0; MOST],
            slope: [0.0; MOST],
            bend: [0.0; MOST],
            swing: Swing::none(),
            times: Times { dt: [0.0; MOST] },
            old: Box::new([Now::default(); MOST]),
            fade: 0.0,
        }
    }

    /// Whether to plan anew at a time, s, with the body at `x`: where the body has come to the next of even steps along
    /// the line, so that a ride a little quicker is planned at the same places; or after a while.
    pub fn due(&self, t: f64, x: f64) -> bool {
        x >= self.until || t >= self.made + habits::LOOK - 1e-9
    }

    /// The plan at `x`, as it is come to from the plan before it.
    #[inline]
    pub fn meant(&self, x: f64, t: f64) -> Now {
        self.faded(&self.at(x), x, t)
    }

    /// What is planned at `x`, mixed with what was planned before.
    #[inline(always)]
    fn faded(&self, new: &Now, x: f64, t: f64) -> Now {
        if t >= self.made + self.fade {
            return *new;
        }
        let w = num::clamp((t - self.made) / self.fade, 0.0, 1.0);
        let (i, f) = self.place(x);
        self.old[i].toward(&self.old[i + 1], f).toward(new, w)
    }

    /// The knot before `x` and the share of a step beyond it.
    #[inline(always)]
    fn place(&self, x: f64) -> (usize, f64) {
        between((x - self.origin) / STEP, self.n)
    }

    /// The plan at `x`.
    #[inline]
    pub fn at(&self, x: f64) -> Now {
        let (i, f) = self.place(x);
        self.knot(i).toward(&self.knot(i + 1), f)
    }

    /// The plan at `x`, where it reaches there.
    pub fn known(&self, x: f64) -> Option<Now> {
        let far = self.origin + (self.n.max(1) - 1) as f64 * STEP;
        (self.n > 2 && x >= self.origin && x < far).then(|| self.at(x))
    }

    /// Plans anew. With the edge of a lip in sight, the body's place for it is sought as well.
    pub fn make(&mut self, m: &Mount, sight: &Sight, lip: usize, task: &mut Task, fresh: bool) {
        let stand = sight.stand(lip);
        // On even steps of the line, so that nothing hangs on where the body is between two of them.
        let origin = (task.body.x / STEP).floor() * STEP;
        let (first, _) = stand.at(origin);
        // Beyond the table there is no less to plan than at its end.
        let first = first.min(stand.rows.len().saturating_sub(FEWEST + 1));
        let n = MOST.min(stand.rows.len() - first - 1);
        let mut rows = [Row::default(); MOST];
        let rows = &mut rows[..n];
        for (i, row) in rows.iter_mut().enumerate() {
            *row = stand.read(origin + i as f64 * STEP);
        }
        let mut heights = [0.0; MOST];
        let mut angles = [0.0; MOST];
        // How many of the knots the plan before reaches, and what it says there.
        let mut before = [Now::default(); MOST];
        let mut reached = 0;
        for (i, row) in rows.iter().enumerate() {
            let x = origin + i as f64 * STEP;
            if let Some(now) = self.known(x) {
                (heights[i], angles[i]) = (now.z, now.swing);
                if !fresh {
                    before[i] = self.faded(&now, x, task.t);
                    reached = i + 1;
                }
            } else {
                (heights[i], angles[i]) = (row.z, row.bike);
            }
        }
        (self.made, self.origin, self.n) = (task.t, origin, n);
        self.until = ((task.body.x / habits::WAY).floor() + 1.0) * habits::WAY;
        self.swing.angle = angles;
        self.under(m, stand, rows);
        for _ in 0..if fresh { 2 } else { 1 } {
            self.foresee(m, rows, task, &heights);
            self.swing
                .solve(m, rows, (&self.times, &heights), origin, task);
            self.under(m, stand, rows);
            self.rise(m, rows, task, &mut heights);
            self.off = self.seek(m, (sight, lip), rows, task);
        }
        self.derive();
        let share =
            habits::POWER_SHARE * habits::mean_power(m) * m.skill / num::max(self.power(rows), 0.1);
        self.strength = num::clamp(self.strength * share.sqrt(), habits::LEAST_PUMP, 1.0);
        self.fade = if fresh { 0.0 } else { habits::GO_OVER };
        self.old[..reached].copy_from_slice(&before[..reached]);
        for i in reached..n {
            self.old[i] = self.knot(i);
        }
    }

    /// Mean power of the legs, W/kg of the body: what they give less what they take.
    fn power(&self, rows: &[Row]) -> f64 {
        let (mut work, mut time) = (0.0, 0.0);
        for i in 1..rows.len() - 1 {
            let a = around(&self.times.second(i), &self.z, i);
            let long = |k: usize| self.z[k] - rows[k].z;
            work += (a + GRAVITY) * (long(i + 1) - long(i - 1)) * 0.5;
            time += self.times.dt[i];
        }
        work / num::max(time, 0.1)
    }

    /// The plan at a knot.
    #[inline(always)]
    fn knot(&self, i: usize) -> Now {
        Now {
            z: self.z[i],
            slope: self.slope[i],
            bend: self.bend[i],
            swing: self.swing.angle[i],
            swing_rate: self.swing.rate[i],
            swing_acc: self.swing.acc[i],
        }
    }

    /// Times from knot to knot, by energy, with the body at `heights`.
    fn foresee(&mut self, m: &Mount, rows: &[Row], task: &Task, heights: &[f64; MOST]) {
        let f = m.rider_mass / m.mass();
        let centre = |i: usize| f * heights[i] + (1.0 - f) * rows[i].middle.y;
        // The heights foreseen need not be those of now: only their change counts.
        let here = centre(0);
        let mut last = f64::NAN;
        for i in 0..rows.len() {
            let v2 = task.speed * task.speed - 2.0 * GRAVITY * (centre(i) - here);
            let v2 = num::max(v2, habits::SLOWEST * habits::SLOWEST);
            let next = (i + 1).min(rows.len() - 1);
            let rise = (heights[next] - heights[i]) / STEP;
            let v = (v2 / (1.0 + rise * rise)).sqrt();
            if i > 0 {
                self.times.dt[i - 1] = 2.0 * STEP / (last + v);
            }
            last = v;
        }
    }

    /// The rows as the body's angle has it: not square over the bike, but back or forward of that.
    fn under(&self, m: &Mount, stand: &Stand, rows: &mut [Row]) {
        let reach = m.reach_usual;
        for (i, row) in rows.iter_mut().enumerate() {
            let x = self.origin + i as f64 * STEP;
            let most = habits::MOST_TILT;
            let over = num::clamp(self.swing.angle[i] - row.bike, -most, most);
            let (sin, cos) = turned(row, over);
            *row = stand.read(x + reach * (sin - row.sin));
            row.z = row.middle.y + reach * cos;
        }
        let last = rows.len() - 1;
        for i in 1..last {
            rows[i].slope = (rows[i + 1].z - rows[i - 1].z) / (2.0 * STEP);
        }
        rows[0].slope = rows[1].slope;
        rows[last].slope = rows[last - 1].slope;
    }

    /// The heights: from `heights` on to the optimum, for whoever's legs do something.
    fn rise(&mut self, m: &Mount, rows: &[Row], task: &Task, heights: &mut [f64; MOST]) {
        if m.legs == Legs::Passive {
            for (z, row) in self.z.iter_mut().zip(rows) {
                *z = row.z;
            }
        } else {
            [heights[0], heights[1]] = height::beginning(self.origin, task);
            Heights::new(m, rows, &self.times, task).solve(heights);
            self.z = *heights;
        }
        *heights = self.z;
    }

    fn derive(&mut self) {
        let n = self.n;
        for i in 1..n - 1 {
            self.slope[i] = (self.z[i + 1] - self.z[i - 1]) / (2.0 * STEP);
            self.bend[i] = (self.z[i + 1] - 2.0 * self.z[i] + self.z[i - 1]) / (STEP * STEP);
        }
        self.slope[0] = (self.z[1] - self.z[0]) / STEP;
        self.slope[n - 1] = (self.z[n - 1] - self.z[n - 2]) / STEP;
        self.bend[0] = self.bend[1];
        self.bend[n - 1] = self.bend[n - 2];
    }
}

/// Sine and cosine of a row's pitch and `over` rad more, at most `MOST_TILT`: good to 5e-5 without a call.
#[inline]
fn turned(row: &Row, over: f64) -> (f64, f64) {
    let q = over * over;
    let sin = over * (1.0 - q / 6.0 * (1.0 - q / 20.0));
    let cos = 1.0 - 0.5 * q * (1.0 - q / 12.0 * (1.0 - q / 30.0));
    let level = num::max(1.0 - row.sin * row.sin, 0.0).sqrt();
    (row.sin * cos + level * sin, level * cos - row.sin * sin)
}
