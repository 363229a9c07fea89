//! Whether a text is a file of ours at all, and of which version.

use super::lexer::{Container, Lexer, Token, decode};
use super::place::enter_field;
use super::wrong::Wrong;

/// Looks at the two first fields of a file of this format and version, before anything else is read.
///
/// # Errors
/// - the text is empty, or no object, or says that it is something else;
/// - its version is none, or one that this program does not read.
pub(super) fn check(text: &str, ours: (&str, u32)) -> Result<(), Wrong> {
    let (own, newest) = ours;
    let foreign = |reason: &str| Wrong::new(format!("this is no {own}: {reason}"));
    let mut start = Lexer::new(text);
    let at = start.place();
    match start.peek() {
        Ok(Token::Open(Container::Object)) => {}
        Ok(Token::End) => return Err(Wrong::new("the file is empty").at(at)),
        _ => return Err(foreign("it does not begin with {").at(at)),
    }
    let format =
        field(text, "format")?.ok_or_else(|| foreign("it has no field \"format\"").at(at))?;
    match format.1 {
        Token::Text(written) if decode(written)? == own => {}
        _ => {
            let wrong = foreign(&format!("its format is not \"{own}\""));
            return Err(wrong.at(format.0).within("format"));
        }
    }
    let (at, version) = field(text, "version")?
        .ok_or_else(|| Wrong::new("the field \"version\" is missing").at(at))?;
    let number = match version {
        Token::Number(written) => written.parse::<u64>().ok(),
        _ => None,
    };
    let message = match number {
        Some(number) if number == u64::from(newest) => return Ok(()),
        None | Some(0) => "a version is a whole number from 1 up".to_string(),
        Some(number) => format!(
            "this file is of version {number}; this program reads version {newest}: take a newer program"
        ),
    };
    Err(Wrong::new(message).at(at).within("version"))
}

/// The value of a field of the outermost object, with its byte offset.
fn field<'t>(text: &'t str, name: &str) -> Result<Option<(usize, Token<'t>)>, Wrong> {
    let mut lexer = Lexer::new(text);
    if !enter_field(&mut lexer, name)? {
        return Ok(None);
    }
    let at = lexer.place();
    Ok(Some((at, lexer.next()?)))
}
