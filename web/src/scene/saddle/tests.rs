//! The whole view from the saddle on the demonstration line.

use super::*;
use crate::scene::moment::Moment;
use crate::scene::sheet::Mark;
use sim::plan;
use sim::ride::Sample;
use sim::setup;

const SHEET: DVec2 = DVec2::new(360.0, 296.0);

struct Ridden {
    saddle: Saddle,
    bike: Bike,
    stature: f64,
    samples: Vec<Sample>,
    profile: Profile,
}

impl Ridden {
    fn demo() -> Self {
        let plan = plan::demo();
        let ridden = setup::ride_plan(&plan, 0).unwrap();
        Self {
            saddle: Saddle::of(&ridden.profile),
            bike: Bike::new(&plan.riders[0]),
            stature: plan.riders[0].rider.stature,
            samples: ridden.run.samples,
            profile: ridden.profile,
        }
    }

    fn aboard(&self, t: f64) -> Aboard<'_> {
        let moment = Moment::at(&self.samples, t).unwrap();
        let at = self.bike.place(&moment);
        let (pedals, grip) = (self.bike.pedals(&at), self.bike.grip(&at));
        Aboard {
            bike: &self.bike,
            at,
            body: Body::lay(self.stature, &moment, pedals, grip),
            speed: moment.speed,
        }
    }

    fn end(&self) -> f64 {
        self.samples[self.samples.len() - 1].t
    }

    /// When the bike comes to a station.
    fn when(&self, x: f64) -> f64 {
        self.samples.iter().find(|s| s.bike_x >= x).unwrap().t
    }
}

#[test]
fn every_number_on_the_sheet_is_finite_all_the_way() {
    let ridden = Ridden::demo();
    let mut sheet = Sheet::default();
    for i in 0..=60 {
        let rider = ridden.aboard(ridden.end() * f64::from(i) / 60.0);
        let others = std::iter::once(ridden.aboard(ridden.end() * f64::from(i + 1) / 60.0));
        ridden.saddle.compose(&rider, others, SHEET, &mut sheet);
        assert!(sheet.points.iter().all(|p| p.is_finite()));
        assert!(sheet.marks.len() > 50, "{}", sheet.marks.len());
    }
}

#[test]
fn the_line_ahead_is_in_the_middle_and_its_horizon_near_the_sheets() {
    let ridden = Ridden::demo();
    for i in 1..40 {
        let rider = ridden.aboard(ridden.end() * f64::from(i) / 40.0);
        let lens = ridden.saddle.lens(&rider, SHEET);
        let x = eye(&rider).x + 4.0;
        let ahead = DVec2::new(x, ridden.saddle.ribbon.height(x));
        let px = lens.place(beside(ahead, 0.0)).unwrap();
        assert!((px.x - 180.0).abs() < 1e-9);
        assert!(px.y > 0.0 && px.y < SHEET.y, "{px} at {i}");
    }
}

#[test]
fn a_lip_grows_as_it_comes_and_stands_up_like_a_wall() {
    let ridden = Ridden::demo();
    let lip = ridden.profile.lips[0];
    let size = |before: f64| {
        let rider = ridden.aboard(ridden.when(lip.foot.x - before));
        let lens = ridden.saddle.lens(&rider, SHEET);
        let [left, right] = [0.6, -0.6].map(|w| lens.place(beside(lip.edge, w)).unwrap());
        let foot = lens.place(beside(lip.foot, 0.0)).unwrap();
        assert!(left.y < foot.y, "the edge stands above the foot");
        (right.x - left.x, foot.y - left.y)
    };
    let (far, near) = (size(6.0), size(1.0));
    assert!(near.0 > 1.8 * far.0, "{near:?} {far:?}");
    assert!(near.1 > 2.0 * far.1, "{near:?} {far:?}");
}

#[test]
fn whoever_is_ahead_is_seen_and_whoever_is_behind_is_not() {
    let ridden = Ridden::demo();
    let mut sheet = Sheet::default();
    let mut pale = |by: f64| {
        let (rider, other) = (ridden.aboard(2.5), ridden.aboard(2.5 + by));
        let others = std::iter::once(other);
        ridden.saddle.compose(&rider, others, SHEET, &mut sheet);
        let pale = |m: &&Mark| matches!(m, Mark::Line { ink: Ink::Pale, .. });
        sheet.marks.iter().filter(pale).count()
    };
    assert!(pale(0.5) > 8);
    assert_eq!(pale(-0.5), 0);
}

/// Share of the moments of a ride in which both hands have to be on the sheet.
const MOST: f64 = 0.95;

#[test]
fn hands_and_bar_are_seen_on_the_ground_as_well() {
    let ridden = Ridden::demo();
    let (mut all, mut seen) = (0, 0);
    for sample in ridden.samples.iter().step_by(5) {
        if sample.rear_load <= 0.0 && sample.front_load <= 0.0 {
            continue;
        }
        let rider = ridden.aboard(sample.t);
        let lens = ridden.saddle.lens(&rider, SHEET);
        let hand = lens.place(beside(rider.body.arm.tip, 0.0));
        all += 1;
        seen += usize::from(hand.is_some_and(|px| px.y > 0.0 && px.y < SHEET.y));
    }
    println!("hands on the sheet at {seen} of {all} moments");
    assert!(
        all > 100 && seen as f64 >= MOST * all as f64,
        "{seen} of {all}"
    );
}

/// From the top of the start ramp, its boards are under the eye: they are filled down to the lower edge.
#[test]
fn near_planks_are_filled() {
    let ridden = Ridden::demo();
    let mut sheet = Sheet::default();
    for t in [0.2, 0.5, 0.8] {
        let rider = ridden.aboard(t);
        ridden
            .saddle
            .compose(&rider, std::iter::empty(), SHEET, &mut sheet);
        let planks = sheet.marks.iter().filter_map(|mark| match mark {
            Mark::Area {
                ink: Ink::Paper,
                points,
                ..
            } => Some(&sheet.points[points.clone()]),
            _ => None,
        });
        let lowest = planks.flatten().map(|p| p.y).fold(0.0, f64::max);
        assert!(lowest >= SHEET.y, "filled down to {lowest} px at {t} s");
    }
}
