//! Why a text gives no plan.

use core::fmt;
use serde::Serialize;
use std::io;

/// Why a text gives no plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum LinkError {
    /// It was never the text of a link.
    NotALink,
    /// It is longer than any link can be.
    TooLong {
        /// Its length, characters.
        given: usize,
    },
    /// The end is missing.
    CutShort,
    /// Characters were changed, added or lost.
    Damaged,
    /// It is whole, but says things this version does not know.
    Newer,
}

impl fmt::Display for LinkError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            LinkError::NotALink => "this is not a link to a plan",
            LinkError::TooLong { given } => {
                let most = super::MAX_CHARACTERS;
                return write!(
                    f,
                    "this is too long to be a link to a plan: {given} characters; accepted {most} or less"
                );
            }
            LinkError::CutShort => {
                "the end of this link is missing; ask for it again and copy all of it"
            }
            LinkError::Damaged => "this link was damaged on its way; ask for it again",
            LinkError::Newer => {
                "this link was made by a newer version; load the page again to get that version"
            }
        })
    }
}

impl core::error::Error for LinkError {}

/// Reading bits fails only where there are none left, although the checksum was right.
impl From<io::Error> for LinkError {
    fn from(_: io::Error) -> Self {
        LinkError::Damaged
    }
}
