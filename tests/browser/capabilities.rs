//! How each of the three browser engines is opened.

use super::engine::Engine;
use super::screen::Screen;
use super::visit::Visit;
use super::work::CATEGORIES;
use anyhow::Result;
use std::path::{Path, PathBuf};
use thirtyfour::prelude::*;
use thirtyfour::{ChromeCapabilities, ChromiumLikeCapabilities, LoggingPrefsLogLevel};

/// How a session is asked for, with an empty profile in a folder. The reader's languages and a trace are for
/// Chromium alone.
pub(crate) fn capabilities(visit: &Visit<'_>, profile: &Path) -> Result<Capabilities> {
    let screen = visit.screen;
    Ok(match visit.engine {
        Engine::Chromium => {
            let mut capabilities = chromium(screen, visit.languages, profile)?;
            if visit.traced {
                trace(&mut capabilities)?;
            }
            capabilities.into()
        }
        Engine::Firefox => firefox(screen)?,
        Engine::WebKit => webkit()?,
    })
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
    let phone = screen.is_phone();
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

/// Has the browser tell what it works, from its start on.
fn trace(capabilities: &mut ChromeCapabilities) -> Result<()> {
    capabilities.set_logging_prefs("performance", LoggingPrefsLogLevel::All)?;
    let how = serde_json::json!({
        "enableNetwork": false, "enablePage": false, "traceCategories": CATEGORIES,
    });
    capabilities.add_experimental_option("perfLoggingPrefs", how)?;
    Ok(())
}

/// Where a browser with its profile in a folder puts what it saves.
pub(crate) fn downloads(profile: &Path) -> PathBuf {
    profile.join("saved")
}

/// Of a script that runs while its window is closed it says that it was terminated by timeout: nothing hung.
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
