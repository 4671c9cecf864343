//! The drivers that open browsers, each started when it is first needed.

use super::child::Running;
use super::engine::Engine;
use anyhow::{Context, Result};
use std::net::TcpListener;
use std::process::Command;
use std::sync::{Mutex, MutexGuard, PoisonError};

/// The drivers that run, one for an engine; all ended when this is dropped.
#[derive(Default)]
pub struct Drivers([Mutex<Option<Driver>>; Engine::ALL.len()]);

/// A driver that runs.
struct Driver {
    address: String,
    _running: Vec<Running>,
}

/// Somebody's turn with a driver, which ends when this is dropped.
pub struct Turn<'a> {
    /// The driver's address.
    pub address: String,
    /// Chromium's driver opens as many browsers as it is asked for; the others have one at a time.
    _alone: Option<MutexGuard<'a, Option<Driver>>>,
}

impl Drivers {
    /// Waits for a turn with an engine's driver.
    pub fn turn(&self, engine: Engine) -> Result<Turn<'_>> {
        // A case that broke off leaves the driver as it was.
        let mut place = self.0[engine as usize]
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        let driver = match place.take() {
            Some(driver) => driver,
            None => match engine {
                Engine::Chromium => chromium(),
                Engine::Firefox => firefox(),
                Engine::WebKit => webkit(),
            }
            .with_context(|| {
                format!("no driver for {engine:?}: `bash tests/run.sh` installs it")
            })?,
        };
        let address = place.insert(driver).address.clone();
        let _alone = (engine != Engine::Chromium).then_some(place);
        Ok(Turn { address, _alone })
    }
}

fn at(port: u16) -> String {
    format!("http://127.0.0.1:{port}")
}

fn chromium() -> Result<Driver> {
    let (running, port) = Running::start(Command::new("chromedriver").arg("--port=0"), |line| {
        let words = line.split("started successfully on port ").nth(1)?;
        words.trim_end_matches('.').parse::<u16>().ok()
    })?;
    Ok(Driver {
        address: at(port),
        _running: vec![running],
    })
}

fn firefox() -> Result<Driver> {
    let mut geckodriver = Command::new("geckodriver");
    let (running, port) = Running::start(geckodriver.arg("--port=0"), |line| {
        let words = line.split("Listening on 127.0.0.1:").nth(1)?;
        words.trim().parse::<u16>().ok()
    })?;
    Ok(Driver {
        address: at(port),
        _running: vec![running],
    })
}

/// WebKit has no way of running without a screen: it gets one that nobody sees.
fn webkit() -> Result<Driver> {
    // It says on its output which one it took.
    let mut screen = Command::new("Xvfb");
    // Without the last, it begins anew whenever the last window is closed, and turns away who comes meanwhile.
    screen.args([
        "-displayfd",
        "1",
        "-screen",
        "0",
        "1440x1000x24",
        "-noreset",
    ]);
    let (screen, display) = Running::start(&mut screen, |line| line.trim().parse::<u32>().ok())?;
    let port = free_port()?;
    let mut driver = Command::new("WebKitWebDriver");
    driver
        .arg(format!("--port={port}"))
        .env("DISPLAY", format!(":{display}"))
        // Its sandbox cannot be made by root; nothing but our own page is opened in it.
        .env("WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS", "1");
    let driver = Running::silent(&mut driver, port)?;
    Ok(Driver {
        address: at(port),
        _running: vec![driver, screen],
    })
}

fn free_port() -> Result<u16> {
    Ok(TcpListener::bind(("127.0.0.1", 0))?.local_addr()?.port())
}
