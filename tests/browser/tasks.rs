//! What people come to the page for, done by a hand that counts its taps and how far it scrolls.

use super::Case;
use super::hand::{Cost, Hand};
use anyhow::{Context, Result, ensure};
use browser::{Ground, Page, Screen};
use serde_json::json;
use sim::error::Quantity;
use sim::plan::{Feature, Line, Plan, demo};
use sim::units::{System, edit, parse};

/// What each task takes, on a phone and at a desk: as counted, so that it never becomes more.
const FLOORS: [(&str, [Cost; 2]); 20] = [
    (
        "understand the demonstration",
        [cost(2, 1164.0), cost(2, 0.0)],
    ),
    (
        "what a row of rollers costs",
        [cost(2, 318.0), cost(2, 0.0)],
    ),
    ("what pumping does", [cost(2, 331.0), cost(2, 0.0)]),
    ("read the test day", [cost(2, 490.0), cost(2, 0.0)]),
    ("a line from nothing", [cost(8, 168.0), cost(8, 0.0)]),
    ("two rollers and a jump", [cost(6, 426.0), cost(6, 0.0)]),
    (
        "all clean by what is suggested",
        [cost(3, 1385.0), cost(3, 116.0)],
    ),
    ("drag, undo, redo, reload", [cost(6, 76.0), cost(6, 0.0)]),
    ("lengths in six spellings", [cost(8, 0.0), cost(8, 0.0)]),
    ("a start for one km/h more", [cost(5, 0.0), cost(5, 0.0)]),
    ("damp ground", [cost(4, 536.0), cost(4, 28.0)]),
    (
        "a second rider comes and goes",
        [cost(6, 1486.0), cost(6, 605.0)],
    ),
    (
        "a link copied, opened, copied, damaged",
        [cost(3, 0.0), cost(3, 0.0)],
    ),
    ("four files, one read back", [cost(8, 0.0), cost(8, 0.0)]),
    (
        "two timings and a landing",
        [cost(15, 2555.0), cost(15, 0.0)],
    ),
    ("by keys alone", [cost(13, 0.0), cost(13, 0.0)]),
    ("in the dark", [cost(4, 308.0), cost(4, 0.0)]),
    ("with less motion", [cost(4, 308.0), cost(4, 0.0)]),
    ("320 px", [cost(4, 474.0), cost(4, 518.0)]),
    ("sideways", [cost(4, 170.0), cost(4, 170.0)]),
];

const fn cost(taps: u32, scrolled: f64) -> Cost {
    Cost { taps, scrolled }
}

pub const CASES: [(&str, Case); 16] = [
    ("tasks::reading_on_a_phone", |g| {
        done(g, Screen::Phone, reading)
    }),
    ("tasks::reading_at_a_desk", |g| {
        done(g, Screen::Desk, reading)
    }),
    ("tasks::beginning_on_a_phone", |g| {
        done(g, Screen::Phone, beginning)
    }),
    ("tasks::beginning_at_a_desk", |g| {
        done(g, Screen::Desk, beginning)
    }),
    ("tasks::mending_on_a_phone", |g| {
        done(g, Screen::Phone, mending)
    }),
    ("tasks::mending_at_a_desk", |g| {
        done(g, Screen::Desk, mending)
    }),
    ("tasks::measuring_on_a_phone", |g| {
        done(g, Screen::Phone, measuring)
    }),
    ("tasks::measuring_at_a_desk", |g| {
        done(g, Screen::Desk, measuring)
    }),
    ("tasks::who_and_when_on_a_phone", |g| {
        done(g, Screen::Phone, who_and_when)
    }),
    ("tasks::who_and_when_at_a_desk", |g| {
        done(g, Screen::Desk, who_and_when)
    }),
    ("tasks::sending_on_a_phone", |g| {
        done(g, Screen::Phone, sending)
    }),
    ("tasks::sending_at_a_desk", |g| {
        done(g, Screen::Desk, sending)
    }),
    ("tasks::learning_on_a_phone", |g| {
        done(g, Screen::Phone, learning)
    }),
    ("tasks::learning_at_a_desk", |g| {
        done(g, Screen::Desk, learning)
    }),
    ("tasks::otherwise_on_a_phone", |g| {
        done(g, Screen::Phone, otherwise)
    }),
    ("tasks::otherwise_at_a_desk", |g| {
        done(g, Screen::Desk, otherwise)
    }),
];

fn done(
    ground: &Ground,
    screen: Screen,
    tasks: impl AsyncFnOnce(&Page, Screen) -> Result<()>,
) -> Result<()> {
    ground.visit(screen, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        page.studied().await?;
        tasks(page, screen).await
    })
}

/// A hand at the begin of a task: with the page as it is come to, and at rest.
async fn hand(page: &Page, screen: Screen) -> Result<Hand<'_>> {
    page.studied().await?;
    let top = "scrollTo(0, 0); document.getElementById('plan').scrollTop = 0; document.activeElement?.blur(); return true";
    ensure!(page.ask::<bool>(top).await?);
    Ok(Hand::on(page, screen))
}

async fn told(page: &Page, css: &str) -> Result<String> {
    Ok(page.texts(css).await?.join(" "))
}

/// The demonstration with the gap of a jump longer by a metre.
fn too_long() -> String {
    let mut plan = demo();
    if let Line::Features(features) = &mut plan.line
        && let Feature::Jump(jump) = &mut features[8]
    {
        jump.gap += 1.0;
    }
    format!("#{}", sim::link::encode(&plan))
}

async fn reading(page: &Page, screen: Screen) -> Result<()> {
    let by = hand(page, screen).await?;
    by.look("#told").await?;
    by.tap("[data-way=result]").await?;
    by.look("#lips [data-lip='2'] [data-what=how]").await?;
    by.tap("#lips [data-lip='2'] .term").await?;
    ensure!(told(page, "#message").await?.contains("landing"));
    by.took("understand the demonstration", &FLOORS)?;
    page.click("#message button").await?;

    let by = hand(page, screen).await?;
    by.tap("[data-way=means]").await?;
    by.tap("[data-to=costs]").await?;
    by.look("#costs tr[data-feature='2']").await?;
    ensure!(
        told(page, "#costs tr[data-feature='2']")
            .await?
            .contains(" m")
    );
    by.took("what a row of rollers costs", &FLOORS)?;

    let by = hand(page, screen).await?;
    by.tap("[data-way=means]").await?;
    by.tap("#what-if [data-kind=pumping]").await?;
    by.look("#what-if li[data-kind=pumping]").await?;
    ensure!(told(page, "#what-if li").await?.contains("km/h"));
    by.took("what pumping does", &FLOORS)?;
    page.click("#what-if [data-kind=pumping]").await?;

    let by = hand(page, screen).await?;
    by.tap("[data-way=means]").await?;
    by.tap("[data-to=test-day]").await?;
    by.look("#test-day li:last-child").await?;
    ensure!(told(page, "#test-day").await?.contains("flag"));
    by.took("read the test day", &FLOORS)
}

async fn beginning(page: &Page, screen: Screen) -> Result<()> {
    let by = hand(page, screen).await?;
    by.tap("#begin [data-begin=answers]").await?;
    by.fill("[data-answer=length] input", "35 m").await?;
    by.fill("[data-answer=fall] input", "1 m").await?;
    by.fill("[data-answer=tallest] input", "2,2 m").await?;
    by.choose("[data-answer=rider] select", "10").await?;
    by.tap("#new-line [type=submit]").await?;
    let clean = "[...document.querySelectorAll('#lips tr[data-how]')].every(r => r.dataset.how === 'clean')";
    page.wait_for("clean jumps", clean).await?;
    by.tap("[data-way=ride]").await?;
    by.look("#told").await?;
    by.took("a line from nothing", &FLOORS)?;
    let kept = "return JSON.parse(localStorage.getItem(Object.keys(localStorage).find(k => k.startsWith('carryline.line.')))).plan.yard";
    let yard: serde_json::Value = page.ask(kept).await?;
    ensure!(yard["length"] == 35.0 && yard["tallest"] == 2.2, "{yard}");

    page.ask::<bool>("localStorage.clear(); sessionStorage.clear(); return true")
        .await?;
    page.go("").await?;
    page.studied().await?;
    let by = hand(page, screen).await?;
    by.tap("#begin [data-begin=empty]").await?;
    by.choose("#features [data-act=add]", "roller").await?;
    by.fill("#features [data-field$='.count'] input", "2")
        .await?;
    by.choose("#features [data-act=add]", "jump").await?;
    by.took("two rollers and a jump", &FLOORS)?;
    let kinds =
        "return [...document.querySelectorAll('#features > li')].map(li => li.dataset.kind)";
    let kinds: Vec<String> = page.ask(kinds).await?;
    ensure!(kinds == ["flat", "roller", "jump"], "{kinds:?}");
    Ok(())
}

async fn mending(page: &Page, screen: Screen) -> Result<()> {
    page.go(&too_long()).await?;
    page.studied().await?;
    let by = hand(page, screen).await?;
    by.tap("#keep").await?;
    page.studied().await?;
    by.tap("[data-way=result]").await?;
    by.tap("#lips .try").await?;
    let clean = "[...document.querySelectorAll('#lips tr[data-how]')].every(r => r.dataset.how === 'clean')";
    page.wait_for("clean jumps", clean).await?;
    by.took("all clean by what is suggested", &FLOORS)?;

    page.studied().await?;
    let by = hand(page, screen).await?;
    by.tap("[data-way=plan]").await?;
    by.tap("#features [data-feature='4'] .feature").await?;
    page.wait_for(
        "the grips",
        "document.querySelector('.grip[data-part=knuckle]')",
    )
    .await?;
    let height = "return document.querySelector('[data-field=\"line.features[4].landing.height\"] input').value";
    let before: String = page.ask(height).await?;
    by.drag(".grip[data-part=knuckle]", 0, -12).await?;
    let dragged = format!("(() => {{ {height} }})() !== {before:?}");
    page.wait_for("the knuckle to move", &dragged).await?;
    by.tap("#undo").await?;
    ensure!(page.ask::<String>(height).await? == before, "not undone");
    by.tap("#redo").await?;
    page.wait_for("the knuckle to move again", &dragged).await?;
    page.reload().await?;
    by.tap("#undo").await?;
    by.took("drag, undo, redo, reload", &FLOORS)
}

async fn measuring(page: &Page, screen: Screen) -> Result<()> {
    let by = hand(page, screen).await?;
    by.tap("[data-way=plan]").await?;
    by.tap("#features [data-kind=start_ramp] .feature").await?;
    let field = "[data-field$='platform_height'] input";
    for text in [
        "2.4",
        "240 cm",
        "2400mm",
        "7' 10 1/2\"",
        "7ft 10in",
        "95 in",
    ] {
        by.fill(field, text).await?;
        let metres = parse(text, Quantity::Length, System::Metric)?;
        let shown: String = page
            .ask(&format!("return document.querySelector({field:?}).value"))
            .await?;
        let ways = [System::Metric, System::Feet].map(|s| edit(metres, Quantity::Length, s));
        ensure!(ways.contains(&shown), "{text:?} became {shown:?}");
    }
    by.took("lengths in six spellings", &FLOORS)?;

    by.fill(field, "2.3 m").await?;
    let by = hand(page, screen).await?;
    by.tap("[data-way=plan]").await?;
    // The tag tells the speed at the first lip while the start is lifted.
    let speed = "return parseFloat(document.getElementById('tag').innerText.split(': ')[1])";
    let before: f64 = page.ask(speed).await?;
    for _ in 0..20 {
        by.tap("[data-field$='platform_height'] .step:last-child")
            .await?;
        if page.ask::<f64>(speed).await? >= before + 1.0 {
            break;
        }
    }
    ensure!(
        page.ask::<f64>(speed).await? >= before + 1.0,
        "never faster by 1 km/h"
    );
    by.took("a start for one km/h more", &FLOORS)
}

async fn who_and_when(page: &Page, screen: Screen) -> Result<()> {
    let by = hand(page, screen).await?;
    by.tap("[data-way=plan]").await?;
    by.tap("#weather summary").await?;
    by.choose("[data-field='weather.ground'] select", "damp")
        .await?;
    by.look("#tag").await?;
    ensure!(told(page, "#tag").await?.contains("km/h"));
    by.took("damp ground", &FLOORS)?;

    let by = hand(page, screen).await?;
    let riders = "return document.querySelectorAll('#rider .riders input').length";
    let before: usize = page.ask(riders).await?;
    by.tap("[data-way=plan]").await?;
    by.tap("#rider summary").await?;
    by.choose("#preset-age", "14").await?;
    by.tap("#preset-add").await?;
    ensure!(page.ask::<usize>(riders).await? == before + 1);
    by.tap("[data-act=remove-rider]").await?;
    ensure!(page.ask::<usize>(riders).await? == before);
    by.took("a second rider comes and goes", &FLOORS)
}

async fn sending(page: &Page, screen: Screen) -> Result<()> {
    let by = hand(page, screen).await?;
    by.tap("#share").await?;
    by.tap("#send-copy").await?;
    let link: String = page
        .ask("return document.getElementById('share').dataset.link")
        .await?;
    let (_, tail) = link.split_once('#').context("no #")?;
    page.go(&format!("#{tail}")).await?;
    by.tap("#keep").await?;
    page.go(&format!("#{}", &tail[..tail.len() / 2])).await?;
    by.look("#message").await?;
    ensure!(told(page, "#message").await?.contains("did not work"));
    by.took("a link copied, opened, copied, damaged", &FLOORS)?;

    page.go("").await?;
    page.studied().await?;
    let by = hand(page, screen).await?;
    by.tap("#share").await?;
    let name: String = page
        .ask("return document.getElementById('plan-name').value")
        .await?;
    let mut plan = Vec::new();
    for ending in ["png", "svg", "csv", "json"] {
        by.tap(&format!("#save-{ending}")).await?;
        plan = page.saved(&format!("{name}.{ending}")).await?;
    }
    by.tap("#send-close").await?;
    let folder = tempfile::tempdir()?;
    let file = folder.path().join("again.json");
    let text = String::from_utf8(plan)?.replace(&name, "Read back");
    ensure!(Plan::from_json(&text).is_ok());
    std::fs::write(&file, text)?;
    by.tap("[data-way=plan]").await?;
    by.tap("#lines > summary").await?;
    by.look("label[for=plan-file]").await?;
    page.choose_file("#plan-file", &file).await?;
    page.wait_for(
        "the line to come",
        "document.getElementById('plan-name').value === 'Read back'",
    )
    .await?;
    by.took("four files, one read back", &FLOORS)
}

async fn learning(page: &Page, screen: Screen) -> Result<()> {
    let by = hand(page, screen).await?;
    by.tap("[data-way=means]").await?;
    by.tap("[data-to=seen]").await?;
    let seen: [(&str, &[(&str, &str)]); 3] = [
        (
            "time",
            &[("from", "0 m"), ("to", "6 m"), ("seconds", "2.2 s")],
        ),
        (
            "time",
            &[("from", "6 m"), ("to", "16 m"), ("seconds", "1.8 s")],
        ),
        ("landed", &[("past_knuckle", "1.0 m")]),
    ];
    for (kind, fields) in seen {
        by.tap(&format!("#see label:has([value={kind}])")).await?;
        for (name, text) in fields {
            by.fill(&format!("#see-{name}"), text).await?;
        }
        by.tap("#see-add").await?;
    }
    page.studied().await?;
    by.look("#taught p").await?;
    ensure!(page.texts("#seen ol > li").await?.len() == 3);
    by.took("two timings and a landing", &FLOORS)
}

async fn key(page: &Page, name: &str, code: u32) -> Result<()> {
    for kind in ["rawKeyDown", "keyUp"] {
        let mut key =
            json!({ "type": kind, "key": name, "code": name, "windowsVirtualKeyCode": code });
        if name == "Enter" && kind == "rawKeyDown" {
            key["type"] = "keyDown".into();
            key["text"] = "\r".into();
        }
        page.devtools("Input.dispatchKeyEvent", key).await?;
    }
    page.drawn().await
}

/// A gap is made longer, and its verdict read beside the field.
async fn change(by: &Hand<'_>, page: &Page) -> Result<()> {
    by.tap("[data-way=plan]").await?;
    by.tap("#features [data-feature='4'] .feature").await?;
    by.tap("[data-field$='.gap'] .step:last-child").await?;
    by.look("#tag").await?;
    ensure!(told(page, "#tag").await?.contains("km/h"));
    by.tap("#undo").await
}

async fn otherwise(page: &Page, screen: Screen) -> Result<()> {
    // By keys alone from the top of the page: to the plan, into its first feature, and a step more of its height.
    let by = hand(page, screen).await?;
    let mut keys = 0;
    let steps = [
        "document.activeElement.dataset.way === 'plan'",
        "document.activeElement.closest('[data-kind=start_ramp]')",
        "document.activeElement.closest('[data-field$=platform_height]')?.querySelector('input') === document.activeElement",
    ];
    for (i, there) in steps.into_iter().enumerate() {
        while !page
            .ask::<bool>(&format!("return Boolean({there})"))
            .await?
        {
            key(page, "Tab", 9).await?;
            keys += 1;
            ensure!(keys < 80, "no way by keys to where {there}");
        }
        if i < 2 {
            key(page, "Enter", 13).await?;
            keys += 1;
        }
    }
    key(page, "ArrowUp", 38).await?;
    by.press(keys + 1);
    by.took("by keys alone", &FLOORS)?;
    page.click("#undo").await?;
    page.click("#features .feature[aria-expanded=true]").await?;

    for (name, feature, value) in [
        ("in the dark", "prefers-color-scheme", "dark"),
        ("with less motion", "prefers-reduced-motion", "reduce"),
    ] {
        let media = json!({ "features": [{ "name": feature, "value": value }] });
        page.devtools("Emulation.setEmulatedMedia", media).await?;
        let by = hand(page, screen).await?;
        change(&by, page).await?;
        by.took(name, &FLOORS)?;
        page.click("#features .feature[aria-expanded=true]").await?;
    }
    for (name, [width, height]) in [("320 px", [320, 640]), ("sideways", [740, 360])] {
        let size = json!({ "width": width, "height": height, "deviceScaleFactor": 2, "mobile": screen.is_phone() });
        page.devtools("Emulation.setDeviceMetricsOverride", size)
            .await?;
        page.drawn().await?;
        let by = hand(page, screen).await?;
        change(&by, page).await?;
        by.took(name, &FLOORS)?;
        page.click("#features .feature[aria-expanded=true]").await?;
    }
    Ok(())
}
