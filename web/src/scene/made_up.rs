//! Made-up states for tests of the picture; they are no ride.

use sim::ride::{SAMPLE_STEP, Sample};

/// A bike that rolls level at a speed for a time, the rider standing over it.
pub fn rolling(speed: f64, seconds: f64) -> Vec<Sample> {
    let count = (seconds / SAMPLE_STEP).round() as usize;
    (0..=count)
        .map(|i| {
            let t = i as f64 * SAMPLE_STEP;
            Sample {
                t,
                bike_x: speed * t,
                bike_z: 0.253,
                rider_x: speed * t - 0.05,
                rider_z: 0.253 + 0.64,
                reach: 0.642,
                rear_turned: speed * t / 0.253,
                front_turned: speed * t / 0.253,
                speed,
                ..Sample::default()
            }
        })
        .collect()
}
