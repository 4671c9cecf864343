//! Changing the plan on the page.

use anyhow::{Result, ensure};
use browser::{Ground, Page, Screen};
use sim::error::Quantity;
use sim::units::{System, edit, parse};

async fn table(page: &Page) -> Result<Vec<String>> {
    // What is studied follows the ride.
    let known = "!document.documentElement.dataset.working";
    page.wait_for("the study", known).await?;
    page.texts("#lips tbody td").await
}

pub fn a_change_rides_at_once(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        let before = table(page).await?;
        page.click("#features [data-kind=start_ramp] .feature")
            .await?;
        page.fill("[data-field$='platform_height'] input", "2.9 m")
            .await?;
        let higher = table(page).await?;
        ensure!(
            before != higher,
            "half a metre more of start ramp changed nothing"
        );
        page.fill("[data-field$='platform_height'] input", "9' 6 1/4\"")
            .await?;
        let typed: String = page
            .ask("return document.querySelector(\"[data-field$='platform_height'] input\").value")
            .await?;
        println!("9' 6 1/4\" stands in the field as {typed}");
        let metres = parse("9' 6 1/4\"", Quantity::Length, System::Metric)?;
        let ways = [System::Metric, System::Feet].map(|s| edit(metres, Quantity::Length, s));
        ensure!(ways.contains(&typed), "{typed} is none of {ways:?}");
        Ok(())
    })
}

/// What lies over the drawing, where it can be seen without scrolling; empty where nothing does.
async fn over_the_drawing(page: &Page) -> Result<String> {
    page.drawn().await?;
    let seen = "const box = document.getElementById('wrong'), { top, bottom } = box.getBoundingClientRect(); \
        return box.hidden || top < 0 || bottom > innerHeight ? '' : box.innerText";
    page.ask(seen).await
}

/// What is wrong with a plan stands over the drawing and before the verdict, with a way to what can be mended;
/// and it goes with the fault. A lip that is lifted by so many pixels is too high there.
fn wrong_in_sight(ground: &Ground, screen: Screen, lifted: i64) -> Result<()> {
    ground.visit(screen, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        let before = page.texts("#lips [data-what=speed]").await?;
        page.click("#features [data-kind=run_out] .feature").await?;
        page.fill("[data-field$='length'] input", "80 m").await?;
        let shown = "!document.getElementById('wrong').hidden";
        page.wait_for("what is wrong", shown).await?;
        let said = over_the_drawing(page).await?;
        println!("{said}");
        ensure!(
            said.contains("too long") && said.contains("60.00 m"),
            "over the drawing stands {said:?}"
        );
        let headline: String = page
            .ask("return document.getElementById('unready').innerText")
            .await?;
        ensure!(headline.contains("last line that works"), "{headline:?}");
        let lips = page.texts("#lips [data-what=speed]").await?;
        ensure!(lips == before, "the last good ride is gone: {lips:?}");
        page.picture(&format!("{screen:?}-unready.png").to_lowercase())
            .await?;
        // The first of the ways leads to the longest level stretch, which is what was made too long.
        page.click("#features [data-kind=jump] .feature").await?;
        page.click("#wrong button").await?;
        let field = "document.querySelector(\"[data-field$='length'] input\")?.value";
        page.wait_for("the run-out's field", &format!("{field}?.startsWith('80')"))
            .await?;
        page.fill("[data-field$='length'] input", "12 m").await?;
        ensure!(
            over_the_drawing(page).await?.is_empty(),
            "mended, it is still said"
        );
        // A grip that is dragged too far says so while it is held.
        page.click("#features [data-kind=jump] .feature").await?;
        page.wait_for(
            "the grips",
            "document.querySelector('.grip[data-part=lip]')",
        )
        .await?;
        page.ask::<bool>(
            "window.said = []; const wrong = document.getElementById('wrong'); \
             new MutationObserver(() => said.push(wrong.hidden ? '' : wrong.innerText)) \
               .observe(wrong, { attributes: true, childList: true }); return true",
        )
        .await?;
        page.drag(".grip[data-part=lip]", 0, -lifted).await?;
        let said: Vec<String> = page.ask("return said").await?;
        ensure!(
            said.iter().any(|said| said.contains("Jump 1")),
            "while a lip was dragged too high was said {said:?}"
        );
        Ok(())
    })
}

pub fn what_is_wrong_is_in_sight_on_a_phone(ground: &Ground) -> Result<()> {
    wrong_in_sight(ground, Screen::Phone, 100)
}

pub fn what_is_wrong_is_in_sight_at_a_desk(ground: &Ground) -> Result<()> {
    wrong_in_sight(ground, Screen::Desk, 170)
}

pub fn a_fault_speaks_at_its_field(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        let before = table(page).await?;
        page.click("#features [data-kind=jump] .feature").await?;
        let field = "[data-field$='lip.height']";
        page.fill(&format!("{field} input"), "9 m").await?;
        let told = page.texts(&format!("{field} .fault")).await?.concat();
        println!("a lip of 9 m: {told}");
        ensure!(told.contains('9'), "the field says {told:?}");
        ensure!(table(page).await? == before, "the last good ride is gone");
        page.fill(&format!("{field} input"), "tall").await?;
        let told = page.texts(&format!("{field} .fault")).await?.concat();
        println!("a lip of \"tall\": {told}");
        ensure!(told.contains("tall"), "the field says {told:?}");
        page.fill(&format!("{field} input"), "0.6 m").await?;
        let told = page.texts(&format!("{field} .fault")).await?.concat();
        ensure!(told.is_empty(), "mended, the field still says {told:?}");
        Ok(())
    })
}

pub fn features_come_and_go(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        let before = page.texts("#features .feature").await?;
        page.click("#features [data-kind=flat] .feature").await?;
        page.click("#features [data-act=remove]").await?;
        let fewer = page.texts("#features .feature").await?;
        ensure!(
            fewer.len() + 1 == before.len(),
            "{before:?} became {fewer:?}"
        );
        // The feature that took its place stays open.
        page.click("#features [data-act=later]").await?;
        let moved = page.texts("#features .feature").await?;
        ensure!(
            moved != fewer && moved.len() == fewer.len(),
            "{fewer:?} became {moved:?}"
        );
        Ok(())
    })
}
