//! The one door to chance. What is left to it begins from a seed that is drawn here and kept in the plan.

use sim::plan::LARGEST_SEED;

/// A seed, each of all as likely as any other: 1 to [`LARGEST_SEED`], as nought is the one that nobody drew.
///
/// # Errors
/// Where the machine has no source of chance.
pub fn seed() -> Result<u32, getrandom::Error> {
    // There are so many numbers for each seed that one more or less for some of them is not noticed.
    let drawn = getrandom::u64()? % u64::from(LARGEST_SEED);
    Ok(drawn as u32 + 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn seeds_are_spread_over_all_there_are() {
        let all: Vec<u32> = (0..4000).map(|_| seed().unwrap()).collect();
        assert!(all.iter().all(|seed| (1..=LARGEST_SEED).contains(seed)));
        // Of ten equal parts each gets 400, give or take 19 for one standard deviation: six of them fall outside
        // once in a hundred millions of runs.
        for part in 0..10 {
            let here = |seed: &&u32| *seed * 10 / (LARGEST_SEED + 1) == part;
            let count = all.iter().filter(here).count();
            assert!((286..=514).contains(&count), "{count} in part {part}");
        }
    }
}
