//! Drawing the line by hand: grips by mouse and by key.

use anyhow::{Result, ensure};
use browser::{Gauge, Ground, Page, SLOWER, Screen, Since};
use serde_json::json;
use std::time::Duration;

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
        let ridden = "!document.documentElement.dataset.working";
        page.wait_for("the ride of what was dragged", ridden)
            .await?;
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

/// A finger takes a grip and lifts it by so many pixels, wherever the page is scrolled to.
async fn lift(page: &Page, part: &str, up: f64) -> Result<()> {
    let middle = format!(
        "const {{ left, top, width, height }} = document.querySelector('.grip[data-part={part}]').getBoundingClientRect(); \
         return [left + width / 2, top + height / 2]"
    );
    let [x, y]: [f64; 2] = page.ask(&middle).await?;
    for (kind, dy) in [
        ("touchStart", 0.0),
        ("touchMove", 0.5 * up),
        ("touchMove", up),
    ] {
        let touch = json!({ "type": kind, "touchPoints": [{ "x": x, "y": y - dy }] });
        page.devtools("Input.dispatchTouchEvent", touch).await?;
    }
    let end = json!({ "type": "touchEnd", "touchPoints": [] });
    page.devtools("Input.dispatchTouchEvent", end).await?;
    page.drawn().await
}

const LIP: &str =
    "Number.parseFloat(document.querySelector('[data-field$=\"lip.height\"] input').value)";

/// How far down the screen the lip's field is, px: what is above it may grow and shrink with the study.
const FIELD: &str =
    "document.querySelector('[data-field$=\"lip.height\"] input').getBoundingClientRect().top";

pub fn a_finger_leaves_the_page_where_it_is(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        take_the_second_jump(page).await?;
        page.studied().await?;
        page.stands().await?;
        let scrolled = number(page, "scrollY").await?;
        ensure!(scrolled > 1000.0, "the form is only {scrolled} px down");
        let (before, stood) = (number(page, LIP).await?, number(page, FIELD).await?);
        lift(page, "lip", 20.0).await?;
        ensure!(number(page, LIP).await? > before, "no finger took the grip");
        let stands = number(page, FIELD).await?;
        ensure!(
            (stands - stood).abs() < 2.0,
            "the field went from {stood} to {stands} px"
        );
        Ok(())
    })
}

pub fn one_drag_is_one_step(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        take_the_second_jump(page).await?;
        let mut heights = vec![number(page, LIP).await?];
        for _ in 0..2 {
            lift(page, "lip", 15.0).await?;
            heights.push(number(page, LIP).await?);
        }
        ensure!(
            heights[0] < heights[1] && heights[1] < heights[2],
            "{heights:?}"
        );
        for before in heights.iter().rev().skip(1) {
            page.click("#undo").await?;
            let now = number(page, LIP).await?;
            ensure!(
                now == *before,
                "undone, the lip is {now} m high, not {before}"
            );
        }
        Ok(())
    })
}

pub fn the_whole_line_is_dragged_finely(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        take_the_second_jump(page).await?;
        page.click("#whole").await?;
        page.wait_for(
            "the grips",
            "document.querySelector('.grip[data-part=lip]')",
        )
        .await?;
        // The grips follow the view within a frame or two.
        page.seek(2.0).await?;
        let before = number(page, LIP).await?;
        lift(page, "lip", 12.0).await?;
        let by = number(page, LIP).await? - before;
        println!("12 px raise the lip by {by:.2} m");
        ensure!(by > 0.05 && by < 0.3, "12 px raise the lip by {by} m");
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

/// How large the chosen feature is drawn, px to the metre.
const SCALE: &str = "Number(document.querySelector('.grip[data-part=knuckle]').dataset.scale)";

/// The scale before and after something is done, once it has changed.
async fn rescaled(page: &Page, does: impl AsyncFnOnce() -> Result<()>) -> Result<[f64; 2]> {
    let before = number(page, SCALE).await?;
    does().await?;
    page.wait_for("another scale", &format!("{SCALE} !== {before}"))
        .await?;
    Ok([before, number(page, SCALE).await?])
}

pub fn a_wheel_and_two_keys_come_nearer_and_go_back(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        take_the_second_jump(page).await?;
        page.stands().await?;
        let scrolled = number(page, "scrollY").await?;
        // The middle of what is in sight of the drawing.
        let middle = "((box) => (Math.max(box.top, 0) + box.bottom) / 2)(document.getElementById('drawing').getBoundingClientRect())";
        let y = number(page, middle).await?;
        let turn = async |by: f64| {
            let event =
                json!({ "type": "mouseWheel", "x": 300, "y": y, "deltaX": 0, "deltaY": by });
            page.devtools("Input.dispatchMouseEvent", event).await
        };
        let [far, near] = rescaled(page, async || turn(-100.0).await).await?;
        ensure!(near > far, "a wheel turned away: {far} to {near}");
        let [_, back] = rescaled(page, async || turn(100.0).await).await?;
        ensure!((back - far).abs() < 1e-6, "and back: {back}, not {far}");
        ensure!(
            number(page, "scrollY").await? == scrolled,
            "the page was scrolled instead"
        );
        let [far, near] = rescaled(page, async || page.press("body", '+').await).await?;
        ensure!(near > far, "+: {far} to {near}");
        let [_, back] = rescaled(page, async || page.press("body", '-').await).await?;
        ensure!((back - far).abs() < 1e-6, "-: {back}, not {far}");
        Ok(())
    })
}

pub fn two_fingers_that_part_come_nearer(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        take_the_second_jump(page).await?;
        let top = number(
            page,
            "document.getElementById('drawing').getBoundingClientRect().top",
        )
        .await?;
        let fingers = async |kind: &str, apart: &[f64]| {
            let points: Vec<_> = (0..)
                .zip(apart)
                .map(|(id, x)| json!({ "x": 180.0 + x, "y": top + 40.0, "id": id }))
                .collect();
            let event = json!({ "type": kind, "touchPoints": points });
            page.devtools("Input.dispatchTouchEvent", event).await
        };
        let [far, near] = rescaled(page, async || {
            fingers("touchStart", &[-30.0]).await?;
            fingers("touchStart", &[-30.0, 30.0]).await?;
            for apart in [35.0, 40.0, 45.0] {
                fingers("touchMove", &[-apart, apart]).await?;
            }
            fingers("touchEnd", &[]).await
        })
        .await?;
        page.wait_for(
            "the last move",
            &format!("Math.abs({SCALE} - {far} * 1.5) < 1e-6"),
        )
        .await?;
        println!("{far} px to the metre, then {near}");
        Ok(())
    })
}

/// Moves of a finger that are followed, and how far each goes, px.
const MOVES: usize = 40;
const STEP: f64 = 1.5;

/// Drags the knuckle with a finger on the screen, move by move, and lets go.
async fn drag_slowly(page: &Page) -> Result<()> {
    drag_and(page, MOVES, async || Ok(())).await
}

/// The same in so many moves, with something done before the finger lets go.
async fn drag_and(
    page: &Page,
    moves: usize,
    before: impl AsyncFnOnce() -> Result<()>,
) -> Result<()> {
    let middle = "const box = document.querySelector('.grip[data-part=knuckle]').getBoundingClientRect(); \
        return [box.x + box.width / 2, box.y + box.height / 2]";
    let [x, y]: [f64; 2] = page.ask(middle).await?;
    let finger = async |kind: &str, moved: Option<f64>| {
        let points: Vec<_> = moved
            .into_iter()
            .map(|m| json!({ "x": x + m, "y": y }))
            .collect();
        let event = json!({ "type": kind, "touchPoints": points });
        page.devtools("Input.dispatchTouchEvent", event).await
    };
    finger("touchStart", Some(0.0)).await?;
    for i in 1..=moves {
        finger("touchMove", Some(STEP * i as f64)).await?;
    }
    before().await?;
    finger("touchEnd", None).await
}

pub fn the_table_follows_a_finger_that_rests(ground: &Ground) -> Result<()> {
    const LANDINGS: &str = "#lips tbody [data-what=landing]";
    ground.visit(Screen::Phone, "", async |page| {
        take_the_second_jump(page).await?;
        page.studied().await?;
        let before = page.texts(LANDINGS).await?;
        let mut held = Vec::new();
        // The ride of the first is shown at once, that of the second would be too soon after it.
        drag_and(page, 2, async || {
            tokio::time::sleep(Duration::from_secs(1)).await;
            held = page.texts(LANDINGS).await?;
            Ok(())
        })
        .await?;
        ensure!(held != before, "nothing followed");
        page.studied().await?;
        let after = page.texts(LANDINGS).await?;
        ensure!(
            held == after,
            "under the finger {held:?}, and then {after:?}"
        );
        Ok(())
    })
}

pub fn the_picture_follows_in_the_same_frame(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        take_the_second_jump(page).await?;
        page.studied().await?;
        // The frame that a move falls into is looked at once the page has drawn it.
        let watch = "window.seen = { moves: 0, followed: 0 }; let before = 0; \
            const canvas = document.getElementById('drawing'); \
            const drawn = () => canvas.getContext('2d').getImageData(0, canvas.height * 0.3, canvas.width, canvas.height * 0.4).data.reduce((sum, v, i) => (sum * 31 + v) % 2147483647, 7); \
            addEventListener('pointermove', event => { if (!event.buttons || seen.waiting) return; seen.waiting = true; \
              requestAnimationFrame(() => { const now = drawn(); seen.moves += 1; if (now !== before) seen.followed += 1; \
                before = now; seen.waiting = false; }); }, { capture: true }); return true";
        page.ask::<bool>(watch).await?;
        drag_slowly(page).await?;
        let [moves, followed]: [usize; 2] = page.ask("return [seen.moves, seen.followed]").await?;
        println!("of {moves} frames with a move, {followed} showed it");
        ensure!(moves > MOVES / 2, "only {moves} moves came");
        // The first only takes hold.
        ensure!(followed + 2 >= moves, "only {followed} of {moves} frames showed their move");
        Ok(())
    })
}

/// Longest that moves usually take on such a processor from when the page gets them until their frame is drawn,
/// ms: one refresh of a screen.
const PROMPT: f64 = 16.7;

pub fn the_picture_follows_promptly_on_a_slow_phone(ground: &Ground) -> Result<()> {
    const BEGIN: &str = "dragging begins";
    const END: &str = "dragging ends";
    ground.visit_traced(Screen::Phone, async |page| {
        take_the_second_jump(page).await?;
        page.studied().await?;
        page.ask::<bool>(
            "window.rides = 0; new MutationObserver(() => rides += 1) \
               .observe(document.querySelector('#lips tbody'), { childList: true, subtree: true }); return true",
        )
        .await?;
        page.gauge(Gauge::Painting).await?;
        page.mark(BEGIN).await?;
        drag_and(page, MOVES, async || page.mark(END).await).await?;
        let rides: usize = page.ask("return rides").await?;
        ensure!(rides > 0, "nothing was ridden while it was dragged");
        let mut moves = page.work(Since::Mark(BEGIN), END).await?.moves();
        ensure!(moves.len() > MOVES / 2, "only {} moves came", moves.len());
        moves.sort_by(f64::total_cmp);
        let [usual, most] = [moves.len() / 2, moves.len() - 1].map(|i| SLOWER * moves[i]);
        println!(
            "{} moves, on a processor {SLOWER} times slower drawn after usually {usual:.1} ms, at most {most:.1}; ridden {rides} times",
            moves.len()
        );
        ensure!(usual <= PROMPT, "usually {usual:.1} ms; accepted {PROMPT} ms");
        Ok(())
    })
}
