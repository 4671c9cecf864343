//! One opened page.

use super::engine::Engine;
use super::ground::{Screen, Visit};
use anyhow::{Context, Result, ensure};
use serde::de::DeserializeOwned;
use serde_json::json;
use std::fs;
use std::io::Cursor;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};
use thirtyfour::prelude::*;

/// How long something on the page may take to come true.
const PATIENCE: Duration = Duration::from_secs(10);

/// What a page that is ready looks like.
const READY: (&str, &str) = (
    "the page to start",
    "document.documentElement.dataset.ready && document.documentElement.dataset.whole",
);

/// A path that the host does not have.
const NOWHERE: &str = "nowhere";

/// How much of a script that failed is told, in characters.
const LEGIBLE: usize = 300;

/// An opened page.
pub struct Page {
    driver: WebDriver,
    engine: Engine,
    /// Whether it stands in a frame of another, which is all that is narrow.
    framed: bool,
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
        let script = format!(
            "const frame = document.createElement('iframe'); frame.style.cssText = 'border: 0'; \
             frame.width = {width}; frame.height = {height}; frame.src = {address:?}; \
             document.body.replaceChildren(frame); document.body.style.margin = 0; return true"
        );
        ensure!(self.ask::<bool>(&script).await?);
        self.driver.enter_frame(0).await?;
        // Keys go to the frame that has been looked at last.
        ensure!(self.ask::<bool>("window.focus(); return true").await?);
        Ok(())
    }

    /// From now on the browser has a quarter of the processor, and a line of 1.6 Mbit/s with 150 ms to the
    /// host and back: a cheap phone in the country. Chromium alone can do so.
    async fn slow_down(&self) -> Result<()> {
        let tools = self.driver.cdp();
        let processor = json!({ "rate": 4 });
        tools
            .send_raw("Emulation.setCPUThrottlingRate", processor)
            .await?;
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
        // A list that is written anew meanwhile has another field of the same kind.
        if self.element(css).await?.send_keys(&path).await.is_err() {
            self.element(css).await?.send_keys(&path).await?;
        }
        Ok(())
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

    /// The value of a script's `return`.
    pub async fn ask<T: DeserializeOwned>(&self, script: &str) -> Result<T> {
        let answer = self.driver.execute(script, Vec::new()).await;
        let answer = answer.with_context(|| script.chars().take(LEGIBLE).collect::<String>())?;
        Ok(answer.convert()?)
    }

    /// Waits until an expression is true.
    pub async fn wait_for(&self, what: &str, script: &str) -> Result<()> {
        self.wait(PATIENCE, what, script).await
    }

    /// Waits until an expression is true, as long as it may take.
    pub async fn wait(&self, patience: Duration, what: &str, script: &str) -> Result<()> {
        let begun = Instant::now();
        while !self
            .ask::<bool>(&format!("return Boolean({script})"))
            .await?
        {
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

    /// Clicks the first element of a kind.
    pub async fn click(&self, css: &str) -> Result<()> {
        let element = self.element(css).await?;
        element.scroll_into_view().await?;
        element.click().await.with_context(|| css.to_owned())
    }

    /// Drags the first element of a kind by so many pixels to the right and down.
    pub async fn drag(&self, css: &str, right: i64, down: i64) -> Result<()> {
        let element = self.element(css).await?;
        element.scroll_into_view().await?;
        let chain = self.driver.action_chain();
        let chain = chain.move_to_element_center(&element).click_and_hold();
        let half = chain.move_by_offset(right / 2, down / 2);
        half.move_by_offset(right - right / 2, down - down / 2)
            .release()
            .perform()
            .await?;
        // One edit a frame: the last one is in by the second.
        let drawn = "return new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))";
        ensure!(self.ask::<bool>(drawn).await?);
        Ok(())
    }

    /// Presses a key on the first element of a kind.
    pub async fn press(&self, css: &str, key: char) -> Result<()> {
        let element = self.element(css).await?;
        element.focus().await?;
        element.send_keys(key.to_string()).await?;
        Ok(())
    }

    /// Types into a field in place of what it holds, and leaves it.
    pub async fn fill(&self, css: &str, text: &str) -> Result<()> {
        let element = self.element(css).await?;
        element.scroll_into_view().await?;
        element.send_keys(Key::Control + "a").await?;
        element.send_keys(text).await?;
        element.send_keys(Key::Tab + "").await?;
        Ok(())
    }

    /// Goes to a moment of the ride, s, and waits until it is drawn.
    pub async fn seek(&self, seconds: f64) -> Result<()> {
        let script = format!(
            "const s = document.getElementById('scrub'); s.value = {seconds}; \
             s.dispatchEvent(new Event('input', {{ bubbles: true }})); \
             return new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))"
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
        self.driver.goto("about:blank").await?;
        self.driver.goto(format!("{}{tail}", self.address)).await?;
        self.wait_for(READY.0, READY.1).await
    }

    /// Opens the page in a second tab and stays there.
    pub async fn second_tab(&self) -> Result<()> {
        let tab = self.driver.new_tab().await?;
        self.driver.switch_to_window(tab).await?;
        self.driver.goto(&self.address).await?;
        self.wait_for(READY.0, READY.1).await
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

    /// Loads the page again.
    pub async fn reload(&self) -> Result<()> {
        if self.framed {
            let script = "window.gone = true; location.reload(); return true";
            ensure!(self.ask::<bool>(script).await?);
            self.wait_for("another page", "!window.gone").await?;
        } else {
            self.driver.refresh().await?;
        }
        self.wait_for(READY.0, READY.1).await
    }

    async fn element(&self, css: &str) -> Result<WebElement> {
        let found = self.driver.find(By::Css(css)).await;
        found.with_context(|| format!("no {css} on the page"))
    }

    /// A picture of the window, kept under `tests/out` to be looked at.
    pub async fn picture(&self, name: &str) -> Result<()> {
        let png = self.driver.screenshot_as_png().await?;
        let folder = tests::repository().join("tests/out");
        fs::create_dir_all(&folder)?;
        fs::write(folder.join(name), &png)?;
        Ok(())
    }

    /// No error in the console, where the driver lets it be read; no request to another host.
    pub(crate) async fn check_clean(&self) -> Result<()> {
        if self.engine == Engine::Chromium {
            let log = self.driver.browser_log().await?;
            let errors: Vec<_> = log.iter().filter(|entry| entry.level == "SEVERE").collect();
            ensure!(errors.is_empty(), "errors in the console: {errors:#?}");
        }
        let script = "return performance.getEntriesByType('resource').map(e => e.name)";
        let asked: Vec<String> = self.ask(script).await?;
        let others: Vec<_> = asked
            .iter()
            .filter(|a| !a.starts_with(&self.address))
            .collect();
        ensure!(others.is_empty(), "other hosts were asked: {others:?}");
        ensure!(
            !asked.is_empty(),
            "the page loaded nothing, so nothing was checked"
        );
        Ok(())
    }
}

/// A PNG in shades of grey: width, height and the shades, row by row.
pub fn shades(png: &[u8]) -> Result<(usize, usize, Vec<u8>)> {
    let mut decoder = png::Decoder::new(Cursor::new(png));
    decoder.set_transformations(png::Transformations::normalize_to_color8());
    let mut reader = decoder.read_info()?;
    let mut bytes = vec![0; reader.output_buffer_size().context("a picture too large")?];
    let frame = reader.next_frame(&mut bytes)?;
    let samples = frame.color_type.samples();
    let pixels = bytes[..frame.buffer_size()].chunks(samples);
    // The green of a pixel tells dark from light well enough.
    let shades = pixels.map(|p| p[if samples > 2 { 1 } else { 0 }]).collect();
    Ok((frame.width as usize, frame.height as usize, shades))
}
