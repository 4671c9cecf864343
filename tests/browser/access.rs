//! The page for everybody: axe-core finds nothing, day and night, narrow and with large type.
//!
//! axe-core (Mozilla Public License 2.0) is fetched by `tests/run.sh` and is no part of this project.

use anyhow::{Context, Result, ensure};
use browser::{Ground, Page, Screen};
use serde_json::json;

/// Where `tests/run.sh` puts the checker.
fn checker() -> Result<String> {
    let cache = match std::env::var_os("XDG_CACHE_HOME") {
        Some(folder) => folder.into(),
        None => {
            std::path::PathBuf::from(std::env::var_os("HOME").context("no home")?).join(".cache")
        }
    };
    let path = cache.join("carryline/axe-core/axe.min.js");
    std::fs::read_to_string(&path).with_context(|| {
        format!(
            "{} is missing: `bash tests/run.sh` fetches it",
            path.display()
        )
    })
}

/// All levels of WCAG 2.2 AA, as the checker names them.
const RULES: &str = "['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']";

async fn check(page: &Page, view: &str) -> Result<()> {
    // The drawing would change under the checker's eyes; and what is scrolled half under it is no fault.
    page.ask::<Option<bool>>("scrollTo(0, 0)").await?;
    page.ask::<Option<bool>>("document.querySelector('#play.on')?.click()")
        .await?;
    let script = format!(
        "{}; return axe.run(document, {{ runOnly: {RULES} }}).then(found => ({{ checked: found.passes.length, \
         wrong: found.violations.map(v => `${{v.id}}: ${{v.nodes.map(n => n.target.join(' ') + ' ' + n.failureSummary).join('; ')}}`) }}))",
        checker()?
    );
    let found: serde_json::Value = page.ask(&script).await?;
    println!("{view}: {} rules hold", found["checked"]);
    ensure!(
        found["checked"].as_u64().unwrap_or(0) > 15,
        "{view}: little was checked"
    );
    let wrong = found["wrong"]
        .as_array()
        .context("no list of what is wrong")?;
    ensure!(wrong.is_empty(), "{view}: {wrong:#?}");
    Ok(())
}

async fn views(page: &Page, named: &str) -> Result<()> {
    page.studied().await?;
    check(page, &format!("{named}, the start")).await?;
    page.click("#features [data-kind=jump] .feature").await?;
    check(page, &format!("{named}, a jump")).await?;
    page.fill("[data-field$='lip.height'] input", "9 m").await?;
    check(page, &format!("{named}, a fault")).await?;
    page.click("#undo").await?;
    for box_ in ["#rider", "#lines"] {
        page.ask::<Option<bool>>(&format!(
            "document.querySelector('{box_}').closest('details').open = true"
        ))
        .await?;
    }
    check(page, &format!("{named}, rider and lines")).await
}

async fn night(page: &Page) -> Result<()> {
    let media = json!({ "features": [{ "name": "prefers-color-scheme", "value": "dark" }] });
    page.devtools("Emulation.setEmulatedMedia", media).await
}

pub fn by_day_on_a_phone(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| views(page, "phone").await)
}

pub fn by_night_at_a_desk(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        night(page).await?;
        views(page, "desk at night").await?;
        page.picture("desk-night.png").await
    })
}

pub fn a_sent_line_and_the_limits(ground: &Ground) -> Result<()> {
    let link = format!("#{}", sim::link::encode(&sim::plan::demo()));
    ground.visit(Screen::Phone, &link, async |page| {
        page.studied().await?;
        check(page, "a line that was sent").await?;
        page.click(".how a").await?;
        page.wait_for("the limits", "document.querySelector('.reading h1')")
            .await?;
        check(page, "the limits").await?;
        night(page).await?;
        check(page, "the limits at night").await
    })
}

/// Nothing hangs over the edge of a narrow screen, nor with the type twice as large.
pub fn narrow_and_with_large_type(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.studied().await?;
        page.click("#features [data-kind=jump] .feature").await?;
        let over = "const d = document.documentElement; return d.scrollWidth - d.clientWidth";
        let narrow = json!({ "width": 320, "height": 640, "deviceScaleFactor": 2, "mobile": true });
        page.devtools("Emulation.setDeviceMetricsOverride", narrow)
            .await?;
        ensure!(
            page.ask::<i64>(over).await? <= 0,
            "at 320 px something hangs over the edge"
        );
        page.picture("narrow.png").await?;
        page.ask::<Option<bool>>("document.documentElement.style.fontSize = '200%'")
            .await?;
        let by = page.ask::<i64>(over).await?;
        page.picture("narrow-large.png").await?;
        ensure!(by <= 0, "with large type {by} px hang over the edge");
        Ok(())
    })
}
