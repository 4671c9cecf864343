//! The ride from the side and from the saddle: both move, and neither jerks.

use anyhow::{Context, Result, ensure};
use browser::{Gauge, Ground, Page, SLOWER, Screen, Since, Work};
use serde_json::json;
use sim::plan::demo;
use sim::ride::Sample;
use sim::setup::ride_plan;
use std::time::Duration;

/// Longest piece of work during a ride, ms: what lasts longer is felt (W3C, Long Tasks API, 2.1: 50 ms).
const LONGEST: f64 = 50.0;
/// Largest share of the frames of a ride in which the page is laid out anew.
const LAID_OUT: f64 = 0.25;

/// Most that the pens do in one of the [`MOMENTS`], usually: strokes of a pen, and points that they run through.
/// Set a tenth over what was counted when a frame took 12 to 16 ms of a processor four times slower than a calm
/// one, where a screen at sixty a second gives 16.7.
struct Usual {
    strokes: usize,
    points: usize,
}

/// Moments of the ride in which the strokes are counted, and the time between them, s.
const MOMENTS: u32 = 40;
const BETWEEN: f64 = 0.25;

/// Marks in what is traced.
const BEGIN: &str = "watching begins";
const END: &str = "watching ends";

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
        // How much of the ride goes by from a moment on, in times of what goes by of the frames' own time in
        // half a second. A frame that is late counts for a tenth of a second, as it does for the page.
        let passes = async |from: f64| -> Result<f64> {
            page.seek(from).await?;
            page.ask(
                "const scrub = document.getElementById('scrub'), play = document.getElementById('play'); \
                 const from = scrub.valueAsNumber; play.click(); \
                 return new Promise(done => { let passed = 0, before; const frame = now => { \
                   if (before !== undefined) passed += Math.min((now - before) / 1000, 0.1); before = now; \
                   if (passed < 0.5) return requestAnimationFrame(frame); \
                   play.click(); \
                   requestAnimationFrame(() => requestAnimationFrame(() => done((scrub.valueAsNumber - from) / passed))); }; \
                   requestAnimationFrame(frame); })",
            )
            .await
        };
        let ground = passes(2.0).await?;
        let air = passes(flight).await?;
        println!("on the ground the ride goes by {ground:.2} times as fast as it is ridden, in the air {air:.2} times");
        ensure!(ground > 0.8 && air < 0.6, "{ground} on the ground, {air} in the air");
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

/// What the pens of both canvases do at one moment of the ride: strokes and points, most of them last.
async fn strokes(page: &Page) -> Result<[Vec<usize>; 2]> {
    // The pieces that gauge the machine are drawn too, and would count.
    let count = "\
        clearInterval(window.gauging); \
        const kind = CanvasRenderingContext2D.prototype; \
        window.strokes = { strokes: 0, points: 0 }; \
        const counted = (names, what) => names.forEach(name => { \
          const real = kind[name]; \
          kind[name] = function (...order) { strokes[what] += 1; return real.apply(this, order); }; }); \
        counted(['clearRect', 'fill', 'stroke', 'fillText', 'strokeText'], 'strokes'); \
        counted(['moveTo', 'lineTo', 'arc'], 'points'); return true";
    ensure!(page.ask::<bool>(count).await?);
    let [mut strokes, mut points] = [Vec::new(), Vec::new()];
    for moment in 1..=MOMENTS {
        ensure!(
            page.ask::<bool>("window.strokes.strokes = window.strokes.points = 0; return true")
                .await?
        );
        page.seek(BETWEEN * f64::from(moment)).await?;
        let [laid, through]: [usize; 2] = page
            .ask("return [window.strokes.strokes, window.strokes.points]")
            .await?;
        strokes.push(laid);
        points.push(through);
    }
    strokes.sort_unstable();
    points.sort_unstable();
    Ok([strokes, points])
}

/// Watches one whole ride; gives what the page worked meanwhile.
async fn watch(page: &Page) -> Result<Work> {
    page.mark(BEGIN).await?;
    page.click("#restart").await?;
    let wait = Duration::from_secs_f64(10.0 * page.duration().await?);
    page.wait(
        wait,
        "the ride to end",
        "!document.querySelector('#play.on')",
    )
    .await?;
    page.mark(END).await?;
    page.work(Since::Mark(BEGIN), END).await
}

fn smooth(ground: &Ground, screen: Screen, saddle: bool, usual: &Usual) -> Result<()> {
    ground.visit_traced(screen, async |page| {
        // Still while it is studied: the driver keeps so many entries of a trace, and none that come after.
        page.click("#play").await?;
        page.studied().await?;
        if saddle {
            page.click("#view").await?;
        }
        page.gauge(Gauge::Painting).await?;
        let work = watch(page).await?;
        let mut frames = work.frames();
        ensure!(
            frames.len() > 100,
            "only {} frames in a whole ride",
            frames.len()
        );
        frames.sort_by(f64::total_cmp);
        let [half, longest] = [frames.len() / 2, frames.len() - 1].map(|i| frames[i]);
        let laid_out = work.layouts as f64 / frames.len() as f64;
        let [strokes, points] = strokes(page).await?;
        let [laid, through] = [strokes[strokes.len() / 2], points[points.len() / 2]];
        println!(
            "{} frames, laid out in {:.0} % of them, on a processor {SLOWER} times slower usually {:.1} ms, at most \
             {:.1} ms; usually {laid} strokes through {through} points",
            frames.len(), 100.0 * laid_out, SLOWER * half, SLOWER * longest
        );
        ensure!(longest <= LONGEST, "a frame took {longest:.1} ms; accepted {LONGEST} ms");
        ensure!(
            laid_out > 0.0 && laid_out <= LAID_OUT,
            "laid out in a share of {laid_out:.2} of the frames; accepted {LAID_OUT}"
        );
        ensure!(
            (1..=usual.strokes).contains(&laid) && (1..=usual.points).contains(&through),
            "usually {laid} strokes through {through} points; accepted {} through {}",
            usual.strokes, usual.points
        );
        Ok(())
    })
}

pub fn run_smoothly_from_the_side(ground: &Ground) -> Result<()> {
    let usual = Usual {
        strokes: 95,
        points: 380,
    };
    smooth(ground, Screen::Phone, false, &usual)
}

pub fn run_smoothly_from_the_saddle(ground: &Ground) -> Result<()> {
    let usual = Usual {
        strokes: 155,
        points: 1980,
    };
    smooth(ground, Screen::Phone, true, &usual)
}

pub fn run_smoothly_at_a_desk(ground: &Ground) -> Result<()> {
    let usual = Usual {
        strokes: 250,
        points: 2550,
    };
    smooth(ground, Screen::Desk, false, &usual)
}
