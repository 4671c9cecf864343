//! Files made smaller for the way, once, when they are read in.

use anyhow::Result;
use std::io::Write;

/// How a file goes over the wire, the smallest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Coding {
    /// RFC 7932.
    Brotli,
    /// RFC 1952.
    Gzip,
}

impl Coding {
    /// Every coding, the smallest first.
    pub const ALL: [Coding; 2] = [Coding::Brotli, Coding::Gzip];

    /// Its name in IANA's registry.
    pub fn name(self) -> &'static str {
        match self {
            Coding::Brotli => "br",
            Coding::Gzip => "gzip",
        }
    }

    /// The content as this coding has it.
    ///
    /// # Errors
    /// Where memory takes no more.
    pub fn pack(self, bytes: &[u8]) -> Result<Vec<u8>> {
        let mut packed = Vec::new();
        match self {
            Coding::Brotli => {
                // Best quality, and a window that holds the whole simulator.
                let mut writer = brotli::CompressorWriter::new(&mut packed, 4096, 11, 22);
                writer.write_all(bytes)?;
                drop(writer);
            }
            Coding::Gzip => {
                let best = flate2::Compression::best();
                let mut writer = flate2::write::GzEncoder::new(&mut packed, best);
                writer.write_all(bytes)?;
                writer.finish()?;
            }
        }
        Ok(packed)
    }

    /// The smallest coding that a visitor accepts, by the header of that name (RFC 9110, 12.5.3); none
    /// where a weight of nought refuses all.
    pub fn accepted(header: &str) -> Option<Self> {
        let accepts = |coding: &Coding| {
            header.split(',').any(|entry| {
                let mut words = entry.split(';').map(str::trim);
                let named = words
                    .next()
                    .is_some_and(|n| n.eq_ignore_ascii_case(coding.name()));
                named && !words.any(refuses)
            })
        };
        Self::ALL.into_iter().find(accepts)
    }
}

fn refuses(weight: &str) -> bool {
    let value = weight
        .strip_prefix("q=")
        .or_else(|| weight.strip_prefix("Q="));
    value.is_some_and(|v| v.parse() == Ok(0.0_f32))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::Read;

    #[test]
    fn the_smallest_that_is_accepted_is_taken() {
        let cases = [
            ("gzip, deflate, br, zstd", Some(Coding::Brotli)),
            ("gzip, deflate", Some(Coding::Gzip)),
            ("br;q=0, gzip;q=0.5", Some(Coding::Gzip)),
            ("br; q=0.000, GZIP", Some(Coding::Gzip)),
            ("identity", None),
            ("", None),
        ];
        for (header, coding) in cases {
            assert_eq!(Coding::accepted(header), coding, "{header:?}");
        }
    }

    #[test]
    fn what_is_packed_is_smaller_and_comes_out_whole() {
        let text = "roller after roller, ".repeat(200).into_bytes();
        for coding in Coding::ALL {
            let packed = coding.pack(&text).unwrap();
            assert!(
                packed.len() < text.len() / 10,
                "{coding:?}: {}",
                packed.len()
            );
            let mut out = Vec::new();
            match coding {
                Coding::Brotli => {
                    brotli::Decompressor::new(&packed[..], 4096).read_to_end(&mut out)
                }
                Coding::Gzip => flate2::read::GzDecoder::new(&packed[..]).read_to_end(&mut out),
            }
            .unwrap();
            assert_eq!(out, text, "{coding:?}");
        }
    }
}
