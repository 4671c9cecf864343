//! Finds the lips of a surveyed line, and where each one lands.

use super::Survey;
use super::tangents::{Tangent, is_straight};
use crate::num::PI;
use crate::profile::{Intent, LipEdge};

const DEGREE: f64 = PI / 180.0;

/// Least heading of the surface at the edge of a lip, rad: the flattest wedge that throws.
const RISING: f64 = 10.0 * DEGREE;

/// Least turn at the edge, rad; a rounded crest turns by less at each of its points.
const EDGE: f64 = 20.0 * DEGREE;

/// Least height of a lip over its foot, m: less is a bump in the ground.
const LEAST_RISE: f64 = 0.1;

/// Chords flatter than this, rad, are ground, not slope.
const LEVEL: f64 = 5.0 * DEGREE;

/// Landing slopes fall by more than this, rad, ...
const SLOPE: f64 = 10.0 * DEGREE;

/// ... and by less than this; what is steeper is a face, even where it leans.
const FACE: f64 = 50.0 * DEGREE;

/// A rise steeper than this, rad, is the front of a face and no lip: 80°.
const FACE_UP: f64 = 80.0 * DEGREE;

/// Headings within this, rad, of the steepest belong to the straight part of a landing.
const STRAIGHT: f64 = 2.0 * DEGREE;

/// A chord bends where the surface turns by more than this along it, rad.
const BENT: f64 = 0.5 * DEGREE;

/// What was found.
pub(super) struct Found {
    pub lips: Vec<LipEdge>,
    /// Intent of each chord.
    pub intents: Vec<Intent>,
}

/// Indices of the points that make up one lip and its landing.
struct Marks {
    foot: usize,
    knuckle: usize,
    slope_end: usize,
    landing_end: usize,
    slope: f64,
}

/// Lips: corners that stand out at the end of a rise.
pub(super) fn find(survey: &Survey, tangents: &[Tangent]) -> Found {
    let mut found = Found {
        lips: Vec::new(),
        intents: vec![Intent::Roll; survey.headings.len()],
    };
    for edge in 1..survey.headings.len() {
        if !is_edge(survey, tangents, edge) {
            continue;
        }
        let marks = mark(survey, tangents, edge);
        found.intents[marks.foot..edge].fill(Intent::Launch);
        found.intents[edge..marks.knuckle].fill(Intent::Clear);
        found.intents[marks.knuckle..marks.landing_end].fill(Intent::Land);
        let at = |i: usize| survey.points[i];
        found.lips.push(LipEdge {
            feature: 0,
            edge: at(edge),
            exit: tangents[edge].into,
            foot: at(marks.foot),
            knuckle: at(marks.knuckle),
            slope: marks.slope,
            slope_end: at(marks.slope_end),
            landing_end: at(marks.landing_end),
        });
    }
    found
}

fn is_edge(survey: &Survey, tangents: &[Tangent], i: usize) -> bool {
    let Tangent { into, out } = tangents[i];
    let rise = survey.points[i].y - survey.points[foot(survey, tangents, i)].y;
    (RISING..=FACE_UP).contains(&into) && into - out >= EDGE && rise >= LEAST_RISE
}

/// Where the rise to an edge begins.
fn foot(survey: &Survey, tangents: &[Tangent], edge: usize) -> usize {
    let rises = |i: &usize| {
        let h = survey.headings[*i];
        (LEVEL..=FACE_UP).contains(&h) || (h > -LEVEL && is_hollow(tangents, *i))
    };
    (0..edge).rev().take_while(rises).last().unwrap_or(edge)
}

/// Whether the surface bends upward between a point and the next.
fn is_hollow(tangents: &[Tangent], i: usize) -> bool {
    tangents[i + 1].into - tangents[i].out > BENT
}

fn mark(survey: &Survey, tangents: &[Tangent], edge: usize) -> Marks {
    let headings = &survey.headings;
    let next = (edge + 1..headings.len()).find(|&i| is_edge(survey, tangents, i));
    let limit = next.map_or(headings.len(), |i| foot(survey, tangents, i));
    let slope = |h: f64| (-FACE..=-SLOPE).contains(&h);
    let falls = (edge..limit).find(|&i| slope(headings[i]));
    let Some(falls) = falls else {
        return flat_landing(survey, tangents, edge);
    };
    let begins = |i: &usize| *i == edge || headings[i - 1] >= -LEVEL || headings[i - 1] < -FACE;
    let mut knuckle = (edge..=falls).rev().find(begins).unwrap_or(falls);
    let lands = |i: &usize| {
        let h = headings[*i];
        (-FACE..-LEVEL).contains(&h) || *i <= falls || (h < LEVEL && is_hollow(tangents, *i))
    };
    let landing_end = (knuckle..limit).take_while(lands).last().unwrap_or(falls) + 1;
    let steepest =
        (knuckle..landing_end).fold(falls, |a, b| if headings[b] < headings[a] { b } else { a });
    if knuckle == edge
        && is_straight(survey, edge)
        && headings[steepest] < headings[edge] - STRAIGHT
    {
        // A falling deck, and the knuckle at its far end.
        knuckle += 1;
    }
    let straight =
        |i: &usize| headings[*i] <= headings[steepest] + STRAIGHT && !is_hollow(tangents, *i);
    let slope_end = (knuckle..landing_end).rev().find(straight);
    Marks {
        foot: foot(survey, tangents, edge),
        knuckle,
        slope_end: slope_end.unwrap_or(steepest) + 1,
        landing_end,
        slope: headings[steepest],
    }
}

/// Where no slope follows the edge: the first ground beyond it that can be ridden.
fn flat_landing(survey: &Survey, tangents: &[Tangent], edge: usize) -> Marks {
    let headings = &survey.headings;
    let ridden = (edge..headings.len()).find(|&i| headings[i].abs() < FACE);
    let knuckle = ridden.unwrap_or(headings.len() - 1);
    Marks {
        foot: foot(survey, tangents, edge),
        knuckle,
        slope_end: knuckle + 1,
        landing_end: knuckle + 1,
        slope: headings[knuckle],
    }
}
