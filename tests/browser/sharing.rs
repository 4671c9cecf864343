//! A line goes from one browser to another in a link.

use anyhow::{Context, Result, ensure};
use browser::{Ground, Page, Screen};

/// The table and the story; without what only somebody who may edit is offered.
const READ: &str = "#lips tbody td:not([data-what=more]), #lips .window + p, #lips tbody th, #told";

/// All that a visitor can read of a line: its name, its features and the table.
async fn read(page: &Page) -> Result<Vec<String>> {
    // What is studied follows the ride.
    let known = "!document.documentElement.dataset.working";
    page.wait_for("the ranges", known).await?;
    let mut all: Vec<String> = vec![
        page.ask("return document.getElementById('plan-name').value")
            .await?,
    ];
    all.extend(page.texts("#features .feature").await?);
    all.extend(page.texts(READ).await?);
    ensure!(all.len() > 10, "there is little to read: {all:?}");
    Ok(all)
}

/// The part of the copied link behind the address, with its `#`.
async fn send(page: &Page) -> Result<String> {
    page.click("#share").await?;
    let link: String = page
        .ask("return document.getElementById('share').dataset.link")
        .await?;
    page.click("#send-copy").await?;
    let said = "document.querySelector('#send .status').innerText";
    page.wait_for("something to be said of the link", said)
        .await?;
    // Where the clipboard is denied, the link stands there to be copied by hand.
    let copied = "const by_hand = document.getElementById('link'); \
        return by_hand ? by_hand.value : navigator.clipboard.readText()";
    let copied: Result<String> = page.ask(copied).await;
    if let Ok(copied) = copied {
        ensure!(copied == link, "copied {copied}, not {link}");
    }
    let at = link.find('#').context("the link has no # in it")?;
    Ok(link[at..].to_owned())
}

async fn message(page: &Page) -> Result<String> {
    page.ask("const m = document.getElementById('message'); return m.hidden ? '' : m.innerText")
        .await
}

pub fn a_link_opens_the_same_line(ground: &Ground) -> Result<()> {
    let (link, sent) = ground.visit(Screen::Phone, "", async |page| {
        page.fill("#plan-name", "Behind the old press house")
            .await?;
        page.click("#features [data-kind=jump] .feature").await?;
        page.fill("[data-field$='lip.height'] input", "0.55")
            .await?;
        let before = read(page).await?;
        Ok((send(page).await?, before))
    })?;
    println!("the link's own part has {} characters", link.len());
    let plan = sim::link::decode(&link)?.plan;
    ensure!(
        plan.name == "Behind the old press house",
        "the link holds {}",
        plan.name
    );
    // A messenger took the end of a sentence in brackets for the link's own.
    let sentence = format!("{link}).");
    let opened = ground.visit(Screen::Desk, &sentence, async |page| {
        ensure!(message(page).await?.is_empty(), "{}", message(page).await?);
        // A line that came in a link shows no plan before it is copied.
        page.click("#keep").await?;
        read(page).await
    })?;
    ensure!(opened == sent, "sent {sent:#?}, opened {opened:#?}");
    Ok(())
}

pub fn a_damaged_link_opens_the_demo(ground: &Ground) -> Result<()> {
    let link = format!("#{}", sim::link::encode(&sim::plan::demo()));
    let demo = ground.visit(Screen::Phone, "", async |page| read(page).await)?;
    let swapped = format!("{}{}", &link[..60], &link[61..]);
    let cases = [
        (format!("{link}x"), "damaged"),
        (swapped, "missing"),
        (link[..link.len() / 2].to_owned(), "missing"),
        ("#somewhere-else".to_owned(), "not a link to a plan"),
    ];
    for (tail, word) in cases {
        let (said, opened) = ground.visit(Screen::Phone, &tail, async |page| {
            Ok((message(page).await?, read(page).await?))
        })?;
        println!("{word}: {said}");
        ensure!(said.contains(word), "{tail}: said {said:?}");
        ensure!(opened == demo, "{tail}: not the demonstration: {opened:?}");
    }
    Ok(())
}

pub fn a_reload_keeps_the_line(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.click("#features [data-kind=jump] .feature").await?;
        page.fill("[data-field$='lip.height'] input", "0.5").await?;
        page.wait_for("the address to follow", "location.hash.length > 50")
            .await?;
        let before = read(page).await?;
        page.reload().await?;
        let after = read(page).await?;
        ensure!(before == after, "before {before:?}, after {after:?}");
        Ok(())
    })
}
