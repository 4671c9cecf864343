//! The start ramp from the side.

use super::plate::{Plate, WIDE};
use super::reader::Reader;
use super::shapes::{at, timber};
use crate::scene::sheet::Ink;
use crate::scene::view::Strip;
use glam::DVec2;
use sim::build::natural_ground::natural_ground;
use sim::build::ramp::{RampSheet, RampStock};
use sim::profile::Profile;

/// Room at the left and at the right, px.
const ROOM: [f64; 2] = [46.0, 76.0];
/// Most pixels to the metre.
const NEAREST: f64 = 120.0;
/// Depth to which a footing is shown, m; how deep it goes is for the ground to say.
const FOOTING: f64 = 0.25;

struct Drawing<'a> {
    sheet: &'a RampSheet,
    stock: &'a RampStock,
    profile: &'a Profile,
    strip: Strip,
}

/// A start ramp with its frame, rails and stair; all measures level or plumb, but for radii and the slope's angle.
///
/// Letters: A deck, B joists, C beams across, D post, E brace, F rail, G balusters, H stair, I footing. What a ramp
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
    fn px(&self, x: f64, z: f64) -> DVec2 {
        self.strip.place(DVec2::new(x, z))
    }

    fn back(&self) -> DVec2 {
        self.profile.pieces.first().map_or(DVec2::ZERO, |p| p.start)
    }

    /// The ground so far from the platform's back, seen from the platform, m.
    fn ground(&self, x: f64) -> f64 {
        natural_ground(self.profile, self.back().x + x) - self.back().y
    }

    /// The surface, seen from there.
    fn surface(&self, x: f64) -> f64 {
        let z = self.profile.height_at(self.back().x + x);
        z.map_or(0.0, |z| z - self.back().y)
    }

    /// The surface lowered, but not into the ground, between two places.
    fn under(&self, [from, to]: [f64; 2], by: f64) -> Vec<DVec2> {
        let at = |i: u32| {
            let x = from + (to - from) * f64::from(i) / 100.0;
            self.px(x, (self.surface(x) - by).max(self.ground(x)))
        };
        (0..=100).map(at).collect()
    }

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

    fn measures(&self, plate: &mut Plate) {
        let (shape, reader) = (&self.sheet.shape, plate.reader);
        let rows: Vec<_> = self
            .sheet
            .frame
            .rows
            .iter()
            .map(|r| r.at)
            .chain([shape.run])
            .collect();
        let stations: Vec<_> = rows.iter().map(|&x| self.px(x, 0.0).x).collect();
        let y = plate.lowest() + 18.0;
        plate.chain(y, &stations, |i| reader.length(rows[i + 1] - rows[i]));
        let level = |a: f64, b: f64| [a, b].map(|x| DVec2::new(self.px(x, 0.0).x, y));
        let [a, b] = level(0.0, shape.run);
        plate.measure(a, b, DVec2::new(0.0, 26.0), reader.length(shape.run));
        if let Some(stair) = &self.sheet.stair {
            let long = stair.going * f64::from(stair.risers - 1);
            let [a, b] = level(-long, 0.0);
            plate.measure(a, b, DVec2::new(0.0, 26.0), reader.length(long));
            let tread = [2.0, 1.0].map(|n| self.px(-stair.going * n, -stair.rise * 2.0));
            plate.measure(
                tread[0],
                tread[1],
                DVec2::new(0.0, -30.0),
                reader.length(stair.going),
            );
            let riser = [3.0, 2.0].map(|n| self.px(-stair.going * 2.0, -stair.rise * n));
            plate.measure(
                riser[0],
                riser[1],
                DVec2::new(-30.0, 0.0),
                reader.length(stair.rise),
            );
        }
        for row in &self.sheet.frame.rows {
            let [foot, head] = [0.0, row.post].map(|up| self.px(row.at, self.ground(row.at) + up));
            if row.post > 0.3 {
                plate.measure(foot, head, DVec2::new(14.0, 0.0), reader.length(row.post));
            }
        }
        self.heights(plate);
    }

    /// Platform, rails, slope and radii.
    fn heights(&self, plate: &mut Plate) {
        let (shape, reader) = (&self.sheet.shape, plate.reader);
        let x = shape.platform;
        let (top, ground) = (self.surface(x), self.ground(x));
        let right = DVec2::new(44.0, 0.0);
        plate.measure(
            self.px(x, ground),
            self.px(x, top),
            right,
            reader.length(top - ground),
        );
        let mut over = 22.0;
        if let Some(rails) = &self.sheet.rails {
            let [low, high] = [0.0, rails.height].map(|up| self.px(0.0, up));
            plate.measure(
                low,
                high,
                DVec2::new(-24.0, 0.0),
                reader.length(rails.height),
            );
            let [a, b] = [0.0, rails.to]
                .map(|x| DVec2::new(self.px(x, 0.0).x, self.px(0.0, rails.height).y));
            plate.measure(a, b, DVec2::new(0.0, -44.0), reader.length(rails.to));
            over += rails.height * self.strip.scale - 4.0;
        }
        let ends = [0.0, x].map(|x| self.px(x, 0.0));
        plate.measure(
            ends[0],
            ends[1],
            DVec2::new(0.0, -over),
            reader.length(shape.platform),
        );
        let slope = 0.5 * (shape.platform + shape.run);
        let mut note = |x: f64, text: String| {
            let on = self.px(x, self.surface(x));
            let lift = self
                .sheet
                .rails
                .as_ref()
                .map_or(0.0, |r| if x < r.to { r.height } else { 0.0 });
            let up = on - DVec2::new(-26.0, 22.0 + lift * self.strip.scale);
            plate.sheet.line(Ink::Figure, 0.6, [on, up]);
            let base = up + DVec2::new(4.0, 2.0);
            plate.put(text, on, &[(base, crate::scene::sheet::Align::Right)]);
        };
        note(slope, reader.angle(shape.slope));
        let radius = |r: f64| format!("R {}", reader.length(r));
        if shape.edge[0] > 0.0 {
            note(
                shape.platform + 0.3 * shape.edge[0].min(0.8),
                radius(shape.edge[0]),
            );
        }
        if shape.hollow[0] > 0.0 {
            note(shape.run - 0.35 * shape.hollow[1], radius(shape.hollow[0]));
        }
    }

    fn letters(&self, plate: &mut Plate) {
        let shape = &self.sheet.shape;
        let deck = self.stock.deck[0];
        let on = 0.62 * shape.platform;
        plate.letter(0, self.px(on, -0.5 * deck), DVec2::new(-26.0, 44.0));
        plate.letter(
            1,
            self.px(0.4 * shape.platform, -deck - 0.5 * self.stock.joist[1]),
            DVec2::new(-14.0, 50.0),
        );
        let rows = &self.sheet.frame.rows;
        if let Some(row) = rows.get(1) {
            let head = self.ground(row.at) + row.post;
            let half = 0.5 * (self.stock.post[1] + self.stock.bearer[0]);
            plate.letter(
                2,
                self.px(row.at - half, head - 0.7 * self.stock.bearer[1]),
                DVec2::new(-34.0, 24.0),
            );
            let post = self.px(row.at, self.ground(row.at) + 0.3 * row.post);
            plate.letter(3, post, DVec2::new(-30.0, 10.0));
            plate.letter(
                8,
                self.px(row.at, self.ground(row.at) - 0.5 * FOOTING),
                DVec2::new(-34.0, 6.0),
            );
        }
        if let [a, b, ..] = rows.as_slice()
            && a.braced
        {
            let head = self.px(a.at, self.ground(a.at) + a.post);
            let foot = self.px(b.at, self.ground(b.at));
            plate.letter(4, head.lerp(foot, 0.5), DVec2::new(-30.0, 14.0));
        }
        if let Some(rails) = &self.sheet.rails {
            let x = 0.8 * rails.to;
            plate.letter(
                5,
                self.px(x, self.surface(x) + rails.height),
                DVec2::new(44.0, -20.0),
            );
            if rails.closed_to > 0.0 {
                let x = 0.7 * rails.closed_to;
                plate.letter(
                    6,
                    self.px(x, self.surface(x) + 0.75 * rails.height),
                    DVec2::new(84.0, -40.0),
                );
            }
        }
        if let Some(stair) = &self.sheet.stair {
            let n = f64::from(stair.risers / 2);
            plate.letter(
                7,
                self.px(-stair.going * (n + 0.5), -stair.rise * (n + 1.0)),
                DVec2::new(-30.0, -30.0),
            );
        }
    }
}
