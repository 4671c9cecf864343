//! The colours that inks stand for, as the page's style gives them.

use crate::scene::Ink;

/// A colour for the paper and for each ink.
#[derive(Clone, Debug, Default)]
pub struct Colours {
    /// What is drawn on.
    pub paper: String,
    inks: Vec<String>,
}

impl Colours {
    /// The colours that a style gives to the names of its sheet.
    ///
    /// # Errors
    /// The first of the style's own.
    pub fn named<E>(style: impl Fn(&str) -> Result<String, E>) -> Result<Self, E> {
        let inks = Ink::ALL.into_iter().map(|ink| style(name(ink)));
        Ok(Self {
            paper: style("--paper")?,
            inks: inks.collect::<Result<_, _>>()?,
        })
    }

    /// Black on white, for any printer: earth that is heaped is a light grey, and what is shown through is a darker one.
    #[cfg(any(feature = "shed", not(target_arch = "wasm32")))]
    pub fn plain() -> Self {
        let grey = |ink| match ink {
            Ink::Paper => "#ffffff",
            Ink::Built | Ink::Earth | Ink::Lawn => "#dcdcdc",
            Ink::Pale | Ink::Before | Ink::Shade => "#8c8c8c",
            _ => "#000000",
        };
        Self {
            paper: "#ffffff".to_owned(),
            inks: Ink::ALL.map(|ink| grey(ink).to_owned()).into(),
        }
    }

    /// The colour of an ink.
    pub fn of(&self, ink: Ink) -> &str {
        self.inks.get(ink as usize).map_or("", String::as_str)
    }
}

/// The name of an ink's colour in the style sheet.
fn name(ink: Ink) -> &'static str {
    match ink {
        Ink::Ground => "--ground",
        Ink::Hatch => "--hatch",
        Ink::Built => "--built",
        Ink::Wood => "--wood",
        Ink::Grass => "--grass",
        Ink::Yard => "--yard",
        Ink::Flight => "--flight",
        Ink::Before => "--before",
        Ink::Chosen => "--chosen",
        Ink::Figure => "--figure",
        Ink::Name => "--name",
        Ink::Frame => "--frame",
        Ink::Tyre => "--tyre",
        Ink::Rider => "--rider",
        Ink::Far => "--far",
        Ink::Pads => "--pads",
        Ink::Pale => "--pale",
        Ink::Energy => "--energy",
        Ink::Paper => "--paper",
        Ink::Shade => "--shade",
        Ink::Dust => "--dust",
        Ink::Lawn => "--lawn",
        Ink::Earth => "--earth",
        Ink::Leaf => "--leaf",
        Ink::Behind => "--behind",
    }
}
