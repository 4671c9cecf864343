//! How the rider moves against the bike: still, or as seen in a ride.

use glam::DVec2;
use sim::ride::Sample;
use tests::curve::Curve;

/// The rider's mass centre in the bike's frame and lean against it, each with its first and second
/// derivative by the rear wheel's place along the curve.
#[derive(Clone, Copy, Debug, Default)]
pub struct Held {
    pub at: [DVec2; 3],
    pub lean: [f64; 3],
}

/// A motion by the rear wheel's place along the curve.
pub enum Motion {
    /// Rigid with the bike.
    Still(DVec2),
    /// As seen in a ride: natural cubic splines, one for each number.
    Seen(Vec<Knot>),
}

/// Rider's place x and y in the bike's frame and lean, with second derivatives, where the rear
/// wheel is `along` the curve.
#[derive(Clone, Copy, Debug)]
pub struct Knot {
    along: f64,
    value: [f64; 3],
    bend: [f64; 3],
}

/// Least way between two knots, m.
const APART: f64 = 0.005;

impl Motion {
    /// The motion of a ride's rider while the rear wheel is over the curve, against a bike whose
    /// middle and pitch are `bike` of the sample and the rear wheel's place.
    pub fn seen(
        states: &[Sample],
        curve: &Curve,
        wheelbase: f64,
        bike: impl Fn(&Sample, f64) -> (DVec2, f64),
    ) -> Self {
        let mut knots: Vec<Knot> = Vec::new();
        for s in states {
            let rear = s.bike_x - 0.5 * wheelbase * s.pitch.cos();
            let along = curve.place_over(rear);
            if knots.last().is_some_and(|k| along < k.along + APART) {
                continue;
            }
            let (middle, pitch) = bike(s, along);
            let arm = DVec2::new(s.rider_x, s.rider_z) - middle;
            let own = DVec2::from_angle(-pitch).rotate(arm);
            let value = [own.x, own.y, s.lean - pitch];
            knots.push(Knot {
                along,
                value,
                bend: [0.0; 3],
            });
            if along > curve.length {
                break;
            }
        }
        (0..3).for_each(|n| bend(&mut knots, n));
        Self::Seen(knots)
    }

    /// Place and derivatives where the rear wheel is `along` the curve.
    pub fn at(&self, along: f64) -> Held {
        let knots = match self {
            Motion::Still(at) => {
                return Held {
                    at: [*at, DVec2::ZERO, DVec2::ZERO],
                    ..Held::default()
                };
            }
            Motion::Seen(knots) => knots,
        };
        let i = knots
            .partition_point(|k| k.along <= along)
            .clamp(1, knots.len() - 1);
        let [x, y, lean] = [0, 1, 2].map(|n| between(&knots[i - 1], &knots[i], n, along));
        Held {
            at: [0, 1, 2].map(|d| DVec2::new(x[d], y[d])),
            lean,
        }
    }
}

/// Second derivatives m of the natural cubic spline: zero at both ends, and between them
/// h₋ m₋ + 2 (h₋ + h₊) m + h₊ m₊ = 6 ((v₊ − v)/h₊ − (v − v₋)/h₋).
fn bend(knots: &mut [Knot], n: usize) {
    let count = knots.len();
    let mut share = vec![0.0; count];
    for i in 1..count - 1 {
        let [a, b, c] = [knots[i - 1], knots[i], knots[i + 1]];
        let (before, after) = (b.along - a.along, c.along - b.along);
        let rise = (c.value[n] - b.value[n]) / after - (b.value[n] - a.value[n]) / before;
        let pivot = 2.0 * (before + after) - before * share[i - 1];
        share[i] = after / pivot;
        knots[i].bend[n] = (6.0 * rise - before * a.bend[n]) / pivot;
    }
    for i in (1..count - 1).rev() {
        knots[i].bend[n] -= share[i] * knots[i + 1].bend[n];
    }
    // The motion goes on as it bends beside its ends.
    knots[0].bend[n] = knots[1].bend[n];
    knots[count - 1].bend[n] = knots[count - 2].bend[n];
}

/// Value and derivatives between two knots.
fn between(a: &Knot, b: &Knot, n: usize, along: f64) -> [f64; 3] {
    let h = b.along - a.along;
    let (p, q) = ((b.along - along) / h, (along - a.along) / h);
    let (bend_a, bend_b) = (a.bend[n], b.bend[n]);
    let cubic = |w: f64| (w * w - 1.0) * w * h * h / 6.0;
    let slope = |w: f64| (3.0 * w * w - 1.0) * h / 6.0;
    [
        p * a.value[n] + q * b.value[n] + cubic(p) * bend_a + cubic(q) * bend_b,
        (b.value[n] - a.value[n]) / h + slope(q) * bend_b - slope(p) * bend_a,
        p * bend_a + q * bend_b,
    ]
}
