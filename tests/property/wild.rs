//! Tries as many plans as it is asked to, and as much garbage: `wild 100000`. Says how many rides ended in which way,
//! and every one that broke a rule.

use proptest::strategy::{Strategy, ValueTree};
use proptest::test_runner::{Config, RngSeed, TestRunner};
use sim::setup::ride_plan;
use std::collections::BTreeMap;
use tests::{plans, wild};

fn main() {
    let count = std::env::args().nth(1).and_then(|n| n.parse().ok());
    let count: u64 = count.expect("usage: wild COUNT");
    let (mut outcomes, mut broken, mut worst, mut most) = (BTreeMap::new(), 0, 0.0_f64, 0);
    for seed in 0..count {
        match wild::ride(&wild::ridable(seed)) {
            Ok(ridden) => {
                let name = format!(
                    "{:?}{}",
                    ridden.outcome,
                    if ridden.lost { ", lost" } else { "" }
                );
                *outcomes.entry(name).or_insert(0) += 1;
                worst = worst.max(ridden.off);
                most = most.max(ridden.steps);
            }
            Err(why) => {
                broken += 1;
                println!("seed {seed}: {why}");
            }
        }
    }
    println!(
        "{count} plans: {broken} broke a rule; {outcomes:?}; ledger off by {worst:.5} of the head at worst; {most} steps at most"
    );
    let mut runner = TestRunner::new(Config {
        rng_seed: RngSeed::Fixed(0x0CA2_217E),
        failure_persistence: None,
        ..Config::default()
    });
    let (strategy, mut ridden) = (plans::plan(), 0);
    for _ in 0..count {
        let plan = strategy.new_tree(&mut runner).expect("a plan").current();
        match ride_plan(&plan, 0) {
            Ok(_) => ridden += 1,
            Err(faults) => assert!(!faults.is_empty(), "refused without a reason"),
        }
    }
    println!("{count} of garbage: {ridden} ridden, all others refused with a reason");
}
