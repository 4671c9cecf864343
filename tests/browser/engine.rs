//! The three browser engines there are.

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
}
