//! Contact sheets: twelve moments of the ride on one picture, from both sides, by day and by night, for the
//! child and for the adult. Kept under `tests/out` to be looked at; `cargo test -p browser -- sheets` alone
//! writes them.

use anyhow::{Result, ensure};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use browser::{Ground, Screen};
use serde_json::json;
use sim::link;
use sim::plan::demo;
use std::collections::BTreeSet;
use std::fs;

/// Moments on a sheet, and how many stand beside each other.
const FRAMES: usize = 12;
const ACROSS: usize = 4;

fn sheet(ground: &Ground, rider: usize, night: bool) -> Result<()> {
    let mut plan = demo();
    plan.riders.rotate_left(rider);
    let who = ["child", "adult"][rider];
    let light = if night { "dark" } else { "light" };
    let tail = format!("#{}", link::encode(&plan));
    ground.visit(Screen::Phone, "", async |page| {
        let features = json!([{ "name": "prefers-color-scheme", "value": light }]);
        page.devtools(
            "Emulation.setEmulatedMedia",
            json!({ "features": features }),
        )
        .await?;
        page.go(&tail).await?;
        page.studied().await?;
        let duration = page.duration().await?;
        for (side, canvas) in [("side", "drawing"), ("saddle", "saddle")] {
            if canvas == "saddle" {
                page.click("#view").await?;
            }
            let mut seen = BTreeSet::new();
            for i in 0..FRAMES {
                page.seek(duration * (i as f64 + 0.5) / FRAMES as f64)
                    .await?;
                let taken: String = page.ask(&take(canvas, i)).await?;
                seen.insert(taken);
            }
            ensure!(
                seen.len() == FRAMES,
                "{} of {FRAMES} moments differ",
                seen.len()
            );
            let url: String = page.ask("return contact.toDataURL()").await?;
            let png = STANDARD.decode(url.rsplit(',').next().unwrap_or_default())?;
            let folder = tests::repository().join("tests/out");
            fs::create_dir_all(&folder)?;
            fs::write(folder.join(format!("sheet-{side}-{who}-{light}.png")), png)?;
        }
        Ok(())
    })
}

/// Copies a canvas to its place on the sheet; gives what was copied.
fn take(canvas: &str, index: usize) -> String {
    let (column, row) = (index % ACROSS, index / ACROSS);
    format!(
        "const c = document.getElementById('{canvas}'), w = c.clientWidth, h = c.clientHeight; \
         if ({index} === 0) {{ window.contact = document.createElement('canvas'); \
           contact.width = w * {ACROSS}; contact.height = h * {FRAMES} / {ACROSS}; }} \
         const pen = contact.getContext('2d'); \
         pen.fillStyle = getComputedStyle(document.body).backgroundColor; \
         pen.fillRect({column} * w, {row} * h, w, h); \
         pen.drawImage(c, {column} * w, {row} * h, w, h); \
         return c.toDataURL()"
    )
}

pub fn child_by_day(ground: &Ground) -> Result<()> {
    sheet(ground, 0, false)
}

pub fn child_by_night(ground: &Ground) -> Result<()> {
    sheet(ground, 0, true)
}

pub fn adult_by_day(ground: &Ground) -> Result<()> {
    sheet(ground, 1, false)
}

pub fn adult_by_night(ground: &Ground) -> Result<()> {
    sheet(ground, 1, true)
}
