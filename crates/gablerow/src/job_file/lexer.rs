//! JSON text as tokens, each with its byte offset.

use std::borrow::Cow;

use super::wrong::Wrong;

/// The two kinds of brackets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Container {
    /// `{ }`
    Object,
    /// `[ ]`
    List,
}

/// One token.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Token<'t> {
    /// `{` or `[`.
    Open(Container),
    /// `}` or `]`.
    Close(Container),
    /// `,`
    Comma,
    /// `:`
    Colon,
    /// A string as it is written, quotes included; [`decode`] gives what it says.
    Text(&'t str),
    /// A number as it is written.
    Number(&'t str),
    /// `true` or `false`.
    Bool(bool),
    /// `null`
    Null,
    /// Nothing is left.
    End,
}

/// Steps over a text from token to token.
#[derive(Clone, Debug)]
pub(super) struct Lexer<'t> {
    text: &'t str,
    at: usize,
}

impl<'t> Lexer<'t> {
    /// Before the first token.
    pub(super) fn new(text: &'t str) -> Self {
        Self { text, at: 0 }
    }

    /// Byte offset of the next token, spaces left behind.
    pub(super) fn place(&mut self) -> usize {
        let rest = &self.text.as_bytes()[self.at..];
        let space = |byte: &u8| matches!(byte, b' ' | b'\t' | b'\n' | b'\r');
        self.at += rest.iter().take_while(|&byte| space(byte)).count();
        self.at
    }

    /// The next token, without stepping over it.
    ///
    /// # Errors
    /// As [`Self::next`].
    pub(super) fn peek(&self) -> Result<Token<'t>, Wrong> {
        self.clone().next()
    }

    /// The next token; [`Token::End`] for ever after the last.
    ///
    /// # Errors
    /// When no token of JSON begins so.
    pub(super) fn next(&mut self) -> Result<Token<'t>, Wrong> {
        let start = self.place();
        let Some(first) = self.byte() else {
            return Ok(Token::End);
        };
        let token = match first {
            b'"' => return self.text_token(start),
            b'-' | b'0'..=b'9' => return self.number(start),
            b'{' => Token::Open(Container::Object),
            b'}' => Token::Close(Container::Object),
            b'[' => Token::Open(Container::List),
            b']' => Token::Close(Container::List),
            b',' => Token::Comma,
            b':' => Token::Colon,
            _ => return self.word(start),
        };
        self.at += 1;
        Ok(token)
    }

    /// Steps over one value, whatever it is. Brackets are counted, not matched.
    ///
    /// # Errors
    /// When the text ends before the value does, or there is none.
    pub(super) fn skip_value(&mut self) -> Result<(), Wrong> {
        let mut open = 0_usize;
        loop {
            let at = self.place();
            match self.next()? {
                Token::Open(_) => open += 1,
                Token::Close(_) if open > 0 => open -= 1,
                Token::End | Token::Close(_) => {
                    return Err(Wrong::new("a value is missing here").at(at));
                }
                Token::Comma | Token::Colon if open == 0 => {
                    return Err(Wrong::new("a value is missing here").at(at));
                }
                _ => {}
            }
            if open == 0 {
                return Ok(());
            }
        }
    }

    fn byte(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    /// Steps over digits and says how many there were.
    fn digits(&mut self) -> usize {
        let rest = &self.text.as_bytes()[self.at..];
        let count = rest.iter().take_while(|byte| byte.is_ascii_digit()).count();
        self.at += count;
        count
    }

    fn number(&mut self, start: usize) -> Result<Token<'t>, Wrong> {
        let wrong = |message| Err(Wrong::new(message).at(start));
        if self.byte() == Some(b'-') {
            self.at += 1;
        }
        let leading_zero = self.byte() == Some(b'0');
        match self.digits() {
            0 => return wrong("a number has a digit after its minus"),
            count if leading_zero && count > 1 => return wrong("a number has no zeros before it"),
            _ => {}
        }
        if self.byte() == Some(b'.') {
            self.at += 1;
            if self.digits() == 0 {
                return wrong("a number has a digit after its decimal point");
            }
        }
        if matches!(self.byte(), Some(b'e' | b'E')) {
            self.at += 1;
            if matches!(self.byte(), Some(b'+' | b'-')) {
                self.at += 1;
            }
            if self.digits() == 0 {
                return wrong("a number has a digit after its e");
            }
        }
        Ok(Token::Number(&self.text[start..self.at]))
    }

    fn text_token(&mut self, start: usize) -> Result<Token<'t>, Wrong> {
        self.at += 1;
        loop {
            let Some(byte) = self.byte() else {
                return Err(Wrong::new("the text that begins here has no closing quote").at(start));
            };
            self.at += 1;
            match byte {
                b'"' => return Ok(Token::Text(&self.text[start..self.at])),
                b'\\' => self.escape()?,
                0..0x20 => {
                    let message = "a text goes on over the end of its line, or holds a tab";
                    return Err(Wrong::new(message).at(self.at - 1));
                }
                _ => {}
            }
        }
    }

    /// Steps over what follows a backslash.
    fn escape(&mut self) -> Result<(), Wrong> {
        let hex = |bytes: &[u8]| bytes.iter().all(u8::is_ascii_hexdigit);
        let rest = &self.text.as_bytes()[self.at..];
        let length = match rest {
            [b'"' | b'\\' | b'/' | b'b' | b'f' | b'n' | b'r' | b't', ..] => 1,
            [b'u', code @ ..] if code.get(..4).is_some_and(hex) => 5,
            _ => {
                let message =
                    "after a backslash stands one of \" \\ / b f n r t, or u and four digits";
                return Err(Wrong::new(message).at(self.at - 1));
            }
        };
        self.at += length;
        Ok(())
    }

    fn word(&mut self, start: usize) -> Result<Token<'t>, Wrong> {
        let rest = &self.text[start..];
        let end = rest.find(|c: char| !c.is_ascii_alphanumeric());
        let word = &rest[..end.unwrap_or(rest.len())];
        self.at += word.len();
        match word {
            "true" => Ok(Token::Bool(true)),
            "false" => Ok(Token::Bool(false)),
            "null" => Ok(Token::Null),
            "" => {
                let bad = rest.chars().next().unwrap_or_default();
                Err(Wrong::new(format!("{bad:?} means nothing here")).at(start))
            }
            _ => Err(Wrong::new(format!("{word} stands here without quotes")).at(start)),
        }
    }
}

/// What a string says, its quotes and escapes undone.
///
/// # Errors
/// When an escape names half a character.
pub(super) fn decode(written: &str) -> Result<Cow<'_, str>, Wrong> {
    let bare = written.strip_prefix('"').and_then(|t| t.strip_suffix('"'));
    match bare {
        Some(bare) if !bare.contains('\\') => Ok(Cow::Borrowed(bare)),
        _ => serde_json::from_str(written)
            .map(Cow::Owned)
            .map_err(|_| Wrong::new("a \\u in this text names no character")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn tokens(text: &str) -> Result<Vec<Token<'_>>, Wrong> {
        let mut lexer = Lexer::new(text);
        let mut tokens = Vec::new();
        loop {
            match lexer.next()? {
                Token::End => return Ok(tokens),
                token => tokens.push(token),
            }
        }
    }

    #[test]
    fn tokens_are_told_apart() {
        let found = tokens("{\"a\\\"b\" : [-1.5e3,true ,null]}").unwrap();
        let expected = [
            Token::Open(Container::Object),
            Token::Text("\"a\\\"b\""),
            Token::Colon,
            Token::Open(Container::List),
            Token::Number("-1.5e3"),
            Token::Comma,
            Token::Bool(true),
            Token::Comma,
            Token::Null,
            Token::Close(Container::List),
            Token::Close(Container::Object),
        ];
        assert_eq!(found, expected);
        assert_eq!(decode("\"a\\\"\\u00df\"").unwrap(), "a\"ß");
        assert!(decode("\"\\ud800\"").is_err());
    }

    #[test]
    fn a_value_is_stepped_over_whole() {
        let mut lexer = Lexer::new("{\"a\": [1, {\"b\": 2}]} 7");
        lexer.skip_value().unwrap();
        assert_eq!(lexer.next().unwrap(), Token::Number("7"));
        assert!(Lexer::new(", 1").skip_value().is_err());
        assert!(Lexer::new("[1").skip_value().is_err());
    }

    proptest! {
        /// A single scalar is one token exactly when the reference reader takes it.
        #[test]
        fn scalars_agree_with_the_reference_reader(
            text in r#"-?[0-9]{0,3}(\.[0-9]{0,2})?([eE][+-]?[0-9]{0,2})?|"[a\\"u0d/ü\t]{0,8}"|true|nul|nulll"#
        ) {
            let ours = match tokens(&text).as_deref() {
                Ok([Token::Text(written)]) => decode(written).is_ok(),
                Ok([Token::Number(_) | Token::Bool(_) | Token::Null]) => true,
                _ => false,
            };
            prop_assert_eq!(ours, serde_json::from_str::<serde_json::Value>(&text).is_ok(), "{}", text);
        }
    }
}
