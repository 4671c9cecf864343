//! What the ride feels like, as the page tells it.

use anyhow::{Result, ensure};
use browser::{Ground, Screen};
use sim::plan::demo;
use sim::setup::ride_plan;

pub fn the_load_is_the_traces_own(ground: &Ground) -> Result<()> {
    let ridden = ride_plan(&demo(), 0).map_err(|faults| anyhow::anyhow!("{faults:?}"))?;
    let samples = &ridden.run.samples;
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#play").await?;
        for moment in [1.0, 2.5, 4.0, 4.6, 5.2, 6.4] {
            page.seek(moment).await?;
            let told: String = page
                .ask("return document.querySelector('[data-feel=load]').textContent")
                .await?;
            let sample = &samples[(moment * 100.0_f64).round() as usize];
            let expected = format!("{:.1}", sample.g);
            ensure!(
                told == expected,
                "at {moment} s the page says {told}, the trace {expected}"
            );
            let place: String = page
                .ask("return document.querySelector('[data-feel=where]').textContent")
                .await?;
            let aloft = sample.rear_load <= 0.0 && sample.front_load <= 0.0;
            ensure!(
                place.contains("in the air") == aloft,
                "at {moment} s: {place:?}"
            );
        }
        Ok(())
    })
}
