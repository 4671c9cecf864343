//! Turns a plan's features into the chain of pieces, each laid on the ground under it.

use super::ground::Ground;
use super::pen::Pen;
use super::piece::STEEPEST;
use super::width::widen;
use super::{Character, LipEdge, Profile, Span};
use crate::error::{Fault, Quantity, Why};
use crate::num;
use crate::plan::{Feature, Line, Plan, fault};
use glam::DVec2;

/// How far a line may reach beyond the yard, m: lengths add up with rounding errors.
const FITS: f64 = 1e-3;

/// A profile being laid.
pub(super) struct Laying<'a> {
    pub ground: &'a Ground,
    pub pen: Pen,
    /// Height of the raised bed under the next feature over the ground, m.
    pub bed: f64,
    /// Radius of the largest wheel that rides here, m.
    pub wheel: f64,
    /// Index of the feature being laid.
    pub feature: usize,
    pub lips: Vec<LipEdge>,
}

impl Laying<'_> {
    /// Path of a field of the feature being laid.
    pub fn field(&self, name: &str) -> String {
        format!("line.features[{}].{name}", self.feature)
    }

    /// Draws along the ground, or the bed on it, to a station.
    pub fn follow(&mut self, to: f64, character: Character) {
        if let Ground::Even { heading, .. } = self.ground {
            let length = (to - self.pen.at.x) / num::cos(*heading);
            return self.pen.line(*heading, length, character);
        }
        let up = DVec2::new(0.0, self.bed);
        for bend in self.ground.bends(self.pen.at.x, to) {
            self.pen.line_to(bend + up, character);
        }
        self.pen.line_to(self.ground.point(to) + up, character);
    }

    /// A slope falling at an angle against the ground must not come near plumb.
    pub fn check_angle(&self, field: &str, degrees: f64, ground: f64) -> Result<(), Fault> {
        let most = num::degrees(STEEPEST + num::min(ground, 0.0));
        if degrees <= most {
            return Ok(());
        }
        let why = Why::Plumb;
        let range = (None, Some(most));
        let field = self.field(field);
        Err(fault(field, Quantity::Angle, degrees, range, why))
    }

    /// A wheel must fit a hollow.
    pub fn check_wheel(&self, field: &str, radius: f64) -> Result<(), Fault> {
        if radius >= self.wheel {
            return Ok(());
        }
        let why = Why::TightHollow;
        let range = (Some(self.wheel), None);
        let field = self.field(field);
        Err(fault(field, Quantity::Length, radius, range, why))
    }

    fn lay(&mut self, feature: &Feature) -> Result<(), Fault> {
        match feature {
            Feature::StartRamp(ramp) => self.start_ramp(ramp)?,
            Feature::Flat(flat) => self.flat(flat),
            Feature::Roller(roller) => self.roller(roller)?,
            Feature::Jump(jump) => self.jump(jump)?,
            Feature::Turn(turn) => self.turn(turn),
            Feature::RunOut(run_out) => self.run_out(run_out),
        }
        Ok(())
    }
}

impl Profile {
    /// The side view of a plan: features laid one after the other on the yard, or the surveyed
    /// line as it is.
    ///
    /// # Errors
    /// Every fault of a field by itself; where there is none, every fault of the geometry, each at
    /// its field. What does not fit the yard is a fault of
    /// `yard.length`: the excess is the least accepted less the given.
    pub fn build(plan: &Plan) -> Result<Profile, Vec<Fault>> {
        let faults = plan.field_faults();
        if !faults.is_empty() {
            return Err(faults);
        }
        let ground = Ground::new(&plan.yard.lie);
        let profile = match &plan.line {
            Line::Features(features) => features_on(&ground, features, plan)?,
            Line::Surveyed { points, surface } => {
                let mut traced = super::surveyed::trace(points, *surface);
                for piece in &mut traced.pieces {
                    piece.character.width = plan.width;
                }
                traced
            }
        };
        let profile = Profile {
            yard: ground.outline(&plan.yard),
            ..profile
        };
        let end = profile.pieces.last().map_or(0.0, |p| p.end.x);
        if end <= plan.yard.length + FITS {
            let faults = profile.check_stand(plan);
            return if faults.is_empty() {
                Ok(profile)
            } else {
                Err(faults)
            };
        }
        Err(vec![fault(
            "yard.length".to_owned(),
            Quantity::Length,
            plan.yard.length,
            (Some(end), None),
            Why::LongLine,
        )])
    }
}

impl Plan {
    /// Every fault of the plan at once, geometry included; none where it can be ridden.
    pub fn validate(&self) -> Vec<Fault> {
        Profile::build(self).err().unwrap_or_default()
    }
}

fn largest_wheel(plan: &Plan) -> f64 {
    let radii = plan.riders.iter().map(|m| m.bike.wheel_radius());
    radii.fold(0.0, num::max)
}

fn features_on(ground: &Ground, features: &[Feature], plan: &Plan) -> Result<Profile, Vec<Fault>> {
    let mut laying = Laying {
        ground,
        pen: Pen::new(ground.point(0.0)),
        bed: 0.0,
        wheel: largest_wheel(plan),
        feature: 0,
        lips: Vec::new(),
    };
    let mut faults = Vec::new();
    let mut spans = Vec::new();
    let mut names = super::names::Names::default();
    for (feature, what) in features.iter().enumerate() {
        laying.feature = feature;
        // A ramp moves the pen up to its platform first, so its stretch begins with its first piece.
        let first = laying.pen.pieces.len();
        if let Err(fault) = laying.lay(what) {
            faults.push(fault);
            if laying.bed > 0.0 || raises_bed(what) {
                // What follows stands on a bed of unknown height, and cannot be judged.
                break;
            }
        }
        if let Some(own) = laying.pen.pieces.get_mut(first..) {
            widen(own, what, plan.width);
        }
        let from = laying.pen.pieces.get(first);
        spans.push(Span {
            feature,
            name: names.name(what),
            from: from.map_or(laying.pen.at, |p| p.start),
            to: laying.pen.at,
        });
    }
    if !faults.is_empty() {
        return Err(faults);
    }
    Ok(Profile {
        pieces: laying.pen.pieces,
        lips: laying.lips,
        spans,
        yard: Vec::new(),
    })
}

fn raises_bed(feature: &Feature) -> bool {
    matches!(feature, Feature::Jump(jump) if jump.landing.length.is_some())
}
