//! The ridden ground as heights at even steps of x.

use crate::num;
use crate::profile::{Intent, Piece, Profile};

/// Height of the ridden ground between two x, at even steps (`origin`, `step`), NaN where there is none.
pub fn sampled(
    profile: &Profile,
    (origin, step): (f64, f64),
    count: usize,
    (from_x, to_x): (f64, f64),
) -> Vec<f64> {
    let mut ground = vec![f64::NAN; count];
    for p in &profile.pieces {
        if p.character.intent == Intent::Clear {
            continue;
        }
        let (a, b) = (num::max(p.start.x, from_x), num::min(p.end.x, to_x));
        let mut i = num::max(((a - origin) / step).ceil(), 0.0) as usize;
        while i < count && origin + i as f64 * step <= b {
            ground[i] = height_on(p, origin + i as f64 * step);
            i += 1;
        }
    }
    ground
}

/// Fills what is unknown with the nearest known height before it, or after it at the beginning.
pub fn fill(ground: &mut [f64]) {
    let first = ground.iter().copied().find(|z| !z.is_nan());
    let mut last = first.unwrap_or(0.0);
    for z in ground {
        if z.is_nan() {
            *z = last;
        }
        last = *z;
    }
}

/// Slopes of heights at even steps.
pub fn slopes(z: &[f64], step: f64) -> Vec<f64> {
    let last = z.len() - 1;
    (0..=last)
        .map(|i| {
            let (a, b) = (i.saturating_sub(1), (i + 1).min(last));
            (z[b] - z[a]) / ((b - a) as f64 * step)
        })
        .collect()
}

/// Height at `x` of a piece that is not plumb.
fn height_on(p: &Piece, x: f64) -> f64 {
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
