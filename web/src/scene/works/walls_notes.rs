//! The measures and letters of a boxed landing.

use super::plate::Plate;
use super::reader::Reader;
use super::walls_shape::Drawing;
use crate::scene::sheet::Ink;
use glam::DVec2;

impl Drawing<'_> {
    pub fn side_measures(&self, plate: &mut Plate) {
        let (sheet, reader) = (self.sheet, plate.reader);
        let foot = self.px(0.0, 0.0);
        let left = |px: f64| DVec2::new(-px, 0.0);
        let Some(first) = sheet.side.posts.first() else {
            return;
        };
        plate.measure(
            foot,
            self.px(0.0, sheet.height),
            left(34.0),
            reader.length(sheet.height),
        );
        let depth = self.depth(first, true);
        let sunk = self.px(0.0, -depth);
        plate.measure(sunk, foot, left(34.0), reader.length(depth));
        if let Some(last) = sheet.side.posts.last() {
            let x = last.at;
            let [head, ground] = [last.height, 0.0].map(|z| self.px(x, self.ground(x) + z));
            let low = self.px(x, self.ground(x) - last.depth);
            // Behind the buried timbers, too.
            let timber = sheet
                .anchors
                .as_ref()
                .map_or(0.0, |a| a.distance + self.stock.deadman[0]);
            let behind = (timber + 0.12 - x).max(0.34);
            let beside = DVec2::new(behind * self.strip.scale, 0.0);
            plate.measure(ground, head, beside, reader.length(last.height));
            plate.measure(low, ground, beside, reader.length(last.depth));
        }
        if let Some(anchors) = &sheet.anchors {
            let y = plate.lowest() + 18.0;
            let ends = [0.0, anchors.distance].map(|x| self.px(x, -anchors.dug));
            let [a, b] = ends.map(|p| DVec2::new(p.x, y));
            for (from, to) in [(ends[1], b), (foot, a)] {
                plate.sheet.line(Ink::Figure, 0.6, [from, to]);
            }
            plate.measure(a, b, DVec2::ZERO, reader.length(anchors.distance));
            let [low, yard] = [-anchors.dug, 0.0].map(|z| self.px(anchors.distance, z));
            if anchors.dug > 0.0 {
                plate.measure(
                    low,
                    yard,
                    DVec2::new(-16.0, 0.0),
                    reader.length(anchors.dug),
                );
            }
        }
        let y = plate.lowest() + 20.0;
        let posts: Vec<_> = sheet
            .side
            .posts
            .iter()
            .map(|p| self.px(p.at, 0.0).x)
            .collect();
        plate.chain(y, &posts, |_| reader.length(sheet.side.spacing));
        let [a, b] = [0.0, sheet.length].map(|x| DVec2::new(self.px(x, 0.0).x, y));
        plate.measure(a, b, DVec2::new(0.0, 26.0), reader.length(sheet.length));
    }

    pub fn side_letters(&self, plate: &mut Plate) {
        let sheet = self.sheet;
        let mid = 0.5 * sheet.side.spacing;
        plate.letter(
            0,
            self.px(mid, 0.12 + self.ground(mid)),
            DVec2::new(20.0, -30.0),
        );
        if let Some(post) = sheet.side.posts.get(1) {
            plate.letter(
                1,
                self.px(post.at, self.ground(post.at) + 0.7 * post.height),
                DVec2::new(36.0, -40.0),
            );
            if let Some(tie) = &post.tie {
                let at = self.px(post.at, self.ground(post.at) + tie.height);
                plate.letter(2, at, DVec2::new(44.0, -18.0));
            }
        }
        if let Some(anchors) = &sheet.anchors {
            let rod = self.px(
                0.35 * anchors.distance,
                anchors.tie_height * 0.65 + 0.35 * (anchors.hold - anchors.dug),
            );
            plate.letter(3, rod, DVec2::new(-24.0, 30.0));
            let timber = self.px(
                anchors.distance + 0.5 * self.stock.deadman[0],
                -anchors.dug + 0.1,
            );
            plate.letter(4, timber, DVec2::new(30.0, 14.0));
        }
        let x = 0.3 * sheet.length;
        plate.letter(5, self.px(x, self.ride(x)), DVec2::new(16.0, -34.0));
    }

    pub fn front_measures(&self, plate: &mut Plate, reader: Reader) {
        let sheet = self.sheet;
        let Some(post) = sheet.front.posts.first() else {
            return;
        };
        let left = DVec2::new(-46.0, 0.0);
        let foot = self.px(0.0, 0.0);
        plate.measure(
            foot,
            self.px(0.0, sheet.height),
            left,
            reader.length(sheet.height),
        );
        let depth = self.depth(post, true);
        plate.measure(self.px(0.0, -depth), foot, left, reader.length(depth));
        if let [_, inner, _, ..] = sheet.front.posts.as_slice() {
            let [low, foot] = [-inner.depth, 0.0].map(|z| self.px(inner.at, z));
            let beside = DVec2::new(16.0, 0.0);
            plate.measure(low, foot, beside, reader.length(inner.depth));
        }
        if let Some(tie) = &post.tie {
            let x = sheet.width;
            let [low, high] = [0.0, tie.height].map(|z| self.px(x, z));
            plate.measure(low, high, DVec2::new(34.0, 0.0), reader.length(tie.height));
        }
        let y = plate.lowest() + 20.0;
        let posts: Vec<_> = sheet
            .front
            .posts
            .iter()
            .map(|p| self.px(p.at, 0.0).x)
            .collect();
        if posts.len() > 2 {
            plate.chain(y, &posts, |_| reader.length(sheet.front.spacing));
        }
        let [a, b] = [0.0, sheet.width].map(|x| DVec2::new(self.px(x, 0.0).x, y));
        let down = if posts.len() > 2 { 26.0 } else { 0.0 };
        plate.measure(a, b, DVec2::new(0.0, down), reader.length(sheet.width));
        plate.letter(
            1,
            self.px(0.0, 0.8 * sheet.height),
            DVec2::new(-26.0, -26.0),
        );
        let board = self.px(0.35 * sheet.width, 0.5 * self.stock.board[1]);
        plate.letter(0, board, DVec2::new(10.0, -26.0));
    }
}
