//! The rider in the picture: a body hung on the simulated mass centre and lean, feet on the
//! pedals and hands on the grips.
//!
//! # References
//! Segment lengths in statures: Drillis and Contini 1966, as given in Winter, *Biomechanics and
//! Motor Control of Human Movement* (`from memory`).

use super::limb::{Bend, Limb};
use super::moment::Moment;
use super::sheet::{Ink, Sheet};
use super::view::Strip;
use glam::DVec2;
use sim::num;

const TORSO: f64 = 0.288;
const THIGH: f64 = 0.245;
const SHANK: f64 = 0.246;
const ANKLE: f64 = 0.039;
const UPPER_ARM: f64 = 0.186;
/// Forearm and half the hand, which is closed around the grip.
const FOREARM: f64 = 0.146 + 0.05;
/// Shoulder to the middle of the head.
const HEAD: f64 = 0.125;
/// Radius of the head in its helmet.
const HELMET: f64 = 0.078;

/// A limb is never drawn quite straight: a straight one shows no side to bend to.
const STRETCH: f64 = 0.985;

/// How far from upright a back is drawn, rad: it comes nearer and nearer to this, and never beyond. The
/// ride's rider is one rigid body without a hip to fold in, and so leans farther than a back does.
const FLATTEST: f64 = 1.32;

/// How much farther over a back is folded at the hips by who is as deep as can be, rad (common practice, no source):
/// the body goes down between arms and hips, and these go back.
const FOLD: f64 = 0.8;

/// Where the hip lies from the mass centre, along the back and square to it, statures: of the segments drawn here, with
/// the shares of mass in Winter's table, for backs from 0.5 to 1.2 rad over, within 0.02.
const BELOW: f64 = 0.13;
const BEHIND: f64 = 0.06;

/// Rounds in which torso and limbs settle between each other.
const ROUNDS: u32 = 12;

/// A rider's body, m.
#[derive(Clone, Copy, Debug)]
pub struct Body {
    /// Hip.
    pub hip: DVec2,
    /// Shoulder.
    pub shoulder: DVec2,
    /// Middle of the head.
    pub head: DVec2,
    /// Legs, rear foot first.
    pub legs: [Limb; 2],
    /// The arm; the far one hides behind it.
    pub arm: Limb,
    /// Direction in which the face looks.
    pub face: DVec2,
    stature: f64,
}

impl Body {
    /// Lays the body of a rider of some stature, m, on the bike.
    pub fn lay(stature: f64, moment: &Moment, pedals: [DVec2; 2], grip: DVec2) -> Self {
        let ankles = ankles(stature, pedals);
        let (hip, shoulder) = torso(stature, moment, ankles, grip);
        let up = (shoulder - hip).normalize_or(DVec2::Y);
        // The head is held up by half of what the torso leans.
        let neck = (up + DVec2::Y).normalize_or(DVec2::Y);
        let bone = |length: f64| length * stature;
        Self {
            hip,
            shoulder,
            head: shoulder + (neck - neck.perp() * 0.25) * bone(HEAD),
            legs: ankles.map(|a| Limb::lay(hip, a, bone(THIGH), bone(SHANK), Bend::Left)),
            arm: Limb::lay(shoulder, grip, bone(UPPER_ARM), bone(FOREARM), Bend::Right),
            face: -neck.perp(),
            stature,
        }
    }

    /// Where the ankles belong over pedals, m.
    #[cfg(test)]
    pub fn ankles(&self, pedals: [DVec2; 2]) -> [DVec2; 2] {
        ankles(self.stature, pedals)
    }

    /// Where the eyes are.
    pub fn eye(&self) -> DVec2 {
        self.head + self.face * (0.6 * self.helmet())
    }

    /// Radius of the helmet, m.
    pub fn helmet(&self) -> f64 {
        HELMET * self.stature
    }

    /// Stature, m.
    pub fn stature(&self) -> f64 {
        self.stature
    }

    /// Lays the far side on the sheet: what the bike hides.
    pub fn draw_far(&self, strip: &Strip, sheet: &mut Sheet) {
        self.leg(&self.legs[0], [Ink::Behind; 2], strip, sheet);
    }

    /// Lays the near side on the sheet.
    pub fn draw_near(&self, strip: &Strip, sheet: &mut Sheet) {
        let px = |p: DVec2| strip.place(p);
        let wide = |share: f64| share * self.stature * strip.scale;
        self.leg(&self.legs[1], [Ink::Rider, Ink::Pads], strip, sheet);
        sheet.line(
            Ink::Rider,
            wide(0.125),
            [px(self.hip), px(self.hip.lerp(self.shoulder, 0.93))],
        );
        let neck = self.shoulder.lerp(self.head, 0.6);
        sheet.line(Ink::Far, wide(0.055), [px(self.shoulder), px(neck)]);
        self.draw_head(strip, sheet);
        let Limb { root, joint, tip } = self.arm;
        // An edge of paper parts the arm from the body behind it.
        sheet.line(
            Ink::Paper,
            wide(0.06) + 2.5,
            [root.lerp(joint, 0.12), joint, tip].map(px),
        );
        sheet.line(Ink::Rider, wide(0.06), [root, joint, tip].map(px));
        sheet.disc(Ink::Pads, px(joint), wide(0.032));
        sheet.disc(Ink::Pads, px(tip), wide(0.03));
    }

    fn draw_head(&self, strip: &Strip, sheet: &mut Sheet) {
        let px = |p: DVec2| strip.place(p);
        let radius = self.helmet();
        let up = self.face.perp();
        let face = self.head + self.face * (0.35 * radius) - up * (0.35 * radius);
        sheet.disc(Ink::Far, px(face), 0.8 * radius * strip.scale);
        sheet.disc(
            Ink::Pads,
            px(self.head + up * (0.12 * radius)),
            radius * strip.scale,
        );
        let brow = self.head + self.face * (0.8 * radius) + up * (0.3 * radius);
        let peak = brow + (self.face * 0.75 + up * 0.12) * radius;
        sheet.line(Ink::Pads, 0.3 * radius * strip.scale, [px(brow), px(peak)]);
    }

    /// A leg in the colours of its skin or cloth and of shoe and pad.
    fn leg(&self, leg: &Limb, [ink, dark]: [Ink; 2], strip: &Strip, sheet: &mut Sheet) {
        let px = |p: DVec2| strip.place(p);
        let wide = |share: f64| share * self.stature * strip.scale;
        let Limb { root, joint, tip } = *leg;
        sheet.line(ink, wide(0.088), [px(root), px(joint)]);
        sheet.line(ink, wide(0.066), [px(joint), px(tip)]);
        let sole = ANKLE * self.stature;
        let heel = tip + DVec2::new(-0.5, -0.6) * sole;
        let toe = tip + DVec2::new(2.4, -0.6) * sole;
        sheet.line(dark, wide(0.036), [px(heel), px(toe)]);
        sheet.line(
            dark,
            wide(0.078),
            [joint.lerp(root, 0.06), joint.lerp(tip, 0.18)].map(px),
        );
    }
}

/// Ankles of feet that stand on pedals, m.
fn ankles(stature: f64, pedals: [DVec2; 2]) -> [DVec2; 2] {
    pedals.map(|p| p + DVec2::new(-0.25 * ANKLE, ANKLE) * stature)
}

/// Hip and shoulder: begun where mass centre and lean put them, then moved by the least that
/// lets feet and hands stay where they are held.
fn torso(stature: f64, moment: &Moment, ankles: [DVec2; 2], grip: DVec2) -> (DVec2, DVec2) {
    let stretch = num::clamp((moment.reach / stature - 0.343) / 0.2, 0.0, 1.0);
    let tilt = bounded(0.62 - 0.25 * stretch + FOLD * (1.0 - stretch) - moment.lean);
    let up = DVec2::from_angle(std::f64::consts::FRAC_PI_2 - tilt);
    let mut hip = moment.rider - up * (BELOW * stature) + up.perp() * (BEHIND * stature);
    let mut shoulder = hip + up * (TORSO * stature);
    let leg = (THIGH + SHANK) * stature * STRETCH;
    let arm = (UPPER_ARM + FOREARM) * stature * STRETCH;
    for _ in 0..ROUNDS {
        for ankle in ankles {
            hip = within(hip, ankle, leg);
        }
        shoulder = within(shoulder, grip, arm);
        let (middle, half) = ((hip + shoulder) * 0.5, 0.5 * TORSO * stature);
        let along = (shoulder - hip).normalize_or(DVec2::Y);
        hip = middle - along * half;
        shoulder = middle + along * half;
    }
    (hip, shoulder)
}

/// A tilt of the back, rad, bent toward its bound where it comes near.
fn bounded(tilt: f64) -> f64 {
    let free = 0.5 * FLATTEST;
    let over = tilt - free;
    if over > 0.0 {
        free + free * (over / free).tanh()
    } else {
        tilt
    }
}

/// `p`, drawn in to within `reach` of `of`.
fn within(p: DVec2, of: DVec2, reach: f64) -> DVec2 {
    of + (p - of).clamp_length_max(reach)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::bike::Bike;
    use crate::scene::made_up;
    use sim::plan;

    fn body(raise: f64, lean: f64) -> (Body, [DVec2; 2], DVec2) {
        let mount = &plan::demo().riders[0];
        let bike = Bike::new(mount);
        let mut moment = Moment::at(&made_up::rolling(5.0, 1.0), 0.5).unwrap();
        moment.rider.y += raise;
        moment.reach += raise;
        moment.lean = lean;
        let at = bike.place(&moment);
        let (pedals, grip) = (bike.pedals(&at), bike.grip(&at));
        let body = Body::lay(mount.rider.stature, &moment, pedals, grip);
        (body, pedals, grip)
    }

    #[test]
    fn feet_stay_on_the_pedals_and_hands_on_the_grips() {
        for raise in [-0.17, -0.1, 0.0, 0.1] {
            for lean in [-0.5, 0.0, 0.5] {
                let (body, pedals, grip) = body(raise, lean);
                assert!(body.arm.tip.distance(grip) < 0.01, "{raise} {lean}");
                for (leg, pedal) in body.legs.iter().zip(pedals) {
                    let sole = ANKLE * body.stature * 1.05;
                    assert!(leg.tip.distance(pedal) < sole + 0.01, "{raise} {lean}");
                }
            }
        }
    }

    #[test]
    fn standing_up_straightens_the_legs() {
        let knee = |raise| {
            let (body, ..) = body(raise, 0.0);
            let Limb { root, joint, tip } = body.legs[1];
            (root - joint).angle_to(tip - joint).abs()
        };
        assert!(knee(0.1) > knee(0.0) && knee(0.0) > knee(-0.1));
    }
}
