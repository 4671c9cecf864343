//! What every case stands on: the served page, and a driver that opens browsers.

use super::child::Running;
use super::page::Page;
use anyhow::{Context, Result};
use std::env;
use std::path::Path;
use std::process::Command;
use tempfile::TempDir;
use thirtyfour::prelude::*;
use thirtyfour::{ChromeCapabilities, ChromiumLikeCapabilities, LoggingPrefsLogLevel};
use tokio::runtime::{self, Runtime};

/// The screen a page is opened on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Screen {
    /// A small phone held upright.
    Phone,
    /// A desk's.
    Desk,
}

impl Screen {
    /// Width and height, CSS pixels.
    pub fn size(self) -> (u32, u32) {
        match self {
            Screen::Phone => (360, 740),
            Screen::Desk => (1440, 900),
        }
    }
}

/// The served page and the driver, both ended when this is dropped.
pub struct Ground {
    _host: Running,
    _driver: Running,
    driver: String,
    runtime: Runtime,
    /// Address of the page, ending in a stroke.
    pub address: String,
}

impl Ground {
    /// Builds and serves the page as a visitor of the repository does, and starts the driver.
    pub fn start() -> Result<Self> {
        let (host, address) = Running::start(
            cargo().args(["run", "--release", "--quiet", "--", "--port", "0"]),
            |line| line.find("http://").map(|at| line[at..].trim().to_owned()),
        )?;
        let mut driver = Command::new("chromedriver");
        let (driver, port) = Running::start(driver.arg("--port=0"), |line| {
            let words = line.split("started successfully on port ").nth(1)?;
            words.trim_end_matches('.').parse::<u16>().ok()
        })
        .context("chromedriver is missing: `bash tests/run.sh` installs it")?;
        Ok(Self {
            _host: host,
            _driver: driver,
            driver: format!("http://127.0.0.1:{port}"),
            runtime: runtime::Builder::new_current_thread()
                .enable_all()
                .build()?,
            address,
        })
    }

    /// Opens the page in a new browser with an empty profile, at `tail` behind its address, and
    /// does something there. Whatever it does, the console stays free of errors and no other host
    /// is asked for anything.
    pub fn visit<T>(
        &self,
        screen: Screen,
        tail: &str,
        case: impl AsyncFnOnce(&Page) -> Result<T>,
    ) -> Result<T> {
        let profile = TempDir::new()?;
        self.runtime.block_on(async {
            let capabilities = capabilities(screen, profile.path())?;
            let driver = WebDriver::new(&self.driver, capabilities).await?;
            let visited = driver.run_and_quit(async |driver| {
                let page = Page::open(driver, &self.address, tail).await?;
                let done = case(&page).await;
                let clean = page.check_clean().await;
                // A broken console explains a broken case better than the case itself does.
                match (done, clean) {
                    (Ok(value), clean) => clean.map(|()| value),
                    (Err(error), Ok(())) => Err(error),
                    (Err(error), Err(unclean)) => Err(error.context(unclean)),
                }
            });
            visited.await.map_err(|error| match error {
                thirtyfour::WebDriverRunError::Body(error) => error,
                other => anyhow::anyhow!("{other:?}"),
            })
        })
    }
}

fn capabilities(screen: Screen, profile: &Path) -> Result<ChromeCapabilities> {
    let mut capabilities = DesiredCapabilities::chrome();
    let (width, height) = screen.size();
    for argument in [
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        // A request to any other host fails, and says so in the console.
        "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
        &format!("--user-data-dir={}", profile.display()),
    ] {
        capabilities.add_arg(argument)?;
    }
    // A window cannot be made as narrow as a phone, and is less high than asked for.
    let phone = screen == Screen::Phone;
    let ratio = if phone { 2 } else { 1 };
    let metrics = serde_json::json!({
        "width": width, "height": height, "pixelRatio": ratio, "mobile": phone, "touch": phone,
    });
    let screen = serde_json::json!({ "deviceMetrics": metrics });
    capabilities.add_experimental_option("mobileEmulation", screen)?;
    capabilities.set_browser_log_level(LoggingPrefsLogLevel::All)?;
    Ok(capabilities)
}

/// Cargo, in the repository.
pub fn cargo() -> Command {
    let mut command = Command::new(env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    command.current_dir(tests::repository());
    command
}
