//! What an observer would have seen of a ride.

use crate::constants::GRAVITY;
use crate::num;
use crate::plan::{Clocked, Landed, Observation, Stopped, Timed};
use crate::profile::{Intent, LipEdge, Profile};
use crate::ride::{EventKind, Mount, Outcome, Run, Sample};

use glam::DVec2;
use serde::Serialize;

/// Fewest samples off the ground that count as a flight of the rear wheel.
const FLIGHT: usize = 6;

/// Least slope and rolling resistance together that hold a bike back: with less it rolls on and on.
const LEAST_HOLDS: f64 = 0.01;

/// Whether an observation can be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Use {
    /// It can.
    Used,
    /// There is no such place or jump on the line.
    OffTheLine,
    /// The rider brakes there, and nobody knows how hard.
    Braking,
    /// Hardly any ride gets there, whatever the inputs.
    NeverThere,
}

/// What a ride shows of an observation, in its unit; or why it shows nothing.
pub(crate) type Reading = Result<f64, Use>;

/// A ride to be looked at.
pub(crate) struct Course<'a> {
    pub profile: &'a Profile,
    pub mount: &'a Mount,
    pub run: &'a Run,
}

impl Course<'_> {
    /// What is seen of it.
    pub fn read(&self, seen: &Observation) -> Reading {
        match seen {
            Observation::Time(seen) => self.time(seen),
            Observation::Speed(seen) => self.speed(seen),
            Observation::Landed(seen) => self.landing(seen),
            Observation::Stopped(seen) => self.stop(seen),
        }
    }

    fn time(&self, seen: &Timed) -> Reading {
        Ok(self.passing(seen.to)?.0 - self.passing(seen.from)?.0)
    }

    fn speed(&self, seen: &Clocked) -> Reading {
        Ok(self.passing(seen.at)?.1)
    }

    /// When the middle of the bike passes a place, s, and how fast, m/s. A place before the start
    /// stands for the start.
    fn passing(&self, x: f64) -> Result<(f64, f64), Use> {
        if x > self.last_place() {
            return Err(Use::OffTheLine);
        }
        if x > self.brakes_from() {
            return Err(Use::Braking);
        }
        let samples = &self.run.samples;
        let passed = samples.iter().position(|s| s.bike_x >= x);
        let i = passed.ok_or(Use::NeverThere)?;
        let b = &samples[i];
        let Some(a) = i.checked_sub(1).map(|i| &samples[i]) else {
            return Ok((b.t, b.speed));
        };
        let s = (x - a.bike_x) / (b.bike_x - a.bike_x);
        Ok((a.t + s * (b.t - a.t), a.speed + s * (b.speed - a.speed)))
    }

    /// The last place that the middle of the bike comes to before the front wheel is at the end, m.
    fn last_place(&self) -> f64 {
        let end = self.profile.pieces.last().map_or(0.0, |p| p.end.x);
        end - 0.5 * self.mount.wheelbase - 1.5 * self.mount.tyre.radius
    }

    fn brakes_from(&self) -> f64 {
        let mut pieces = self.profile.pieces.iter();
        let brakes = pieces.find(|p| p.character.intent == Intent::Brake);
        brakes.map_or(f64::INFINITY, |p| p.start.x)
    }

    /// The mark of the rear wheel: where its outline meets the ground after the flight.
    fn landing(&self, seen: &Landed) -> Reading {
        let index = seen.jump as usize;
        let lip = self.profile.lips.get(index).ok_or(Use::OffTheLine)?;
        let samples = &self.run.samples;
        let left = |t: &EventKind| matches!(t, EventKind::LipLeft { lip, .. } if *lip == index);
        let mut events = self.run.events.iter();
        let left = events.find(|e| left(&e.kind)).ok_or(Use::NeverThere)?;
        let mut aloft = 0;
        for (i, sample) in samples.iter().enumerate().filter(|(_, s)| s.t > left.t) {
            if sample.rear_load <= 0.0 {
                aloft += 1;
            } else if aloft >= FLIGHT {
                return Ok(self.mark(&samples[i - 1], sample, lip));
            } else {
                aloft = 0;
            }
        }
        Err(Use::NeverThere)
    }

    /// Between two samples, the later one with the tyre pressed in, m past the knuckle.
    fn mark(&self, a: &Sample, b: &Sample, lip: &LipEdge) -> f64 {
        let gap = |s: &Sample| {
            let axle = self.rear_axle(s);
            let closest = self.profile.closest(axle).map(|(_, c)| c);
            closest.map_or((0.0, axle.x), |c| {
                (c.distance - self.mount.tyre.radius, c.point.x)
            })
        };
        let ((before, from), (after, to)) = (gap(a), gap(b));
        let s = num::clamp(before / num::max(before - after, 1e-9), 0.0, 1.0);
        from + s * (to - from) - lip.knuckle.x
    }

    fn rear_axle(&self, s: &Sample) -> DVec2 {
        let (sin, cos) = num::sin_cos(s.pitch);
        DVec2::new(s.bike_x, s.bike_z) - DVec2::new(cos, sin) * (0.5 * self.mount.wheelbase)
    }

    /// Where the ride comes to a stand. One that passes the place seen would go on from there as far
    /// as the slope and the ground of that place let it: so the reading has no jump where a ride
    /// only just passes.
    fn stop(&self, seen: &Stopped) -> Reading {
        match self.passing(seen.at) {
            Ok((_, speed)) => Ok(seen.at + self.further(seen.at, speed)),
            Err(Use::NeverThere) if self.run.outcome != Outcome::Crashed => {
                let last = self.run.samples.last();
                last.map(|s| s.bike_x).ok_or(Use::NeverThere)
            }
            Err(why) => Err(why),
        }
    }

    /// How far a bike with a speed rolls on from a place where all is as in that place, m.
    fn further(&self, x: f64, speed: f64) -> f64 {
        let m = self.mount;
        let holds = self.profile.spot(x).map_or(0.0, |spot| {
            let surface = self.profile.pieces[spot.piece].character.surface;
            num::tan(spot.heading) + m.rolling[surface.index()]
        });
        let turns = 2.0 * m.wheel_inertia / (m.tyre.radius * m.tyre.radius);
        let square = speed * speed;
        // The square of the speed falls evenly on the way: half of it is its mean.
        let air = m.bearings[0] + 0.5 * m.drag * square;
        let force = m.mass() * GRAVITY * num::max(holds, LEAST_HOLDS) + air;
        0.5 * (m.mass() + turns) * square / force
    }
}
