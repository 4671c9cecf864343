//! A boxed landing, from the side and from the front.

use super::plate::{Plate, WIDE};
use super::reader::Reader;
use super::shapes::{at, timber};
use crate::scene::sheet::Ink;
use crate::scene::view::Strip;
use glam::DVec2;
use sim::build::natural_ground::natural_ground;
use sim::build::walls::{BoxSheet, Post, WallStock};
use sim::profile::{LipEdge, Profile};

/// Room at the left and at the right, px.
const ROOM: [f64; 2] = [96.0, 96.0];
/// Most pixels to the metre.
const NEAREST: f64 = 190.0;

struct Drawing<'a> {
    sheet: &'a BoxSheet,
    stock: &'a WallStock,
    profile: &'a Profile,
    ends: &'a LipEdge,
    strip: Strip,
}

/// A box: above a side wall, in front of it the buried timbers and the rod to them in broken lines; below the front
/// wall as whoever rides up to it sees it, with the rods from side to side.
///
/// Letters: A sheeting, B post, C rod from side wall to side wall, D rod to the buried timber, E buried timber,
/// F what is ridden. What a box has not, has no letter.
pub fn walls(
    sheet: &BoxSheet,
    stock: &WallStock,
    profile: &Profile,
    reader: Reader,
) -> Option<Plate> {
    let ends = profile.lips.iter().find(|l| l.feature == sheet.feature)?;
    let mut plate = Plate::new(WIDE, reader);
    let long = sheet.length.max(sheet.width) + 0.6;
    let scale = ((WIDE - ROOM[0] - ROOM[1]) / long).min(NEAREST);
    let mut drawing = Drawing {
        sheet,
        stock,
        profile,
        ends,
        strip: at(DVec2::new(ROOM[0] + 0.2 * scale, 0.0), scale),
    };
    drawing.side(&mut plate);
    drawing.strip.origin.y = plate.lowest() + 40.0 + sheet.height * scale;
    drawing.front(&mut plate);
    Some(plate.done())
}

impl Drawing<'_> {
    /// Height of the bed over the yard, m.
    fn bed(&self) -> f64 {
        let knuckle = self.ends.knuckle;
        knuckle.y - natural_ground(self.profile, knuckle.x) - self.sheet.height
    }

    /// The ground so far behind the front, from the front's foot, m.
    fn ground(&self, behind: f64) -> f64 {
        let x = self.ends.knuckle.x;
        natural_ground(self.profile, x + behind) - natural_ground(self.profile, x)
    }

    /// The ride so far behind the front, from the front's foot, m.
    fn ride(&self, behind: f64) -> f64 {
        let knuckle = self.ends.knuckle;
        let foot = natural_ground(self.profile, knuckle.x) + self.bed();
        let over = self.profile.height_at(knuckle.x + behind.max(1e-6));
        // A lip that ends at the knuckle may stand higher.
        over.map_or(0.0, |z| z.min(knuckle.y) - foot)
    }

    fn px(&self, x: f64, z: f64) -> DVec2 {
        self.strip.place(DVec2::new(x, z))
    }

    fn side(&self, plate: &mut Plate) {
        let sheet = self.sheet;
        let steps = |i: u32| sheet.length * f64::from(i) / 60.0;
        let top: Vec<_> = (0..=60)
            .map(|i| self.px(steps(i), self.ride(steps(i))))
            .collect();
        let foot = (0..=60)
            .rev()
            .map(|i| self.px(steps(i), self.ground(steps(i))));
        plate
            .sheet
            .area(Ink::Built, top.iter().copied().chain(foot));
        self.courses(plate);
        let ends = [-0.3, sheet.length + 0.3].map(|x| self.px(x, self.ground(x)));
        plate.ground(&ends);
        for post in &sheet.side.posts {
            self.post(post, post.at, self.ground(post.at), plate);
        }
        let beyond = sheet.length + 0.25;
        let out: Vec<_> = (0..=8)
            .map(|i| sheet.length + (beyond - sheet.length) * f64::from(i) / 8.0)
            .collect();
        let more = out.into_iter().map(|x| self.px(x, self.ride(x)));
        plate
            .sheet
            .line(Ink::Ground, 2.4, top.into_iter().chain(more));
        self.anchors(plate);
        self.side_measures(plate);
        self.side_letters(plate);
    }

    /// Courses of boards, as far as the fill is so high.
    fn courses(&self, plate: &mut Plate) {
        let wide = self.stock.board[1];
        let count = (self.sheet.height / wide).ceil() as u32;
        for course in 1..count {
            let up = wide * f64::from(course);
            let within = |i: &u32| {
                let x = self.sheet.length * f64::from(*i) / 200.0;
                self.ride(x) - self.ground(x) >= up
            };
            let last = (0..=200).take_while(within).last().unwrap_or(0);
            let end = self.sheet.length * f64::from(last) / 200.0;
            let line = [0.0, end].map(|x| self.px(x, self.ground(x) + up));
            plate.sheet.line(Ink::Wood, 0.7, line);
        }
    }

    /// A post with its part in the ground, and the place of its tie.
    fn post(&self, post: &Post, middle: f64, ground: f64, plate: &mut Plate) {
        let half = 0.5 * self.stock.post[1];
        let [low, foot, head] =
            [-post.depth, 0.0, post.height].map(|z| DVec2::new(middle, ground + z));
        let over = timber(foot, head, half, half).map(|p| self.strip.place(p));
        plate.sheet.area(Ink::Paper, over);
        plate.sheet.line(Ink::Wood, 1.2, over);
        let under = timber(low, foot, half, half).map(|p| self.strip.place(p));
        plate.sheet.dashes(Ink::Wood, 1.0, under);
        if let Some(tie) = &post.tie {
            plate
                .sheet
                .disc(Ink::Wood, self.px(middle, ground + tie.height), 3.0);
        }
    }

    fn anchors(&self, plate: &mut Plate) {
        let Some(anchors) = &self.sheet.anchors else {
            return;
        };
        let [thick, high] = self.stock.deadman;
        let bottom = -anchors.dug;
        for course in 0..anchors.courses {
            let low = bottom + high * f64::from(course);
            let corners = timber(
                DVec2::new(anchors.distance, low),
                DVec2::new(anchors.distance, low + high),
                0.0,
                thick,
            );
            plate
                .sheet
                .line(Ink::Wood, 1.4, corners.map(|p| self.strip.place(p)));
        }
        let rod = [
            (0.0, anchors.tie_height),
            (anchors.distance, bottom + anchors.hold),
        ];
        plate
            .sheet
            .dashes(Ink::Wood, 1.6, rod.map(|(x, z)| self.px(x, z)));
    }

    fn side_measures(&self, plate: &mut Plate) {
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
        let sunk = self.px(0.0, -first.depth);
        plate.measure(sunk, foot, left(34.0), reader.length(first.depth));
        if let Some(last) = sheet.side.posts.last() {
            let x = last.at;
            let [head, ground] = [last.height, 0.0].map(|z| self.px(x, self.ground(x) + z));
            let low = self.px(x, self.ground(x) - last.depth);
            plate.measure(
                ground,
                head,
                DVec2::new(30.0, 0.0),
                reader.length(last.height),
            );
            plate.measure(
                low,
                ground,
                DVec2::new(30.0, 0.0),
                reader.length(last.depth),
            );
        }
        if let Some(anchors) = &sheet.anchors {
            let y = plate.lowest() + 18.0;
            let ends = [0.0, anchors.distance].map(|x| self.px(x, -anchors.dug));
            let [a, b] = ends.map(|p| DVec2::new(p.x, y));
            for (from, to) in [(ends[1], b), (foot, a)] {
                plate.sheet.line(Ink::Figure, 0.6, [from, to]);
            }
            plate.measure(a, b, DVec2::ZERO, reader.length(anchors.distance));
            let back = anchors.distance + self.stock.deadman[0];
            let [low, yard] = [-anchors.dug, 0.0].map(|z| self.px(back, z));
            if anchors.dug > 0.0 {
                plate.measure(low, yard, DVec2::new(16.0, 0.0), reader.length(anchors.dug));
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

    fn side_letters(&self, plate: &mut Plate) {
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
            plate.letter(4, timber, DVec2::new(-40.0, 6.0));
        }
        let x = 0.3 * sheet.length;
        plate.letter(5, self.px(x, self.ride(x)), DVec2::new(16.0, -34.0));
    }

    fn front(&self, plate: &mut Plate) {
        let (sheet, reader) = (self.sheet, plate.reader);
        let thick = self.stock.board[0];
        let ends = [-thick, sheet.width + thick];
        let wide = self.stock.board[1];
        let count = (sheet.height / wide).ceil() as u32;
        for course in 0..count {
            let [low, high] = [course, course + 1].map(|n| (wide * f64::from(n)).min(sheet.height));
            let [a, b] = ends;
            let board = [(a, low), (b, low), (b, high), (a, high), (a, low)];
            plate
                .sheet
                .line(Ink::Wood, 0.9, board.map(|(x, z)| self.px(x, z)));
        }
        plate.ground(&[-0.4, sheet.width + 0.4].map(|x| self.px(x, 0.0)));
        for post in &sheet.front.posts {
            self.post(post, post.at, 0.0, plate);
        }
        let level = ends.map(|x| self.px(x, sheet.height));
        plate.sheet.line(Ink::Ground, 2.4, level);
        let tie = sheet.side.posts.iter().find_map(|p| p.tie);
        if let Some(tie) = tie {
            let over = 0.5 * (sheet.cross_tie - sheet.width);
            let rod = [-over, sheet.width + over].map(|x| self.px(x, tie.height));
            plate.sheet.dashes(Ink::Wood, 1.6, rod);
            plate.letter(2, rod[1], DVec2::new(40.0, -14.0));
        }
        self.front_measures(plate, reader);
    }

    fn front_measures(&self, plate: &mut Plate, reader: Reader) {
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
        plate.measure(
            self.px(0.0, -post.depth),
            foot,
            left,
            reader.length(post.depth),
        );
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
