//! How the page looks, kept as pictures under `tests/out`; and nothing hangs over the edge.

use anyhow::{Result, ensure};
use browser::{Ground, Screen};

fn look(ground: &Ground, screen: Screen, name: &str, units: &str) -> Result<()> {
    ground.visit(screen, "", async |page| {
        page.click(&format!("#units label:has([value={units}])"))
            .await?;
        page.wait_for("the study", "!document.documentElement.dataset.working")
            .await?;
        // A little after the middle of the ride, in the air.
        let duration = page.duration().await?;
        let mut moment = 0.5 * duration;
        page.seek(moment).await?;
        let state = "return document.querySelector('[data-now=state]').textContent";
        while !page.ask::<String>(state).await?.contains("air") {
            moment += 0.1;
            ensure!(
                moment < duration,
                "nobody flies in the second half of the ride"
            );
            page.seek(moment).await?;
        }
        page.seek(moment + 0.2).await?;
        page.ask::<Option<bool>>("scrollTo(0, 0)").await?;
        page.picture(&format!("{name}.png")).await?;
        let (width, _) = screen.size();
        let [seen, content]: [u32; 2] = page
            .ask("const d = document.documentElement; return [d.clientWidth, d.scrollWidth]")
            .await?;
        ensure!(
            seen <= width && content <= seen,
            "{content} pixels of content in {seen} of {width}"
        );
        page.click("#features [data-kind=jump] .feature").await?;
        page.picture(&format!("{name}-jump.png")).await
    })
}

pub fn phone(ground: &Ground) -> Result<()> {
    look(ground, Screen::Phone, "phone", "feet")
}

pub fn desk(ground: &Ground) -> Result<()> {
    look(ground, Screen::Desk, "desk", "metric")
}
