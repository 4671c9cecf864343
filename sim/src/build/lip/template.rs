//! The template of a lip's riding curve: what is drawn with a string, or through points without one.
//!
//! It is taken from the pieces of the profile between the lip's foot and its edge. Places are told twice: along
//! the ground line and square to it, as on a sheet whose edge lies on the ground, and level and plumb, as with
//! a spirit level. Both count from the foot, where the curve leaves the ground. The ground line is the straight
//! line from the foot to the ground, or the raised bed, plumb below the edge.

use super::super::outline::{Edge, height};
use crate::num;
use crate::plan::{Lip, Surface};
use crate::profile::{Intent, LipEdge, Piece, Profile, direction};
use glam::DVec2;
use serde::Serialize;

/// Ends of pieces nearer than this are one place, m.
const JOINT: f64 = 1e-6;

/// A place on or about the lip, from its foot.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Place {
    /// Along the ground line, m.
    pub along: f64,
    /// Square to the ground line, m.
    pub rise: f64,
    /// Level, m.
    pub level: f64,
    /// Plumb, m.
    pub plumb: f64,
}

/// The ground line: where the lip stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Frame {
    foot: DVec2,
    /// Heading of the ground line, rad.
    pub ground: f64,
}

impl Frame {
    fn new(lip: &Lip, ends: &LipEdge) -> Self {
        let below = ends.edge - DVec2::new(0.0, lip.height) - ends.foot;
        Self {
            foot: ends.foot,
            ground: num::atan2(below.y, below.x),
        }
    }

    /// A point of the profile, along the ground line and square to it.
    pub fn on_sheet(&self, p: DVec2) -> DVec2 {
        let (d, along) = (p - self.foot, direction(self.ground));
        DVec2::new(d.dot(along), d.dot(along.perp()))
    }

    /// A point told along the ground line and square to it.
    pub fn place(&self, p: DVec2) -> Place {
        let along = direction(self.ground);
        let d = along * p.x + along.perp() * p.y;
        Place {
            along: p.x,
            rise: p.y,
            level: d.x,
            plumb: d.y,
        }
    }

    /// The direction that is plumb upward, along the ground line and square to it.
    pub fn up(&self) -> DVec2 {
        let along = direction(self.ground);
        DVec2::new(along.y, along.x)
    }
}

/// A stretch of the riding curve.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Stretch {
    /// Whether it is of wood; else of dirt.
    pub wood: bool,
    /// Where it begins.
    pub from: Place,
    /// Where it ends.
    pub to: Place,
    /// Length along the curve, m.
    pub length: f64,
    /// How far it turns, rad; 0 where it is straight.
    pub turn: f64,
    /// The string, where it is an arc.
    pub string: Option<Strung>,
}

/// An arc drawn with a string.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Strung {
    /// Length of the string: the circle's radius, m.
    pub radius: f64,
    /// Where it is held, from the foot.
    pub centre: Place,
    /// Where it is held, from the edge.
    pub centre_from_edge: Place,
}

/// Where the wood begins. Without a dirt lead-in that is the foot.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Takeover {
    /// The place on the riding surface.
    pub at: Place,
    /// Heading of the surface there, rad from level.
    pub heading: f64,
}

/// The curve at a rib.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Station {
    /// The place on the riding surface.
    pub at: Place,
    /// Square to the ground line, how high the side panel is there, below the deck, m; 0 where it has not begun.
    pub panel: f64,
    /// Heading of the surface there, rad from level.
    pub heading: f64,
}

/// A lip's riding curve.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Template {
    /// Heading of the ground line, rad; positive where the ground rises along the line.
    pub ground: f64,
    /// Heading at the edge, rad from level.
    pub exit: f64,
    /// How far the ground, or the raised bed, stands over the ground line and lies under it, plumb, at most, m: it
    /// is dug off, or filled, before the lip is set down. 0 on an even slope.
    pub uneven: [f64; 2],
    /// Level distance from foot to edge, m.
    pub run: f64,
    /// Height of the edge, plumb over the ground line, m.
    pub height: f64,
    /// Length along the curve, of the arcs alone and in all, m; dirt included.
    pub arc: f64,
    /// Length along the curve that is of wood, m.
    pub wood: f64,
    /// The edge.
    pub edge: Place,
    /// Arcs and straights from foot to edge.
    pub stretches: Vec<Stretch>,
    /// Where the wood begins.
    pub takeover: Takeover,
    /// Where the arc passes into the straight end, where there is one.
    pub straight_from: Option<Place>,
    /// The curve at both ends of the wood and at even stations along the ground line between them.
    pub stations: Vec<Station>,
}

/// The lip's own pieces, dirt included: those between foot and edge that are ridden out.
pub(super) fn pieces<'a>(profile: &'a Profile, ends: &LipEdge) -> Vec<&'a Piece> {
    let (from, to) = (ends.foot.x - JOINT, ends.edge.x + JOINT);
    let own =
        |p: &&Piece| p.character.intent == Intent::Launch && p.start.x >= from && p.end.x <= to;
    profile.pieces.iter().filter(own).collect()
}

/// The lip drawn on its ground line, and its curve as it is on the sheet.
pub(super) struct Drawn {
    pub frame: Frame,
    pub template: Template,
    /// The wooden part of the riding curve, along the ground line and square to it.
    pub wood: Vec<Edge>,
}

/// Draws a lip; none where nothing of it is of wood.
pub(super) fn draw(lip: &Lip, profile: &Profile, ends: &LipEdge) -> Option<Drawn> {
    let frame = Frame::new(lip, ends);
    let pieces = pieces(profile, ends);
    let is_wood = |p: &&&Piece| p.character.surface == Surface::Wood;
    let first = *pieces.iter().find(is_wood)?;
    let edge = frame.on_sheet(ends.edge);
    let stretches: Vec<_> = pieces.iter().map(|p| stretch(p, &frame, edge)).collect();
    let sum = |of: &dyn Fn(&Stretch) -> bool| {
        let these = stretches.iter().filter(|s| of(s));
        these.map(|s| s.length).sum()
    };
    let (last, before) = pieces.split_last()?;
    let straight = last.curvature == 0.0 && before.last().is_some_and(|p| p.curvature != 0.0);
    let template = Template {
        ground: frame.ground,
        exit: ends.exit,
        uneven: uneven(profile, ends, frame.ground),
        run: ends.edge.x - ends.foot.x,
        height: lip.height,
        arc: sum(&|s| s.string.is_some()),
        wood: sum(&|s| s.wood),
        edge: frame.place(edge),
        takeover: Takeover {
            at: frame.place(frame.on_sheet(first.start)),
            heading: first.heading,
        },
        straight_from: straight.then(|| frame.place(frame.on_sheet(last.start))),
        stretches,
        stations: Vec::new(),
    };
    let wood = pieces.iter().filter(is_wood).map(|p| Edge {
        from: frame.on_sheet(p.start),
        to: frame.on_sheet(p.end),
        centre: centre(p).map(|c| frame.on_sheet(c)),
    });
    Some(Drawn {
        frame,
        wood: wood.collect(),
        template,
    })
}

impl Drawn {
    /// The template with the curve at the stations; `panel` tells how high a panel is there, m.
    pub fn with_stations(self, panel: impl Fn(f64) -> f64, spacing: f64) -> Template {
        let Some((first, last)) = self.wood.first().zip(self.wood.last()) else {
            return self.template;
        };
        let station = |along: f64| {
            let rise = height(&self.wood, along)?;
            let p = DVec2::new(along, rise);
            Some(Station {
                at: self.frame.place(p),
                panel: panel(along),
                heading: self.frame.ground + heading(&self.wood, p),
            })
        };
        let at = evenly(first.from.x, last.to.x, spacing);
        let stations = at.into_iter().filter_map(station).collect();
        Template {
            stations,
            ..self.template
        }
    }
}

/// Heading of the curve at a point of it, rad from the ground line.
fn heading(wood: &[Edge], p: DVec2) -> f64 {
    let on = wood.iter().find(|e| e.to.x >= p.x).or(wood.last());
    let tangent = on.map_or(DVec2::X, |e| match e.centre {
        Some(c) => (p - c).perp(),
        None => e.to - e.from,
    });
    num::atan2(tangent.y, tangent.x)
}

/// The yard's bends between foot and edge over the ground line, and under it, m.
fn uneven(profile: &Profile, ends: &LipEdge, ground: f64) -> [f64; 2] {
    let between = |p: &&DVec2| p.x > ends.foot.x && p.x < ends.edge.x;
    let Some(bed) = yard(&profile.yard, ends.foot.x).map(|z| ends.foot.y - z) else {
        return [0.0; 2];
    };
    let over = profile.yard.iter().filter(between).map(|p| {
        let line = ends.foot.y + (p.x - ends.foot.x) * num::tan(ground);
        p.y + bed - line
    });
    over.fold([0.0; 2], |[most, least], z| {
        [num::max(most, z), num::max(least, -z)]
    })
}

/// Elevation of the yard at a station, m; its first and last stretch go on beyond its ends.
fn yard(points: &[DVec2], x: f64) -> Option<f64> {
    let last = points.len().checked_sub(2)?;
    let i = points.iter().rposition(|p| p.x <= x).unwrap_or(0).min(last);
    let (a, b) = (points[i], points[i + 1]);
    Some(a.y + (b.y - a.y) * ((x - a.x) / (b.x - a.x)))
}

fn centre(p: &Piece) -> Option<DVec2> {
    (p.curvature != 0.0).then(|| p.start + direction(p.heading).perp() / p.curvature)
}

fn stretch(p: &Piece, frame: &Frame, edge: DVec2) -> Stretch {
    let string = centre(p).map(|c| Strung {
        radius: 1.0 / p.curvature,
        centre: frame.place(frame.on_sheet(c)),
        centre_from_edge: frame.place(frame.on_sheet(c) - edge),
    });
    Stretch {
        wood: p.character.surface == Surface::Wood,
        from: frame.place(frame.on_sheet(p.start)),
        to: frame.place(frame.on_sheet(p.end)),
        length: p.length,
        turn: p.curvature * p.length,
        string,
    }
}

/// Even stations along the ground line with both ends of the wood. The last even one is left out where it would
/// stand by less than a quarter of the spacing before the edge: two ribs there are in each other's way.
pub(super) fn evenly(from: f64, to: f64, spacing: f64) -> Vec<f64> {
    let mut at = vec![from];
    let mut next = 1.0;
    while from + (next + 0.25) * spacing < to {
        at.push(from + next * spacing);
        next += 1.0;
    }
    at.push(to);
    at
}
