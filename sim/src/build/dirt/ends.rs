//! Beds, and the slopes at the ends of heaps.

use super::bed;
use super::columns::{Column, Part};
use super::open::{End, Open};
use super::section::Section;
use super::work::Work;
use crate::num;
use crate::plan::Plan;
use crate::profile::Profile;
use crate::profile::Under;

/// A step of the dirt that is no rounding error, m.
const STEP: f64 = 1e-6;

/// How high dirt stands over the yard at an end of a solid column, where it slopes on its own.
fn end(part: Option<&Part>, at_start: bool, under: &Under) -> Option<End> {
    let Column::Solid(piece, section) = part?.column else {
        return None;
    };
    let point = if at_start { piece.start } else { piece.end };
    let height = num::min(point.y - under.height(point.x), section.most);
    Some(End { height, section })
}

/// Adds beds under what is open, and the slopes at the ends of heaps.
pub(super) fn slopes(
    plan: &Plan,
    profile: &Profile,
    slope: f64,
    parts: &[Part],
    work: &mut [Work],
) {
    let under = Under(&profile.yard);
    outer(parts.first(), true, slope, &under, work);
    outer(parts.last(), false, slope, &under, work);
    let mut at = 0;
    while at < parts.len() {
        let Column::Open([from, to]) = parts[at].column else {
            step(&parts[at], parts.get(at + 1), &under, work);
            at += 1;
            continue;
        };
        let feature = parts[at].feature;
        let (beyond, to) = open_until(parts, at, to);
        let bed = End {
            height: bed::under(profile, &profile.spans[feature]),
            section: Section::sloped(plan.width, slope),
        };
        let before = at.checked_sub(1).and_then(|i| parts.get(i));
        let neighbours = [
            end(before, false, &under),
            end(parts.get(beyond), true, &under),
        ];
        let sloping = |e: &End| e.height > bed.height + STEP && e.section.walled_from.is_infinite();
        let heaps = neighbours.map(|end| end.filter(sloping));
        let reach = [from, to];
        let filled = Open { reach, bed, heaps }.fill(slope);
        work[feature].open(filled, &bed, &under);
        at = beyond;
    }
}

/// The part after an open stretch of one feature, and the station where the stretch ends.
fn open_until(parts: &[Part], at: usize, mut to: f64) -> (usize, f64) {
    let mut beyond = at + 1;
    while let Some(part) = parts.get(beyond)
        && part.feature == parts[at].feature
        && let Column::Open(reach) = part.column
    {
        to = reach[1];
        beyond += 1;
    }
    (beyond, to)
}

/// The slope before the first heap of a line, or behind the last: nothing is built beyond.
fn outer(part: Option<&Part>, first: bool, slope: f64, under: &Under, work: &mut [Work]) {
    let heap = end(part, first, under).filter(|e| e.height > STEP);
    let (Some(part), Some(heap)) = (part, heap) else {
        return;
    };
    let Column::Solid(piece, _) = part.column else {
        return;
    };
    let run = slope * heap.height;
    let bed = End {
        height: 0.0,
        ..heap
    };
    let (reach, heaps) = if first {
        ([piece.start.x - run, piece.start.x], [None, Some(heap)])
    } else {
        ([piece.end.x, piece.end.x + run], [Some(heap), None])
    };
    let filled = Open { reach, bed, heaps }.fill(slope);
    work[part.feature].open(filled, &bed, under);
}

/// Two heaps of different height side by side leave no room for a slope.
fn step(part: &Part, next: Option<&Part>, under: &Under, work: &mut [Work]) {
    let sides = [end(Some(part), false, under), end(next, true, under)];
    if let ([Some(a), Some(b)], Some(next)) = (sides, next)
        && (a.height - b.height).abs() > STEP
        && [a, b].iter().all(|e| e.section.walled_from.is_infinite())
    {
        work[next.feature].heap.crowded = true;
    }
}
