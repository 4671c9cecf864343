//! How a page is opened: in which browser, on which screen, for which reader.

use super::engine::Engine;
use super::screen::Screen;

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
    /// Over a slow line: see `Page::slow_down`; Chromium alone.
    pub slowly: bool,
    /// With a trace of what the page works: see [`super::Page::work`]; Chromium alone.
    pub traced: bool,
}

impl<'a> Visit<'a> {
    /// A visit as most are: in Chromium on a phone, at an address.
    pub fn to(address: &'a str) -> Self {
        Self {
            engine: Engine::Chromium,
            screen: Screen::Phone,
            languages: ENGLISH,
            address,
            tail: "",
            slowly: false,
            traced: false,
        }
    }
}
