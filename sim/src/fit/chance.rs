//! How much of what is left over chance explains.

use crate::num;

/// Standard deviations of a normal distribution beyond which one value in a thousand lies.
const RARE: f64 = 3.09;

/// Largest sum of squares that chance explains: it is larger once in a thousand times.
///
/// # References
/// Wilson and Hilferty 1931, Proc. Natl. Acad. Sci. 17:684: the cube root of chi-square over its
/// degrees of freedom is all but normal.
pub(super) fn most_by_chance(freedom: f64) -> f64 {
    // One left over at least: inputs never take a whole observation without a trace.
    let n = num::max(freedom, 1.0);
    let spread = 2.0 / (9.0 * n);
    let root = 1.0 - spread + RARE * spread.sqrt();
    n * root * root * root
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Upper 0.001 points of chi-square, from the tables of Abramowitz and Stegun, 26.8
    /// (`from memory`). With one degree of freedom the approximation is three in a hundred too large.
    #[test]
    fn chance_is_as_the_tables_say() {
        for (n, table) in [(1.0, 10.83), (2.0, 13.82), (5.0, 20.52), (10.0, 29.59)] {
            let found = most_by_chance(n);
            assert!((found / table - 1.0).abs() < 0.035, "{n}: {found} {table}");
        }
    }
}
