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
/// Pixels of the drawing at a moment of the ride, as rows of one number each.
async fn moment(page: &Page, seconds: f64) -> Result<()> {
    let script = format!(
        "const s = document.getElementById('scrub'); s.value = {seconds}; \
         s.dispatchEvent(new Event('input', {{ bubbles: true }})); \
         return new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => {{ \
           const c = document.getElementById('drawing'); \
           (window.taken ??= []).push(c.getContext('2d').getImageData(0, 0, c.width, c.height).data); \
           done(true); }})))"
    );
    ensure!(page.ask::<bool>(&script).await?);
    Ok(())
}

/// Leftmost, middle and rightmost column in which the drawings of two moments differ, as shares of
/// the width.
async fn changed(page: &Page, a: usize, b: usize) -> Result<[f64; 3]> {
    let script = format!(
        "const [a, b] = [window.taken[{a}], window.taken[{b}]], w = document.getElementById('drawing').width; \
         const columns = []; \
         for (let i = 0; i < a.length; i += 4) \
           if (a[i] !== b[i] || a[i + 1] !== b[i + 1] || a[i + 2] !== b[i + 2]) columns.push((i / 4) % w / w); \
         columns.sort((x, y) => x - y); \
         return columns.length ? [columns[0], columns[columns.length >> 1], columns.at(-1)] : [0, 0, 0]"
    );
    page.ask(&script).await
}

pub fn moves_from_left_to_right(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        page.click("#whole").await?;
        let duration: f64 = page
            .ask("return Number(document.getElementById('scrub').max)")
            .await?;
        for share in [0.1, 0.4, 0.7] {
            moment(page, share * duration).await?;
        }
        let (first, second) = (changed(page, 0, 1).await?, changed(page, 1, 2).await?);
        println!("columns that change, as shares of the width: {first:.3?}, then {second:.3?}");
        ensure!(first[2] > 0.0, "nothing moved");
        for end in [0, 2] {
            let way = second[end] - first[end];
            ensure!(
                way > 0.05,
                "the change went {way} of the width to the right"
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
        moment(page, held).await?;
        ensure!(
            page.ask::<f64>(MOMENT).await? == held,
            "the ride went on while it was held"
        );
        moment(page, 0.5 * held + 1.0).await?;
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
