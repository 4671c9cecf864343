//! The whole line as a picture by itself: its name over it, what became of the ride, the speeds at the
//! lips, and under it what the reader must know.

use super::labels::{self, Labels};
use super::picture::{Beside, Picture};
use super::seen::Seen;
use super::sheet::{Align, Ink, Label, Sheet};
use super::view::View;
use glam::DVec2;

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
#[derive(Clone, Copy, Debug)]
pub struct Caption<'a> {
    /// The name of the line.
    pub title: &'a str,
    /// Over the drawing; every line begins a new one there.
    pub above: &'a str,
    /// Under it.
    pub below: &'a str,
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
        let room = size.x - 2.0 * MARGIN;
        let mut labels = labels.clone();
        caption.title.clone_into(&mut labels.title);
        labels.captions.clear();
        wrap(caption.above, room, &mut labels.captions);
        let over = labels.captions.len();
        wrap(caption.below, room, &mut labels.captions);
        let under = labels.captions.len() - over;
        let head = MARGIN + TITLE + LEADING * over as f64 + ROOM;
        let foot = LEADING * under as f64 + 2.0 * ROOM;
        let seen = Seen {
            time: picture.longest_flight(),
            size: DVec2::new(size.x, (size.y - head - foot).max(1.0)),
            view: View::Whole,
            chosen: None,
            grips: false,
            held: None,
            zoom: 1.0,
            still: false,
        };
        let (mut strips, mut sheet) = (Vec::new(), Sheet::default());
        picture.strips(&seen, &mut strips);
        for strip in &mut strips {
            strip.origin.y += head;
            strip.top += head;
            strip.bottom += head;
        }
        picture.compose(&seen, &strips, Beside::default(), &labels, &mut sheet);
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

/// Breaks a text into lines that fit into `room` px.
fn wrap(text: &str, room: f64, lines: &mut Vec<String>) {
    for paragraph in text.lines() {
        let mut line = String::new();
        for word in paragraph.split_whitespace() {
            let wide = labels::width(&line, TYPE) + labels::width(word, TYPE);
            if !line.is_empty() {
                if wide < room {
                    line.push(' ');
                } else {
                    lines.push(core::mem::take(&mut line));
                }
            }
            line.push_str(word);
        }
        lines.push(line);
    }
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
        let mut lines = Vec::new();
        wrap(&format!("{text}\n{text}"), 120.0, &mut lines);
        assert!(lines.len() > 4, "{lines:?}");
        assert!(lines.iter().all(|l| labels::width(l, TYPE) < 120.0));
        assert_eq!(lines.join(" "), format!("{text} {text}"));
    }

    #[test]
    fn writing_and_drawing_keep_clear_of_each_other_and_of_the_edge() {
        let plan = plan::demo();
        let ridden = ride_plan(&plan, 0).unwrap();
        let picture = Picture::new(&plan, vec![ridden]).unwrap();
        let caption = Caption {
            title: "A name of sixty letters, which is the most that a plan takes",
            above: &format!("{}\nfew", "word ".repeat(60)),
            below: &"caution ".repeat(30),
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
