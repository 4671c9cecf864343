//! One opened page.

mod press;

use super::engine::Engine;
use super::screen::Screen;
use super::shades::shades;
use super::visit::Visit;
use super::work::{Gauge, Since, Work};
use anyhow::{Context, Result, ensure};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde::de::DeserializeOwned;
use serde_json::json;
use std::fs;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};
use thirtyfour::prelude::*;

/// How long something on the page may take to come true.
const PATIENCE: Duration = Duration::from_secs(120);

/// What a page that is ready looks like.
const READY: (&str, &str) = (
    "the page to start",
    "document.documentElement.dataset.ready",
);

/// A path that the host does not have.
const NOWHERE: &str = "nowhere";

/// Another page, which is there without the host too: Firefox never says that a page which is nowhere has come.
const ELSEWHERE: &str = "limits.html";

/// How much of a script that failed is told, in characters.
const LEGIBLE: usize = 300;

/// How often Firefox is asked at most: on a busy machine, or of a page that is being left, it now and then answers null
/// to what has another answer.
const NULLS: u32 = 5;

/// What ends once the page has drawn what it was last given.
const DRAWN: &str = "return new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))";

/// An opened page.
pub struct Page {
    driver: WebDriver,
    engine: Engine,
    /// Whether it stands in a frame of another, which is all that is narrow.
    framed: bool,
    /// Whether a click is the tap of a finger. In Chromium the emulated phone makes it one by itself; WebKit's
    /// driver has no fingers.
    tapped: bool,
    address: String,
    saved: PathBuf,
}

impl Page {
    /// Opens the page and waits until it is ready.
    pub(crate) async fn open(driver: WebDriver, visit: &Visit<'_>) -> Result<Self> {
        let page = Self {
            driver,
            engine: visit.engine,
            framed: visit.engine != Engine::Chromium && visit.screen == Screen::Phone,
            tapped: visit.engine == Engine::Firefox && visit.screen == Screen::Phone,
            address: visit.address.to_owned(),
            saved: PathBuf::new(),
        };
        if visit.slowly {
            page.slow_down().await?;
        }
        let address = format!("{}{}", visit.address, visit.tail);
        if page.framed {
            page.frame(visit.screen, &address).await?;
        } else {
            page.driver.goto(address).await?;
            page.widen(visit.screen).await?;
        }
        page.wait_for(READY.0, READY.1).await?;
        Ok(page)
    }

    /// Makes the window as large as a screen.
    async fn widen(&self, screen: Screen) -> Result<()> {
        if self.engine == Engine::Chromium {
            return Ok(());
        }
        let around = "return [outerWidth - innerWidth, outerHeight - innerHeight]";
        let [beside, above]: [u32; 2] = self.ask(around).await?;
        let (width, height) = screen.size();
        self.driver
            .set_window_rect(0, 0, width + beside, height + above)
            .await?;
        self.wait_for("the window", &format!("innerWidth === {width}"))
            .await
    }

    /// Opens an address in a frame as large as a screen: the windows of some engines cannot be made so narrow.
    async fn frame(&self, screen: Screen, address: &str) -> Result<()> {
        // What the host does not have shows a page without rules of its own.
        self.driver
            .goto(format!("{}{NOWHERE}", self.address))
            .await?;
        let (width, height) = screen.size();
        // Nothing is asked of a page that is giving way to another: Firefox answers nothing at all then.
        let script = format!(
            "const frame = document.createElement('iframe'); frame.style.cssText = 'border: 0'; \
             frame.width = {width}; frame.height = {height}; frame.src = {address:?}; \
             document.body.style.margin = 0; \
             return new Promise(done => {{ frame.onload = () => done(true); document.body.replaceChildren(frame); }})"
        );
        ensure!(self.ask::<bool>(&script).await?);
        self.driver.enter_frame(0).await?;
        // Keys go to the frame that has been looked at last.
        ensure!(self.ask::<bool>("window.focus(); return true").await?);
        Ok(())
    }

    /// Does something to the frame that has it load a page, and goes on in that.
    async fn reframe(&self, does: &str) -> Result<()> {
        self.driver.enter_parent_frame().await?;
        let script = format!(
            "const frame = document.querySelector('iframe'); \
             return new Promise(done => {{ frame.onload = () => done(true); {does}; }})"
        );
        ensure!(self.ask::<bool>(&script).await?);
        self.driver.enter_frame(0).await?;
        Ok(())
    }

    /// From now on the browser has a line of 1.6 Mbit/s with 150 ms to the host and back: a phone in the
    /// country. Chromium alone can do so.
    async fn slow_down(&self) -> Result<()> {
        let tools = self.driver.cdp();
        let bytes_per_second = 1.6e6 / 8.0;
        let line = json!({
            "offline": false, "latency": 150,
            "downloadThroughput": bytes_per_second, "uploadThroughput": bytes_per_second,
        });
        tools.send_raw("Network.enable", json!({})).await?;
        tools
            .send_raw("Network.emulateNetworkConditions", line)
            .await?;
        Ok(())
    }

    /// Where the browser puts what it saves.
    pub(crate) fn saving_in(self, saved: PathBuf) -> Self {
        Self { saved, ..self }
    }

    /// The content of a file that the page saves, by its name; Chromium alone.
    pub async fn saved(&self, name: &str) -> Result<Vec<u8>> {
        let path = self.saved.join(name);
        let begun = Instant::now();
        // Its own name is taken before anything is written, and what is written is there at once.
        while fs::metadata(&path).map_or(0, |file| file.len()) == 0 {
            ensure!(begun.elapsed() < PATIENCE, "{name} was never saved");
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
        Ok(fs::read(path)?)
    }

    /// Chooses a file in a field for files.
    pub async fn choose_file(&self, css: &str, path: &Path) -> Result<()> {
        let path = path.display().to_string();
        let choose = async |field: WebElement| field.send_keys(&path).await;
        self.with(css, choose).await
    }

    /// The window in shades of grey: width, height and the shades.
    pub async fn shades(&self) -> Result<(usize, usize, Vec<u8>)> {
        let png = self.driver.screenshot_as_png().await?;
        shades(&png)
    }

    /// Why the browser would not install the page; Chromium alone tells.
    pub async fn install_faults(&self) -> Result<Vec<String>> {
        let tools = self.driver.cdp();
        let manifest = tools.send_raw("Page.getAppManifest", json!({})).await?;
        ensure!(manifest["data"].is_string(), "no manifest: {manifest}");
        let asked = tools
            .send_raw("Page.getInstallabilityErrors", json!({}))
            .await?;
        let faults = asked["installabilityErrors"].as_array();
        let faults = faults.context("the browser tells nothing of installing")?;
        let errors = manifest["errors"].as_array().into_iter().flatten();
        Ok(faults
            .iter()
            .chain(errors)
            .map(ToString::to_string)
            .collect())
    }

    /// From now on the page does the piece of work, now and then, by which [`Page::work`] tells how fast the
    /// machine is.
    pub async fn gauge(&self, by: Gauge) -> Result<()> {
        ensure!(self.ask::<bool>(&by.script()).await?);
        Ok(())
    }

    /// What the page worked until it set a mark, in a visit that is traced and gauged.
    pub async fn work(&self, since: Since<'_>, until: &str) -> Result<Work> {
        let log = self.driver.get_log("performance").await?;
        let texts: Vec<_> = log.into_iter().map(|entry| entry.message).collect();
        Work::read(&texts, &since, until)
    }

    /// Sets a mark in what is traced.
    pub async fn mark(&self, name: &str) -> Result<()> {
        let set = format!("performance.mark({name:?}); return true");
        ensure!(self.ask::<bool>(&set).await?);
        Ok(())
    }

    /// The value of a script's `return`.
    pub async fn ask<T: DeserializeOwned>(&self, script: &str) -> Result<T> {
        let legible = || script.chars().take(LEGIBLE).collect::<String>();
        let mut tries = if self.engine == Engine::Firefox {
            NULLS
        } else {
            1
        };
        loop {
            tries -= 1;
            let answer = self.driver.execute(script, Vec::new()).await;
            let answer = answer.with_context(legible)?;
            let null = answer.json().is_null();
            match answer.convert() {
                Err(_) if null && tries > 0 => {}
                value => return value.with_context(legible),
            }
        }
    }

    /// Waits until an expression is true.
    pub async fn wait_for(&self, what: &str, script: &str) -> Result<()> {
        self.wait(PATIENCE, what, script).await
    }

    /// Waits until an expression is true, as long as it may take.
    pub async fn wait(&self, patience: Duration, what: &str, script: &str) -> Result<()> {
        let begun = Instant::now();
        let asked = format!("return Boolean({script})");
        while !self.ask::<bool>(&asked).await? {
            ensure!(
                begun.elapsed() < patience,
                "waited in vain for {what}: {script}"
            );
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
        Ok(())
    }

    /// The texts of all elements of a kind.
    pub async fn texts(&self, css: &str) -> Result<Vec<String>> {
        let script =
            format!("return [...document.querySelectorAll({css:?})].map(e => e.innerText.trim())");
        self.ask(&script).await
    }

    /// Waits until the page has drawn what it was last given: one edit a frame, so it is in by the second.
    pub async fn drawn(&self) -> Result<()> {
        ensure!(self.ask::<bool>(DRAWN).await?);
        Ok(())
    }

    /// Waits until the page scrolls no more.
    pub async fn stands(&self) -> Result<()> {
        let stands = "window.stood === scrollY || (window.stood = scrollY, false)";
        self.wait_for("the page to stand", stands).await
    }

    /// Waits until all that is found out by riding again and again is known.
    pub async fn studied(&self) -> Result<()> {
        self.wait_for("the study", "!document.documentElement.dataset.working")
            .await
    }

    /// Goes to a moment of the ride, s, and waits until it is drawn.
    pub async fn seek(&self, seconds: f64) -> Result<()> {
        // All in one: what is drawn between two questions would count as well.
        let script = format!(
            "const s = document.getElementById('scrub'); s.value = {seconds}; \
             s.dispatchEvent(new Event('input', {{ bubbles: true }})); {DRAWN}"
        );
        ensure!(self.ask::<bool>(&script).await?);
        Ok(())
    }

    /// How long the ride lasts, s.
    pub async fn duration(&self) -> Result<f64> {
        self.ask("return Number(document.getElementById('scrub').max)")
            .await
    }

    /// Goes to the page anew, at `tail` behind its address, in the same browser.
    pub async fn go(&self, tail: &str) -> Result<()> {
        // Another address first: one that differs behind # only would load nothing.
        if self.framed {
            self.reframe(&format!("frame.src = '{}{ELSEWHERE}'", self.address))
                .await?;
            self.reframe(&format!("frame.src = '{}{tail}'", self.address))
                .await?;
            return self.wait_for(READY.0, READY.1).await;
        }
        self.driver.goto("about:blank").await?;
        self.driver.goto(format!("{}{tail}", self.address)).await?;
        self.wait_for(READY.0, READY.1).await
    }

    /// Opens the page in a second tab and stays there.
    pub async fn second_tab(&self) -> Result<()> {
        self.second_tab_at("").await
    }

    /// The same, at `tail` behind its address.
    pub async fn second_tab_at(&self, tail: &str) -> Result<()> {
        let tab = self.driver.new_tab().await?;
        self.driver.switch_to_window(tab).await?;
        self.driver.goto(format!("{}{tail}", self.address)).await?;
        self.wait_for(READY.0, READY.1).await
    }

    /// Goes to the tab that was opened last.
    pub async fn last_tab(&self) -> Result<()> {
        let tabs = self.driver.windows().await?;
        let last = tabs.last().context("there is no tab")?;
        self.driver.switch_to_window(last.clone()).await?;
        Ok(())
    }

    /// Goes back to the first tab.
    pub async fn first_tab(&self) -> Result<()> {
        let tabs = self.driver.windows().await?;
        let first = tabs.first().context("there is no tab")?;
        self.driver.switch_to_window(first.clone()).await?;
        Ok(())
    }

    /// Asks Chromium itself for something, by a command of its developer tools' protocol.
    pub async fn devtools(&self, command: &str, parameters: serde_json::Value) -> Result<()> {
        self.driver.cdp().send_raw(command, parameters).await?;
        Ok(())
    }

    /// The page as PDF on paper of some width and height, mm, with the margins of its style; Chromium alone.
    pub async fn print(&self, size: [f64; 2]) -> Result<Vec<u8>> {
        const INCH: f64 = 25.4;
        let wants = json!({
            "paperWidth": size[0] / INCH, "paperHeight": size[1] / INCH, "preferCSSPageSize": true,
        });
        let answer = self.driver.cdp().send_raw("Page.printToPDF", wants).await?;
        let text = answer["data"].as_str().context("nothing was printed")?;
        Ok(STANDARD.decode(text)?)
    }

    /// Loads the page again.
    pub async fn reload(&self) -> Result<()> {
        if self.framed {
            self.reframe("frame.contentWindow.location.reload()")
                .await?;
        } else {
            self.driver.refresh().await?;
        }
        self.wait_for(READY.0, READY.1).await
    }

    /// A picture of the window, kept under `tests/out` to be looked at.
    pub async fn picture(&self, name: &str) -> Result<()> {
        let png = self.driver.screenshot_as_png().await?;
        let folder = tests::repository().join("tests/out");
        fs::create_dir_all(&folder)?;
        fs::write(folder.join(name), &png)?;
        Ok(())
    }

    /// How many errors the console has, which a case expects: they are forgotten with that; Chromium alone.
    pub async fn errors(&self) -> Result<usize> {
        let log = self.driver.browser_log().await?;
        Ok(log.iter().filter(|entry| entry.level == "SEVERE").count())
    }

    /// No error in the console, where the driver lets it be read; no request to another host.
    pub(crate) async fn check_clean(&self) -> Result<()> {
        if self.engine == Engine::Chromium {
            let log = self.driver.browser_log().await?;
            let errors: Vec<_> = log.iter().filter(|entry| entry.level == "SEVERE").collect();
            ensure!(errors.is_empty(), "errors in the console: {errors:#?}");
        }
        // What a page has only just come to is told once it is there.
        let asked = "performance.getEntriesByType('resource')";
        self.wait_for("something to be loaded", &format!("{asked}.length"))
            .await?;
        let asked: Vec<String> = self
            .ask(&format!("return {asked}.map(e => e.name)"))
            .await?;
        let others: Vec<_> = asked
            .iter()
            .filter(|a| !a.starts_with(&self.address))
            .collect();
        ensure!(others.is_empty(), "other hosts were asked: {others:?}");
        Ok(())
    }
}
