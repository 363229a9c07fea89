//! How many there are of something, in words.

use alloc::format;
use alloc::string::String;

/// `1 hole`, `2 holes`.
#[must_use]
pub fn counted(count: usize, what: &str) -> String {
    let s = if count == 1 { "" } else { "s" };
    format!("{count} {what}{s}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_alone_is_no_plural() {
        let said = [0, 1, 2].map(|count| counted(count, "set-up"));
        assert_eq!(said, ["0 set-ups", "1 set-up", "2 set-ups"]);
    }
}
