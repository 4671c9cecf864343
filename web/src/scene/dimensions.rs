//! The chosen feature's measures, as on a builder's sketch: a thin line between two ticks.

use super::land;
use super::sheet::{Align, Ink, Label, Sheet};
use super::view::Strip;
use glam::DVec2;
use sim::plan::{Feature, Line, Plan};
use sim::profile::{Profile, Span};

/// Half the length of a tick, px.
const TICK: f64 = 4.0;
/// How far a measure stands from what it measures, px.
const APART: f64 = 14.0;
/// Size of the figures, px.
const TYPE: f64 = 13.0;

/// One measure, from one point to another, m. Its figure is that of its place in the list.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Measure {
    from: DVec2,
    to: DVec2,
    /// Where it stands beside them, px of the sheet.
    beside: DVec2,
}

/// The measures of every feature.
#[derive(Clone, Debug, Default)]
pub struct Dimensions(Vec<(usize, Vec<Measure>)>);

impl Dimensions {
    /// The measures of a plan's features on their profile.
    pub fn of(plan: &Plan, profile: &Profile) -> Self {
        let Line::Features(features) = &plan.line else {
            return Self::default();
        };
        let spans = profile.spans.iter();
        Self(
            spans
                .map(|span| {
                    (
                        span.feature,
                        measures(&features[span.feature], span, profile),
                    )
                })
                .collect(),
        )
    }

    /// Lays one feature's measures on the sheet.
    pub fn draw(&self, feature: usize, strip: &Strip, sheet: &mut Sheet) {
        let own = self.0.iter().find(|d| d.0 == feature);
        for (i, m) in own.iter().flat_map(|d| d.1.iter().enumerate()) {
            if !strip.shows(m.from.x.min(m.to.x), m.from.x.max(m.to.x)) {
                continue;
            }
            let (a, b) = (strip.place(m.from) + m.beside, strip.place(m.to) + m.beside);
            let tick = DVec2::new(TICK, -TICK);
            for line in [[a, b], [a - tick, a + tick], [b - tick, b + tick]] {
                sheet.line(Ink::Figure, 1.0, line);
            }
            let upright = (b.x - a.x).abs() < 1.0;
            let middle = (a + b) * 0.5;
            let (at, align) = if upright && m.beside.x < 0.0 {
                (middle + DVec2::new(-6.0, 4.0), Align::Left)
            } else if upright {
                (middle + DVec2::new(6.0, 4.0), Align::Right)
            } else {
                // Before its begin: behind a lip stand the range of its speed, under the ground, and what comes next.
                (a + DVec2::new(-8.0, 4.0), Align::Left)
            };
            sheet.text(Ink::Figure, TYPE, at, align, Label::Dimension(i));
        }
    }
}

/// A feature's measures, in the order in which the page writes their figures.
fn measures(feature: &Feature, span: &Span, profile: &Profile) -> Vec<Measure> {
    let under = DVec2::new(0.0, APART);
    let right = DVec2::new(APART, 0.0);
    let plumb = |top: DVec2, beside| Measure {
        from: DVec2::new(top.x, land::yard(profile, top.x)),
        to: top,
        beside,
    };
    let level = |from: DVec2, to: DVec2| Measure {
        from: DVec2::new(from.x, land::yard(profile, from.x)),
        to: DVec2::new(to.x, land::yard(profile, to.x)),
        beside: under,
    };
    match feature {
        Feature::StartRamp(_) => vec![plumb(span.from, right)],
        Feature::Roller(roller) => {
            let each = (span.to.x - span.from.x) / f64::from(roller.count);
            let x = span.from.x + 0.5 * each;
            let top = DVec2::new(x, profile.height_at(x).unwrap_or(0.0));
            let next = DVec2::new(span.from.x + each, 0.0);
            vec![plumb(top, DVec2::ZERO), level(span.from, next)]
        }
        Feature::Jump(_) => {
            let lip = profile.lips.iter().find(|l| l.feature == span.feature);
            lip.map_or_else(Vec::new, |l| {
                vec![
                    // On the side of the lip where no landing is.
                    plumb(l.edge, -right),
                    level(l.edge, l.knuckle),
                    plumb(l.knuckle, right),
                ]
            })
        }
        Feature::Flat(_) | Feature::Turn(_) | Feature::RunOut(_) => {
            vec![level(span.from, span.to)]
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use sim::plan::demo;

    #[test]
    fn measures_are_as_long_as_the_plan_says() {
        let plan = demo();
        let profile = Profile::build(&plan).unwrap();
        let dimensions = Dimensions::of(&plan, &profile);
        let length = |feature: usize, i: usize| {
            let m = dimensions.0[feature].1[i];
            m.from.distance(m.to)
        };
        // The demonstration's second jump: lip 0.45 m, gap 1.6 m, landing 0.65 m, on a grade of 4 %.
        assert!((length(6, 0) - 0.45).abs() < 0.02, "{}", length(6, 0));
        assert!((length(6, 1) - 1.6).abs() < 0.02, "{}", length(6, 1));
        assert!((length(6, 2) - 0.65).abs() < 0.02, "{}", length(6, 2));
        assert!((length(2, 0) - 0.25).abs() < 0.01, "{}", length(2, 0));
        assert!((length(2, 1) - 3.0).abs() < 0.02, "{}", length(2, 1));
    }
}
