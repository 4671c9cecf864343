//! The pen that writes: a sheet as an SVG picture (W3C, Scalable Vector Graphics 1.1), which stands
//! by itself in any program that shows pictures.

use super::colours::Colours;
use super::{DASHES, HALO};
use crate::scene::{Align, Label, Labels, Mark, Sheet};
use glam::DVec2;
use sim::units::decimals;

/// What writes into a text; it cannot fail.
type Out<'a> = &'a mut String;

/// A sheet of `size` px as a picture with a title, and a text for whoever cannot see it.
pub fn write(sheet: &Sheet, labels: &Labels, size: DVec2, ink: &Colours, told: &str) -> String {
    let size = size.to_array().map(|side| decimals(side, 0));
    whole(sheet, labels, [&size, &size], ink, told)
}

/// Pixels to the inch of pictures (W3C, CSS Values and Units 3, absolute lengths), and millimetres to it.
#[cfg(any(feature = "shed", not(target_arch = "wasm32")))]
const INCH: [f64; 2] = [96.0, 25.4];

/// Pixels of a picture in full size to the metre.
#[cfg(any(feature = "shed", not(target_arch = "wasm32")))]
pub const FULL_SIZE: f64 = INCH[0] * 1000.0 / INCH[1];

/// The same with its size in mm, for paper: what is [`FULL_SIZE`] px long is a metre long when it is printed.
#[cfg(any(feature = "shed", not(target_arch = "wasm32")))]
pub fn write_full_size(sheet: &Sheet, labels: &Labels, size: DVec2, ink: &Colours) -> String {
    let view = size.to_array().map(|side| decimals(side, 3));
    let on_paper = (size * INCH[1] / INCH[0]).to_array();
    let on_paper = on_paper.map(|side| decimals(side, 3) + "mm");
    whole(sheet, labels, [&on_paper, &view], ink, "")
}

/// A picture with its size as written, and the part of the sheet that it shows.
fn whole(
    sheet: &Sheet,
    labels: &Labels,
    [[wide, high], [w, h]]: [&[String; 2]; 2],
    ink: &Colours,
    told: &str,
) -> String {
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{wide}\" height=\"{high}\" viewBox=\"0 0 {w} {h}\" \
         role=\"img\" fill=\"none\" stroke-linecap=\"round\" stroke-linejoin=\"round\" \
         font-family=\"system-ui, sans-serif\">\n<title>"
    );
    escape(labels.text(Label::Title), &mut out);
    out.push_str("</title>\n<desc>");
    escape(told, &mut out);
    out.push_str("</desc>\n<rect width=\"100%\" height=\"100%\"");
    paint("fill", &ink.paper, &mut out);
    out.push_str("/>\n");
    for marks in sheet.marks.chunk_by(Mark::alike) {
        draw(marks, sheet, labels, ink, &mut out);
    }
    out.push_str("</svg>\n");
    out
}

/// Lines that are alike, or one other mark.
fn draw(marks: &[Mark], sheet: &Sheet, labels: &Labels, colours: &Colours, out: Out) {
    match &marks[0] {
        Mark::Line {
            ink, width, dashed, ..
        } => {
            out.push_str("<path d=\"");
            for mark in marks {
                if let Mark::Line { points, .. } = mark {
                    path(&sheet.points[points.clone()], out);
                }
            }
            out.push('"');
            stroke(colours.of(*ink), *width, out);
            if *dashed {
                attribute(
                    "stroke-dasharray",
                    &DASHES.map(|d| decimals(d, 0)).join(" "),
                    out,
                );
            }
            out.push_str("/>\n");
        }
        Mark::Area { ink, points } => {
            out.push_str("<path d=\"");
            path(&sheet.points[points.clone()], out);
            out.push('"');
            paint("fill", colours.of(*ink), out);
            out.push_str("/>\n");
        }
        Mark::Ring {
            ink,
            width,
            centre,
            radius,
        } => {
            out.push_str("<circle");
            number("cx", centre.x, out);
            number("cy", centre.y, out);
            number("r", *radius, out);
            if *width > 0.0 {
                stroke(colours.of(*ink), *width, out);
            } else {
                paint("fill", colours.of(*ink), out);
            }
            out.push_str("/>\n");
        }
        mark @ Mark::Text { ink, label, .. } => {
            if labels.text(*label).is_empty() {
                return;
            }
            // Twice: few programs know how to lay a broad edge under the letters it belongs to.
            text(mark, labels, out, |out| {
                out.push_str(" aria-hidden=\"true\"");
                stroke(&colours.paper, HALO, out);
            });
            text(mark, labels, out, |out| {
                paint("fill", colours.of(*ink), out)
            });
        }
    }
}

fn path(points: &[DVec2], out: Out) {
    for (i, p) in points.iter().enumerate() {
        let letter = if i == 0 { 'M' } else { 'L' };
        out.push(letter);
        out.push_str(&decimals(p.x, 1));
        out.push(' ');
        out.push_str(&decimals(p.y, 1));
    }
}

fn text(mark: &Mark, labels: &Labels, out: Out, dress: impl FnOnce(Out)) {
    let Mark::Text {
        size,
        at,
        align,
        label,
        ..
    } = mark
    else {
        return;
    };
    out.push_str("<text");
    number("x", at.x, out);
    number("y", at.y, out);
    number("font-size", *size, out);
    out.push_str(match align {
        Align::Left => " text-anchor=\"end\"",
        Align::Middle => " text-anchor=\"middle\"",
        Align::Right => "",
    });
    if label.is_bold() {
        out.push_str(" font-weight=\"700\"");
    }
    dress(out);
    out.push('>');
    escape(labels.text(*label), out);
    out.push_str("</text>\n");
}

fn stroke(colour: &str, width: f64, out: Out) {
    paint("stroke", colour, out);
    number("stroke-width", width, out);
}

fn attribute(name: &str, value: &str, out: Out) {
    for part in [" ", name, "=\"", value, "\""] {
        out.push_str(part);
    }
}

fn number(name: &str, value: f64, out: Out) {
    attribute(name, &decimals(value, 1), out);
}

/// A colour; its last two digits of eight are its opacity, which older programs want by itself.
fn paint(what: &str, colour: &str, out: Out) {
    let digits = colour.get(7..9).filter(|_| colour.len() == 9);
    let opacity = digits.and_then(|o| u8::from_str_radix(o, 16).ok());
    attribute(
        what,
        colour
            .get(..7)
            .filter(|_| opacity.is_some())
            .unwrap_or(colour),
        out,
    );
    if let Some(opacity) = opacity {
        let share = decimals(f64::from(opacity) / 255.0, 2);
        attribute(
            if what == "fill" {
                "fill-opacity"
            } else {
                "stroke-opacity"
            },
            &share,
            out,
        );
    }
}

/// A text as XML takes it: marks of its own written out, characters it forbids replaced (W3C, XML
/// 1.0, production 2).
fn escape(text: &str, out: Out) {
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '\t' | '\n' | '\r' => out.push(' '),
            '\0'..'\u{20}' | '\u{fffe}' | '\u{ffff}' => out.push('\u{fffd}'),
            c => out.push(c),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::{Caption, Picture, Poster};
    use roxmltree::Document;
    use sim::error::Quantity;
    use sim::judge;
    use sim::plan;
    use sim::setup::ride_plan;
    use sim::units::{System, format};

    const STYLE: &str = include_str!("../../../www/style.css");

    /// The page's own colours by day.
    fn colours() -> Colours {
        let value = |name: &str| {
            let (_, rest) = STYLE
                .split_once(&format!("{name}: "))
                .ok_or(name.to_owned())?;
            rest.split(';')
                .next()
                .map(str::to_owned)
                .ok_or(name.to_owned())
        };
        Colours::named(value).expect("the page's style names a colour for every ink")
    }

    /// The demonstration as a picture, and the speeds that stand on it.
    fn picture(name: &str) -> (String, Vec<String>) {
        let plan = plan::demo();
        let ridden = ride_plan(&plan, 0).unwrap();
        let rows = judge::jumps(&ridden.profile, &ridden.run);
        let speed = |v| format(v, Quantity::Speed, System::Metric);
        let speeds: Vec<_> = rows.iter().map(|r| speed(r.speed.unwrap())).collect();
        let labels = serde_json::json!({
            "features": [], "speeds": speeds, "ranges": [], "dimensions": [], "unit": "", "energy": "", "ghosts": [],
        });
        let labels: Labels = serde_json::from_value(labels).unwrap();
        let caption = Caption {
            title: name,
            above: "It went <well> & truly.",
            below: "Worked out, not measured.",
        };
        let size = DVec2::new(1200.0, 630.0);
        let picture = Picture::new(&plan, vec![ridden]).unwrap();
        let poster = Poster::new(&picture, size, &labels, &caption);
        let svg = write(&poster.sheet, &poster.labels, size, &colours(), "In words.");
        (svg, speeds)
    }

    fn texts(svg: &Document) -> Vec<String> {
        let texts = svg.descendants().filter(|n| n.has_tag_name("text"));
        let seen = texts.filter(|n| n.attribute("aria-hidden").is_none());
        seen.filter_map(|n| n.text().map(str::to_owned)).collect()
    }

    #[test]
    fn it_is_xml_that_says_name_speeds_and_caution() {
        let (text, speeds) = picture("The orchard");
        let svg = Document::parse(&text).unwrap();
        println!("{} bytes", text.len());
        let said = texts(&svg);
        assert!(
            speeds.len() == 3 && speeds.iter().all(|v| said.contains(v)),
            "{said:?}"
        );
        for line in [
            "The orchard",
            "It went <well> & truly.",
            "Worked out, not measured.",
        ] {
            assert_eq!(
                said.iter().filter(|t| *t == line).count(),
                1,
                "{line} in {said:?}"
            );
        }
        let root = svg.root_element();
        let child = |name| {
            root.children()
                .find(|n| n.has_tag_name(name))
                .and_then(|n| n.text())
        };
        assert_eq!(child("title"), Some("The orchard"));
        assert_eq!(child("desc"), Some("In words."));
    }

    #[test]
    fn a_name_with_marks_of_xml_in_it_does_no_harm() {
        let name = "</text><script>\"&amp;\u{1}\u{ffff}";
        let (text, _) = picture(name);
        let svg = Document::parse(&text).unwrap();
        let read = "</text><script>\"&amp;\u{fffd}\u{fffd}".to_owned();
        assert!(texts(&svg).contains(&read), "{:?}", texts(&svg));
        assert!(!svg.descendants().any(|n| n.has_tag_name("script")));
    }

    #[test]
    fn every_colour_is_plain_and_every_place_a_number() {
        let (text, _) = picture("The orchard");
        let svg = Document::parse(&text).unwrap();
        let mut seen = 0;
        for node in svg.descendants().filter(roxmltree::Node::is_element) {
            for a in node.attributes() {
                if ["fill", "stroke"].contains(&a.name()) && a.value() != "none" {
                    let digits = a.value().strip_prefix('#').unwrap_or_default();
                    let plain = digits.len() == 6 && digits.chars().all(|c| c.is_ascii_hexdigit());
                    assert!(plain, "{}", a.value());
                    seen += 1;
                }
                assert!(
                    !a.value().contains("NaN") && !a.value().contains("inf"),
                    "{}",
                    a.value()
                );
            }
        }
        assert!(seen > 20, "{seen}");
    }
}
