//! A text as a QR code (ISO/IEC 18004), for a phone that is held in front of another.

use qrcodegen::{QrCode, QrCodeEcc, QrSegment};
use serde::Serialize;
use std::fmt::Write;

/// Light modules around the code, without which no reader finds it (ISO/IEC 18004, quiet zone).
const QUIET: i32 = 4;

/// A QR code as the outline of its dark modules; one module is one unit.
#[derive(Debug, Serialize)]
pub struct Code {
    /// Width and height, with the quiet zone.
    pub side: i32,
    /// The dark modules, as the path of an SVG.
    pub path: String,
}

impl Code {
    /// The code of a text; `None` where the text is longer than any code can hold.
    ///
    /// A screen has neither dirt nor scratches, so the lowest correction is asked for: fewer modules
    /// are larger ones. Where a higher correction needs no more modules, it is taken.
    pub fn of(text: &str) -> Option<Self> {
        let code =
            QrCode::encode_segments(&[QrSegment::make_bytes(text.as_bytes())], QrCodeEcc::Low)
                .ok()?;
        let size = code.size();
        let mut path = String::new();
        for y in 0..size {
            let mut x = 0;
            while x < size {
                let run = (x..size).take_while(|&x| code.get_module(x, y)).count() as i32;
                if run > 0 {
                    let (left, top) = (x + QUIET, y + QUIET);
                    // Writing to a text cannot fail.
                    let _ = write!(path, "M{left} {top}h{run}v1h-{run}z");
                }
                x += run + 1;
            }
        }
        let side = size + 2 * QUIET;
        Some(Self { side, path })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use sim::link;
    use sim::plan::{self, Line};

    /// Pixels to a module: about what a phone of 360 px gives a code of a long link.
    const PIXELS: usize = 3;

    /// Every text that a decoder of other authors finds in a code, its path drawn in pixels.
    fn read(code: &Code) -> Vec<String> {
        let side = code.side as usize;
        let mut dark = vec![false; side * side];
        for run in code.path.split('M').skip(1) {
            let (at, rest) = run.split_once('h').unwrap();
            let (x, y) = at.split_once(' ').unwrap();
            let (x, y): (usize, usize) = (x.parse().unwrap(), y.parse().unwrap());
            let (length, _) = rest.split_once('v').unwrap();
            let from = y * side + x;
            dark[from..from + length.parse::<usize>().unwrap()].fill(true);
        }
        let pixels = side * PIXELS;
        let grey = |x: usize, y: usize| {
            let module = y / PIXELS * side + x / PIXELS;
            if dark[module] { 0 } else { 255 }
        };
        let mut image = rqrr::PreparedImage::prepare_from_greyscale(pixels, pixels, grey);
        let grids = image.detect_grids();
        grids
            .iter()
            .filter_map(|g| g.decode().ok().map(|(_, text)| text))
            .collect()
    }

    fn address(plan: &plan::Plan) -> String {
        format!("http://127.0.0.1:7327/a/folder/#{}", link::encode(plan))
    }

    #[test]
    fn the_link_of_the_demonstration_is_read_back() {
        let text = address(&plan::demo());
        let code = Code::of(&text).unwrap();
        println!("{} characters, {} modules", text.len(), code.side);
        assert_eq!(read(&code), [text]);
    }

    #[test]
    fn a_long_line_fits_and_is_read_back() {
        let mut plan = plan::demo();
        if let Line::Features(features) = &mut plan.line {
            let middle: Vec<_> = features[1..features.len() - 1].to_vec();
            while features.len() + middle.len() <= 60 {
                features.splice(1..1, middle.clone());
            }
        }
        let text = address(&plan);
        let code = Code::of(&text).unwrap();
        println!("{} characters, {} modules", text.len(), code.side);
        assert_eq!(read(&code), [text]);
    }

    /// ISO/IEC 18004: 2953 bytes in version 40 at the lowest correction, and no more.
    #[test]
    fn what_no_code_can_hold_is_refused() {
        assert!(Code::of(&"x".repeat(2953)).is_some());
        assert!(Code::of(&"x".repeat(2954)).is_none());
    }
}
