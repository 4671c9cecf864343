//! One landing with walls and as a plain mound, of the same ride line.

use super::plate::{Plate, WIDE};
use super::reader::Reader;
use super::shapes::at;
use crate::scene::land;
use crate::scene::sheet::Ink;
use crate::scene::view::Strip;
use glam::DVec2;
use sim::build::dirt::{Boxed, Heap};
use sim::build::heap::Earth;
use sim::profile::{LipEdge, Profile};

/// Room at the left, between side view and section, and at the right, px.
const ROOM: [f64; 3] = [30.0, 50.0, 110.0];
/// Most pixels to the metre.
const NEAREST: f64 = 110.0;

/// Above a landing in walls, below the same as a plain mound: to the left from the side, to the right cut across at its
/// knuckle, all at one scale.
///
/// Letters: A with walls, B as a mound.
pub fn mounds(boxed: &Boxed, earth: &Earth, profile: &Profile, reader: Reader) -> Option<Plate> {
    let ends = profile.lips.iter().find(|l| l.feature == boxed.feature)?;
    let mut plate = Plate::new(WIDE, reader);
    let long = slope(&boxed.mound, ends)
        .map_or(0.0, |s| ends.knuckle.x - s[0].x)
        .max(0.3);
    let from = ends.knuckle.x - long - 0.2;
    let to = ends.landing_end.x + 0.2;
    let wide = (to - from) + boxed.mound.foot;
    let scale = ((WIDE - ROOM.iter().sum::<f64>()) / wide).min(NEAREST);
    let mut top = 0.0;
    for (i, heap) in [&boxed.walls, &boxed.mound].into_iter().enumerate() {
        let origin = DVec2::new(ROOM[0] - from * scale, top + ends.knuckle.y * scale);
        let strip = at(origin, scale);
        let walled = (i == 0).then_some(earth.slope);
        let side = Side {
            heap,
            walled,
            profile,
            ends,
            reach: [from, to],
            strip,
        };
        side.draw(i, &mut plate);
        let middle = WIDE - ROOM[2] - 0.5 * boxed.mound.foot * scale;
        side.across(middle, &mut plate);
        top = plate.lowest() + 44.0;
    }
    Some(plate.done())
}

struct Side<'a> {
    heap: &'a Heap,
    /// Of one in walls: the run of what slopes under them, for each metre of height.
    walled: Option<f64>,
    profile: &'a Profile,
    ends: &'a LipEdge,
    reach: [f64; 2],
    strip: Strip,
}

/// The slope that comes down before a landing's knuckle, its foot and its top.
fn slope(heap: &Heap, ends: &LipEdge) -> Option<[DVec2; 2]> {
    let near = |s: &&[DVec2; 2]| (s[1].x - ends.knuckle.x).abs() < 0.01;
    heap.slopes.iter().find(near).copied()
}

impl Side<'_> {
    fn yard(&self, x: f64) -> DVec2 {
        DVec2::new(x, land::yard(self.profile, x))
    }

    fn draw(&self, letter: usize, plate: &mut Plate) {
        let px = |p: DVec2| self.strip.place(p);
        let (knuckle, end) = (self.ends.knuckle, self.ends.landing_end);
        let ride = |i: u32| {
            let x = knuckle.x + (end.x - knuckle.x) * f64::from(i) / 100.0;
            let z = self.profile.height_at(x).unwrap_or(knuckle.y);
            DVec2::new(x, z.min(knuckle.y.max(end.y)))
        };
        let ride: Vec<_> = (0..=100).map(ride).collect();
        let mut outline: Vec<_> = ride.clone();
        let slope = slope(self.heap, self.ends);
        outline.extend([self.yard(end.x), self.yard(knuckle.x)]);
        outline.extend(slope.map(|s| s[0]));
        outline.push(knuckle);
        plate.sheet.area(Ink::Built, outline.iter().map(|&p| px(p)));
        plate
            .sheet
            .line(Ink::Ground, 1.2, outline.into_iter().map(px));
        plate.sheet.line(Ink::Ground, 2.6, ride.into_iter().map(px));
        plate.ground(&self.reach.map(|x| px(self.yard(x))));
        if self.walled.is_some() {
            let wall = [self.yard(knuckle.x), knuckle];
            plate.sheet.line(Ink::Wood, 4.0, wall.map(px));
        }
        let reader = plate.reader;
        let y = plate.lowest() + 16.0;
        let from = slope.map_or(knuckle.x, |s| s[0].x);
        let at = |x: f64| DVec2::new(px(DVec2::new(x, 0.0)).x, y);
        if from < knuckle.x - 0.01 {
            plate.measure(
                at(from),
                at(knuckle.x),
                DVec2::ZERO,
                reader.length(knuckle.x - from),
            );
        }
        plate.measure(
            at(knuckle.x),
            at(end.x),
            DVec2::ZERO,
            reader.length(end.x - knuckle.x),
        );
        let middle = DVec2::new(knuckle.x + 0.3 * (end.x - knuckle.x), 0.0);
        let on = self.profile.height_at(middle.x).unwrap_or(knuckle.y);
        let inside = DVec2::new(middle.x, 0.5 * (on + self.yard(middle.x).y));
        plate.letter(letter, px(inside), DVec2::new(30.0, -46.0));
    }

    /// The section across at the knuckle.
    fn across(&self, middle: f64, plate: &mut Plate) {
        let (heap, reader) = (self.heap, plate.reader);
        let scale = self.strip.scale;
        let knuckle = self.ends.knuckle;
        let high = knuckle.y - self.yard(knuckle.x).y;
        let base = self.strip.place(self.yard(knuckle.x)).y;
        let walled = self.walled.is_some();
        let at = |y: f64, z: f64| DVec2::new(middle + y * scale, base - z * scale);
        let (top, foot) = (0.5 * heap.top, 0.5 * heap.foot);
        // Within walls only the bed under them slopes.
        let bed = self.walled.map_or(0.0, |run| (foot - top) / run);
        let half = if walled {
            vec![at(foot, 0.0), at(top, bed), at(top, high)]
        } else {
            vec![at(foot, 0.0), at(top, high)]
        };
        let mirrored = half
            .iter()
            .rev()
            .map(|p| DVec2::new(2.0 * middle - p.x, p.y));
        let outline: Vec<_> = half.iter().copied().chain(mirrored).collect();
        plate.sheet.area(Ink::Built, outline.iter().copied());
        plate.sheet.line(Ink::Ground, 1.2, outline.iter().copied());
        if walled {
            for side in [-top, top] {
                plate
                    .sheet
                    .line(Ink::Wood, 4.0, [at(side, bed), at(side, high)]);
            }
        }
        plate
            .sheet
            .line(Ink::Ground, 2.6, [at(-top, high), at(top, high)]);
        plate.ground(&[at(-foot - 0.15, 0.0), at(foot + 0.15, 0.0)]);
        plate.measure(
            at(-top, high),
            at(top, high),
            DVec2::new(0.0, -18.0),
            reader.length(heap.top),
        );
        let beside = DVec2::new((foot - top) * scale + 24.0, 0.0);
        plate.measure(at(top, 0.0), at(top, high), beside, reader.length(high));
        let under = DVec2::new(0.0, 26.0);
        plate.measure(
            at(-foot, 0.0),
            at(foot, 0.0),
            under,
            reader.length(heap.foot),
        );
    }
}
