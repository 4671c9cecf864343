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

/// Type of a ghost's label, how far over its head the first one stands, and how far over that the next, px.
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
    /// Lays bike and body on the sheet pale, with the `index`th ghost's label over them.
    pub fn draw_ghost(&self, time: f64, index: usize, strip: &Strip, sheet: &mut Sheet) {
        let pale = sheet.marks.len();
        self.draw(time, strip, sheet);
        if sheet.marks.len() == pale {
            return;
        }
        sheet.repaint(pale, Ink::Pale);
        if let Some(Aboard { body, .. }) = self.aboard(time) {
            // Each label higher than the one before, so that ghosts side by side can be told apart.
            let up = LABEL_OVER + LABEL_STEP * index as f64;
            let at = strip.place(body.head) - DVec2::Y * (body.helmet() * strip.scale + up);
            let top = strip.place(body.head + DVec2::Y * body.helmet());
            sheet.line(Ink::Pale, 1.0, [at, top]);
            sheet.text(Ink::Name, LABEL, at, Align::Middle, Label::Ghost(index));
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
}
