//! What was seen on a test ride is typed in, fitted beside the page, and carried to the plan.

use anyhow::{Context, Result, ensure};
use browser::{Ground, Page, Screen};
use sim::error::Quantity;
use sim::fit::Fit;
use sim::judge::How;
use sim::plan::{Feature, Line, Observation, Plan, demo};
use sim::units::{System, format};
use std::time::Duration;

/// How long all may take that is found out by riding: hundreds of rides, on a machine with other work.
const PATIENCE: Duration = Duration::from_secs(120);

/// The plan in the page's address, once it follows the last edit.
async fn plan(page: &Page, differs_from: &str) -> Result<(Plan, String)> {
    let moved = format!("location.hash.length > 1 && location.hash !== {differs_from:?}");
    page.wait_for("the address to follow", &moved).await?;
    let hash: String = page.ask("return location.hash").await?;
    Ok((sim::link::decode(&hash)?.plan, hash))
}

async fn studied(page: &Page) -> Result<()> {
    let known = "!document.documentElement.dataset.working";
    page.wait(PATIENCE, "what fits", known).await
}

async fn see(page: &Page, kind: &str, fields: &[(&str, &str)]) -> Result<()> {
    page.click(&format!("#see label:has([value={kind}])"))
        .await?;
    for (name, text) in fields {
        page.fill(&format!("#see-{name}"), text).await?;
    }
    page.click("#see-add").await
}

pub fn a_test_ride_is_carried_to_the_plan(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        // A push-off that was softer than planned: no other input tells so much on the ramp.
        let first = [("from", "0 m"), ("to", "6 m"), ("seconds", "2.75 s")];
        see(page, "time", &first).await?;
        see(page, "speed", &[("at", "1 m"), ("speed", "3 km/h")]).await?;
        studied(page).await?;
        let (seen, hash) = plan(page, "").await?;
        ensure!(seen.seen.len() == 2, "the link holds {:?}", seen.seen);
        ensure!(
            matches!(&seen.seen[0], Observation::Time(t) if t.seconds == 2.75 && t.from == 0.0),
            "the link holds {:?}",
            seen.seen
        );
        let told = page.texts("#taught p").await?;
        println!("{told:#?}");
        let start = told
            .iter()
            .any(|text| text.starts_with("The start was at about"));
        ensure!(start, "nothing is said of the start: {told:?}");
        page.picture("phone-test-ride.png").await?;
        page.click("#use-fit").await?;
        let (used, _) = plan(page, &hash).await?;
        let fit = sim::fit::fit(&seen, 0).map_err(|faults| anyhow::anyhow!("{faults:?}"))?;
        let expected = sim::fit::apply(&seen, &fit.context("something was seen")?);
        ensure!(used == expected, "the page made {used:?} of {seen:?}");
        ensure!(used.riders != demo().riders, "nothing was carried");
        let [wide, content]: [u32; 2] = page
            .ask("const d = document.documentElement; return [d.clientWidth, d.scrollWidth]")
            .await?;
        ensure!(content <= wide, "{content} pixels of content in {wide}");
        Ok(())
    })
}

pub fn what_contradicts_is_named(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        for seconds in ["1.9", "2.9"] {
            let fields = [("from", "0 m"), ("to", "6 m"), ("seconds", seconds)];
            see(page, "time", &fields).await?;
        }
        let told = "document.querySelector('#taught .fault')";
        page.wait_for("the contradiction", told).await?;
        let told = page.texts("#taught .fault").await?.concat();
        println!("{told}");
        ensure!(told.contains("contradict each other"), "{told}");
        ensure!(told.contains("1.90 s") && told.contains("2.90 s"), "{told}");
        // What is not well typed is said at its field, and nothing is added.
        see(page, "speed", &[("at", "6 m"), ("speed", "quick")]).await?;
        let fault = page.texts("#see-speed-told").await?.concat();
        ensure!(fault.contains("quick"), "{fault}");
        ensure!(page.texts("#seen ol > li").await?.len() == 2);
        Ok(())
    })
}

/// The words that stand for a number of the simulator.
fn speed(value: f64) -> String {
    format(value, Quantity::Speed, System::Metric)
}

fn fitted(plan: &Plan) -> Result<Fit> {
    let fit = sim::fit::fit(plan, 0).map_err(|faults| anyhow::anyhow!("{faults:?}"))?;
    fit.context("something was seen")
}

/// Timed slower on the ramp by more than it was faster behind it.
const SLOWER: [[(&str, &str); 3]; 2] = [
    [("from", "0 m"), ("to", "5.4 m"), ("seconds", "2.45 s")],
    [("from", "5.4 m"), ("to", "17 m"), ("seconds", "1.7 s")],
];

pub fn a_lip_that_is_faster_after_slower_timing_says_why(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        for fields in &SLOWER {
            see(page, "time", fields).await?;
        }
        studied(page).await?;
        let (seen, _) = plan(page, "").await?;
        let told = page.texts("#taught ul:last-of-type li").await?;
        println!("{told:#?}");
        let lips = fitted(&seen)?.lips;
        ensure!(told.len() == lips.len(), "{told:?} of {lips:?}");
        let mut faster = 0;
        for (lip, said) in lips.iter().zip(&told) {
            let (before, after) = lip.planned.zip(lip.speed).context("a lip is never left")?;
            ensure!(
                said.contains(&format!("{} at the lip", speed(after))),
                "{said}"
            );
            ensure!(
                said.contains(&format!("planned {}", speed(before))),
                "{said}"
            );
            let seen = after > before && speed(after) != speed(before);
            ensure!(
                said.contains("Faster, though timed slower") == seen,
                "{said}"
            );
            faster += usize::from(seen);
        }
        ensure!(faster > 0, "no lip is faster: {lips:?}");
        ensure!(
            told.concat().contains("the ground rolls lighter"),
            "{told:?}"
        );
        Ok(())
    })
}

/// The demonstration with a last gap that is only just clean.
fn only_just() -> Plan {
    let mut plan = demo();
    if let Line::Features(features) = &mut plan.line
        && let Some(Feature::Jump(jump)) = features.get_mut(8)
    {
        jump.gap += 0.6;
    }
    plan
}

pub fn what_endangers_a_jump_is_said_before_it_is_used(ground: &Ground) -> Result<()> {
    let link = format!("#{}", sim::link::encode(&only_just()));
    ground.visit(Screen::Phone, &link, async |page| {
        page.click("#units label:has([value=metric])").await?;
        page.click("#keep").await?;
        for (place, seconds) in [("5.4 m", "2.3 s"), ("17 m", "4.6 s")] {
            let fields = [("from", "0 m"), ("to", place), ("seconds", seconds)];
            see(page, "time", &fields).await?;
        }
        studied(page).await?;
        let (seen, _) = plan(page, "").await?;
        let last = fitted(&seen)?.lips.pop().context("it has jumps")?;
        ensure!(last.how != How::Clean, "{last:?}");
        let cautions = page.texts("#taught .caution").await?;
        println!("{cautions:#?}");
        let named = cautions
            .iter()
            .any(|said| said.contains("Jump 3 is clean as planned, but"));
        ensure!(named, "of {last:?} is said {cautions:?}");
        let before: bool = page
            .ask(
                "return Boolean(document.querySelector('#taught .caution').compareDocumentPosition(\
                 document.getElementById('use-fit')) & Node.DOCUMENT_POSITION_FOLLOWING)",
            )
            .await?;
        ensure!(before, "the button stands before the caution");
        page.picture("phone-test-ride-danger.png").await
    })
}

/// The ranges of the table, each as its two ends.
async fn ranges(page: &Page) -> Result<Vec<[f64; 2]>> {
    let texts = page.texts("#lips [data-what=range]").await?;
    let ends = |text: &String| {
        let (low, high) = text.split_once(" to ")?;
        let high = high.strip_suffix(" km/h")?;
        Some([low.parse().ok()?, high.parse().ok()?])
    };
    let all = texts.iter().map(ends).collect::<Option<Vec<_>>>();
    all.with_context(|| format!("{texts:?} are no ranges"))
}

pub fn ranges_hold_what_the_test_ride_left(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        let fields = [("from", "0 m"), ("to", "17 m"), ("seconds", "4.2 s")];
        see(page, "time", &fields).await?;
        studied(page).await?;
        let (seen, hash) = plan(page, "").await?;
        let told = fitted(&seen)?.lips;
        let before = ranges(page).await?;
        page.click("#use-fit").await?;
        let (used, _) = plan(page, &hash).await?;
        studied(page).await?;
        let after = ranges(page).await?;
        println!("{before:?} to {after:?}");
        let speeds = page.texts("#lips [data-what=speed]").await?;
        for (i, (before, after)) in before.iter().zip(&after).enumerate() {
            ensure!(
                after[1] - after[0] < before[1] - before[0],
                "{before:?} to {after:?}"
            );
            let said = told[i].speed.map(speed).unwrap_or_default();
            ensure!(
                speeds[i] == said,
                "{said} was told, and it is {}",
                speeds[i]
            );
        }
        // The ride is carried: in the link as well, so that it stays so.
        ensure!(
            used.seen.iter().all(Observation::carried),
            "{:?}",
            used.seen
        );
        ensure!(
            page.texts("#use-fit").await?.is_empty(),
            "it can be used twice"
        );
        page.reload().await?;
        studied(page).await?;
        ensure!(
            ranges(page).await? == after,
            "after a reload they are others"
        );
        ensure!(
            page.texts("#use-fit").await?.is_empty(),
            "it can be used again"
        );
        Ok(())
    })
}

/// Something to add: its kind, what is typed, and what is advised from then on.
type Thing = (
    &'static str,
    &'static [(&'static str, &'static str)],
    &'static str,
);

pub fn the_planned_ride_is_one_figure_and_advice_that_is_followed_goes(
    ground: &Ground,
) -> Result<()> {
    ground.visit(Screen::Desk, "", async |page| {
        page.click("#units label:has([value=metric])").await?;
        let things: [Thing; 4] = [
            (
                "time",
                &[("from", "3.3 m"), ("to", "16.7 m"), ("seconds", "2.3")],
                "a second time or speed and a landing",
            ),
            (
                "speed",
                &[("at", "17.3 m"), ("speed", "20 km/h")],
                "a landing",
            ),
            ("landed", &[("past_knuckle", "1.2 m")], ""),
            ("stopped", &[("at", "21.5 m")], ""),
        ];
        for (i, (kind, fields, advice)) in things.into_iter().enumerate() {
            page.click(&format!("#see label:has([value={kind}])"))
                .await?;
            for (name, text) in fields {
                page.fill(&format!("#see-{name}"), text).await?;
            }
            let hint = page.texts("#see .field:last-of-type .from").await?.concat();
            let (_, hint) = hint
                .split_once("The planned ride: ")
                .with_context(|| format!("{kind} has no hint: {hint:?}"))?;
            let hint = hint.to_owned();
            page.click("#see-add").await?;
            studied(page).await?;
            let item = page
                .texts(&format!("#seen [data-seen='{i}'] > .from"))
                .await?
                .concat();
            println!("{kind}: {hint}; {item}");
            ensure!(
                item.starts_with(&format!("Planned ride: {hint}.")),
                "{hint} and {item}"
            );
            let told = page.texts("#taught p").await?.join(" ");
            let more = told
                .split_once("This would tell more: ")
                .map_or("", |(_, more)| more);
            let more = more.split_once('.').map_or("", |(more, _)| more);
            if kind != "stopped" {
                ensure!(more == advice, "after the {kind}: {told}");
            }
        }
        Ok(())
    })
}
