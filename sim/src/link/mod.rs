//! A plan as a short text for the part of a web address after `#`, which no server sees.
//!
//! The text is base64url without padding (RFC 4648 §5) of a frame that every version keeps:
//! one byte of mark and format version, two bytes with the length of the body, four bytes of
//! CRC-32 over those three and the body, and the body itself. So a link that was cut short, damaged
//! or made by a newer version is told apart before the body is read.
//!
//! The body is a string of bits: the version of the model that the link was made with, then the plan,
//! field by field in the order given in the file `plan.rs` beside this one. Nothing in it can ask for more memory than a small multiple of the text's own length.

mod error;
mod number;
mod pack;
mod plan;

pub use error::LinkError;

use crate::constants::MODEL_VERSION;
use crate::plan::Plan;
use base64::Engine;
use base64::alphabet::URL_SAFE;
use base64::engine::general_purpose::{GeneralPurpose, NO_PAD, URL_SAFE_NO_PAD};
use bitstream_io::{BitWrite, BitWriter};
use crc::{CRC_32_ISO_HDLC, Crc};
use pack::{Pack, Reader};

/// Longest text that is looked at, in characters.
pub const MAX_CHARACTERS: usize = 32_768;

/// The format written, and the newest one read. Formats so far:
///
/// 1. The first.
/// 2. Lips may end in a straight stretch; a plan has a seed, a yard the tallest that may be built.
/// 3. The plan may have what a thing seen teaches.
/// 4. The line and what is built on it have widths, the yard its soil; a landing may be boxed.
const FORMAT: u8 = 4;
/// High half of the first byte; the low half is the format.
const MARK: u8 = 0xC0;
/// Bytes of the frame before the body.
const HEAD: usize = 7;
/// What a sentence or a bracket that a link stands in puts behind it, and a program may take for its end.
const CLOSING: [char; 12] = ['.', ',', ';', ':', '!', '?', ')', ']', '>', '"', '\'', '»'];
/// Takes texts that end within a byte, as those do that were cut short.
const LENIENT: GeneralPurpose =
    GeneralPurpose::new(&URL_SAFE, NO_PAD.with_decode_allow_trailing_bits(true));
const CHECKSUM: Crc<u32> = Crc::<u32>::new(&CRC_32_ISO_HDLC);

/// What a link holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Decoded {
    /// The plan, to the last bit as it was given to [`encode`]. It is well formed but nobody has
    /// checked yet whether it can be built.
    pub plan: Plan,
    /// [`MODEL_VERSION`] of the program that made the link: another one may show other speeds.
    pub model_version: u16,
}

/// The plan as text: letters, digits, `-` and `_`.
///
/// A plan far larger than any that can be ridden gives a text that [`decode`] refuses as too long.
pub fn encode(plan: &Plan) -> String {
    encode_with(plan, MODEL_VERSION)
}

/// The text as a program with another version of the model makes it: for a plan that is passed on
/// with the version it was made with, and to try what is said of such a link.
pub fn encode_with(plan: &Plan, model_version: u16) -> String {
    let mut bits = BitWriter::new(Vec::new());
    (model_version.put(&mut bits))
        .and_then(|()| plan.put(&mut bits))
        .and_then(|()| bits.byte_align())
        .expect("memory takes every bit");
    URL_SAFE_NO_PAD.encode(frame(FORMAT, &bits.into_writer()))
}

/// The plan in a text made by [`encode`], with or without a `#` before it.
///
/// # Errors
/// Says in plain words what is wrong with the text; never panics, whatever it is given.
pub fn decode(text: &str) -> Result<Decoded, LinkError> {
    let text = text.trim().trim_end_matches(CLOSING);
    let text = text.strip_prefix('#').unwrap_or(text);
    if text.len() > MAX_CHARACTERS {
        return Err(LinkError::TooLong { given: text.len() });
    }
    let bytes = bytes(text)?;
    let (format, body) = unframe(&bytes)?;
    if URL_SAFE_NO_PAD.encode(&bytes) != text {
        return Err(LinkError::Damaged);
    }
    let mut bits = Reader::new(body, format);
    let model_version = u16::take(&mut bits)?;
    let plan = Plan::take(&mut bits)?;
    pack::finish(bits)?;
    Ok(Decoded {
        plan,
        model_version,
    })
}

fn frame(format: u8, body: &[u8]) -> Vec<u8> {
    // A body too long for the two bytes gives a text that is refused for its length.
    let length = u16::try_from(body.len()).unwrap_or(u16::MAX);
    let mut bytes = vec![MARK | format];
    bytes.extend(length.to_be_bytes());
    bytes.extend(checksum(&bytes, body).to_be_bytes());
    bytes.extend(body);
    bytes
}

/// Format and body of a frame that is whole, undamaged and of a known format.
fn unframe(bytes: &[u8]) -> Result<(u8, &[u8]), LinkError> {
    let (Some((head, body)), true) = (
        bytes.split_at_checked(HEAD),
        bytes.first().is_some_and(|b| b & 0xF0 == MARK),
    ) else {
        return Err(LinkError::NotALink);
    };
    let whole = usize::from(u16::from_be_bytes([head[1], head[2]]));
    if body.len() < whole {
        return Err(LinkError::CutShort);
    }
    if head[3..] != checksum(&head[..3], body).to_be_bytes() || body.len() > whole {
        return Err(LinkError::Damaged);
    }
    let format = head[0] & 0x0F;
    if format > FORMAT {
        return Err(LinkError::Newer);
    }
    Ok((format, body))
}

fn checksum(head: &[u8], body: &[u8]) -> u32 {
    let mut digest = CHECKSUM.digest();
    digest.update(head);
    digest.update(body);
    digest.finalize()
}

/// The whole bytes of a base64url text, which may end within one.
fn bytes(text: &str) -> Result<Vec<u8>, LinkError> {
    let alone = usize::from(text.len() % 4 == 1);
    let text = text.get(..text.len() - alone).unwrap_or_default();
    LENIENT.decode(text).map_err(|_| {
        // The first character holds the mark and tells a damaged link from something else.
        let first = LENIENT.decode(text.get(..2).unwrap_or_default());
        match first.ok().and_then(|b| b.first().copied()) {
            Some(byte) if byte & 0xF0 == MARK => LinkError::Damaged,
            _ => LinkError::NotALink,
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::{Feature, Line, Observation};
    use proptest::collection::vec;
    use proptest::prelude::*;

    fn forged(format: u8, body: &[u8]) -> String {
        URL_SAFE_NO_PAD.encode(frame(format, body))
    }

    proptest! {
        #[test]
        fn a_forged_body_gives_a_plan_or_an_error(
            format in 0..=FORMAT, body in vec(any::<u8>(), 0..2000),
        ) {
            if let Ok(decoded) = decode(&forged(format, &body)) {
                let again = decode(&encode(&decoded.plan)).map(|d| format!("{:?}", d.plan));
                prop_assert_eq!(again, Ok(format!("{:?}", decoded.plan)));
            }
        }

        #[test]
        fn a_changed_body_with_a_right_checksum_gives_a_plan_or_an_error(
            place in any::<prop::sample::Index>(), byte in any::<u8>(), seed in 0..3_u32,
        ) {
            let plan = Plan { seed, ..crate::plan::demo() };
            let bytes = URL_SAFE_NO_PAD.decode(encode(&plan)).expect("just encoded");
            let mut body = bytes[HEAD..].to_vec();
            *place.get_mut(&mut body) = byte;
            let answer = decode(&forged(bytes[0] & 0x0F, &body)).err();
            prop_assert!(matches!(answer, None | Some(LinkError::Damaged | LinkError::Newer)));
        }
    }

    /// A lip's straight end goes into the link; the text of the first format, which had none, is kept.
    #[test]
    fn a_link_of_the_first_format_is_read() {
        let text = concat!(
            "wQB1z_TbGRtFRoZSByYWlzZWQgYmVkIGJlaGluZCB0aGUgaGVuIGhvdXNlI8SkSDTGQI0LKphhzaJh1gwRiuC0",
            "1odCBI8THzaFxkA0JjMCMxGzaFxkAwJDMCM1MIjIobQ0tjIWEBiYEQN1JqgS95NFwzcGoeuc5o-OdhWA",
        );
        let bytes = URL_SAFE_NO_PAD.decode(text).expect("base64url");
        assert_eq!(bytes[0], MARK | 1);
        let old = decode(text).expect("it was a link once").plan;
        let Line::Features(features) = &old.line else {
            panic!("features");
        };
        let jumps = features.iter().filter_map(|f| match f {
            Feature::Jump(j) => Some((j.lip.height, j.lip.straight_end, j.gap, j.landing.height)),
            _ => None,
        });
        let expected = [(0.9, 1.2, 1.0), (0.5, 0.0, 0.5), (0.5, 0.0, 0.4)];
        let expected = expected.map(|(lip, gap, landing)| (lip, None, gap, landing));
        assert_eq!(jumps.collect::<Vec<_>>(), expected);
        assert_eq!(old.riders[0].label, "Child, 10");
    }

    /// Before the third format nothing that was seen was known to be carried to the plan.
    #[test]
    fn a_link_of_the_second_format_is_read() {
        let text = concat!(
            "wgB_lvyPdD01RoZSBmaXJzdCBqdW1wIG9mIHRoZSBvcmNoYXJkI8SeQYY6BGsHiJksxAliJm4IzYM4JDOCMxab",
            "UgiMihtDS2MhYQGJgRA3UmqBDQveTRcM3BqHrnOaPjnYWqCyOrY6GWVmLaENC153UfDrkuFcPXOcJwrVvABg3ZA9",
            "lKaGA",
        );
        let bytes = URL_SAFE_NO_PAD.decode(text).expect("base64url");
        assert_eq!(bytes[0], MARK | 2);
        let mut old = decode(text).expect("it was a link once").plan;
        let [Observation::Time(timed), Observation::Stopped(stopped)] = &old.seen[..] else {
            panic!("{:?}", old.seen)
        };
        assert_eq!((timed.to, timed.seconds, timed.carried), (6.0, 2.75, false));
        assert_eq!((stopped.at, stopped.give_or_take), (21.0, 0.5));
        old.seen[1].carry();
        assert_eq!(decode(&encode(&old)).map(|d| d.plan), Ok(old));
    }

    #[test]
    fn another_format_was_made_by_a_newer_version() {
        let mut bytes = vec![MARK | (FORMAT + 1), 0, 1];
        bytes.extend(checksum(&bytes, &[7]).to_be_bytes());
        bytes.push(7);
        let text = URL_SAFE_NO_PAD.encode(bytes);
        assert_eq!(decode(&text), Err(LinkError::Newer));
    }

    #[test]
    fn an_endless_promise_of_text_ends_with_the_bits() {
        let mut bits = BitWriter::new(Vec::new());
        let wrote = MODEL_VERSION
            .put(&mut bits)
            .and_then(|()| u64::MAX.put(&mut bits));
        assert!(wrote.and_then(|()| bits.byte_align()).is_ok());
        assert_eq!(
            decode(&forged(FORMAT, &bits.into_writer())),
            Err(LinkError::Damaged)
        );
    }

    #[test]
    fn what_stands_behind_a_link_in_a_sentence_is_no_part_of_it() {
        let plan = crate::plan::demo();
        let link = encode(&plan);
        for behind in [".", ")", ").", ",", "?\"", ">", "»"] {
            let decoded = decode(&format!("#{link}{behind}")).expect("it is whole");
            assert_eq!(decoded.plan, plan, "{behind}");
        }
        // What belongs to the alphabet is never taken off.
        assert!(decode(&format!("{link}-")).is_err());
    }

    #[test]
    fn a_seed_travels_and_the_usual_one_takes_no_room() {
        let usual = encode(&crate::plan::demo());
        for seed in [1, 7, 4711, u32::MAX] {
            let plan = Plan {
                seed,
                ..crate::plan::demo()
            };
            let text = encode(&plan);
            assert!(text != usual && text.len() < usual.len() + 16, "{text}");
            assert_eq!(decode(&text).map(|d| d.plan), Ok(plan));
        }
    }
}
