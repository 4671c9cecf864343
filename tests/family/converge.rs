//! Scratch: how lip speeds depend on the accuracy.
use sim::profile::Profile;
use sim::ride::{self, Accuracy, EventKind};
use sim::setup;
fn speeds(plan: &sim::plan::Plan, acc: &Accuracy) -> (Vec<f64>, usize, f64) {
    let profile = Profile::build(plan).unwrap();
    let m = setup::mount(&plan.riders[0], &plan.weather);
    let t0 = std::time::Instant::now();
    let run = ride::ride(&profile, &m, setup::start_speed(plan), acc);
    let cost = t0.elapsed().as_secs_f64();
    let dur = run.samples.last().unwrap().t;
    (
        run.events
            .iter()
            .filter_map(|e| match e.kind {
                EventKind::LipLeft { speed, .. } => Some(speed),
                _ => None,
            })
            .collect(),
        run.samples.len(),
        dur / cost,
    )
}
fn main() {
    let accs: Vec<Accuracy> = [
        (1e-3, 5e-3),
        (3e-4, 4e-3),
        (1e-4, 4e-3),
        (3e-5, 4e-3),
        (1e-5, 4e-3),
        (3e-6, 2e-3),
        (1e-7, 1e-3),
    ]
    .iter()
    .map(|&(tolerance, longest)| Accuracy { tolerance, longest })
    .collect();
    let fine = Accuracy {
        tolerance: 1e-8,
        longest: 5e-4,
    };
    let mut worst = vec![Vec::new(); accs.len()];
    let mut rates = vec![Vec::new(); accs.len()];
    for seed in 0..16 {
        let m = tests::family::member(seed);
        let (r, _, _) = speeds(&m.plan, &fine);
        for (i, a) in accs.iter().enumerate() {
            let (s, _, rate) = speeds(&m.plan, a);
            rates[i].push(rate);
            for (x, y) in s.iter().zip(&r) {
                worst[i].push((x / y - 1.0).abs());
            }
        }
    }
    for (i, a) in accs.iter().enumerate() {
        worst[i].sort_by(f64::total_cmp);
        rates[i].sort_by(f64::total_cmp);
        let w = &worst[i];
        println!(
            "{a:?} n {} median {:.2e} 80% {:.2e} 95% {:.2e} max {:.2e} rate {:.0}",
            w.len(),
            w[w.len() / 2],
            w[w.len() * 8 / 10],
            w[w.len() * 95 / 100],
            w[w.len() - 1],
            rates[i][rates[i].len() / 2]
        );
    }
}
