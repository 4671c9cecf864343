//! The measures and letters of a start ramp.

use super::plate::{Plate, letter};
use super::ramp_shape::{Drawing, FOOTING};
use crate::scene::sheet::{Align, Ink};
use glam::DVec2;
use sim::build::ramp::Row;

impl Drawing<'_> {
    pub fn measures(&self, plate: &mut Plate) {
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
        let long = |row: &Row| {
            let foot = self.px(row.at, self.ground(row.at) - FOOTING);
            let text = format!("{} {}", letter(3), reader.length(row.post));
            (foot, vec![text])
        };
        let posts: Vec<_> = self.sheet.frame.rows.iter().map(long).collect();
        plate.row(plate.lowest() + 10.0, &posts);
        let y = plate.lowest() + 22.0;
        plate.chain(y, &stations, |i| reader.length(rows[i + 1] - rows[i]));
        let level = |a: f64, b: f64| [a, b].map(|x| DVec2::new(self.px(x, 0.0).x, y));
        let [a, b] = level(0.0, shape.run);
        plate.measure(a, b, DVec2::new(0.0, 26.0), reader.length(shape.run));
        if let Some(stair) = &self.sheet.stair {
            let long = stair.going * f64::from(stair.risers - 1);
            let [a, b] = level(-long, 0.0);
            plate.measure(a, b, DVec2::new(0.0, 26.0), reader.length(long));
            let n = f64::from(stair.risers / 2);
            let tread = [n, n - 1.0].map(|k| self.px(-stair.going * k, -stair.rise * n));
            let riser = [n + 1.0, n].map(|k| self.px(-stair.going * n, -stair.rise * k));
            let (over, left) = (DVec2::new(0.0, -34.0), DVec2::new(-34.0, 0.0));
            plate.measure(tread[0], tread[1], over, reader.length(stair.going));
            plate.measure(riser[0], riser[1], left, reader.length(stair.rise));
        }
        self.heights(plate);
    }

    /// Platform, rails, slope and radii.
    fn heights(&self, plate: &mut Plate) {
        let (shape, reader) = (&self.sheet.shape, plate.reader);
        let x = shape.platform;
        let (top, ground) = (self.surface(x), self.ground(x));
        let beside = DVec2::new(-0.42 * x * self.strip.scale, 0.0);
        let ends = [ground, top].map(|z| self.px(x, z));
        plate.measure(ends[0], ends[1], beside, reader.length(top - ground));
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
            let up = on - DVec2::new(-26.0, 36.0 + lift * self.strip.scale);
            plate.sheet.line(Ink::Figure, 0.6, [on, up]);
            let base = up + DVec2::new(4.0, 2.0);
            let over = up - DVec2::new(0.0, 4.0);
            plate.put(text, on, &[(base, Align::Right), (over, Align::Middle)]);
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

    pub fn letters(&self, plate: &mut Plate) {
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
            plate.letter(4, head.lerp(foot, 0.22), DVec2::new(-34.0, 30.0));
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
            let n = f64::from(stair.risers * 3 / 4);
            plate.letter(
                7,
                self.px(-stair.going * (n + 0.5), -stair.rise * (n + 1.0)),
                DVec2::new(-30.0, -30.0),
            );
        }
    }
}
