//! What a hand does to a page: clicks, keys, drags.

use super::{PATIENCE, Page};
use crate::engine::Engine;
use anyhow::{Context, Result, bail, ensure};
use serde_json::json;
use std::time::{Duration, Instant};
use thirtyfour::common::command::{Actions, Command};
use thirtyfour::error::WebDriverErrorInner;
use thirtyfour::prelude::*;

/// How often a driver may press to meet what it presses, or type to have it stand there.
const PRESSES: u32 = 5;

/// A press from which nothing has come after so long has missed.
const MISSED: Duration = Duration::from_secs(3);

impl Page {
    /// Clicks the first element of a kind.
    pub async fn click(&self, css: &str) -> Result<()> {
        let click = async |element: WebElement| {
            element.scroll_into_view().await?;
            if self.tapped {
                return self.finger(&element, &[]).await;
            }
            element.click().await
        };
        // Drivers press where the element was a moment before: a page that scrolls, or grows above it, is missed, by
        // 50 px on a busy machine.
        let listen = format!(
            "window.came = false; window.meant = {css:?}; \
             window.listens ??= document.addEventListener('click', ({{ target }}) => (window.came ||= Boolean(target.closest(window.meant))), true) ?? true; \
             return true"
        );
        for _ in 0..PRESSES {
            ensure!(self.ask::<bool>(&listen).await?);
            self.with(css, click).await?;
            if self.came().await? {
                return Ok(());
            }
        }
        bail!("{css} was pressed {PRESSES} times and missed")
    }

    /// Whether a click has come where it was meant to; a tap becomes one only a little later.
    async fn came(&self) -> Result<bool> {
        let begun = Instant::now();
        while !self.ask::<bool>("return window.came !== false").await? {
            if begun.elapsed() > MISSED {
                return Ok(false);
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
        Ok(true)
    }

    /// Chooses an entry of a list by its value: by click in Chromium. An open list is the system's own, which
    /// other drivers do not reach where the page stands in a frame.
    pub async fn choose(&self, css: &str, value: &str) -> Result<()> {
        if self.engine != Engine::Chromium {
            let script = format!(
                "const list = document.querySelector({css:?}); list.value = {value:?}; \
                 list.dispatchEvent(new Event('change', {{ bubbles: true }})); return list.value === {value:?}"
            );
            ensure!(self.ask::<bool>(&script).await?, "{css} has no {value}");
            return Ok(());
        }
        let choose = async |entry: WebElement| {
            entry.scroll_into_view().await?;
            entry.click().await
        };
        self.with(&format!("{css} option[value='{value}']"), choose)
            .await
    }

    /// Drags the first element of a kind by so many pixels to the right and down.
    pub async fn drag(&self, css: &str, right: i64, down: i64) -> Result<()> {
        let drag = async |element: WebElement| {
            element.scroll_into_view().await?;
            let half = [right / 2, down / 2];
            let rest = [right - half[0], down - half[1]];
            if self.tapped {
                return self.finger(&element, &[half, rest]).await;
            }
            let chain = self.driver.action_chain();
            let chain = chain.move_to_element_center(&element).click_and_hold();
            let half = chain.move_by_offset(half[0], half[1]);
            half.move_by_offset(rest[0], rest[1])
                .release()
                .perform()
                .await
        };
        self.with(css, drag).await?;
        self.drawn().await
    }

    /// Puts a finger on the middle of an element, moves it by so many pixels to the right and down, and lifts it.
    async fn finger(&self, element: &WebElement, moves: &[[i64; 2]]) -> WebDriverResult<()> {
        let mut actions = vec![
            json!({ "type": "pointerMove", "duration": 0, "origin": element.to_json()?, "x": 0, "y": 0 }),
            json!({ "type": "pointerDown", "button": 0 }),
        ];
        let moves = moves.iter().map(|[x, y]| {
            json!({ "type": "pointerMove", "duration": 100, "origin": "pointer", "x": x, "y": y })
        });
        actions.extend(moves);
        actions.push(json!({ "type": "pointerUp", "button": 0 }));
        let finger = json!([{
            "type": "pointer", "id": "finger", "parameters": { "pointerType": "touch" }, "actions": actions,
        }]);
        let command = Command::PerformActions(Actions::from(finger));
        self.driver.cmd(command).await?;
        Ok(())
    }

    /// Presses a key on the first element of a kind.
    pub async fn press(&self, css: &str, key: char) -> Result<()> {
        let press = async |element: WebElement| {
            element.focus().await?;
            element.send_keys(key.to_string()).await
        };
        self.with(css, press).await
    }

    /// Types into a field in place of what it holds, and leaves it: what comes of that is drawn then.
    pub async fn fill(&self, css: &str, text: &str) -> Result<()> {
        let fill = async |element: WebElement| {
            element.scroll_into_view().await?;
            element.send_keys(Key::Control + "a").await?;
            element.send_keys(text).await
        };
        // WebKit's driver does not wait for what a key does, so that on a busy machine the text may stand beside what it
        // was to replace.
        let stands = format!("return document.querySelector({css:?})?.value === {text:?}");
        for _ in 0..PRESSES {
            self.with(css, fill).await?;
            if self.engine != Engine::WebKit || self.ask::<bool>(&stands).await? {
                break;
            }
        }
        let leave = async |element: WebElement| element.send_keys(Key::Tab + "").await;
        self.with(css, leave).await?;
        self.drawn().await
    }

    async fn element(&self, css: &str) -> Result<WebElement> {
        let found = self.driver.find(By::Css(css)).await;
        found.with_context(|| format!("no {css} on the page"))
    }

    /// Does something to the first element of a kind, once it is there; where the page renews it in that
    /// instant, to the one that stands in its place.
    pub(super) async fn with(
        &self,
        css: &str,
        does: impl AsyncFn(WebElement) -> WebDriverResult<()>,
    ) -> Result<()> {
        let begun = Instant::now();
        loop {
            let element = match self.element(css).await {
                Err(_) if begun.elapsed() < PATIENCE => continue,
                found => found?,
            };
            let done = does(element).await;
            let renewed = done.as_ref().is_err_and(|error| {
                matches!(**error, WebDriverErrorInner::StaleElementReference(..))
            });
            if !renewed || begun.elapsed() > PATIENCE {
                return done.with_context(|| css.to_owned());
            }
        }
    }
}
