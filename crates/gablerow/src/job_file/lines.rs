//! Compact JSON broken into lines that a person reads and a comparison of versions shows well.

use super::lexer::{Container, Lexer, Token};
use super::wrong::Wrong;

/// The most values that an object with containers in it holds on one line.
const VALUES_ON_ONE_LINE: usize = 10;
/// What one level is set in by.
const INDENT: &str = "  ";

/// Breaks compact JSON into lines, one item a line, and ends the last.
///
/// On one line stand: what holds no other container; and an object whose containers hold none in turn, as long as it has
/// no more than ten values in all. So a fitting is a line, a list of fittings has a line for each, and neither
/// depends on how long names or numbers are.
pub(super) fn broken(compact: &str) -> String {
    // What is no JSON is left as it is: nothing that was to be written may get lost here.
    let mut text = one_liners(compact)
        .and_then(|one_liners| laid_out(compact, &one_liners))
        .unwrap_or_else(|_| compact.to_string());
    text.push('\n');
    text
}

/// What is known of a container while it is open.
struct Open {
    /// Which of all containers it is, in the order they open.
    index: usize,
    kind: Container,
    /// Values in it, at any depth.
    values: usize,
    /// Containers within containers below it; 0 holds none.
    height: usize,
}

/// Whether each container stands on one line, in the order they open.
fn one_liners(compact: &str) -> Result<Vec<bool>, Wrong> {
    let mut lexer = Lexer::new(compact);
    let (mut answers, mut open) = (Vec::new(), Vec::<Open>::new());
    loop {
        match lexer.next()? {
            Token::End => return Ok(answers),
            Token::Open(kind) => {
                let index = answers.len();
                answers.push(false);
                open.push(Open {
                    index,
                    kind,
                    values: 0,
                    height: 0,
                });
            }
            Token::Close(_) => {
                let Some(inner) = open.pop() else {
                    return Err(Wrong::new("a bracket closes that was never opened"));
                };
                answers[inner.index] = match (inner.kind, inner.height) {
                    (_, 0) => true,
                    (Container::Object, 1) => inner.values <= VALUES_ON_ONE_LINE,
                    _ => false,
                };
                if let Some(outer) = open.last_mut() {
                    outer.values += inner.values;
                    outer.height = outer.height.max(inner.height + 1);
                }
            }
            Token::Text(_) | Token::Number(_) | Token::Bool(_) | Token::Null => {
                open.iter_mut()
                    .next_back()
                    .into_iter()
                    .for_each(|o| o.values += 1);
            }
            // The text before a colon was a name, and no value.
            Token::Colon => open
                .iter_mut()
                .next_back()
                .into_iter()
                .for_each(|o| o.values -= 1),
            Token::Comma => {}
        }
    }
}

fn laid_out(compact: &str, one_liners: &[bool]) -> Result<String, Wrong> {
    let mut text = String::with_capacity(compact.len() * 3 / 2);
    let (mut lexer, mut one_liners) = (Lexer::new(compact), one_liners.iter());
    let mut open = Vec::new();
    let end_line = |text: &mut String, open: &[bool]| {
        text.push('\n');
        open.iter().for_each(|_| text.push_str(INDENT));
    };
    loop {
        match lexer.next()? {
            Token::End => return Ok(text),
            Token::Open(kind) => {
                text.push_str(if kind == Container::Object { "{" } else { "[" });
                let one_line = one_liners.next().copied().unwrap_or(true);
                open.push(one_line);
                if !one_line {
                    end_line(&mut text, &open);
                }
            }
            Token::Close(kind) => {
                if open.pop() == Some(false) {
                    end_line(&mut text, &open);
                }
                text.push_str(if kind == Container::Object { "}" } else { "]" });
            }
            Token::Comma if open.last() == Some(&false) => {
                text.push(',');
                end_line(&mut text, &open);
            }
            Token::Comma => text.push_str(", "),
            Token::Colon => text.push_str(": "),
            Token::Text(written) | Token::Number(written) => text.push_str(written),
            Token::Bool(value) => text.push_str(if value { "true" } else { "false" }),
            Token::Null => text.push_str("null"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_record_is_a_line_and_a_list_of_records_has_one_for_each() {
        let compact = r#"{"a":1,"b":[],"c":[{"d":[1,"x"]},{"e":"f, g: {"}],"h":{"i":{"j":true}}}"#;
        let expected = r#"{
  "a": 1,
  "b": [],
  "c": [
    {"d": [1, "x"]},
    {"e": "f, g: {"}
  ],
  "h": {"i": {"j": true}}
}
"#;
        assert_eq!(broken(compact), expected);
    }

    #[test]
    fn an_object_of_many_values_is_broken_when_it_holds_containers() {
        let flat = r#"{"a":1,"b":2,"c":3,"d":4,"e":5,"f":6,"g":7,"h":8,"i":9,"j":10,"k":11}"#;
        assert_eq!(broken(flat).lines().count(), 1);
        let ten = r#"{"a":[1,2,3,4,5],"b":[6,7,8,9,10]}"#;
        assert_eq!(broken(ten).lines().count(), 1);
        let eleven = r#"{"a":[1,2,3,4,5],"b":[6,7,8,9,10,11]}"#;
        assert_eq!(broken(eleven).lines().count(), 4);
    }

    #[test]
    fn what_is_no_json_is_kept() {
        assert_eq!(broken("}\u{1}"), "}\u{1}\n");
    }
}
