//! What the rider sees: how the body would stand over the ground ahead, and where it comes down.
//!
//! For each stretch from a landing to the next lip, a table by the body's x. The bike stands on the
//! ground with both wheels: its middle is halfway between them, its slope the chord's. The body stands
//! over the middle, square to the chord. Over a lip's edge the ground goes on along its tangent, before
//! a knuckle along the landing's slope, as a rider who leaves or comes down there has it in mind.

use super::ground_by_x::{fill, sampled, slopes};
use crate::body::Mount;
use crate::num;
use crate::profile::{LipEdge, Profile, direction};
use glam::DVec2;

/// Distance between two rows of a table, m.
pub const STEP: f64 = 0.1;

/// How far a lip's tangent is carried on, and a landing's slope back, m.
pub const BEYOND: f64 = 4.0;

/// Index of the row at or before a place among `count`, with room for one more behind it, and the share of a
/// step beyond.
#[inline(always)]
pub fn between(at: f64, count: usize) -> (usize, f64) {
    let most = (count - 2) as f64;
    let at = num::clamp(at, 0.0, most + 1.0);
    let i = num::min(at, most) as usize;
    (i, at - i as f64)
}

/// The body standing over the bike at one place of its own way.
#[derive(Clone, Copy, Debug, Default)]
pub struct Row {
    /// Height of the body, m.
    pub z: f64,
    /// Slope dz/dx of the body's way.
    pub slope: f64,
    /// Pitch of the bike under it, rad, and its sine.
    pub bike: f64,
    pub sin: f64,
    /// Where the middle of the bike is then.
    pub middle: DVec2,
}

/// Rows at even steps of the body's x.
pub struct Stand {
    pub origin: f64,
    pub rows: Vec<Row>,
}

impl Stand {
    /// The row before `x`, as [`between`] has it.
    #[inline]
    pub fn at(&self, x: f64) -> (usize, f64) {
        between((x - self.origin) / STEP, self.rows.len())
    }

    /// The row at `x`, between its neighbours.
    #[inline(always)]
    pub fn read(&self, x: f64) -> Row {
        let (i, f) = self.at(x);
        let (a, b) = (&self.rows[i], &self.rows[i + 1]);
        Row {
            z: a.z + f * (b.z - a.z),
            slope: a.slope + f * (b.slope - a.slope),
            bike: a.bike + f * (b.bike - a.bike),
            sin: a.sin + f * (b.sin - a.sin),
            middle: a.middle + (b.middle - a.middle) * f,
        }
    }
}

/// A lip as its rider sees it.
#[derive(Clone, Copy, Debug)]
pub struct Lip {
    /// Where it begins to rise.
    pub foot: DVec2,
    /// The edge.
    pub edge: DVec2,
    /// Unit tangent at the edge.
    pub along: DVec2,
    /// The knuckle.
    pub knuckle: DVec2,
    /// Heading of the landing, rad.
    pub slope: f64,
    /// Where its hollow ends.
    pub end: DVec2,
    /// Heading of the rear axle's way, rad, at even steps of a wheelbase's share before the edge, the
    /// edge last.
    headings: [f64; RUN_UP + 1],
    /// A step of that, m.
    step: f64,
    /// Pitch of the bike as the front wheel is at the edge, rad.
    pub chord: f64,
    /// How that turns with the rear axle's way, 1/m.
    pub chord_turn: f64,
    /// x of the bike's middle as front and rear wheel pass the edge, m.
    pub off: [f64; 2],
}

/// Steps that the last wheelbase before an edge is seen in.
pub const RUN_UP: usize = 8;

impl Lip {
    fn new(profile: &Profile, l: &LipEdge, m: &Mount) -> Self {
        let w = m.wheelbase;
        let step = w / RUN_UP as f64;
        // Way of the axles back from the edge; beyond the chain's beginning it goes straight on.
        let end = profile
            .pieces
            .iter()
            .position(|p| num::length(p.end - l.edge) < 1e-9);
        let walk = |back: f64| walk_back(profile, end, l, m.tyre.radius, back);
        let mut headings = [0.0; RUN_UP + 1];
        for (i, h) in headings.iter_mut().enumerate() {
            *h = walk((RUN_UP - i) as f64 * step).1;
        }
        let front = walk(0.0).0;
        let chord_at = |back: f64| {
            let rear = walk(back).0;
            let ahead = if back < w { front } else { walk(back - w).0 };
            let d = ahead - rear;
            num::atan2(d.y, d.x)
        };
        let chord = chord_at(w);
        Self {
            foot: l.foot,
            edge: l.edge,
            along: direction(l.exit),
            knuckle: l.knuckle,
            slope: l.slope,
            end: l.landing_end,
            headings,
            step,
            chord,
            chord_turn: (chord - chord_at(w + 0.1)) / 0.1,
            off: [
                0.5 * (front.x + walk(w).0.x),
                front.x + 0.5 * w * num::cos(l.exit),
            ],
        }
    }

    /// Heading of the rear axle's way at `at` m from the edge, negative before it, and its curvature, 1/m.
    pub fn heading(&self, at: f64) -> (f64, f64) {
        let x = num::clamp(at / self.step + RUN_UP as f64, 0.0, RUN_UP as f64 - 1e-9);
        let i = x as usize;
        let turn = self.headings[i + 1] - self.headings[i];
        (self.headings[i] + (x - i as f64) * turn, turn / self.step)
    }
}

/// A point of an axle's way, `back` m before a lip's edge, and its heading.
fn walk_back(
    profile: &Profile,
    end: Option<usize>,
    l: &LipEdge,
    radius: f64,
    back: f64,
) -> (DVec2, f64) {
    let mut left = back;
    let mut next = end;
    while let Some(i) = next {
        let p = &profile.pieces[i];
        // The axle's way is shorter in a hollow, by the wheel's radius.
        let scale = num::max(1.0 - radius * p.curvature, 0.05);
        if left <= p.length * scale {
            let along = p.length - left / scale;
            let heading = p.heading_at(along);
            return (p.point(along) + direction(heading).perp() * radius, heading);
        }
        left -= p.length * scale;
        next = i.checked_sub(1);
    }
    let heading = l.exit;
    (
        l.edge + direction(heading).perp() * radius - direction(heading) * left,
        heading,
    )
}

/// Ground to come down on, at even steps of x.
struct Landing {
    origin: f64,
    rows: Vec<[f64; 2]>,
}

/// All that a rider of one size sees of a line.
pub struct Sight {
    stretches: Vec<Stand>,
    landing: Landing,
    /// The lips, in riding order.
    pub lips: Vec<Lip>,
}

impl Sight {
    /// What a mount's rider sees of a profile.
    pub fn new(profile: &Profile, m: &Mount) -> Self {
        let lips: Vec<Lip> = profile
            .lips
            .iter()
            .map(|l| Lip::new(profile, l, m))
            .collect();
        let stretches = (0..=lips.len())
            .map(|i| stand(profile, i.checked_sub(1).map(|j| &lips[j]), lips.get(i), m))
            .collect();
        let landing = landing(profile, &lips, m);
        Self {
            stretches,
            landing,
            lips,
        }
    }

    /// How the body stands on the way to lip `lip` (their count on the way to the end).
    #[inline]
    pub fn stand(&self, lip: usize) -> &Stand {
        &self.stretches[lip.min(self.stretches.len() - 1)]
    }

    /// Height and slope (dz/dx) of the ground to come down on, at `x`.
    #[inline]
    pub fn ground(&self, x: f64) -> (f64, f64) {
        let l = &self.landing;
        let (i, f) = between((x - l.origin) / STEP, l.rows.len());
        let (a, b) = (l.rows[i], l.rows[i + 1]);
        (a[0] + f * (b[0] - a[0]), a[1] + f * (b[1] - a[1]))
    }
}

/// Distance between two points of the ground that the tables are made from, m.
const FINE: f64 = 0.05;

/// The body standing over the ground from behind lip `from` to lip `to`, or the ends of the line.
fn stand(profile: &Profile, from: Option<&Lip>, to: Option<&Lip>, m: &Mount) -> Stand {
    let first = profile.pieces.first().map_or(0.0, |p| p.start.x);
    let last = profile.pieces.last().map_or(0.0, |p| p.end.x);
    let from_x = from.map_or(first, |l| l.knuckle.x);
    let to_x = to.map_or(last, |l| l.edge.x);
    let origin = from_x - BEYOND;
    // On a surveyed line the next edge may stand before the knuckle behind.
    let long = num::max(to_x - from_x, 0.0) + 2.0 * BEYOND;
    let count = (long / FINE).ceil() as usize + 2;
    let mut ground = sampled(profile, (origin, FINE), count, (from_x, to_x));
    for (i, z) in ground.iter_mut().enumerate() {
        let x = origin + i as f64 * FINE;
        if let (Some(l), true) = (from, x < from_x) {
            *z = l.knuckle.y + num::tan(l.slope) * (x - from_x);
        }
        if let (Some(l), true) = (to, x > to_x) {
            *z = l.edge.y + l.along.y / num::max(l.along.x, 0.1) * (x - to_x);
        }
    }
    fill(&mut ground);
    on_both_wheels(&ground, origin, m)
}

/// The table of a body that stands over the middle of a bike on both wheels.
fn on_both_wheels(ground: &[f64], origin: f64, m: &Mount) -> Stand {
    let height = |x: f64| {
        let at = num::clamp((x - origin) / FINE, 0.0, (ground.len() - 1) as f64 - 1e-9);
        let i = at as usize;
        let f = at - i as f64;
        ground[i] + f * (ground[(i + 1).min(ground.len() - 1)] - ground[i])
    };
    let over = m.reach_usual + m.tyre.radius;
    let mut half = 0.5 * m.wheelbase;
    let mut stood: Vec<(DVec2, f64, DVec2)> = Vec::with_capacity(ground.len());
    for i in 0..ground.len() {
        let x = origin + i as f64 * FINE;
        let (mut slope, mut middle) = (0.0, 0.0);
        for _ in 0..2 {
            let (rear, front) = (height(x - half), height(x + half));
            slope = (front - rear) / (2.0 * half);
            middle = 0.5 * (rear + front);
            half = 0.5 * m.wheelbase / (1.0 + slope * slope).sqrt();
        }
        let scale = 1.0 / (1.0 + slope * slope).sqrt();
        let normal = DVec2::new(-slope * scale, scale);
        let ground = DVec2::new(x, middle);
        let body = ground + normal * over;
        // In a hollow tighter than the body stands high its way would turn back: it waits.
        if stood.last().is_none_or(|(b, ..)| body.x > b.x + 1e-6) {
            stood.push((
                body,
                num::atan2(slope, 1.0),
                ground + normal * m.tyre.radius,
            ));
        }
    }
    let count = (ground.len() as f64 * FINE / STEP) as usize;
    let mut k = 0;
    let mut rows: Vec<Row> = (0..count)
        .map(|i| {
            let x = origin + i as f64 * STEP;
            while k + 2 < stood.len() && stood[k + 1].0.x < x {
                k += 1;
            }
            let (a, b) = (&stood[k], &stood[k + 1]);
            let f = num::clamp((x - a.0.x) / (b.0.x - a.0.x), 0.0, 1.0);
            let bike = a.1 + f * (b.1 - a.1);
            Row {
                z: a.0.y + f * (b.0.y - a.0.y),
                slope: 0.0,
                bike,
                sin: num::sin(bike),
                middle: a.2 + (b.2 - a.2) * f,
            }
        })
        .collect();
    let heights: Vec<f64> = rows.iter().map(|r| r.z).collect();
    for (row, slope) in rows.iter_mut().zip(slopes(&heights, STEP)) {
        row.slope = slope;
    }
    Stand { origin, rows }
}

/// The ground to come down on, its slope that of a bike's length.
fn landing(profile: &Profile, lips: &[Lip], m: &Mount) -> Landing {
    let first = profile.pieces.first().map_or(0.0, |p| p.start.x);
    let last = profile.pieces.last().map_or(0.0, |p| p.end.x);
    let count = ((last - first) / STEP).ceil() as usize + 2;
    let mut ground = sampled(profile, (first, STEP), count, (first, last));
    for (i, z) in ground.iter_mut().enumerate() {
        let x = first + i as f64 * STEP;
        if let Some(l) = lips.iter().find(|l| x > l.edge.x && x < l.knuckle.x) {
            *z = l.knuckle.y + num::tan(l.slope) * (x - l.knuckle.x);
        }
    }
    fill(&mut ground);
    let at = |x: f64| {
        let (i, f) = between(x, count);
        ground[i] + f * (ground[i + 1] - ground[i])
    };
    let half = 0.5 * m.wheelbase / STEP;
    let rows = (0..count)
        .map(|i| {
            let i = i as f64;
            [at(i), (at(i + half) - at(i - half)) / m.wheelbase]
        })
        .collect();
    Landing {
        origin: first,
        rows,
    }
}
