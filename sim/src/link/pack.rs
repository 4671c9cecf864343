//! How values become bits: one small trait, and the macros that write it for structs and enums.

use super::LinkError;
use bitstream_io::{BigEndian, BitRead, BitReader, BitWrite, BitWriter};
use std::io;
use std::ops::{Deref, DerefMut};

pub type Writer = BitWriter<Vec<u8>, BigEndian>;

/// Bits from the front of a body, and the format they were written in.
pub struct Reader<'a> {
    bits: BitReader<&'a [u8], BigEndian>,
    /// Which format it is.
    pub format: u8,
}

impl<'a> Reader<'a> {
    /// Reads a body of a format.
    pub fn new(body: &'a [u8], format: u8) -> Self {
        let bits = BitReader::new(body);
        Self { bits, format }
    }
}

impl<'a> Deref for Reader<'a> {
    type Target = BitReader<&'a [u8], BigEndian>;
    fn deref(&self) -> &Self::Target {
        &self.bits
    }
}

impl DerefMut for Reader<'_> {
    fn deref_mut(&mut self) -> &mut Self::Target {
        &mut self.bits
    }
}

/// A value that goes into a link.
pub trait Pack: Sized {
    /// Appends the value.
    fn put(&self, bits: &mut Writer) -> io::Result<()>;
    /// Reads what `put` wrote.
    fn take(bits: &mut Reader) -> Result<Self, LinkError>;
}

/// Makes sure that nothing is left but the few zeros that fill the last byte.
pub fn finish(mut bits: Reader) -> Result<(), LinkError> {
    while !bits.byte_aligned() {
        if bits.read_bit()? {
            return Err(LinkError::Damaged);
        }
    }
    match bits.read_bit() {
        Ok(_) => Err(LinkError::Damaged),
        Err(_) => Ok(()),
    }
}

/// One bit says whether the value is the usual one; only another one is written out.
///
/// What is usual belongs to the link's format, not to the plan: it stays what it was, so that old
/// links keep their meaning when the plan's defaults change.
pub fn put_unusual<T: Pack>(value: &T, usual: &T, bits: &mut Writer) -> io::Result<()> {
    // Compared as bits, because 0 and −0 are equal numbers.
    let same = alone(value)? == alone(usual)?;
    bits.write_bit(same)?;
    if same { Ok(()) } else { value.put(bits) }
}

/// Reads what `put_unusual` wrote.
pub fn take_unusual<T: Pack>(usual: T, bits: &mut Reader) -> Result<T, LinkError> {
    if bits.read_bit()? {
        Ok(usual)
    } else {
        T::take(bits)
    }
}

/// The list that ends a body. Where it is empty it takes no bit at all: what is missing is read as
/// the zeros that fill the last byte.
pub fn put_last<T: Pack>(values: &Vec<T>, bits: &mut Writer) -> io::Result<()> {
    if values.is_empty() {
        Ok(())
    } else {
        values.put(bits)
    }
}

/// Reads what `put_last` wrote.
pub fn take_last<T: Pack>(bits: &mut Reader) -> Result<Vec<T>, LinkError> {
    let rest = bits.reader().map(|rest| rest.len());
    if rest == Some(0) {
        return Ok(Vec::new());
    }
    let values = Vec::take(bits)?;
    // A whole byte that says nothing was never written.
    if rest.is_some() && values.is_empty() {
        return Err(LinkError::Damaged);
    }
    Ok(values)
}

fn alone<T: Pack>(value: &T) -> io::Result<Vec<u8>> {
    let mut bits = Writer::new(Vec::new());
    value.put(&mut bits)?;
    // Keeps `0` and `00` apart.
    bits.write_bit(true)?;
    bits.byte_align()?;
    Ok(bits.into_writer())
}

/// Writes `Pack` for a struct: its fields in the order they go into the link, each with the format
/// since which it is there, if that is not the first, and its usual value where it has one; then the
/// list that ends the body, where there is one.
macro_rules! record {
    ($name:ident { $($field:ident $(since $format:literal)? $(= $usual:expr)?),* $(,)? } $(then $last:ident)?) => {
        impl Pack for $name {
            fn put(&self, bits: &mut Writer) -> io::Result<()> {
                $(record!(@put &self.$field, bits $(, $usual)?);)*
                $(put_last(&self.$last, bits)?;)?
                Ok(())
            }
            fn take(bits: &mut Reader) -> Result<Self, LinkError> {
                Ok(Self {
                    $($field: record!(@take bits $(since $format)? $(, $usual)?),)*
                    $($last: take_last(bits)?)?
                })
            }
        }
    };
    (@put $value:expr, $bits:ident) => { $value.put($bits)? };
    (@put $value:expr, $bits:ident, $usual:expr) => { put_unusual($value, &$usual, $bits)? };
    (@take $bits:ident) => { Pack::take($bits)? };
    (@take $bits:ident, $usual:expr) => { take_unusual($usual, $bits)? };
    (@take $bits:ident since $format:literal, $usual:expr) => {
        if $bits.format < $format { $usual } else { take_unusual($usual, $bits)? }
    };
}

/// Writes `Pack` for an enum: how many bits its tag takes, and its variants with their tags, each
/// with the value inside where there is one. An unknown tag was made by a newer version.
macro_rules! choice {
    ($name:ident in $width:literal bits { $($tag:literal: $variant:ident $(($inner:ident))?),* $(,)? }) => {
        impl Pack for $name {
            fn put(&self, bits: &mut Writer) -> io::Result<()> {
                match self {
                    $($name::$variant $(($inner))? => {
                        bits.write::<$width, u8>($tag)?;
                        $($inner.put(bits)?;)?
                    })*
                }
                Ok(())
            }
            fn take(bits: &mut Reader) -> Result<Self, LinkError> {
                Ok(match bits.read::<$width, u8>()? {
                    $($tag => $name::$variant $(({ let $inner = Pack::take(bits)?; $inner }))?,)*
                    _ => return Err(LinkError::Newer),
                })
            }
        }
    };
}

pub(super) use {choice, record};

impl Pack for bool {
    fn put(&self, bits: &mut Writer) -> io::Result<()> {
        bits.write_bit(*self)
    }
    fn take(bits: &mut Reader) -> Result<Self, LinkError> {
        Ok(bits.read_bit()?)
    }
}

/// Groups of three bits, each after one that says whether more follow.
impl Pack for u64 {
    fn put(&self, bits: &mut Writer) -> io::Result<()> {
        bits.write_unsigned_vbr::<4, _>(*self)
    }
    fn take(bits: &mut Reader) -> Result<Self, LinkError> {
        Ok(bits.read_unsigned_vbr::<4, _>()?)
    }
}

/// Numbers that fit into the smaller type only; others were never written.
macro_rules! smaller {
    ($($name:ty),*) => {$(
        impl Pack for $name {
            fn put(&self, bits: &mut Writer) -> io::Result<()> {
                u64::from(*self).put(bits)
            }
            fn take(bits: &mut Reader) -> Result<Self, LinkError> {
                Self::try_from(u64::take(bits)?).map_err(|_| LinkError::Damaged)
            }
        }
    )*};
}
smaller!(u16, u32);

impl<T: Pack> Pack for Option<T> {
    fn put(&self, bits: &mut Writer) -> io::Result<()> {
        bits.write_bit(self.is_some())?;
        self.as_ref().map_or(Ok(()), |value| value.put(bits))
    }
    fn take(bits: &mut Reader) -> Result<Self, LinkError> {
        if bits.read_bit()? {
            Ok(Some(T::take(bits)?))
        } else {
            Ok(None)
        }
    }
}

/// Each value after a set bit, then a clear one: no count that could promise more than follows.
impl<T: Pack> Pack for Vec<T> {
    fn put(&self, bits: &mut Writer) -> io::Result<()> {
        for value in self {
            bits.write_bit(true)?;
            value.put(bits)?;
        }
        bits.write_bit(false)
    }
    fn take(bits: &mut Reader) -> Result<Self, LinkError> {
        let mut values = Vec::new();
        while bits.read_bit()? {
            values.push(T::take(bits)?);
        }
        Ok(values)
    }
}

/// UTF-8, each byte in eight bits, with its count before it.
impl Pack for String {
    fn put(&self, bits: &mut Writer) -> io::Result<()> {
        (self.len() as u64).put(bits)?;
        bits.write_bytes(self.as_bytes())
    }
    fn take(bits: &mut Reader) -> Result<Self, LinkError> {
        let count = u64::take(bits)?;
        let mut bytes = Vec::new();
        for _ in 0..count {
            bytes.push(bits.read::<8, u8>()?);
        }
        String::from_utf8(bytes).map_err(|_| LinkError::Damaged)
    }
}
