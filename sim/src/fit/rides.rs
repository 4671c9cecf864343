//! Rides with other inputs, and what is seen of them.

use super::inputs::{self, Uncertain};
use super::reading::{Course, Reading};
use crate::error::Fault;
use crate::judge::jumps;
use crate::plan::{Observation, Plan};
use crate::profile::{Intent, Profile};
use crate::ride::{Accuracy, Mount, ride};
use crate::setup;

/// The line, the rider, and what was seen.
pub(crate) struct Rides {
    pub inputs: Vec<Uncertain>,
    pub seen: Vec<Observation>,
    profile: Profile,
    mount: Mount,
    start: f64,
}

/// What one ride shows.
#[derive(Clone, Debug)]
pub(crate) struct Told {
    /// By observation.
    pub readings: Vec<Reading>,
    /// Speeds at the lips, m/s.
    pub lips: Vec<Option<f64>>,
}

impl Rides {
    /// Prepares to ride a plan.
    ///
    /// # Errors
    /// Every fault of the plan, or that it has no such rider.
    pub fn new(plan: &Plan, rider: usize, seen: Vec<Observation>) -> Result<Self, Vec<Fault>> {
        let mut profile = Profile::build(plan)?;
        // Somebody who was let roll out did not brake.
        if seen.iter().any(|s| matches!(s, Observation::Stopped(_))) {
            for piece in &mut profile.pieces {
                if piece.character.intent == Intent::Brake {
                    piece.character.intent = Intent::Roll;
                }
            }
        }
        Ok(Self {
            inputs: inputs::inputs(plan, rider)?,
            seen,
            profile,
            mount: setup::mount(setup::rider(plan, rider)?, &plan.weather),
            start: setup::start_speed(plan),
        })
    }

    /// The inputs as planned.
    pub fn planned(&self) -> Vec<f64> {
        self.inputs.iter().map(|input| input.planned).collect()
    }

    /// What was carried to the plan holds the inputs where they are: it counts as seen as the planned ride
    /// shows it. So it tells how well they are known, and never moves them twice.
    pub fn hold(&mut self, planned: &Told) {
        for (seen, reading) in self.seen.iter_mut().zip(&planned.readings) {
            if let (true, Ok(value)) = (seen.carried(), reading) {
                *seen = seen.with_value(*value);
            }
        }
    }

    /// How many lips the line has.
    pub fn lips(&self) -> usize {
        self.profile.lips.len()
    }

    /// Rides with some values of the inputs.
    pub fn told(&self, values: &[f64]) -> Told {
        let (mount, start) = inputs::with(&self.mount, &self.inputs, self.start, values);
        let run = ride(&self.profile, &mount, start, &Accuracy::default());
        let course = Course {
            profile: &self.profile,
            mount: &mount,
            run: &run,
        };
        let rows = jumps(&self.profile, &run);
        Told {
            readings: self.seen.iter().map(|seen| course.read(seen)).collect(),
            lips: rows.iter().map(|row| row.speed).collect(),
        }
    }
}
