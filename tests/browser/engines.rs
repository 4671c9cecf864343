//! The main path in the other browser engines: a line rides, is changed, and is there again after a reload.

use anyhow::{Result, ensure};
use browser::{Engine, Ground, Page, Screen};

const SPEEDS: &str = "#lips tbody [data-what=speed]";
const GAP: &str = "[data-feature=\"4\"] [data-field$=\"gap\"]";

async fn main_path(page: &Page, screen: Screen) -> Result<()> {
    let width: u32 = page.ask("return innerWidth").await?;
    ensure!(width == screen.size().0, "{width} px wide");
    let moment = "document.getElementById('scrub').valueAsNumber";
    page.wait_for("the ride to begin", &format!("{moment} > 0.2"))
        .await?;
    // By key: the ride is held and goes on.
    page.press("body", ' ').await?;
    page.wait_for("the ride to be held", "!document.querySelector('#play.on')")
        .await?;
    let drawn = "return document.getElementById('drawing').toDataURL()";
    page.seek(2.0).await?;
    let before: String = page.ask(drawn).await?;
    page.seek(4.5).await?;
    ensure!(before != page.ask::<String>(drawn).await?, "nobody moves");
    if screen == Screen::Phone {
        page.click("#view").await?;
    }
    let saddle = "const c = document.getElementById('saddle'); \
        return new Set(c.getContext('2d').getImageData(0, 0, c.width, c.height).data).size";
    page.seek(4.6).await?;
    ensure!(
        page.ask::<usize>(saddle).await? > 20,
        "nothing is seen from the saddle"
    );
    change_it(page).await
}

/// A line is changed, given bad numbers, loaded again and sent.
async fn change_it(page: &Page) -> Result<()> {
    // By pointer: rollers are chosen and made higher, and the ride is another.
    page.click("#units label:has([value=metric])").await?;
    let speeds = page.texts(SPEEDS).await?;
    ensure!(
        speeds.len() == 3 && speeds[0].contains("km/h"),
        "{speeds:?}"
    );
    page.click("#features [data-feature=\"2\"] .feature")
        .await?;
    page.fill(
        "[data-feature=\"2\"] [data-field$=\"height\"] input",
        "0.4 m",
    )
    .await?;
    page.wait_for(
        "another speed",
        &format!(
            "document.querySelector('{SPEEDS}').innerText.trim() !== {:?}",
            speeds[0]
        ),
    )
    .await?;
    // Bad input speaks at its field, and the line stays.
    page.click("#features [data-feature=\"4\"] .feature")
        .await?;
    page.fill(&format!("{GAP} input"), "long").await?;
    let told = page.texts(&format!("{GAP} .fault")).await?;
    ensure!(told.iter().any(|t| t.contains("long")), "{told:?}");
    page.fill(&format!("{GAP} input"), "1.7 m").await?;
    page.studied().await?;
    let speeds = page.texts(SPEEDS).await?;
    page.reload().await?;
    page.studied().await?;
    ensure!(
        page.texts(SPEEDS).await? == speeds,
        "a reload lost the line"
    );
    page.click("#share").await?;
    page.wait_for(
        "the link",
        "document.getElementById('share').dataset.link?.includes('#')",
    )
    .await
}

fn rides(ground: &Ground, engine: Engine, screen: Screen) -> Result<()> {
    ground.visit_in(engine, screen, "", async |page| {
        main_path(page, screen).await
    })
}

pub fn firefox_at_a_desk(ground: &Ground) -> Result<()> {
    rides(ground, Engine::Firefox, Screen::Desk)
}

pub fn firefox_on_a_phone(ground: &Ground) -> Result<()> {
    rides(ground, Engine::Firefox, Screen::Phone)
}

pub fn webkit_at_a_desk(ground: &Ground) -> Result<()> {
    rides(ground, Engine::WebKit, Screen::Desk)
}

pub fn webkit_on_a_phone(ground: &Ground) -> Result<()> {
    rides(ground, Engine::WebKit, Screen::Phone)
}

pub fn chromium_on_a_phone(ground: &Ground) -> Result<()> {
    rides(ground, Engine::Chromium, Screen::Phone)
}
