//! How the page looks, kept as pictures under `tests/out`; and nothing hangs over the edge.

use anyhow::{Result, ensure};
use browser::{Ground, Page, Screen};

/// Nothing hangs over the edge of the screen.
async fn fits(page: &Page, screen: Screen) -> Result<()> {
    let (width, _) = screen.size();
    let [seen, content]: [u32; 2] = page
        .ask("const d = document.documentElement; return [d.clientWidth, d.scrollWidth]")
        .await?;
    ensure!(
        seen <= width && content <= seen,
        "{content} pixels of content in {seen} of {width}"
    );
    Ok(())
}

fn look(ground: &Ground, screen: Screen, name: &str, units: &str) -> Result<()> {
    ground.visit(screen, "", async |page| {
        page.click(&format!("#units label:has([value={units}])"))
            .await?;
        page.studied().await?;
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
        fits(page, screen).await?;
        page.click("#features [data-kind=jump] .feature").await?;
        page.picture(&format!("{name}-jump.png")).await
    })
}

pub fn phone(ground: &Ground) -> Result<()> {
    look(ground, Screen::Phone, "phone", "feet")
}

/// Parts of the page that are read and set, each of which can be brought in sight.
const PARTS: [&str; 6] = [
    "#told",
    "#lips [data-lip='1'] [data-what=how]",
    "#cards li",
    "#costs tbody tr:last-child",
    "#features [data-kind=jump] .feature",
    "#lines summary",
];

/// Largest share of the screen that the ride and its tools cover, wherever the page is scrolled to.
const COVERED: f64 = 0.55;

/// On a low screen ride and tools leave room for the rest, and nothing lies over it.
fn low(ground: &Ground, screen: Screen, name: &str) -> Result<()> {
    ground.visit(screen, "", async |page| {
        page.studied().await?;
        page.picture(&format!("{name}.png")).await?;
        let covered = "\
            const at = (x, y) => document.elementFromPoint(x, y)?.closest('#ride, #controls') ? 1 : 0; \
            const share = () => { let over = 0; \
              for (let i = 0; i < 400; i++) over += at(innerWidth * (i % 20 + 0.5) / 20, innerHeight * (Math.floor(i / 20) + 0.5) / 20); \
              return over / 400; }; \
            const long = document.documentElement.scrollHeight - innerHeight; \
            return [0, 0.2, 0.4, 0.6, 0.8, 1].map(part => { scrollTo(0, part * long); return share(); })";
        let covered: Vec<f64> = page.ask(covered).await?;
        println!("ride and tools cover {covered:?}");
        ensure!(
            covered.iter().all(|&share| share <= COVERED),
            "ride and tools cover {covered:?}; accepted {COVERED}"
        );
        for part in PARTS {
            let seen = format!(
                "const part = document.querySelector({part:?}); part.scrollIntoView({{ block: 'center', behavior: 'instant' }}); \
                 const box = part.getBoundingClientRect(), x = box.left + box.width / 2, y = Math.min(box.top + box.height / 2, innerHeight - 8); \
                 const on = document.elementFromPoint(x, y); return !!on && (part.contains(on) || on.contains(part))"
            );
            ensure!(page.ask::<bool>(&seen).await?, "{part} is covered");
            if part.starts_with("#lips") {
                page.picture(&format!("{name}-lips.png")).await?;
            }
        }
        fits(page, screen).await?;
        // The ride itself is in sight, tools and all.
        for scrolled in [0, 400] {
            let ride = format!(
                "scrollTo(0, {scrolled}); const of = id => document.getElementById(id).getBoundingClientRect(); \
                 return [of('drawing').top, of('drawing').height, of('controls').bottom, innerHeight]"
            );
            let [top, height, bottom, screen]: [f64; 4] = page.ask(&ride).await?;
            ensure!(
                top >= -1.0 && height >= 140.0 && bottom <= screen + 1.0,
                "scrolled by {scrolled} the drawing begins at {top} and is {height} high, the tools end at {bottom} of {screen}"
            );
        }
        Ok(())
    })
}

pub fn sideways(ground: &Ground) -> Result<()> {
    low(ground, Screen::Sideways, "sideways")
}

pub fn enlarged(ground: &Ground) -> Result<()> {
    low(ground, Screen::Enlarged, "enlarged")
}

pub fn desk(ground: &Ground) -> Result<()> {
    look(ground, Screen::Desk, "desk", "metric")
}
