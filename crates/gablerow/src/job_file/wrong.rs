//! What is wrong with a text; it gathers its place on the way out.

use std::fmt::Display;

use serde::de::{self, Expected, Unexpected};

/// What is wrong, and as much of the place as is known so far.
///
/// The innermost reader that knows the byte offset sets it; each field and list item that the error passes on its way out
/// puts itself before the path. A text without fault pays nothing for that.
#[derive(Debug)]
pub(super) struct Wrong {
    /// What is wrong and what is meant.
    pub(super) message: String,
    /// Byte offset in the text.
    pub(super) at: Option<usize>,
    /// Where in the structure: `cabinets[2].size.height`.
    pub(super) path: String,
    /// The place is the name of the field read last, rather than the object around it.
    pub(super) of_name: bool,
}

impl Wrong {
    /// A fault whose place is not known yet.
    pub(super) fn new(message: impl Display) -> Self {
        Self {
            message: message.to_string(),
            at: None,
            path: String::new(),
            of_name: false,
        }
    }

    /// Sets the byte offset, unless one is known already.
    pub(super) fn at(mut self, at: usize) -> Self {
        self.at.get_or_insert(at);
        self
    }

    /// The same fault seen from around the field of this name.
    pub(super) fn within(self, field: &str) -> Self {
        let inner = &self.path;
        let dot = if inner.is_empty() || inner.starts_with('[') {
            ""
        } else {
            "."
        };
        let path = format!("{field}{dot}{inner}");
        Self { path, ..self }
    }

    /// The same fault seen from around the list it is the item of.
    pub(super) fn within_item(self, index: usize) -> Self {
        self.within(&format!("[{index}]"))
    }
}

impl Display for Wrong {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.message)
    }
}

impl std::error::Error for Wrong {}

/// `a, b, c`, or that there is none.
fn listed(words: &[&str]) -> String {
    match words {
        [] => "none at all".to_string(),
        words => words.join(", "),
    }
}

impl de::Error for Wrong {
    fn custom<T: Display>(message: T) -> Self {
        Self::new(message)
    }

    fn invalid_type(found: Unexpected<'_>, meant: &dyn Expected) -> Self {
        match found {
            Unexpected::UnitVariant => Self::new(
                "this word does not stand alone: write { }, and in it the word, a colon and its value",
            ),
            found => Self::new(format!("{found}, but it is {meant}")),
        }
    }

    fn invalid_value(found: Unexpected<'_>, meant: &dyn Expected) -> Self {
        Self::new(format!("{found}, but it is {meant}"))
    }

    fn invalid_length(length: usize, meant: &dyn Expected) -> Self {
        Self::new(format!("a list of {length}, but it is {meant}"))
    }

    fn unknown_variant(found: &str, words: &'static [&'static str]) -> Self {
        Self::new(format!("\"{found}\", but it is one of: {}", listed(words)))
    }

    fn unknown_field(found: &str, names: &'static [&'static str]) -> Self {
        let names = listed(names);
        Self::new(format!(
            "there is no field \"{found}\" here; there are: {names}"
        ))
    }

    fn missing_field(name: &'static str) -> Self {
        Self::new(format!("the field \"{name}\" is missing"))
    }

    fn duplicate_field(name: &'static str) -> Self {
        Self {
            of_name: true,
            ..Self::new(format!("the field \"{name}\" stands here twice"))
        }
    }
}
