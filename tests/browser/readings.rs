//! The ground of the yard, pasted in two columns.

use anyhow::{Context, Result, ensure};
use browser::{Ground, Page, Screen};
use sim::plan::{GroundPoint, Lie, Plan, demo};

const FORM: &str = "#readings-text";

/// Opens the form and pastes a text into it, which drivers cannot do with a tab in it.
async fn paste(page: &Page, text: &str) -> Result<()> {
    for closed in [
        "#yard:not([open]) > summary",
        "#readings:not([open]) > summary",
    ] {
        let there = format!("return Boolean(document.querySelector({closed:?}))");
        if page.ask::<bool>(&there).await? {
            page.click(closed).await?;
        }
    }
    let script = format!(
        "const area = document.querySelector({FORM:?}); area.focus(); area.select(); \
         return document.execCommand('insertText', false, {text:?})"
    );
    ensure!(page.ask::<bool>(&script).await?, "nothing was pasted");
    page.click("#readings-use").await
}

async fn told(page: &Page) -> Result<String> {
    Ok(page.texts("#readings-told").await?.concat())
}

async fn speeds(page: &Page) -> Result<Vec<String>> {
    page.texts("#lips tbody [data-what=speed]").await
}

/// The plan that the page would send.
async fn plan(page: &Page) -> Result<Plan> {
    page.click("#share").await?;
    let link: String = page
        .ask("return document.getElementById('share').dataset.link")
        .await?;
    page.click("#send-close").await?;
    let (_, tail) = link.split_once('#').context("the link has no # in it")?;
    Ok(sim::link::decode(tail)?.plan)
}

fn surveyed(points: &[(f64, f64)]) -> Lie {
    Lie::Surveyed(points.iter().map(|&p| GroundPoint::from(p)).collect())
}

pub fn pasted_ground_is_ridden(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        let before = speeds(page).await?;
        paste(
            page,
            "Station (m)\tHeight (cm)\n0\t0\n20,5\t-80\n60 m\t-2.4 m\n",
        )
        .await?;
        let said = told(page).await?;
        ensure!(said.is_empty(), "of good readings is said {said:?}");
        ensure!(
            speeds(page).await? != before,
            "other ground changes nothing"
        );
        let lie = plan(page).await?.yard.lie;
        ensure!(
            lie == surveyed(&[(0.0, 0.0), (20.5, -0.8), (60.0, -2.4)]),
            "{lie:?}"
        );
        page.picture("phone-readings.png").await?;
        page.click("#readings-even").await?;
        let lie = plan(page).await?.yard.lie;
        ensure!(
            matches!(lie, Lie::Grade(grade) if (grade + 0.04).abs() < 1e-12),
            "{lie:?}"
        );
        ensure!(
            speeds(page).await? == before,
            "on the old ground the speeds are others"
        );
        page.click("#undo").await?;
        page.click("#units label:has([value=feet])").await?;
        paste(page, "0 0\n100' -8'\n197 -15' 9\"").await?;
        let lie = plan(page).await?.yard.lie;
        let feet = [(0.0, 0.0), (100.0, -8.0), (197.0, -15.75)];
        let expected = surveyed(&feet.map(|(a, b)| (a * 0.3048, b * 0.3048)));
        ensure!(lie == expected, "{lie:?}, not {expected:?}");
        Ok(())
    })
}

pub fn bad_rows_are_named_and_nothing_is_lost(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        let before = speeds(page).await?;
        let typed = "0 0\n20 low\n\n40\n60 -4.8";
        paste(page, typed).await?;
        let said = told(page).await?;
        println!("{said}");
        ensure!(
            said.contains("Row 2: \"low\"") && said.contains("Row 4: "),
            "{said:?}"
        );
        ensure!(
            !said.contains("Row 1") && !said.contains("Row 5"),
            "{said:?}"
        );
        ensure!(
            plan(page).await?.yard == demo().yard,
            "the yard is another one"
        );
        // What was typed stays, also where the form is made anew.
        page.click("#units label:has([value=feet])").await?;
        page.click("#units label:has([value=metric])").await?;
        let kept: String = page
            .ask(&format!("return document.querySelector({FORM:?}).value"))
            .await?;
        ensure!(kept == typed, "typed {typed:?}, kept {kept:?}");
        // Read well, but no ground for this yard: the reading is named, and the last ride stays.
        paste(page, "0 0\n30 -2.4\n20 -1.6\n60 -4.8").await?;
        let other = "document.getElementById('readings-told').innerText.includes('Reading 3: ')";
        page.wait_for("the reading to be named", other).await?;
        let said = told(page).await?;
        println!("{said}");
        ensure!(
            said.contains("Reading 3: stations have to run forward"),
            "{said:?}"
        );
        paste(page, "0 0\n40 -3.2").await?;
        let other = "document.getElementById('readings-told').innerText.includes('Reading 2: ')";
        page.wait_for("the other reading to be named", other)
            .await?;
        let said = told(page).await?;
        println!("{said}");
        ensure!(
            said.contains("Reading 2: ") && said.contains("60.00 m"),
            "{said:?}"
        );
        ensure!(speeds(page).await? == before, "the last good ride is gone");
        Ok(())
    })
}

pub fn saved_readings_read_back(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        page.click("#units label:has([value=feet])").await?;
        paste(page, "0, 0\n62' 3 1/2\", -4' 11 1/4\"\n197, -15.6").await?;
        let lie = plan(page).await?.yard.lie;
        page.click("#readings-save").await?;
        let file = page.saved(&format!("{}.readings.csv", demo().name)).await?;
        let text = String::from_utf8(file)?;
        println!("{text}");
        page.click("#readings-even").await?;
        // A reader in metres gets the same ground: the heading names the unit.
        page.click("#units label:has([value=metric])").await?;
        paste(page, &text).await?;
        let back = plan(page).await?.yard.lie;
        let (Lie::Surveyed(sent), Lie::Surveyed(back)) = (&lie, &back) else {
            anyhow::bail!("{lie:?} became {back:?}");
        };
        let off = |a: &GroundPoint, b: &GroundPoint| {
            f64::max(
                (a.station - b.station).abs(),
                (a.elevation - b.elevation).abs(),
            )
        };
        // Six places of a foot.
        ensure!(
            sent.len() == back.len() && sent.iter().zip(back).all(|(a, b)| off(a, b) < 1e-6),
            "{sent:?} became {back:?}"
        );
        Ok(())
    })
}
