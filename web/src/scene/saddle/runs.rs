//! What of the ribbon is seen: whatever a nearer rise hides is left out.
//!
//! The ribbon is looked down along its middle and hardly changes its width, so a nearer part of it is the wider on the
//! sheet: a part is hidden just where it lies no higher on the sheet than anything nearer. Where a landing is much
//! wider than the lip before it, what sticks out beside that lip is not drawn.

use super::beside;
use super::lens::Lens;
use super::ribbon::{Knot, Ribbon};

/// From this distance on only every other point is looked at, and joints, m.
const FAR: f64 = 14.0;
/// A stretch of nothing on the sheet is not drawn, px.
const THIN: f64 = 0.2;

/// A stretch seen without a break, the nearest point first.
pub type Run = Vec<Knot>;

/// The stretches that are seen between two stations, nearest first.
pub fn seen(ribbon: &Ribbon, from: f64, to: f64, lens: &Lens) -> Vec<Run> {
    let mut runs: Vec<Run> = Vec::new();
    let mut skyline = f64::INFINITY;
    // Whether the last run goes on with the next pair.
    let mut open = false;
    let mut held: Option<&Knot> = None;
    for (i, (a, b)) in ribbon.pairs(from, to).enumerate() {
        let a = held.take().unwrap_or(a);
        if lens.depth(beside(b.at, 0.0)) > FAR && !b.joint && i % 2 == 0 {
            held = Some(a);
            continue;
        }
        let Some((a, b)) = lens.in_front(a, b) else {
            continue;
        };
        let [low, high] = [a, b].map(|k| lens.height(k.at));
        if high > skyline.min(low) - THIN {
            open = open && high <= skyline.min(low);
            skyline = skyline.min(high);
            continue;
        }
        let from = if low > skyline {
            a.toward(&b, (low - skyline) / (low - high))
        } else {
            a
        };
        match runs.last_mut().filter(|_| open && low <= skyline) {
            Some(run) => run.push(b),
            None => runs.push(vec![from, b]),
        }
        open = true;
        skyline = high;
    }
    runs
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::saddle::AHEAD;
    use glam::DVec2;
    use sim::plan;
    use sim::profile::Profile;

    #[test]
    fn what_a_lip_hides_is_not_seen_and_the_way_to_it_is() {
        let profile = Profile::build(&plan::demo()).unwrap();
        let ribbon = Ribbon::of(&profile);
        // The first jump is a table.
        let lip = profile.lips[1];
        // Lower than the edge, which so hides the gap.
        let eye = DVec2::new(lip.foot.x - 1.0, lip.edge.y - 0.1);
        let lens = Lens::new(eye, 0.0, DVec2::new(360.0, 300.0));
        let runs = seen(&ribbon, eye.x, eye.x + AHEAD, &lens);
        let shown = |x: f64| {
            runs.iter()
                .any(|r| r[0].at.x <= x && r[r.len() - 1].at.x >= x)
        };
        assert!(shown(0.5 * (lip.foot.x + lip.edge.x)));
        assert!(shown(lip.edge.x - 1e-3));
        assert!(!shown(0.5 * (lip.edge.x + lip.knuckle.x)), "the gap");
        let behind = lip.slope_end.x - 0.3;
        assert!(
            !shown(behind),
            "the landing's slope falls away from the eye"
        );
    }

    #[test]
    fn every_run_climbs_the_sheet() {
        let profile = Profile::build(&plan::demo()).unwrap();
        let ribbon = Ribbon::of(&profile);
        for i in 0..60 {
            let x = 0.5 * f64::from(i);
            let eye = DVec2::new(x, ribbon.height(x) + 1.2);
            let lens = Lens::new(eye, -0.2, DVec2::new(360.0, 300.0));
            let runs = seen(&ribbon, x - 1.0, x + AHEAD, &lens);
            assert!(!runs.is_empty());
            let mut before = f64::INFINITY;
            for k in runs.iter().flatten() {
                let y = lens.height(k.at);
                // Where a run sets in is found along a straight line of the sheet.
                assert!(y <= before + 0.1, "{y} after {before} at {x}");
                before = y;
            }
        }
    }
}
