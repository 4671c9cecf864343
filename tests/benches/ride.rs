//! How much faster than life the demonstration line is ridden, beside the error in lip speeds that
//! goes with it: `cargo bench -p tests --bench ride`. A measurement, not a test.

use sim::plan::demo;
use sim::profile::Profile;
use sim::ride::{Accuracy, EventKind, Run, ride};
use sim::setup;
use std::hint::black_box;
use std::time::Instant;

/// Rides timed together.
const RIDES: u32 = 200;

/// Rounds of them; the quickest counts, as whatever else the machine does only slows.
const ROUNDS: u32 = 7;

fn lip_speeds(run: &Run) -> Vec<f64> {
    let events = run.events.iter();
    let speed = events.filter_map(|e| match e.kind {
        EventKind::LipLeft { speed, .. } => Some(speed),
        _ => None,
    });
    speed.collect()
}

fn main() {
    let plan = demo();
    let profile = Profile::build(&plan).unwrap_or_else(|faults| panic!("{faults:?}"));
    let start = setup::start_speed(&plan);
    let fine = Accuracy {
        tolerance: 1e-8,
        longest: 1e-3,
    };
    println!(
        "{:<12} {:>10} {:>12} {:>14} {:>12}",
        "rider", "tolerance", "ride lasts s", "times faster", "lip error"
    );
    for planned in &plan.riders {
        let mount = setup::mount(planned, &plan.weather);
        let exact = lip_speeds(&ride(&profile, &mount, start, &fine));
        for tolerance in [1e-3, 1e-4, Accuracy::default().tolerance, 1e-6] {
            let accuracy = Accuracy {
                tolerance,
                ..Accuracy::default()
            };
            let run = ride(&profile, &mount, start, &accuracy);
            let lasts = run.samples.last().map_or(0.0, |s| s.t);
            let each = lip_speeds(&run).into_iter().zip(&exact);
            let error = each.map(|(a, b)| (a / b - 1.0).abs()).fold(0.0, f64::max);
            let mut best = f64::INFINITY;
            for _ in 0..ROUNDS {
                let begin = Instant::now();
                for _ in 0..RIDES {
                    black_box(ride(black_box(&profile), &mount, start, &accuracy));
                }
                best = best.min(begin.elapsed().as_secs_f64() / f64::from(RIDES));
            }
            println!(
                "{:<12} {tolerance:>10.0e} {lasts:>12.2} {:>14.0} {error:>12.1e}",
                planned.label,
                lasts / best
            );
        }
    }
}
