//! A tap counts, also where the page changes in that instant.

use anyhow::{Result, ensure};
use browser::{Ground, Page, Screen};
use serde_json::{Value, json};

const STUDIED: &str = "!document.documentElement.dataset.working";
const LIP: &str = "#lips tbody tr[data-lip=\"1\"] button";

/// What opens a jump's fields: its whole list is made anew where the units change.
const FEATURE: &str = "#features [data-feature=\"6\"] .feature";

/// Which feature is open in the plan.
const OPEN: &str = "document.querySelector('#features .feature[aria-expanded=true]')?.parentElement.dataset.feature";

/// Counts what comes from workers.
const LISTEN: &str = "window.answers = 0; const Own = window.Worker; window.Worker = class extends Own { \
    constructor(...all) { super(...all); this.addEventListener('message', () => window.answers += 1); } };";

/// Answers after which the table has been written anew, or waits to be.
const ANSWERS: u32 = 3;

/// Has the page count what comes from workers, and be studied.
async fn listen(page: &Page) -> Result<()> {
    let everywhere = "Page.addScriptToEvaluateOnNewDocument";
    page.devtools(everywhere, json!({ "source": LISTEN }))
        .await?;
    page.go("").await?;
    page.wait_for("the study", STUDIED).await
}

/// Presses a lip of the table as soon as the line is another, and lets go once some of the study is there, with
/// which the table is another too. `event` is what presses, or lets go, at a point.
async fn tap_slowly(
    page: &Page,
    command: &str,
    event: impl Fn(bool, [f64; 2]) -> Value,
) -> Result<()> {
    listen(page).await?;
    page.click("#units label:has([value=feet])").await?;
    page.click("#units label:has([value=metric])").await?;
    let middle = format!(
        "const lip = document.querySelector({LIP:?}); lip.scrollIntoView({{ block: 'center', behavior: 'instant' }}); \
         window.answers = 0; const box = lip.getBoundingClientRect(); return [box.x + box.width / 2, box.y + box.height / 2]"
    );
    let at: [f64; 2] = page.ask(&middle).await?;
    page.devtools(command, event(true, at)).await?;
    page.wait_for("some of the study", &format!("answers >= {ANSWERS}"))
        .await?;
    page.devtools(command, event(false, at)).await?;
    page.wait_for("the jump that was tapped", OPEN).await?;
    // What waited for the finger to be lifted follows.
    page.wait_for("the study", STUDIED).await?;
    let windows: usize = page
        .ask("return document.querySelectorAll('#lips .window').length")
        .await?;
    ensure!(windows > 0, "the windows of speeds were never told");
    Ok(())
}

pub fn a_click_between_two_renewals_counts(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        tap_slowly(page, "Input.dispatchMouseEvent", |down, [x, y]| {
            let kind = if down {
                "mousePressed"
            } else {
                "mouseReleased"
            };
            json!({ "type": kind, "x": x, "y": y, "button": "left", "clickCount": 1 })
        })
        .await
    })
}

pub fn a_tap_between_two_renewals_counts(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        tap_slowly(page, "Input.dispatchTouchEvent", |down, [x, y]| {
            if down {
                json!({ "type": "touchStart", "touchPoints": [{ "x": x, "y": y }] })
            } else {
                json!({ "type": "touchEnd", "touchPoints": [] })
            }
        })
        .await
    })
}

/// A finger that takes hold of the drawing and moves nothing holds nothing up.
pub fn a_grip_that_is_only_touched_lets_the_study_end(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        listen(page).await?;
        page.click("#features [data-kind=start_ramp] .feature").await?;
        page.wait_for("a grip", "document.querySelector('.grip')").await?;
        page.ask::<bool>("window.answers = 0; return true").await?;
        page.press(".grip", '\u{e013}').await?;
        // The first are of rides.
        page.wait_for("the study to be under way", &format!("answers >= {ANSWERS}"))
            .await?;
        let middle = "const grip = document.querySelector('.grip'); grip.scrollIntoView({ block: 'center', behavior: 'instant' }); \
            const box = grip.getBoundingClientRect(); return [box.x + box.width / 2, box.y + box.height / 2]";
        let [x, y]: [f64; 2] = page.ask(middle).await?;
        let touch = "Input.dispatchTouchEvent";
        let points = json!([{ "x": x, "y": y }]);
        page.devtools(touch, json!({ "type": "touchStart", "touchPoints": points }))
            .await?;
        let under_way: bool = page.ask(&format!("return !({STUDIED})")).await?;
        ensure!(under_way, "the study had ended before the grip was touched");
        page.devtools(touch, json!({ "type": "touchEnd", "touchPoints": [] }))
            .await?;
        page.wait_for("the study", STUDIED).await
    })
}

/// The driver's own: what is renewed between being found and being clicked is clicked all the same.
pub fn what_is_renewed_is_found_again(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.wait_for("the study", STUDIED).await?;
        // The driver brings an element into sight before it clicks it.
        let renew = format!(
            "window.renewed = 0; const feature = document.querySelector({FEATURE:?}); \
             feature.scrollIntoView = () => {{ document.querySelector('#units input:not(:checked)').click(); renewed += feature.isConnected ? 0 : 1; }}; \
             return true"
        );
        page.ask::<bool>(&renew).await?;
        page.click(FEATURE).await?;
        page.wait_for("the jump that was clicked", &format!("renewed === 1 && {OPEN} === '6'"))
            .await
    })
}

/// Where a field of a jump stands in the window, px.
const STANDS: &str = "return document.querySelector('[data-field=\"line.features[6].gap\"]:not(.switch) input').getBoundingClientRect().top";

/// How high the page is, px.
const HIGH: &str = "document.documentElement.scrollHeight";

/// What is found out about a changed line changes rows above the field that was changed, and not its place.
pub fn what_is_edited_stays_where_it_is(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        page.click(FEATURE).await?;
        page.wait_for("the fields", OPEN).await?;
        page.wait_for("the study", STUDIED).await?;
        page.stands().await?;
        let mut moved = false;
        for gap in ["4.5", "2"] {
            // Noted before a key is taken and after, which is before anything is found out, however long the driver
            // takes.
            let note = format!(
                "const stands = () => {{ {STANDS} }}; delete window.noted; \
                 document.onbeforeinput = () => (window.before = stands()); \
                 document.oninput = ({{ target }}) => {{ \
                   if (target.value === {gap:?}) window.noted ??= [window.before, stands(), {HIGH}]; \
                 }}; \
                 return true"
            );
            page.ask::<bool>(&note).await?;
            let typed = format!("{gap} m");
            page.fill("[data-field='line.features[6].gap']:not(.switch) input", &typed)
                .await?;
            page.wait_for("the edit", "window.noted").await?;
            page.wait_for("the study", STUDIED).await?;
            let [before, edited, high]: [f64; 3] = page.ask("return noted").await?;
            let grown: f64 = page.ask(&format!("return {HIGH}")).await?;
            let studied: f64 = page.ask(STANDS).await?;
            println!("{high} to {grown} px high, {before} to {edited} to {studied} px");
            moved |= grown != high;
            for now in [edited, studied] {
                ensure!((now - before).abs() < 2.0, "{before} to {now} px");
            }
        }
        // A busy machine may have found something out before the key was looked at.
        ensure!(moved, "nothing came or went");
        Ok(())
    })
}
