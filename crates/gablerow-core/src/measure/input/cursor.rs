//! A place in the text, and the small pieces read from there.

use super::error::{InputError, InputErrorKind};

/// A place in a text, always at the edge of a character. A copy of it looks ahead.
#[derive(Clone, Copy)]
pub(super) struct Cursor<'a> {
    text: &'a str,
    at: usize,
}

impl<'a> Cursor<'a> {
    pub(super) const fn new(text: &'a str) -> Self {
        Self { text, at: 0 }
    }

    fn rest(self) -> &'a str {
        &self.text[self.at..]
    }

    pub(super) fn peek(self) -> Option<char> {
        self.rest().chars().next()
    }

    /// Goes past all characters of a kind and gives them back.
    pub(super) fn take_while(&mut self, kind: fn(char) -> bool) -> &'a str {
        let rest = self.rest();
        let length = rest.find(|char| !kind(char)).unwrap_or(rest.len());
        self.at += length;
        &rest[..length]
    }

    /// Goes past one character of a kind, if one stands here.
    pub(super) fn eat(&mut self, kind: fn(char) -> bool) -> bool {
        let found = self.peek().filter(|&char| kind(char));
        self.at += found.map_or(0, char::len_utf8);
        found.is_some()
    }

    /// Goes past one character of a kind and the spaces before it, if one stands there.
    pub(super) fn eat_past_spaces(&mut self, kind: fn(char) -> bool) -> bool {
        let mut ahead = *self;
        ahead.skip_spaces();
        let found = ahead.eat(kind);
        if found {
            *self = ahead;
        }
        found
    }

    /// Goes past spaces, and says whether there were any.
    pub(super) fn skip_spaces(&mut self) -> bool {
        !self.take_while(char::is_whitespace).is_empty()
    }

    pub(super) fn error(self, kind: InputErrorKind) -> InputError {
        let column = self.text[..self.at].chars().count() + 1;
        InputError {
            kind,
            at: self.at,
            column,
        }
    }
}

pub(super) fn is_digit(char: char) -> bool {
    char.is_ascii_digit()
}

pub(super) fn is_decimal_mark(char: char) -> bool {
    matches!(char, '.' | ',')
}

pub(super) fn is_stroke(char: char) -> bool {
    char == '/'
}

pub(super) fn is_plus(char: char) -> bool {
    char == '+'
}

/// The hyphen of a keyboard, or the true minus.
pub(super) fn is_minus(char: char) -> bool {
    matches!(char, '-' | '\u{2212}')
}

pub(super) fn is_times(char: char) -> bool {
    matches!(char, '*' | '\u{d7}')
}

/// Straight, prime or curly, one stroke.
pub(super) fn is_foot_mark(char: char) -> bool {
    matches!(char, '\'' | '\u{2032}' | '\u{2018}' | '\u{2019}')
}

/// Straight, prime or curly, two strokes.
pub(super) fn is_inch_mark(char: char) -> bool {
    matches!(char, '"' | '\u{2033}' | '\u{201c}' | '\u{201d}')
}
