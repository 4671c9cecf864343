//! A picture's shades, to look into.

use anyhow::{Context, Result};
use std::io::Cursor;

/// A PNG in shades of grey: width, height and the shades, row by row.
pub fn shades(png: &[u8]) -> Result<(usize, usize, Vec<u8>)> {
    let mut decoder = png::Decoder::new(Cursor::new(png));
    decoder.set_transformations(png::Transformations::normalize_to_color8());
    let mut reader = decoder.read_info()?;
    let mut bytes = vec![0; reader.output_buffer_size().context("a picture too large")?];
    let frame = reader.next_frame(&mut bytes)?;
    let samples = frame.color_type.samples();
    let pixels = bytes[..frame.buffer_size()].chunks(samples);
    // The green of a pixel tells dark from light well enough.
    let shades = pixels.map(|p| p[if samples > 2 { 1 } else { 0 }]).collect();
    Ok((frame.width as usize, frame.height as usize, shades))
}
