//! The start ramp from the side.

use super::plate::{Plate, WIDE};
use super::ramp_shape::{Drawing, FOOTING};
use super::reader::Reader;
use super::shapes::{at, timber};
use crate::scene::sheet::Ink;
use glam::DVec2;
use sim::build::ramp::{RampSheet, RampStock};
use sim::profile::Profile;

/// Room at the left and at the right, px.
const ROOM: [f64; 2] = [46.0, 76.0];
/// Most pixels to the metre.
const NEAREST: f64 = 120.0;

/// A start ramp with its frame, rails and stair; all measures level or plumb, but for radii and the slope's angle.
///
/// D with a length, under each row: its posts over the ground. Letters: A deck, B joists, C beams across, D post, E brace, F rail, G balusters, H stair, I footing. What a ramp
/// has not, has no letter.
pub fn ramp(sheet: &RampSheet, stock: &RampStock, profile: &Profile, reader: Reader) -> Plate {
    let mut plate = Plate::new(WIDE, reader);
    let back = sheet
        .stair
        .map_or(0.0, |s| s.going * f64::from(s.risers - 1));
    let scale = ((WIDE - ROOM[0] - ROOM[1]) / (back + sheet.shape.run)).min(NEAREST);
    let strip = at(DVec2::new(ROOM[0] + back * scale, 0.0), scale);
    let drawing = Drawing {
        sheet,
        stock,
        profile,
        strip,
    };
    plate.ground(&[-back - 0.3, sheet.shape.run + 0.3].map(|x| drawing.px(x, drawing.ground(x))));
    drawing.frame(&mut plate);
    drawing.deck(&mut plate);
    drawing.rails(&mut plate);
    drawing.stair(&mut plate);
    drawing.measures(&mut plate);
    drawing.letters(&mut plate);
    plate.done()
}

impl Drawing<'_> {
    fn deck(&self, plate: &mut Plate) {
        let all = [0.0, self.sheet.shape.run];
        let [thick, deep] = [self.stock.deck[0], self.stock.joist[1]];
        plate.sheet.line(Ink::Wood, 0.8, self.under(all, thick));
        plate
            .sheet
            .line(Ink::Wood, 1.0, self.under(all, thick + deep));
        plate.sheet.line(Ink::Ground, 2.6, self.under(all, 0.0));
        // Where joists meet over a row.
        for stretch in &self.sheet.frame.stretches {
            let x = stretch.to;
            let ends = [thick, thick + deep]
                .map(|by| self.px(x, (self.surface(x) - by).max(self.ground(x))));
            plate.sheet.line(Ink::Wood, 0.8, ends);
        }
    }

    /// Posts, beams, footings and braces.
    fn frame(&self, plate: &mut Plate) {
        let half = 0.5 * self.stock.post[1];
        let [thick, deep] = self.stock.bearer;
        let draw = |p: DVec2| self.strip.place(p);
        for (i, row) in self.sheet.frame.rows.iter().enumerate() {
            let foot = DVec2::new(row.at, self.ground(row.at));
            let head = foot + DVec2::Y * row.post;
            plate
                .sheet
                .line(Ink::Wood, 1.2, timber(foot, head, half, half).map(draw));
            for side in [-half - thick, half] {
                let low = DVec2::new(row.at + side, head.y - deep);
                let beam = timber(low, low + DVec2::Y * deep, 0.0, thick).map(draw);
                plate.sheet.area(Ink::Built, beam);
                plate.sheet.line(Ink::Wood, 1.0, beam);
            }
            let sole = timber(
                foot - DVec2::Y * FOOTING,
                foot,
                0.5 * row.footing,
                0.5 * row.footing,
            );
            plate.sheet.dashes(Ink::Wood, 0.9, sole.map(draw));
            if let Some(next) = self.sheet.frame.rows.get(i + 1).filter(|_| row.braced) {
                let to = DVec2::new(next.at, self.ground(next.at));
                let wide = 0.5 * self.stock.brace[1];
                plate
                    .sheet
                    .line(Ink::Wood, 0.8, timber(head, to, wide, wide).map(draw));
            }
        }
    }

    fn rails(&self, plate: &mut Plate) {
        let Some(rails) = &self.sheet.rails else {
            return;
        };
        for share in [0.5, 1.0] {
            let rail = |i: u32| {
                let x = rails.to * f64::from(i) / 60.0;
                self.px(x, self.surface(x) + share * rails.height)
            };
            let width = if share > 0.9 { 2.0 } else { 1.2 };
            plate.sheet.line(Ink::Wood, width, (0..=60).map(rail));
        }
        let upright = |x: f64| [0.0, rails.height].map(|up| self.px(x, self.surface(x) + up));
        for i in 0..rails.posts {
            let x = rails.to * f64::from(i) / f64::from(rails.posts.max(2) - 1);
            plate.sheet.line(Ink::Wood, 2.4, upright(x));
        }
        let step = rails.gap + self.stock.brace[0];
        let count = (rails.closed_to / step).floor() as u32;
        for i in 1..=count {
            plate
                .sheet
                .line(Ink::Wood, 0.5, upright(step * f64::from(i)));
        }
    }

    fn stair(&self, plate: &mut Plate) {
        let Some(stair) = &self.sheet.stair else {
            return;
        };
        let mut points = vec![DVec2::ZERO];
        for i in 0..stair.risers {
            let z = -stair.rise * f64::from(i + 1);
            points.push(DVec2::new(-stair.going * f64::from(i), z));
            if i + 1 < stair.risers {
                points.push(DVec2::new(-stair.going * f64::from(i + 1), z));
            }
        }
        plate
            .sheet
            .line(Ink::Wood, 1.4, points.iter().map(|&p| self.strip.place(p)));
        let Some(&foot) = points.last() else { return };
        let deep = self.stock.joist[1];
        let string = [
            DVec2::new(0.0, -deep - stair.rise),
            foot + DVec2::new(deep, 0.0),
        ];
        plate
            .sheet
            .line(Ink::Wood, 1.0, string.map(|p| self.strip.place(p)));
    }
}
