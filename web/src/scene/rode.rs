//! One rider's ride: bike and body at any moment of it.

use super::bike::Bike;
use super::body::Body;
use super::flight::Flights;
use super::moment::Moment;
use super::saddle::Aboard;
use super::sheet::{Align, Ink, Label, Sheet};
use super::view::Strip;
use glam::DVec2;
use sim::plan::Mount;
use sim::ride::Sample;

/// Type of a pale rider's label, how far over its head the first one stands, and how far over that the next, px.
const LABEL: f64 = 12.0;
const LABEL_OVER: f64 = 8.0;
const LABEL_STEP: f64 = 15.0;

/// A ride, and what is drawn of who rides.
#[derive(Clone, Debug)]
pub struct Rode {
    /// The trace, at even steps.
    pub samples: Vec<Sample>,
    /// The ways through the air.
    pub flights: Flights,
    bike: Bike,
    stature: f64,
}

impl Rode {
    /// A rider's ride.
    pub fn new(mount: &Mount, samples: Vec<Sample>) -> Self {
        let wheel = mount.bike.wheel_radius();
        Self {
            bike: Bike::new(mount),
            stature: mount.rider.stature,
            flights: Flights::of(&samples, mount.bike.wheelbase, wheel),
            samples,
        }
    }

    /// Bike and body at a moment, s; `None` only where there are no samples.
    pub fn aboard(&self, time: f64) -> Option<Aboard<'_>> {
        Moment::at(&self.samples, time).map(|moment| self.seated(&moment))
    }

    /// From the ground under the wheels to the top of the helmet at a moment, m; `None` only where there are no samples.
    pub fn extent(&self, time: f64) -> Option<[DVec2; 2]> {
        let Aboard { bike, at, body, .. } = self.aboard(time)?;
        let axles = [bike.rear(), bike.front()].map(|axle| at.world(axle));
        let low = axles[0].y.min(axles[1].y) - bike.tyre_middle() - 0.5 * bike.tyre_width();
        let x = 0.5 * (axles[0].x + axles[1].x);
        let top = body.head.y + body.helmet();
        Some([DVec2::new(x, low), DVec2::new(x, top)])
    }

    fn seated(&self, moment: &Moment) -> Aboard<'_> {
        let at = self.bike.place(moment);
        let (pedals, grip) = (self.bike.pedals(&at), self.bike.grip(&at));
        Aboard {
            bike: &self.bike,
            at,
            body: Body::lay(self.stature, moment, pedals, grip),
            speed: moment.speed,
        }
    }

    /// Lays bike and body on the sheet, from the side.
    pub fn draw(&self, time: f64, strip: &Strip, sheet: &mut Sheet) {
        let moment = Moment::at(&self.samples, time);
        let Some(moment) = moment.filter(|m| strip.holds(m.bike.x)) else {
            return;
        };
        let Aboard { at, body, .. } = self.seated(&moment);
        body.draw_far(strip, sheet);
        self.bike.draw(&at, moment.turned, strip, sheet);
        body.draw_near(strip, sheet);
    }
}

impl Rode {
    /// Lays bike and body on the sheet pale, with a label over them: the `index`th of those beside one another.
    pub fn draw_pale(
        &self,
        time: f64,
        label: Label,
        index: usize,
        strip: &Strip,
        sheet: &mut Sheet,
    ) {
        let pale = sheet.marks.len();
        self.draw(time, strip, sheet);
        if sheet.marks.len() == pale {
            return;
        }
        sheet.repaint(pale, Ink::Pale);
        if let Some(Aboard { body, .. }) = self.aboard(time) {
            // Each label higher than the one before, so that riders side by side can be told apart.
            let up = LABEL_OVER + LABEL_STEP * index as f64;
            let over = strip.place(body.head) - DVec2::Y * (body.helmet() * strip.scale + up);
            let at = DVec2::new(over.x, over.y.max(strip.top + LABEL));
            let top = strip.place(body.head + DVec2::Y * body.helmet());
            sheet.line(Ink::Pale, 1.0, [at, top]);
            sheet.text(Ink::Name, LABEL, at, Align::Middle, label);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::limb::Limb;
    use sim::plan::{self, Plan, Style};
    use sim::setup;

    /// Rides of every rider on every line to start from, in every style: some go well and some do not.
    fn rides() -> Vec<(Plan, usize, Rode)> {
        let mut all = Vec::new();
        for mut plan in plan::examples() {
            for rider in 0..plan.riders.len() {
                for style in [Style::Passive, Style::Absorbing, Style::Pumping] {
                    plan.riders[rider].rider.style = style;
                    let run = setup::ride_plan(&plan, rider).unwrap().run;
                    let rode = Rode::new(&plan.riders[rider], run.samples);
                    all.push((plan.clone(), rider, rode));
                }
            }
        }
        assert!(all.len() >= 12);
        all
    }

    /// Calls `check` with the body at every moment of every ride, and what it holds on to.
    fn each_moment(mut check: impl FnMut(&Aboard, &str)) {
        for (plan, rider, rode) in rides() {
            for sample in &rode.samples {
                let aboard = rode.aboard(sample.t).unwrap();
                let place = format!("{}, rider {rider}, {:.2} s", plan.name, sample.t);
                check(&aboard, &place);
            }
        }
    }

    fn bones(limb: &Limb) -> [f64; 2] {
        [
            limb.root.distance(limb.joint),
            limb.joint.distance(limb.tip),
        ]
    }

    #[test]
    fn limbs_keep_their_length_to_a_millimetre_over_whole_rides() {
        let mut first: Vec<[f64; 7]> = Vec::new();
        each_moment(|aboard, place| {
            let body = &aboard.body;
            let [[a, b], [c, d], [e, f]] =
                [body.legs[0], body.legs[1], body.arm].map(|l| bones(&l));
            let now = [a, b, c, d, e, f, body.hip.distance(body.shoulder)];
            let tall = body.stature();
            let known = first
                .iter()
                .find(|k| (k[0] / a - 1.0).abs() < 1e-4)
                .copied();
            let known = known.unwrap_or_else(|| {
                first.push(now);
                now
            });
            for (now, known) in now.iter().zip(known) {
                assert!(
                    (now - known).abs() < 1e-3,
                    "{now} m, was {known}: {place}, {tall} m tall"
                );
            }
        });
        // As many sets of bones as there are statures.
        let mut statures: Vec<_> = rides()
            .iter()
            .map(|(plan, rider, _)| (plan.riders[*rider].rider.stature * 1e4) as u64)
            .collect();
        statures.sort_unstable();
        statures.dedup();
        assert_eq!(first.len(), statures.len());
    }

    #[test]
    fn feet_stay_on_pedals_and_hands_on_grips_to_a_centimetre() {
        each_moment(|aboard, place| {
            let Aboard { bike, at, body, .. } = aboard;
            let hand = body.arm.tip.distance(bike.grip(at));
            assert!(hand < 0.01, "hand {hand} m off: {place}");
            for (pedal, (leg, ankle)) in bike
                .pedals(at)
                .iter()
                .zip(body.legs.iter().zip(body.ankles(bike.pedals(at))))
            {
                let foot = leg.tip.distance(ankle);
                assert!(foot < 0.01, "foot {foot} m off {pedal}: {place}");
            }
        });
    }

    #[test]
    fn knees_and_elbows_never_bend_backwards() {
        each_moment(|aboard, place| {
            let body = &aboard.body;
            for leg in body.legs {
                let bend = (leg.joint - leg.root).perp_dot(leg.tip - leg.joint);
                assert!(bend <= 0.0, "knee {bend}: {place}");
            }
            let arm = body.arm;
            let bend = (arm.joint - arm.root).perp_dot(arm.tip - arm.joint);
            assert!(bend >= 0.0, "elbow {bend}: {place}");
        });
    }

    /// Moments after a flight that count as its touch-down, s.
    const DOWN: f64 = 0.2;

    /// Least that hips are behind the cranks as a rider comes down, square to the bike, m.
    const BACK: f64 = 0.02;

    #[test]
    fn hips_are_behind_the_cranks_at_touch_down_and_the_head_behind_the_front_axle() {
        let plan = plan::demo();
        for (rider, mount) in plan.riders.iter().enumerate() {
            let run = setup::ride_plan(&plan, rider).unwrap().run;
            let rode = Rode::new(mount, run.samples);
            let (mut aloft, mut down) = (f64::NEG_INFINITY, 0);
            for s in &rode.samples {
                let Aboard { bike, at, body, .. } = rode.aboard(s.t).unwrap();
                let head = at.own(body.head).x - bike.front().x;
                assert!(
                    head < 0.0,
                    "head {head} m before the axle: {rider}, {} s",
                    s.t
                );
                if s.rear_load <= 0.0 && s.front_load <= 0.0 {
                    aloft = s.t;
                } else if s.t - aloft < DOWN {
                    let back = bike.cranks().x - at.own(body.hip).x;
                    assert!(back > BACK, "hips {back} m back: {rider}, {} s", s.t);
                    down += 1;
                }
            }
            assert!(down > 30, "{down} moments of touching down");
        }
    }

    #[test]
    fn no_knee_is_in_the_frame() {
        let plan = plan::demo();
        for (rider, mount) in plan.riders.iter().enumerate() {
            let run = setup::ride_plan(&plan, rider).unwrap().run;
            let rode = Rode::new(mount, run.samples);
            let mut least = f64::INFINITY;
            for s in &rode.samples {
                let Aboard { bike, at, body, .. } = rode.aboard(s.t).unwrap();
                let [seat, neck] = bike.top_tube();
                for leg in body.legs {
                    let knee = at.own(leg.joint);
                    let over = (neck - seat).normalize().perp_dot(knee - seat);
                    least = least.min(over);
                }
            }
            let name = &mount.label;
            println!("knees of {name} at the least {least:.3} m over the top tube");
            assert!(least > 0.0, "a knee {least} m over the tube");
        }
    }
}
