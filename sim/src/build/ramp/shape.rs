//! The ramp's surface, from the profile: platform, rounded edge, slope, hollow.

use crate::num;
use crate::plan::{Feature, Line, Plan, StartRamp, Surface};
use crate::profile::Under;
use crate::profile::{Piece, Profile};
use glam::DVec2;
use serde::Serialize;

/// What the ramp is like from the side.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RampShape {
    /// Width of the deck, m.
    pub width: f64,
    /// Level length from the platform's back to the foot, m.
    pub run: f64,
    /// Length of the deck along the surface, m.
    pub deck_length: f64,
    /// Length of the platform, m.
    pub platform: f64,
    /// Greatest height of the platform over the ground under it, m.
    pub height: f64,
    /// Radius of the rounded edge, m, and the length along it.
    pub edge: [f64; 2],
    /// Steepness of the slope against level, rad.
    pub slope: f64,
    /// Length of the straight slope, m.
    pub slope_length: f64,
    /// Radius of the hollow, m, and the length along it.
    pub hollow: [f64; 2],
    /// Places to mark: distance from the platform's back measured level, and height over the ground, m.
    pub marks: Vec<[f64; 2]>,
}

/// Distance between marks, m.
const MARKS: f64 = 0.25;

/// A wooden start ramp, laid.
pub(super) struct Laid<'a> {
    pub profile: &'a Profile,
    pub pieces: &'a [Piece],
    pub width: f64,
}

/// The start ramp of a plan, where it has one of wood.
pub(super) fn laid<'a>(plan: &Plan, profile: &'a Profile) -> Option<Laid<'a>> {
    let Line::Features(features) = &plan.line else {
        return None;
    };
    let Some(Feature::StartRamp(StartRamp { surface, width, .. })) = features.first() else {
        return None;
    };
    if *surface != Surface::Wood {
        return None;
    }
    let foot = profile.spans.first()?.to.x;
    let beyond = profile.pieces.partition_point(|p| p.start.x < foot - 1e-9);
    Some(Laid {
        profile,
        pieces: &profile.pieces[..beyond],
        width: width.unwrap_or(plan.width),
    })
}

impl Laid<'_> {
    fn back(&self) -> DVec2 {
        self.pieces[0].start
    }

    /// Level length, m.
    pub fn run(&self) -> f64 {
        self.pieces[self.pieces.len() - 1].end.x - self.back().x
    }

    /// The surface so far from the back, seen from there.
    pub fn point(&self, at: f64) -> DVec2 {
        let x = self.back().x + at;
        let z = self.profile.height_at(x).unwrap_or(self.back().y);
        DVec2::new(at, z - self.back().y)
    }

    /// Height of the surface over the ground, m, so far from the back.
    pub fn height(&self, at: f64) -> f64 {
        let ground = Under(&self.profile.yard).height(self.back().x + at);
        self.point(at).y + self.back().y - ground
    }

    /// Length of the platform, m: the first piece, which is level.
    pub fn platform(&self) -> f64 {
        self.pieces[0].length
    }

    /// How far from the back the surface is last so high over the ground, m, to a centimetre.
    pub fn reach(&self, height: f64) -> f64 {
        const STEP: f64 = 0.01;
        let steps = (self.run() / STEP) as u32;
        let mut all = (0..=steps).rev().map(|i| STEP * f64::from(i));
        all.find(|&at| self.height(at) >= height).unwrap_or(0.0)
    }

    /// How far the surface between two places lies off the line through them, m.
    pub fn sagitta(&self, from: f64, to: f64) -> f64 {
        const PLACES: u32 = 64;
        let (a, b) = (self.point(from), self.point(to));
        let along = (b - a).normalize_or(DVec2::X);
        let off = |i: u32| {
            let at = from + (to - from) * f64::from(i) / f64::from(PLACES);
            along.perp_dot(self.point(at) - a).abs()
        };
        (0..=PLACES).map(off).fold(0.0, num::max)
    }

    pub fn shape(&self) -> RampShape {
        let curve = |sign: f64| {
            let bent = self.pieces.iter().find(|p| p.curvature * sign > 0.0);
            bent.map_or([0.0; 2], |p| [1.0 / p.curvature.abs(), p.length])
        };
        let straight = self.pieces.iter().skip(1).find(|p| p.curvature == 0.0);
        let steepest = self.pieces.iter().map(|p| -p.end_heading());
        let marks = (self.run() / MARKS).ceil() as u32;
        let mark = |i: u32| {
            let at = num::min(MARKS * f64::from(i), self.run());
            [at, self.height(at)]
        };
        RampShape {
            width: self.width,
            run: self.run(),
            deck_length: self.pieces.iter().map(|p| p.length).sum(),
            platform: self.platform(),
            height: num::max(self.height(0.0), self.height(self.platform())),
            edge: curve(-1.0),
            slope: steepest.fold(0.0, num::max),
            slope_length: straight.map_or(0.0, |p| p.length),
            hollow: curve(1.0),
            marks: (0..=marks).map(mark).collect(),
        }
    }
}
