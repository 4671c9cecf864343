//! The long section: the line as it is staked out, with what is heaped and what is dug.

use super::plate::{Plate, WIDE};
use super::reader::Reader;
use crate::scene::sheet::{Align, Ink};
use crate::scene::view::Strip;
use crate::scene::{earth, land, wood};
use glam::DVec2;
use sim::build::stakes::Stake;
use sim::profile::Profile;
use sim::units::System;

/// Length of a part, m.
const PART: f64 = 12.0;
/// Parts shorter than this are none, m.
const LEAST: f64 = 1.0;
/// What is left of the line at either end, px.
const ENDS: f64 = 36.0;
/// Most pixels to the metre.
const NEAREST: f64 = 90.0;
/// Distance between strokes in a cut, px.
const STROKES: f64 = 5.0;
/// How far a stake stands out of the ride, px.
const STAFF: f64 = 10.0;
/// At a smaller scale stakes have their number alone, px to the metre.
const LEGIBLE: f64 = 30.0;
/// Shallowest that is dug, m.
const SHALLOW: f64 = 0.005;

/// The stations at which a line is cut into parts that are legible each on its page, m: at stakes, where there are
/// some near.
pub fn parts(profile: &Profile, stakes: &[Stake]) -> Vec<[f64; 2]> {
    let (Some(first), Some(last)) = (profile.pieces.first(), profile.pieces.last()) else {
        return Vec::new();
    };
    let (start, end) = (first.start.x, last.end.x);
    let count = ((end - start) / PART).ceil().max(1.0);
    let mut parts = Vec::new();
    let mut from = start;
    for i in 1..count as u32 {
        let even = start + (end - start) * f64::from(i) / count;
        let near = stakes.iter().map(|s| s.station);
        let near =
            near.filter(|s| (s - even).abs() < 0.4 * PART && s - from > LEAST && end - s > LEAST);
        let cut = near.reduce(|a, b| {
            if (b - even).abs() < (a - even).abs() {
                b
            } else {
                a
            }
        });
        let cut = cut.unwrap_or(even);
        parts.push([from, cut]);
        from = cut;
    }
    parts.push([from, end]);
    parts
}

/// The line from one station to another, m: ground, ride, stakes with their number from 1 and under it the height of
/// the ride over the yard, and a scale of stations; where all of a long
/// line is shown, the number alone. What is heaped is grey, what is dug has upright strokes.
pub fn section(profile: &Profile, stakes: &[Stake], [from, to]: [f64; 2], reader: Reader) -> Plate {
    let mut plate = Plate::new(WIDE, reader);
    let strip = strip(from, to);
    ground(profile, &strip, &mut plate);
    let low = plate.lowest() + 12.0;
    let shown = |s: &Stake| s.station >= from - 1e-6 && s.station <= to + 1e-6;
    let shown = stakes.iter().enumerate().filter(|(_, s)| shown(s));
    let mut notes = Vec::new();
    for (i, stake) in shown {
        let [top, foot] = [stake.ground + stake.height, stake.ground]
            .map(|z| strip.place(DVec2::new(stake.station, z)));
        plate
            .sheet
            .line(Ink::Figure, 1.6, [top - DVec2::new(0.0, STAFF), top]);
        plate.sheet.line(Ink::Figure, 0.8, [top, foot]);
        plate.sheet.disc(Ink::Figure, top, 2.6);
        let mut lines = vec![(i + 1).to_string()];
        if strip.scale > LEGIBLE {
            lines.push(reader.length(stake.height));
        }
        notes.push((foot, lines));
    }
    plate.row(low, &notes);
    ruler(&strip, &mut plate);
    plate.done()
}

/// The part of a sheet for stations from one to another.
pub fn strip(from: f64, to: f64) -> Strip {
    let scale = ((WIDE - 2.0 * ENDS) / (to - from).max(LEAST)).min(NEAREST);
    Strip {
        from,
        to,
        // What goes on beyond is seen to go on.
        beyond: 0.7 * ENDS / scale,
        scale,
        origin: DVec2::new(ENDS - from * scale, 0.0),
        top: 0.0,
        bottom: 0.0,
    }
}

/// Yard, earth, wood and the line that is ridden.
pub fn ground(profile: &Profile, strip: &Strip, plate: &mut Plate) {
    let yard: Vec<_> = land::yard_along(
        profile,
        strip.from - strip.beyond,
        strip.to + strip.beyond,
        strip,
    )
    .collect();
    for stretch in profile.pieces.split(land::wooden) {
        let shown = stretch.iter().filter(|p| strip.shows(p.start.x, p.end.x));
        let over: Vec<_> = shown
            .flat_map(|p| land::along(p, strip))
            .map(|(p, _)| p)
            .collect();
        let heaped = |p: &DVec2| strip.place(DVec2::new(p.x, p.y.max(land::yard(profile, p.x))));
        let under = |p: &DVec2| strip.place(DVec2::new(p.x, land::yard(profile, p.x)));
        let outline = over.iter().map(heaped).chain(over.iter().rev().map(under));
        plate.sheet.area(Ink::Built, outline);
    }
    dug(profile, strip, plate);
    earth::hatch_yard(profile, strip.from, strip.to, strip, &mut plate.sheet);
    wood::draw(profile, strip, &mut plate.sheet);
    plate
        .sheet
        .line(Ink::Yard, 1.0, yard.into_iter().map(|p| strip.place(p)));
    earth::draw_line(profile, strip, &mut plate.sheet);
}

/// Upright strokes where the ride runs under the yard.
fn dug(profile: &Profile, strip: &Strip, plate: &mut Plate) {
    let count = ((strip.to - strip.from) * strip.scale / STROKES) as u32;
    for i in 0..count {
        let x = strip.from + (f64::from(i) + 0.5) * STROKES / strip.scale;
        let yard = land::yard(profile, x);
        if let Some(spot) = profile.spot(x)
            && !land::wooden(&profile.pieces[spot.piece])
            && yard - spot.point.y > SHALLOW
        {
            let ends = [yard, spot.point.y].map(|z| strip.place(DVec2::new(x, z)));
            plate.sheet.line(Ink::Hatch, 0.8, ends);
        }
    }
}

/// A scale of stations under all that is drawn.
pub fn ruler(strip: &Strip, plate: &mut Plate) {
    const FOOT: f64 = 0.3048;
    let steps: [f64; 6] = match plate.reader.system {
        System::Metric => [0.5, 1.0, 2.0, 5.0, 10.0, 20.0],
        System::Feet => [2.0, 5.0, 10.0, 20.0, 50.0, 100.0].map(|n| n * FOOT),
    };
    let wide = |step: &f64| step * strip.scale >= 64.0;
    let step = steps.into_iter().find(wide).unwrap_or(steps[5]);
    let y = plate.lowest() + 14.0;
    let on = |x: f64| DVec2::new(strip.place(DVec2::new(x, 0.0)).x, y);
    plate
        .sheet
        .line(Ink::Figure, 1.0, [on(strip.from), on(strip.to)]);
    let first = (strip.from / step - 1e-6).ceil() as i64;
    let last = (strip.to / step + 1e-6).floor() as i64;
    for k in first..=last {
        let x = k as f64 * step;
        let tick = DVec2::new(0.0, 6.0);
        plate.sheet.line(Ink::Figure, 1.0, [on(x), on(x) + tick]);
        let text = plate.reader.length(x);
        let base = on(x) + DVec2::new(0.0, 20.0);
        if plate.is_free(base, Align::Middle, &text) {
            plate.write(base, Align::Middle, text);
        }
    }
}
