//! A ride, ready to be drawn at any moment of it.

use super::camera::Camera;
use super::dimensions::Dimensions;
use super::energy::Energy;
use super::flight::flights;
use super::grips::{self, Grip, Part};
use super::labels::Labels;
use super::moment::Moment;
use super::rode::Rode;
use super::saddle::Saddle;
use super::seen::Seen;
use super::sheet::{Ink, Label, Sheet};
use super::trail::{self, Trail};
use super::view::{self, Strip, View};
use super::{earth, figures, land, wood};
use core::ops::Range;
use glam::DVec2;
use sim::plan::Plan;
use sim::profile::{Profile, Span};
use sim::ride::Sample;
use sim::setup::Ridden;

/// Other rides that are drawn pale beside a picture's own.
#[derive(Clone, Copy, Debug, Default)]
pub struct Beside<'a> {
    /// The ride before the last change: its flights alone.
    pub before: Option<&'a Picture>,
    /// Another line: its ground, its flights and its first rider.
    pub against: Option<&'a Picture>,
    /// Other rides down the same line: their first riders, each with its label.
    pub ghosts: &'a [Picture],
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
    /// Wheelbase of the first rider's bike, m.
    wheelbase: f64,
    trail: Trail,
    camera: Camera,
    saddle: Saddle,
}

impl Picture {
    /// The picture of the rides of a plan's riders, in the plan's order.
    pub fn new(plan: &Plan, rides: Vec<Ridden>) -> Option<Self> {
        let profile = rides.first()?.profile.clone();
        let samples = rides.into_iter().map(|r| r.run.samples);
        Self::of(plan, profile, samples)
    }

    /// The picture of a plan's ground and its riders' traces, in the plan's order.
    pub fn of(
        plan: &Plan,
        profile: Profile,
        traces: impl Iterator<Item = Vec<Sample>>,
    ) -> Option<Self> {
        let mut rides = plan.riders.iter().zip(traces);
        let (mount, first) = rides.next()?;
        Some(Self {
            energy: Energy::of(&profile, &first),
            dimensions: Dimensions::of(plan, &profile),
            grips: grips::places(plan, &profile),
            wheelbase: mount.bike.wheelbase,
            trail: Trail::of(&profile, &first, mount.bike.wheelbase),
            camera: Camera::of(&profile, &first),
            saddle: Saddle::of(&profile),
            first: Rode::new(mount, first),
            others: rides.map(|(m, trace)| Rode::new(m, trace)).collect(),
            profile,
        })
    }

    /// The traces of all riders, in the plan's order.
    pub fn traces(&self) -> impl Iterator<Item = &[Sample]> {
        let riders = std::iter::once(&self.first).chain(&self.others);
        riders.map(|rode| rode.samples.as_slice())
    }

    /// Lays other ground under the same rides: what is seen before anybody rode it.
    pub fn lay(&mut self, plan: &Plan, profile: Profile) {
        self.dimensions = Dimensions::of(plan, &profile);
        self.grips = grips::places(plan, &profile);
        self.saddle = Saddle::of(&profile);
        self.profile = profile;
    }

    /// The strips in which it is seen.
    pub fn strips(&self, seen: &Seen, strips: &mut Vec<Strip>) {
        match seen.view {
            View::Follow => {
                strips.clear();
                strips.push(self.strip(seen));
            }
            View::Whole => {
                let relief = |a, b| land::relief(&self.profile, a, b);
                view::whole(seen.size, self.seams(), relief, strips);
            }
        }
    }

    /// The one strip of the view that follows.
    fn strip(&self, seen: &Seen) -> Strip {
        let focus = self.focus(seen.time);
        let (focus, ahead) = match seen.held {
            Some(held) => (held, 0.0),
            None if seen.still => {
                let x = view::stand(seen.size, focus.x, seen.zoom);
                (DVec2::new(x, land::yard(&self.profile, x) + 0.4), 0.0)
            }
            None => (focus, self.camera.ahead(seen.time)),
        };
        let strip = view::follow(seen.size, focus, ahead, seen.zoom);
        let rider = self.first.extent(seen.time);
        match (seen.held, rider) {
            // What a finger holds stays under it.
            (None, Some(rider)) => view::hold(strip, rider),
            _ => strip,
        }
    }

    /// What the view that follows keeps in sight at a moment, m.
    pub fn focus(&self, time: f64) -> DVec2 {
        self.camera.focus(&self.first.samples, time)
    }

    /// Lays what the first rider sees at a moment on a sheet of `size` px, ghosts and all.
    pub fn compose_saddle(&self, time: f64, size: DVec2, ghosts: &[Picture], sheet: &mut Sheet) {
        if let Some(rider) = self.first.aboard(time) {
            let others = self.others.iter().chain(ghosts.iter().map(|g| &g.first));
            let others = others.filter_map(|other| other.aboard(time));
            self.saddle.compose(&rider, others, size, sheet);
        }
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
            let moment = Moment::at(&self.first.samples, seen.time);
            if let Some(moment) = moment.filter(|m| strip.holds(m.bike.x)) {
                trail::draw_shadow(&self.profile, &moment, self.wheelbase, strip, sheet);
            }
            for (i, other) in self.others.iter().enumerate() {
                other.draw_pale(seen.time, Label::Other(i), i, strip, sheet);
            }
            for (i, ghost) in beside.ghosts.iter().enumerate() {
                let over = self.others.len() + i;
                ghost
                    .first
                    .draw_pale(seen.time, Label::Ghost(i), over, strip, sheet);
            }
            self.first.draw(seen.time, strip, sheet);
            self.trail.draw_dust(seen.time, strip, sheet);
            if let Some(feature) = seen.chosen {
                self.dimensions.draw(feature, strip, sheet);
                if seen.grips {
                    grips::draw(&self.grips, feature, strip, sheet);
                }
            }
        }
    }

    /// The middle of the longest time in the air, s; of the ride where there is none.
    pub fn longest_flight(&self) -> f64 {
        let samples = &self.first.samples;
        let longest = flights(samples).max_by_key(|flight| flight.len());
        let Range { start, end } = longest.unwrap_or(0..samples.len());
        samples.get((start + end) / 2).map_or(0.0, |s| s.t)
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
        figures::speeds(profile, seen.view, strip, labels, sheet);
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
}
