//! What of a name goes into the name of a file: letters and digits of ASCII, with hyphens between.

use alloc::collections::BTreeSet;
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

/// The most characters that are taken of a name, so that four of them and an ending are a name on every disk.
const CHARS_MOST: usize = 40;

/// What is safe of a name: every run of other characters becomes one hyphen; `instead` where nothing is left.
pub(super) fn safe(name: &str, instead: &str) -> String {
    let mut out = String::new();
    for c in name.chars() {
        match c.is_ascii_alphanumeric() {
            true => out.push(c),
            false if out.ends_with('-') || out.is_empty() => {}
            false => out.push('-'),
        }
        if out.len() == CHARS_MOST {
            break;
        }
    }
    let kept = out.trim_end_matches('-');
    if kept.is_empty() { instead } else { kept }.into()
}

/// What is safe of several names, in their order. Those that a disk without capitals could not tell apart get a number.
pub(super) fn told_apart<'a>(
    names: impl IntoIterator<Item = &'a str>,
    instead: &str,
) -> Vec<String> {
    let mut taken: BTreeSet<String> = BTreeSet::new();
    let mut apart = Vec::new();
    for name in names {
        let safe = safe(name, instead);
        let numbered = (2_usize..).map(|number| format!("{safe}-{number}"));
        let mut tried = core::iter::once(safe.clone()).chain(numbered);
        // As many are tried as it takes; only those before it are taken.
        let free = tried.find(|it| taken.insert(it.to_ascii_lowercase()));
        apart.push(free.unwrap_or(safe));
    }
    apart
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn names_that_could_lead_elsewhere_do_not() {
        assert_eq!(safe("../../etc/passwd", "job"), "etc-passwd");
        assert_eq!(safe("glaze store: wall 2", "job"), "glaze-store-wall-2");
        assert_eq!(safe("釉薬", "job"), "job");
        assert_eq!(safe("..", "job"), "job");
    }

    #[test]
    fn names_that_come_out_equal_are_told_apart() {
        let names = ["A/1", "a:1", "A-1-2", "A 1"];
        assert_eq!(
            told_apart(names, "cabinet"),
            ["A-1", "a-1-2", "A-1-2-2", "A-1-3"]
        );
    }

    proptest! {
        #[test]
        fn any_names_are_safe_and_told_apart(names in prop::collection::vec(any::<String>(), 0..12)) {
            let files = told_apart(names.iter().map(String::as_str), "cabinet");
            prop_assert_eq!(files.len(), names.len());
            for (at, file) in files.iter().enumerate() {
                prop_assert!(file.chars().all(|c| c.is_ascii_alphanumeric() || c == '-'));
                prop_assert!(!file.is_empty() && file.len() <= CHARS_MOST + 3);
                prop_assert!(!file.starts_with('-') && !file.ends_with('-'));
                prop_assert!(!files[..at].iter().any(|other| other.eq_ignore_ascii_case(file)));
            }
        }
    }
}
