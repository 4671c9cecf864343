//! What the rider sees coming: the path the body would like to travel over the ground ahead.
//!
//! The ground is averaged over a stretch before and behind each point, twice, so that its
//! curvature is smooth; never across a lip or onto one. The body's path runs a standing height
//! over that, square to it. Where the average leaves the ground by more than the legs can fold or
//! stretch, it gives way to the ground. The path is a table over x, read by interpolation.

use super::mount::{Legs, Mount};
use crate::num;
use crate::profile::{Intent, Profile};
use glam::DVec2;

/// Distance between two points of the table, m.
const STEP: f64 = 0.05;

/// Half the stretch the ground is averaged over, in multiples of the wheelbase.
///
/// A rider smooths what is shorter than a few bike lengths and rides what is longer. Twice this
/// is near a roller's own length, so that rollers even out (common practice, no source).
const LOOK: f64 = 1.9;

/// The least half stretch, m: in a lip the body follows the curve.
const LEAST_LOOK: f64 = 0.1;

/// Share of the legs' travel that smoothing may use up, each way.
const TRAVEL_SHARE: f64 = 0.8;

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

/// The body's path, and the ground as the eye takes it in.
pub struct Path {
    origin: f64,
    rows: Vec<Row>,
    /// Ground to come down on, by x: as `rows`, gaps left out.
    landing: Vec<Row>,
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
    /// The knuckle's x, m: nothing before it is aimed at.
    pub knuckle_x: f64,
    /// Heading of the landing, rad.
    pub slope: f64,
}

impl Path {
    /// The path of a mount's rider over a profile.
    pub fn new(profile: &Profile, m: &Mount) -> Self {
        let lips: Vec<Lip> = profile
            .lips
            .iter()
            .map(|l| Lip {
                edge: l.edge,
                along: crate::profile::direction(l.exit),
                knuckle_x: l.knuckle.x,
                slope: l.slope,
            })
            .collect();
        let first = profile.pieces.first().map_or(0.0, |p| p.start.x);
        let last = profile.pieces.last().map_or(0.0, |p| p.end.x);
        let count = ((last - first) / STEP).ceil() as usize + 2;
        let seen = Seen::new(profile, first, count);
        let smooth = seen.smoothed(m);
        let stand = m.reach_usual + m.tyre.radius;
        let rows = rows(&raised(&smooth, first, stand));
        let landing = rows_of_ground(&seen.ground, m);
        Self {
            origin: first,
            rows,
            landing,
            lips,
        }
    }

    #[inline]
    fn read(&self, table: &[Row], x: f64) -> Row {
        let at = num::clamp((x - self.origin) / STEP, 0.0, (table.len() - 2) as f64);
        let i = at as usize;
        let f = at - i as f64;
        let (a, b) = (&table[i], &table[i + 1]);
        Row {
            z: a.z + f * (b.z - a.z),
            slope: a.slope + f * (b.slope - a.slope),
            bend: a.bend + f * (b.bend - a.bend),
        }
    }

    /// The path at `x`. A rider whose rear wheel is still on a lip goes on along the lip's tangent.
    #[inline]
    pub fn at(&self, x: f64, on_lip: Option<&Lip>) -> Aim {
        if let Some(lip) = on_lip {
            let r = self.read(&self.rows, lip.edge.x);
            let start = DVec2::new(lip.edge.x, r.z);
            if x > start.x {
                let along = lip.along;
                return Aim {
                    along,
                    normal: along.perp(),
                    point: start + along * ((x - start.x) / num::max(along.x, 0.1)),
                    curvature: 0.0,
                };
            }
        }
        let r = self.read(&self.rows, x);
        let scale = 1.0 / (1.0 + r.slope * r.slope).sqrt();
        let along = DVec2::new(scale, r.slope * scale);
        Aim {
            along,
            normal: along.perp(),
            point: DVec2::new(x, r.z),
            curvature: r.bend * scale * scale * scale,
        }
    }

    /// Height and heading of the ground to come down on, at `x`.
    #[inline]
    pub fn ground(&self, x: f64) -> (f64, f64) {
        let r = self.read(&self.landing, x);
        (r.z, r.slope)
    }

    /// The next lip whose edge is not yet behind `x`.
    #[inline]
    pub fn next_lip(&self, x: f64) -> Option<&Lip> {
        self.lips.iter().find(|l| l.edge.x > x)
    }
}

/// The ground sampled by x, with gaps bridged by the slope of the landing behind them.
struct Seen {
    ground: Vec<f64>,
    look: Vec<f64>,
}

impl Seen {
    fn new(profile: &Profile, first: f64, count: usize) -> Self {
        let mut ground = vec![f64::NAN; count];
        let mut riding = vec![false; count];
        for p in &profile.pieces {
            if p.character.intent == Intent::Clear {
                continue;
            }
            let from = ((p.start.x - first) / STEP).ceil();
            let to = ((p.end.x - first) / STEP).floor();
            let (mut i, to) = (num::max(from, 0.0) as usize, num::max(to, 0.0) as usize);
            while i <= to && i < count {
                let x = first + i as f64 * STEP;
                let z = height_on(p, x);
                if ground[i].is_nan() || z > ground[i] {
                    ground[i] = z;
                }
                riding[i] |= matches!(p.character.intent, Intent::Roll | Intent::Brake);
                i += 1;
            }
        }
        bridge(&mut ground, profile, first);
        // How far the nearest point is that is not for rolling on: averages stop short of it.
        let mut look = vec![0.0; count];
        let mut d = f64::INFINITY;
        for i in 0..count {
            d = if riding[i] { d + STEP } else { 0.0 };
            look[i] = d;
        }
        let mut d = f64::INFINITY;
        for i in (0..count).rev() {
            d = if riding[i] { d + STEP } else { 0.0 };
            look[i] = num::min(look[i], d);
        }
        Self { ground, look }
    }

    /// The averaged ground, within what the legs can make up.
    fn smoothed(&self, m: &Mount) -> Vec<f64> {
        if m.legs == Legs::Passive {
            return averaged(&self.ground, |_| LEAST_LOOK);
        }
        let widest = LOOK * m.wheelbase;
        let half = |i: usize| num::max(num::min(widest, 0.5 * self.look[i]), LEAST_LOOK);
        let once = averaged(&self.ground, half);
        let twice = averaged(&once, half);
        let fold = TRAVEL_SHARE * (m.reach_usual - m.reach_low);
        let stretch = TRAVEL_SHARE * (m.reach_high - m.reach_usual);
        let within: Vec<f64> = twice
            .iter()
            .zip(&self.ground)
            .map(|(s, g)| g + m.skill * soft_limit(s - g, fold, stretch))
            .collect();
        averaged(&within, |_| LEAST_LOOK)
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

/// Fills what is not ridden: up to a knuckle with the landing's slope carried back, at the ends
/// with the last height.
fn bridge(ground: &mut [f64], profile: &Profile, first: f64) {
    let known: Vec<usize> = (0..ground.len()).filter(|&i| !ground[i].is_nan()).collect();
    let (Some(&a), Some(&b)) = (known.first(), known.last()) else {
        ground.fill(0.0);
        return;
    };
    for i in 0..ground.len() {
        if !ground[i].is_nan() {
            continue;
        }
        if i < a {
            ground[i] = ground[a];
        } else if i > b {
            ground[i] = ground[b];
        } else {
            let x = first + i as f64 * STEP;
            let lip = profile.lips.iter().find(|l| x <= l.knuckle.x + STEP);
            ground[i] = lip.map_or(ground[i - 1], |l| {
                l.knuckle.y + num::tan(l.slope) * (x - l.knuckle.x)
            });
        }
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
        let p = DVec2::new(
            first + i as f64 * STEP - slopes[i] * scale,
            z + scale,
        );
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
    let bend = averaged(&slopes(&slope), |_| LEAST_LOOK);
    (0..z.len())
        .map(|i| Row {
            z: z[i],
            slope: slope[i],
            bend: bend[i],
        })
        .collect()
}

/// The ground with its heading averaged over a bike's length, for coming down on.
fn rows_of_ground(ground: &[f64], m: &Mount) -> Vec<Row> {
    let over = averaged(ground, |_| 0.5 * m.wheelbase);
    let slope = slopes(&over);
    (0..ground.len())
        .map(|i| Row {
            z: ground[i],
            slope: slope[i],
            bend: 0.0,
        })
        .collect()
}
