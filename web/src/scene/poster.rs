//! The whole line as a picture by itself: its name over it, what became of the ride, the speeds at the
//! lips, and under it what the reader must know.

use super::labels::{self, Labels};
use super::picture::{Picture, Seen};
use super::sheet::{Align, Ink, Label, Sheet};
use super::view::View;
use glam::DVec2;
use serde::Deserialize;

/// Margin to the left and right of the writing, px.
const MARGIN: f64 = 24.0;
/// Height of the title's type at most, px.
const TITLE: f64 = 34.0;
/// Height of the rest's type, px.
const TYPE: f64 = 17.0;
/// From one line of the rest to the next, px.
const LEADING: f64 = 23.0;
/// Room between the writing and the drawing, px.
const ROOM: f64 = 10.0;

/// What is written round the line, in the reader's words.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Caption {
    /// The name of the line.
    pub title: String,
    /// Over the drawing, paragraph by paragraph.
    pub above: Vec<String>,
    /// Under it.
    pub below: String,
}

/// Such a picture, ready for a pen.
#[derive(Debug)]
pub struct Poster {
    /// The marks.
    pub sheet: Sheet,
    /// What they say.
    pub labels: Labels,
}

impl Poster {
    /// A picture of `size` px: the rider hangs over the jump that takes longest.
    pub fn new(picture: &Picture, size: DVec2, labels: &Labels, caption: &Caption) -> Self {
        let wrap = |text: &String| wrap(text, TYPE, size.x - 2.0 * MARGIN);
        let above: Vec<_> = caption.above.iter().flat_map(wrap).collect();
        let below = wrap(&caption.below);
        let (over, under) = (above.len(), below.len());
        let mut labels = labels.clone();
        labels.title.clone_from(&caption.title);
        labels.captions = above.into_iter().chain(below).collect();
        let head = MARGIN + TITLE + LEADING * over as f64 + ROOM;
        let foot = LEADING * under as f64 + 2.0 * ROOM;
        let seen = Seen {
            time: picture.longest_flight(),
            size: DVec2::new(size.x, (size.y - head - foot).max(1.0)),
            view: View::Whole,
            chosen: None,
        };
        let (mut strips, mut sheet) = (Vec::new(), Sheet::default());
        picture.strips(&seen, &mut strips);
        for strip in &mut strips {
            strip.origin.y += head;
            strip.top += head;
            strip.bottom += head;
        }
        picture.compose(&seen, &strips, None, &labels, &mut sheet);
        write(&labels, size, over, &mut sheet);
        Self { sheet, labels }
    }
}

/// Lays the writing on the sheet: the first `over` lines over the drawing, the others at its foot.
fn write(labels: &Labels, size: DVec2, over: usize, sheet: &mut Sheet) {
    let fits = (size.x - 2.0 * MARGIN) / labels::width(&labels.title, 1.0).max(1.0);
    let base = MARGIN + 0.75 * TITLE;
    let at = |y| DVec2::new(MARGIN, y);
    let title = TITLE.min(fits);
    sheet.text(Ink::Ground, title, at(base), Align::Right, Label::Title);
    let lines = labels.captions.len();
    for i in 0..lines {
        let (ink, y) = if i < over {
            (Ink::Ground, base + LEADING * (i + 1) as f64 + 4.0)
        } else {
            let last = size.y - 1.5 * ROOM;
            (Ink::Name, last - LEADING * (lines - 1 - i) as f64)
        };
        sheet.text(ink, TYPE, at(y), Align::Right, Label::Caption(i));
    }
}

/// A text in lines that fit into `room` px.
fn wrap(text: &str, size: f64, room: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if labels::width(line, size) + labels::width(word, size) < room => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::Mark;
    use sim::plan;
    use sim::setup::ride_plan;

    #[test]
    fn lines_are_broken_between_words_and_nothing_is_lost() {
        let text = "one two three four five six seven";
        let lines = wrap(text, 10.0, 80.0);
        assert!(lines.len() > 2, "{lines:?}");
        assert!(lines.iter().all(|l| labels::width(l, 10.0) < 80.0));
        assert_eq!(lines.join(" "), text);
    }

    #[test]
    fn writing_and_drawing_keep_clear_of_each_other_and_of_the_edge() {
        let plan = plan::demo();
        let ridden = ride_plan(&plan, 0).unwrap();
        let picture = Picture::new(&plan, vec![ridden]).unwrap();
        let caption = Caption {
            title: "A name of sixty letters, which is the most that a plan takes".to_owned(),
            above: vec!["word ".repeat(60), "few".to_owned()],
            below: "caution ".repeat(30),
        };
        let size = DVec2::new(1200.0, 630.0);
        let Poster { sheet, labels } = Poster::new(&picture, size, &Labels::default(), &caption);
        let (mut above, mut below) = (0.0, size.y);
        let mut texts = 0;
        for mark in &sheet.marks {
            let Mark::Text {
                size: type_size,
                at,
                label,
                ..
            } = *mark
            else {
                continue;
            };
            if !matches!(label, Label::Title | Label::Caption(_)) {
                continue;
            }
            texts += 1;
            assert!(
                at.x + labels::width(labels.text(label), type_size) < size.x,
                "{label:?}"
            );
            assert!(at.y > 0.0 && at.y < size.y);
            if at.y < 0.5 * size.y {
                above = f64::max(above, at.y);
            } else {
                below = f64::min(below, at.y - type_size);
            }
        }
        assert!(texts > 5, "{texts}");
        let line: Vec<_> = sheet
            .marks
            .iter()
            .filter_map(|mark| match mark {
                Mark::Line {
                    ink: Ink::Ground,
                    points,
                    ..
                } => Some(points.clone()),
                _ => None,
            })
            .flat_map(|points| &sheet.points[points])
            .collect();
        assert!(line.len() > 50);
        assert!(
            line.iter()
                .all(|p| p.y > above && p.y < below && p.x > 0.0 && p.x < size.x)
        );
    }
}
