//! The ride from the side and from the saddle: both move, and neither jerks.

use anyhow::{Context, Result, ensure};
use browser::{Ground, Page, Screen};
use serde_json::json;
use sim::plan::demo;
use sim::ride::Sample;
use sim::setup::ride_plan;

/// Longest frame of a whole ride with the processor slowed four times, ms.
const LONGEST: f64 = 50.0;
/// Usual frame of the same, ms: sixty a second, and a tenth of a frame for the clock.
const USUAL: f64 = 18.3;
/// Rides that are timed, of which the best counts: the machine has other work now and then, the page has not.
const RIDES: u32 = 3;

async fn pixels(page: &Page, canvas: &str) -> Result<String> {
    page.ask(&format!(
        "return document.getElementById('{canvas}').toDataURL()"
    ))
    .await
}

async fn hold(page: &Page) -> Result<()> {
    page.wait_for("the ride to begin", "document.querySelector('#play.on')")
        .await?;
    page.click("#play").await
}

/// Whether each canvas has pixels on the screen.
async fn shown(page: &Page) -> Result<[bool; 2]> {
    page.ask("return ['drawing', 'saddle'].map(id => document.getElementById(id).clientWidth > 0)")
        .await
}

async fn differ(page: &Page, canvas: &str) -> Result<()> {
    let mut seen = Vec::new();
    for moment in [0.5, 2.0, 3.5, 4.3, 4.6, 5.5] {
        page.seek(moment).await?;
        let now = pixels(page, canvas).await?;
        ensure!(
            !seen.contains(&now),
            "{canvas} at {moment} s was seen before"
        );
        seen.push(now);
    }
    Ok(())
}

pub fn one_at_a_time_on_a_phone(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        hold(page).await?;
        ensure!(shown(page).await? == [true, false]);
        differ(page, "drawing").await?;
        page.seek(4.6).await?;
        let moment = "return document.getElementById('scrub').value";
        let before: String = page.ask(moment).await?;
        page.click("#view").await?;
        ensure!(shown(page).await? == [false, true]);
        let after: String = page.ask(moment).await?;
        ensure!(
            before == after,
            "the view changed and so did the time, {before} to {after}"
        );
        differ(page, "saddle").await?;
        page.picture("phone-saddle.png").await?;
        page.click("#view").await?;
        ensure!(shown(page).await? == [true, false]);
        Ok(())
    })
}

pub fn both_at_a_desk(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        hold(page).await?;
        ensure!(shown(page).await? == [true, true]);
        differ(page, "drawing").await?;
        differ(page, "saddle").await?;
        // The whole line has the whole width.
        page.click("#whole").await?;
        ensure!(shown(page).await? == [true, false]);
        Ok(())
    })
}

/// The moment at which the first flight of the demonstration that is one has begun, s.
fn first_flight() -> Result<f64> {
    let ridden = ride_plan(&demo(), 0).map_err(|faults| anyhow::anyhow!("{faults:?}"))?;
    let aloft = |s: &Sample| s.rear_load <= 0.0 && s.front_load <= 0.0;
    let mut flights = ridden.run.samples.chunk_by(|a, b| aloft(a) == aloft(b));
    let long = flights.find(|f| aloft(&f[0]) && f.len() > 30);
    Ok(long.context("nobody flies")?[0].t)
}

pub fn slow_motion_sets_in_in_the_air(ground: &Ground) -> Result<()> {
    let flight = first_flight()?;
    ground.visit(Screen::Phone, "", async |page| {
        hold(page).await?;
        // Full speed, slow in the air.
        page.click("#slow").await?;
        // How much of the ride goes by in half a second from a moment on, s.
        let passes = async |from: f64| -> Result<f64> {
            page.seek(from).await?;
            page.ask(
                "const scrub = document.getElementById('scrub'), play = document.getElementById('play'); \
                 const from = scrub.valueAsNumber; play.click(); \
                 return new Promise(done => setTimeout(() => { play.click(); \
                   requestAnimationFrame(() => requestAnimationFrame(() => done(scrub.valueAsNumber - from))); }, 500))",
            )
            .await
        };
        let ground = passes(2.0).await?;
        let air = passes(flight).await?;
        println!("half a second on the ground shows {ground:.2} s of the ride, in the air {air:.2} s");
        ensure!(ground > 0.4 && air < 0.3, "{ground} s on the ground, {air} s in the air");
        Ok(())
    })
}

pub fn reduced_motion_stops_the_camera(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        let features = json!([{ "name": "prefers-reduced-motion", "value": "reduce" }]);
        page.devtools("Emulation.setEmulatedMedia", json!({ "features": features }))
            .await?;
        page.go("").await?;
        ensure!(
            page.ask::<bool>("return !document.querySelector('#play.on')").await?,
            "the ride begins by itself"
        );
        ensure!(
            page.ask::<bool>("return document.getElementById('whole').getAttribute('aria-pressed') === 'true'").await?,
            "the view moves unasked"
        );
        page.click("#whole").await?;
        // From the side: the rider moves, the ground at the right edge stands still, but for one step of the
        // camera at the most.
        let edge = "const c = document.getElementById('drawing'); \
            return [...c.getContext('2d').getImageData(c.width * 0.94, c.height * 0.6, c.width * 0.05, c.height * 0.4).data].join()";
        let (mut grounds, mut all) = (Vec::new(), Vec::new());
        for moment in [2.6, 2.65, 2.7, 2.75, 2.8, 2.85] {
            page.seek(moment).await?;
            grounds.push(page.ask::<String>(edge).await?);
            all.push(pixels(page, "drawing").await?);
        }
        grounds.dedup();
        all.dedup();
        ensure!(grounds.len() <= 2, "the camera moves {} times", grounds.len() - 1);
        ensure!(all.len() == 6, "the rider moves {} times", all.len() - 1);
        page.click("#view").await?;
        page.seek(4.1).await?;
        let still = pixels(page, "saddle").await?;
        page.seek(4.9).await?;
        ensure!(still == pixels(page, "saddle").await?, "the eye moves");
        page.seek(5.1).await?;
        ensure!(still != pixels(page, "saddle").await?, "the eye never opens again");
        Ok(())
    })
}

/// Frames of one whole ride, ms, shortest first.
async fn frames(page: &Page) -> Result<Vec<f64>> {
    page.click("#restart").await?;
    page.ask::<bool>(
        "window.frames_ = []; let before; \
         const frame = now => { if (before !== undefined) frames_.push(now - before); before = now; \
           if (document.querySelector('#play.on')) requestAnimationFrame(frame); else frames_.ended = true; }; \
         requestAnimationFrame(frame); return true",
    )
    .await?;
    let wait = page.duration().await? + 0.5;
    tokio::time::sleep(std::time::Duration::from_secs_f64(wait)).await;
    page.wait_for("the ride to end", "frames_.ended").await?;
    let mut frames: Vec<f64> = page.ask("return [...frames_]").await?;
    frames.sort_by(f64::total_cmp);
    Ok(frames)
}

fn smooth(ground: &Ground, screen: Screen, saddle: bool) -> Result<()> {
    ground.visit(screen, "", async |page| {
        page.wait_for("the study", "!document.documentElement.dataset.working")
            .await?;
        if saddle {
            page.click("#view").await?;
        }
        page.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": 4 }))
            .await?;
        let mut told = Vec::new();
        for _ in 0..RIDES {
            let frames = frames(page).await?;
            ensure!(
                frames.len() > 100,
                "only {} frames in a whole ride",
                frames.len()
            );
            let (usual, longest) = (frames[frames.len() / 2], frames[frames.len() - 1]);
            told.push(format!(
                "{} frames, usually {usual:.1} ms, at most {longest:.1} ms",
                frames.len()
            ));
            if usual <= USUAL && longest <= LONGEST {
                println!("{}", told.join("; "));
                return Ok(());
            }
        }
        anyhow::bail!(
            "four times slower: {}; accepted usually {USUAL} ms, at most {LONGEST} ms",
            told.join("; ")
        )
    })
}

pub fn run_smoothly_from_the_side(ground: &Ground) -> Result<()> {
    smooth(ground, Screen::Phone, false)
}

pub fn run_smoothly_from_the_saddle(ground: &Ground) -> Result<()> {
    smooth(ground, Screen::Phone, true)
}

pub fn run_smoothly_at_a_desk(ground: &Ground) -> Result<()> {
    smooth(ground, Screen::Desk, false)
}
