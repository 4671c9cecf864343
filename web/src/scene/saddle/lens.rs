//! Perspective: from points of the room to the sheet, as an eye over the line sees them.
//!
//! The room's x runs forward along the line, y to the left and z up, m. The eye looks along the line;
//! it nods, but does not roll or turn.

use super::ribbon::Knot;
use glam::{DVec2, DVec3};
use sim::num;

/// What is nearer than this is not seen, m.
const NEAR: f64 = 0.18;

/// Half the angle that the shorter side of the sheet takes in, rad: wide, as from close behind a bar.
const HALF_VIEW: f64 = 0.76;

/// Where down the sheet the gaze falls, as a share: more is seen below than above, the hands on the bar too.
const DOWN: f64 = 0.4;

/// An eye and the sheet before it.
#[derive(Clone, Copy, Debug)]
pub struct Lens {
    eye: DVec2,
    /// Cosine and sine of the gaze, upward from level.
    gaze: DVec2,
    middle: DVec2,
    size: DVec2,
    focal: f64,
}

impl Lens {
    /// A lens for an eye over the middle of the line that looks `gaze` rad up from level, on a sheet of
    /// `size` px.
    pub fn new(eye: DVec2, gaze: f64, size: DVec2) -> Self {
        Self {
            eye,
            gaze: DVec2::from_angle(gaze),
            middle: size * DVec2::new(0.5, DOWN),
            size,
            focal: 0.5 * size.x.min(1.25 * size.y) / num::tan(HALF_VIEW),
        }
    }

    /// The highest gaze, rad, with which a point of the side view stays on a sheet of `size` px, `spare` of its height
    /// over the lower edge.
    pub fn highest(eye: DVec2, p: DVec2, spare: f64, size: DVec2) -> f64 {
        let lens = Self::new(eye, 0.0, size);
        let below = (size.y * (1.0 - spare) - lens.middle.y) / lens.focal;
        (p - eye).to_angle() + num::atan2(below, 1.0)
    }

    /// A point as the eye has it: to the right, up and away, m.
    fn seen(&self, p: DVec3) -> DVec3 {
        let from = DVec2::new(p.x, p.z) - self.eye;
        DVec3::new(-p.y, self.gaze.perp_dot(from), self.gaze.dot(from))
    }

    fn flat(&self, seen: DVec3) -> DVec2 {
        let scale = self.focal / seen.z;
        self.middle + DVec2::new(seen.x, -seen.y) * scale
    }

    /// How far away a point is along the gaze, m.
    pub fn depth(&self, p: DVec3) -> f64 {
        self.seen(p).z
    }

    /// Pixels to the metre at a distance, m, along the gaze.
    pub fn scale(&self, depth: f64) -> f64 {
        self.focal / depth.max(NEAR)
    }

    /// Where a point falls on the sheet, px; `None` where it is too near or behind.
    pub fn place(&self, p: DVec3) -> Option<DVec2> {
        let seen = self.seen(p);
        (seen.z >= NEAR).then(|| self.flat(seen))
    }

    /// Whether something of some size, px, round a place would show on the sheet.
    pub fn near_sheet(&self, at: DVec2, size: f64) -> bool {
        let off = (at - 0.5 * self.size).abs();
        off.x < 0.5 * self.size.x + size && off.y < 0.5 * self.size.y + size
    }

    /// Where something endlessly far falls on the sheet, `across` rad to the right and `up` rad up from
    /// level.
    pub fn far(&self, across: f64, up: f64) -> Option<DVec2> {
        let (sin, cos) = num::sin_cos(across);
        let to = DVec3::new(self.eye.x + cos, -sin, self.eye.y + num::tan(up));
        self.place(to)
    }

    /// How far down the sheet a point in front falls that is over the middle of the line, px.
    pub fn height(&self, p: DVec2) -> f64 {
        self.flat(self.seen(DVec3::new(p.x, 0.0, p.y))).y
    }

    /// A stretch of ribbon as far as it is in front.
    pub fn in_front(&self, a: &Knot, b: &Knot) -> Option<(Knot, Knot)> {
        let [za, zb] = [a, b].map(|k| self.depth(DVec3::new(k.at.x, 0.0, k.at.y)));
        if zb < NEAR {
            return None;
        }
        let from = if za < NEAR {
            a.toward(b, (NEAR + 1e-9 - za) / (zb - za).max(1e-9))
        } else {
            *a
        };
        Some((from, *b))
    }

    /// A straight line on the sheet, cut where it comes too near.
    pub fn line(&self, from: DVec3, to: DVec3) -> Option<[DVec2; 2]> {
        let (mut a, mut b) = (self.seen(from), self.seen(to));
        if a.z < NEAR && b.z < NEAR {
            return None;
        }
        if a.z < NEAR {
            a = cut(b, a);
        } else if b.z < NEAR {
            b = cut(a, b);
        }
        Some([self.flat(a), self.flat(b)])
    }

    /// A flat outline of four corners on the sheet, cut where it comes too near: up to five corners.
    pub fn quad(&self, corners: [DVec3; 4]) -> impl Iterator<Item = DVec2> + use<> {
        let lens = *self;
        let seen = corners.map(|c| self.seen(c));
        (0..4).flat_map(move |i| {
            let (a, b) = (seen[i], seen[(i + 1) % 4]);
            let own = (a.z >= NEAR).then(|| lens.flat(a));
            let crossing = ((a.z < NEAR) != (b.z < NEAR)).then(|| {
                let (far, near) = if a.z < NEAR { (b, a) } else { (a, b) };
                lens.flat(cut(far, near))
            });
            own.into_iter().chain(crossing)
        })
    }
}

/// Where the way from a point far enough to one too near comes too near.
fn cut(far: DVec3, near: DVec3) -> DVec3 {
    far.lerp(near, (far.z - NEAR) / (far.z - near.z))
}

#[cfg(test)]
mod tests {
    use super::*;

    const SHEET: DVec2 = DVec2::new(360.0, 300.0);
    const MIDDLE: DVec2 = DVec2::new(180.0, 300.0 * DOWN);

    fn level() -> Lens {
        Lens::new(DVec2::new(2.0, 1.0), 0.0, SHEET)
    }

    #[test]
    fn what_is_straight_ahead_falls_in_the_middle_however_far() {
        for x in [1.0, 5.0, 50.0] {
            let p = level().place(DVec3::new(2.0 + x, 0.0, 1.0)).unwrap();
            assert!(p.distance(MIDDLE) < 1e-9, "{p}");
        }
        let nodding = Lens::new(DVec2::new(2.0, 1.0), -0.4, SHEET);
        let ahead = DVec3::new(2.0 + num::cos(0.4), 0.0, 1.0 - num::sin(0.4));
        assert!(nodding.place(ahead).unwrap().distance(MIDDLE) < 1e-9);
    }

    #[test]
    fn twice_as_far_is_half_as_large_and_left_is_left() {
        let lens = level();
        let size = |x: f64| {
            let ends = [0.5, -0.5].map(|y| lens.place(DVec3::new(2.0 + x, y, 0.0)).unwrap());
            assert!(ends[0].x < ends[1].x, "the left side is on the left");
            ends[0].distance(ends[1])
        };
        assert!((size(4.0) - 2.0 * size(8.0)).abs() < 1e-9);
        assert!((size(4.0) - lens.scale(4.0)).abs() < 1e-9);
    }

    #[test]
    fn the_ground_lies_under_the_horizon_and_comes_nearer_to_it_with_distance() {
        let lens = level();
        let horizon = lens.far(0.0, 0.0).unwrap();
        assert!((horizon.y - MIDDLE.y).abs() < 1e-9);
        let y = |x: f64| lens.place(DVec3::new(x, 0.0, 0.0)).unwrap().y;
        assert!(y(4.0) > y(8.0) && y(8.0) > y(400.0) && y(400.0) > horizon.y);
        assert!(lens.far(0.3, 0.1).unwrap().y < horizon.y);
    }

    #[test]
    fn what_is_behind_the_eye_is_cut_away_where_it_begins_to_be_near() {
        let lens = level();
        assert!(lens.place(DVec3::new(1.0, 0.0, 0.0)).is_none());
        let [a, b] = [DVec3::new(-5.0, 0.0, 0.0), DVec3::new(6.0, 0.0, 0.0)];
        let [from, to] = lens.line(a, b).unwrap();
        assert!(from.is_finite() && from.y > to.y && to.y > MIDDLE.y);
        assert!(lens.line(a, DVec3::new(1.0, 0.0, 0.0)).is_none());
        let beside = [[-5.0, 1.0], [6.0, 1.0], [6.0, -1.0], [-5.0, -1.0]];
        let corners: Vec<_> = lens
            .quad(beside.map(|[x, y]| DVec3::new(x, y, 0.0)))
            .collect();
        assert_eq!(corners.len(), 4);
        assert!(corners.iter().all(|c| c.is_finite() && c.y > MIDDLE.y));
    }
}
