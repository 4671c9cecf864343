//! A hand on the page, which counts: its taps, and how far it has to scroll for them.

use anyhow::{Context, Result, ensure};
use browser::{Page, Screen};
use serde_json::json;
use std::cell::Cell;

/// How far a counted way may lie off the one written down: lines break otherwise with other type.
const TENTH: f64 = 0.1;
/// A way that is shorter than a line of text either way is the same, px.
const LINE: f64 = 24.0;

/// Where an element is, and whether nothing covers it.
const SEEN: &str = "\
    const e = document.querySelector(css); \
    const at = () => { const { left, top, width, height } = e.getBoundingClientRect(); return [left + width / 2, top + Math.min(height / 2, 40)]; }; \
    const on = () => document.elementFromPoint(...at()); \
    const seen = () => Boolean(e && on() && (e.contains(on()) || on().contains(e) && on().tagName === 'LABEL'));";

/// Scrolls by the least that brings an element in sight, and tells how far that was, and where its middle is; and
/// what is there instead, where it is covered.
const LOOK: &str = "\
    if (!e) return Promise.resolve([0, 0, 0, 'nothing']); \
    const boxes = []; \
    for (let b = e.parentElement; b; b = b.parentElement) if (b.scrollHeight > b.clientHeight + 1 && /auto|scroll/.test(getComputedStyle(b).overflowY)) boxes.push(b); \
    const stand = () => [scrollY, ...boxes.map(b => b.scrollTop)]; \
    const before = stand(); \
    if (!seen()) e.scrollIntoView({ block: 'nearest', behavior: 'instant' }); \
    if (!seen()) e.scrollIntoView({ block: 'center', behavior: 'instant' }); \
    const far = stand().reduce((sum, now, i) => sum + Math.abs(now - before[i]), 0); \
    return Promise.resolve([far, ...at(), seen() ? '' : String(on()?.outerHTML).slice(0, 80)])";

/// Waits until the page rests: what is gone to by a tap may come smoothly.
const REST: &str = "\
    const stand = () => `${scrollY} ${document.getElementById('plan').scrollTop}`; \
    return new Promise(done => { let before = '', same = 0; const frame = () => { \
      same = stand() === before ? same + 1 : 0; before = stand(); \
      same < 8 ? requestAnimationFrame(frame) : done(true); }; frame(); })";

/// What a task took.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cost {
    /// How often the page was tapped.
    pub taps: u32,
    /// How far it was scrolled, px.
    pub scrolled: f64,
}

/// A hand, at the begin of a task.
pub struct Hand<'a> {
    page: &'a Page,
    screen: Screen,
    taps: Cell<u32>,
    scrolled: Cell<f64>,
}

impl<'a> Hand<'a> {
    /// A hand on a page, on the screen it is opened on.
    pub fn on(page: &'a Page, screen: Screen) -> Self {
        Self {
            page,
            screen,
            taps: Cell::new(0),
            scrolled: Cell::new(0.0),
        }
    }

    /// Scrolls until an element is in sight; gives where.
    pub async fn look(&self, css: &str) -> Result<[f64; 2]> {
        let script = format!("const css = {css:?}; {SEEN}");
        self.page
            .wait_for(css, &format!("document.querySelector({css:?})"))
            .await?;
        if !self
            .page
            .ask::<bool>(&format!("{script} return seen()"))
            .await?
        {
            // What stands on the way there may grow and shrink until then.
            self.page.studied().await?;
        }
        let script = format!("{script} {LOOK}");
        let (far, x, y, over): (f64, f64, f64, String) = self.page.ask(&script).await?;
        ensure!(over.is_empty(), "{css} is covered: {over}");
        self.scrolled.set(self.scrolled.get() + far);
        Ok([x, y])
    }

    /// Taps an element, by a finger on a phone and a mouse at a desk: whatever lies there is hit.
    pub async fn tap(&self, css: &str) -> Result<()> {
        let [x, y] = self.look(css).await?;
        self.taps.set(self.taps.get() + 1);
        let tools = if self.screen.is_phone() {
            let at = json!([{ "x": x, "y": y }]);
            [
                (
                    "Input.dispatchTouchEvent",
                    json!({ "type": "touchStart", "touchPoints": at }),
                ),
                (
                    "Input.dispatchTouchEvent",
                    json!({ "type": "touchEnd", "touchPoints": [] }),
                ),
            ]
        } else {
            let mouse = |kind: &str| json!({ "type": kind, "x": x, "y": y, "button": "left", "clickCount": 1 });
            ["mousePressed", "mouseReleased"].map(|kind| ("Input.dispatchMouseEvent", mouse(kind)))
        };
        for (command, parameters) in tools {
            self.page.devtools(command, parameters).await?;
        }
        // A click comes some time after the finger; whatever it does has rested then.
        tokio::time::sleep(std::time::Duration::from_millis(150)).await;
        ensure!(self.page.ask::<bool>(REST).await?);
        Ok(())
    }

    /// Taps a field and types in place of what it holds. Keys are not counted.
    pub async fn fill(&self, css: &str, text: &str) -> Result<()> {
        self.tap(css).await?;
        let focused = format!(
            "const e = document.querySelector({css:?}); if (document.activeElement !== e) return false; e.select(); return true"
        );
        ensure!(
            self.page.ask::<bool>(&focused).await?,
            "{css} has not got the focus"
        );
        self.page
            .devtools("Input.insertText", json!({ "text": text }))
            .await?;
        let left = format!("document.querySelector({css:?}).blur(); return true");
        ensure!(self.page.ask::<bool>(&left).await?);
        self.page.drawn().await
    }

    /// Chooses an entry of a list: a tap opens it, and one chooses. The open list is the system's own.
    pub async fn choose(&self, css: &str, value: &str) -> Result<()> {
        self.look(css).await?;
        self.taps.set(self.taps.get() + 2);
        let script = format!(
            "const list = document.querySelector({css:?}); list.focus({{ preventScroll: true }}); list.value = {value:?}; \
             list.dispatchEvent(new Event('change', {{ bubbles: true }})); return true"
        );
        ensure!(self.page.ask::<bool>(&script).await?);
        ensure!(self.page.ask::<bool>(REST).await?);
        Ok(())
    }

    /// Drags an element by so many pixels.
    pub async fn drag(&self, css: &str, right: i64, down: i64) -> Result<()> {
        self.look(css).await?;
        self.taps.set(self.taps.get() + 1);
        self.page.drag(css, right, down).await
    }

    /// Keys that were pressed count as taps where a task is done by keys alone.
    pub fn press(&self, keys: u32) {
        self.taps.set(self.taps.get() + keys);
    }

    /// What the task took since the hand began; prints it.
    pub fn count(&self, task: &str) -> Cost {
        let cost = Cost {
            taps: self.taps.get(),
            scrolled: self.scrolled.get(),
        };
        println!(
            "{task}, {:?}: {} taps, {:.0} px",
            self.screen, cost.taps, cost.scrolled
        );
        cost
    }

    /// What the task took is what is written down of it: as many taps, and as far to scroll within a tenth. What is
    /// less is written down in its place, and so never becomes more again.
    pub fn took(&self, task: &str, floors: &[(&str, [Cost; 2])]) -> Result<()> {
        let cost = self.count(task);
        let (_, [phone, desk]) = floors
            .iter()
            .find(|(name, _)| *name == task)
            .with_context(|| format!("nothing is written down of {task:?}"))?;
        let floor = if self.screen.is_phone() { phone } else { desk };
        ensure!(
            cost.taps == floor.taps,
            "{task}: {} taps, written down are {}",
            cost.taps,
            floor.taps
        );
        let off = (cost.scrolled - floor.scrolled).abs();
        ensure!(
            off <= (TENTH * floor.scrolled).max(LINE),
            "{task}: {:.0} px to scroll, written down are {:.0}",
            cost.scrolled,
            floor.scrolled
        );
        Ok(())
    }
}
