//! The screens that pages are opened on.

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
