//! Drawing the line by hand: grips by mouse and by key.

use anyhow::{Result, ensure};
use browser::{Ground, Page, Screen};

const GAP: &str = "Number.parseFloat(document.querySelector('[data-field$=\"gap\"] input').value)";

async fn take_the_second_jump(page: &Page) -> Result<()> {
    page.click("#units label:has([value=metric])").await?;
    page.click("#features [data-kind=jump] .feature").await?;
    let held = "document.querySelector('.grip[data-part=knuckle]')";
    page.wait_for("the grips", held).await
}

async fn number(page: &Page, script: &str) -> Result<f64> {
    page.ask(&format!("return {script}")).await
}

pub fn a_knuckle_is_dragged_and_rides_at_once(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        take_the_second_jump(page).await?;
        let before = page.texts("#lips tbody td").await?;
        let gap = number(page, GAP).await?;
        let scale = number(
            page,
            "Number(document.querySelector('.grip[data-part=knuckle]').dataset.scale)",
        )
        .await?;
        page.drag(".grip[data-part=knuckle]", 60, 0).await?;
        let now = number(page, GAP).await?;
        println!(
            "the gap went from {gap} m to {now} m, by {} m",
            60.0 / scale
        );
        ensure!(
            (now - gap - 60.0 / scale).abs() < 0.03,
            "the gap went from {gap} to {now}"
        );
        ensure!(
            page.texts("#lips tbody td").await? != before,
            "the ride is the one before"
        );
        page.picture("desk-grips.png").await?;
        page.click("#undo").await?;
        ensure!(
            (number(page, GAP).await? - gap).abs() < 1e-9,
            "the drag is not undone as one"
        );
        Ok(())
    })
}

pub fn a_lip_is_moved_by_key(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        take_the_second_jump(page).await?;
        let height =
            "Number.parseFloat(document.querySelector('[data-field$=\"lip.height\"] input').value)";
        let (before, gap) = (number(page, height).await?, number(page, GAP).await?);
        for key in ['\u{e013}', '\u{e014}'] {
            page.press(".grip[data-part=lip]", key).await?;
        }
        ensure!((number(page, height).await? - before - 0.05).abs() < 1e-9);
        ensure!((number(page, GAP).await? - gap + 0.05).abs() < 1e-9);
        Ok(())
    })
}

pub fn grips_are_large_enough_for_a_thumb(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        take_the_second_jump(page).await?;
        let sizes: Vec<[f64; 2]> = page
            .ask("return [...document.querySelectorAll('.grip')].map(g => [g.offsetWidth, g.offsetHeight])")
            .await?;
        ensure!(sizes.len() == 2 && sizes.iter().flatten().all(|&s| s >= 44.0), "{sizes:?}");
        Ok(())
    })
}
