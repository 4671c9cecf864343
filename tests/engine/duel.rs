//! The ride and the engine on one line, without losses: one rigid body on hard tyres.
//!
//! The engine's wheels may leave the ground and come down again, which those of the other solver in
//! `tests/reference` cannot. They do not bounce, and so the ride's tyres must not either where they
//! come down.

use crate::bike::{Bike, lossless};
use crate::closed::START;
use crate::settings::{self, Kind, Settings};
use crate::table::{ROOM, class};
use crate::world::{self, Moment, where_it_comes_to};
use sim::profile::Profile;
use sim::ride::{Mount, Run, ride};
use tests::checks::{
    Bound::{self, Share, Within},
    Check, judge,
};
use tests::curve::Curve;
use tests::lines::{self, Named, PUSH_OFF, RIDERS};
use tests::rigid::on_dead_tyres;
use tests::trace::{FINE, at_the_lip, speed_at};

/// Height over the ground from which a wheel has left it for certain, m.
const OFF: f64 = 1e-3;

const WAY: &str = "the ride's grip slips where axles speed up; hard wheels hop";
const LIP: &str = "as on the way; the front tyre pushes on as it rolls off the edge";
const HOP: &str = "the ride's blows take a moment, and so does the spinning up after them";
const KEPT: &str = "as on the way; where a wheel comes down on a crest a little tells";

/// What the engine did on a line.
struct Engine {
    curve: Curve,
    moments: Vec<Moment>,
    /// As the rear wheel leaves the lip, or as the front one comes to where the rider brakes.
    end: Option<Moment>,
    /// Share of the head that was lost until then; all of it where the end was never reached.
    lost: f64,
}

impl Engine {
    fn ride(ground: &Profile, settings: &Settings, m: &Mount) -> Self {
        let bike = Bike::of(m);
        let curve = Curve::over(ground, bike.radius);
        let start = bike.standing(&curve, START, PUSH_OFF);
        let edge = curve.at(curve.length).point.x;
        let wheel = usize::from(!curve.ends_in_a_lip);
        let moments = world::ride(ground, settings, &bike, &start, |m| {
            m.axles[wheel].x >= edge
        });
        let end = where_it_comes_to(&moments, |m| m.axles[wheel].x, edge);
        let left = end.map_or(0.0, |m| m.head);
        Self {
            curve,
            moments,
            end,
            lost: 1.0 - left / bike.head(&start),
        }
    }

    /// Speed of the common mass centre with the bike's middle at `x`, m/s.
    fn speed_at(&self, x: f64) -> Option<f64> {
        let i = self.moments.partition_point(|m| m.middle.x < x);
        let (a, b) = (self.moments.get(i.checked_sub(1)?)?, self.moments.get(i)?);
        let share = (x - a.middle.x) / (b.middle.x - a.middle.x);
        Some(a.velocity.length() * (1.0 - share) + b.velocity.length() * share)
    }

    /// How high a wheel came over the ground, m.
    fn highest(&self) -> f64 {
        let over = |m: &Moment| {
            m.axles
                .map(|axle| self.curve.near(axle).map_or(0.0, |n| n.0))
        };
        let heights = self.moments.iter().flat_map(over);
        heights.fold(0.0, f64::max)
    }
}

fn check(
    what: String,
    unit: &'static str,
    pair: [f64; 2],
    bound: Bound,
    why: &'static str,
) -> Check {
    let source = "rapier2d-f64, tuned, on smooth ground";
    Check::new(what, source, unit, pair, bound, why)
}

/// Where both are farthest apart.
fn on_the_way(what: &str, run: &Run, engine: &Engine, share: f64, why: &'static str) -> Check {
    let pairs = run
        .samples
        .iter()
        .filter_map(|s| Some((s, engine.speed_at(s.bike_x)?)));
    let off = |s: f64, expected: f64| (s / expected - 1.0).abs();
    let (s, expected) = pairs
        .max_by(|a, b| off(a.0.speed, a.1).total_cmp(&off(b.0.speed, b.1)))
        .expect("the rides have a place in common");
    let what = format!("{what}, farthest apart, at {:.2} m", s.bike_x);
    check(what, "m/s", [expected, s.speed], Share(share), why)
}

/// The row of a line on which the engine is no reference.
fn no_reference(what: &str, settings: &Settings, engine: &Engine) {
    assert!(
        engine.lost.abs() >= ROOM,
        "{what}: the engine is better than it was said to be"
    );
    println!("  {what}: {}, {}", class(-engine.lost), settings.name);
}

/// A line over which both wheels stay down.
fn bound(line: &Named, settings: &Settings, rider: usize) -> Vec<Check> {
    let what = format!("{}: {}", line.name, RIDERS[rider]);
    let ground = Profile::build(&line.plan).expect("the line can be built");
    let m = lossless(rider);
    let engine = Engine::ride(&ground, settings, &m);
    let lip = engine.curve.ends_in_a_lip;
    if !settings.is_reference(&[Kind::Ramp, Kind::Rollers, Kind::Lip]) {
        no_reference(&what, settings, &engine);
        return Vec::new();
    }
    assert!(
        engine.lost.abs() < ROOM,
        "{what}: the engine is no reference: it loses {} of its head",
        engine.lost
    );
    let run = ride(&ground, &m, PUSH_OFF, &FINE);
    let end = engine.end.expect("the engine comes to the end");
    let mut checks = vec![on_the_way(&what, &run, &engine, 1.5e-3, WAY)];
    let expected = end.velocity.length();
    if lip {
        let (speed, pitch) = at_the_lip(&run);
        let named = format!("{what}, lip speed");
        checks.push(check(named, "m/s", [expected, speed], Share(1.5e-3), LIP));
        let named = format!("{what}, pitch at the lip");
        checks.push(check(named, "rad", [end.pitch, pitch], Within(3e-3), LIP));
    } else {
        let speed = speed_at(&run, end.middle.x);
        let named = format!("{what}, at the end");
        checks.push(check(named, "m/s", [expected, speed], Share(1.5e-3), WAY));
    }
    checks
}

/// A line over which wheels leave the ground and come down.
fn hopping(line: &Named, settings: &Settings, rider: usize) -> Vec<Check> {
    let what = format!("{}: {}", line.name, RIDERS[rider]);
    let ground = Profile::build(&line.plan).expect("the line can be built");
    let m = on_dead_tyres(lossless(rider));
    let engine = Engine::ride(&ground, settings, &m);
    if !settings.is_reference(&[Kind::Ramp, Kind::Rollers, Kind::Flight, Kind::Landing]) {
        no_reference(&what, settings, &engine);
        return Vec::new();
    }
    let high = engine.highest();
    assert!(high > OFF, "{what}: no wheel leaves the ground");
    let what = format!(
        "{what}, off by {:.0} mm, lost {:.1} %",
        1e3 * high,
        100.0 * engine.lost
    );
    let run = ride(&ground, &m, PUSH_OFF, &FINE);
    let end = engine.end.expect("the engine comes to the end");
    let pair = [end.velocity.length(), speed_at(&run, end.middle.x)];
    vec![
        on_the_way(&what, &run, &engine, 1.5e-2, HOP),
        check(
            format!("{what}, at the end"),
            "m/s",
            pair,
            Share(5e-3),
            KEPT,
        ),
    ]
}

/// Both ways to set the engine on each line: as it comes with two of the riders, tuned with all.
fn all(title: &'static str, lines: &[Named], duel: fn(&Named, &Settings, usize) -> Vec<Check>) {
    println!("{title}: where the engine is no reference");
    let mut checks = Vec::new();
    for line in lines {
        for rider in [1, 3] {
            checks.extend(duel(line, &settings::as_it_comes(), rider));
        }
        for rider in 0..RIDERS.len() {
            checks.extend(duel(line, &settings::smooth(), rider));
        }
    }
    judge(title, checks);
}

#[test]
fn where_both_wheels_stay_down() {
    let lines = [
        lines::ramp(2.0),
        lines::rollers(1.2, 0.15, 4.0, 4),
        lines::rollers(1.0, 0.08, 2.5, 6),
        lines::lip(1.6, 0.6, 5.0),
        lines::lip(1.2, 0.4, 3.5),
        lines::lip(1.6, 0.9, 4.0),
    ];
    all("The engine, both wheels down", &lines, bound);
}

#[test]
fn where_wheels_leave_the_ground() {
    let lines = [
        lines::rollers(1.6, 0.2, 3.0, 4),
        lines::rollers(1.6, 0.25, 3.0, 3),
        lines::rollers(2.0, 0.2, 3.0, 4),
        lines::rollers(1.2, 0.25, 3.0, 3),
    ];
    all("The engine, wheels that hop", &lines, hopping);
}
