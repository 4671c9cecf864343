//! The same plan gives the same bits in every browser as it does natively.

use anyhow::{Result, ensure};
use browser::{Engine, Ground, Screen};
use tests::golden::{digests, links};

/// Rides every plan of the list in the page's own simulator; a line for each ride, as the list has it.
const RIDE_ALL: &str = "
    const app = document.querySelector('script[type=module]').src;
    return import(new URL('carryline.js', app)).then(async ({ default: init, open, ride }) => {
        // A driver's script may get modules of its own; where it shares the page's this does nothing.
        await init();
        const lines = [];
        links.forEach((link, i) => {
            const { plan } = open(link);
            plan.riders.forEach((rider, number) => {
                const riding = ride({ ...plan, riders: [rider, ...plan.riders.filter((r) => r !== rider)] });
                const { digest, columns, trace } = riding.story();
                riding.free();
                lines.push([i, number, trace.length / columns.length, digest].join(' '));
            });
        });
        return lines;
    });";

fn same_bits(ground: &Ground, engine: Engine) -> Result<()> {
    let script = format!(
        "const links = {};{RIDE_ALL}",
        serde_json::to_string(&links())?
    );
    let got: Vec<String> = ground.visit_in(engine, Screen::Desk, "", async |page| {
        page.ask(&script).await
    })?;
    let kept = digests();
    let kept: Vec<&str> = kept.lines().collect();
    println!("{engine:?}: {} rides of {} plans", got.len(), links().len());
    ensure!(
        got.len() == kept.len() && links().len() >= 50,
        "not every plan was ridden"
    );
    let other: Vec<_> = got.iter().zip(&kept).filter(|(a, b)| a != b).collect();
    ensure!(other.is_empty(), "{engine:?} gives other bits: {other:#?}");
    Ok(())
}

pub fn in_chromium(ground: &Ground) -> Result<()> {
    same_bits(ground, Engine::Chromium)
}

pub fn in_firefox(ground: &Ground) -> Result<()> {
    same_bits(ground, Engine::Firefox)
}

pub fn in_webkit(ground: &Ground) -> Result<()> {
    same_bits(ground, Engine::WebKit)
}
