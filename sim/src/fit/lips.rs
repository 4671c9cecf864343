//! What a test ride means for the lips: how fast, how sure, how the jump goes, and why it may be faster
//! where all was slower.

use super::search::Found;
use super::{Day, Fit, What, apply};
use crate::error::Fault;
use crate::judge::{How, jumps};
use crate::plan::{Observation, Plan};
use crate::setup::ride_plan;
use serde::Serialize;

/// An input that by itself does less than this share of a difference is no reason for it.
const TELLING: f64 = 0.3;

/// A lip with the inputs found. Speeds in m/s.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AtLip {
    /// Index of the lip in the profile.
    pub lip: usize,
    /// As planned.
    pub planned: Option<f64>,
    /// As ridden with what was found in place of what was planned.
    pub speed: Option<f64>,
    /// One standard deviation of that, from those of the inputs together.
    pub sigma: f64,
    /// How much rides that are all but alike scatter there, one standard deviation.
    pub scatter: f64,
    /// How the jump goes then.
    pub how: How,
    /// Where the lip is left faster than planned although the rider was seen slower, or the other way
    /// round: the inputs that make it so, most telling first; none where no input does.
    pub against: Option<Vec<What>>,
}

/// Every lip as it is planned and as it is ridden once the plan has what was found.
///
/// # Errors
/// Every fault of the plan, or of the plan with what was found.
pub(super) fn at_lips(
    plan: &Plan,
    fit: &Fit,
    day: &Day,
    found: &Found,
) -> Result<Vec<AtLip>, Vec<Fault>> {
    let rows = |plan: &Plan| ride_plan(plan, fit.rider).map(|r| jumps(&r.profile, &r.run));
    let (before, after) = (rows(plan)?, rows(&apply(plan, fit))?);
    let Found {
        solution, surfaces, ..
    } = found;
    let slower = slower(day, found);
    let lips = before.iter().zip(&after).enumerate().map(|(lip, (a, b))| {
        let quantity = day.rides.seen.len() + lip;
        let slope = surfaces.at(quantity, &solution.values).map(|(_, g)| g);
        let inputs = slope.map_or(0.0, |g| g.dot(&(&solution.covariance * &g)));
        let scatter = surfaces.scatter(quantity, quantity);
        let faster = a.speed.zip(b.speed).map_or(0.0, |(a, b)| b - a);
        AtLip {
            lip,
            planned: a.speed,
            speed: b.speed,
            sigma: (inputs + scatter).sqrt(),
            scatter: scatter.sqrt(),
            how: b.how,
            against: (faster * slower > 0.0).then(|| against(day, fit, lip, faster)),
        }
    });
    Ok(lips.collect())
}

/// How much slower than planned the rider was timed, in standard deviations of the measuring together;
/// below 0 where it was faster.
fn slower(day: &Day, found: &Found) -> f64 {
    let one = |&i: &usize| {
        let seen = &day.rides.seen[i];
        let more = seen.value() - day.planned.readings[i].unwrap_or(seen.value());
        match seen {
            Observation::Time(_) => more / seen.give_or_take(),
            Observation::Speed(_) => -more / seen.give_or_take(),
            Observation::Landed(_) | Observation::Stopped(_) => 0.0,
        }
    };
    found.used.iter().map(one).sum()
}

/// The inputs that each by itself account for much of how much faster a lip is, m/s, and by what they are:
/// not by a slower rider who happens to hop less.
fn against(day: &Day, fit: &Fit, lip: usize, faster: f64) -> Vec<What> {
    let planned = day.rides.planned();
    let speed = |values: &[f64]| day.rides.told(values).lips[lip];
    let before = day.planned.lips[lip];
    let mut telling: Vec<(f64, What)> = Vec::new();
    for (i, input) in fit.inputs.iter().enumerate() {
        let quickens = match input.what {
            What::Rolling | What::Drag => input.planned - input.value,
            What::Start | What::Skill => input.value - input.planned,
        };
        if quickens * faster <= 0.0 {
            continue;
        }
        let mut alone = planned.clone();
        alone[i] = input.value;
        let by = before.zip(speed(&alone)).map_or(0.0, |(a, b)| b - a);
        if by * faster > TELLING * faster * faster {
            let place = telling.partition_point(|(more, _)| *more >= by.abs());
            telling.insert(place, (by.abs(), input.what));
        }
    }
    telling.into_iter().map(|(_, what)| what).collect()
}
