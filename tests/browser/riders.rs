//! Riders made from an age and a size of wheel.

use anyhow::{Result, ensure};
use browser::{Ground, Page, Screen};
use sim::error::Quantity;
use sim::units::{System, parse};

/// Chooses in one of the panel's lists.
async fn choose(page: &Page, list: &str, value: &str) -> Result<()> {
    page.choose(&format!("#preset-{list}"), value).await
}

/// What stands in a field of the rider, in the plan's unit.
async fn field(page: &Page, name: &str, quantity: Quantity) -> Result<f64> {
    let css = format!("[data-field='riders[0].{name}'] input");
    let text: String = page
        .ask(&format!("return document.querySelector({css:?}).value"))
        .await?;
    Ok(parse(&text, quantity, System::Metric)?)
}

async fn riders(page: &Page) -> Result<Vec<String>> {
    page.texts("#rider .riders label").await
}

/// The note beside a field that says where its number comes from.
async fn note(page: &Page, name: &str) -> Result<String> {
    let css = format!("[data-field='riders[0].{name}'] .from");
    Ok(page.texts(&css).await?.concat())
}

/// Waits until the address has followed the last change: it does so a while after it.
async fn settle(page: &Page) -> Result<()> {
    let link = "document.getElementById('share').dataset.link";
    page.click("#share").await?;
    page.wait_for(
        "the address to follow",
        &format!("location.href === {link}"),
    )
    .await
}

pub fn a_preset_rides(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        let before = page.texts("#lips tbody [data-what=speed]").await?;
        page.click("#rider > summary").await?;
        choose(page, "age", "7").await?;
        choose(page, "sex", "boy").await?;
        choose(page, "wheel", "16").await?;
        page.click("#preset-replace").await?;
        // Boys of seven, CDC growth charts 2000: 23.167 kg, 122.03 cm. 16 inches, ISO 5775: 305 mm.
        let published = [
            ("rider.mass", Quantity::Mass, 23.167, 0.05),
            ("rider.stature", Quantity::Length, 1.2203, 0.005),
            ("bike.bead_seat", Quantity::Length, 0.305, 1e-9),
        ];
        for (name, quantity, expected, rounding) in published {
            let got = field(page, name, quantity).await?;
            println!("{name}: {got}, published {expected}");
            ensure!((got - expected).abs() <= rounding, "{name} is {got}");
            let note = note(page, name).await?;
            ensure!(note.contains("CDC") || note.contains("ISO 5775"), "{note}");
        }
        // The file's P10 and P90 of that weight: 19.551 and 28.725 kg.
        let spread = note(page, "rider.mass").await?;
        ensure!(
            spread.contains("19.6 kg") && spread.contains("28.7 kg"),
            "{spread}"
        );
        let names = riders(page).await?;
        ensure!(names == ["Adult", "Child, 7"], "the riders are {names:?}");
        let after = page.texts("#lips tbody [data-what=speed]").await?;
        ensure!(after != before, "another child rides at the same speeds");
        page.fill("[data-field='riders[0].rider.mass'] input", "30 kg")
            .await?;
        let changed = note(page, "rider.mass").await?;
        ensure!(changed.is_empty(), "30 kg are said to be from {changed}");
        Ok(())
    })
}

pub fn riders_come_and_go(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        page.click("#rider > summary").await?;
        choose(page, "age", "20").await?;
        page.click("#preset-add").await?;
        // Whoever works by keyboard stays where they were.
        let focused: String = page.ask("return document.activeElement.id").await?;
        ensure!(focused == "preset-add", "the focus went to {focused:?}");
        page.click("#preset-add").await?;
        let four = riders(page).await?;
        ensure!(
            four == ["Adult", "Adult (2)", "Adult (3)", "Child, 10"],
            "the riders are {four:?}"
        );
        let full: bool = page
            .ask("return document.getElementById('preset-add').disabled")
            .await?;
        ensure!(full, "a fifth rider is offered");
        page.fill("#rider-name", "Grandmother").await?;
        let told = page.texts("#told").await?.concat();
        ensure!(told.contains("Grandmother"), "told is {told:?}");
        page.click("#rider .riders label:has([value='3'])").await?;
        page.click("[data-act=remove-rider]").await?;
        let three = riders(page).await?;
        ensure!(three.len() == 3, "the riders are {three:?}");
        settle(page).await?;
        page.reload().await?;
        page.click("#rider > summary").await?;
        let kept = riders(page).await?;
        ensure!(kept == three, "before {three:?}, after a reload {kept:?}");
        Ok(())
    })
}

/// A control smaller than a thumb, and content wider than the screen.
pub fn fit_under_a_thumb(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#rider > summary").await?;
        page.click("#wheels > summary").await?;
        page.click("#preset-replace").await?;
        let small: Vec<String> = page
            .ask(
                // A word of a sentence that is explained by a tap is as tall as its line (WCAG 2.2, 2.5.8: inline).
                "return [...document.querySelectorAll('#rider button:not(.term), #rider select, #rider input, #rider summary')] \
                 .filter(e => { const r = e.getBoundingClientRect(); return r.height < 44 || r.width < 44; }) \
                 .map(e => e.outerHTML.slice(0, 120))",
            )
            .await?;
        ensure!(small.is_empty(), "too small to be touched: {small:#?}");
        let [seen, content]: [u32; 2] = page
            .ask("const d = document.documentElement; return [d.clientWidth, d.scrollWidth]")
            .await?;
        ensure!(content <= seen, "{content} pixels of content in {seen}");
        page.picture("phone-rider.png").await
    })
}
