//! What rollers cost the family's riders, apart from any jump.

use super::riders;
use sim::plan::{
    Feature, Flat, Line, Plan, Roller, RunOut, Style, Surface, USUAL_WIDTH, Weather, Yard,
};
use sim::setup::ride_plan;

/// Rollers in a row: height, length, m.
pub const SIZES: [(f64, f64); 3] = [(0.45, 3.5), (0.3, 3.2), (0.2, 2.5)];

/// How many in a row.
const COUNT: u32 = 3;

/// Head lost to one roller beyond what the same length of flat costs, m: mean over riders and sizes
/// at `speed` m/s. A rider who does not get over them all loses all there was.
pub fn loss(style: Style, speed: f64) -> f64 {
    let mut sum = 0.0;
    let riders = riders::all();
    for mut rider in riders.clone() {
        rider.rider.style = style;
        for (height, length) in SIZES {
            let over = after(&rider, speed, Some((height, length)));
            let flat = after(&rider, speed, None);
            sum += (flat - over) / f64::from(COUNT);
        }
    }
    sum / (riders.len() * SIZES.len()) as f64
}

/// v²/2g behind three rollers, or behind as much flat, m.
fn after(rider: &sim::plan::Mount, speed: f64, size: Option<(f64, f64)>) -> f64 {
    let length = size.map_or(3.2, |s| s.1);
    let flat = |length| {
        Feature::Flat(Flat {
            length,
            surface: Surface::Packed,
        })
    };
    let middle = match size {
        Some((height, length)) => Feature::Roller(Roller {
            height,
            length,
            count: COUNT,
            surface: Surface::Packed,
            width: None,
        }),
        None => flat(3.0 * length),
    };
    let plan = Plan {
        name: "Rollers".into(),
        yard: Yard::even(60.0, 0.0),
        line: Line::Features(vec![
            flat(6.0),
            middle,
            flat(6.0),
            Feature::RunOut(RunOut {
                length: 8.0,
                surface: Surface::Packed,
            }),
        ]),
        riders: vec![rider.clone()],
        weather: Weather::default(),
        initial_speed: Some(speed),
        seen: Vec::new(),
        seed: 0,
        width: USUAL_WIDTH,
    };
    let ridden = ride_plan(&plan, 0).unwrap_or_else(|faults| panic!("{faults:?}"));
    let at = 6.0 + 3.0 * length + 5.0;
    ridden
        .run
        .samples
        .iter()
        .find(|s| s.bike_x > at)
        .map_or(0.0, |s| s.speed * s.speed / 19.6133)
}
