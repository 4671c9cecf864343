//! The template of a lip: its curve as it is drawn on a sheet whose edge lies on the ground.

use super::lip_shape::{Drawing, edge, flat};
use super::plate::{Plate, WIDE};
use super::reader::Reader;
use super::shapes::{along, at, round, timber};
use super::string;
use crate::scene::sheet::{Align, Ink};
use glam::DVec2;
use sim::build::lip::{Legs, LipSheet, Station, Stock};
use sim::num;

/// Room before the foot and behind the edge, px.
const ROOM: [f64; 2] = [116.0, 150.0];
/// Most pixels to the metre.
const NEAREST: f64 = 420.0;

/// A lip, its ground line level: run and rise of the curve at each rib, the string with the place where it is held,
/// angle, height and level run of the edge.
///
/// Letters: A where wood takes over from dirt, B where the straight end begins, C where the string is held, D rib,
/// E leg, F deck, G side panel. R is the string of the riding curve, r the one that draws the panel's top. What a lip
/// has not, has no letter.
pub fn lip(lip: &LipSheet, stock: &Stock, reader: Reader) -> Plate {
    let mut plate = Plate::new(WIDE, reader);
    let template = &lip.template;
    let scale = ((WIDE - ROOM[0] - ROOM[1]) / template.edge.along.max(0.2)).min(NEAREST);
    let strip = at(DVec2::new(ROOM[0], 0.0), scale);
    let drawing = Drawing { lip, stock, strip };
    drawing.ground(&mut plate);
    drawing.frame(&mut plate);
    drawing.curve(&mut plate);
    drawing.stations(&mut plate);
    drawing.edge(&mut plate);
    if let Some((stretch, strung)) = string::strung(template) {
        string::draw(&drawing, stretch, strung, &mut plate);
    }
    drawing.letters(&mut plate);
    plate.done()
}

impl Drawing<'_> {
    fn ground(&self, plate: &mut Plate) {
        let end = self.template().edge.along + 0.08 * WIDE / self.strip.scale;
        let before = -0.06 * WIDE / self.strip.scale;
        for stretch in self.template().stretches.iter().filter(|s| !s.wood) {
            let over = along(&edge(stretch), self.strip.scale);
            let feet = [stretch.to.along, stretch.from.along].map(|x| DVec2::new(x, 0.0));
            let points = over.into_iter().chain(feet).map(|p| self.px(p));
            plate.sheet.area(Ink::Built, points);
        }
        plate.ground(&[before, end].map(|x| self.px(DVec2::new(x, 0.0))));
    }

    /// Panel, ribs and legs.
    fn frame(&self, plate: &mut Plate) {
        let Some(lip_box) = &self.lip.lip_box else {
            return;
        };
        let scale = self.strip.scale;
        for part in &lip_box.panels.parts {
            let points = round(part, scale).into_iter().map(|p| self.px(p));
            plate.sheet.line(Ink::Wood, 1.2, points);
        }
        for rib in self.ribs() {
            plate.sheet.line(Ink::Wood, 0.9, rib.map(|p| self.px(p)));
        }
        for leg in self.legs() {
            plate.sheet.dashes(Ink::Wood, 0.9, leg.map(|p| self.px(p)));
        }
    }

    /// Ribs flat under the deck, one at each station where the panel is high enough; the last within the panel.
    fn ribs(&self) -> Vec<[DVec2; 5]> {
        let [thick, wide] = self.stock.rib;
        let deck = self.lip.deck.thickness(self.stock);
        let stations = &self.template().stations;
        let last = stations.len().saturating_sub(1);
        let standing = stations
            .iter()
            .enumerate()
            .filter(|(_, s)| s.panel >= thick);
        let rib = |(i, s): (usize, &Station)| {
            let (sine, cosine) = num::sin_cos(s.heading - self.template().ground);
            let on = DVec2::new(cosine, sine);
            let under = flat(&s.at) - on.perp() * deck;
            let back = if i == last { wide } else { 0.5 * wide };
            timber(under - on * back, under + on * (wide - back), 0.0, thick)
        };
        standing.map(rib).collect()
    }

    fn legs(&self) -> Vec<[DVec2; 5]> {
        let Some(lip_box) = &self.lip.lip_box else {
            return Vec::new();
        };
        let wide = self.stock.leg[1];
        let end = self.template().edge.along;
        let leg = |l: &Legs| {
            // The last row stands within the panel, the others behind their joint's middle.
            let left = if l.along > end - wide {
                wide
            } else {
                0.5 * wide
            };
            let [foot, head] = [0.0, l.height].map(|z| DVec2::new(l.along, z));
            timber(foot, head, left, wide - left)
        };
        lip_box.frame.legs.iter().map(leg).collect()
    }

    fn curve(&self, plate: &mut Plate) {
        for stretch in &self.template().stretches {
            let points = along(&edge(stretch), self.strip.scale);
            let points = points.into_iter().map(|p| self.px(p));
            if stretch.wood {
                plate.sheet.line(Ink::Ground, 2.4, points);
            } else {
                plate.sheet.line(Ink::Ground, 1.2, points);
            }
        }
    }

    /// Along the ground line and square to it, at each station.
    fn stations(&self, plate: &mut Plate) {
        let reader = plate.reader;
        let mut notes = Vec::new();
        for station in &self.template().stations {
            let [foot, top] =
                [0.0, station.at.rise].map(|z| self.px(DVec2::new(station.at.along, z)));
            plate.sheet.line(Ink::Figure, 0.6, [foot, top]);
            notes.push((foot, vec![reader.fine(station.at.along)]));
            // What lies on the ground line needs no figure.
            if station.at.rise < 5e-4 {
                continue;
            }
            let over = top - DVec2::new(0.0, 8.0);
            let places = [
                (over, Align::Middle),
                (over - DVec2::new(4.0, 2.0), Align::Left),
                (over - DVec2::new(0.0, 14.0), Align::Middle),
                (over - DVec2::new(0.0, 30.0), Align::Middle),
            ];
            plate.put(reader.fine(station.at.rise), top, &places);
        }
        let base = self.px(DVec2::ZERO).y + 14.0;
        plate.row(base, &notes);
    }

    /// Height, level run and angle of the edge.
    fn edge(&self, plate: &mut Plate) {
        let (t, reader) = (self.template(), plate.reader);
        let (sine, cosine) = num::sin_cos(t.ground);
        let up = DVec2::new(sine, cosine);
        let level = DVec2::new(cosine, -sine);
        let tip = flat(&t.edge);
        let below = self.px(tip - up * t.height);
        plate.measure(
            below,
            self.px(tip),
            DVec2::new(44.0, 0.0),
            reader.fine(t.height),
        );
        let [foot, end] = [DVec2::ZERO, level * t.run].map(|p| self.px(p));
        let under = DVec2::new(0.0, plate.lowest() + 24.0 - foot.y.max(end.y));
        plate.measure(foot, end, under, reader.fine(t.run));
        let (sine, cosine) = num::sin_cos(t.exit - t.ground);
        let out = DVec2::new(cosine, sine);
        let long = 54.0 / self.strip.scale;
        for way in [out, level] {
            plate.sheet.dashes(
                Ink::Figure,
                0.9,
                [tip, tip + way * long].map(|p| self.px(p)),
            );
        }
        let arc = |i: u32| {
            let (sine, cosine) = num::sin_cos(t.exit * f64::from(i) / 12.0 - t.ground);
            self.px(tip + DVec2::new(cosine, sine) * (0.75 * long))
        };
        plate.sheet.line(Ink::Figure, 0.9, (0..=12).map(arc));
        let beside = arc(6) + DVec2::new(10.0, 4.0);
        plate.put(reader.angle(t.exit), arc(6), &[(beside, Align::Right)]);
    }

    fn letters(&self, plate: &mut Plate) {
        let t = self.template();
        if t.takeover.at.along > 1e-3 {
            plate.letter(0, self.px(flat(&t.takeover.at)), DVec2::new(-16.0, -40.0));
        }
        if let Some(from) = &t.straight_from {
            plate.letter(1, self.px(flat(from)), DVec2::new(-16.0, -40.0));
        }
        let middle = |corners: &[DVec2; 5]| self.px((corners[0] + corners[2]) * 0.5);
        if let Some(rib) = self.ribs().iter().rev().nth(1) {
            plate.letter(3, middle(rib), DVec2::new(24.0, 26.0));
        }
        if let Some(leg) = self.legs().last() {
            plate.letter(4, middle(leg), DVec2::new(-36.0, 6.0));
        }
        let Some(last) = t.stations.iter().rev().nth(1) else {
            return;
        };
        let next = t.edge.along;
        let deck = 0.5 * (last.at.along + next);
        let on = 0.5 * (last.at.rise + t.edge.rise);
        plate.letter(5, self.px(DVec2::new(deck, on)), DVec2::new(-16.0, -34.0));
        if self.lip.lip_box.is_some() {
            let panel = DVec2::new(deck - 0.06 * next, 0.3 * last.panel);
            plate.letter(6, self.px(panel), DVec2::new(-30.0, 0.0));
        }
    }
}
