//! The yard as it lies before anything is dug.

use crate::num;
use crate::profile::Profile;

/// Height of the natural ground at a station, m; level on where the yard's outline ends, 0 without one.
pub fn natural_ground(profile: &Profile, x: f64) -> f64 {
    let points = &profile.yard;
    let (Some(first), Some(last)) = (points.first(), points.last()) else {
        return 0.0;
    };
    let x = num::clamp(x, first.x, last.x);
    for pair in points.windows(2) {
        let [a, b] = [pair[0], pair[1]];
        if x <= b.x && b.x > a.x {
            return a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x);
        }
    }
    last.y
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::{self, Lie};

    #[test]
    fn it_lies_as_the_plan_says() {
        let mut plan = plan::one_jump();
        plan.yard.lie = Lie::Grade(-0.05);
        let profile = Profile::build(&plan).expect("it can be built");
        for x in [0.0, 3.3, 10.0] {
            assert!((natural_ground(&profile, x) + 0.05 * x).abs() < 1e-12);
        }
    }
}
