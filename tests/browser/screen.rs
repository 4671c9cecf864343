//! The screens that pages are opened on.

/// The screen a page is opened on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Screen {
    /// A small phone held upright.
    Phone,
    /// The same phone held sideways.
    Sideways,
    /// A small computer's, with everything twice as large.
    Enlarged,
    /// A desk's.
    Desk,
}

impl Screen {
    /// Whether it is a phone's.
    pub fn is_phone(self) -> bool {
        matches!(self, Screen::Phone | Screen::Sideways)
    }

    /// Width and height, CSS pixels.
    pub fn size(self) -> (u32, u32) {
        match self {
            Screen::Phone => (360, 740),
            Screen::Sideways => (740, 360),
            Screen::Enlarged => (720, 450),
            Screen::Desk => (1440, 900),
        }
    }
}
