//! What was seen on a test ride is typed in, fitted beside the page, and carried to the plan.

use anyhow::{Context, Result, ensure};
use browser::{Ground, Page, Screen};
use sim::plan::{Observation, Plan, demo};

/// The plan in the page's address, once it follows the last edit.
async fn plan(page: &Page, differs_from: &str) -> Result<(Plan, String)> {
    let moved = format!("location.hash.length > 1 && location.hash !== {differs_from:?}");
    page.wait_for("the address to follow", &moved).await?;
    let hash: String = page.ask("return location.hash").await?;
    Ok((sim::link::decode(&hash)?.plan, hash))
}

async fn studied(page: &Page) -> Result<()> {
    let known = "!document.documentElement.dataset.working";
    page.wait_for("what fits", known).await
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
