//! What goes wrong around the page: nothing is lost, and what is wrong is said in plain words.

use super::Case;
use anyhow::{Result, ensure};
use browser::{Ground, Page, Screen};
use serde_json::{Value, json};
use sim::plan::{Plan, demo};
use std::fs;
use std::time::Duration;
use tempfile::TempDir;

/// The cases of this file.
pub const CASES: [(&str, Case); 12] = [
    ("faults::forbidden_storage_stops_nothing", forbidden),
    ("faults::storage_full_from_the_start_is_said", full),
    ("faults::a_line_that_cannot_be_read_is_kept", unread),
    ("faults::a_line_with_a_fault_opens_again", faulty),
    ("faults::a_link_that_cannot_be_ridden_stays", unridable),
    ("faults::back_and_forward_show_what_is_named", back),
    ("faults::a_refused_file_changes_nothing", refused),
    ("faults::without_the_simulator_it_is_said", unloaded),
    ("faults::names_are_text", names),
    ("faults::a_drag_ends_without_workers", dragged),
    ("faults::printing_leaves_the_ride_going", printed),
    ("faults::three_times_as_large_nothing_is_cut_off", large),
];

const HEIGHT: &str = "[data-field$='platform_height'] input";
const KEPT: &str = "Object.keys(localStorage).filter(k => k.startsWith('carryline.line.'))";

/// From now on every page runs a script before anything else.
async fn first(page: &Page, script: &str) -> Result<()> {
    let everywhere = "Page.addScriptToEvaluateOnNewDocument";
    page.devtools(everywhere, json!({ "source": script })).await
}

async fn message(page: &Page) -> Result<String> {
    page.ask("const m = document.getElementById('message'); return m.hidden ? '' : m.innerText")
        .await
}

async fn name(page: &Page) -> Result<String> {
    page.ask("return document.getElementById('plan-name').value")
        .await
}

async fn raise(page: &Page, height: &str) -> Result<()> {
    page.click("#features [data-kind=start_ramp] .feature")
        .await?;
    page.fill(HEIGHT, height).await
}

/// A plan as its file has it.
fn written(plan: &Plan) -> Result<Value> {
    Ok(serde_json::from_str(&plan.to_json())?)
}

/// Keeps something on the device in place of a line; `saved` tells which is the newest.
async fn keep(page: &Page, id: &str, plan: &Value, saved: u64) -> Result<()> {
    let entry = json!({ "plan": plan, "link": [], "saved": saved }).to_string();
    let script = format!("localStorage.setItem('carryline.line.{id}', {entry:?}); return true");
    ensure!(page.ask::<bool>(&script).await?);
    Ok(())
}

fn forbidden(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        let deny = "for (const store of ['localStorage', 'sessionStorage']) \
            Object.defineProperty(window, store, { get() { throw new DOMException('denied', 'SecurityError'); } });";
        first(page, deny).await?;
        page.go("").await?;
        ensure!(message(page).await?.is_empty(), "{}", message(page).await?);
        let before = page.texts("#lips [data-what=speed]").await?;
        raise(page, "2.7 m").await?;
        ensure!(page.texts("#lips [data-what=speed]").await? != before);
        page.wait_for("the page to say so", "document.getElementById('message').innerText.includes('no room')")
            .await?;
        page.click("#units label:has([value=feet])").await?;
        page.click("#lines summary").await?;
        page.wait_for("the list", "document.querySelector('#lines [data-example]')").await
    })
}

fn full(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        let fill = "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };";
        first(page, fill).await?;
        page.go("").await?;
        raise(page, "2.7 m").await?;
        page.wait_for("the page to say so", "document.getElementById('message').innerText.includes('no room')")
            .await?;
        page.wait_for("the address to follow", "location.hash.length > 50").await
    })
}

fn unread(ground: &Ground) -> Result<()> {
    let plan = written(&demo())?;
    let mut spoilt = vec![json!(null), json!({ "line": {} })];
    let mut spoil = |path: &str, value: Value| {
        let mut plan = plan.clone();
        *plan.pointer_mut(path).expect("the field is there") = value;
        spoilt.push(plan);
    };
    spoil("/riders", json!([]));
    spoil("/yard", json!(null));
    spoil("/yard/length", json!(null));
    spoil("/line/features", json!(null));
    spoil("/line/features/1/kind", json!("wall_ride"));
    let mut older = plan.clone();
    older["name"] = json!("An older one");
    // What a plan file leaves open, a kept line may.
    older.as_object_mut().expect("fields").remove("weather");
    ground.visit(Screen::Phone, "", async |page| {
        keep(page, "1-1", &older, 1).await?;
        for (i, plan) in spoilt.iter().enumerate() {
            keep(page, "2-2", plan, 2).await?;
            // Said once in a tab.
            ensure!(
                page.ask::<bool>("sessionStorage.clear(); return true")
                    .await?
            );
            page.go("").await?;
            ensure!(
                name(page).await? == "An older one",
                "{i}: {}",
                name(page).await?
            );
            let said = message(page).await?;
            ensure!(said.contains("cannot be read"), "{i}: {said:?}");
            let left: String = page
                .ask("return localStorage.getItem('carryline.line.2-2')")
                .await?;
            ensure!(
                serde_json::from_str::<Value>(&left)?["plan"] == *plan,
                "{i}: {left}"
            );
        }
        page.go("").await?;
        ensure!(
            message(page).await?.is_empty(),
            "said again: {}",
            message(page).await?
        );
        page.click("#lines summary").await?;
        page.wait_for(
            "the list",
            "document.querySelector('#lines [data-example]')",
        )
        .await?;
        let listed = page.texts("#lines p, #lines li").await?.concat();
        ensure!(listed.contains("cannot be read"), "{listed}");
        Ok(())
    })
}

fn faulty(ground: &Ground) -> Result<()> {
    let mut plan = written(&demo())?;
    plan["name"] = json!("Too long for its yard");
    plan["yard"]["length"] = json!(3.0);
    ground.visit(Screen::Desk, "", async |page| {
        keep(page, "1-1", &plan, 1).await?;
        page.go("").await?;
        ensure!(name(page).await? == "Too long for its yard");
        let told = page.texts("#faults").await?.concat();
        ensure!(told.contains("longer than the yard"), "{told:?}");
        raise(page, "2.7 m").await?;
        page.wait_for("it to be kept", &format!("JSON.parse(localStorage.getItem({KEPT}[0])).plan.line.features[0].platform_height === 2.7"))
            .await
    })
}

fn unridable(ground: &Ground) -> Result<()> {
    let links = [
        (
            "#wQAi8ZNkbSF4I3xAGAB_nrjLzMCW9QiAKLkRAhQG95BMCl1znNGlU4Q",
            "line.surveyed.points[1]",
        ),
        (
            "#wQA91267aC01RoZSBmaXJzdCBqdW1wIG9mIHRoZSBvcmNoYXJkI8Scgwx0CNYPETJZiBLETNwRlgzgkM4IzFptSCIYA",
            "riders",
        ),
    ];
    for (link, field) in links {
        ground.visit(Screen::Phone, link, async |page| {
            let said = message(page).await?;
            println!("{said}");
            ensure!(
                said.contains(field) && said.contains("demo line"),
                "{said:?}"
            );
            // Longer than the address takes to follow an edit.
            tokio::time::sleep(Duration::from_millis(1000)).await;
            let there: String = page.ask("return location.hash").await?;
            ensure!(there == link, "the address is {there}");
            Ok(())
        })?;
    }
    Ok(())
}

fn back(ground: &Ground) -> Result<()> {
    let link = |name: &str| {
        let name = name.to_owned();
        format!("#{}", sim::link::encode(&Plan { name, ..demo() }))
    };
    let (a, b) = (link("By the well"), link("By the gate"));
    ground.visit(Screen::Desk, &a, async |page| {
        let shows = async |name: &str| {
            page.wait_for(
                name,
                &format!("document.getElementById('plan-name').value === {name:?}"),
            )
            .await
        };
        // The address names the line that is shown.
        let names = async || {
            let hash: String = page.ask("return location.hash").await?;
            anyhow::Ok(sim::link::decode(&hash)?.plan.name)
        };
        let goes = async |to: &str| page.ask::<bool>(&format!("{to}; return true")).await;
        goes(&format!("location.hash = {b:?}")).await?;
        shows("By the gate").await?;
        page.click("#keep").await?;
        page.fill("#plan-name", "My own gate").await?;
        let kept = |name: &str| {
            format!("{KEPT}.some(k => JSON.parse(localStorage.getItem(k)).plan.name === {name:?})")
        };
        page.wait_for("the name to be kept", &kept("My own gate"))
            .await?;
        page.wait_for("the address to follow", &format!("location.hash !== {b:?}"))
            .await?;
        goes("history.back()").await?;
        shows("By the well").await?;
        goes("history.forward()").await?;
        shows("My own gate").await?;
        ensure!(names().await? == "My own gate", "{}", names().await?);
        // A name that is typed when somebody goes back is that of the line it was typed at.
        let typed = "const n = document.getElementById('plan-name'); n.focus(); n.select(); \
            document.execCommand('insertText', false, 'Typed late'); history.back()";
        goes(typed).await?;
        shows("By the well").await?;
        ensure!(names().await? == "By the well", "{}", names().await?);
        page.wait_for("the name to be kept", &kept("Typed late"))
            .await?;
        ensure!(page.ask::<usize>(&format!("return {KEPT}.length")).await? == 1);
        Ok(())
    })
}

fn refused(ground: &Ground) -> Result<()> {
    let whole = demo().to_json();
    let mut nobody = written(&demo())?;
    nobody["riders"] = json!([]);
    let mut many = nobody.clone();
    let points: Vec<[f64; 2]> = (0..2000).map(|i| [0.02 * f64::from(i), 0.0]).collect();
    many["line"] = json!({ "surveyed": { "points": points } });
    many["name"] = json!("x".repeat(40_000));
    let deep = format!("{{\"name\": {}{}}}", "[".repeat(10_000), "]".repeat(10_000));
    let endless = whole.replacen("\"mass\": 9.5", "\"mass\": 1e999", 1);
    ensure!(endless != whole);
    let files = [
        (nobody.to_string(), "riders"),
        (many.to_string(), "points"),
        (deep, "not what belongs here"),
        (endless, "riders[0].bike.mass"),
    ];
    let folder = TempDir::new()?;
    ground.visit(Screen::Desk, "", async |page| {
        let before = name(page).await?;
        page.click("#lines summary").await?;
        for (i, (text, word)) in files.iter().enumerate() {
            let path = folder.path().join(format!("{i}.json"));
            fs::write(&path, text)?;
            page.choose_file("#plan-file", &path).await?;
            let told = format!("document.getElementById('message').textContent.includes({word:?})");
            page.wait_for(word, &told).await?;
            println!("{}", message(page).await?);
            ensure!(name(page).await? == before, "{word}: another line is shown");
            ensure!(page.ask::<usize>(&format!("return {KEPT}.length")).await? == 0);
        }
        // What is edited afterwards is ridden and kept.
        raise(page, "2.7 m").await?;
        page.wait_for("it to be kept", &format!("{KEPT}.length === 1"))
            .await
    })
}

fn unloaded(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        let fail = "if (location.protocol === 'http:' && sessionStorage.getItem('spoilt')) \
            for (const how of ['instantiate', 'instantiateStreaming', 'compile', 'compileStreaming']) \
            WebAssembly[how] = () => Promise.reject(new Error('no memory'));";
        first(page, fail).await?;
        ensure!(page.ask::<bool>("sessionStorage.setItem('spoilt', 1); location.reload(); return true").await?);
        let said = "document.getElementById('message')?.innerText.includes('could not start')";
        page.wait_for("the page to say so", said).await?;
        page.picture("phone-broken.png").await?;
        ensure!(page.errors().await? > 0, "nothing went wrong");
        // The next time it may go well.
        ensure!(page.ask::<bool>("sessionStorage.clear(); return true").await?);
        page.go("").await?;
        ensure!(message(page).await?.is_empty());
        Ok(())
    })
}

/// Payloads that would run where a name is taken for markup, for a part of an address, or for a formula.
const PAYLOADS: [&str; 4] = [
    "<img src=x onerror=\"window.hit=1\">",
    "\"><svg onload=window.hit=1><script>window.hit=1</script>",
    "</title><script>window.hit=1</script>",
    "javascript:window.hit=1//${window.hit=1}",
];

fn names(ground: &Ground) -> Result<()> {
    for payload in PAYLOADS {
        let mut plan = Plan {
            name: payload.to_owned(),
            ..demo()
        };
        for mount in &mut plan.riders {
            payload.clone_into(&mut mount.label);
        }
        ensure!(plan.validate().is_empty(), "{payload}");
        let link = format!("#{}", sim::link::encode(&plan));
        ground.visit(Screen::Desk, &link, async |page| {
            page.studied().await?;
            ensure!(name(page).await? == payload);
            page.click("#keep").await?;
            page.click("#lines summary").await?;
            page.wait_for("the list", "document.querySelector('#lines .line b')").await?;
            let listed = page.texts("#lines .line b").await?;
            ensure!(listed == [payload], "{listed:?}");
            page.click("#lines [data-example]:nth-of-type(2)").await?;
            page.wait_for("two lines", &format!("{KEPT}.length === 2")).await?;
            page.click("#lines [aria-label^=Compare]").await?;
            page.click("#lines [aria-label^=Remove]").await?;
            let said = message(page).await?;
            ensure!(said.contains(payload), "{said:?}");
            page.click("#lines [aria-label^=Copy]").await?;
            page.studied().await?;
            page.click("#share").await?;
            page.click("#save-svg").await?;
            page.wait_for("the picture", "document.querySelector('#send .status').innerText.includes('.svg')").await?;
            let spoilt = "return [window.hit ?? 0, document.querySelectorAll('img[src=x], svg[onload], body script:not([src])').length]";
            let [hit, made]: [usize; 2] = page.ask(spoilt).await?;
            ensure!(hit == 0 && made == 0, "{payload}: {hit} run, {made} made");
            Ok(())
        })?;
    }
    Ok(())
}

fn dragged(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        let spoil = "window.spoilt = 0; const Own = Worker; window.Worker = class extends Own { \
            postMessage(order, ...rest) { \
              const ride = order.part === 'ride'; if (ride) window.spoilt += 1; \
              super.postMessage(ride ? { ...order, part: 'nothing' } : order, ...rest); } };";
        first(page, spoil).await?;
        page.go("").await?;
        page.studied().await?;
        let before = page.texts("#lips [data-what=speed]").await?;
        page.click("#features [data-kind=start_ramp] .feature")
            .await?;
        page.wait_for("a grip", "document.querySelector('.grip')")
            .await?;
        page.drag(".grip", 0, -20).await?;
        page.wait_for(
            "the ride",
            "window.spoilt > 1 && !document.documentElement.dataset.working",
        )
        .await?;
        let after = page.texts("#lips [data-what=speed]").await?;
        ensure!(before != after, "a higher start changed nothing");
        page.wait_for("it to be kept", &format!("{KEPT}.length === 1"))
            .await
    })
}

fn printed(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.wait_for(
            "the ride to begin",
            "document.getElementById('scrub').valueAsNumber > 0.2",
        )
        .await?;
        page.devtools("Page.printToPDF", json!({})).await?;
        let at: f64 = page
            .ask("return document.getElementById('scrub').valueAsNumber")
            .await?;
        let on = format!("Math.abs(document.getElementById('scrub').valueAsNumber - {at}) > 0.3");
        page.wait_for("the ride to go on", &on).await?;
        page.devtools("Emulation.setEmulatedMedia", json!({ "media": "print" }))
            .await?;
        let [seen, content]: [u32; 2] = page
            .ask("const d = document.documentElement; return [d.clientWidth, d.scrollWidth]")
            .await?;
        ensure!(
            content <= seen,
            "printed, {content} pixels of content in {seen}"
        );
        page.picture("phone-printed.png").await
    })
}

/// A desk of 1440 by 900 at 300 % has as many pixels of its own as a small phone held sideways.
fn large(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        let zoomed =
            json!({ "width": 480, "height": 300, "deviceScaleFactor": 3, "mobile": false });
        page.devtools("Emulation.setDeviceMetricsOverride", zoomed)
            .await?;
        page.drawn().await?;
        let [seen, content]: [u32; 2] = page
            .ask("const d = document.documentElement; return [d.clientWidth, d.scrollWidth]")
            .await?;
        ensure!(content <= seen, "{content} pixels of content in {seen}");
        page.picture("desk-zoomed.png").await?;
        let before = page.texts("#lips [data-what=speed]").await?;
        raise(page, "2.7 m").await?;
        ensure!(page.texts("#lips [data-what=speed]").await? != before);
        page.click("#share").await?;
        page.click("#send-close").await
    })
}
