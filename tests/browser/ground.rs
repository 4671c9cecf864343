//! What every case stands on: the served page, and drivers that open browsers.

use super::capabilities::{capabilities, downloads};
use super::child::Running;
use super::drivers::Drivers;
use super::engine::Engine;
use super::page::Page;
use super::screen::Screen;
use super::visit::Visit;
use anyhow::Result;
use std::env;
use std::process::Command;
use std::sync::Arc;
use tempfile::TempDir;
use thirtyfour::prelude::*;
use tokio::runtime;

/// The served page and the drivers, all ended when the last of these is dropped.
#[derive(Clone)]
pub struct Ground {
    _host: Arc<Running>,
    drivers: Arc<Drivers>,
    /// What opens a page where a case does not ask for one engine.
    engine: Engine,
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
            _host: Arc::new(host),
            drivers: Arc::default(),
            engine: Engine::Chromium,
            address,
        })
    }

    /// The same ground, on which cases open pages in another engine.
    pub fn in_engine(&self, engine: Engine) -> Self {
        Self {
            engine,
            ..self.clone()
        }
    }

    /// Opens the page, in Chromium where nothing else was said, with all that [`Ground::visit_in`] promises.
    pub fn visit<T>(
        &self,
        screen: Screen,
        tail: &str,
        case: impl AsyncFnOnce(&Page) -> Result<T>,
    ) -> Result<T> {
        self.visit_in(self.engine, screen, tail, case)
    }

    /// The same for a reader of some languages, in their order, such as `de-DE,de`.
    pub fn visit_reading<T>(
        &self,
        languages: &str,
        screen: Screen,
        case: impl AsyncFnOnce(&Page) -> Result<T>,
    ) -> Result<T> {
        let visit = Visit {
            screen,
            languages,
            ..Visit::to(&self.address)
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
            tail,
            ..Visit::to(&self.address)
        };
        self.visit_as(&visit, case)
    }

    /// Opens the page in Chromium so that [`Page::work`] tells what it works.
    pub fn visit_traced<T>(
        &self,
        screen: Screen,
        case: impl AsyncFnOnce(&Page) -> Result<T>,
    ) -> Result<T> {
        let visit = Visit {
            screen,
            traced: true,
            ..Visit::to(&self.address)
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
        let turn = self.drivers.turn(visit.engine)?;
        let runtime = runtime::Builder::new_current_thread()
            .enable_all()
            .build()?;
        runtime.block_on(async {
            let capabilities = capabilities(visit, profile.path())?;
            let driver = WebDriver::new(&turn.address, capabilities).await?;
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
