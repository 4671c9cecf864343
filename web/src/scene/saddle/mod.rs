//! The ride as the rider sees it: in perspective from the simulated eye down the same line.

mod bars;
mod lens;
mod orchard;
mod ribbon;
mod runs;
mod walls;

use super::bike::{Bike, Placed};
use super::body::Body;
use super::sheet::{Ink, Sheet};
use glam::{DVec2, DVec3};
use lens::Lens;
use orchard::Orchard;
use ribbon::Ribbon;
use sim::num;
use sim::profile::Profile;

/// How far ahead the line is drawn, m.
const AHEAD: f64 = 42.0;
/// How far behind the eye the ground is looked at, m: the eye stands out over it.
const BEHIND: f64 = 1.5;
/// How far beside the line the yard is drawn, m.
const BESIDE: f64 = 40.0;
/// How far ahead of the bike the rider looks, s of the way at the present speed, and m at the least and
/// the most (common practice, no source: look where you will be, not where you are).
const LOOK: (f64, f64, f64) = (0.9, 3.2, 7.0);
/// Lowest gaze, rad: from the top of a start ramp the horizon stays in sight.
const LOWEST: f64 = -0.34;
/// How far behind the rider's eyes it is seen from, statures (common practice, no source).
const BACK: f64 = 0.25;
/// Hands on the bar stay in sight with so much of the sheet's height under them, and however close they are nobody
/// looks farther down for them than this, rad.
const HANDS: f64 = 0.06;
const DEEPEST: f64 = -0.5;
/// Height of the eyes over the ground of a rider who stands on the pedals, statures (common practice, no
/// source), and how much farther down the gaze goes for each metre above that, rad.
const STAND: f64 = 0.95;
const DOWN: f64 = 0.3;
/// Half the stretch over which the ground looked at is averaged, m: eyes rest on what is coming, they do
/// not run along its surface.
const CALM: f64 = 1.6;

/// A rider on a bike at one moment, as the eye view needs them.
#[derive(Clone, Copy, Debug)]
pub struct Aboard<'a> {
    /// The bike.
    pub bike: &'a Bike,
    /// Where it is.
    pub at: Placed,
    /// The rider's body.
    pub body: Body,
    /// Speed, m/s.
    pub speed: f64,
}

/// A line, ready to be looked down.
#[derive(Clone, Debug)]
pub struct Saddle {
    ribbon: Ribbon,
    orchard: Orchard,
}

impl Saddle {
    /// The view down a line.
    pub fn of(profile: &Profile) -> Self {
        Self {
            ribbon: Ribbon::of(profile),
            orchard: Orchard::of(profile),
        }
    }

    /// The lens that stands for a rider's eye.
    fn lens(&self, rider: &Aboard, size: DVec2) -> Lens {
        let eye = eye(rider);
        let (time, least, most) = LOOK;
        let x = eye.x + num::clamp(rider.speed * time, least, most);
        let around = [-1.0, -0.5, 0.0, 0.5, 1.0].map(|d| self.ribbon.height(x + d * CALM));
        let z = around.iter().sum::<f64>() / 5.0;
        // In the air the landing is looked for, farther down the higher it is.
        let stand = STAND * rider.body.stature();
        let high = num::clamp(eye.y - self.ribbon.height(eye.x) - stand, 0.0, 1.0);
        let gaze = (DVec2::new(x, z) - eye).to_angle().max(LOWEST) - DOWN * high;
        let hands = Lens::highest(eye, rider.body.arm.tip, HANDS, size).max(DEEPEST);
        let gaze = gaze.min(hands);
        Lens::new(eye, gaze, size)
    }

    /// Lays all that the first rider sees on the sheet, the others pale.
    pub fn compose<'a>(
        &self,
        rider: &Aboard,
        others: impl Iterator<Item = Aboard<'a>>,
        size: DVec2,
        sheet: &mut Sheet,
    ) {
        sheet.clear();
        let lens = self.lens(rider, size);
        let eye = eye(rider);
        self.orchard.draw_far(&lens, sheet);
        self.orchard
            .draw_yard(eye.x - BEHIND, eye.x + AHEAD, &lens, sheet);
        let trees = self.orchard.back_from(eye.x + AHEAD, eye.x);
        orchard::draw_trees(trees, &lens, sheet);
        // The farthest first, so that what is nearer hides it.
        let mut pale: Vec<_> = others.collect();
        pale.sort_unstable_by(|a, b| a.body.hip.x.total_cmp(&b.body.hip.x));
        for run in runs::seen(&self.ribbon, eye.x - BEHIND, eye.x + AHEAD, &lens)
            .iter()
            .rev()
        {
            while let Some(other) = pale.pop_if(|o| o.body.hip.x >= run[run.len() - 1].at.x) {
                bars::draw_other(&other, &lens, sheet);
            }
            walls::draw(run, &lens, sheet);
        }
        for other in pale.iter().rev() {
            bars::draw_other(other, &lens, sheet);
        }
        bars::draw(rider, &lens, sheet);
    }
}

/// From where it is seen: a little behind the rider's own eyes, which stand right over the hands. What lies under them
/// would be on no sheet.
fn eye(rider: &Aboard) -> DVec2 {
    rider.body.eye() - DVec2::X * (BACK * rider.body.stature())
}

/// A width that is one of a few, px: lines that are alike are drawn in one go.
fn even(wide: f64) -> f64 {
    let step = match wide {
        w if w < 3.0 => 0.5,
        w if w < 8.0 => 1.0,
        _ => 2.0,
    };
    num::clamp((wide / step).round() * step, 0.8, WIDEST)
}

/// A point of the side view, moved to the left, in the room.
fn beside(p: DVec2, left: f64) -> DVec3 {
    DVec3::new(p.x, left, p.y)
}

/// Widest that a line is drawn, px: what is close by shall not hide what is coming.
const WIDEST: f64 = 26.0;

/// Lays a line between two points of the room on the sheet, as wide as it looks from there, m.
fn rod(ink: Ink, wide: f64, from: DVec3, to: DVec3, lens: &Lens, sheet: &mut Sheet) {
    if let Some(ends) = lens.line(from, to) {
        let depth = 0.5 * (lens.depth(from) + lens.depth(to));
        sheet.line(ink, even(wide * lens.scale(depth)), ends);
    }
}

#[cfg(test)]
mod tests;
