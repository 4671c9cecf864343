//! Where the rear wheel went through the air.

use super::sheet::{Ink, Sheet};
use super::view::Strip;
use core::ops::Range;
use glam::DVec2;
use sim::ride::Sample;

/// The lowest points of the rear wheel while both wheels were off the ground, flight by flight, m.
#[derive(Clone, Debug, Default)]
pub struct Flights(Vec<Vec<DVec2>>);

/// What is shorter than this is a hop on rough ground; samples.
const SHORTEST: usize = 20;

/// The flights of a ride, as samples during which both wheels are off the ground.
pub fn flights(samples: &[Sample]) -> impl Iterator<Item = Range<usize>> {
    let mut end = 0;
    let stretches = samples.chunk_by(|a, b| a.aloft() == b.aloft());
    stretches.filter_map(move |stretch| {
        let start = end;
        end += stretch.len();
        (stretch[0].aloft() && stretch.len() >= SHORTEST).then_some(start..end)
    })
}

impl Flights {
    /// The flights of a ride on a bike with a wheelbase and a wheel radius, m.
    pub fn of(samples: &[Sample], wheelbase: f64, wheel: f64) -> Self {
        let tread = |s: &Sample| rear_tread(s, wheelbase, wheel);
        let all = flights(samples).map(|flight| samples[flight].iter().map(tread).collect());
        Self(all.collect())
    }

    /// Lays them on the sheet.
    pub fn draw(&self, ink: Ink, strip: &Strip, sheet: &mut Sheet) {
        for flight in &self.0 {
            let (first, last) = (flight[0], flight[flight.len() - 1]);
            if strip.shows(first.x, last.x) {
                sheet.dashes(ink, 1.6, flight.iter().map(|&p| strip.place(p)));
            }
        }
    }
}

fn rear_tread(s: &Sample, wheelbase: f64, wheel: f64) -> DVec2 {
    let axle = DVec2::new(s.bike_x, s.bike_z) - DVec2::from_angle(s.pitch) * (0.5 * wheelbase);
    axle - DVec2::Y * wheel
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::made_up;

    #[test]
    fn only_stretches_without_load_are_flights() {
        let mut samples = made_up::rolling(5.0, 1.0);
        for (i, s) in samples.iter_mut().enumerate() {
            let down = !(30..60).contains(&i) && !(80..84).contains(&i);
            s.rear_load = if down { 200.0 } else { 0.0 };
        }
        let flights = Flights::of(&samples, 0.9, 0.253);
        assert_eq!(flights.0.len(), 1);
        assert_eq!(flights.0[0].len(), 30);
        assert!((flights.0[0][0].x - (1.5 - 0.45)).abs() < 1e-9);
    }
}
