//! A ride, ready to be drawn at any moment of it.

use super::bike::Bike;
use super::body::Body;
use super::dimensions::Dimensions;
use super::energy::Energy;
use super::flight::Flights;
use super::grips::{self, Grip, Part};
use super::labels::Labels;
use super::moment::Moment;
use super::sheet::{Ink, Sheet};
use super::view::{self, Strip, View};
use super::{earth, figures, land, wood};
use glam::DVec2;
use sim::plan::{Mount, Plan};
use sim::profile::{Profile, Span};
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
    /// What the view that follows keeps in sight instead of the rider, m.
    pub held: Option<DVec2>,
    /// How much nearer than usual the view that follows is.
    pub zoom: f64,
}

/// Other rides that are drawn pale beside a picture's own.
#[derive(Clone, Copy, Debug, Default)]
pub struct Beside<'a> {
    /// The ride before the last change: its flights alone.
    pub before: Option<&'a Picture>,
    /// Another line: its ground, its flights and its first rider.
    pub against: Option<&'a Picture>,
}

/// One rider's ride.
#[derive(Clone, Debug)]
struct Rode {
    samples: Vec<Sample>,
    bike: Bike,
    stature: f64,
    flights: Flights,
}

impl Rode {
    fn new(mount: &Mount, samples: Vec<Sample>) -> Self {
        let wheel = mount.bike.wheel_radius();
        Self {
            bike: Bike::new(mount),
            stature: mount.rider.stature,
            flights: Flights::of(&samples, mount.bike.wheelbase, wheel),
            samples,
        }
    }

    fn draw(&self, time: f64, strip: &Strip, sheet: &mut Sheet) {
        let moment = Moment::at(&self.samples, time);
        let Some(moment) = moment.filter(|m| strip.holds(m.bike.x)) else {
            return;
        };
        let at = self.bike.place(&moment);
        let (pedals, grip) = (self.bike.pedals(&at), self.bike.grip(&at));
        let body = Body::lay(self.stature, &moment, pedals, grip);
        body.draw_far(strip, sheet);
        self.bike.draw(&at, moment.turned, strip, sheet);
        body.draw_near(strip, sheet);
    }
}

/// The rides of a plan's riders and the ground under them.
#[derive(Clone, Debug)]
pub struct Picture {
    profile: Profile,
    /// Of the rider the line is for.
    first: Rode,
    /// Of the others.
    others: Vec<Rode>,
    energy: Energy,
    dimensions: Dimensions,
    /// Where features can be taken hold of.
    grips: Vec<(usize, Part, DVec2)>,
    /// Running sum of the bike's height, for the calm view.
    heights: Vec<f64>,
}

impl Picture {
    /// The picture of the rides of a plan's riders, in the plan's order.
    pub fn new(plan: &Plan, rides: Vec<Ridden>) -> Option<Self> {
        let mut rides = plan.riders.iter().zip(rides);
        let (mount, Ridden { profile, run, .. }) = rides.next()?;
        let mut sum = 0.0;
        let heights = std::iter::once(0.0)
            .chain(run.samples.iter().map(|s| {
                sum += s.bike_z;
                sum
            }))
            .collect();
        Some(Self {
            energy: Energy::of(&profile, &run.samples),
            dimensions: Dimensions::of(plan, &profile),
            grips: grips::places(plan, &profile),
            first: Rode::new(mount, run.samples),
            others: rides.map(|(m, r)| Rode::new(m, r.run.samples)).collect(),
            profile,
            heights,
        })
    }

    /// The strips in which it is seen.
    pub fn strips(&self, seen: &Seen, strips: &mut Vec<Strip>) {
        match seen.view {
            View::Follow => {
                let focus = seen.held.unwrap_or_else(|| self.focus(seen.time));
                strips.clear();
                strips.push(view::follow(seen.size, focus, seen.zoom));
            }
            View::Whole => {
                let relief = |a, b| land::relief(&self.profile, a, b);
                view::whole(seen.size, self.seams(), relief, strips);
            }
        }
    }

    /// What the view that follows keeps in sight at a moment, m.
    pub fn focus(&self, time: f64) -> DVec2 {
        let moment = Moment::at(&self.first.samples, time);
        DVec2::new(moment.map_or(0.0, |m| m.bike.x), self.calm_height(time))
    }

    /// Where a feature can be taken hold of.
    pub fn grips(&self, feature: usize, strips: &[Strip]) -> Vec<Grip> {
        grips::shown(&self.grips, feature, strips)
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

    /// Lays everything on the sheet.
    pub fn compose(
        &self,
        seen: &Seen,
        strips: &[Strip],
        beside: Beside,
        labels: &Labels,
        sheet: &mut Sheet,
    ) {
        sheet.clear();
        for strip in strips {
            if let Some(other) = beside.against {
                let pale = sheet.marks.len();
                earth::draw_line(&other.profile, strip, sheet);
                other.first.flights.draw(Ink::Before, strip, sheet);
                other.first.draw(seen.time, strip, sheet);
                sheet.repaint(pale, Ink::Before);
            }
            self.ground(seen, strip, labels, sheet);
            if let Some(before) = beside.before {
                before.first.flights.draw(Ink::Before, strip, sheet);
            }
            self.first.flights.draw(Ink::Flight, strip, sheet);
            self.energy.draw(seen, strip, sheet);
            for other in &self.others {
                let pale = sheet.marks.len();
                other.draw(seen.time, strip, sheet);
                sheet.repaint(pale, Ink::Pale);
            }
            self.first.draw(seen.time, strip, sheet);
            if let Some(feature) = seen.chosen {
                self.dimensions.draw(feature, strip, sheet);
            }
        }
    }

    /// The middle of the longest time in the air, s; of the ride where there is none.
    pub fn longest_flight(&self) -> f64 {
        let aloft = |s: &Sample| s.rear_load <= 0.0 && s.front_load <= 0.0;
        let samples = &self.first.samples;
        let flights = samples.chunk_by(|a, b| aloft(a) == aloft(b));
        let longest = flights.filter(|f| aloft(&f[0])).max_by_key(|f| f.len());
        let stretch = longest.unwrap_or(samples);
        stretch.get(stretch.len() / 2).map_or(0.0, |s| s.t)
    }

    fn ground(&self, seen: &Seen, strip: &Strip, labels: &Labels, sheet: &mut Sheet) {
        let profile = &self.profile;
        let chosen = |s: &&Span| Some(s.feature) == seen.chosen;
        earth::draw(profile, strip, sheet);
        wood::draw(profile, strip, sheet);
        if let Some(span) = profile.spans.iter().find(chosen) {
            earth::draw_chosen(profile, span.from.x, span.to.x, strip, sheet);
        }
        earth::draw_line(profile, strip, sheet);
        figures::speeds(profile, seen.view, strip, sheet);
        figures::names(profile, seen.view, strip, labels, sheet);
    }

    /// Where the line may be cut into rows: between features, or between pieces where a surveyed
    /// line has no features.
    fn seams(&self) -> impl Iterator<Item = f64> + Clone {
        let Profile { spans, pieces, .. } = &self.profile;
        let pieces = if spans.is_empty() {
            pieces.as_slice()
        } else {
            &[]
        };
        let first = self.profile.pieces.first().map_or(0.0, |p| p.start.x);
        let last = spans
            .iter()
            .map(|s| s.to.x)
            .chain(pieces.iter().map(|p| p.end.x));
        std::iter::once(first).chain(last)
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
