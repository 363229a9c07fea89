//! From a path such as `cabinets[2].size.height` to its place in the text.

use super::lexer::{Container, Lexer, Token, decode};
use super::wrong::Wrong;

/// One step of a path.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Step<'p> {
    Field(&'p str),
    Item(usize),
}

/// The steps of a path, outermost first.
fn steps(path: &str) -> impl Iterator<Item = Step<'_>> {
    let words = path.split(['.', '[']).filter(|word| !word.is_empty());
    words.map(|word| match word.strip_suffix(']') {
        Some(index) => Step::Item(index.parse().unwrap_or(usize::MAX)),
        None => Step::Field(word),
    })
}

/// Byte offset of the value that a path names; where the text does not go so deep, of the innermost it has.
pub(super) fn find(text: &str, path: &str) -> usize {
    let mut lexer = Lexer::new(text);
    let mut at = lexer.place();
    for step in steps(path) {
        let entered = match step {
            Step::Field(name) => enter_field(&mut lexer, name),
            Step::Item(index) => enter_item(&mut lexer, index),
        };
        match entered {
            Ok(true) => at = lexer.place(),
            _ => break,
        }
    }
    at
}

/// Steps to the value of the field of this name; `false` when the value here is no object or has no such field.
///
/// # Errors
/// When the text up to there is no JSON.
pub(super) fn enter_field(lexer: &mut Lexer<'_>, name: &str) -> Result<bool, Wrong> {
    if lexer.next()? != Token::Open(Container::Object) {
        return Ok(false);
    }
    loop {
        let at = lexer.place();
        let Token::Text(written) = lexer.next()? else {
            return Ok(false);
        };
        let found = decode(written).map_err(|wrong| wrong.at(at))? == name;
        let at = lexer.place();
        if lexer.next()? != Token::Colon {
            return Err(Wrong::new("after the name of a field stands a colon").at(at));
        }
        if found {
            return Ok(true);
        }
        lexer.skip_value()?;
        if lexer.next()? != Token::Comma {
            return Ok(false);
        }
    }
}

/// Steps to the item of this index, from 0; `false` when the value here is no list or is too short.
fn enter_item(lexer: &mut Lexer<'_>, index: usize) -> Result<bool, Wrong> {
    if lexer.next()? != Token::Open(Container::List) {
        return Ok(false);
    }
    for _ in 0..index {
        lexer.skip_value()?;
        if lexer.next()? != Token::Comma {
            return Ok(false);
        }
    }
    Ok(!matches!(lexer.peek()?, Token::Close(_)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_leads_to_its_value() {
        let text = r#" {"a": [1, {"b": {"c": 2}}], "d": 3}"#;
        let at = |path| &text[find(text, path)..];
        assert!(at("").starts_with("{\"a\""));
        assert!(at("a").starts_with("[1,"));
        assert!(at("a[0]").starts_with('1'));
        assert!(at("a[1].b.c").starts_with('2'));
        assert!(at("d").starts_with('3'));
    }

    #[test]
    fn a_path_that_goes_too_deep_ends_at_the_innermost_there_is() {
        let text = r#"{"a": [{"b": 1}]}"#;
        assert_eq!(find(text, "a[0].b.c"), find(text, "a[0].b"));
        assert_eq!(find(text, "a[0].x"), find(text, "a[0]"));
        assert_eq!(find(text, "a[7]"), find(text, "a"));
        assert_eq!(find("[]", "[0]"), 0);
        assert_eq!(find("no JSON", "a"), 0);
    }
}
