//! The inputs that nobody knows well: what is planned, how far off it may be, how far it is moved.

use crate::error::Fault;
use crate::judge::{DRAG, ROLLING, SKILL, START};
use crate::num;
use crate::plan::{Plan, Rolling, Style, Surface};
use crate::ride::Mount;
use crate::setup;
use serde::Serialize;

/// Farthest that each factor is moved: rolling from better than a road to soaked ground, drag from
/// lying on the bars to a coat in the wind (common practice, no source).
const ROLLING_WITHIN: [f64; 2] = [0.2, 4.0];
const DRAG_WITHIN: [f64; 2] = [0.4, 2.5];

/// Farthest that the speed at the start is moved, m/s (common practice, no source).
const START_WITHIN: f64 = 2.5;

/// Largest that a plan accepts: rolling coefficient; drag area, m²; push-off and speed at the start,
/// m/s.
const MOST_ROLLING: f64 = 0.3;
const MOST_DRAG: f64 = 1.5;
const MOST_PUSH: f64 = 8.0;
const MOST_START: f64 = 20.0;

/// Which input.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum What {
    /// Rolling resistance on every surface, as a factor on what the plan says.
    Rolling,
    /// Drag area, as a factor on what the plan says.
    Drag,
    /// Speed at the start, m/s.
    Start,
    /// How well the rider pumps, 0 to 1.
    Skill,
}

/// One input.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Uncertain {
    pub what: What,
    /// What the plan says.
    pub planned: f64,
    /// One standard deviation of that.
    pub sigma: f64,
    /// Least and most that it is moved to.
    pub within: [f64; 2],
}

/// The inputs that are fitted for a plan's rider: skill only where it is pumping.
///
/// # Errors
/// That the plan has no such rider.
pub(crate) fn inputs(plan: &Plan, rider: usize) -> Result<Vec<Uncertain>, Vec<Fault>> {
    let rider = &setup::rider(plan, rider)?.rider;
    let bikes = plan.riders.iter().map(|m| &m.bike.rolling);
    let most = bikes.map(largest).fold(0.0, num::max);
    let rolling = factor(What::Rolling, ROLLING, ROLLING_WITHIN, MOST_ROLLING / most);
    let drag = factor(What::Drag, DRAG, DRAG_WITHIN, MOST_DRAG / rider.drag_area);
    let mut inputs = vec![rolling, drag, start(plan)];
    if rider.style == Style::Pumping {
        inputs.push(Uncertain {
            what: What::Skill,
            planned: rider.skill,
            sigma: half(SKILL),
            within: [0.0, 1.0],
        });
    }
    Ok(inputs)
}

fn largest(rolling: &Rolling) -> f64 {
    Surface::ALL
        .map(|s| rolling.on(s))
        .into_iter()
        .fold(0.0, num::max)
}

/// Half the width of a range.
fn half(range: [f64; 2]) -> f64 {
    0.5 * (range[0] - range[1]).abs()
}

/// A factor on what is planned; `most` is the largest that a plan accepts.
fn factor(what: What, range: [f64; 2], [low, high]: [f64; 2], most: f64) -> Uncertain {
    Uncertain {
        what,
        planned: 1.0,
        sigma: half(range),
        within: [low, num::max(num::min(high, most), 1.0)],
    }
}

fn start(plan: &Plan) -> Uncertain {
    let planned = setup::start_speed(plan);
    let fastest = if plan.initial_speed.is_some() {
        MOST_START
    } else {
        MOST_PUSH
    };
    Uncertain {
        what: What::Start,
        planned,
        sigma: half(START),
        within: [
            num::max(planned - START_WITHIN, 0.0),
            num::min(planned + START_WITHIN, fastest),
        ],
    }
}

/// Rider, bike and day, and the speed at the start, with other values of some inputs.
pub(crate) fn with(
    mount: &Mount,
    inputs: &[Uncertain],
    start: f64,
    values: &[f64],
) -> (Mount, f64) {
    let (mut m, mut start) = (mount.clone(), start);
    for (input, &value) in inputs.iter().zip(values) {
        match input.what {
            What::Rolling => m.rolling = m.rolling.map(|c| c * value),
            What::Drag => m.drag *= value,
            What::Start => start = value,
            What::Skill => m.skill = value,
        }
    }
    (m, start)
}

impl Uncertain {
    /// The value at the end that quickens a ride.
    pub fn quick(&self) -> f64 {
        match self.what {
            What::Rolling | What::Drag => self.planned - self.sigma,
            What::Start => self.planned + self.sigma,
            What::Skill => self.planned,
        }
    }
}
