//! Numbers as people give them take few bits; every other one keeps all of its 64.

use super::LinkError;
use super::pack::{Pack, Reader, Writer};
use bitstream_io::{BitRead, BitWrite};
use std::io;

/// A unit that numbers come in whole counts of: `times / parts` of the field's own unit.
struct Step {
    times: i64,
    parts: i64,
}

/// The steps, in the order of their code words. Their order and values belong to the format; new
/// ones go to the end.
const STEPS: [Step; 14] = [
    Step { times: 1, parts: 1 },
    Step {
        times: 1,
        parts: 10,
    },
    Step {
        times: 1,
        parts: 100,
    },
    // Quarter inches in metres: 0.0254 / 4.
    Step {
        times: 127,
        parts: 20_000,
    },
    Step {
        times: 1,
        parts: 1_000,
    },
    Step {
        times: 1,
        parts: 10_000,
    },
    Step {
        times: 1,
        parts: 100_000,
    },
    Step {
        times: 1,
        parts: 1_000_000,
    },
    Step {
        times: 1,
        parts: 10_000_000,
    },
    Step {
        times: 1_000,
        parts: 1,
    },
    // Tenths of a kilometre in the hour, and of a mile (1609.344 m), in metres per second.
    Step {
        times: 1,
        parts: 36,
    },
    Step {
        times: 1_397,
        parts: 31_250,
    },
    // Pounds in kilograms; pounds on the square inch in pascals (0.45359237 · 9.80665 / 0.0254²).
    Step {
        times: 45_359_237,
        parts: 100_000_000,
    },
    Step {
        times: 8_896_443_230_521,
        parts: 1_290_320_000,
    },
];
/// How many steps have short code words: two bits for the first three, three for the fourth.
const SHORT: u8 = 4;
/// The last long code word, of seven bits, stands before 64 raw bits.
const RAW: u8 = SHORT + 15;
/// Bits that a raw number takes with its code word.
const RAW_COST: u32 = 7 + 64;

/// Largest whole number up to which every whole number is an exact `f64`.
const EXACT: f64 = 9_007_199_254_740_992.0;

impl Step {
    /// The number that is `count` steps: both factors are exact, so the quotient is the nearest
    /// `f64` and the same everywhere.
    fn value(&self, count: i64) -> Option<f64> {
        let product = count.checked_mul(self.times)? as f64;
        (product.abs() <= EXACT).then_some(product / self.parts as f64)
    }

    /// How many steps make exactly this number, to the last bit.
    fn count(&self, number: f64) -> Option<i64> {
        let count = (number / self.times as f64 * self.parts as f64).round();
        // Not so for NaN either.
        if count.abs() <= EXACT {
            let count = count as i64;
            let value = self.value(count)?;
            return (value.to_bits() == number.to_bits()).then_some(count);
        }
        None
    }
}

impl Pack for f64 {
    fn put(&self, bits: &mut Writer) -> io::Result<()> {
        let steps = STEPS.iter().zip(0_u8..);
        let counts = steps.filter_map(|(step, word)| Some((word, zigzag(step.count(*self)?))));
        match counts.min_by_key(|&(word, count)| cost(word, count)) {
            Some((word, count)) if cost(word, count) < RAW_COST => {
                put_word(word, bits)?;
                count.put(bits)
            }
            _ => {
                put_word(RAW, bits)?;
                bits.write::<64, u64>(self.to_bits())
            }
        }
    }

    fn take(bits: &mut Reader) -> Result<Self, LinkError> {
        let word = take_word(bits)?;
        if word == RAW {
            return Ok(f64::from_bits(bits.read::<64, u64>()?));
        }
        let step = STEPS.get(usize::from(word)).ok_or(LinkError::Newer)?;
        let count = unzigzag(u64::take(bits)?);
        step.value(count).ok_or(LinkError::Damaged)
    }
}

fn put_word(word: u8, bits: &mut Writer) -> io::Result<()> {
    bits.write::<2, u8>(if word < 3 { word } else { 3 })?;
    if word >= 3 {
        bits.write_bit(word >= SHORT)?;
    }
    if word >= SHORT {
        bits.write::<4, u8>(word - SHORT)?;
    }
    Ok(())
}

fn take_word(bits: &mut Reader) -> Result<u8, LinkError> {
    let word = bits.read::<2, u8>()?;
    if word == 3 && bits.read_bit()? {
        return Ok(SHORT + bits.read::<4, u8>()?);
    }
    Ok(word)
}

/// Bits that a code word and a count after it take.
fn cost(word: u8, count: u64) -> u32 {
    let groups = (64 - count.leading_zeros()).div_ceil(3);
    let word = match word {
        0..3 => 2,
        3 => 3,
        _ => 7,
    };
    word + 4 * if groups == 0 { 1 } else { groups }
}

/// Small numbers of either sign as small ones without: 0, −1, 1, −2, ...
fn zigzag(n: i64) -> u64 {
    ((n << 1) ^ (n >> 63)).cast_unsigned()
}

fn unzigzag(n: u64) -> i64 {
    (n >> 1).cast_signed() ^ -(n & 1).cast_signed()
}
