//! What lies inside the brackets: fields of objects, items of lists, tags with their content.

use serde::de::{self, Deserializer, IntoDeserializer, Visitor};

use super::lexer::{Container, Token, decode};
use super::reader::{Reader, meant};
use super::wrong::Wrong;

/// The fields of an object, one after the other.
pub(super) struct Members<'r, 'de> {
    reader: &'r mut Reader<'de>,
    begun: bool,
    /// The field read last, and its byte offset.
    name: String,
    name_at: usize,
}

impl<'r, 'de> Members<'r, 'de> {
    /// Behind the opening bracket.
    pub(super) fn new(reader: &'r mut Reader<'de>) -> Self {
        Self {
            reader,
            begun: false,
            name: String::new(),
            name_at: 0,
        }
    }

    /// Gives a fault of the name read last its place, where it has none yet.
    pub(super) fn placed(&self, wrong: Wrong) -> Wrong {
        if wrong.of_name && wrong.at.is_none() {
            wrong.at(self.name_at).within(&self.name)
        } else {
            wrong
        }
    }

    /// Steps to the next name; `false` at the closing bracket, which is left behind.
    fn next(&mut self) -> Result<bool, Wrong> {
        let lexer = &mut self.reader.lexer;
        let at = lexer.place();
        match lexer.peek()? {
            Token::Close(Container::Object) => {
                lexer.next()?;
                return Ok(false);
            }
            Token::Comma if self.begun => {
                lexer.next()?;
            }
            _ if self.begun => {
                return Err(Wrong::new("a comma or the end of this object is missing here").at(at));
            }
            _ => {}
        }
        self.begun = true;
        self.name_at = lexer.place();
        match lexer.next()? {
            Token::Text(written) => {
                let name = decode(written).map_err(|wrong| wrong.at(self.name_at))?;
                self.name.clear();
                self.name.push_str(&name);
                Ok(true)
            }
            found => Err(meant(found, "the name of a field in quotes").at(self.name_at)),
        }
    }
}

impl<'de> de::MapAccess<'de> for &mut Members<'_, 'de> {
    type Error = Wrong;

    fn next_key_seed<K: de::DeserializeSeed<'de>>(
        &mut self,
        seed: K,
    ) -> Result<Option<K::Value>, Wrong> {
        if !self.next()? {
            return Ok(None);
        }
        let name = self.name.as_str().into_deserializer();
        let key = seed.deserialize::<de::value::StrDeserializer<'_, Wrong>>(name);
        key.map(Some)
            .map_err(|wrong| wrong.at(self.name_at).within(&self.name))
    }

    fn next_value_seed<V: de::DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, Wrong> {
        let value = self
            .reader
            .expect(Token::Colon, "a colon after the name of a field");
        let value = value.and_then(|()| seed.deserialize(&mut *self.reader));
        value.map_err(|wrong| wrong.within(&self.name))
    }
}

/// The items of a list, one after the other.
pub(super) struct Items<'r, 'de> {
    reader: &'r mut Reader<'de>,
    index: usize,
}

impl<'r, 'de> Items<'r, 'de> {
    /// Behind the opening bracket.
    pub(super) fn new(reader: &'r mut Reader<'de>) -> Self {
        Self { reader, index: 0 }
    }

    /// Steps over the closing bracket, which must be next.
    pub(super) fn end(self) -> Result<(), Wrong> {
        let words = format!("the end of a list of {}", self.index);
        self.reader.expect(Token::Close(Container::List), &words)
    }
}

impl<'de> de::SeqAccess<'de> for &mut Items<'_, 'de> {
    type Error = Wrong;

    fn next_element_seed<T: de::DeserializeSeed<'de>>(
        &mut self,
        seed: T,
    ) -> Result<Option<T::Value>, Wrong> {
        let lexer = &mut self.reader.lexer;
        let at = lexer.place();
        match lexer.peek()? {
            // The bracket stays for the list to leave by.
            Token::Close(Container::List) => return Ok(None),
            Token::Comma if self.index > 0 => {
                lexer.next()?;
            }
            _ if self.index > 0 => {
                return Err(Wrong::new("a comma or the end of this list is missing here").at(at));
            }
            _ => {}
        }
        let value = seed.deserialize(&mut *self.reader);
        let value = value.map_err(|wrong| wrong.within_item(self.index))?;
        self.index += 1;
        Ok(Some(value))
    }
}

/// An object of one field, whose name says what the value is.
pub(super) struct Tagged<'r, 'de> {
    reader: &'r mut Reader<'de>,
}

impl<'r, 'de> Tagged<'r, 'de> {
    /// Behind the opening bracket.
    pub(super) fn new(reader: &'r mut Reader<'de>) -> Self {
        Self { reader }
    }
}

impl<'r, 'de> de::EnumAccess<'de> for Tagged<'r, 'de> {
    type Error = Wrong;
    type Variant = Content<'r, 'de>;

    fn variant_seed<V: de::DeserializeSeed<'de>>(
        self,
        seed: V,
    ) -> Result<(V::Value, Content<'r, 'de>), Wrong> {
        let at = self.reader.lexer.place();
        let found = self.reader.lexer.next()?;
        let Token::Text(written) = found else {
            return Err(meant(found, "the name of a field in quotes").at(at));
        };
        let name = decode(written).map_err(|wrong| wrong.at(at))?.into_owned();
        let tag = seed.deserialize::<de::value::StrDeserializer<'_, Wrong>>(
            name.as_str().into_deserializer(),
        );
        let tag = tag.map_err(|wrong| wrong.at(at))?;
        self.reader
            .expect(Token::Colon, "a colon after the name of a field")?;
        Ok((
            tag,
            Content {
                reader: self.reader,
                name,
            },
        ))
    }
}

/// What belongs to a tag.
pub(super) struct Content<'r, 'de> {
    reader: &'r mut Reader<'de>,
    name: String,
}

impl<'de> de::VariantAccess<'de> for Content<'_, 'de> {
    type Error = Wrong;

    fn unit_variant(self) -> Result<(), Wrong> {
        Err(Wrong::new(format!(
            "\"{}\" stands alone, without a value",
            self.name
        )))
    }

    fn newtype_variant_seed<T: de::DeserializeSeed<'de>>(self, seed: T) -> Result<T::Value, Wrong> {
        let value = seed.deserialize(self.reader);
        value.map_err(|wrong| wrong.within(&self.name))
    }

    fn tuple_variant<V: Visitor<'de>>(self, _: usize, visitor: V) -> Result<V::Value, Wrong> {
        let value = self.reader.deserialize_any(visitor);
        value.map_err(|wrong| wrong.within(&self.name))
    }

    fn struct_variant<V: Visitor<'de>>(
        self,
        names: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Wrong> {
        let value = self.reader.deserialize_struct("", names, visitor);
        value.map_err(|wrong| wrong.within(&self.name))
    }
}
