//! The strict way from JSON text to the twin types.
//!
//! A general reader takes a list for a record, turns decimals into floats and has lost the place once a value turns out to
//! be wrong. This one does none of that: every fault leaves with its path and its byte offset, an object is an object, and
//! a number reaches whoever asks for bytes as it is written.

use std::fmt::Display;

use serde::de::{self, DeserializeOwned, Deserializer, Expected, IntoDeserializer, Visitor};
use serde::forward_to_deserialize_any;

use super::lexer::{Container, Lexer, Token, decode};
use super::wrong::Wrong;

/// The most containers within containers.
const NESTING_MOST: u8 = 127;

/// Reads one value that fills the whole text.
///
/// # Errors
/// The first fault, with its path and its byte offset.
pub(super) fn read<T: DeserializeOwned>(text: &str) -> Result<T, Wrong> {
    let mut reader = Reader {
        lexer: Lexer::new(text),
        nesting: 0,
    };
    let value = T::deserialize(&mut reader)?;
    let at = reader.lexer.place();
    match reader.lexer.next()? {
        Token::End => Ok(value),
        _ => Err(Wrong::new("more stands here after the end").at(at)),
    }
}

struct Reader<'de> {
    lexer: Lexer<'de>,
    nesting: u8,
}

/// What a token is, in words.
fn words(token: Token<'_>) -> String {
    match token {
        Token::Open(Container::Object) => "an object { }".to_string(),
        Token::Open(Container::List) => "a list [ ]".to_string(),
        Token::Close(_) | Token::Comma | Token::Colon => "nothing".to_string(),
        Token::Text(written) => format!("the text {}", clipped(written)),
        Token::Number(written) => clipped(written),
        Token::Bool(value) => value.to_string(),
        Token::Null => "null".to_string(),
        Token::End => "the end of the file".to_string(),
    }
}

/// As much of a written value as a message needs.
fn clipped(written: &str) -> String {
    const CHARS: usize = 40;
    match written.char_indices().nth(CHARS) {
        Some((end, _)) => format!("{}...", &written[..end]),
        None => written.to_string(),
    }
}

fn meant(found: Token<'_>, meant: impl Display) -> Wrong {
    Wrong::new(format!("{}, but it is {meant}", words(found)))
}

impl<'de> Reader<'de> {
    /// The next token, which must be this one.
    fn expect(&mut self, token: Token<'_>, words: &str) -> Result<(), Wrong> {
        let at = self.lexer.place();
        let found = self.lexer.next()?;
        if found == token {
            return Ok(());
        }
        Err(meant(found, words).at(at))
    }

    /// Enters a container that has just been opened and gives `inside` what it holds.
    fn nested<T>(
        &mut self,
        inside: impl FnOnce(&mut Self) -> Result<T, Wrong>,
    ) -> Result<T, Wrong> {
        if self.nesting == NESTING_MOST {
            let message = format!("more than {NESTING_MOST} brackets lie in each other");
            return Err(Wrong::new(message));
        }
        self.nesting += 1;
        let result = inside(self);
        self.nesting -= 1;
        result
    }

    /// The rest of an object.
    fn object<V: Visitor<'de>>(&mut self, visitor: V) -> Result<V::Value, Wrong> {
        self.nested(|reader| {
            let mut members = Members {
                reader,
                begun: false,
                name: String::new(),
                name_at: 0,
            };
            let value = visitor.visit_map(&mut members);
            value.map_err(|wrong| match wrong.of_name {
                true if wrong.at.is_none() => wrong.at(members.name_at).within(&members.name),
                _ => wrong,
            })
        })
    }

    /// The rest of a list, up to its bracket.
    fn list<V: Visitor<'de>>(&mut self, visitor: V) -> Result<V::Value, Wrong> {
        self.nested(|reader| {
            let mut items = Items { reader, index: 0 };
            let value = visitor.visit_seq(&mut items)?;
            let count = items.index;
            let close = Token::Close(Container::List);
            let words = format!("the end of a list of {count}");
            items.reader.expect(close, &words)?;
            Ok(value)
        })
    }

    fn value<V: Visitor<'de>>(&mut self, token: Token<'de>, visitor: V) -> Result<V::Value, Wrong> {
        match token {
            Token::Open(Container::Object) => self.object(visitor),
            Token::Open(Container::List) => self.list(visitor),
            Token::Text(written) => visitor.visit_str(&decode(written)?),
            Token::Bool(value) => visitor.visit_bool(value),
            other => Err(meant(other, &visitor as &dyn Expected)),
        }
    }

    /// A whole number from 0 to `most`.
    fn whole(&mut self, most: u64) -> Result<u64, Wrong> {
        let at = self.lexer.place();
        let found = self.lexer.next()?;
        let number = match found {
            Token::Number(written) => written.parse().ok().filter(|number| *number <= most),
            _ => None,
        };
        let words = || meant(found, format_args!("a whole number from 0 to {most}")).at(at);
        number.ok_or_else(words)
    }
}

macro_rules! whole_numbers {
    ($($method:ident: $number:ty),+) => {
        $(fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
            let number = self.whole(u64::from(<$number>::MAX))?;
            visitor.visit_u64(number)
        })+
    };
}

impl<'de> Deserializer<'de> for &mut Reader<'de> {
    type Error = Wrong;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
        let at = self.lexer.place();
        let token = self.lexer.next()?;
        self.value(token, visitor).map_err(|wrong| wrong.at(at))
    }

    /// A number as it is written.
    fn deserialize_bytes<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
        let at = self.lexer.place();
        let value = match self.lexer.next()? {
            Token::Number(written) => visitor.visit_bytes(written.as_bytes()),
            token => self.value(token, visitor),
        };
        value.map_err(|wrong| wrong.at(at))
    }

    whole_numbers!(deserialize_u8: u8, deserialize_u16: u16, deserialize_u32: u32);

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
        if self.lexer.peek()? != Token::Null {
            return visitor.visit_some(self);
        }
        self.lexer.next()?;
        visitor.visit_none()
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        names: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Wrong> {
        let at = self.lexer.place();
        let value = match self.lexer.next()? {
            Token::Open(Container::Object) => self.object(visitor),
            found => {
                let names = names.join(", ");
                Err(meant(found, format_args!("an object {{ }} of: {names}")))
            }
        };
        value.map_err(|wrong| wrong.at(at))
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        words: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Wrong> {
        let at = self.lexer.place();
        let value = match self.lexer.next()? {
            Token::Text(written) => {
                decode(written).and_then(|word| visitor.visit_enum(word.into_deserializer()))
            }
            Token::Open(Container::Object) => self.nested(|reader| {
                let value = visitor.visit_enum(Tagged { reader })?;
                let close = Token::Close(Container::Object);
                reader.expect(close, "the end of an object of one field")?;
                Ok(value)
            }),
            found => {
                let words = words.join(", ");
                Err(meant(found, format_args!("one of: {words}")))
            }
        };
        value.map_err(|wrong| wrong.at(at))
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        visitor: V,
    ) -> Result<V::Value, Wrong> {
        visitor.visit_newtype_struct(self)
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 u64 f32 f64 char str string byte_buf unit unit_struct seq tuple
        tuple_struct map identifier ignored_any
    }
}

/// The fields of an object, one after the other.
struct Members<'r, 'de> {
    reader: &'r mut Reader<'de>,
    begun: bool,
    /// The field read last, and its byte offset.
    name: String,
    name_at: usize,
}

impl Members<'_, '_> {
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
            found if self.begun => {
                return Err(meant(found, "a comma or the end of this object").at(at));
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
struct Items<'r, 'de> {
    reader: &'r mut Reader<'de>,
    index: usize,
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
            found if self.index > 0 => {
                return Err(meant(found, "a comma or the end of this list").at(at));
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
struct Tagged<'r, 'de> {
    reader: &'r mut Reader<'de>,
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
struct Content<'r, 'de> {
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
