//! What was built against what was planned.

use crate::profile::Profile;
use serde::Serialize;

/// One reading of the finished line.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Difference {
    /// Station, m.
    pub station: f64,
    /// Height that was read, m.
    pub built: f64,
    /// Height that was planned there, m.
    pub planned: f64,
    /// How much higher it was built, m; negative where it is lower.
    pub off: f64,
    /// Index of the feature it lies on; none on a surveyed line.
    pub feature: Option<usize>,
}

/// Readings of station and height against the profile, from above; readings beyond the line are left out.
///
/// Heights count alone. Beside a plumb face, where a hand's breadth along the line is a metre of height, a reading says
/// little.
pub fn compare(profile: &Profile, points: &[[f64; 2]]) -> Vec<Difference> {
    let read = |&[station, built]: &[f64; 2]| {
        let planned = profile.height_at(station)?;
        let on = profile
            .spans
            .iter()
            .rfind(|s| s.from.x <= station && station <= s.to.x);
        Some(Difference {
            station,
            built,
            planned,
            off: built - planned,
            feature: on.map(|s| s.feature),
        })
    };
    points.iter().filter_map(read).collect()
}

/// Of each feature the reading that is farthest off, in riding order; of two as far, the first.
pub fn largest(all: &[Difference]) -> Vec<Difference> {
    let mut largest: Vec<Difference> = Vec::new();
    for one in all {
        match largest.iter_mut().find(|l| l.feature == one.feature) {
            Some(most) if one.off.abs() > most.off.abs() => *most = *one,
            Some(_) => {}
            None => largest.push(*one),
        }
    }
    largest.sort_by_key(|d| d.feature);
    largest
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan;

    #[test]
    fn what_is_built_as_planned_is_not_off() {
        let profile = Profile::build(&plan::demo()).expect("the demonstration is sound");
        let at = |x: f64| [x, profile.height_at(x).expect("it has ground")];
        let points: Vec<_> = (1..30).map(|i| at(f64::from(i))).collect();
        assert!(compare(&profile, &points).iter().all(|d| d.off == 0.0));
        assert_eq!(compare(&profile, &[[-3.0, 0.0], [1e4, 0.0]]), []);
    }

    #[test]
    fn each_feature_says_where_it_is_most_off() {
        let profile = Profile::build(&plan::demo()).expect("the demonstration is sound");
        let lip = profile.lips[0];
        let [a, b] = [lip.slope_end.x - 0.1, lip.slope_end.x + 0.1];
        let off = |x: f64, by: f64| [x, profile.height_at(x).expect("it has ground") + by];
        let points = [off(a, 0.02), off(b, -0.05), off(0.5, 0.01)];
        let most = largest(&compare(&profile, &points));
        let features: Vec<_> = most.iter().map(|d| d.feature).collect();
        assert_eq!(features, [Some(0), Some(lip.feature)]);
        assert!((most[0].off - 0.01).abs() < 1e-12 && (most[1].off + 0.05).abs() < 1e-12);
    }
}
