//! Printed pages as pictures: kept to be looked at, and looked into.

use anyhow::{Context, Result, ensure};
use browser::shades;
use std::fs;
use std::process::Command;

/// Pixels to the inch: enough to see a hair line.
const DENSITY: f64 = 80.0;

/// What stays white along every edge, mm: printers cannot do with less.
const WHITE: f64 = 5.0;

/// A page in shades of grey: width, height, row by row.
pub type Shades = (usize, usize, Vec<u8>);

/// The pages of a PDF; their pictures are kept under `tests/out` with a name.
pub fn pages(pdf: &[u8], name: &str) -> Result<Vec<Shades>> {
    let folder = tests::repository().join("tests/out");
    fs::create_dir_all(&folder)?;
    for entry in fs::read_dir(&folder)? {
        let path = entry?.path();
        let old = path
            .file_name()
            .and_then(|n| n.to_str())
            .unwrap_or_default();
        if old.starts_with(&format!("{name}-")) {
            fs::remove_file(path)?;
        }
    }
    let file = folder.join(format!("{name}.pdf"));
    fs::write(&file, pdf)?;
    let drawn = Command::new("pdftoppm")
        .args(["-png", "-r", &DENSITY.to_string()])
        .arg(&file)
        .arg(folder.join(name))
        .status()
        .context("pdftoppm")?;
    ensure!(drawn.success(), "{name} is no PDF");
    let mut pictures: Vec<_> = fs::read_dir(&folder)?.collect::<Result<_, _>>()?;
    pictures.retain(|entry| {
        let path = entry.file_name();
        let path = path.to_string_lossy();
        path.starts_with(&format!("{name}-")) && path.ends_with(".png")
    });
    pictures.sort_by_key(fs::DirEntry::path);
    pictures
        .iter()
        .map(|entry| shades(&fs::read(entry.path())?))
        .collect()
}

/// Nothing in the margins, which a printer would cut off, and something between them.
pub fn check((width, height, shades): &Shades) -> Result<()> {
    let edge = (WHITE / 25.4 * DENSITY) as usize;
    let dark = |x: usize, y: usize| shades[y * width + x] < 200;
    let mut ink = 0;
    for y in 0..*height {
        for x in 0..*width {
            if !dark(x, y) {
                continue;
            }
            ink += 1;
            let outer = x < edge || y < edge || x + edge >= *width || y + edge >= *height;
            ensure!(
                !outer,
                "ink at {x}, {y} of {width} by {height}: in the margin"
            );
        }
    }
    let share = f64::from(ink) / (width * height) as f64;
    ensure!(share > 0.002, "all but empty: {share:.4} of it is ink");
    ensure!(share < 0.3, "more ink than paper: {share:.2}");
    Ok(())
}
