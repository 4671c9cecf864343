//! The state of a ride at any time, between its samples.

use glam::DVec2;
use sim::num;
use sim::ride::{SAMPLE_STEP, Sample};

/// What the picture needs of the state at one moment. Units as in [`Sample`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// Middle between the axles, m.
    pub bike: DVec2,
    /// Pitch of the bike, rad.
    pub pitch: f64,
    /// The rider's mass centre, m.
    pub rider: DVec2,
    /// The rider's lean, rad.
    pub lean: f64,
    /// Distance from the middle between the axles to the rider's mass centre, m.
    pub reach: f64,
    /// Speed of the common mass centre, m/s.
    pub speed: f64,
    /// How far the rear and the front wheel have turned, rad.
    pub turned: [f64; 2],
}

impl Moment {
    /// The state at `t` seconds, held at the first and last sample outside of them. `None` only
    /// where there are no samples.
    pub fn at(samples: &[Sample], t: f64) -> Option<Self> {
        let last = samples.len().checked_sub(1)?;
        let i = ((t.max(0.0) / SAMPLE_STEP) as usize).min(last.saturating_sub(1));
        let (a, b) = (&samples[i], &samples[(i + 1).min(last)]);
        let span = b.t - a.t;
        let part = if span > 0.0 { (t - a.t) / span } else { 1.0 };
        Some(Self::between(a, b, num::clamp(part, 0.0, 1.0)))
    }

    fn between(a: &Sample, b: &Sample, part: f64) -> Self {
        let mix = |a: f64, b: f64| a + (b - a) * part;
        let point = |ax, az, bx, bz| DVec2::new(mix(ax, bx), mix(az, bz));
        Self {
            bike: point(a.bike_x, a.bike_z, b.bike_x, b.bike_z),
            pitch: mix(a.pitch, b.pitch),
            rider: point(a.rider_x, a.rider_z, b.rider_x, b.rider_z),
            lean: mix(a.lean, b.lean),
            reach: mix(a.reach, b.reach),
            speed: mix(a.speed, b.speed),
            turned: [
                mix(a.rear_turned, b.rear_turned),
                mix(a.front_turned, b.front_turned),
            ],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::made_up;

    #[test]
    fn between_samples_it_moves_evenly_and_outside_it_stands() {
        let samples = made_up::rolling(5.0, 1.0);
        let x = |t| Moment::at(&samples, t).unwrap().bike.x;
        assert!((x(0.505) - 2.525).abs() < 1e-9);
        assert_eq!(x(-1.0), samples[0].bike_x);
        assert_eq!(x(99.0), samples[samples.len() - 1].bike_x);
        assert!(Moment::at(&[], 0.0).is_none());
    }
}
