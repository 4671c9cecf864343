//! What a ride leaves on the ground: a shadow under the bike, and dust where it came down on earth.

use super::flight::flights;
use super::moment::Moment;
use super::sheet::{Ink, Sheet};
use super::view::Strip;
use glam::DVec2;
use sim::num;
use sim::plan::Surface;
use sim::profile::Profile;
use sim::ride::Sample;

/// How long after touch-down the load is looked at, samples.
const IMPACT: usize = 15;
/// How long dust hangs, s.
const HANG: f64 = 0.7;

/// Where and when a ride came down on earth.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Touch {
    t: f64,
    at: DVec2,
    /// Peak load on the rider, body weights.
    g: f64,
}

/// The touch-downs of a ride.
#[derive(Clone, Debug, Default)]
pub struct Trail(Vec<Touch>);

impl Trail {
    /// The trail of a ride on a bike with a wheelbase, m.
    pub fn of(profile: &Profile, samples: &[Sample], wheelbase: f64) -> Self {
        let touch = |at: usize| {
            let s = samples.get(at)?;
            let side = if s.rear_load > 0.0 { -0.5 } else { 0.5 };
            let x = s.bike_x + side * wheelbase * num::cos(s.pitch);
            let spot = profile.spot(x)?;
            let after = &samples[at..samples.len().min(at + IMPACT)];
            let earth = profile.pieces[spot.piece].character.surface != Surface::Wood;
            earth.then(|| Touch {
                t: s.t,
                at: spot.point,
                g: after.iter().map(|s| s.g).fold(0.0, f64::max),
            })
        };
        let ends = flights(samples).map(|flight| flight.end);
        Self(ends.filter_map(touch).collect())
    }

    /// Lays the dust that hangs at a moment on the sheet: more of it, and farther up, the harder it was.
    pub fn draw_dust(&self, time: f64, strip: &Strip, sheet: &mut Sheet) {
        for touch in self.0.iter().filter(|t| strip.holds(t.at.x)) {
            let age = (time - touch.t) / HANG;
            if !(0.0..1.0).contains(&age) {
                continue;
            }
            let puffs = (1.0 + 2.0 * touch.g).min(12.0) as u32;
            for i in 0..puffs {
                let way = DVec2::from_angle(2.9 - 0.42 * f64::from(i % 6));
                let far = (0.16 + 0.05 * f64::from(i)) * age.sqrt() * touch.g.min(5.0) * 0.4;
                let radius = (0.03 + 0.1 * age) * (1.0 - 0.4 * age) * strip.scale;
                let centre = strip.place(touch.at + DVec2::Y * 0.04 + way * far);
                sheet.disc(Ink::Dust, centre, radius * (1.0 - age * age));
            }
        }
    }
}

/// Lays the shadow of a bike with a wheelbase, m, on the sheet: straight below, on the ground.
pub fn draw_shadow(
    profile: &Profile,
    moment: &Moment,
    wheelbase: f64,
    strip: &Strip,
    sheet: &mut Sheet,
) {
    let half = 0.62 * wheelbase * num::cos(moment.pitch).abs();
    let points = (0..=8).filter_map(|i| {
        let x = moment.bike.x + half * (f64::from(i) / 4.0 - 1.0);
        profile.height_at(x).map(|z| strip.place(DVec2::new(x, z)))
    });
    sheet.line(Ink::Shade, (0.07 * strip.scale).max(4.0), points);
}

#[cfg(test)]
mod tests {
    use super::*;
    use sim::{judge, plan, setup};

    #[test]
    fn every_landing_of_the_demonstration_raises_dust_once() {
        let plan = plan::demo();
        let ridden = setup::ride_plan(&plan, 0).unwrap();
        let (profile, run) = (&ridden.profile, &ridden.run);
        let trail = Trail::of(profile, &run.samples, plan.riders[0].bike.wheelbase);
        let jumps = judge::jumps(profile, run);
        for lip in &profile.lips {
            let on = |t: &&Touch| t.at.x > lip.knuckle.x - 0.5 && t.at.x < lip.landing_end.x;
            let here: Vec<_> = trail.0.iter().filter(on).collect();
            assert_eq!(here.len(), 1, "{here:?}");
            assert!(
                here[0].g > 1.0,
                "a landing weighs more than standing: {here:?}"
            );
        }
        assert!(!jumps.is_empty());
    }

    #[test]
    fn dust_rises_and_is_gone() {
        let trail = Trail(vec![Touch {
            t: 1.0,
            at: DVec2::new(3.0, 0.0),
            g: 3.0,
        }]);
        let strip =
            crate::scene::view::follow(DVec2::new(360.0, 290.0), DVec2::new(3.0, 0.3), 0.0, 1.0);
        let marks = |t: f64| {
            let mut sheet = Sheet::default();
            trail.draw_dust(t, &strip, &mut sheet);
            sheet.marks.len()
        };
        assert_eq!([marks(0.9), marks(1.01), marks(1.8)], [0, 7, 0]);
    }
}
