//! Riders in the eye view: one's own bar, hands and front wheel below, the others pale ahead.

use super::lens::Lens;
use super::{Aboard, WIDEST, beside, rod};
use crate::scene::sheet::{Ink, Sheet};
use glam::{DVec2, DVec3};
use std::f64::consts::TAU;

/// Half the width of the bar, statures (common practice, no source).
const BAR: f64 = 0.19;
/// How far hips, knees and shoulders stand to the side, statures (from memory).
const HIP: f64 = 0.05;
const KNEE: f64 = 0.1;
const SHOULDER: f64 = 0.12;
/// Others nearer ahead than this are not drawn, m: they would hide the line.
const CLEAR: f64 = 1.7;
/// How far an arm goes on behind its elbow, in forearms.
const OUT_OF_SIGHT: f64 = 3.0;
/// Elbows stand out beyond the hands, in half widths of the bar.
const ELBOW: f64 = 1.15;

/// Lays one's own bar, hands and front wheel on the sheet.
pub fn draw(rider: &Aboard, lens: &Lens, sheet: &mut Sheet) {
    let Aboard { bike, at, body, .. } = rider;
    wheel(bike.front(), rider, lens, sheet);
    let tall = body.stature();
    let bar = BAR * tall;
    let [stem, grip] = [at.world(bike.stem()), bike.grip(at)];
    let point = |part: f64, across: f64| beside(stem.lerp(grip, part), across * bar);
    let bend = [
        (1.0, 1.0),
        (0.95, 0.5),
        (0.0, 0.22),
        (0.0, -0.22),
        (0.95, -0.5),
        (1.0, -1.0),
    ];
    for pair in bend.windows(2) {
        let [a, b] = [pair[0], pair[1]].map(|(part, across)| point(part, across));
        rod(Ink::Frame, 0.024, a, b, lens, sheet);
    }
    rod(
        Ink::Frame,
        0.018,
        point(0.6, 0.38),
        point(0.6, -0.38),
        lens,
        sheet,
    );
    for side in [1.0, -1.0] {
        let [elbow, hand] = [
            beside(body.arm.joint, side * ELBOW * bar),
            beside(body.arm.tip, side * 0.86 * bar),
        ];
        // The arm comes in over the sheet's edge: nobody sees where it begins.
        let from = hand + (elbow - hand) * OUT_OF_SIGHT;
        rod(Ink::Rider, 0.055 * tall, from, hand, lens, sheet);
        rod(
            Ink::Frame,
            0.03,
            hand,
            beside(body.arm.tip, side * 1.04 * bar),
            lens,
            sheet,
        );
        if let Some(px) = lens.place(hand) {
            let radius = 0.032 * tall * lens.scale(lens.depth(hand));
            sheet.disc(Ink::Pads, px, radius.min(0.7 * WIDEST));
        }
    }
}

/// The upper half of a wheel's tyre, as its way round in the plane of the line.
fn wheel(centre: DVec2, rider: &Aboard, lens: &Lens, sheet: &mut Sheet) {
    let Aboard { bike, at, .. } = rider;
    let tyre = |i: u32| {
        let round = DVec2::from_angle(f64::from(i) * TAU / 32.0) * bike.tyre_middle();
        beside(at.world(centre + round), 0.0)
    };
    for i in 0..17 {
        rod(
            Ink::Tyre,
            bike.tyre_width(),
            tyre(i),
            tyre(i + 1),
            lens,
            sheet,
        );
    }
}

/// Lays another rider on the sheet, seen from behind and pale.
pub fn draw_other(other: &Aboard, lens: &Lens, sheet: &mut Sheet) {
    let Aboard { bike, at, body, .. } = other;
    let tall = body.stature();
    if lens.depth(beside(body.hip, 0.0)) < CLEAR {
        return;
    }
    let mut part = |wide: f64, from: DVec3, to: DVec3| rod(Ink::Pale, wide, from, to, lens, sheet);
    let radius = DVec2::Y * bike.tyre_middle();
    let rear = at.world(bike.rear());
    part(
        bike.tyre_width(),
        beside(rear - radius, 0.0),
        beside(rear + radius, 0.0),
    );
    for (side, leg) in [1.0, -1.0].into_iter().zip(body.legs) {
        let [hip, knee, foot] = [(leg.root, HIP), (leg.joint, KNEE), (leg.tip, KNEE)]
            .map(|(p, out)| beside(p, side * out * tall));
        part(0.075 * tall, hip, knee);
        part(0.06 * tall, knee, foot);
        let out = side * BAR * tall;
        let [shoulder, elbow, hand] = [
            beside(body.shoulder, side * SHOULDER * tall),
            beside(body.arm.joint, ELBOW * out),
            beside(body.arm.tip, out),
        ];
        part(0.05 * tall, shoulder, elbow);
        part(0.045 * tall, elbow, hand);
    }
    part(
        0.19 * tall,
        beside(body.hip, 0.0),
        beside(body.shoulder, 0.0),
    );
    let head = beside(body.head, 0.0);
    if let Some(px) = lens.place(head) {
        sheet.disc(Ink::Pale, px, body.helmet() * lens.scale(lens.depth(head)));
    }
}
