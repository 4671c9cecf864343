//! What the page says of its own figures: their range, their model, their limits.

use anyhow::{Context, Result, ensure};
use browser::{Ground, Screen};
use sim::constants::MODEL_VERSION;
use sim::error::Quantity;
use sim::judge::{Dimension, Limit, Spread, Unknown, spreads, tolerances};
use sim::plan::{Feature, Line, Plan, demo};
use sim::units::{System, format};
use std::time::Duration;

/// A range as the table writes it, from the simulator without a browser.
fn written(spread: &Spread) -> Result<String> {
    let write = |speed: Option<f64>| {
        let speed = speed.context("a lip of the demonstration is never left")?;
        anyhow::Ok(format(speed, Quantity::Speed, System::Metric))
    };
    let (slowest, fastest) = (write(spread.slowest)?, write(spread.fastest)?);
    let slowest = slowest.split(' ').next().unwrap_or_default();
    Ok(format!("{slowest} to {fastest}"))
}

pub fn every_speed_has_its_range(ground: &Ground) -> Result<()> {
    let spreads =
        spreads(&demo(), 0, &Unknown::usual()).map_err(|faults| anyhow::anyhow!("{faults:?}"))?;
    let expected = spreads.iter().map(written).collect::<Result<Vec<_>>>()?;
    let [ranges, tries] = ground.visit(Screen::Phone, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        let known = "[...document.querySelectorAll('[data-what=range]')].every(e => e.innerText.includes('to'))";
        page.wait_for("the ranges", known).await?;
        Ok([
            page.texts("#lips [data-what=range]").await?,
            page.texts("#lips .tries").await?,
        ])
    })?;
    println!("ranges: {ranges:?}; {tries:?}");
    ensure!(
        ranges == expected,
        "the table says {ranges:?}, the simulator {expected:?}"
    );
    for (spread, said) in spreads.iter().zip(&tries) {
        let counts = format!("Clean in {} of {} what-ifs", spread.clean, spread.tried);
        ensure!(said.starts_with(&counts), "{said:?} is not {counts:?}");
    }
    ensure!(
        tries.len() == spreads.len(),
        "a jump has no what-ifs: {tries:?}"
    );
    Ok(())
}

pub fn a_change_gets_ranges_of_its_own(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        let known = "document.querySelector('#lips [data-what=range]').innerText.includes('to')";
        page.wait_for("the ranges", known).await?;
        let before = page.texts("#lips [data-what=range]").await?;
        page.click("#features [data-kind=start_ramp] .feature")
            .await?;
        page.fill("[data-field$=platform_height] input", "2.7 m")
            .await?;
        let other = format!(
            "{known} && document.querySelector('#lips [data-what=range]').innerText !== {:?}",
            before[0]
        );
        page.wait_for("other ranges", &other).await
    })
}

/// What is said on opening a link made with some version of the model.
fn said_of(ground: &Ground, version: u16) -> Result<String> {
    let link = format!("#{}", sim::link::encode_with(&demo(), version));
    ground.visit(Screen::Phone, &link, async |page| {
        page.ask("const m = document.getElementById('message'); return m.hidden ? '' : m.innerText")
            .await
    })
}

pub fn a_link_of_another_model_says_so(ground: &Ground) -> Result<()> {
    let older = said_of(ground, MODEL_VERSION - 1)?;
    ensure!(
        older.contains("may differ"),
        "of an older model is said {older:?}"
    );
    let newer = said_of(ground, MODEL_VERSION + 1)?;
    ensure!(
        newer.contains("newer ride model"),
        "of a newer model is said {newer:?}"
    );
    let same = said_of(ground, MODEL_VERSION)?;
    ensure!(same.is_empty(), "of the same model is said {same:?}");
    Ok(())
}

pub fn the_limits_are_one_tap_away(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        let model = page.texts("#model").await?;
        ensure!(
            model == [format!("Ride model {MODEL_VERSION}")],
            "{model:?}"
        );
        page.click(".how a").await?;
        page.wait_for("the limits", "document.querySelector('.reading h1')")
            .await?;
        let headings = page.texts("h2").await?;
        ensure!(
            headings.iter().any(|h| h == "What it leaves out"),
            "{headings:?}"
        );
        page.picture("phone-limits.png").await?;
        let [seen, content]: [u32; 2] = page
            .ask("const d = document.documentElement; return [d.clientWidth, d.scrollWidth]")
            .await?;
        ensure!(content <= seen, "{content} pixels of content in {seen}");
        Ok(())
    })
}

/// A gap that is longer by so much at the last jump of the demonstration, and what is said of each jump's
/// digging; in some system of units.
fn dug(ground: &Ground, longer: f64, units: &str) -> Result<(Plan, Vec<String>)> {
    let mut plan = demo();
    if let Line::Features(features) = &mut plan.line
        && let Some(Feature::Jump(jump)) = features.get_mut(8)
    {
        jump.gap += longer;
    }
    let link = format!("#{}", sim::link::encode(&plan));
    let said = ground.visit(Screen::Phone, &link, async |page| {
        page.click(&format!("#units label:has([value={units}])"))
            .await?;
        let studied = "!document.documentElement.dataset.working";
        page.wait(Duration::from_secs(150), "the study", studied)
            .await?;
        page.picture(&format!("phone-digging-{units}.png")).await?;
        page.texts("#lips .dug").await
    })?;
    println!("{said:#?}");
    Ok((plan, said))
}

/// Beside each clean jump stands how far what is dug for it may be off, the tightest first, in whole
/// centimetres or in inches.
pub fn how_far_digging_may_be_off_is_told(ground: &Ground) -> Result<()> {
    let (plan, said) = dug(ground, 0.5, "metric")?;
    let found = tolerances(&plan, 0);
    ensure!(
        said.len() == 3 && found.len() == 3,
        "{said:?} for {found:?}"
    );
    for (said, tolerance) in said.iter().zip(&found) {
        let mut from = 0;
        for limit in &tolerance.limits {
            let figure = format!("{} cm", (limit.most * 100.0).round());
            let place = said[from..].find(&figure);
            from += place.with_context(|| format!("{figure} is not in its place in {said}"))?;
        }
        ensure!(said.contains("may be 20 cm off"), "{said}");
    }
    let limit = |l: &&Limit| l.dimension == Dimension::Gap && l.more;
    let found = found[2].limits.iter().find(limit).context("a limit")?;
    let gap = format!("gap, {} cm longer at most", (found.most * 100.0).round());
    ensure!(said[2].contains(&gap), "{said:?} for {found:?}");
    let (_, inches) = dug(ground, 1.2, "feet")?;
    ensure!(
        inches.len() == 2,
        "a jump that is not clean says something: {inches:?}"
    );
    ensure!(
        inches[0].contains('"') && !inches[0].contains("cm"),
        "{inches:?}"
    );
    Ok(())
}
