//! What a first visit costs, by the browser's own record of it.

use anyhow::{Context, Result, ensure};
use browser::{Gauge, Ground, SLOWER, Screen, Since, Visit};
use serde::Deserialize;
use std::io::{Read, Write};
use std::net::TcpStream;
use std::time::Duration;

/// Most that a first visit may fetch, bytes as they come over the line.
const BYTES: f64 = 300e3;

/// Longest time to a page that answers, s, on a slow phone over a slow line.
const SECONDS: f64 = 2.0;

/// One file of a visit.
#[derive(Deserialize)]
struct Entry {
    name: String,
    bytes: f64,
    ended: f64,
}

const ENTRIES: &str = "return [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')] \
    .map(e => ({ name: e.name, bytes: e.transferSize, ended: e.responseEnd }))";

const READY: &str = "return performance.getEntriesByName('ready')[0].startTime / 1000";

/// Bytes of a file's body as the host sends it to a browser.
fn sent(address: &str) -> Result<usize> {
    let (host, path) = address
        .trim_start_matches("http://")
        .split_once('/')
        .context("an address has a path")?;
    let mut line = TcpStream::connect(host)?;
    write!(
        line,
        "GET /{path} HTTP/1.1\r\nHost: {host}\r\nAccept-Encoding: gzip, deflate, br\r\nConnection: close\r\n\r\n"
    )?;
    let mut answer = Vec::new();
    line.read_to_end(&mut answer)?;
    let end = answer
        .windows(4)
        .position(|w| w == b"\r\n\r\n")
        .context("an answer has a head")?;
    ensure!(
        answer.starts_with(b"HTTP/1.1 200"),
        "{address} was not answered"
    );
    Ok(answer.len() - end - 4)
}

pub fn little_is_fetched(ground: &Ground) -> Result<()> {
    ground.visit(Screen::Phone, "", async |page| {
        page.wait_for("everything to be looked at", "!document.documentElement.dataset.working").await?;
        page.wait_for("the page to be kept", "navigator.serviceWorker.controller").await?;
        let entries: Vec<Entry> = page.ask(ENTRIES).await?;
        let shown: f64 = entries.iter().map(|e| e.bytes).sum();
        let wasm = entries.iter().find(|e| e.name.ends_with(".wasm")).context("no simulator was fetched")?;
        ensure!(wasm.bytes > 50e3, "the simulator has only {} bytes, so nothing was counted", wasm.bytes);
        let shed = entries.iter().any(|e| e.name.contains("/shed"));
        ensure!(!shed, "what studies test rides is fetched where there are none");
        // What is kept for later is fetched too, once the page has started.
        let script = "return caches.keys().then(async ([name]) => (await (await caches.open(name)).keys()).map(r => r.url))";
        let kept: Vec<String> = page.ask(script).await?;
        let mut later = 0.0;
        // What the page has by now is not fetched again: of a page it is asked whether it is still the same.
        let news = |kept: &str| entries.iter().all(|e| e.name != kept);
        for address in kept.iter().filter(|kept| news(kept)) {
            later += sent(address)? as f64;
        }
        later += sent(&format!("{}sw.js", ground.address))? as f64;
        println!(
            "a first visit fetches {} files with {:.1} kB, of them the simulator {:.1} kB; and {:.1} kB to be kept for later",
            entries.len(), shown / 1e3, wasm.bytes / 1e3, later / 1e3
        );
        ensure!(shown + later < BYTES, "{} bytes; accepted less than {BYTES}", shown + later);
        Ok(())
    })
}

pub fn soon_interactive(ground: &Ground) -> Result<()> {
    let visit = Visit {
        slowly: true,
        traced: true,
        ..Visit::to(&ground.address)
    };
    ground.visit_as(&visit, async |page| {
        let ready: f64 = page.ask(READY).await?;
        let entries: Vec<Entry> = page.ask(ENTRIES).await?;
        page.gauge(Gauge::Reckoning).await?;
        tokio::time::sleep(Duration::from_secs(2)).await;
        let fetched = entries.iter().map(|e| e.ended / 1000.0);
        let fetched = fetched.filter(|&t| t < ready).fold(0.0, f64::max);
        let work = page.work(Since::Before(1000.0 * ready), "ready").await?;
        let worked: f64 = work.tasks.iter().map(|task| task.worked / 1000.0).sum();
        let slow = work.on_slower(SLOWER) / 1000.0;
        println!(
            "over a slow line the last file that is waited for is there after {fetched:.2} s, and the page answers after \
             {ready:.2} s, of which it works {worked:.3} s; on a processor {SLOWER} times slower after {slow:.2} s"
        );
        ensure!(
            fetched > 0.15,
            "{fetched} s is less than the line takes: nothing was slowed down"
        );
        ensure!(slow < SECONDS, "interactive after {slow:.2} s; accepted less than {SECONDS} s");
        Ok(())
    })
}
