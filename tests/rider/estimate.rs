//! Where a bike comes down: a plain ballistic estimate, without drag, from the model's own take-off.

use super::landed::Left;
use sim::constants::GRAVITY;
use sim::plan::{Jump, Mount, Weather};

/// Smallest gap worth building, m.
const LEAST_GAP: f64 = 0.3;

/// Least height of the front wheel's path over the knuckle, m.
const CLEAR: f64 = 0.02;

/// Least steep landing that is built, degrees.
const LEAST_ANGLE: f64 = 18.0;

/// The bike as the estimate has it at touch-down, square on the slope with the rider over its middle.
#[derive(Clone, Copy, Debug)]
pub struct Stance {
    /// Common mass centre over the ground, m.
    pub stand: f64,
    /// Half the wheelbase, m.
    pub half: f64,
}

impl Stance {
    /// With the legs as they are held on level ground.
    pub fn usual(rider: &Mount) -> Self {
        let reach = sim::setup::mount(rider, &Weather::default()).reach_usual;
        Self::with_reach(rider, reach)
    }

    /// With a distance from the middle between the axles to the rider's mass centre, m.
    pub fn with_reach(rider: &Mount, reach: f64) -> Self {
        let m = sim::setup::mount(rider, &Weather::default());
        let moment = m.rider_mass * reach + m.bike_mass * m.bike_rise;
        Self {
            stand: m.tyre.radius + moment / m.mass(),
            half: 0.5 * m.wheelbase,
        }
    }
}

/// A jump as the estimate sees it, on ground of an even grade.
pub struct Throw<'a> {
    /// How the edge was left.
    pub left: Left,
    /// The bike at touch-down.
    pub stance: Stance,
    /// The yard's grade.
    pub grade: f64,
    /// The jump.
    pub jump: &'a Jump,
}

impl Throw<'_> {
    /// The gap whose slope is met with the rear wheel `past` the knuckle; beside it, how far over the
    /// knuckle the front wheel passes, m. None where the slope is higher than the flight.
    pub fn gap(&self, past: f64) -> Option<(f64, f64)> {
        // The landing's angle counts from the ground's own slope.
        let slope = self.jump.landing.angle_deg.to_radians() - self.grade.atan();
        let (sin, cos) = slope.sin_cos();
        let Stance { stand, half } = self.stance;
        let (middle, front) = (past + half * cos, past + 2.0 * half * cos);
        let [vx, vz] = self.left.velocity;
        let (mut gap, mut over) = (1.0, 0.0);
        for _ in 0..20 {
            // Height of the knuckle over the edge depends on the gap through the yard's grade.
            let knuckle = self.jump.landing.height + self.grade * gap - self.jump.lip.height;
            let target = knuckle - middle * slope.tan() + stand * cos;
            let root = vz * vz + 2.0 * GRAVITY * (self.left.centre[1] - target);
            if root < 0.0 || vx <= 0.0 {
                return None;
            }
            let back = front / vx;
            over = (root.sqrt() - 0.5 * GRAVITY * back) * back - front * slope.tan();
            let flown = vx * (vz + root.sqrt()) / GRAVITY;
            gap = self.left.centre[0] + flown - middle - stand * sin;
        }
        Some((gap, over))
    }

    /// Where the rear wheel comes down past the knuckle over the jump's own gap, m: walked to from
    /// afar, then by halving.
    pub fn past(&self) -> Option<f64> {
        // What is out of the flight's reach lies too high: it counts as too near.
        let near = |past: f64| self.gap(past).is_none_or(|(gap, _)| gap >= self.jump.gap);
        let steps = (-16..=32).rev().map(|i| 0.25 * f64::from(i));
        let mut low = steps.skip(1).find(|&past| near(past))?;
        let mut high = low + 0.25;
        for _ in 0..40 {
            let mid = 0.5 * (low + high);
            if near(mid) {
                low = mid;
            } else {
                high = mid;
            }
        }
        Some(high)
    }
}

/// The gap that brings the rear wheel down `past` the knuckle; none where there is no jump to build.
///
/// Over a landing too steep for the flight the front wheel would strike the knuckle before the rear
/// wheel could come down past it: such a landing is laid back until the front wheel passes over, but
/// not below the least steepness.
pub fn fit(jump: &mut Jump, left: Left, stance: Stance, grade: f64, past: f64) -> Option<f64> {
    loop {
        let throw = Throw {
            left,
            stance,
            grade,
            jump,
        };
        let (gap, over) = throw.gap(past).filter(|(gap, _)| *gap >= LEAST_GAP)?;
        if over >= CLEAR {
            return Some(gap);
        }
        jump.landing.angle_deg -= 1.0;
        if jump.landing.angle_deg < LEAST_ANGLE {
            return None;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rider::draw::Drawn;

    /// Thrown from the edge over level ground, a point meets a slope through the knuckle where
    /// h − x tan a = v_z t − g t²/2: worked out by hand for tan a = ½.
    #[test]
    fn a_point_flies_a_parabola() {
        let mut jump = Drawn::rollers(0).jumps[0].jump.clone();
        (jump.lip.height, jump.landing.height) = (0.6, 0.6);
        jump.landing.angle_deg = 0.5_f64.atan().to_degrees();
        let left = Left {
            velocity: [GRAVITY, 0.5 * GRAVITY],
            centre: [0.0, 0.0],
        };
        let stance = Stance {
            stand: 0.0,
            half: 0.0,
        };
        // The slope has fallen ½ m where the point comes down: t² − t = 2 · ½/g.
        let t = 0.5 + (0.25_f64 + 1.0 / GRAVITY).sqrt();
        jump.gap = GRAVITY * t - 1.0;
        let throw = Throw {
            left,
            stance,
            grade: 0.0,
            jump: &jump,
        };
        let (gap, _) = throw.gap(1.0).expect("it comes down");
        assert!((gap - jump.gap).abs() < 1e-12);
        assert!((throw.past().expect("it comes down") - 1.0).abs() < 1e-9);
    }
}
