//! A boxed landing, from the side and from the front.

use super::plate::{Plate, WIDE};
use super::reader::Reader;
use super::shapes::{at, timber};
use super::walls_shape::Drawing;
use crate::scene::sheet::Ink;
use glam::DVec2;
use sim::build::walls::{BoxSheet, Post, WallStock};
use sim::profile::Profile;

/// Room at the left and at the right, px.
const ROOM: [f64; 2] = [100.0, 90.0];
/// Most height of both views without their measures, px: they go on a page.
const HIGHEST: f64 = 580.0;
/// Most pixels to the metre.
const NEAREST: f64 = 190.0;

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
    let timber = sheet
        .anchors
        .as_ref()
        .map_or(0.0, |a| a.distance + stock.deadman[0]);
    let long = sheet.length.max(sheet.width).max(timber) + 0.6;
    // From the side and from the front, each with its posts' feet.
    let high = 2.0 * (sheet.height + 0.6);
    let scale = ((WIDE - ROOM[0] - ROOM[1]) / long)
        .min(NEAREST)
        .min(HIGHEST / high);
    let mut drawing = Drawing {
        sheet,
        stock,
        profile,
        ends,
        strip: at(DVec2::new(ROOM[0] + 0.2 * scale, 0.0), scale),
    };
    drawing.side(&mut plate);
    drawing.strip.origin.x = 0.5 * (WIDE - sheet.width * scale);
    drawing.strip.origin.y = plate.lowest() + 40.0 + sheet.height * scale;
    drawing.front(&mut plate);
    Some(plate.done())
}

impl Drawing<'_> {
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
        for (i, post) in sheet.side.posts.iter().enumerate() {
            let depth = self.depth(post, i == 0);
            self.post(post, depth, self.ground(post.at), plate);
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
    fn post(&self, post: &Post, depth: f64, ground: f64, plate: &mut Plate) {
        let (half, middle) = (0.5 * self.stock.post[1], post.at);
        let [low, foot, head] = [-depth, 0.0, post.height].map(|z| DVec2::new(middle, ground + z));
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
        for (i, post) in sheet.front.posts.iter().enumerate() {
            let corner = i == 0 || i + 1 == sheet.front.posts.len();
            self.post(post, self.depth(post, corner), 0.0, plate);
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
}
