//! Which seeds are ridden for what, and riding many of them at once.

use std::sync::atomic::{AtomicUsize, Ordering};

/// Where the judging seeds begin. They are drawn anew, by changing this number and nothing else, once
/// all is done; then they are ridden once.
pub const JUDGING: u64 = 3_000_000;

/// Lines ridden for each table over lines when judging.
pub const LINES: usize = 100;

/// Two thirds of all seeds are for tuning, the rest for judging.
fn is_for_tuning(seed: u64) -> bool {
    seed % 3 != 2
}

/// The seeds for tuning in a range.
pub fn tuning(from: u64, to: u64) -> Vec<u64> {
    (from..to).filter(|&s| is_for_tuning(s)).collect()
}

/// The seeds for judging.
pub fn judging() -> Vec<u64> {
    let all = JUDGING..;
    all.filter(|&s| !is_for_tuning(s)).take(LINES).collect()
}

/// As many seeds for judging as a share of few per cent asks for, beside those of the tables.
pub fn many() -> Vec<u64> {
    let all = JUDGING..;
    let judging = all.filter(|&s| !is_for_tuning(s));
    judging.skip(LINES).take(3 * LINES).collect()
}

/// What `ride` gives for each of some things, in their order, worked out on two threads.
pub fn each<S: Sync, T: Send>(things: &[S], ride: impl Fn(&S) -> T + Sync) -> Vec<T> {
    let next = AtomicUsize::new(0);
    let work = || {
        let mut done = Vec::new();
        loop {
            let i = next.fetch_add(1, Ordering::Relaxed);
            let Some(thing) = things.get(i) else {
                return done;
            };
            done.push((i, ride(thing)));
        }
    };
    let mut all = std::thread::scope(|scope| {
        let other = scope.spawn(work);
        let mut done = work();
        done.extend(other.join().expect("a ride does not panic"));
        done
    });
    all.sort_by_key(|(i, _)| *i);
    all.into_iter().map(|(_, done)| done).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tuning_and_judging_never_meet() {
        let judging = judging();
        assert_eq!(judging.len(), LINES);
        let (from, to) = (judging[0], judging[LINES - 1]);
        let tuning = tuning(from, to + 1);
        assert!(tuning.len() > LINES && !tuning.iter().any(|s| judging.contains(s)));
    }

    #[test]
    fn results_come_in_order() {
        let things: Vec<u64> = (0..100).collect();
        assert_eq!(each(&things, |s| s * s)[99], 9801);
    }
}
