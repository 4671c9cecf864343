//! Plain data as it came from outside, before it is known what it means.
//!
//! Text becomes a document, a document becomes a plan or whatever else is asked for. Every struct is
//! read from documents alone: a reader of its own for each kind of input would be a third of the program
//! that a browser fetches. A struct takes its fields in its own order, whatever order they come in, and
//! refuses any other, whether or not it says so itself.

mod reader;

pub use reader::Trouble;

use crate::error::{Fault, NOT_JSON, Quantity, Why};
use serde::de::{
    Deserialize, DeserializeOwned, Deserializer, Error, MapAccess, SeqAccess, Visitor,
};
use std::fmt;

/// Plain data: what JSON can say.
#[derive(Clone, Debug, PartialEq)]
pub enum Document {
    /// Nothing.
    Null,
    /// Yes or no.
    Truth(bool),
    /// A number.
    Number(f64),
    /// A text.
    Text(String),
    /// One after the other.
    List(Vec<Document>),
    /// Each with its name, in the order given. A name given twice is kept twice, and refused where
    /// a struct is read: which of the two counts, no writer would know.
    Fields(Vec<(String, Document)>),
}

impl Document {
    /// Reads JSON.
    ///
    /// # Errors
    /// That it is none, and where.
    pub fn from_json(text: &str) -> Result<Self, Fault> {
        serde_json::from_str(text).map_err(|error| Self::no_json(&error.to_string()))
    }

    /// The fault of a text that is no JSON, for the reason that a reader of JSON gives.
    pub fn no_json(why: &str) -> Fault {
        fault("", format!("{NOT_JSON}: {why}"))
    }

    /// Reads what it says as a `T`.
    ///
    /// # Errors
    /// The first fault: a field of the wrong type, unknown, missing or twice.
    pub fn read<T: DeserializeOwned>(self) -> Result<T, Fault> {
        T::deserialize(self).map_err(|trouble| {
            let (field, why) = trouble.told();
            fault(field, why.to_owned())
        })
    }

    /// Takes apart what its field `kind` says how to read: that, and the other fields. `what` names it
    /// where it has no fields at all.
    ///
    /// # Errors
    /// That there are no fields, or no such one among them, or that it is no text.
    pub fn kind(self, what: &str) -> Result<(String, Document), Trouble> {
        let Document::Fields(mut fields) = self else {
            return Err(Trouble::custom(format_args!("expected {what}")));
        };
        let at = fields.iter().position(|(name, _)| name == "kind");
        let at = at.ok_or_else(|| Trouble::missing_field("kind"))?;
        let kind = String::deserialize(fields.swap_remove(at).1);
        let kind = kind.map_err(|trouble| trouble.inside("kind"))?;
        Ok((kind, Document::Fields(fields)))
    }
}

fn fault(field: &str, why: String) -> Fault {
    Fault {
        field: if field.is_empty() { "plan" } else { field }.to_owned(),
        given: None,
        least: None,
        most: None,
        quantity: Quantity::Text,
        why: Why::unreadable(why),
    }
}

impl<'de> Deserialize<'de> for Document {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        reader.deserialize_any(Any)
    }
}

struct Any;

impl<'de> Visitor<'de> for Any {
    type Value = Document;

    fn expecting(&self, to: &mut fmt::Formatter) -> fmt::Result {
        to.write_str("plain data")
    }

    fn visit_unit<E>(self) -> Result<Document, E> {
        Ok(Document::Null)
    }

    fn visit_bool<E>(self, value: bool) -> Result<Document, E> {
        Ok(Document::Truth(value))
    }

    fn visit_i64<E>(self, value: i64) -> Result<Document, E> {
        Ok(Document::Number(value as f64))
    }

    fn visit_u64<E>(self, value: u64) -> Result<Document, E> {
        Ok(Document::Number(value as f64))
    }

    fn visit_f64<E>(self, value: f64) -> Result<Document, E> {
        Ok(Document::Number(value))
    }

    fn visit_str<E>(self, value: &str) -> Result<Document, E> {
        Ok(Document::Text(value.to_owned()))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Document, A::Error> {
        let mut list = Vec::new();
        while let Some(item) = items.next_element()? {
            list.push(item);
        }
        Ok(Document::List(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Document, A::Error> {
        let mut fields = Vec::new();
        while let Some(field) = entries.next_entry()? {
            fields.push(field);
        }
        Ok(Document::Fields(fields))
    }
}
