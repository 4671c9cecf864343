//! The first minute: the demonstration rides before anything is asked.

use anyhow::{Result, ensure};
use browser::{Ground, Page, Screen};

/// Longest time from the first request to a rider on the move, s. One second is the aim on a
/// machine of its own; here the browser shares two cores with its driver and the host program.
const SOON: f64 = 3.0;

pub fn rides_by_itself(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.wait_for(
            "the ride to begin",
            "document.getElementById('scrub').valueAsNumber > 0.2",
        )
        .await?;
        let started: f64 = page.ask("return performance.now() / 1000").await?;
        println!("from the first request to a rider on the move: {started:.2} s");
        ensure!(
            started < SOON,
            "the page took {started} s; accepted {SOON} s or less"
        );
        let before: f64 = page.ask(MOMENT).await?;
        let drawn: String = page.ask(DRAWING).await?;
        page.wait_for(
            "the ride to go on",
            &format!("document.getElementById('scrub').valueAsNumber > {before}"),
        )
        .await?;
        ensure!(
            drawn != page.ask::<String>(DRAWING).await?,
            "the drawing stands still"
        );
        Ok(())
    })
}

const MOMENT: &str = "return document.getElementById('scrub').valueAsNumber";
const DRAWING: &str = "return document.getElementById('drawing').toDataURL()";
/// Goes to a moment of the ride and keeps its pixels on the page.
async fn moment(page: &Page, seconds: f64) -> Result<()> {
    page.seek(seconds).await?;
    let script = "const c = document.getElementById('drawing'); \
        (window.taken ??= []).push(c.getContext('2d').getImageData(0, 0, c.width, c.height).data); \
        return true";
    ensure!(page.ask::<bool>(script).await?);
    Ok(())
}

/// Two shades of a colour that are no farther apart than this look the same: the edge of a line that grows
/// elsewhere is not always smoothed alike.
const SHADE: u32 = 8;

/// The first column from the left in which the drawings of two moments differ, as a share of the
/// width: where the rider was at the earlier one.
async fn left(page: &Page, a: usize, b: usize) -> Result<f64> {
    let script = format!(
        "const [a, b] = [window.taken[{a}], window.taken[{b}]], w = document.getElementById('drawing').width; \
         let first = w; \
         for (let i = 0; i < a.length; i += 4) \
           if ([0, 1, 2].some(c => Math.abs(a[i + c] - b[i + c]) > {SHADE})) first = Math.min(first, (i / 4) % w); \
         return first / w"
    );
    page.ask(&script).await
}

pub fn moves_from_left_to_right(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        page.click("#whole").await?;
        // The ranges beside the lips come later, and are drawn too.
        let known = "!document.documentElement.dataset.working";
        page.wait_for("the ranges", known).await?;
        let duration = page.duration().await?;
        // The whole line may take several rows of the sheet; this much of the ride is on the first.
        let shares = [0.05, 0.12, 0.19, 0.26, 0.33];
        for share in shares {
            moment(page, share * duration).await?;
        }
        let mut places = Vec::new();
        for i in 1..shares.len() {
            places.push(left(page, i - 1, i).await?);
        }
        println!("where the rider was, as shares of the width: {places:.3?}");
        for pair in places.windows(2) {
            let way = pair[1] - pair[0];
            ensure!(
                way > 0.01 && pair[1] < 1.0,
                "from {pair:?} the rider went {way} to the right"
            );
        }
        Ok(())
    })
}

pub fn can_be_held_and_scrubbed(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.wait_for(
            "the ride to begin",
            "document.getElementById('scrub').valueAsNumber > 0",
        )
        .await?;
        page.click("#play").await?;
        let held: f64 = page.ask(MOMENT).await?;
        let drawn: String = page.ask(DRAWING).await?;
        page.seek(held).await?;
        ensure!(
            page.ask::<f64>(MOMENT).await? == held,
            "the ride went on while it was held"
        );
        page.seek(0.5 * held + 1.0).await?;
        ensure!(
            drawn != page.ask::<String>(DRAWING).await?,
            "scrubbing changed nothing"
        );
        page.click("#restart").await?;
        page.wait_for(
            "the ride to begin anew",
            "document.querySelector('#play.on')",
        )
        .await
    })
}
