//! The line of total head: a thin string above the ground, as high as the rider would still climb.
//!
//! Its gap to the ground is the speed as a height of drop, v²/2g with the wheels' spin; where it falls,
//! something was lost, where it rises, legs have put something in. Hydraulics draws an energy grade line
//! in the same way.

use super::moment::Moment;
use super::seen::Seen;
use super::sheet::{Align, Ink, Label, Sheet};
use super::view::Strip;
use glam::DVec2;
use sim::profile::Profile;
use sim::ride::Sample;

/// Samples to a point of the line: what lies between is no more than the wheels' own shaking.
const COARSE: usize = 4;

/// Width of the string, px.
const STRING: f64 = 1.4;

/// How far from the sheet's edge its name ends, px.
const EDGE: f64 = 10.0;

/// Room for its name, px.
const NAME: f64 = 110.0;

/// The line, m.
#[derive(Clone, Debug, Default)]
pub struct Energy {
    points: Vec<DVec2>,
    samples: Vec<Sample>,
    /// Height of the mass centre over the ground at the start, m: so much of every head is no speed.
    stand: f64,
}

impl Energy {
    /// The line of a ride.
    pub fn of(profile: &Profile, samples: &[Sample]) -> Self {
        let Some(first) = samples.first() else {
            return Self::default();
        };
        let ground = profile.height_at(first.bike_x).unwrap_or(0.0);
        let stand = first.height - ground;
        let points = samples.iter().step_by(COARSE);
        Self {
            points: points
                .map(|s| DVec2::new(s.bike_x, s.head - stand))
                .collect(),
            samples: samples.to_vec(),
            stand,
        }
    }

    /// Height of the line at a moment, m.
    fn height(&self, t: f64) -> Option<f64> {
        let i = self.samples.partition_point(|s| s.t < t);
        let sample = self.samples.get(i).or(self.samples.last())?;
        Some(sample.head - self.stand)
    }

    /// Lays it on the sheet: what is behind the rider whole, what is to come broken; and plumb from the
    /// string to the rider the drop that the speed is worth.
    pub fn draw(&self, seen: &Seen, strip: &Strip, sheet: &mut Sheet) {
        let Some(moment) = Moment::at(&self.samples, seen.time) else {
            return;
        };
        let shown = |p: &&DVec2| strip.shows(p.x - 0.5, p.x + 0.5);
        let (past, ahead): (Vec<DVec2>, Vec<DVec2>) = self
            .points
            .iter()
            .filter(shown)
            .partition(|p| p.x <= moment.bike.x);
        let px = |p: &DVec2| strip.place(*p);
        sheet.line(Ink::Energy, STRING, past.iter().map(px));
        sheet.dashes(Ink::Energy, STRING, ahead.iter().map(px));
        // The name stands at the far end, over the highest of the line that it would else cross.
        let end = seen.size.x - EDGE;
        let along = past.iter().chain(&ahead).map(px);
        let under = along.filter(|p| p.x < end && p.x > end - NAME);
        if let Some(at) = under.reduce(|a, b| DVec2::new(a.x.max(b.x), a.y.min(b.y))) {
            let at = at - DVec2::new(0.0, 7.0);
            sheet.text(Ink::Energy, 13.0, at, Align::Left, Label::Energy);
        }
        if let Some(z) = self
            .height(seen.time)
            .filter(|_| strip.holds(moment.bike.x))
        {
            let top = strip.place(DVec2::new(moment.bike.x, z));
            let foot = strip.place(moment.bike);
            sheet.line(Ink::Energy, STRING, [top, foot]);
            sheet.disc(Ink::Energy, top, 3.0);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use sim::plan;
    use sim::setup::ride_plan;

    #[test]
    fn the_gap_to_the_ground_is_the_speed_as_a_height() {
        let ridden = ride_plan(&plan::demo(), 0).unwrap();
        let energy = Energy::of(&ridden.profile, &ridden.run.samples);
        for s in ridden.run.samples.iter().step_by(50) {
            let line = energy.height(s.t).unwrap();
            let drop = s.speed * s.speed / (2.0 * 9.80665);
            let over = s.height - energy.stand;
            // Spin adds a few hundredths of the speed's own height; tyres store next to nothing.
            let gap = line - over;
            assert!(
                gap >= drop - 0.02 && gap < 1.12 * drop + 0.05,
                "{gap} {drop}"
            );
        }
    }

    #[test]
    fn it_falls_from_the_start_to_the_end() {
        let profile = Profile::build(&plan::demo()).unwrap();
        let ridden = ride_plan(&plan::demo(), 0).unwrap();
        let energy = Energy::of(&profile, &ridden.run.samples);
        let (first, last) = (energy.points[0].y, energy.points[energy.points.len() - 1].y);
        assert!(first > last + 2.0, "{first} {last}");
    }
}
