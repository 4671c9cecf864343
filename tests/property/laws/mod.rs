//! Laws of the ride: how it answers to a change, on random lines.
//!
//! Each law is tried on many, and its table tells how near it came to being broken.

mod mirror;
mod same;
mod slower;
mod way;

use proptest::strategy::Strategy;
use proptest::test_runner::{Config, RngSeed, TestCaseError, TestRunner};
use std::cell::Cell;
use tests::checks::{Bound::NotOver, Check};

/// What a law says, and the most that it allows.
pub struct Law {
    /// The law in words.
    pub what: &'static str,
    /// On whose word it holds.
    pub source: &'static str,
    /// Unit of what is measured.
    pub unit: &'static str,
    /// The most that is allowed.
    pub most: f64,
    /// Why so much.
    pub why: &'static str,
    /// How many inputs it is tried on.
    pub cases: u32,
}

impl Law {
    /// Tries the law on random inputs; `measure` gives what must not be over the most allowed.
    ///
    /// # Panics
    /// With the simplest input found that breaks the law.
    pub fn tried<S: Strategy>(
        &self,
        inputs: S,
        measure: impl Fn(S::Value) -> Result<f64, TestCaseError>,
    ) -> Check {
        let mut runner = TestRunner::new(Config {
            cases: self.cases,
            rng_seed: RngSeed::Fixed(0x0CA2_217E),
            failure_persistence: None,
            max_global_rejects: 10 * self.cases,
            ..Config::default()
        });
        let worst = Cell::new(f64::NEG_INFINITY);
        let ran = runner.run(&inputs, |input| {
            let found = measure(input)?;
            worst.set(worst.get().max(found));
            let broken = format!("{found} {}, allowed {}", self.unit, self.most);
            // No number breaks it as well.
            let kept = found <= self.most;
            kept.then_some(())
                .ok_or_else(|| TestCaseError::fail(broken))
        });
        if let Err(fault) = ran {
            panic!("{}: {fault}", self.what);
        }
        let what = format!("{}, {} lines", self.what, self.cases);
        Check::new(
            what,
            self.source,
            self.unit,
            [self.most, worst.get()],
            NotOver,
            self.why,
        )
    }
}
