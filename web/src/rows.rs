//! The lips' jumps, row by row, until the judge tells them.

use serde::Serialize;
use sim::profile::Profile;
use sim::ride::{Event, EventKind, Run};

/// A jump.
#[derive(Debug, Serialize)]
pub struct JumpRow {
    pub lip: usize,
    pub feature: usize,
    pub speed: Option<f64>,
    pub exit_angle: Option<f64>,
    pub airtime: Option<f64>,
    pub rear_past_knuckle: Option<f64>,
    pub front_past_knuckle: Option<f64>,
    pub pitch_to_slope: Option<f64>,
    pub fall_height: Option<f64>,
    pub how: &'static str,
}

pub fn jumps(profile: &Profile, run: &Run) -> Vec<JumpRow> {
    (0..profile.lips.len())
        .map(|i| row(i, profile, run))
        .collect()
}

fn row(i: usize, profile: &Profile, run: &Run) -> JumpRow {
    let lip = &profile.lips[i];
    let mut row = JumpRow {
        lip: i,
        feature: lip.feature,
        speed: None,
        exit_angle: None,
        airtime: None,
        rear_past_knuckle: None,
        front_past_knuckle: None,
        pitch_to_slope: None,
        fall_height: None,
        how: "not_reached",
    };
    let left = |e: &Event| matches!(e.kind, EventKind::LipLeft { lip, .. } if lip == i);
    let Some(at) = run.events.iter().position(left) else {
        return row;
    };
    if let EventKind::LipLeft {
        speed, direction, ..
    } = run.events[at].kind
    {
        row.speed = Some(speed);
        row.exit_angle = Some(direction);
    }
    row.how = "crashed";
    for e in &run.events[at + 1..] {
        match e.kind {
            EventKind::LipLeft { .. } => break,
            EventKind::TouchedDown {
                airtime,
                rear_x,
                front_x,
                pitch_to_slope,
                into_ground,
                ..
            } => {
                row.airtime = Some(airtime);
                row.rear_past_knuckle = Some(rear_x - lip.knuckle.x);
                row.front_past_knuckle = Some(front_x - lip.knuckle.x);
                row.pitch_to_slope = Some(pitch_to_slope);
                row.fall_height = Some(into_ground * into_ground / (2.0 * 9.80665));
                row.how = match rear_x - lip.knuckle.x {
                    d if d < -0.3 => "short",
                    d if d < 0.1 => "knuckle",
                    _ if rear_x > lip.slope_end.x => "past",
                    _ => "clean",
                };
                break;
            }
            _ => {}
        }
    }
    row
}
