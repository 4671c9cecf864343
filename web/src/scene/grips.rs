//! Where a feature can be taken hold of: the points that a finger drags.

use super::sheet::{Ink, Sheet};
use super::view::Strip;
use glam::DVec2;
use serde::Serialize;
use sim::plan::{Feature, Line, Plan};
use sim::profile::Profile;

/// What is dragged.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// The start platform.
    Platform,
    /// The top of a roller.
    Top,
    /// The edge of a lip.
    Lip,
    /// The knuckle of a landing.
    Knuckle,
}

/// A point to take hold of, px of the sheet.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Grip {
    /// What it drags.
    pub part: Part,
    /// Place on the sheet.
    pub x: f64,
    /// Place on the sheet, downward.
    pub y: f64,
    /// Pixels to the metre there.
    pub scale: f64,
}

/// The places of a plan's grips, by feature, m.
pub fn places(plan: &Plan, profile: &Profile) -> Vec<(usize, Part, DVec2)> {
    let Line::Features(features) = &plan.line else {
        return Vec::new();
    };
    let mut places = Vec::new();
    for span in &profile.spans {
        let feature = span.feature;
        match &features[feature] {
            Feature::StartRamp(_) => places.push((feature, Part::Platform, span.from)),
            Feature::Roller(roller) => {
                let middle =
                    span.from.x + (span.to.x - span.from.x) * 0.5 / f64::from(roller.count);
                let top = profile.height_at(middle).map(|z| DVec2::new(middle, z));
                places.extend(top.map(|p| (feature, Part::Top, p)));
            }
            Feature::Jump(_) => {
                let lip = profile.lips.iter().find(|l| l.feature == feature);
                places.extend(lip.map(|l| (feature, Part::Lip, l.edge)));
                places.extend(lip.map(|l| (feature, Part::Knuckle, l.knuckle)));
            }
            _ => {}
        }
    }
    places
}

/// Half the width of a grip as it is drawn, px: what takes the finger around it is larger.
const HALF: f64 = 14.0;
/// Width of its outline, px.
const LINE: f64 = 2.5;

/// Lays one feature's grips on the sheet. They are drawn rather than elements of the page, which the page
/// would take longer to move than the whole drawing takes.
pub fn draw(places: &[(usize, Part, DVec2)], feature: usize, strip: &Strip, sheet: &mut Sheet) {
    for &(_, _, p) in places.iter().filter(|p| p.0 == feature) {
        if !strip.shows(p.x, p.x) {
            continue;
        }
        let at = strip.place(p);
        let corners = [DVec2::Y, DVec2::X, -DVec2::Y, -DVec2::X, DVec2::Y];
        let corners = corners.map(|way| at + way * HALF);
        sheet.area(Ink::Chosen, corners);
        sheet.line(Ink::Figure, LINE, corners);
    }
}

/// One feature's grips on the strips that show them.
pub fn shown(places: &[(usize, Part, DVec2)], feature: usize, strips: &[Strip]) -> Vec<Grip> {
    let own = places.iter().filter(|p| p.0 == feature);
    own.filter_map(|&(_, part, p)| {
        let strip = strips.iter().find(|s| s.shows(p.x, p.x))?;
        let at = strip.place(p);
        Some(Grip {
            part,
            x: at.x,
            y: at.y,
            scale: strip.scale,
        })
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use sim::plan::demo;

    #[test]
    fn every_part_that_is_built_has_its_grip_on_the_ground() {
        let plan = demo();
        let profile = Profile::build(&plan).unwrap();
        let places = places(&plan, &profile);
        let count = |part| places.iter().filter(|p| p.1 == part).count();
        assert_eq!(
            [Part::Platform, Part::Top, Part::Lip, Part::Knuckle].map(count),
            [1, 1, 3, 3]
        );
        for (_, part, p) in &places {
            let ground = profile.height_at(p.x).unwrap();
            assert!((ground - p.y).abs() < 1e-6, "{part:?} {p} {ground}");
        }
    }
}
