//! The sheet: marks in the order they are laid down.

use glam::DVec2;
use std::ops::Range;

/// What a mark stands for; the pen turns it into a colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ink {
    /// The line that is ridden.
    Ground,
    /// Hatching of earth.
    Hatch,
    /// Earth moved by hand, as a wash between the line and the yard.
    Built,
    /// Boards and posts.
    Wood,
    /// Blades of grass.
    Grass,
    /// The yard before digging.
    Yard,
    /// The wheels' way through the air.
    Flight,
    /// The same on the ride before the last change.
    Before,
    /// The feature that is being edited.
    Chosen,
    /// Figures and leaders.
    Figure,
    /// Names.
    Name,
    /// Frame and fork.
    Frame,
    /// Tyres and spokes.
    Tyre,
    /// The rider's near side.
    Rider,
    /// The rider's far side.
    Far,
    /// Helmet and pads.
    Pads,
    /// A rider beside the one that the line is for.
    Pale,
    /// The line of total head.
    Energy,
    /// The paper itself, over what it hides.
    Paper,
    /// A shadow on the ground.
    Shade,
    /// Dust thrown up.
    Dust,
    /// Ground with grass on it, filled.
    Lawn,
    /// Earth, filled.
    Earth,
    /// Leaves of trees, filled.
    Leaf,
    /// The rider's far leg.
    Behind,
}

impl Ink {
    /// Every ink, in the order in which the pen keeps its colours.
    pub const ALL: [Ink; 25] = [
        Ink::Ground,
        Ink::Hatch,
        Ink::Built,
        Ink::Wood,
        Ink::Grass,
        Ink::Yard,
        Ink::Flight,
        Ink::Before,
        Ink::Chosen,
        Ink::Figure,
        Ink::Name,
        Ink::Frame,
        Ink::Tyre,
        Ink::Rider,
        Ink::Far,
        Ink::Pads,
        Ink::Pale,
        Ink::Energy,
        Ink::Paper,
        Ink::Shade,
        Ink::Dust,
        Ink::Lawn,
        Ink::Earth,
        Ink::Leaf,
        Ink::Behind,
    ];
}

/// A piece of writing, which the page supplies in the reader's words and units.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Label {
    /// The name of a feature, by its place in the line.
    Feature(usize),
    /// The speed at a lip, the figure alone.
    Speed(usize),
    /// The range that this speed may lie in.
    Range(usize),
    /// The unit of both.
    Unit,
    /// A measure of the chosen feature, by its place among them.
    Dimension(usize),
    /// What the line of total head is called.
    Energy,
    /// What is other about a ride that is shown pale beside this one, by its place among them.
    Ghost(usize),
    /// The name of another rider of the plan, by their place among these.
    Other(usize),
    /// The name of the line, over a picture of it.
    Title,
    /// A line of writing round a picture, by its place.
    Caption(usize),
}

impl Label {
    /// Whether it is written in bold type.
    pub fn is_bold(self) -> bool {
        matches!(self, Label::Speed(_) | Label::Title)
    }
}

/// Which side of its place a label stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    /// It ends there.
    Left,
    /// Its middle is there.
    Middle,
    /// It begins there.
    Right,
}

/// One mark.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// A line through points of the sheet.
    Line {
        /// Colour.
        ink: Ink,
        /// Width, px.
        width: f64,
        /// Whether it is broken.
        dashed: bool,
        /// Which of the sheet's points.
        points: Range<usize>,
    },
    /// A filled outline.
    Area {
        /// Colour.
        ink: Ink,
        /// Which of the sheet's points.
        points: Range<usize>,
    },
    /// A circle.
    Ring {
        /// Colour.
        ink: Ink,
        /// Width of its line, px; 0 fills it.
        width: f64,
        /// Centre, px.
        centre: DVec2,
        /// Radius, px.
        radius: f64,
    },
    /// A label.
    Text {
        /// Colour.
        ink: Ink,
        /// Height of the type, px.
        size: f64,
        /// Place on the base line, px.
        at: DVec2,
        /// Side of the place.
        align: Align,
        /// What it says.
        label: Label,
    },
}

impl Mark {
    /// Whether both are lines, or leaves, that a pen can draw in one go. Leaves all run round the same way, so
    /// that two of them never make a hole.
    pub fn alike(&self, other: &Mark) -> bool {
        let look = |mark: &Mark| match *mark {
            Mark::Line {
                ink, width, dashed, ..
            } => Some((ink, width, dashed)),
            Mark::Area { ink: Ink::Leaf, .. } => Some((Ink::Leaf, 0.0, false)),
            _ => None,
        };
        look(self).is_some() && look(self) == look(other)
    }

    /// The points it runs through, if any.
    pub fn points(&self) -> Range<usize> {
        match self {
            Mark::Line { points, .. } | Mark::Area { points, .. } => points.clone(),
            Mark::Ring { .. } | Mark::Text { .. } => 0..0,
        }
    }
}

/// How far a point may lie off the line between its neighbours to be none of its own, px.
const STRAIGHT: f64 = 0.1;

/// Whether `b` lies on the way from `a` to `c`.
fn between(a: DVec2, b: DVec2, c: DVec2) -> bool {
    let (way, to) = (c - a, b - a);
    let onward = to.dot(way);
    onward >= 0.0
        && onward <= way.length_squared()
        && way.perp_dot(to).abs() <= STRAIGHT * way.length()
}

/// Marks and the points they run through. It is cleared and filled again for every picture, so
/// that its memory is used again.
#[derive(Debug, Default)]
pub struct Sheet {
    /// The marks, lowest first.
    pub marks: Vec<Mark>,
    /// The points of lines and areas, px.
    pub points: Vec<DVec2>,
}

impl Sheet {
    /// Takes everything off.
    pub fn clear(&mut self) {
        self.marks.clear();
        self.points.clear();
    }

    /// Gives every mark from the `from`th on one colour.
    pub fn repaint(&mut self, from: usize, with: Ink) {
        for mark in self.marks.iter_mut().skip(from) {
            match mark {
                Mark::Line { ink, .. }
                | Mark::Area { ink, .. }
                | Mark::Ring { ink, .. }
                | Mark::Text { ink, .. } => *ink = with,
            }
        }
    }

    /// A line through points.
    pub fn line(&mut self, ink: Ink, width: f64, points: impl IntoIterator<Item = DVec2>) {
        self.stroke(ink, width, false, points);
    }

    /// A broken line through points.
    pub fn dashes(&mut self, ink: Ink, width: f64, points: impl IntoIterator<Item = DVec2>) {
        self.stroke(ink, width, true, points);
    }

    /// A filled outline.
    pub fn area(&mut self, ink: Ink, points: impl IntoIterator<Item = DVec2>) {
        let points = self.add(points);
        if points.len() > 2 {
            self.marks.push(Mark::Area { ink, points });
        }
    }

    /// A circle's line.
    pub fn ring(&mut self, ink: Ink, width: f64, centre: DVec2, radius: f64) {
        self.marks.push(Mark::Ring {
            ink,
            width,
            centre,
            radius,
        });
    }

    /// A filled circle.
    pub fn disc(&mut self, ink: Ink, centre: DVec2, radius: f64) {
        self.ring(ink, 0.0, centre, radius);
    }

    /// A label.
    pub fn text(&mut self, ink: Ink, size: f64, at: DVec2, align: Align, label: Label) {
        self.marks.push(Mark::Text {
            ink,
            size,
            at,
            align,
            label,
        });
    }

    fn stroke(
        &mut self,
        ink: Ink,
        width: f64,
        dashed: bool,
        points: impl IntoIterator<Item = DVec2>,
    ) {
        let points = self.add(points);
        if points.len() > 1 {
            self.marks.push(Mark::Line {
                ink,
                width,
                dashed,
                points,
            });
        }
    }

    /// Takes points down, but for those that lie between their neighbours anyhow.
    fn add(&mut self, points: impl IntoIterator<Item = DVec2>) -> Range<usize> {
        let from = self.points.len();
        for p in points {
            if let [.., a, b] = self.points[from..]
                && between(a, b, p)
            {
                self.points.pop();
            }
            self.points.push(p);
        }
        from..self.points.len()
    }
}
