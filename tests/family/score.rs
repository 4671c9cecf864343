//! How the jumps of a line went.

use super::line::Member;
use sim::ride::{CrashKind, EventKind};

/// Steepest accepted angle between bike and slope at touch-down, rad: 15°.
const ALIGNED: f64 = 15.0 * core::f64::consts::PI / 180.0;

/// How one jump went.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum How {
    /// Landed without a crash, in line with the slope: bike's pitch less the slope, rad.
    Well(f64),
    /// Landed at too steep an angle to the slope: bike's pitch less the slope, rad.
    Askew(f64),
    /// Crashed on the lip, in the air or on the landing.
    Crash(CrashKind),
    /// The ride ended without a touch-down.
    Nowhere,
}

/// What became of a line.
pub struct Score {
    /// The jumps that were reached.
    pub jumps: Vec<How>,
    /// Rear wheel's touch-down past the knuckle less the aim, m, where there was one.
    pub misses: Vec<f64>,
    /// A crash where there is no jump: on ramp, rollers or flat.
    pub elsewhere: Option<CrashKind>,
}

/// Looks at the jumps of a line, those only whose gap was placed and whose lip was reached.
pub fn score(member: &Member) -> Score {
    let run = &member.ridden.run;
    let lips = &member.ridden.profile.lips;
    let crash = run.events.iter().find_map(|e| match e.kind {
        EventKind::Crashed { why } => Some((e.x, why)),
        _ => None,
    });
    let mut jumps = Vec::new();
    let mut misses = Vec::new();
    let mut elsewhere = crash.map(|c| c.1);
    for (k, lip) in lips.iter().enumerate().take(member.placed) {
        let left =
            |e: &sim::ride::Event| matches!(e.kind, EventKind::LipLeft { lip, .. } if lip == k);
        if let Some(i) = run.events.iter().position(left) {
            let down = run.events[i..].iter().find_map(|e| match e.kind {
                EventKind::TouchedDown { rear_x, .. } if rear_x > lip.edge.x => Some(rear_x),
                _ => None,
            });
            misses.extend(down.map(|x| x - lip.knuckle.x - member.aims[k]));
        }
        let here = crash.filter(|(x, _)| *x > lip.foot.x && *x < lip.landing_end.x + 1.0);
        if let Some((_, why)) = here {
            jumps.push(How::Crash(why));
            elsewhere = None;
            break;
        }
        let Some(i) = run
            .events
            .iter()
            .position(|e| matches!(e.kind, EventKind::LipLeft { lip, .. } if lip == k))
        else {
            break;
        };
        let down = run.events[i..].iter().find_map(|e| match e.kind {
            EventKind::TouchedDown {
                rear_x,
                pitch_to_slope,
                ..
            } if rear_x > lip.edge.x => Some(pitch_to_slope),
            _ => None,
        });
        jumps.push(match down {
            Some(p) if p.abs() <= ALIGNED => How::Well(p),
            Some(p) => How::Askew(p),
            None => How::Nowhere,
        });
    }
    Score {
        jumps,
        misses,
        elsewhere,
    }
}
