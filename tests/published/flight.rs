//! In the air: what no push of the rider can change.

use super::rig::{bench, centre, flight, passive, run, velocity};
use glam::DVec2;
use sim::constants::GRAVITY;
use sim::plan::{Plan, Weather};
use sim::profile::Profile;
use sim::ride::{Mount, SAMPLE_STEP, Sample};
use sim::setup;
use tests::checks::{
    Bound::{Share, Within},
    Check,
};
use tests::forms::flown;

/// A short line with one jump, with its first rider and no losses.
fn orchard() -> (Profile, Mount, f64) {
    let text = include_str!("../../sim/plans/one_jump.json");
    let plan = Plan::from_json(text).expect("a plan file of our own");
    let mut mount = setup::mount(&plan.riders[0], &Weather::default());
    (mount.rolling, mount.drag) = ([0.0; 6], 0.0);
    let profile = Profile::build(&plan).expect("it can be built");
    (profile, mount, setup::start_speed(&plan))
}

fn check(what: String, source: &'static str, unit: &'static str, pair: [f64; 2]) -> Check {
    let why = "a parabola is what every step of the integration gives exactly";
    Check::new(what, source, unit, pair, Share(1e-9), why)
}

/// Where and how fast the mass centre is at the end of a flight, from its beginning.
fn vacuum(name: &str, profile: &Profile, m: &Mount, speed: f64) -> Vec<Check> {
    const SOURCE: &str = "projectile in a vacuum (any textbook of mechanics)";
    let run = run(profile, m, speed);
    let s = flight(&run);
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

/// The sum over a flight with quadratic drag must give known flights before it judges the model.
fn sums() -> Vec<Check> {
    let cases = [
        (
            "8 m/s, 30°, k 0.00459375 1/m",
            8.0,
            30.0,
            0.00459375,
            0.81194585,
            5.55011442,
        ),
        (
            "12 m/s, 35°, k 0.003828125 1/m, 1 m down",
            12.0,
            35.0,
            0.003828125,
            1.52524118,
            14.54671759,
        ),
        (
            "15 m/s, 30°, k 0.007145833 1/m, 2 m down",
            15.0,
            30.0,
            0.35 * 1.225 / 60.0,
            1.73446461,
            20.80425506,
        ),
    ];
    cases
        .map(|(name, speed, degrees, k, time, range)| {
            let from = DVec2::from_angle(f64::to_radians(degrees)) * speed;
            Check::new(
                format!("sum: flight with drag, {name}: range"),
                "a = −g − k v v by DOP853 at 1e-12 (SciPy)",
                "m",
                [range, flown(from, k, time).0.x],
                Within(1e-7),
                "the digits given",
            )
        })
        .into()
}

/// A rider's flight with drag: John Bernoulli's first integral at its end, 1/vx² having grown by
/// (k/g) (F(p₀) − F(p)), F(p) = tan p / cos p + ln(1/cos p + tan p), and the sum over it.
fn drag() -> Vec<Check> {
    const WHY: &str = "drag acts on the rider, whose speed is not quite the common one";
    let mut m = passive();
    // A rider's own drag: with much more, the body that it acts on is blown off the bike's course.
    m.drag = 0.25;
    let run = run(&bench(3.0, 0.0), &m, 9.0);
    let s = flight(&run);
    let last = s.len() - 3;
    let (from, to) = (velocity(&m, s), velocity(&m, &s[last..]));
    let k = m.drag / m.mass();
    let f = |v: DVec2| {
        let (tan, sec) = (v.y / v.x, v.length() / v.x);
        sec * tan + (sec + tan).ln()
    };
    let grown = 1.0 / (from.x * from.x) + k / GRAVITY * (f(from) - f(to));
    let way = centre(&m, &s[last + 1]) - centre(&m, &s[1]);
    let (place, speed) = flown(from, k, s[last + 1].t - s[1].t);
    let row = |what: &str, source, unit, pair, share| {
        Check::new(
            format!("drop of 3 m with drag: {what}"),
            source,
            unit,
            pair,
            Share(share),
            WHY,
        )
    };
    const SUM: &str = "a = −g − k v v, step by step";
    vec![
        row(
            "level speed at the end",
            "J. Bernoulli 1719 (hodograph)",
            "m/s",
            [1.0 / grown.sqrt(), to.x],
            1e-3,
        ),
        row("range", SUM, "m", [place.x, way.x], 1e-3),
        row("fall", SUM, "m", [place.y, way.y], 1e-3),
        row(
            "speed at the end",
            SUM,
            "m/s",
            [speed.length(), to.length()],
            1e-3,
        ),
    ]
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
    Check::new(
        format!("{name}: angular momentum from one end of a flight to the other"),
        "conservation of angular momentum",
        "kg m²/s",
        [all[0], all[all.len() - 1]],
        Within(0.01 * moved),
        "a hundredth of what the bike's own changed by; rates come from samples",
    )
}

/// The table's rows.
pub fn checks() -> Vec<Check> {
    let (line, rider, speed) = orchard();
    let mut checks = vacuum("drop of 1.5 m", &bench(1.5, 0.0), &passive(), 5.0);
    checks.extend(vacuum("the orchard's longest flight", &line, &rider, speed));
    checks.extend(sums());
    checks.extend(drag());
    checks.push(turning("drop of 1.5 m", &bench(1.5, 0.0), &passive(), 5.0));
    checks.push(turning("the orchard", &line, &rider, speed));
    checks
}
