//! A ride, ready to be drawn at any moment of it.

use super::bike::Bike;
use super::body::Body;
use super::flight::Flights;
use super::labels::Labels;
use super::moment::Moment;
use super::sheet::{Ink, Sheet};
use super::view::{self, Strip, View};
use super::{earth, figures, land, wood};
use glam::DVec2;
use sim::plan::Plan;
use sim::profile::Profile;
use sim::ride::{SAMPLE_STEP, Sample};
use sim::setup::Ridden;

/// Half the time over which the height of the view is averaged, s: calm over rollers, and it
/// still rises before a jump.
const CALM: f64 = 1.0;

/// What is asked of a picture.
#[derive(Clone, Copy, Debug)]
pub struct Seen {
    /// Moment of the ride, s.
    pub time: f64,
    /// Width and height of the sheet, px.
    pub size: DVec2,
    /// How much of the line.
    pub view: View,
    /// The feature that is being edited.
    pub chosen: Option<usize>,
}

/// A ride and the ground under it.
#[derive(Clone, Debug)]
pub struct Picture {
    profile: Profile,
    samples: Vec<Sample>,
    bike: Bike,
    stature: f64,
    flights: Flights,
    /// Running sum of the bike's height, for the calm view.
    heights: Vec<f64>,
}

impl Picture {
    /// The picture of a plan's first rider's ride.
    pub fn new(plan: &Plan, ridden: Ridden) -> Option<Self> {
        let mount = plan.riders.first()?;
        let Ridden { profile, run, .. } = ridden;
        let mut sum = 0.0;
        let heights = std::iter::once(0.0)
            .chain(run.samples.iter().map(|s| {
                sum += s.bike_z;
                sum
            }))
            .collect();
        let wheel = mount.bike.wheel_radius();
        Some(Self {
            bike: Bike::new(mount),
            stature: mount.rider.stature,
            flights: Flights::of(&run.samples, mount.bike.wheelbase, wheel),
            profile,
            samples: run.samples,
            heights,
        })
    }

    /// The strips in which it is seen.
    pub fn strips(&self, seen: &Seen, strips: &mut Vec<Strip>) {
        match seen.view {
            View::Follow => {
                let moment = Moment::at(&self.samples, seen.time);
                let x = moment.map_or(0.0, |m| m.bike.x);
                let rider = DVec2::new(x, self.calm_height(seen.time));
                strips.clear();
                strips.push(view::follow(seen.size, rider));
            }
            View::Whole => {
                let relief = |a, b| land::relief(&self.profile, a, b);
                view::whole(seen.size, self.stations(), relief, strips);
            }
        }
    }

    /// The feature at a place of the sheet.
    pub fn feature_at(&self, at: DVec2, strips: &[Strip]) -> Option<usize> {
        let strip = strips.iter().find(|s| at.y >= s.top && at.y < s.bottom)?;
        let x = strip.station(at.x);
        let span = self
            .profile
            .spans
            .iter()
            .find(|s| x >= s.from.x && x < s.to.x);
        span.map(|s| s.feature)
    }

    /// Lays everything on the sheet; of the ride `before` a change only its flights.
    pub fn compose(
        &self,
        seen: &Seen,
        strips: &[Strip],
        before: Option<&Picture>,
        labels: &Labels,
        sheet: &mut Sheet,
    ) {
        sheet.clear();
        let moment = Moment::at(&self.samples, seen.time);
        for strip in strips {
            self.ground(seen, strip, labels, sheet);
            if let Some(before) = before {
                before.flights.draw(Ink::Before, strip, sheet);
            }
            self.flights.draw(Ink::Flight, strip, sheet);
            if let Some(moment) = moment.filter(|m| strip.holds(m.bike.x)) {
                self.rider(&moment, strip, sheet);
            }
        }
    }

    fn ground(&self, seen: &Seen, strip: &Strip, labels: &Labels, sheet: &mut Sheet) {
        let profile = &self.profile;
        let chosen = |s: &&sim::profile::Span| Some(s.feature) == seen.chosen;
        earth::draw(profile, strip, sheet);
        wood::draw(profile, strip, sheet);
        if let Some(span) = profile.spans.iter().find(chosen) {
            earth::draw_chosen(profile, span.from.x, span.to.x, strip, sheet);
        }
        earth::draw_line(profile, strip, sheet);
        figures::speeds(profile, seen.view, strip, sheet);
        figures::names(profile, seen.view, strip, labels, sheet);
    }

    fn rider(&self, moment: &Moment, strip: &Strip, sheet: &mut Sheet) {
        let at = self.bike.place(moment);
        let (pedals, grip) = (self.bike.pedals(&at), self.bike.grip(&at));
        let body = Body::lay(self.stature, moment, pedals, grip);
        body.draw_far(strip, sheet);
        self.bike.draw(&at, moment.turned, strip, sheet);
        body.draw_near(strip, sheet);
    }

    fn stations(&self) -> std::ops::Range<f64> {
        let pieces = &self.profile.pieces;
        let ends = (pieces.first(), pieces.last());
        ends.0.map_or(0.0, |p| p.start.x)..ends.1.map_or(1.0, |p| p.end.x)
    }

    /// Height of the bike averaged over the time around `t`, m.
    fn calm_height(&self, t: f64) -> f64 {
        let last = (self.heights.len() - 1) as f64;
        let place = |t: f64| (t / SAMPLE_STEP).clamp(0.0, last);
        let (a, b) = (place(t - CALM), place(t + CALM));
        let sum = |at: f64| {
            let i = at.floor() as usize;
            let next = self.heights[(i + 1).min(last as usize)];
            self.heights[i] + (next - self.heights[i]) * at.fract()
        };
        if b > a {
            (sum(b) - sum(a)) / (b - a)
        } else {
            0.0
        }
    }
}
