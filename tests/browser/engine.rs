//! The three browser engines there are, and how each is opened.

use super::ground::Screen;
use anyhow::Result;
use std::path::{Path, PathBuf};
use thirtyfour::prelude::*;
use thirtyfour::{ChromeCapabilities, ChromiumLikeCapabilities, LoggingPrefsLogLevel};

/// A browser engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Engine {
    /// Chromium.
    Chromium,
    /// Firefox.
    Firefox,
    /// WebKit, which stands in for the browser of many phones.
    WebKit,
}

impl Engine {
    /// Every engine.
    pub const ALL: [Engine; 3] = [Engine::Chromium, Engine::Firefox, Engine::WebKit];

    /// How a session is asked for, with an empty profile in a folder.
    /// `languages` are those of the reader, in their order; Chromium alone takes them.
    pub(crate) fn capabilities(
        self,
        screen: Screen,
        languages: &str,
        profile: &Path,
    ) -> Result<Capabilities> {
        Ok(match self {
            Engine::Chromium => chromium(screen, languages, profile)?.into(),
            Engine::Firefox => firefox(screen)?,
            Engine::WebKit => webkit()?,
        })
    }
}

fn chromium(screen: Screen, languages: &str, profile: &Path) -> Result<ChromeCapabilities> {
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
    let preferences = serde_json::json!({
        "download.default_directory": downloads(profile),
        "intl.accept_languages": languages,
    });
    capabilities.add_experimental_option("prefs", preferences)?;
    capabilities.set_browser_log_level(LoggingPrefsLogLevel::All)?;
    Ok(capabilities)
}

/// Where a browser with its profile in a folder puts what it saves.
pub(crate) fn downloads(profile: &Path) -> PathBuf {
    profile.join("saved")
}

fn firefox(screen: Screen) -> Result<Capabilities> {
    let (width, height) = screen.size();
    let mut capabilities = Capabilities::from(DesiredCapabilities::firefox());
    let options = serde_json::json!({
        "binary": "/usr/bin/firefox-esr",
        "args": ["-headless", format!("--width={width}"), format!("--height={height}")],
    });
    capabilities.set("moz:firefoxOptions", options)?;
    Ok(capabilities)
}

fn webkit() -> Result<Capabilities> {
    let mut capabilities = Capabilities::new();
    let options = serde_json::json!({ "binary": mini_browser()?, "args": ["--automation"] });
    capabilities.set("webkitgtk:browserOptions", options)?;
    Ok(capabilities)
}

/// The engine's own small browser, which lies in a folder named after machine and version.
fn mini_browser() -> Result<PathBuf> {
    for machine in std::fs::read_dir("/usr/lib")? {
        for version in ["webkit2gtk-4.1", "webkit2gtk-4.0"] {
            let path = machine
                .as_ref()
                .map(|m| m.path().join(version).join("MiniBrowser"));
            if let Ok(path) = path
                && path.is_file()
            {
                return Ok(path);
            }
        }
    }
    anyhow::bail!("WebKit's browser is missing: `bash tests/run.sh` installs it")
}
