//! Reads documents as serde's data, and says where in them something is wrong.

use super::Document;
use serde::de::value::StrDeserializer;
use serde::de::{
    DeserializeSeed, Deserializer, EnumAccess, Error, Expected, IntoDeserializer, MapAccess,
    SeqAccess, Unexpected, VariantAccess, Visitor,
};
use serde::forward_to_deserialize_any;
use std::{fmt, vec};

/// What is wrong with a document, and where in it.
#[derive(Debug)]
pub struct Trouble(Box<Told>);

/// Behind a pointer, trouble is as short as it can be on its way through every reader.
#[derive(Debug)]
struct Told {
    field: String,
    why: String,
}

/// Between path and reason, where both are one text.
const WRONG: &str = " is wrong: ";

impl Trouble {
    fn new(field: &str, why: String) -> Self {
        let field = field.to_owned();
        Self(Box::new(Told { field, why }))
    }

    /// Path of the field, as in `features[3].lip.height`, which is empty at the top; and the reason.
    pub fn told(&self) -> (&str, &str) {
        (&self.0.field, &self.0.why)
    }

    /// The same trouble, seen from around the field that has it.
    #[must_use]
    #[inline(never)]
    pub fn inside(mut self, outer: &str) -> Self {
        let dot = if self.0.field.is_empty() || self.0.field.starts_with('[') {
            ""
        } else {
            "."
        };
        self.0.field = format!("{outer}{dot}{}", self.0.field);
        self
    }
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (field, why) = self.told();
        if !field.is_empty() {
            write!(f, "{field}{WRONG}")?;
        }
        f.write_str(why)
    }
}

impl std::error::Error for Trouble {}

impl Error for Trouble {
    fn custom<T: fmt::Display>(message: T) -> Self {
        let message = message.to_string();
        // Trouble that was passed on as somebody else's error keeps its path.
        let (field, why) = message.split_once(WRONG).unwrap_or(("", &message));
        Self::new(field, why.to_owned())
    }

    // What is wrong is told in one place each, in our words and not in those that the code has for it:
    // every field of every struct can be wrong, and a browser fetches it all. What was found instead stands
    // in front of the reader.

    fn invalid_type(_: Unexpected, _: &dyn Expected) -> Self {
        wrong("something else")
    }

    /// What has the right kind and is refused is a whole number that is too large.
    fn invalid_value(_: Unexpected, _: &dyn Expected) -> Self {
        wrong("a smaller number")
    }

    /// Too few of something; where that is a struct, the field is named instead.
    fn invalid_length(_: usize, _: &dyn Expected) -> Self {
        wrong("more of them")
    }

    #[inline(never)]
    fn unknown_variant(name: &str, known: &'static [&'static str]) -> Self {
        let known = known.join("`, `");
        Self::new(
            "",
            format!("unknown choice `{name}`, expected one of `{known}`"),
        )
    }

    #[inline(never)]
    fn unknown_field(name: &str, known: &'static [&'static str]) -> Self {
        let known = known.join("`, `");
        Self::new(
            "",
            format!("unknown field `{name}`, expected one of `{known}`"),
        )
    }

    #[inline(never)]
    fn missing_field(name: &'static str) -> Self {
        Self::new(name, format!("missing field `{name}`"))
    }

    #[inline(never)]
    fn duplicate_field(name: &'static str) -> Self {
        Self::new("", format!("duplicate field `{name}`"))
    }
}

#[inline(never)]
fn wrong(expected: &str) -> Trouble {
    Trouble::new("", format!("expected {expected}"))
}

#[inline(never)]
fn no_fields(name: &str) -> Trouble {
    wrong(&format!("a whole {name}"))
}

fn list<'de, V: Visitor<'de>>(items: Vec<Document>, visitor: V) -> Result<V::Value, Trouble> {
    let mut items = Items::new(items);
    match visitor.visit_seq(&mut items) {
        Ok(value) if items.left.len() == 0 => Ok(value),
        Ok(_) => Err(items.too_many()),
        Err(trouble) => Err(items.blame(trouble)),
    }
}

impl<'de> Deserializer<'de> for Document {
    type Error = Trouble;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Trouble> {
        match self {
            Document::Null => visitor.visit_unit(),
            Document::Truth(value) => visitor.visit_bool(value),
            Document::Number(value) => visitor.visit_f64(value),
            Document::Text(text) => visitor.visit_str(&text),
            Document::List(items) => list(items, visitor),
            Document::Fields(fields) => visitor.visit_map(Entries::new(fields)),
        }
    }

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Trouble> {
        match self {
            Document::Truth(value) => visitor.visit_bool(value),
            _ => Err(wrong("yes or no")),
        }
    }

    fn deserialize_f64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Trouble> {
        match self {
            Document::Number(value) => visitor.visit_f64(value),
            _ => Err(wrong("a number")),
        }
    }

    fn deserialize_u64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Trouble> {
        match self {
            // What has no fraction is exact as a whole number, and what is too large is told so there.
            Document::Number(value) if value >= 0.0 && value == value.trunc() => {
                visitor.visit_u64(value as u64)
            }
            _ => Err(wrong("a whole number")),
        }
    }

    fn deserialize_u32<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Trouble> {
        self.deserialize_u64(visitor)
    }

    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Trouble> {
        match self {
            Document::Text(text) => visitor.visit_str(&text),
            _ => Err(wrong("a text")),
        }
    }

    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Trouble> {
        self.deserialize_str(visitor)
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Trouble> {
        match self {
            Document::Null => visitor.visit_none(),
            some => visitor.visit_some(some),
        }
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        visitor: V,
    ) -> Result<V::Value, Trouble> {
        visitor.visit_newtype_struct(self)
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Trouble> {
        match self {
            Document::List(items) => list(items, visitor),
            _ => Err(wrong("a list")),
        }
    }

    fn deserialize_tuple<V: Visitor<'de>>(self, _: usize, visitor: V) -> Result<V::Value, Trouble> {
        self.deserialize_seq(visitor)
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        names: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Trouble> {
        let Document::Fields(fields) = self else {
            return Err(no_fields(name));
        };
        // In the order of the struct, so that no struct has to know how to look for a name.
        let mut slots = Slots::of(fields, names)?;
        visitor
            .visit_seq(&mut slots)
            .map_err(|trouble| slots.blame(trouble))
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Trouble> {
        match self {
            Document::Text(name) => visitor.visit_enum(Choice {
                name,
                content: Document::Null,
            }),
            Document::Fields(mut fields) if fields.len() == 1 => {
                let (name, content) = fields.remove(0);
                visitor.visit_enum(Choice { name, content })
            }
            _ => Err(wrong("a choice")),
        }
    }

    fn deserialize_ignored_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Trouble> {
        visitor.visit_unit()
    }

    forward_to_deserialize_any! {
        i8 i16 i32 i64 i128 u8 u16 u128 f32 char bytes byte_buf unit unit_struct tuple_struct map identifier
    }
}

struct Items {
    left: vec::IntoIter<Document>,
    all: usize,
    /// Whether more was asked for than there is.
    over: bool,
}

impl Items {
    #[inline(never)]
    fn new(items: Vec<Document>) -> Self {
        Self {
            all: items.len(),
            left: items.into_iter(),
            over: false,
        }
    }

    #[inline(never)]
    fn next(&mut self) -> Option<Document> {
        let next = self.left.next();
        self.over = next.is_none();
        next
    }

    #[inline(never)]
    fn too_many(&self) -> Trouble {
        Trouble::custom(format_args!("{} too many", self.left.len()))
    }

    /// Trouble with the item that was read last, or with there being no more.
    #[inline(never)]
    fn blame(&self, trouble: Trouble) -> Trouble {
        if self.over {
            return trouble;
        }
        let read = self.all - self.left.len();
        trouble.inside(&format!("[{}]", read.saturating_sub(1)))
    }
}

impl<'de> SeqAccess<'de> for &mut Items {
    type Error = Trouble;

    fn next_element_seed<T: DeserializeSeed<'de>>(
        &mut self,
        seed: T,
    ) -> Result<Option<T::Value>, Trouble> {
        let Some(item) = self.next() else {
            return Ok(None);
        };
        seed.deserialize(item).map(Some)
    }
}

/// The fields of a struct in its own order; one that was left out is an empty slot.
struct Slots {
    names: &'static [&'static str],
    slots: vec::IntoIter<Option<Document>>,
    /// Whether the slot that was asked for last is empty.
    empty: bool,
}

impl Slots {
    /// Refuses what is unknown or given twice.
    #[inline(never)]
    fn of(
        fields: Vec<(String, Document)>,
        names: &'static [&'static str],
    ) -> Result<Self, Trouble> {
        let mut slots = vec![None; names.len()];
        for (name, value) in fields {
            let Some(at) = names.iter().position(|known| *known == name) else {
                return Err(Trouble::unknown_field(&name, names).inside(&name));
            };
            if slots[at].replace(value).is_some() {
                return Err(Trouble::duplicate_field(names[at]));
            }
        }
        Ok(Self {
            names,
            slots: slots.into_iter(),
            empty: false,
        })
    }

    #[inline(never)]
    fn next(&mut self) -> Option<Document> {
        let slot = self.slots.next().flatten();
        self.empty = slot.is_none();
        slot
    }

    /// Trouble with the field that was read last, or with there being none.
    #[inline(never)]
    fn blame(&self, trouble: Trouble) -> Trouble {
        let read = self.names.len() - self.slots.len();
        let name = self.names[read.saturating_sub(1)];
        if self.empty {
            Trouble::missing_field(name)
        } else {
            trouble.inside(name)
        }
    }
}

impl<'de> SeqAccess<'de> for &mut Slots {
    type Error = Trouble;

    // An empty slot is the end as far as serde sees: it takes the field's usual value, where there is one.
    fn next_element_seed<T: DeserializeSeed<'de>>(
        &mut self,
        seed: T,
    ) -> Result<Option<T::Value>, Trouble> {
        let Some(value) = self.next() else {
            return Ok(None);
        };
        seed.deserialize(value).map(Some)
    }
}

struct Entries {
    left: vec::IntoIter<(String, Document)>,
    /// The field whose name was read and whose value is not.
    open: Option<(String, Document)>,
}

impl Entries {
    fn new(fields: Vec<(String, Document)>) -> Self {
        Self {
            left: fields.into_iter(),
            open: None,
        }
    }

    /// The name of the next field, which is open from now on.
    #[inline(never)]
    fn name(&mut self) -> Option<&str> {
        self.open = self.left.next();
        self.open.as_ref().map(|(name, _)| name.as_str())
    }

    /// The open field.
    #[inline(never)]
    fn field(&mut self) -> (String, Document) {
        // Serde asks for a name first, each time.
        self.open.take().unwrap_or((String::new(), Document::Null))
    }
}

impl<'de> MapAccess<'de> for Entries {
    type Error = Trouble;

    fn next_key_seed<K: DeserializeSeed<'de>>(
        &mut self,
        seed: K,
    ) -> Result<Option<K::Value>, Trouble> {
        let Some(name) = self.name() else {
            return Ok(None);
        };
        let reader: StrDeserializer<Trouble> = name.into_deserializer();
        match seed.deserialize(reader) {
            Ok(key) => Ok(Some(key)),
            Err(trouble) => Err(trouble.inside(name)),
        }
    }

    fn next_value_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<T::Value, Trouble> {
        let (name, value) = self.field();
        seed.deserialize(value)
            .map_err(|trouble| trouble.inside(&name))
    }
}

struct Choice {
    name: String,
    content: Document,
}

impl<'de> EnumAccess<'de> for Choice {
    type Error = Trouble;
    type Variant = Self;

    fn variant_seed<T: DeserializeSeed<'de>>(self, seed: T) -> Result<(T::Value, Self), Trouble> {
        let reader: StrDeserializer<Trouble> = self.name.as_str().into_deserializer();
        Ok((seed.deserialize(reader)?, self))
    }
}

impl<'de> VariantAccess<'de> for Choice {
    type Error = Trouble;

    fn unit_variant(self) -> Result<(), Trouble> {
        match self.content {
            Document::Null => Ok(()),
            _ => Err(Trouble::custom("this choice says all by its name").inside(&self.name)),
        }
    }

    fn newtype_variant_seed<T: DeserializeSeed<'de>>(self, seed: T) -> Result<T::Value, Trouble> {
        seed.deserialize(self.content)
            .map_err(|trouble| trouble.inside(&self.name))
    }

    fn tuple_variant<V: Visitor<'de>>(
        self,
        length: usize,
        visitor: V,
    ) -> Result<V::Value, Trouble> {
        let read = self.content.deserialize_tuple(length, visitor);
        read.map_err(|trouble| trouble.inside(&self.name))
    }

    fn struct_variant<V: Visitor<'de>>(
        self,
        fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Trouble> {
        let read = self.content.deserialize_struct("", fields, visitor);
        read.map_err(|trouble| trouble.inside(&self.name))
    }
}
