//! The reader's own lines: undone, kept, copied, and never lost.

use anyhow::{Result, ensure};
use browser::{Ground, Page, Screen};
use sim::error::Quantity;
use sim::units::{System, format};

const HEIGHT: &str = "[data-field$='platform_height'] input";
const KEPT: &str = "Object.keys(localStorage).filter(k => k.startsWith('carryline.line.'))";

async fn start_at(page: &Page, height: &str) -> Result<()> {
    let open =
        "document.querySelector('#features [data-kind=start_ramp] .feature[aria-expanded=true]')";
    if !page.ask::<bool>(&format!("return Boolean({open})")).await? {
        page.click("#features [data-kind=start_ramp] .feature")
            .await?;
    }
    page.fill(HEIGHT, height).await
}

async fn speeds(page: &Page) -> Result<Vec<String>> {
    page.texts("#lips tbody [data-what=speed]").await
}

async fn kept(page: &Page) -> Result<usize> {
    page.ask(&format!("return {KEPT}.length")).await
}

/// Heights of the start platforms of all kept lines, m, smallest first.
async fn heights(page: &Page) -> Result<Vec<f64>> {
    let script = format!(
        "return {KEPT}.map(k => JSON.parse(localStorage.getItem(k)).plan.line.features[0].platform_height).sort()"
    );
    page.ask(&script).await
}

pub fn what_was_done_is_undone(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        let mut seen = vec![speeds(page).await?];
        for height in ["2.8 m", "2.6 m", "2.4 m"] {
            start_at(page, height).await?;
            seen.push(speeds(page).await?);
            // Steps that follow each other closely are one.
            tokio::time::sleep(std::time::Duration::from_millis(800)).await;
        }
        for before in seen.iter().rev().skip(1) {
            page.click("#undo").await?;
            ensure!(
                &speeds(page).await? == before,
                "undone, the speeds are {:?}",
                speeds(page).await?
            );
        }
        ensure!(
            page.ask::<bool>("return document.getElementById('undo').disabled")
                .await?
        );
        for after in seen.iter().skip(1) {
            page.click("#redo").await?;
            ensure!(
                &speeds(page).await? == after,
                "done again, the speeds are {:?}",
                speeds(page).await?
            );
        }
        // The steps outlast a reload.
        page.reload().await?;
        for before in seen.iter().rev().skip(1).take(2) {
            page.click("#undo").await?;
            let now = speeds(page).await?;
            ensure!(
                &now == before,
                "undone after a reload, the speeds are {now:?}"
            );
        }
        Ok(())
    })
}

pub fn a_closed_page_loses_nothing(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        ensure!(
            kept(page).await? == 0,
            "something was kept before anything was changed"
        );
        start_at(page, "2.7 m").await?;
        let changed = speeds(page).await?;
        // At once, before anything that rests has been done.
        page.go("").await?;
        ensure!(
            kept(page).await? == 1,
            "{} lines are kept",
            kept(page).await?
        );
        let now = speeds(page).await?;
        ensure!(now == changed, "the speeds were {changed:?}, now {now:?}");
        Ok(())
    })
}

pub fn a_link_is_looked_at_first(ground: &Ground) -> Result<()> {
    let mut plan = sim::plan::demo();
    "Down by the well".clone_into(&mut plan.name);
    let link = format!("#{}", sim::link::encode(&plan));
    ground.visit(Screen::Phone, "", async |page| {
        start_at(page, "2.7 m").await?;
        page.go(&link).await?;
        let shown = "return document.getElementById('plan').offsetParent !== null";
        ensure!(
            !page.ask::<bool>(shown).await?,
            "a line that was sent can be edited at once"
        );
        page.picture("phone-looking.png").await?;
        ensure!(heights(page).await? == [2.7], "{:?}", heights(page).await?);
        page.click("#keep").await?;
        ensure!(page.ask::<bool>(shown).await?, "the copy cannot be edited");
        start_at(page, "2.5 m").await?;
        page.go("").await?;
        ensure!(
            heights(page).await? == [2.5, 2.7],
            "{:?}",
            heights(page).await?
        );
        ensure!(
            page.ask::<String>("return document.getElementById('plan-name').value")
                .await?
                == plan.name
        );
        Ok(())
    })
}

pub fn two_tabs_keep_both(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        start_at(page, "2.8 m").await?;
        page.wait_for("the line to be kept", &format!("{KEPT}.length === 1")).await?;
        page.second_tab().await?;
        start_at(page, "2.6 m").await?;
        page.wait_for("the other tab to keep it", &format!("JSON.parse(localStorage.getItem({KEPT}[0])).plan.line.features[0].platform_height === 2.6")).await?;
        page.first_tab().await?;
        start_at(page, "2.5 m").await?;
        page.wait_for("both to be kept", &format!("{KEPT}.length === 2")).await?;
        ensure!(heights(page).await? == [2.5, 2.6], "{:?}", heights(page).await?);
        Ok(())
    })
}

pub fn a_full_device_loses_nothing(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        let fill = "for (let size = 4e6; size >= 1; size = Math.floor(size / 2)) \
            try { for (let i = 0; i < 3; i += 1) localStorage.setItem(`fill${size}.${i}`, 'x'.repeat(size)); } catch {} \
            return true";
        ensure!(page.ask::<bool>(fill).await?);
        start_at(page, "2.7 m").await?;
        let said = "document.getElementById('message').innerText.includes('no room')";
        page.wait_for("the page to say so", said).await?;
        let changed = speeds(page).await?;
        page.wait_for("the address to follow", "location.hash.length > 50").await?;
        page.reload().await?;
        ensure!(speeds(page).await? == changed, "the line is another one");
        Ok(())
    })
}

pub fn a_first_line_follows_from_four_answers(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        page.wait_for("the offer", "!document.getElementById('begin').hidden").await?;
        // It is offered where a newcomer looks, under the first sentence on the ride.
        let offered = "const { top, bottom } = document.querySelector('#begin button').getBoundingClientRect(); \
            const { bottom: told } = document.getElementById('told').getBoundingClientRect(); return [top - told, bottom - top]";
        let [under, high]: [f64; 2] = page.ask(offered).await?;
        ensure!((0.0..60.0).contains(&under) && high >= 44.0, "offered {under} px under it, {high} high");
        page.click("#begin button").await?;
        page.wait_for("the form", "document.activeElement?.closest('#new-line')").await?;
        page.fill("[data-answer=length] input", "8 m").await?;
        page.click("#new-line button[type=submit]").await?;
        let told = page.texts("[data-answer=length] .fault").await?.concat();
        ensure!(told.contains("too short"), "of a yard of 8 m is said {told:?}");
        ensure!(kept(page).await? == 0, "a line was made of answers out of range");
        page.fill("[data-answer=length] input", "50 m").await?;
        page.fill("[data-answer=tallest] input", "2.4 m").await?;
        page.click("#new-line button[type=submit]").await?;
        page.wait_for("the new line", &format!("{KEPT}.length === 1")).await?;
        let how: Vec<String> = page
            .ask("return [...document.querySelectorAll('#lips tr[data-how]')].map(r => r.dataset.how)")
            .await?;
        ensure!(!how.is_empty() && how.iter().all(|h| h == "clean"), "{how:?}");
        // What was answered stays with the line.
        let tallest = "return document.querySelector('[data-field=\"yard.tallest\"]:not(.switch) input').value";
        let tallest: String = page.ask(tallest).await?;
        ensure!(tallest.starts_with("2.4"), "nothing taller than {tallest:?}");
        ensure!(page.ask::<bool>("return document.getElementById('begin').hidden").await?);
        // The answers are there the next time, in the reader's own units.
        page.studied().await?;
        page.reload().await?;
        page.click("#lines summary").await?;
        page.wait_for("the form", "document.querySelector('#new-line')").await?;
        let answers: Vec<String> = page
            .ask("return [...document.querySelectorAll('#new-line input')].map(i => i.value)")
            .await?;
        println!("answered {answers:?}");
        let wanted = [50.0, 2.0, 2.4].map(|v| format(v, Quantity::Length, System::Metric));
        ensure!(answers == wanted, "{answers:?}, not {wanted:?}");
        page.picture("phone-new-line.png").await?;
        page.click("#lines [data-example]:nth-of-type(2)").await?;
        page.wait_for("the example", &format!("{KEPT}.length === 2")).await
    })
}

/// A first visit offers, beside the four answers, an example and a yard with nothing on it; both are rid of faults.
pub fn a_first_visit_may_begin_with_nothing(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.wait_for("the offer", "!document.getElementById('begin').hidden")
            .await?;
        page.click("#begin [data-begin=example]").await?;
        page.wait_for(
            "the examples",
            "document.activeElement.closest('[data-example]')",
        )
        .await?;
        page.go("").await?;
        page.click("#begin [data-begin=empty]").await?;
        page.wait_for("the yard to be kept", &format!("{KEPT}.length === 1"))
            .await?;
        for kind in ["run_out", "jump", "start_ramp"] {
            page.choose("#features [data-act=add]", kind).await?;
        }
        // Whatever is added, a start ramp stands first and a run-out last.
        let kinds =
            "return [...document.querySelectorAll('#features > li')].map(li => li.dataset.kind)";
        let kinds: Vec<String> = page.ask(kinds).await?;
        println!("{kinds:?}");
        ensure!(
            kinds.first().is_some_and(|kind| kind == "start_ramp")
                && kinds.last().is_some_and(|kind| kind == "run_out")
                && kinds.len() == 4,
            "{kinds:?}"
        );
        let faults = page.texts("#faults p").await?;
        ensure!(faults.is_empty(), "{faults:?}");
        Ok(())
    })
}

/// What the list of lines says: how many are open now; of these, how many could be opened or removed; and whether
/// the focus is in the list.
async fn list(page: &Page) -> Result<(usize, usize, usize, bool)> {
    page.ask(
        "const all = [...document.querySelectorAll('#lines li')], open = all.filter(li => li.querySelector('em')); \
         return [all.length, open.length, open.filter(li => li.querySelector('[data-act=open], [data-act=remove]')).length, \
           Boolean(document.activeElement.closest('#lines'))]",
    )
    .await
}

pub fn the_list_is_true_after_every_action(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#lines > summary").await?;
        page.wait_for(
            "the examples",
            "document.querySelector('#lines [data-example]')",
        )
        .await?;
        page.click("#lines [data-example]:nth-of-type(1)").await?;
        ensure!(
            list(page).await? == (1, 1, 0, true),
            "{:?}",
            list(page).await?
        );
        page.click("#lines [data-example]:nth-of-type(2)").await?;
        ensure!(
            list(page).await? == (2, 1, 0, true),
            "{:?}",
            list(page).await?
        );
        let open = "return document.querySelector('#lines li:has(em) b').innerText";
        let second: String = page.ask(open).await?;
        page.click("#lines [data-act=open]").await?;
        ensure!(
            page.ask::<String>(open).await? != second,
            "another line is open"
        );
        ensure!(
            list(page).await? == (2, 1, 0, true),
            "{:?}",
            list(page).await?
        );
        page.click("#lines [data-act=copy]").await?;
        ensure!(
            list(page).await? == (3, 1, 0, true),
            "{:?}",
            list(page).await?
        );
        page.click("#lines [data-act=remove]").await?;
        ensure!(
            list(page).await? == (2, 1, 0, true),
            "{:?}",
            list(page).await?
        );
        page.click("#message button").await?;
        ensure!(list(page).await?.0 == 3, "{:?}", list(page).await?);
        Ok(())
    })
}

pub fn two_lines_are_compared(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        start_at(page, "2.7 m").await?;
        let first = speeds(page).await?;
        page.wait_for("the line to be kept", &format!("{KEPT}.length === 1"))
            .await?;
        page.click("#lines summary").await?;
        page.wait_for(
            "the list",
            "document.querySelector('#lines [data-example]')",
        )
        .await?;
        page.click("#lines [data-example]:nth-of-type(2)").await?;
        page.wait_for("the example", &format!("{KEPT}.length === 2"))
            .await?;
        page.click("#lines [aria-label^=Compare]").await?;
        let told = page.texts("#lips .against").await?;
        ensure!(!told.is_empty(), "no jump is compared");
        for (told, speed) in told.iter().zip(&first) {
            ensure!(told.contains(speed), "{told:?} does not say {speed}");
        }
        page.picture("desk-compared.png").await?;
        page.click("#against button").await?;
        ensure!(page.texts("#lips .against").await?.is_empty());
        Ok(())
    })
}
