//! A worker that breaks down half-way is replaced, and nothing waits for it for ever.

use anyhow::{Result, ensure};
use browser::{Ground, Page, Screen};
use serde_json::json;

/// Counts the workers that the page starts, and lets `spoil` see each message first.
async fn watch(page: &Page, spoil: &str) -> Result<()> {
    let script = format!(
        "window.workers = 0; window.spoilt = 0; \
         const Own = window.Worker; \
         window.Worker = class extends Own {{ \
           constructor(...all) {{ super(...all); window.workers += 1; }} \
           postMessage(order, ...rest) {{ const send = (order) => super.postMessage(order, ...rest); {spoil} }} }};"
    );
    let everywhere = "Page.addScriptToEvaluateOnNewDocument";
    page.devtools(everywhere, json!({ "source": script }))
        .await?;
    page.go("").await
}

const STUDIED: &str = "!document.documentElement.dataset.working";

async fn numbers(page: &Page) -> Result<[u32; 2]> {
    page.ask("return [window.workers, window.spoilt]").await
}

/// A throw where nobody waits for the answer is what a panic comes out as.
pub fn a_study_that_breaks_down_is_done_again(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        let spoil = "if (order.part === 'windows' && !window.spoilt++) send({ ...order, part: 'nothing' }); else send(order);";
        watch(page, spoil).await?;
        page.wait_for("the study", STUDIED).await?;
        let [workers, spoilt] = numbers(page).await?;
        ensure!(spoilt >= 1 && workers == 2, "{spoilt} messages spoilt, {workers} workers");
        let bars: usize = page.ask("return document.querySelectorAll('#lips .window').length").await?;
        println!("{workers} workers, {bars} windows of speeds");
        ensure!(bars > 0, "the windows of speeds were never told");
        Ok(())
    })
}

pub fn a_study_that_always_breaks_down_is_left_out(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        let spoil = "if (order.part === 'windows' && ++window.spoilt) send({ ...order, part: 'nothing' }); else send(order);";
        watch(page, spoil).await?;
        page.wait_for("the rest of the study", STUDIED).await?;
        let [workers, spoilt] = numbers(page).await?;
        println!("{spoilt} times broken down, {workers} workers");
        ensure!(spoilt == 2, "tried {spoilt} times");
        // What was asked for after it came all the same.
        let day = page.texts("#test-day li").await?;
        ensure!(!day.is_empty(), "the test day was never told");
        Ok(())
    })
}

/// A worker that the browser ends says nothing at all.
pub fn a_ride_whose_worker_is_ended_is_ridden(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        let spoil = "send(order); if (order.part === 'ride' && !window.spoilt) { window.spoilt = 1; this.terminate(); }";
        watch(page, spoil).await?;
        page.wait_for("the study", STUDIED).await?;
        let speeds = "#lips [data-what=speed]";
        let before = page.texts(speeds).await?;
        page.click("#features [data-kind=start_ramp] .feature")
            .await?;
        page.wait_for("a grip", "document.querySelector('.grip')")
            .await?;
        for _ in 0..6 {
            page.press(".grip", '\u{e013}').await?;
        }
        page.wait_for(
            "the ride and all that follows",
            "window.spoilt && !document.documentElement.dataset.working",
        )
        .await?;
        let [workers, spoilt] = numbers(page).await?;
        let after = page.texts(speeds).await?;
        println!("{spoilt} workers ended half-way, {workers} workers in all");
        ensure!(
            spoilt >= 1 && workers >= 2,
            "{spoilt} ended, {workers} workers"
        );
        ensure!(before != after, "a higher start changed nothing");
        Ok(())
    })
}
