//! What every case stands on: the served page, and drivers that open browsers.

use super::child::Running;
use super::drivers::Drivers;
use super::engine::{Engine, downloads};
use super::page::Page;
use anyhow::Result;
use std::env;
use std::process::Command;
use tempfile::TempDir;
use thirtyfour::prelude::*;
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

/// What most cases read.
pub const ENGLISH: &str = "en-US,en";

/// How the page is opened.
#[derive(Clone, Copy, Debug)]
pub struct Visit<'a> {
    /// In which browser.
    pub engine: Engine,
    /// On which screen.
    pub screen: Screen,
    /// What the reader reads, in order, such as `de-DE,de`.
    pub languages: &'a str,
    /// Address of the page, ending in a stroke.
    pub address: &'a str,
    /// What stands behind it.
    pub tail: &'a str,
    /// On a slow phone over a slow line: see `Page::slow_down`.
    pub slowly: bool,
}

/// The served page and the drivers, all ended when this is dropped.
pub struct Ground {
    _host: Running,
    drivers: Drivers,
    runtime: Runtime,
    /// Address of the page, ending in a stroke.
    pub address: String,
}

impl Ground {
    /// Builds and serves the page as a visitor of the repository does.
    pub fn start() -> Result<Self> {
        let (host, address) = Running::start(
            cargo().args(["run", "--release", "--quiet", "--", "--port", "0"]),
            |line| line.find("http://").map(|at| line[at..].trim().to_owned()),
        )?;
        Ok(Self {
            _host: host,
            drivers: Drivers::default(),
            runtime: runtime::Builder::new_current_thread()
                .enable_all()
                .build()?,
            address,
        })
    }

    /// Opens the page in Chromium, with all that [`Ground::visit_in`] promises.
    pub fn visit<T>(
        &self,
        screen: Screen,
        tail: &str,
        case: impl AsyncFnOnce(&Page) -> Result<T>,
    ) -> Result<T> {
        self.visit_in(Engine::Chromium, screen, tail, case)
    }

    /// The same for a reader of some languages, in their order, such as `de-DE,de`.
    pub fn visit_reading<T>(
        &self,
        languages: &str,
        screen: Screen,
        case: impl AsyncFnOnce(&Page) -> Result<T>,
    ) -> Result<T> {
        let visit = Visit {
            engine: Engine::Chromium,
            screen,
            languages,
            address: &self.address,
            tail: "",
            slowly: false,
        };
        self.visit_as(&visit, case)
    }

    /// Opens the page in a new browser with an empty profile, at `tail` behind its address, and
    /// does something there. Whatever it does, the console stays free of errors and no other host
    /// is asked for anything.
    pub fn visit_in<T>(
        &self,
        engine: Engine,
        screen: Screen,
        tail: &str,
        case: impl AsyncFnOnce(&Page) -> Result<T>,
    ) -> Result<T> {
        let visit = Visit {
            engine,
            screen,
            languages: ENGLISH,
            address: &self.address,
            tail,
            slowly: false,
        };
        self.visit_as(&visit, case)
    }

    /// Opens a page that may be served by somebody else, with all that [`Ground::visit_in`] promises.
    pub fn visit_as<T>(
        &self,
        visit: &Visit,
        case: impl AsyncFnOnce(&Page) -> Result<T>,
    ) -> Result<T> {
        let profile = TempDir::new()?;
        let driver = self.drivers.of(visit.engine)?;
        self.runtime.block_on(async {
            let capabilities =
                visit
                    .engine
                    .capabilities(visit.screen, visit.languages, profile.path())?;
            let driver = WebDriver::new(&driver, capabilities).await?;
            let visited = driver.run_and_quit(async |driver| {
                let page = Page::open(driver, visit).await?;
                let page = page.saving_in(downloads(profile.path()));
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

/// Cargo, in the repository.
pub fn cargo() -> Command {
    let mut command = Command::new(env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    command.current_dir(tests::repository());
    command
}
