//! How one jump of a ride went.

use sim::profile::LipEdge;
use sim::ride::{CrashKind, Event, EventKind, Outcome, Sample, Spent};
use sim::setup::Ridden;

/// Steepest accepted angle between bike and slope at touch-down, rad: 15°.
pub const ALIGNED: f64 = 15.0 * core::f64::consts::PI / 180.0;

/// How a lip was left, seen from its edge.
#[derive(Clone, Copy, Debug)]
pub struct Left {
    /// Velocity of the common mass centre, along the line and up, m/s.
    pub velocity: [f64; 2],
    /// The mass centre ahead of the edge and above it, m.
    pub centre: [f64; 2],
}

/// How a lip was left, as the ride tells it.
#[derive(Clone, Copy, Debug)]
pub struct TakeOff {
    /// When, s.
    pub t: f64,
    /// Speed of the common mass centre, m/s.
    pub speed: f64,
    /// Its direction, rad.
    pub direction: f64,
    /// Pitch of the bike, rad.
    pub pitch: f64,
    /// The same seen from the edge.
    pub left: Left,
}

/// The first touch-down behind a lip.
#[derive(Clone, Copy, Debug)]
pub struct Down {
    /// When, s.
    pub t: f64,
    /// Rear wheel past the knuckle, m.
    pub past: f64,
    /// Bike's pitch less the ground's heading, rad.
    pub pitch_to_slope: f64,
}

/// What went wrong, if anything.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Wrong {
    /// The ride ended in a crash before the lip's foot.
    Before(CrashKind),
    /// The rider ran out of speed.
    Stalled,
    /// Crashed on the lip, in the air or on the landing.
    Crash(CrashKind),
    /// The lip was left but nobody flew.
    NoFlight,
    /// Came down without a crash, but the bike's nose is up against the slope by more than 15°.
    NoseUp,
    /// The same with the nose down.
    NoseDown,
    /// Came down without a crash, in line, but with the rear wheel before the knuckle.
    Short,
}

impl Wrong {
    /// The reason in a few words.
    pub fn words(self) -> String {
        match self {
            Wrong::Before(why) => format!("crash before the lip, {why:?}"),
            Wrong::Stalled => "stalled".into(),
            Wrong::Crash(why) => format!("crash, {why:?}"),
            Wrong::NoFlight => "no flight".into(),
            Wrong::NoseUp => "nose up against the slope".into(),
            Wrong::NoseDown => "nose down against the slope".into(),
            Wrong::Short => "rear wheel before the knuckle".into(),
        }
    }
}

/// One jump of a ride.
#[derive(Clone, Copy, Debug)]
pub struct Landed {
    /// How the lip was left, if it was.
    pub off: Option<TakeOff>,
    /// Where the bike came down, if it did.
    pub down: Option<Down>,
    /// The crash between the lip's foot and a metre behind the landing, or before.
    pub crash: Option<Wrong>,
}

impl Landed {
    /// How a lip of a ride went.
    pub fn over(ridden: &Ridden, index: usize) -> Self {
        let (run, lip) = (&ridden.run, &ridden.profile.lips[index]);
        let crash = run.events.iter().find_map(|e| match e.kind {
            EventKind::Crashed { why } if e.x <= lip.foot.x => Some(Wrong::Before(why)),
            EventKind::Crashed { why } if e.x < lip.landing_end.x + 1.0 => Some(Wrong::Crash(why)),
            _ => None,
        });
        let from = run.events.iter().position(|e| is_left(e, index));
        let events = from.map_or(&[][..], |i| &run.events[i..]);
        let off = events.first().and_then(|e| take_off(e, lip));
        let down = events.iter().find_map(|e| down(e, lip));
        let stalled = off.is_none() && run.outcome != Outcome::Crashed;
        let crash = crash.or(stalled.then_some(Wrong::Stalled));
        Self { off, down, crash }
    }

    /// What went wrong, crash or not.
    pub fn wrong(&self) -> Option<Wrong> {
        if self.crash.is_some() {
            return self.crash;
        }
        let Some(down) = self.down else {
            return Some(Wrong::NoFlight);
        };
        match down.pitch_to_slope {
            p if p > ALIGNED => Some(Wrong::NoseUp),
            p if p < -ALIGNED => Some(Wrong::NoseDown),
            _ => (down.past <= 0.0).then_some(Wrong::Short),
        }
    }

    /// Whether the jump ended without a crash and in line with the slope.
    pub fn well(&self) -> bool {
        matches!(self.wrong(), None | Some(Wrong::Short))
    }

    /// Rear wheel past the knuckle, m, if it came down.
    pub fn past(&self) -> Option<f64> {
        self.down.map(|d| d.past)
    }
}

fn is_left(event: &Event, index: usize) -> bool {
    matches!(event.kind, EventKind::LipLeft { lip, .. } if lip == index)
}

fn take_off(event: &Event, lip: &LipEdge) -> Option<TakeOff> {
    let EventKind::LipLeft {
        speed,
        direction,
        pitch,
        centre_x,
        centre_z,
        ..
    } = event.kind
    else {
        return None;
    };
    let left = Left {
        velocity: [speed * direction.cos(), speed * direction.sin()],
        centre: [centre_x - lip.edge.x, centre_z - lip.edge.y],
    };
    Some(TakeOff {
        t: event.t,
        speed,
        direction,
        pitch,
        left,
    })
}

fn down(event: &Event, lip: &LipEdge) -> Option<Down> {
    match event.kind {
        EventKind::TouchedDown {
            rear_x,
            pitch_to_slope,
            ..
        } if rear_x > lip.edge.x => Some(Down {
            t: event.t,
            past: rear_x - lip.knuckle.x,
            pitch_to_slope,
        }),
        _ => None,
    }
}

/// Speed of the common mass centre at a lip, m/s; 0 where it was not reached.
pub fn lip_speed(ridden: &Ridden, index: usize) -> f64 {
    let mut events = ridden.run.events.iter();
    let speed = events.find_map(|e| match e.kind {
        EventKind::LipLeft { lip, speed, .. } if lip == index => Some(speed),
        _ => None,
    });
    speed.unwrap_or(0.0)
}

/// Where the ride crashed, m, and why, if it did.
pub fn crash(ridden: &Ridden) -> Option<(f64, CrashKind)> {
    ridden.run.events.iter().find_map(|e| match e.kind {
        EventKind::Crashed { why } => Some((e.x, why)),
        _ => None,
    })
}

/// The samples between two moments, s.
pub fn between(samples: &[Sample], from: f64, to: f64) -> &[Sample] {
    let first = samples.partition_point(|s| s.t < from);
    let last = samples.partition_point(|s| s.t <= to);
    &samples[first.min(last)..last]
}

/// The first sample with the bike's middle past a place, m; none where the ride did not come so far.
pub fn at(samples: &[Sample], x: f64) -> Option<&Sample> {
    samples.iter().find(|s| s.bike_x > x)
}

/// What was spent between two samples, J.
pub fn spent(from: &Sample, to: &Sample) -> Spent {
    to.spent.less(&from.spent)
}
