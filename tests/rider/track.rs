//! A level pump track: rollers in a row on packed ground, entered at several speeds.

use super::draw::{flat, rollers};
use super::figures::{Bar, Table, percent};
use super::landed::{at, between, crash};
use super::optimum::{self, Legs, Train};
use super::place::ride;
use super::{floors, riders, seeds};
use sim::constants::GRAVITY;
use sim::plan::{Feature, Line, Mount, Plan, RunOut, Style, Surface, USUAL_WIDTH, Weather, Yard};
use sim::profile::Profile;
use sim::ride::{SAMPLE_STEP, Sample};
use sim::setup::{self, Ridden};

/// Flat before the rollers, and behind them, m.
pub const BEFORE: f64 = 6.0;

/// Rollers: height and length, m.
const SIZES: [(f64, f64); 4] = [(0.2, 3.0), (0.3, 3.5), (0.4, 4.0), (0.5, 5.0)];

/// Speeds at which they are entered, m/s.
const SPEEDS: [f64; 4] = [3.0, 4.5, 6.0, 7.0];

/// Rollers of the train, and of the long one whose end tells the steady speed.
const COUNT: u32 = 10;
const MANY: u32 = 30;

/// Who rides, by place among the riders, with the name, the greatest push of the legs in body weights
/// and the mean power over some seconds, W/kg (common practice, no source).
const RIDERS: [(usize, &str, f64, f64); 2] = [(3, "adult", 2.5, 6.0), (1, "child of 10", 2.0, 4.0)];

/// How they ride.
const WAYS: [(Style, f64, &str); 4] = [
    (Style::Absorbing, 0.3, "soaking up .3"),
    (Style::Absorbing, 1.0, "soaking up 1"),
    (Style::Pumping, 0.5, "pumping 0.5"),
    (Style::Pumping, 1.0, "pumping 1"),
];

/// The last of the ways: who pumps as well as can be.
const BEST: usize = 3;

/// How fast legs get longer that are said to stretch, m/s.
const STRETCHING: f64 = 0.1;

/// Least gain of an optimum that is compared, m: below it both are next to nothing.
const WORTH: f64 = 0.02;

fn plan(height: f64, length: f64, count: u32, mount: Mount, speed: f64) -> Plan {
    let mut features = vec![flat(BEFORE)];
    for first in (0..count).step_by(10) {
        features.push(rollers(height, length, 10.min(count - first)));
    }
    features.push(flat(BEFORE));
    features.push(Feature::RunOut(RunOut {
        length: 8.0,
        surface: Surface::Packed,
    }));
    Plan {
        name: "Track".into(),
        yard: Yard::even(250.0, 0.0),
        line: Line::Features(features),
        riders: vec![mount],
        weather: Weather::default(),
        initial_speed: Some(speed),
        seen: Vec::new(),
        seed: 0,
        width: USUAL_WIDTH,
    }
}

/// The ground of a train of rollers.
///
/// # Panics
/// Where it cannot be built.
pub fn profile(height: f64, length: f64, count: u32) -> Profile {
    let plan = plan(
        height,
        length,
        count,
        riders::who(1, Style::Absorbing, 0.5),
        4.0,
    );
    Profile::build(&plan).unwrap_or_else(|faults| panic!("{faults:?}"))
}

/// One train ridden once.
struct Trip {
    rider: usize,
    size: usize,
    way: usize,
    entered: f64,
    told: String,
    fell: bool,
    /// Speed behind ten rollers, m/s; 0 where the rider did not come so far.
    left: f64,
    /// Speed over the last five of thirty rollers, m/s; 0 likewise.
    steady: f64,
    /// Net work of the legs a roller, m of head: over ten rollers, and over the last five of them.
    work: [f64; 2],
    /// Greatest load on the rider while the legs stretch, and while they give way, body weights.
    peak: [f64; 2],
    /// Mean power of the legs, W/kg: what they give less what they take, and what they give alone.
    power: [f64; 2],
    /// The most that legs could gain a roller at the ride's mean speed, m: by a smooth movement, and by
    /// any. None where nobody could hold the ground.
    best: [Option<f64>; 2],
}

fn trip([rider, size, way, speed]: [usize; 4]) -> Trip {
    let ((who, _, push, _), (height, length)) = (RIDERS[rider], SIZES[size]);
    let (style, skill, _) = WAYS[way];
    let mount = riders::who(who, style, skill);
    let m = setup::mount(&mount, &Weather::default());
    let ridden = ride(&plan(height, length, COUNT, mount.clone(), SPEEDS[speed]));
    let samples = &ridden.run.samples;
    let end = BEFORE + f64::from(COUNT) * length;
    let weight = m.mass() * GRAVITY;
    let [all, last] = [BEFORE, end - 5.0 * length].map(|from| over(samples, from, end));
    let work = [(all, f64::from(COUNT)), (last, 5.0)].map(|(way, count)| {
        way.map_or(f64::NAN, |way| {
            (way.put_in - way.absorbed) / (weight * count)
        })
    });
    let train = Train {
        profile: &ridden.profile,
        from: BEFORE + 4.0 * length,
        length,
    };
    let legs = Legs::of(&m, push);
    Trip {
        rider,
        size,
        way,
        entered: SPEEDS[speed],
        told: told(&ridden),
        fell: crash(&ridden).is_some(),
        left: at(samples, end + 3.0).map_or(0.0, |s| s.speed),
        steady: steady(height, length, &mount, SPEEDS[speed]),
        work,
        peak: peaks(samples, end),
        power: all.map_or([f64::NAN; 2], |way| {
            [way.put_in - way.absorbed, way.put_in].map(|work| work / (way.time * m.rider_mass))
        }),
        best: [optimum::SMOOTH, optimum::ANY].map(|harmonics| {
            all.and_then(|way| optimum::gain(&train, &legs, way.length / way.time, harmonics))
        }),
    }
}

/// What the legs did between two places.
#[derive(Clone, Copy)]
struct Way {
    length: f64,
    time: f64,
    put_in: f64,
    absorbed: f64,
}

fn over(samples: &[Sample], from: f64, to: f64) -> Option<Way> {
    let (a, b) = (at(samples, from)?, at(samples, to)?);
    Some(Way {
        length: b.bike_x - a.bike_x,
        time: b.t - a.t,
        put_in: b.spent.put_in - a.spent.put_in,
        absorbed: b.spent.absorbed - a.spent.absorbed,
    })
}

fn steady(height: f64, length: f64, mount: &Mount, speed: f64) -> f64 {
    let ridden = ride(&plan(height, length, MANY, mount.clone(), speed));
    let end = BEFORE + f64::from(MANY) * length;
    over(&ridden.run.samples, end - 5.0 * length, end).map_or(0.0, |way| way.length / way.time)
}

fn peaks(samples: &[Sample], end: f64) -> [f64; 2] {
    let from = at(samples, BEFORE).map_or(0.0, |s| s.t);
    let to = at(samples, end).map_or(f64::INFINITY, |s| s.t);
    let mut peak = [0.0_f64; 2];
    for pair in between(samples, from, to).windows(2) {
        // Slower than this they hold rather than stretch.
        let stretching = (pair[1].reach - pair[0].reach) / SAMPLE_STEP > STRETCHING;
        let i = usize::from(!stretching);
        peak[i] = peak[i].max(pair[1].g);
    }
    peak
}

fn told(ridden: &Ridden) -> String {
    crash(ridden).map_or(format!("{:?}", ridden.run.outcome), |(x, why)| {
        format!("{why:?} at {x:.0} m")
    })
}

/// The table.
pub fn table() -> Table {
    let mut all = Vec::new();
    for rider in 0..RIDERS.len() {
        for size in 0..SIZES.len() {
            for way in 0..WAYS.len() {
                all.extend((0..SPEEDS.len()).map(|speed| [rider, size, way, speed]));
            }
        }
    }
    let trips = seeds::each(&all, |&which| trip(which));
    let mut table = Table::new("Pump track: ten level rollers");
    bars(&mut table, &trips);
    let heads = "entered > behind (steady); work a roller over all and the last five, of the smooth optimum and any, m; peak stretching and giving way, weights; mean power, W/kg";
    table.note(heads);
    for trip in &trips {
        table.note(line(trip));
    }
    table
}

fn line(trip: &Trip) -> String {
    let Trip {
        entered,
        left,
        steady,
        work,
        peak,
        power,
        told,
        ..
    } = trip;
    let (_, who, ..) = RIDERS[trip.rider];
    let (height, length) = SIZES[trip.size];
    let best = trip
        .best
        .map(|best| best.map_or("none".into(), |best| format!("{best:.3}")));
    format!(
        "{who:<11} {height} x {length:<3} {:<13} {entered:.1} > {left:.2} ({steady:.2}) m/s; {:+.3} {:+.3} of {} {}; {:.1} {:.1}; {:.1}  {told}",
        WAYS[trip.way].2, work[0], work[1], best[0], best[1], peak[0], peak[1], power[0]
    )
}

fn bars(table: &mut Table, trips: &[Trip]) {
    let best: Vec<&Trip> = trips.iter().filter(|t| t.way == BEST).collect();
    steady_speeds(table, &best);
    table.figure(
        "rides with a crash",
        percent(trips, |t| t.fell),
        "%",
        Bar::AtMost(0.0),
        floors::TRACK_CRASHES,
    );
    table.shown(
        "rides that came to the end",
        percent(trips, |t| t.left > 0.0),
        "%",
    );
    let soaking = trips.iter().filter(|t| t.way < 2).flat_map(|t| t.work);
    let most = soaking.fold(f64::NEG_INFINITY, f64::max);
    table.figure(
        "soaking up: most net work a roller",
        most,
        "m",
        Bar::AtMost(0.01),
        floors::TRACK_SOAKING,
    );
    against_optimum(table, &best);
    limits(table, trips);
}

fn steady_speeds(table: &mut Table, best: &[&Trip]) {
    for (rider, bars) in [&[5.0, 5.0, 5.0][..], &[4.5, 4.5]].into_iter().enumerate() {
        for (size, &bar) in bars.iter().enumerate() {
            let slowest = |from: f64| {
                let of = best.iter().filter(|t| t.rider == rider && t.size == size);
                let of = of.filter(|t| t.entered >= from);
                of.map(|t| t.steady).fold(f64::INFINITY, f64::min)
            };
            let ((height, length), who) = (SIZES[size], RIDERS[rider].1);
            let what = format!("{who} pumping at 1, {height} by {length} m: slowest steady speed");
            let floor = floors::TRACK_STEADY[rider][size];
            table.figure(what, slowest(0.0), "m/s", Bar::AtLeast(bar), floor);
            // At 3 m/s even the reduced optimum finds no way over the crests.
            let what = "the same, entered at 4.5 m/s and more";
            let floor = floors::TRACK_STEADY_RIDDEN[rider][size];
            table.figure(what, slowest(4.5), "m/s", Bar::AtLeast(bar), floor);
        }
    }
    let slow = best
        .iter()
        .filter(|t| t.entered < 5.0 && t.size < [3, 2][t.rider]);
    let slow: Vec<&&Trip> = slow.collect();
    let what = "of those, entered at 3 and 4.5 m/s: left faster than entered";
    table.shown(what, percent(&slow, |t| t.left > t.entered), "%");
}

fn against_optimum(table: &mut Table, best: &[&Trip]) {
    for (i, name) in ["smooth", "any"].into_iter().enumerate() {
        let shares = shares(best, i);
        let (bar, floor) = match i {
            0 => (Bar::AtLeast(100.0), floors::TRACK_OPTIMUM),
            _ => (Bar::Shown, None),
        };
        let what = format!("pumping at 1: gain 0.4 to 1.5 of the optimum, {name} movement");
        table.figure(
            what,
            percent(&shares, |s| (0.4..=1.5).contains(s)),
            "%",
            bar,
            floor,
        );
        let told: Vec<String> = shares.iter().map(|s| format!("{s:.2}")).collect();
        table.note(format!("shares: {}", told.join(" ")));
    }
}

/// What the legs gained against one of the optima, where that is worth the name.
fn shares(trips: &[&Trip], which: usize) -> Vec<f64> {
    let both = trips
        .iter()
        .filter_map(|t| Some((t.work[0], t.best[which]?)));
    let worth = both.filter(|(got, best)| *best > WORTH && !got.is_nan());
    worth.map(|(got, best)| got / best).collect()
}

/// Peak push and power beside what a person can.
fn limits(table: &mut Table, trips: &[Trip]) {
    for (rider, (_, name, push, power)) in RIDERS.into_iter().enumerate() {
        let of = |figure: fn(&Trip) -> f64| {
            trips
                .iter()
                .filter(|t| t.rider == rider && !t.fell)
                .map(figure)
                .fold(f64::NAN, f64::max)
        };
        table.figure(
            format!("{name}: peak push while stretching"),
            of(|t| t.peak[0]),
            "BW",
            Bar::AtMost(push),
            floors::TRACK_PUSH[rider],
        );
        table.figure(
            format!("{name}: peak push while giving way"),
            of(|t| t.peak[1]),
            "BW",
            Bar::AtMost(4.5),
            floors::TRACK_HOLD[rider],
        );
        table.figure(
            format!("{name}: mean power, what legs give less what they take"),
            of(|t| t.power[0]),
            "W/kg",
            Bar::AtMost(power),
            floors::TRACK_POWER[rider],
        );
        table.shown(
            format!("{name}: mean power of what they give alone"),
            of(|t| t.power[1]),
            "W/kg",
        );
    }
}
