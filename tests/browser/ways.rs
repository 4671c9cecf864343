//! The string along the page: every part of it is one tap away, and while fields are open undo and how the jump goes
//! stay in reach.

use super::Case;
use anyhow::{Result, ensure};
use browser::{Ground, Page, Screen};
use serde_json::json;
use sim::error::Quantity;
use sim::judge;
use sim::plan::{Feature, Line, Plan, demo};
use sim::setup::ride_plan;
use sim::units::{System, format};

pub const CASES: [(&str, Case); 9] = [
    ("ways::on_a_phone", on_a_phone),
    ("ways::sideways", sideways),
    ("ways::enlarged", enlarged),
    ("ways::at_a_desk", at_a_desk),
    ("ways::on_a_narrow_phone", on_a_narrow_phone),
    ("ways::the_tag_tells_the_jump", the_tag_tells_the_jump),
    ("ways::no_field_is_covered", no_field_is_covered),
    ("ways::over_a_keyboard", over_a_keyboard),
    ("ways::by_keys_and_not_on_paper", by_keys_and_not_on_paper),
];

/// Least size of what a thumb hits, px.
const THUMB: f64 = 44.0;

/// Where each peg leads, and an element that stands at its very begin.
const WAYS: [(&str, &str); 4] = [
    ("means", "#means > h2"),
    ("ride", "#drawing"),
    ("plan", "#plan h2"),
    ("result", "#told"),
];

/// What of a list cannot be hit in its middle as it stands, or is smaller than a thumb.
async fn out_of_reach(page: &Page, list: &[&str]) -> Result<Vec<String>> {
    let script = format!(
        "return {list:?}.filter(css => {{ const e = document.querySelector(css), {{ left, top, width, height }} = e.getBoundingClientRect(); \
         const on = document.elementFromPoint(left + width / 2, top + height / 2); \
         return !on || !e.contains(on) || width < {THUMB} || height < {THUMB}; }})"
    );
    page.ask(&script).await
}

async fn resize(page: &Page, [width, height]: [u32; 2]) -> Result<()> {
    let size = json!({ "width": width, "height": height, "deviceScaleFactor": 2, "mobile": true });
    page.devtools("Emulation.setDeviceMetricsOverride", size)
        .await?;
    page.drawn().await
}

/// Each part of the page is one tap away from wherever the page is scrolled to.
async fn lead(page: &Page, name: &str) -> Result<()> {
    page.studied().await?;
    for scrolled in [0.0, 0.3, 0.7, 1.0] {
        for (way, begin) in WAYS {
            let scroll = format!(
                "scrollTo(0, {scrolled} * (document.documentElement.scrollHeight - innerHeight)); return true"
            );
            ensure!(page.ask::<bool>(&scroll).await?);
            let peg = format!("[data-way={way}]");
            let lost = out_of_reach(page, &[&peg]).await?;
            ensure!(lost.is_empty(), "{name}, {scrolled} down: no {lost:?}");
            page.click(&peg).await?;
            page.drawn().await?;
            let arrived = format!(
                "const e = document.querySelector({begin:?}), {{ left, top, width, height }} = e.getBoundingClientRect(); \
                 const on = document.elementFromPoint(left + 9, top + Math.min(height / 2, 40)); \
                 const focus = document.activeElement; \
                 return [top, innerHeight, on && (e.contains(on) || on.contains(e)) ? 1 : 0, focus?.id === {way:?} || focus?.closest('#ride') ? 1 : 0, width]"
            );
            let [top, high, seen, focus, _]: [f64; 5] = page.ask(&arrived).await?;
            ensure!(
                top > -1.0 && top < high && seen > 0.0,
                "{name}, {scrolled} down: {begin} stands at {top} of {high}, seen {seen}"
            );
            ensure!(focus > 0.0, "{name}: {way} has not got the focus");
        }
    }
    page.picture(&format!("ways-{name}.png")).await
}

fn led(ground: &Ground, screen: Screen, name: &str) -> Result<()> {
    ground.visit(screen, "", async |page| lead(page, name).await)
}

fn on_a_phone(ground: &Ground) -> Result<()> {
    led(ground, Screen::Phone, "phone")
}

fn sideways(ground: &Ground) -> Result<()> {
    led(ground, Screen::Sideways, "sideways")
}

fn enlarged(ground: &Ground) -> Result<()> {
    led(ground, Screen::Enlarged, "enlarged")
}

fn at_a_desk(ground: &Ground) -> Result<()> {
    led(ground, Screen::Desk, "desk")
}

fn on_a_narrow_phone(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        resize(page, [320, 640]).await?;
        lead(page, "narrow").await?;
        // The tools take more rows where the type is large, and the string stays over them.
        page.ask::<Option<bool>>("document.documentElement.style.fontSize = '150%'")
            .await?;
        page.drawn().await?;
        let over = "const of = id => document.getElementById(id).getBoundingClientRect(); \
            return of('controls').top - of('ways').bottom";
        let over: f64 = page.ask(over).await?;
        ensure!(over > -1.0, "the tools cover {} px of the string", -over);
        Ok(())
    })
}

/// The demonstration with a gap of its first jump longer by so much, m.
fn longer(by: f64) -> (Plan, f64) {
    let mut plan = demo();
    let mut gap = 0.0;
    if let Line::Features(features) = &mut plan.line
        && let Some(Feature::Jump(jump)) =
            features.iter_mut().find(|f| matches!(f, Feature::Jump(_)))
    {
        jump.gap += by;
        gap = jump.gap;
    }
    (plan, gap)
}

/// Speed of the first jump, as the page writes it, and whether it is clean.
fn first(plan: &Plan) -> Result<(String, bool)> {
    let ridden = ride_plan(plan, 0).map_err(|faults| anyhow::anyhow!("{faults:?}"))?;
    let row = &judge::jumps(&ridden.profile, &ridden.run)[0];
    let speed = row
        .speed
        .map(|v| format(v, Quantity::Speed, System::Metric));
    Ok((speed.unwrap_or_default(), row.how == judge::How::Clean))
}

const TAG: &str =
    "const tag = document.getElementById('tag'); return tag.hidden ? '' : tag.innerText";

/// While a jump's fields are open its verdict and undo are in reach, and both are true at once.
fn the_tag_tells_the_jump(ground: &Ground) -> Result<()> {
    let (spoilt, gap) = longer(1.6);
    let (before, after) = (first(&demo())?, first(&spoilt)?);
    ensure!(
        before.1 && !after.1,
        "the gap does not matter: {before:?} {after:?}"
    );
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        ensure!(
            page.ask::<String>(TAG).await?.is_empty(),
            "a tag before anything is edited"
        );
        let tells = async |what: &str, text: &str| {
            let there = "document.getElementById('tag').innerText";
            page.wait_for(what, &format!("{there}.includes({text:?})"))
                .await?;
            page.ask::<String>(TAG).await
        };
        page.click("#features [data-kind=jump] .feature").await?;
        let told = tells("the jump", &before.0).await?;
        ensure!(told.contains("clean"), "{told:?}");
        page.fill("[data-field$='.gap'] input", &format!("{gap} m"))
            .await?;
        let gone = "!document.getElementById('tag').innerText.includes('clean')";
        page.wait_for("the jump as it is now", gone).await?;
        let told: String = page.ask(TAG).await?;
        println!("{told}");
        ensure!(told.contains(&after.0), "{told:?}, not {after:?}");
        // Beside the field, without scrolling.
        let lost = out_of_reach(page, &["#undo", "[data-way=ride]"]).await?;
        ensure!(lost.is_empty(), "no {lost:?} while a field is edited");
        page.picture("ways-tag.png").await?;
        page.click("#tag").await?;
        let there = "document.activeElement.closest('#lips [data-lip=\"0\"]')";
        page.wait_for("the jump's own row", there).await?;
        // What is found out meanwhile is put beside it.
        page.studied().await?;
        ensure!(
            page.ask::<bool>(&format!("return Boolean({there})"))
                .await?,
            "the study took the focus away"
        );
        page.click("#undo").await?;
        tells("the jump as it was", "clean").await?;
        page.fill("[data-field$='lip.height'] input", "9 m").await?;
        tells("what is wrong", "Cannot be ridden").await?;
        // Of a feature before it, the next jump is told.
        page.click("#undo").await?;
        tells("the jump again", "clean").await?;
        page.click("#features [data-kind=roller] .feature").await?;
        let told: String = page.ask(TAG).await?;
        ensure!(told.starts_with("Jump"), "of a roller: {told:?}");
        Ok(())
    })
}

/// Goes through all fields of a jump by key; gives those that are not wholly in sight once they have the focus.
async fn covered(page: &Page) -> Result<Vec<String>> {
    let script = "\
        const fields = [...document.querySelectorAll('#features .field:not([hidden]) :is(input, select), #features .actions :is(button, select)')].filter(e => !e.disabled); \
        const bad = []; \
        const step = i => { if (i >= fields.length) return [String(fields.length), ...bad]; \
          fields[i].focus(); \
          return new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done))).then(() => { \
            const { left, top, bottom, width } = fields[i].getBoundingClientRect(); \
            const on = y => document.elementFromPoint(left + width / 2, y); \
            if (![top + 3, (top + bottom) / 2, bottom - 3].every(y => on(y) && (fields[i] === on(y) || fields[i].contains(on(y))))) \
              bad.push(`${fields[i].closest('[data-field]')?.dataset.field ?? fields[i].dataset.act} at ${top}`); \
            return step(i + 1); }); }; \
        return Promise.resolve(step(0))";
    let mut told: Vec<String> = page.ask(script).await?;
    let count: usize = told.remove(0).parse()?;
    ensure!(count > 12, "only {count} fields");
    Ok(told)
}

fn no_field_is_covered(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        for size in [[360, 740], [320, 640], [740, 360], [720, 450], [360, 440]] {
            resize(page, size).await?;
            page.click("#features [data-kind=jump] .feature").await?;
            page.wait_for(
                "the fields",
                "document.querySelector(\"[data-field$='lip.height']\")",
            )
            .await?;
            let covered = covered(page).await?;
            ensure!(covered.is_empty(), "on {size:?} are covered: {covered:?}");
            page.click("#features .feature[aria-expanded=true]").await?;
        }
        Ok(())
    })
}

/// Over a keyboard that takes its room from the page, and over one that lies over it.
fn over_a_keyboard(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#features [data-kind=jump] .feature").await?;
        resize(page, [360, 440]).await?;
        page.ask::<Option<bool>>("document.querySelector(\"[data-field='line.features[4].gap'] input\").focus()").await?;
        page.drawn().await?;
        let lost = out_of_reach(page, &["#undo", "#redo", "[data-way=ride]", "[data-way=plan]"]).await?;
        ensure!(lost.is_empty(), "over a keyboard: no {lost:?}");
        page.picture("ways-keyboard.png").await?;
        resize(page, [360, 740]).await?;
        // As where the page is not told of it: only the part that is seen is smaller.
        let lies = "Object.defineProperty(visualViewport, 'height', { get: () => 400, configurable: true }); \
            document.querySelector(\"[data-field$='landing.height'] input\").focus(); \
            visualViewport.dispatchEvent(new Event('resize')); \
            return new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => { \
              const of = e => e.getBoundingClientRect(), strip = of(document.getElementById('ways')); \
              done([strip.bottom, strip.top, of(document.activeElement).bottom]); })))";
        let [bottom, top, field]: [f64; 3] = page.ask(lies).await?;
        ensure!((bottom - 400.0).abs() < 2.0, "the string ends at {bottom}, the keyboard begins at 400");
        ensure!(field <= top, "the field ends at {field}, under the string from {top} on");
        Ok(())
    })
}

fn by_keys_and_not_on_paper(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.press("[data-way=plan]", '\u{e007}').await?;
        page.wait_for("the plan", "document.activeElement.id === 'plan'").await?;
        let current = "document.querySelector('[data-way=plan][aria-current=true]')";
        page.wait_for("the bead to be at the plan", current).await?;
        // From there on, keys go on within the plan.
        page.press("#plan", '\u{e004}').await?;
        page.wait_for("what comes next", "document.activeElement.closest('#plan') && document.activeElement.id !== 'plan'").await?;
        page.devtools("Emulation.setEmulatedMedia", json!({ "media": "print" })).await?;
        let gone = "return ['ways', 'controls'].filter(id => getComputedStyle(document.getElementById(id)).display !== 'none')";
        let there: Vec<String> = page.ask(gone).await?;
        ensure!(there.is_empty(), "on paper there are {there:?}");
        Ok(())
    })
}
