//! In the air: what no push of the rider can change.

use super::rig::{add, centre, ground, passive, run};
use glam::DVec2;
use sim::constants::GRAVITY;
use sim::plan::{Plan, Weather};
use sim::profile::Profile;
use sim::ride::{Mount, Run, SAMPLE_STEP, Sample};
use sim::setup;
use tests::checks::{
    Bound::{Share, Within},
    Check, judge,
};

/// A level bench that ends over a drop.
fn drop(height: f64) -> Profile {
    let mut ground = ground(0.0, &[(10.0, 0.0)]);
    add(&mut ground, -std::f64::consts::FRAC_PI_2, &[(height, 0.0)]);
    add(&mut ground, 0.0, &[(60.0, 0.0)]);
    ground
}

/// A short line with one jump, with its first rider and no losses.
fn orchard() -> (Profile, Mount, f64) {
    let text = include_str!("../../sim/plans/one_jump.json");
    let plan = Plan::from_json(text).expect("a plan file of our own");
    let mut mount = setup::mount(&plan.riders[0], &Weather::default());
    (mount.rolling, mount.drag) = ([0.0; 6], 0.0);
    let profile = Profile::build(&plan).expect("it can be built");
    (profile, mount, setup::start_speed(&plan))
}

/// The samples of the longest flight.
fn flight(run: &Run) -> &[Sample] {
    let flights = run.samples.split(|s| s.rear_load + s.front_load > 0.0);
    let longest = flights.max_by_key(|samples| samples.len()).unwrap_or(&[]);
    assert!(
        longest.len() > 20,
        "the flight has only {} samples",
        longest.len()
    );
    longest
}

/// Velocity of the common mass centre at the middle of three samples.
fn velocity(m: &Mount, s: &[Sample]) -> DVec2 {
    (centre(m, &s[2]) - centre(m, &s[0])) / (s[2].t - s[0].t)
}

fn check(what: String, source: &'static str, unit: &'static str, pair: [f64; 2]) -> Check {
    Check {
        what,
        source,
        unit,
        expected: pair[0],
        got: pair[1],
        bound: Share(1e-9),
        why: "a parabola is what every step of the integration gives exactly",
    }
}

/// Where and how fast the mass centre is at the end of a flight, from its beginning.
fn vacuum(name: &str, profile: &Profile, m: &Mount, speed: f64) -> Vec<Check> {
    const SOURCE: &str = "projectile in a vacuum (any textbook of mechanics)";
    let run = run(profile, m, speed);
    let s = flight(&run);
    assert!(
        s.len() > 20,
        "{name}: the flight has only {} samples",
        s.len()
    );
    let last = s.len() - 3;
    let (from, to) = (velocity(m, s), velocity(m, &s[last..]));
    let t = s[last + 1].t - s[1].t;
    let way = centre(m, &s[last + 1]) - centre(m, &s[1]);
    let end = from - DVec2::Y * (GRAVITY * t);
    vec![
        check(format!("{name}: range"), SOURCE, "m", [from.x * t, way.x]),
        check(
            format!("{name}: rise"),
            SOURCE,
            "m",
            [from.y * t - 0.5 * GRAVITY * t * t, way.y],
        ),
        check(
            format!("{name}: speed at the end"),
            SOURCE,
            "m/s",
            [end.length(), to.length()],
        ),
        check(
            format!("{name}: angle at the end"),
            SOURCE,
            "rad",
            [end.to_angle(), to.to_angle()],
        ),
    ]
}

/// John Bernoulli's first integral of a flight with quadratic drag, a = −g − k v v:
/// 1/vx² grows by (k/g) (F(p₀) − F(p)), F(p) = tan p / cos p + ln(1/cos p + tan p).
fn drag() -> Check {
    let mut m = passive();
    // A rider's own drag: with much more, the body that it acts on is blown off the bike's course.
    m.drag = 0.25;
    let run = run(&drop(3.0), &m, 9.0);
    let s = flight(&run);
    let last = s.len() - 3;
    let (from, to) = (velocity(&m, s), velocity(&m, &s[last..]));
    let k = m.drag / m.mass();
    let f = |v: DVec2| {
        let (tan, sec) = (v.y / v.x, v.length() / v.x);
        sec * tan + (sec + tan).ln()
    };
    let grown = 1.0 / (from.x * from.x) + k / GRAVITY * (f(from) - f(to));
    Check {
        what: "drop of 3 m with drag: level speed at the end".into(),
        source: "J. Bernoulli 1719 (hodograph)",
        unit: "m/s",
        expected: 1.0 / grown.sqrt(),
        got: to.x,
        bound: Share(1e-3),
        why: "drag acts on the rider, whose speed is not quite the common one",
    }
}

/// Angular momentum of rider and bike about their common mass centre, kg m²/s.
fn momentum(m: &Mount, s: &[Sample]) -> f64 {
    let dt = s[2].t - s[0].t;
    let rate = |f: fn(&Sample) -> f64| (f(&s[2]) - f(&s[0])) / dt;
    let arm = |s: &Sample| {
        let up = DVec2::from_angle(s.pitch).perp();
        DVec2::new(s.rider_x - s.bike_x, s.rider_z - s.bike_z) - up * m.bike_rise
    };
    m.reduced_mass() * arm(&s[1]).perp_dot((arm(&s[2]) - arm(&s[0])) / dt)
        + m.bike_inertia * rate(|s| s.pitch)
        + m.rider_inertia * rate(|s| s.lean)
}

/// However the rider moves, the sum stays; the scale is what the bike's own turning makes up.
fn turning(name: &str, profile: &Profile, m: &Mount, speed: f64) -> Check {
    let run = run(profile, m, speed);
    let s = flight(&run);
    let all: Vec<f64> = s.windows(3).map(|s| momentum(m, s)).collect();
    let bike = s
        .windows(2)
        .map(|s| m.bike_inertia * (s[1].pitch - s[0].pitch) / SAMPLE_STEP);
    let moved = bike.clone().fold(f64::MIN, f64::max) - bike.fold(f64::MAX, f64::min);
    Check {
        what: format!("{name}: angular momentum from one end of a flight to the other"),
        source: "conservation of angular momentum",
        unit: "kg m²/s",
        expected: all[0],
        got: all[all.len() - 1],
        bound: Within(0.01 * moved),
        why: "a hundredth of what the bike's own changed by; rates come from samples",
    }
}

#[test]
fn flights() {
    let (line, rider, speed) = orchard();
    let mut checks = vacuum("drop of 1.5 m", &drop(1.5), &passive(), 5.0);
    checks.extend(vacuum("the orchard's longest flight", &line, &rider, speed));
    checks.push(drag());
    checks.push(turning("drop of 1.5 m", &drop(1.5), &passive(), 5.0));
    checks.push(turning("the orchard", &line, &rider, speed));
    judge("Flights", &checks);
}
