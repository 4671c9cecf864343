//! A walk through all that the page can show, for those who look at every word of it.

use anyhow::Result;
use browser::Page;
use sim::link::encode_with;
use sim::plan::demo;

/// A line with names that belong to no language, made with another model.
fn sent() -> String {
    let mut plan = demo();
    plan.name = "O".to_owned();
    for (mount, name) in plan.riders.iter_mut().zip(["A", "B"]) {
        name.clone_into(&mut mount.label);
    }
    encode_with(&plan, sim::constants::MODEL_VERSION + 1)
}

async fn run(page: &Page, script: &str) -> Result<()> {
    page.ask::<Option<bool>>(script).await?;
    Ok(())
}

/// Clicks by script: the page may be scrolling, and at a desk some buttons are out of sight.
async fn press(page: &Page, css: &str) -> Result<()> {
    run(page, &format!("document.querySelector({css:?}).click()")).await
}

/// Opens every part that can be opened.
async fn open_all(page: &Page) -> Result<()> {
    run(
        page,
        "for (const d of document.querySelectorAll('details')) d.open = true",
    )
    .await?;
    // The list of lines is written once its part is open.
    page.wait_for("the lines", "document.querySelector('#new-line')")
        .await
}

async fn plan(page: &Page, see: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    for kind in ["start_ramp", "flat", "roller", "jump", "run_out"] {
        press(page, &format!("#features [data-kind={kind}] .feature")).await?;
        see(kind).await?;
    }
    press(page, "#features [data-kind=jump] .feature").await?;
    for text in ["9 m", "tall", "0.6"] {
        page.fill("[data-field$='lip.height'] input", text).await?;
        see(&format!("a lip of {text:?}")).await?;
    }
    open_all(page).await?;
    see("all parts open").await?;
    run(
        page,
        "document.getElementById('readings-text').value = '0 0\\n20 low\\n40'; \
         document.getElementById('readings-use').click()",
    )
    .await?;
    see("readings that cannot be read").await?;
    for (fall, view) in [
        ("much", "answers that cannot be read"),
        ("1 m", "answers that give no line"),
    ] {
        // At once: the form is made anew whenever a line is kept.
        run(
            page,
            &format!(
                "const answer = (name) => document.querySelector(`#new-line [data-answer=${{name}}] input`); \
                 answer('length').value = '5 m'; answer('fall').value = {fall:?}; \
                 document.querySelector('#new-line [type=submit]').click()"
            ),
        )
        .await?;
        see(view).await?;
    }
    Ok(())
}

async fn day(page: &Page, see: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    for kind in ["time", "speed", "landed", "stopped"] {
        press(page, &format!("#see label:has([value={kind}])")).await?;
        press(page, "#see-add").await?;
        see(&format!("{kind} to be typed in")).await?;
    }
    press(page, "#see label:has([value=time])").await?;
    page.fill("#see-seconds", "1.9 s").await?;
    press(page, "#see-add").await?;
    page.studied().await?;
    open_all(page).await?;
    see("a time seen").await?;
    press(page, "#see label:has([value=time])").await?;
    page.fill("#see-seconds", "4.9 s").await?;
    press(page, "#see-add").await?;
    page.studied().await?;
    see("a contradiction").await
}

/// Calls `see` with every view there is, by name.
pub async fn walk(page: &Page, mut see: impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    press(page, "#units label:has([value=metric])").await?;
    see("the start").await?;
    page.studied().await?;
    see("a line that works").await?;
    for id in ["slow", "slow", "view", "whole", "play", "sound"] {
        press(page, &format!("#{id}")).await?;
        see(&format!("after {id}")).await?;
    }
    for id in ["whole", "sound"] {
        press(page, &format!("#{id}")).await?;
    }
    let all = "for (const b of document.querySelectorAll('#what-if button')) b.click()";
    run(page, all).await?;
    page.studied().await?;
    see("what if").await?;
    plan(page, &mut see).await?;
    day(page, &mut see).await?;
    press(page, "#share").await?;
    see("the panel to send from").await?;
    press(page, "#send-close").await?;
    press(page, "#features [data-kind=start_ramp] .feature").await?;
    for height in ["0.9 m", "6 m"] {
        page.fill("[data-field$='platform_height'] input", height)
            .await?;
        page.studied().await?;
        see(&format!("a start of {height}")).await?;
    }
    page.go("#nothing").await?;
    see("a link that is none").await?;
    page.go(&format!("#{}", sent())).await?;
    page.studied().await?;
    see("a line that was sent").await
}
