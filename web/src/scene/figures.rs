//! Figures and names, standing where they belong as dimensions stand on a sketch: the speed at a
//! lip under that lip, the name of a feature under the feature.

use super::labels::{self, Labels};
use super::land;
use super::sheet::{Align, Ink, Label, Sheet};
use super::view::{Strip, View};
use glam::DVec2;
use sim::profile::Profile;

/// Sizes and depths under the ground, px.
struct Type {
    figure: f64,
    figure_depth: f64,
    range: f64,
    name: f64,
    name_depth: f64,
}

impl Type {
    fn of(view: View) -> Self {
        match view {
            View::Follow => Self {
                figure: 32.0,
                figure_depth: 46.0,
                range: 13.0,
                name: 13.0,
                name_depth: 66.0,
            },
            View::Whole => Self {
                figure: 21.0,
                figure_depth: 36.0,
                range: 12.0,
                name: 12.0,
                name_depth: 64.0,
            },
        }
    }
}

/// Lays the speed at each lip on the sheet, with a leader up to the edge.
pub fn speeds(profile: &Profile, view: View, strip: &Strip, labels: &Labels, sheet: &mut Sheet) {
    let sizes = Type::of(view);
    for (i, lip) in profile.lips.iter().enumerate() {
        if lip.edge.x < strip.from || lip.edge.x > strip.to {
            continue;
        }
        let edge = strip.place(lip.edge);
        let ground = strip.place(DVec2::new(lip.edge.x, land::yard(profile, lip.edge.x)));
        let base = under(
            ground,
            sizes.figure_depth,
            strip,
            sizes.name_depth - sizes.figure_depth,
        );
        let base = match view {
            // A figure that is cut off reads as another one: at the sheet's edges it waits for its lip.
            View::Follow => DVec2::new(inside(base.x, i, &sizes, labels, strip), base.y),
            View::Whole => base,
        };
        let top = base - DVec2::new(0.0, 0.85 * sizes.figure);
        sheet.line(Ink::Figure, 1.0, [edge - DVec2::new(0.0, 9.0), top]);
        sheet.disc(Ink::Figure, edge, 3.2);
        let (figure, unit) = (Label::Speed(i), Label::Unit);
        if view == View::Whole {
            // Close together, figures have no room for their unit.
            sheet.text(Ink::Figure, sizes.figure, base, Align::Middle, figure);
            let below = base + DVec2::new(0.0, sizes.range);
            sheet.text(
                Ink::Name,
                sizes.range,
                below,
                Align::Middle,
                Label::Range(i),
            );
            continue;
        }
        let beside = base + DVec2::new(4.0, 0.0);
        sheet.text(Ink::Figure, sizes.figure, base, Align::Left, figure);
        sheet.text(Ink::Name, sizes.range, beside, Align::Right, unit);
        let above = beside - DVec2::new(0.0, 1.1 * sizes.range);
        sheet.text(Ink::Name, sizes.range, above, Align::Right, Label::Range(i));
    }
}

/// The place nearest to `x` at which a lip's figure, unit and range stand wholly on the strip, px.
fn inside(x: f64, lip: usize, sizes: &Type, labels: &Labels, strip: &Strip) -> f64 {
    let wide = |label, size| labels::width(labels.text(label), size);
    let beside = wide(Label::Range(lip), sizes.range).max(wide(Label::Unit, sizes.range));
    let from = strip.place(DVec2::new(strip.from, 0.0)).x + wide(Label::Speed(lip), sizes.figure);
    let to = strip.place(DVec2::new(strip.to, 0.0)).x - beside - 8.0;
    x.min(to).max(from)
}

/// A place so far under the ground, but on the sheet, with room for what stands lower still.
fn under(ground: DVec2, depth: f64, strip: &Strip, lower: f64) -> DVec2 {
    DVec2::new(ground.x, (ground.y + depth).min(strip.bottom - 6.0 - lower))
}

/// Lays the names of the features on the sheet, where they fit.
pub fn names(profile: &Profile, view: View, strip: &Strip, labels: &Labels, sheet: &mut Sheet) {
    let sizes = Type::of(view);
    for span in &profile.spans {
        let label = Label::Feature(span.feature);
        let (from, to) = (span.from.x.max(strip.from), span.to.x.min(strip.to));
        let room = (to - from) * strip.scale;
        let most_of_it = (to - from) > 0.5 * (span.to.x - span.from.x);
        if to <= from || !most_of_it || !labels.fits(label, sizes.name, room) {
            continue;
        }
        let x = (from + to) * 0.5;
        let ground = strip.place(DVec2::new(x, land::yard(profile, x)));
        let at = under(ground, sizes.name_depth, strip, 0.0);
        sheet.text(Ink::Name, sizes.name, at, Align::Middle, label);
    }
}
