//! Values of JSON as serde reads them, one way each: what a field asks for is there, or what it asks for is told.
//!
//! The library's own reader takes whatever comes and leaves it to the field to refuse it. Each field then has code for
//! every kind of value there is, structs can be lists, and the simulator is a tenth larger to fetch.

use serde::de::value::{MapAccessDeserializer, MapDeserializer, SeqDeserializer};
use serde::de::{
    Deserializer, Error, Expected, IntoDeserializer, Unexpected, Visitor, value::StringDeserializer,
};
use serde::forward_to_deserialize_any;
use serde_json::{Map, Value};
use std::fmt;

/// What is wrong with a value, as serde says it, but for what was given.
#[derive(Debug)]
pub struct Wrong(String);

impl fmt::Display for Wrong {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for Wrong {}

impl Error for Wrong {
    fn custom<T: fmt::Display>(told: T) -> Self {
        Self(told.to_string())
    }

    fn invalid_type(_: Unexpected<'_>, expected: &dyn Expected) -> Self {
        wrong(expected)
    }

    fn invalid_value(_: Unexpected<'_>, expected: &dyn Expected) -> Self {
        wrong(expected)
    }

    fn invalid_length(_: usize, expected: &dyn Expected) -> Self {
        wrong(expected)
    }
}

fn wrong(expected: &dyn Expected) -> Wrong {
    Wrong(format!("expected {expected}"))
}

/// A value to be read.
pub struct Strict(pub Value);

type Fields = serde_json::map::IntoIter;

/// The fields of an object, each to be read.
fn fields(
    map: Map<String, Value>,
) -> MapDeserializer<'static, impl Iterator<Item = (String, Strict)>, Wrong> {
    let fields: Fields = map.into_iter();
    MapDeserializer::new(fields.map(|(name, value)| (name, Strict(value))))
}

impl IntoDeserializer<'_, Wrong> for Strict {
    type Deserializer = Self;

    fn into_deserializer(self) -> Self {
        self
    }
}

/// A whole number, not less than nothing, that may be written as `2.0`; −0 is none. All that plans count is a `u32`.
fn whole(value: &Value) -> Option<u32> {
    let given = value.as_f64()?;
    let whole = given as u32;
    (f64::from(whole) == given && given.is_sign_positive()).then_some(whole)
}

impl<'de> Deserializer<'de> for Strict {
    type Error = Wrong;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
        match self.0 {
            Value::Null => visitor.visit_unit(),
            Value::Bool(given) => visitor.visit_bool(given),
            Value::Number(given) => visitor.visit_f64(given.as_f64().unwrap_or(f64::NAN)),
            Value::String(given) => visitor.visit_string(given),
            Value::Array(items) => {
                visitor.visit_seq(SeqDeserializer::new(items.into_iter().map(Strict)))
            }
            Value::Object(map) => visitor.visit_map(fields(map)),
        }
    }

    fn deserialize_f64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
        match self.0.as_f64() {
            Some(given) => visitor.visit_f64(given),
            None => Err(wrong(&visitor)),
        }
    }

    fn deserialize_u32<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
        match whole(&self.0) {
            Some(given) => visitor.visit_u32(given),
            None => Err(wrong(&visitor)),
        }
    }

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
        match self.0 {
            Value::Bool(given) => visitor.visit_bool(given),
            _ => Err(wrong(&visitor)),
        }
    }

    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
        match self.0 {
            Value::String(given) => visitor.visit_string(given),
            _ => Err(wrong(&visitor)),
        }
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
        match self.0 {
            Value::Null => visitor.visit_none(),
            _ => visitor.visit_some(self),
        }
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
        let Value::Array(items) = self.0 else {
            return Err(wrong(&visitor));
        };
        let mut items = SeqDeserializer::new(items.into_iter().map(Strict));
        let read = visitor.visit_seq(&mut items)?;
        items.end()?;
        Ok(read)
    }

    fn deserialize_tuple<V: Visitor<'de>>(self, _: usize, visitor: V) -> Result<V::Value, Wrong> {
        self.deserialize_seq(visitor)
    }

    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
        match self.0 {
            Value::Object(map) => visitor.visit_map(fields(map)),
            _ => Err(wrong(&visitor)),
        }
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Wrong> {
        self.deserialize_map(visitor)
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Wrong> {
        match self.0 {
            Value::String(name) => visitor.visit_enum(StringDeserializer::new(name)),
            Value::Object(map) if map.len() == 1 => {
                visitor.visit_enum(MapAccessDeserializer::new(fields(map)))
            }
            _ => Err(wrong(&"one choice by its name")),
        }
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        visitor: V,
    ) -> Result<V::Value, Wrong> {
        visitor.visit_newtype_struct(self)
    }

    forward_to_deserialize_any! {
        i8 i16 i32 i64 i128 u8 u16 u64 u128 f32 char str bytes byte_buf unit unit_struct tuple_struct identifier
        ignored_any
    }
}
