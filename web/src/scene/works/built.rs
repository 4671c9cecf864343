//! What was built over what was planned.

use super::plate::{Plate, WIDE};
use super::reader::Reader;
use super::section::{ground, ruler, strip};
use crate::scene::sheet::Ink;
use glam::DVec2;
use sim::build::upkeep::{Difference, largest};
use sim::profile::Profile;

/// Height of the largest difference as a bar, px.
const BAR: f64 = 48.0;
/// Least difference that is drawn so high, m: less is nothing to dig for.
const FINEST: f64 = 0.02;

/// The readings in broken lines over the planned line, at one scale; and under it how far each is off, drawn so that
/// the largest is a bar of some height: upward where it was built too high. Of each feature the largest has its figure.
pub fn built(profile: &Profile, readings: &[Difference], reader: Reader) -> Option<Plate> {
    let ends = [
        profile.pieces.first()?.start.x,
        profile.pieces.last()?.end.x,
    ];
    let mut plate = Plate::new(WIDE, reader);
    let strip = strip(ends[0], ends[1]);
    ground(profile, &strip, &mut plate);
    let mut sorted = readings.to_vec();
    sorted.sort_by(|a, b| a.station.total_cmp(&b.station));
    let read = sorted
        .iter()
        .map(|d| strip.place(DVec2::new(d.station, d.built)));
    let read: Vec<_> = read.collect();
    plate.sheet.dashes(Ink::Figure, 1.0, read.iter().copied());
    for p in read {
        plate.sheet.ring(Ink::Figure, 0.8, p, 2.6);
    }
    let most = sorted.iter().map(|d| d.off.abs()).fold(FINEST, f64::max);
    let zero = plate.lowest() + 20.0 + BAR;
    let on =
        |x: f64, up: f64| DVec2::new(strip.place(DVec2::new(x, 0.0)).x, zero - up * BAR / most);
    plate
        .sheet
        .line(Ink::Figure, 1.0, [on(ends[0], 0.0), on(ends[1], 0.0)]);
    for d in &sorted {
        plate
            .sheet
            .line(Ink::Figure, 3.0, [on(d.station, 0.0), on(d.station, d.off)]);
    }
    let notes: Vec<_> = largest(&sorted)
        .iter()
        .map(|d| (on(d.station, d.off.min(0.0)), vec![reader.margin(d.off)]))
        .collect();
    let base = (zero + BAR).max(plate.lowest()) + 10.0;
    plate.row(base, &notes);
    ruler(&strip, &mut plate);
    Some(plate.done())
}
