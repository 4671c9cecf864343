//! What the rider sees coming: the path the body would like to travel over the ground ahead.
//!
//! The ground is averaged over a stretch before and behind each point, twice, so that its
//! curvature is smooth; never across a lip or onto one. The body's path runs a standing height
//! over that, square to it. Where the average leaves the ground by more than the legs can fold or
//! stretch, it gives way to the ground. The path is a table over x, read by interpolation.

use super::habits;
use super::mount::{Legs, Mount};
use crate::num;
use crate::profile::{Intent, Profile};
use glam::DVec2;

/// Distance between two points of the table, m.
const STEP: f64 = 0.05;

/// Half the stretch that derived tables are averaged over, m: a few steps, to take out their grain.
const FINE: f64 = 0.1;

/// The body's path at one place.
#[derive(Clone, Copy, Debug)]
pub struct Aim {
    /// Unit tangent.
    pub along: DVec2,
    /// Unit normal, up.
    pub normal: DVec2,
    /// A point of the path.
    pub point: DVec2,
    /// Curvature, 1/m, positive in a hollow.
    pub curvature: f64,
}

/// Height, slope and its change, by x.
#[derive(Clone, Copy, Default)]
struct Row {
    z: f64,
    slope: f64,
    bend: f64,
}

/// Rows at even steps of x.
struct Table {
    origin: f64,
    rows: Vec<Row>,
}

impl Table {
    #[inline]
    fn read(&self, x: f64) -> Row {
        let at = num::clamp((x - self.origin) / STEP, 0.0, (self.rows.len() - 2) as f64);
        let i = at as usize;
        let f = num::clamp((x - self.origin) / STEP - i as f64, 0.0, 1.0);
        let (a, b) = (&self.rows[i], &self.rows[i + 1]);
        Row {
            z: a.z + f * (b.z - a.z),
            slope: a.slope + f * (b.slope - a.slope),
            bend: a.bend + f * (b.bend - a.bend),
        }
    }
}

/// The body's path, and the ground as the eye takes it in.
pub struct Path {
    /// One table for each stretch from a landing to the next lip.
    stretches: Vec<Table>,
    /// Ground to come down on, by x, gaps filled with the landing's slope carried back.
    landing: Table,
    /// The lips, in riding order.
    pub lips: Vec<Lip>,
}

/// A lip as its rider sees it.
#[derive(Clone, Copy, Debug)]
pub struct Lip {
    /// The edge.
    pub edge: DVec2,
    /// Unit tangent at the edge.
    pub along: DVec2,
    /// Curvature at the edge, 1/m.
    pub curvature: f64,
    /// The knuckle.
    pub knuckle: DVec2,
    /// Heading of the landing, rad.
    pub slope: f64,
}

/// How far a lip's tangent is carried on, and a landing's slope back, m.
const BEYOND: f64 = 3.0;

impl Path {
    /// The path of a mount's rider over a profile.
    pub fn new(profile: &Profile, m: &Mount) -> Self {
        let lips: Vec<Lip> = profile
            .lips
            .iter()
            .map(|l| Lip {
                edge: l.edge,
                along: crate::profile::direction(l.exit),
                curvature: bend_before(profile, l.edge),
                knuckle: l.knuckle,
                slope: l.slope,
            })
            .collect();
        let stand = m.reach_usual + m.tyre.radius;
        let stretches = (0..=lips.len())
            .map(|i| {
                let seen = Seen::new(profile, i.checked_sub(1).map(|j| &lips[j]), lips.get(i));
                let smooth = seen.smoothed(m);
                Table {
                    origin: seen.origin,
                    rows: rows(&raised(&smooth, seen.origin, stand)),
                }
            })
            .collect();
        let landing = landing(profile, &lips, m);
        Self {
            stretches,
            landing,
            lips,
        }
    }

    /// The path at `x`, on the way to lip `lip` (their count on the way to the end).
    #[inline]
    pub fn at(&self, x: f64, lip: usize) -> Aim {
        let r = self.stretches[lip.min(self.stretches.len() - 1)].read(x);
        let scale = 1.0 / (1.0 + r.slope * r.slope).sqrt();
        let along = DVec2::new(scale, r.slope * scale);
        Aim {
            along,
            normal: along.perp(),
            point: DVec2::new(x, r.z),
            curvature: r.bend * scale * scale * scale,
        }
    }

    /// Height and slope (dz/dx) of the ground to come down on, at `x`.
    #[inline]
    pub fn ground(&self, x: f64) -> (f64, f64) {
        let r = self.landing.read(x);
        (r.z, r.slope)
    }
}

/// Curvature of the piece that ends at an edge, 1/m.
fn bend_before(profile: &Profile, edge: DVec2) -> f64 {
    profile
        .pieces
        .iter()
        .find(|p| num::length(p.end - edge) < 1e-9)
        .map_or(0.0, |p| p.curvature)
}

/// The ground between a landing and a lip, sampled by x.
struct Seen {
    origin: f64,
    ground: Vec<f64>,
    look: Vec<f64>,
}

impl Seen {
    /// The ground from behind lip `from` to lip `to`, or the ends of the line.
    fn new(profile: &Profile, from: Option<&Lip>, to: Option<&Lip>) -> Self {
        let first = profile.pieces.first().map_or(0.0, |p| p.start.x);
        let last = profile.pieces.last().map_or(0.0, |p| p.end.x);
        let from_x = from.map_or(first, |l| l.knuckle.x);
        let to_x = to.map_or(last, |l| l.edge.x);
        let origin = from_x - BEYOND;
        let count = ((to_x - from_x + 2.0 * BEYOND) / STEP).ceil() as usize + 2;
        let (mut ground, riding) = sampled(profile, origin, count, from_x, to_x);
        let back = from.map_or(0.0, |l| num::tan(l.slope));
        for (i, z) in ground.iter_mut().enumerate() {
            let x = origin + i as f64 * STEP;
            if let (Some(l), true) = (from, x < from_x) {
                *z = l.knuckle.y + back * (x - from_x);
            }
            if let (Some(l), true) = (to, x > to_x) {
                *z = l.edge.y + l.along.y / num::max(l.along.x, 0.1) * (x - to_x);
            }
        }
        fill(&mut ground);
        Self {
            origin,
            look: look(&riding),
            ground,
        }
    }

    /// The averaged ground, within what the legs can make up.
    fn smoothed(&self, m: &Mount) -> Vec<f64> {
        if m.legs == Legs::Passive {
            return averaged(&self.ground, |_| FINE);
        }
        let widest = habits::LOOK * m.wheelbase;
        let half = |i: usize| {
            num::max(
                num::min(widest, 0.5 * self.look[i]),
                habits::LEAST_LOOK * m.wheelbase,
            )
        };
        let once = averaged(&self.ground, half);
        let twice = averaged(&once, half);
        let fold = habits::TRAVEL_SHARE * (m.reach_usual - m.reach_low);
        let stretch = habits::TRAVEL_SHARE * (m.reach_high - m.reach_usual);
        // A pumping rider's legs do the same a little later: they still stretch through the hollow,
        // where they are pressed, and still fold over the crest, where they are not, which is
        // what makes the work they do more than the work they take.
        let (behind, more) = match m.legs {
            Legs::Pumping => (
                (habits::PUMP_BEHIND * m.skill * m.wheelbase / STEP) as usize,
                habits::PUMP,
            ),
            _ => (0, habits::ABSORB),
        };
        let within: Vec<f64> = (0..twice.len())
            .map(|i| {
                let j = i.saturating_sub(behind);
                let apart = more * (twice[j] - self.ground[j]);
                self.ground[i] + m.skill * soft_limit(apart, fold, stretch)
            })
            .collect();
        averaged(&within, |_| FINE)
    }
}

/// Height of the ridden ground at even steps, NaN where there is none, and whether it is there to
/// be rolled over.
fn sampled(
    profile: &Profile,
    origin: f64,
    count: usize,
    from_x: f64,
    to_x: f64,
) -> (Vec<f64>, Vec<bool>) {
    let mut ground = vec![f64::NAN; count];
    let mut riding = vec![false; count];
    for p in &profile.pieces {
        if p.character.intent == Intent::Clear {
            continue;
        }
        let (a, b) = (num::max(p.start.x, from_x), num::min(p.end.x, to_x));
        let mut i = num::max(((a - origin) / STEP).ceil(), 0.0) as usize;
        while i < count && origin + i as f64 * STEP <= b {
            ground[i] = height_on(p, origin + i as f64 * STEP);
            riding[i] |= matches!(p.character.intent, Intent::Roll | Intent::Brake);
            i += 1;
        }
    }
    (ground, riding)
}

/// How far each point is from the nearest that is not for rolling over, m: averages stop short.
fn look(riding: &[bool]) -> Vec<f64> {
    let mut look = vec![0.0; riding.len()];
    let mut d = 0.0;
    for (l, r) in look.iter_mut().zip(riding) {
        d = if *r { d + STEP } else { 0.0 };
        *l = d;
    }
    d = 0.0;
    for (l, r) in look.iter_mut().zip(riding).rev() {
        d = if *r { d + STEP } else { 0.0 };
        *l = num::min(*l, d);
    }
    look
}

/// Fills what is unknown with the nearest known height before it, or after it at the beginning.
fn fill(ground: &mut [f64]) {
    let first = ground.iter().copied().find(|z| !z.is_nan());
    let mut last = first.unwrap_or(0.0);
    for z in ground {
        if z.is_nan() {
            *z = last;
        }
        last = *z;
    }
}

/// `d` held softly between −`low` and `high`.
fn soft_limit(d: f64, low: f64, high: f64) -> f64 {
    let most = if d < 0.0 { low } else { high };
    d / (1.0 + (d / most) * (d / most)).sqrt()
}

/// Height at `x` of a piece that is not plumb.
fn height_on(p: &crate::profile::Piece, x: f64) -> f64 {
    let run = p.end.x - p.start.x;
    if p.curvature == 0.0 {
        return p.start.y + (p.end.y - p.start.y) * (x - p.start.x) / num::max(run, 1e-9);
    }
    let r = 1.0 / p.curvature;
    let dx = x - p.centre.x;
    let up = num::max(r * r - dx * dx, 0.0).sqrt();
    if p.curvature > 0.0 {
        p.centre.y - up
    } else {
        p.centre.y + up
    }
}

/// Moving average over `half(i)` metres each way.
fn averaged(values: &[f64], half: impl Fn(usize) -> f64) -> Vec<f64> {
    let mut sums = Vec::with_capacity(values.len() + 1);
    let mut sum = 0.0;
    sums.push(sum);
    for v in values {
        sum += v;
        sums.push(sum);
    }
    // The integral of the linearly interpolated values up to a place between two points.
    let integral = |at: f64| {
        let i = num::clamp(at.floor(), 0.0, (values.len() - 1) as f64) as usize;
        let f = at - i as f64;
        let next = values[(i + 1).min(values.len() - 1)];
        let here = values[i];
        sums[i] + 0.5 * here - 0.5 * values[0] + f * (here + 0.5 * f * (next - here))
    };
    (0..values.len())
        .map(|i| {
            let room = num::min(i as f64, (values.len() - 1 - i) as f64);
            let w = num::min(half(i) / STEP, room);
            if w < 1e-9 {
                return values[i];
            }
            let (a, b) = (i as f64 - w, i as f64 + w);
            (integral(b) - integral(a)) / (2.0 * w)
        })
        .collect()
}

/// The curve a distance above another, square to it, by x again.
fn raised(ground: &[f64], first: f64, by: f64) -> Vec<f64> {
    let slopes = slopes(ground);
    let mut above: Vec<DVec2> = Vec::with_capacity(ground.len());
    for (i, z) in ground.iter().enumerate() {
        let scale = by / (1.0 + slopes[i] * slopes[i]).sqrt();
        let p = DVec2::new(first + i as f64 * STEP - slopes[i] * scale, z + scale);
        if above.last().is_none_or(|q| p.x > q.x + 1e-6) {
            above.push(p);
        }
    }
    let mut k = 0;
    (0..ground.len())
        .map(|i| {
            let x = first + i as f64 * STEP;
            while k + 2 < above.len() && above[k + 1].x < x {
                k += 1;
            }
            let (a, b) = (above[k], above[k + 1]);
            let f = num::clamp((x - a.x) / (b.x - a.x), 0.0, 1.0);
            a.y + f * (b.y - a.y)
        })
        .collect()
}

fn slopes(z: &[f64]) -> Vec<f64> {
    let last = z.len() - 1;
    (0..=last)
        .map(|i| {
            let (a, b) = (i.saturating_sub(1), (i + 1).min(last));
            (z[b] - z[a]) / ((b - a) as f64 * STEP)
        })
        .collect()
}

fn rows(z: &[f64]) -> Vec<Row> {
    let slope = slopes(z);
    let bend = averaged(&slopes(&slope), |_| FINE);
    (0..z.len())
        .map(|i| Row {
            z: z[i],
            slope: slope[i],
            bend: bend[i],
        })
        .collect()
}

/// The ground to come down on, its slope averaged over a bike's length.
fn landing(profile: &Profile, lips: &[Lip], m: &Mount) -> Table {
    let first = profile.pieces.first().map_or(0.0, |p| p.start.x);
    let last = profile.pieces.last().map_or(0.0, |p| p.end.x);
    let count = ((last - first) / STEP).ceil() as usize + 2;
    let (mut ground, _) = sampled(profile, first, count, first, last);
    for (i, z) in ground.iter_mut().enumerate() {
        let x = first + i as f64 * STEP;
        if let Some(l) = lips.iter().find(|l| x > l.edge.x && x < l.knuckle.x) {
            *z = l.knuckle.y + num::tan(l.slope) * (x - l.knuckle.x);
        }
    }
    fill(&mut ground);
    let over = averaged(&ground, |_| 0.5 * m.wheelbase);
    let slope = slopes(&over);
    let rows = ground.iter().zip(&slope);
    Table {
        origin: first,
        rows: rows
            .map(|(&z, &slope)| Row {
                z,
                slope,
                bend: 0.0,
            })
            .collect(),
    }
}
