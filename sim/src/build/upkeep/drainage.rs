//! Where water gathers, and whether it stands.

use crate::num;
use crate::profile::Profile;
use crate::profile::Under;
use glam::DVec2;
use serde::Serialize;

/// What a low point lies on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Of {
    /// The line as it is to be.
    Line,
    /// The yard's own ground.
    Yard,
}

/// A low point: to either side along the line it rises, or the line ends.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Low {
    /// What it lies on.
    pub of: Of,
    /// Station, m; of a level stretch, its middle.
    pub station: f64,
    /// Height, m.
    pub height: f64,
    /// Length of the level stretch, m.
    pub level: f64,
    /// Height over the yard's own ground, m: what there is of fall to the side; nothing where it is not positive.
    pub over_yard: f64,
    /// How deep water can stand there before it runs off along the line or out to the side, m.
    pub stands: f64,
    /// Station and fall, m, to the next low point along the line that lies lower, where there is one; the fall is what
    /// a drain laid there has.
    pub next: Option<[f64; 2]>,
}

/// Every low point of the line and of the yard, each in riding order; geometry alone, of the line's middle.
///
/// Beside the line lies the yard as it was, so that water stands no higher than that. At the ends of the line and of
/// the yard water runs on.
pub fn low_points(profile: &Profile) -> Vec<Low> {
    let under = Under(&profile.yard);
    let mut lows = lowest(Of::Line, &ridden(profile), &under);
    lows.extend(lowest(Of::Yard, &profile.yard, &under));
    lows
}

/// The line's ends, joints, tops and bottoms as seen from above: between two of them it only rises or only falls.
fn ridden(profile: &Profile) -> Vec<DVec2> {
    let mut points: Vec<DVec2> = Vec::new();
    for piece in &profile.pieces {
        if piece.end.x <= piece.start.x {
            // Rain does not fall on a plumb face, and nothing is seen of its lower end.
            continue;
        }
        points.push(piece.start);
        let turns = piece.heading * piece.end_heading() < 0.0;
        if turns && piece.curvature != 0.0 {
            points.push(piece.point(-piece.heading / piece.curvature));
        }
        points.push(piece.end);
    }
    points
}

/// Heights within this of each other are level, m: nobody can tell, and water neither.
const LEVEL: f64 = 1e-6;

fn lowest(of: Of, points: &[DVec2], under: &Under) -> Vec<Low> {
    let mut lows = Vec::new();
    let mut at = 0;
    while at < points.len() {
        let mut last = at;
        while last + 1 < points.len() && (points[last + 1].y - points[at].y).abs() < LEVEL {
            last += 1;
        }
        let inner = at > 0 && last + 1 < points.len();
        let [first, end] = [points[at], points[last]];
        if inner && points[at - 1].y > first.y && points[last + 1].y > end.y {
            let station = (first.x + end.x) / 2.0;
            let over_yard = first.y - under.height(station);
            let spill = num::min(
                crest(points[..at].iter().rev(), first.y),
                crest(points[last + 1..].iter(), end.y),
            );
            let beside = if of == Of::Line {
                -over_yard
            } else {
                f64::INFINITY
            };
            let stands = num::max(num::min(spill - first.y, beside), 0.0);
            lows.push(Low {
                of,
                station,
                height: first.y,
                level: end.x - first.x,
                over_yard,
                stands,
                next: None,
            });
        }
        at = last + 1;
    }
    let all = lows.clone();
    for (i, low) in lows.iter_mut().enumerate() {
        let later = all[i + 1..].iter().find(|l| l.height < low.height - LEVEL);
        let earlier = all[..i].iter().rfind(|l| l.height < low.height - LEVEL);
        low.next = later
            .or(earlier)
            .map(|l| [l.station, low.height - l.height]);
    }
    lows
}

/// How high the ground rises one way before it falls below a height again; as high as it gets where it never does.
fn crest<'a>(way: impl Iterator<Item = &'a DVec2>, low: f64) -> f64 {
    let mut highest = low;
    for point in way {
        if point.y < low - LEVEL {
            return highest;
        }
        highest = num::max(highest, point.y);
    }
    highest
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::{self, Lie, Line, Surface};

    fn surveyed(line: &[(f64, f64)], yard: &[(f64, f64)]) -> Vec<Low> {
        let mut plan = plan::demo();
        plan.initial_speed = Some(3.0);
        plan.yard.length = 20.0;
        plan.yard.lie = Lie::Surveyed(yard.iter().map(|&p| p.into()).collect());
        plan.line = Line::Surveyed {
            points: line.iter().map(|&p| p.into()).collect(),
            surface: Surface::Packed,
        };
        let profile = Profile::build(&plan).expect("it can be built");
        low_points(&profile)
    }

    const LEVEL_YARD: [(f64, f64); 2] = [(0.0, 0.0), (20.0, 0.0)];

    /// The yard beside is the rim of whatever is dug into it, however high the heaps along the line.
    #[test]
    fn water_stands_where_it_is_dug_and_no_higher_than_the_yard() {
        let line = [
            (0.0, 1.0),
            (4.0, -0.3),
            (8.0, 1.0),
            (12.0, 0.2),
            (16.0, 1.0),
        ];
        let lows = surveyed(&line, &LEVEL_YARD);
        let line: Vec<_> = lows.iter().filter(|l| l.of == Of::Line).collect();
        println!("{line:?}");
        assert_eq!(line.len(), 2);
        assert!(line[0].height < -0.2 && (line[0].stands + line[0].height).abs() < 1e-9);
        assert!(line[1].over_yard > 0.0 && line[1].stands == 0.0);
        let [at, fall] = line[1].next.expect("the first lies lower");
        assert!((at - line[0].station).abs() < 1e-9);
        assert!((fall - (line[1].height - line[0].height)).abs() < 1e-9);
        assert_eq!(line[0].next, None);
    }

    /// A dip of the yard holds water up to the lower of its rims.
    #[test]
    fn a_dip_of_the_yard_fills_to_its_lower_rim() {
        let yard = [
            (0.0, 2.0),
            (5.0, 1.0),
            (7.0, 1.0),
            (10.0, 1.4),
            (15.0, 0.4),
            (20.0, 0.2),
        ];
        let lows = surveyed(&[(0.0, 3.0), (1.5, 2.9), (4.0, 2.8)], &yard);
        let dips: Vec<_> = lows.iter().filter(|l| l.of == Of::Yard).collect();
        println!("{dips:?}");
        let [dip] = dips.as_slice() else {
            panic!("one dip")
        };
        assert_eq!((dip.station, dip.level, dip.next), (6.0, 2.0, None));
        assert!((dip.stands - 0.4).abs() < 1e-12);
    }

    /// Between rollers on level ground water gathers, and nothing drains it.
    #[test]
    fn troughs_between_rollers_are_low_points() {
        let mut plan = plan::demo();
        plan.yard.lie = Lie::Grade(0.0);
        let profile = Profile::build(&plan).expect("it can be built");
        let lows = low_points(&profile);
        let span = &profile.spans[2];
        let within = |l: &&Low| l.station > span.from.x + 0.1 && l.station < span.to.x - 0.1;
        let troughs: Vec<_> = lows.iter().filter(within).collect();
        assert_eq!(troughs.len(), 2, "{lows:?}");
        for trough in troughs {
            assert!(trough.over_yard.abs() < 1e-9 && trough.stands < 1e-9);
        }
    }

    /// Downhill all the way, nothing gathers.
    #[test]
    fn a_steady_fall_has_no_low_point() {
        let lows = surveyed(
            &[(0.0, 2.0), (5.0, 1.5), (9.0, 1.2), (14.0, 0.4)],
            &[(0.0, 1.0), (20.0, -1.0)],
        );
        assert_eq!(lows, []);
    }
}
