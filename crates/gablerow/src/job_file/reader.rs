//! The strict way from JSON text to the twin types.
//!
//! A general reader takes a list for a record, turns decimals into floats and has lost the place once a value turns out to
//! be wrong. This one does none of that: every fault leaves with its path and its byte offset, an object is an object, and
//! a number reaches whoever asks for bytes as it is written.

use std::fmt::Display;

use serde::de::{DeserializeOwned, Deserializer, Expected, IntoDeserializer, Visitor};
use serde::forward_to_deserialize_any;

use super::inside::{Items, Members, Tagged};
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

/// A text on its way into a value.
pub(super) struct Reader<'de> {
    pub(super) lexer: Lexer<'de>,
    nesting: u8,
}

/// What a token is, in words.
fn words(token: Token<'_>) -> String {
    match token {
        Token::Open(Container::Object) => "an object { }".to_string(),
        Token::Open(Container::List) => "a list [ ]".to_string(),
        Token::Close(_) => "a closing bracket".to_string(),
        Token::Comma => "a comma".to_string(),
        Token::Colon => "a colon".to_string(),
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

/// The fault of a token where something else is meant.
pub(super) fn meant(found: Token<'_>, meant: impl Display) -> Wrong {
    Wrong::new(format!("{}, but it is {meant}", words(found)))
}

impl<'de> Reader<'de> {
    /// The next token, which must be this one.
    pub(super) fn expect(&mut self, token: Token<'_>, words: &str) -> Result<(), Wrong> {
        let at = self.lexer.place();
        let found = self.lexer.next()?;
        if found == token {
            return Ok(());
        }
        Err(meant(found, words).at(at))
    }

    /// Enters a container that has just been opened and gives `inside` what it holds.
    pub(super) fn nested<T>(
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
            let mut members = Members::new(reader);
            let value = visitor.visit_map(&mut members);
            value.map_err(|wrong| members.placed(wrong))
        })
    }

    /// The rest of a list, up to its bracket.
    fn list<V: Visitor<'de>>(&mut self, visitor: V) -> Result<V::Value, Wrong> {
        self.nested(|reader| {
            let mut items = Items::new(reader);
            let value = visitor.visit_seq(&mut items)?;
            items.end()?;
            Ok(value)
        })
    }

    fn value<V: Visitor<'de>>(&mut self, token: Token<'de>, visitor: V) -> Result<V::Value, Wrong> {
        match token {
            Token::Open(Container::Object) => self.object(visitor),
            Token::Open(Container::List) => self.list(visitor),
            Token::Text(written) => visitor.visit_str(&decode(written)?),
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

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Wrong> {
        let at = self.lexer.place();
        match self.lexer.next()? {
            Token::Bool(value) => visitor.visit_bool(value),
            found => Err(meant(found, "true or false").at(at)),
        }
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
                let value = visitor.visit_enum(Tagged::new(reader))?;
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
        i8 i16 i32 i64 u64 f32 f64 char str string byte_buf unit unit_struct seq tuple
        tuple_struct map identifier ignored_any
    }
}
