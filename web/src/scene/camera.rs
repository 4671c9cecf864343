//! The camera beside the line: it goes with the rider, rises calmly, and steps back in time for the whole of
//! the next jump.

use super::moment::Moment;
use glam::DVec2;
use sim::num;
use sim::profile::Profile;
use sim::ride::{SAMPLE_STEP, Sample};

/// Half the time over which the height of the view is averaged, s: calm over rollers, and it
/// still rises before a jump.
const CALM: f64 = 1.0;
/// Half the time over which it steps back and comes near again, s.
const STEP_BACK: f64 = 0.7;
/// So far before a lip rises its jump is framed, m.
const NOTICE: f64 = 4.0;
/// What is left free behind a landing's slope, m.
const SPARE: f64 = 0.8;

/// Running sums over a ride, so that the average round any moment is two look-ups.
#[derive(Clone, Debug)]
pub struct Camera {
    heights: Vec<f64>,
    aheads: Vec<f64>,
}

impl Camera {
    /// The camera for a ride down a line.
    pub fn of(profile: &Profile, samples: &[Sample]) -> Self {
        let ahead = |s: &Sample| {
            let jump = profile.lips.iter().find(|l| l.slope_end.x > s.bike_x);
            let near = jump.filter(|l| l.foot.x - s.bike_x < NOTICE);
            near.map_or(0.0, |l| l.slope_end.x + SPARE - s.bike_x)
        };
        Self {
            heights: sums(samples.iter().map(|s| s.bike_z)),
            aheads: sums(samples.iter().map(ahead)),
        }
    }

    /// What is kept in sight at a moment, m.
    pub fn focus(&self, samples: &[Sample], time: f64) -> DVec2 {
        let moment = Moment::at(samples, time);
        DVec2::new(
            moment.map_or(0.0, |m| m.bike.x),
            average(&self.heights, time, CALM),
        )
    }

    /// How far ahead of the rider the view has to reach at a moment, m; 0 where nothing is to be framed.
    pub fn ahead(&self, time: f64) -> f64 {
        average(&self.aheads, time, STEP_BACK)
    }
}

/// Sums of the first 0, 1, 2 and so on.
fn sums(values: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut sum = 0.0;
    let running = values.map(|v| {
        sum += v;
        sum
    });
    std::iter::once(0.0).chain(running).collect()
}

/// The average over the time around `t`, by sums over samples.
fn average(sums: &[f64], t: f64, around: f64) -> f64 {
    let last = (sums.len() - 1) as f64;
    let place = |t: f64| num::clamp(t / SAMPLE_STEP, 0.0, last);
    let (a, b) = (place(t - around), place(t + around));
    let sum = |at: f64| {
        let i = at.floor() as usize;
        let next = sums[(i + 1).min(last as usize)];
        sums[i] + (next - sums[i]) * at.fract()
    };
    if b > a {
        (sum(b) - sum(a)) / (b - a)
    } else {
        0.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use sim::{plan, setup};

    #[test]
    fn the_average_of_a_straight_line_is_its_middle() {
        let sums = sums((0..=300).map(f64::from));
        // Samples stand for the time up to the next: the middle of sample 100 is half a step later.
        assert!((average(&sums, 1.005, 0.5) - 100.0).abs() < 1e-9);
    }

    #[test]
    fn it_steps_back_before_a_jump_and_never_jerks() {
        let ridden = setup::ride_plan(&plan::demo(), 0).unwrap();
        let (profile, samples) = (&ridden.profile, &ridden.run.samples);
        let camera = Camera::of(profile, samples);
        let lip = profile.lips[0];
        let at_foot = samples.iter().find(|s| s.bike_x > lip.foot.x).unwrap();
        let needed = lip.slope_end.x - at_foot.bike_x;
        assert!(
            camera.ahead(at_foot.t) > 0.8 * needed,
            "the landing is in sight"
        );
        assert_eq!(camera.ahead(0.5), 0.0);
        for pair in samples.windows(2) {
            let [a, b] = [0, 1].map(|i| camera.ahead(pair[i].t));
            assert!((b - a).abs() < 0.12, "{a} m to {b} m at {} s", pair[0].t);
        }
    }
}
