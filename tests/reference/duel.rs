//! The ride and the second formulation on one line.

use crate::body::Body;
use crate::constrained::Constrained;
use crate::motion::Motion;
use crate::track::{Moment, Track};
use glam::DVec2;
use sim::profile::Profile;
use sim::ride::{Mount, Run, Sample, ride, ride_seen};
use tests::checks::{Bound::Share, Check};
use tests::curve::Curve;
use tests::lines::{Named, PUSH_OFF};
use tests::trace::{FINE, at_the_lip, speed_at};

/// Where the rear wheel's contact is at the start, m along the line.
const START: f64 = 0.05;

/// Moments over which a load is a mean, ms.
const REBOUND: usize = 10;

/// Against what a rider's motion is seen.
#[derive(Clone, Copy, PartialEq)]
pub enum Against {
    /// The bike of the ride itself.
    TheBike,
    /// The bike as it would stand with its wheels bound to the ground, tyres as deep as at rest.
    TheBound,
}

/// Both rides.
pub struct Duel {
    what: String,
    run: Run,
    track: Track,
}

impl Duel {
    /// One rigid body.
    pub fn rigid(line: &Named, name: &str, m: &Mount) -> Self {
        let what = format!("{}: {name}", line.name);
        let (profile, run) = ridden(line, m);
        let body = Body::still(m);
        let curve = Curve::over(&profile, body.radius);
        Self {
            what,
            run,
            track: track(&body, &curve),
        }
    }

    /// A rider who moves against the bike as in the ride itself.
    pub fn moving(line: &Named, name: &str, m: &Mount, against: Against) -> Self {
        let what = format!("{}: {name}", line.name);
        let profile = Profile::build(&line.plan).expect("the line can be built");
        let mut states = Vec::new();
        let mut keep = |s| states.push(s);
        let run = ride_seen(&profile, m, PUSH_OFF, &FINE, &mut keep);
        let mut body = Body::still(m);
        let curve = Curve::over(&profile, body.radius);
        let bound = |along: f64| {
            let bike = Constrained {
                body: &body,
                curve: &curve,
            };
            let pitch = bike.place(along, 0.0).pitch;
            let half = DVec2::from_angle(pitch) * (0.5 * body.wheelbase);
            (curve.at(along).point + half, pitch)
        };
        let own = |s: &Sample, _: f64| (DVec2::new(s.bike_x, s.bike_z), s.pitch);
        // The push jumps as the front wheel comes off the edge: each part is seen by itself.
        let edge = curve.at(curve.length).point.x - m.wheelbase;
        let off = |s: &Sample| s.bike_x > edge && s.front_load <= 0.0;
        let off = states.iter().position(off).unwrap_or(states.len());
        let (before, behind) = states.split_at(off);
        let both = match against {
            Against::TheBike => Motion::seen(before, &curve, m.wheelbase, own),
            Against::TheBound => Motion::seen(before, &curve, m.wheelbase, |_, along| bound(along)),
        };
        let alone = if curve.ends_in_a_lip {
            Motion::seen(behind, &curve, m.wheelbase, own)
        } else {
            Motion::Still(DVec2::ZERO)
        };
        body.rider = [both, alone];
        Self {
            what,
            run,
            track: track(&body, &curve),
        }
    }

    /// Where both are farthest apart while both wheels are on the ground.
    pub fn on_the_way(&self, share: f64, why: &'static str) -> Check {
        self.is_pressed(&self.track.both);
        let pairs = self.run.samples.iter().filter_map(|s| {
            let expected = self.track.speed_at(s.bike_x)?;
            Some((s, expected))
        });
        let off = |p: &(&Sample, f64)| (p.0.speed / p.1 - 1.0).abs();
        let (s, expected) = pairs
            .max_by(|a, b| off(a).total_cmp(&off(b)))
            .expect("the rides have a place in common");
        let what = format!("{}, farthest apart, at {:.2} m", self.what, s.bike_x);
        self.check(what, expected, s.speed, share, why)
    }

    /// As the rear wheel's contact passes the lip's edge; without a lip, as the front wheel comes
    /// to where the rider brakes.
    pub fn at_the_end(&self, share: f64, why: &'static str) -> Check {
        self.is_pressed(&self.track.both);
        self.is_pressed(&self.track.rear);
        if let Some(last) = self.track.rear.last() {
            let what = format!("{}, lip speed", self.what);
            let (got, _) = at_the_lip(&self.run);
            return self.check(what, last.velocity.length(), got, share, why);
        }
        let last = self.track.both[self.track.both.len() - 1];
        let got = speed_at(&self.run, last.middle.x);
        let what = format!("{}, at the end", self.what);
        self.check(what, last.velocity.length(), got, share, why)
    }

    fn check(&self, what: String, expected: f64, got: f64, share: f64, why: &'static str) -> Check {
        let source = "second formulation: wheels bound to the ground, DOP853 at 1e-11";
        Check::new(what, source, "m/s", [expected, got], Share(share), why)
    }

    /// Where a bound wheel would have to be pulled down, the second formulation is no reference. A tyre that
    /// springs back for less than [`REBOUND`] is still on the ground.
    fn is_pressed(&self, moments: &[Moment]) {
        let mean = |part: &[Moment], i: usize| {
            part.iter().map(|m| m.loads[i]).sum::<f64>() / part.len() as f64
        };
        let bound = if moments.first().is_some_and(|m| m.front) {
            2
        } else {
            1
        };
        let least = moments
            .windows(REBOUND)
            .flat_map(|part| (0..bound).map(move |i| mean(part, i)))
            .fold(f64::INFINITY, f64::min);
        assert!(least > 0.0, "{}: a load of {least:.0} N", self.what);
    }
}

fn ridden(line: &Named, m: &Mount) -> (Profile, Run) {
    let profile = Profile::build(&line.plan).expect("the line can be built");
    let run = ride(&profile, m, PUSH_OFF, &FINE);
    (profile, run)
}

fn track(body: &Body, curve: &Curve) -> Track {
    Track::ride(&Constrained { body, curve }, START, PUSH_OFF)
}
