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
