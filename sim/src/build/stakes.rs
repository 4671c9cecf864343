//! Stakes: where to drive them along a tape, what each marks, and how much is heaped or dug there.

use super::dirt::within;
use super::heap::Earth;
use super::width;
use crate::num;
use crate::plan::{Feature, Line, Plan, Turn};
use crate::profile::Under;
use crate::profile::{LipEdge, Piece, Profile, Span};
use glam::DVec2;
use serde::Serialize;

/// What a stake marks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Mark {
    /// Beginning of the line; of a start ramp, the back of its platform.
    Start,
    /// Edge of the platform, where the slope begins to round.
    PlatformEdge,
    /// Foot of the start ramp, where the hollow ends.
    RampFoot,
    /// Trough before, between or behind rollers.
    RollerTrough,
    /// Top of a roller.
    RollerTop,
    /// Where a lip begins to rise.
    LipFoot,
    /// End of the dirt ramp under a shorter lip.
    LeadInEnd,
    /// Edge of a lip.
    LipEdge,
    /// Middle of a gap, on its floor or deck.
    Gap,
    /// Top of a landing's face.
    Knuckle,
    /// Foot of a landing's straight slope, where its hollow begins.
    LandingFoot,
    /// End of a landing's hollow.
    LandingEnd,
    /// Beginning of a turn.
    TurnFrom,
    /// End of a turn.
    TurnTo,
    /// End of the run-out.
    RunOutEnd,
}

/// What is needed to set a turn out on the ground.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct SetOut {
    /// Radius of the line ridden, m: its centre is so far away, square to the line.
    pub radius: f64,
    /// How far it turns, rad.
    pub sweep: f64,
    /// Straight from its beginning to its end, m.
    pub chord: f64,
    /// From the middle of that to the middle of the line ridden, m; of more than half a circle, more than the radius.
    pub rise: f64,
}

/// One stake.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Stake {
    /// Index of the feature in the plan's line.
    pub feature: usize,
    /// What it marks.
    pub mark: Mark,
    /// Distance from the start measured level, m.
    pub station: f64,
    /// Distance from the start along a tape on the ground, m.
    pub tape: f64,
    /// Height of the yard's own ground, m.
    pub ground: f64,
    /// Height of the ride over the yard's own ground, m: fill where positive, cut where negative.
    pub height: f64,
    /// Offset of the edges of the ride to either side, m: half its width.
    pub edge: f64,
    /// Offset of the toes of slopes of dirt to either side, m; no more than the edge where nothing slopes.
    pub toe: f64,
    /// Of a stake where a turn begins: how to set it out.
    pub turn: Option<SetOut>,
}

/// Every stake of a line in order; none of a surveyed one, which stands there already.
///
/// A line is unrolled: stations run on round its turns.
pub fn stakes(plan: &Plan, profile: &Profile, earth: &Earth) -> Vec<Stake> {
    let Line::Features(features) = &plan.line else {
        return Vec::new();
    };
    let mut driving = Driving {
        plan,
        slope: earth.slope,
        under: Under(&profile.yard),
        stakes: Vec::new(),
    };
    if let Some(first) = profile.pieces.first() {
        driving.drive(0, Mark::Start, first.start);
    }
    for (span, feature) in profile.spans.iter().zip(features) {
        driving.feature(profile, span, feature);
    }
    driving.stakes
}

struct Driving<'a> {
    plan: &'a Plan,
    slope: f64,
    under: Under<'a>,
    stakes: Vec<Stake>,
}

impl Driving<'_> {
    fn drive(&mut self, feature: usize, mark: Mark, at: DVec2) {
        let widths = width::of(self.plan, feature);
        let landing = matches!(mark, Mark::Knuckle | Mark::LandingFoot | Mark::LandingEnd);
        let width = if landing {
            widths.landing
        } else {
            widths.first
        };
        let edge = width / 2.0;
        let ground = self.under.height(at.x);
        let height = at.y - ground;
        let run = if self.walled(feature, mark) {
            0.0
        } else {
            self.slope * height.abs()
        };
        self.stakes.push(Stake {
            feature,
            mark,
            station: at.x,
            tape: self.under.tape(0.0, at.x),
            ground,
            height,
            edge,
            toe: edge + run,
            turn: None,
        });
    }

    /// Whether wood or walls stand there in place of slopes.
    fn walled(&self, feature: usize, mark: Mark) -> bool {
        use crate::plan::Surface::Wood;
        let Line::Features(features) = &self.plan.line else {
            return false;
        };
        match (&features[feature], mark) {
            (Feature::StartRamp(ramp), _) => ramp.surface == Wood,
            (Feature::Jump(jump), Mark::LipEdge) => jump.lip.surface == Wood,
            (Feature::Jump(jump), Mark::Gap) => jump.decked && jump.lip.surface == Wood,
            (Feature::Jump(jump), Mark::Knuckle | Mark::LandingFoot) => {
                jump.landing.boxed || jump.landing.surface == Wood
            }
            (Feature::Roller(roller), _) => roller.surface == Wood,
            _ => false,
        }
    }

    fn feature(&mut self, profile: &Profile, span: &Span, feature: &Feature) {
        let i = span.feature;
        match feature {
            Feature::StartRamp(_) => {
                let edge = within(profile, span).next().map_or(span.from, |p| p.end);
                self.drive(i, Mark::PlatformEdge, edge);
                self.drive(i, Mark::RampFoot, span.to);
            }
            Feature::Flat(_) => {}
            Feature::Roller(_) => self.rollers(profile, span),
            Feature::Jump(jump) => {
                let lip = profile.lips.iter().find(|l| l.feature == i);
                if let Some(lip) = lip {
                    let lead = jump.lip.lead_in.is_some();
                    self.jump(profile, span, lip, lead);
                }
            }
            Feature::Turn(turn) => {
                self.drive(i, Mark::TurnFrom, span.from);
                if let Some(stake) = self.stakes.last_mut() {
                    stake.turn = Some(set_out(turn));
                }
                self.drive(i, Mark::TurnTo, span.to);
            }
            Feature::RunOut(_) => self.drive(i, Mark::RunOutEnd, span.to),
        }
    }

    /// Hollow and crest by turns: a crest's top and a trough between two are the middles of their arcs.
    fn rollers(&mut self, profile: &Profile, span: &Span) {
        self.drive(span.feature, Mark::RollerTrough, span.from);
        let pieces: Vec<&Piece> = within(profile, span).collect();
        for (i, piece) in pieces.iter().enumerate() {
            let middle = piece.point(piece.length / 2.0);
            if piece.curvature < 0.0 {
                self.drive(span.feature, Mark::RollerTop, middle);
            } else if i > 0 && i + 1 < pieces.len() {
                self.drive(span.feature, Mark::RollerTrough, middle);
            }
        }
        self.drive(span.feature, Mark::RollerTrough, span.to);
    }

    fn jump(&mut self, profile: &Profile, span: &Span, lip: &LipEdge, lead_in: bool) {
        let i = span.feature;
        self.drive(i, Mark::LipFoot, lip.foot);
        if lead_in {
            // The arc's first part, then the ramp.
            if let Some(ramp) = within(profile, span).nth(1) {
                self.drive(i, Mark::LeadInEnd, ramp.end);
            }
        }
        self.drive(i, Mark::LipEdge, lip.edge);
        let middle = (lip.edge.x + lip.knuckle.x) / 2.0;
        if lip.knuckle.x > lip.edge.x
            && let Some(height) = profile.height_at(middle)
        {
            self.drive(i, Mark::Gap, DVec2::new(middle, height));
        }
        self.drive(i, Mark::Knuckle, lip.knuckle);
        self.drive(i, Mark::LandingFoot, lip.slope_end);
        self.drive(i, Mark::LandingEnd, lip.landing_end);
    }
}

fn set_out(turn: &Turn) -> SetOut {
    let sweep = num::radians(turn.sweep_deg);
    let (sine, cosine) = num::sin_cos(sweep / 2.0);
    SetOut {
        radius: turn.radius,
        sweep,
        chord: 2.0 * turn.radius * sine,
        rise: turn.radius * (1.0 - cosine),
    }
}
