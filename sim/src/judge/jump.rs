//! How each jump went: where the wheels came down, how hard, and in one word.

use crate::constants::GRAVITY;
use crate::num;
use crate::profile::{LipEdge, Profile};
use crate::ride::{Event, EventKind, Outcome, Run};
use serde::Serialize;

/// Rear wheel this close to the knuckle, either side, is on it, m: half a wheel's own contact and
/// the rounding of a knuckle (common practice, no source).
const ON_KNUCKLE: f64 = 0.15;

/// Share of the slope beyond which a landing is deep (common practice, no source).
const DEEP: f64 = 0.7;

/// A jump in one word.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum How {
    /// Both wheels on the slope.
    Clean,
    /// The rear wheel down before the knuckle.
    Short,
    /// The rear wheel on the knuckle.
    Knuckle,
    /// Near the end of the slope.
    Deep,
    /// Beyond the slope.
    Past,
    /// Ended in a crash.
    Crashed,
    /// The rider rolled back before the lip.
    Stalled,
    /// The ride ended before this jump.
    NotReached,
}

/// One jump as it went. SI units, angles in radians.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct JumpRow {
    /// Index of the lip in the profile.
    pub lip: usize,
    /// Index of the feature in the plan's line.
    pub feature: usize,
    /// Speed of the common mass centre as the rear wheel passes the edge, m/s.
    pub speed: Option<f64>,
    /// Heading of the lip's surface at its edge.
    pub exit_angle: f64,
    /// Direction in which the common mass centre left.
    pub direction: Option<f64>,
    /// Time with both wheels off the ground, s.
    pub airtime: Option<f64>,
    /// Where the rear wheel came down, m past the knuckle.
    pub rear_past_knuckle: Option<f64>,
    /// Where the front wheel was then, m past the knuckle.
    pub front_past_knuckle: Option<f64>,
    /// Pitch of the bike less the heading of the ground at touch-down.
    pub pitch_to_slope: Option<f64>,
    /// Equivalent fall height, m: (speed into the ground)² / 2g.
    ///
    /// # References
    /// Hubbard 2009, J. ASTM Int. 6; McNeil, Hubbard and Swedberg 2012, Sports Eng. 15:1-20.
    pub fall_height: Option<f64>,
    /// How it went.
    pub how: How,
}

/// Every jump of a line, in riding order.
pub fn jumps(profile: &Profile, run: &Run) -> Vec<JumpRow> {
    let lips = profile.lips.iter().enumerate();
    lips.map(|(i, lip)| row(i, lip, run)).collect()
}

fn row(index: usize, lip: &LipEdge, run: &Run) -> JumpRow {
    let mut row = JumpRow {
        lip: index,
        feature: lip.feature,
        speed: None,
        exit_angle: lip.exit,
        direction: None,
        airtime: None,
        rear_past_knuckle: None,
        front_past_knuckle: None,
        pitch_to_slope: None,
        fall_height: None,
        how: How::NotReached,
    };
    let Some(events) = lip_events(run, index) else {
        row.how = ended_on(lip, run);
        return row;
    };
    let (mut crashed, mut flew) = (false, false);
    for e in events {
        match e.kind {
            EventKind::LipLeft {
                speed, direction, ..
            } => {
                row.speed = Some(speed);
                row.direction = Some(direction);
            }
            EventKind::TouchedDown { .. } if row.airtime.is_none() => touched(&mut row, lip, e),
            EventKind::Airborne { .. } => flew = true,
            EventKind::Crashed { .. } => crashed |= e.x < behind(lip),
            _ => {}
        }
    }
    row.how = match row.rear_past_knuckle {
        _ if crashed => How::Crashed,
        // Still in the air where the ride ends.
        None if flew => How::Past,
        // Never in the air: the lip was rolled over, which is only possible over a spine's own top.
        None => How::Short,
        Some(past) => placed(past, lip),
    };
    row
}

/// How far along the line a crash counts as a jump's, m: a little behind its landing. What comes later says nothing
/// of the jump.
pub(super) fn behind(lip: &LipEdge) -> f64 {
    lip.landing_end.x + 1.0
}

/// From a lip's edge up to the next one's: what happened there, the edge passed first.
pub(super) fn lip_events(run: &Run, index: usize) -> Option<&[Event]> {
    let left = |e: &Event| matches!(e.kind, EventKind::LipLeft { .. });
    let this = |e: &Event| matches!(e.kind, EventKind::LipLeft { lip, .. } if lip == index);
    let from = run.events.iter().position(this)?;
    let events = &run.events[from..];
    let to = events[1..].iter().position(left);
    Some(&events[..to.map_or(events.len(), |i| i + 1)])
}

fn touched(row: &mut JumpRow, lip: &LipEdge, event: &Event) {
    if let EventKind::TouchedDown {
        airtime,
        rear_x,
        front_x,
        pitch_to_slope,
        into_ground,
        ..
    } = event.kind
    {
        row.airtime = Some(airtime);
        row.rear_past_knuckle = Some(rear_x - lip.knuckle.x);
        row.front_past_knuckle = Some(front_x - lip.knuckle.x);
        row.pitch_to_slope = Some(pitch_to_slope);
        row.fall_height = Some(into_ground * into_ground / (2.0 * GRAVITY));
    }
}

/// Where the rear wheel comes down clean: from and to, m past the knuckle.
fn clean(lip: &LipEdge) -> [f64; 2] {
    let slope = lip.slope_end.x - lip.knuckle.x;
    [ON_KNUCKLE, num::max(DEEP * slope, 2.0 * ON_KNUCKLE)]
}

fn placed(past: f64, lip: &LipEdge) -> How {
    let [from, to] = clean(lip);
    if past < -ON_KNUCKLE {
        How::Short
    } else if past < from {
        How::Knuckle
    } else if past > lip.slope_end.x - lip.knuckle.x {
        How::Past
    } else if past > to {
        How::Deep
    } else {
        How::Clean
    }
}

/// How far from coming down too near and too far a jump is, m, by where the rear wheel came down; below 0 where it
/// does. `None` where it crashed, or nothing came down.
pub(super) fn to_spare(row: &JumpRow, lip: &LipEdge) -> Option<[f64; 2]> {
    if row.how == How::Crashed {
        return None;
    }
    let [from, to] = clean(lip);
    let past = row.rear_past_knuckle?;
    Some([past - from, to - past])
}

/// What became of a jump whose edge was never passed.
fn ended_on(lip: &LipEdge, run: &Run) -> How {
    let Some(last) = run.events.last() else {
        return How::NotReached;
    };
    let here = last.x > lip.foot.x - 1.0 && last.x < lip.edge.x + 1.0;
    match run.outcome {
        Outcome::Crashed if here => How::Crashed,
        Outcome::Stalled if here => How::Stalled,
        _ => How::NotReached,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::setup::ride_plan;

    #[test]
    fn every_line_to_start_from_lands_clean() {
        for plan in crate::plan::examples() {
            let ridden = ride_plan(&plan, 0).expect("an example is sound");
            let rows = jumps(&ridden.profile, &ridden.run);
            assert!(
                !rows.is_empty() && rows.iter().all(|r| r.how == How::Clean),
                "{}",
                plan.name
            );
        }
    }
}
