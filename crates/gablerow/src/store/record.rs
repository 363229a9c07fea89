//! What a journal looks like, as text: pure, no disk.
//!
//! ```text
//! gablerow journal 1 af63dc4c8601ec8c a7ce4bf6d062eb4e
//! 708dfeb855f9622b edit 21 {"shelf":{"hole":11}}
//! 74b7ab93528b4ad4 saving 16 85944171f73967e8
//! ```
//!
//! The first line has the name of the format, its version, the fingerprint of the file that the
//! edits start from (`none` if there was no file yet) and the sum of what stands before it on the
//! line. Every other line has a sum, a word, the length of the payload in bytes, and the payload. A
//! sum goes over all sums before it and the rest of its line, so a line is good only where it was
//! written: behind these others, in this journal. A stale block that a power cut brings to light is
//! not taken for a record.

use super::fingerprint::Fingerprint;

const NAME: &str = "gablerow journal ";
const VERSION: &str = "1";
const NO_FILE: &str = "none";

/// One line of a journal, the first excepted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Record<'a> {
    /// What the caller appended: one line of text.
    Edit(&'a str),
    /// A save began that puts this version in the place of the file.
    Saving(Fingerprint),
}

/// The sum of all lines so far, from which the next goes on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Sum(Fingerprint);

/// What is intact of a journal.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Intact<'a> {
    pub(super) base: Option<Fingerprint>,
    pub(super) records: Vec<Record<'a>>,
    pub(super) sum: Sum,
    /// How many bytes all this takes; what follows them is not to be read.
    pub(super) bytes: usize,
}

/// The journal was written by a version that this one does not know.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct UnknownVersion(pub(super) String);

/// The first line of a journal, its line break included.
pub(super) fn first_line(base: Option<Fingerprint>) -> (String, Sum) {
    let base = base.map_or(NO_FILE.to_owned(), |base| base.to_string());
    let text = format!("{NAME}{VERSION} {base}");
    let sum = Fingerprint::of(text.as_bytes());
    (format!("{text} {sum}\n"), Sum(sum))
}

impl Sum {
    /// The next line of a journal, its line break included. The payload must have no line break of
    /// its own.
    pub(super) fn line(self, record: Record<'_>) -> (String, Self) {
        let rest = match record {
            Record::Edit(payload) => format!("edit {} {payload}", payload.len()),
            Record::Saving(version) => format!("saving 16 {version}"),
        };
        let next = self.0.then(rest.as_bytes());
        (format!("{next} {rest}\n"), Self(next))
    }

    fn read(self, line: &[u8]) -> Option<(Record<'_>, Self)> {
        let (sum, rest) = std::str::from_utf8(line).ok()?.split_once(' ')?;
        let next = self.0.then(rest.as_bytes());
        if Fingerprint::parse(sum) != Some(next) {
            return None;
        }
        let (word, rest) = rest.split_once(' ')?;
        let (length, payload) = rest.split_once(' ')?;
        if length.parse() != Ok(payload.len()) {
            return None;
        }
        let record = match word {
            "edit" => Record::Edit(payload),
            "saving" => Record::Saving(Fingerprint::parse(payload)?),
            _ => return None,
        };
        Some((record, Self(next)))
    }
}

/// The intact beginning of a journal: everything up to the first line that is damaged or was not
/// finished.
///
/// `None` if not even the first line is intact.
pub(super) fn read(journal: &[u8]) -> Result<Option<Intact<'_>>, UnknownVersion> {
    let mut lines = journal
        .split_inclusive(|byte| *byte == b'\n')
        .map_while(|line| line.strip_suffix(b"\n"));
    let Some(first) = lines.next() else {
        return Ok(None);
    };
    let Some((version, base, sum)) = read_first(first) else {
        return Ok(None);
    };
    if version != VERSION {
        return Err(UnknownVersion(version.to_owned()));
    }
    let base = match base {
        NO_FILE => None,
        base => match Fingerprint::parse(base) {
            Some(base) => Some(base),
            None => return Ok(None),
        },
    };
    let mut intact = Intact {
        base,
        records: Vec::new(),
        sum,
        bytes: first.len() + 1,
    };
    for line in lines {
        let Some((record, sum)) = intact.sum.read(line) else {
            break;
        };
        intact.records.push(record);
        intact.sum = sum;
        intact.bytes += line.len() + 1;
    }
    Ok(Some(intact))
}

/// Version, base and sum of the first line. All versions begin with the name and their number and
/// end with the sum.
fn read_first(line: &[u8]) -> Option<(&str, &str, Sum)> {
    let (text, sum) = std::str::from_utf8(line).ok()?.rsplit_once(' ')?;
    let sum = Fingerprint::parse(sum).filter(|sum| *sum == Fingerprint::of(text.as_bytes()))?;
    let (version, base) = text.strip_prefix(NAME)?.split_once(' ')?;
    Some((version, base, Sum(sum)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn journal(base: Option<Fingerprint>, records: &[Record<'_>]) -> String {
        let (mut text, mut sum) = first_line(base);
        for record in records {
            let (line, next) = sum.line(*record);
            text += &line;
            sum = next;
        }
        text
    }

    /// A first line with a good sum, whatever else is in it.
    fn signed(text: &str) -> Vec<u8> {
        format!("{text} {}\n", Fingerprint::of(text.as_bytes())).into_bytes()
    }

    #[test]
    fn a_journal_is_text_that_can_be_read() {
        let text = journal(
            Some(Fingerprint::of(b"a")),
            &[Record::Edit("{}"), Record::Saving(Fingerprint::of(b""))],
        );
        let expected = "\
            gablerow journal 1 af63dc4c8601ec8c a7ce4bf6d062eb4e\n\
            ffe4f86c88e34190 edit 2 {}\n\
            e452102c5c572111 saving 16 cbf29ce484222325\n";
        assert_eq!(text, expected);
    }

    #[test]
    fn a_line_is_good_only_behind_the_lines_before_it() {
        let one = journal(None, &[Record::Edit("one"), Record::Edit("two")]);
        let lines: Vec<&str> = one.split_inclusive('\n').collect();
        let swapped = [lines[0], lines[2], lines[1]].concat();
        assert_eq!(read(swapped.as_bytes()).unwrap().unwrap().records, []);
        let other = journal(Some(Fingerprint::of(b"")), &[]) + lines[1];
        assert_eq!(read(other.as_bytes()).unwrap().unwrap().records, []);
    }

    #[test]
    fn other_versions_are_named_but_only_if_their_line_is_intact() {
        assert_eq!(
            read(&signed("gablerow journal 2 some thing new")),
            Err(UnknownVersion("2".into()))
        );
        assert_eq!(
            read(b"gablerow journal 2 none cbf29ce484222325\n"),
            Ok(None)
        );
    }

    #[test]
    fn a_first_line_that_makes_no_sense_is_none() {
        for text in [
            "",
            "gablerow journal",
            "gablerow journal 1",
            "gablerow journal 1 nothing",
            "gablerow journal 1 none ",
            "kiln log 1 none",
        ] {
            assert_eq!(read(&signed(text)), Ok(None), "{text}");
        }
    }

    #[test]
    fn a_line_that_makes_no_sense_ends_what_is_intact() {
        for rest in [
            "",
            "edit",
            "edit 2",
            "edit 3 {}",
            "edit -2 {}",
            "note 2 {}",
            "saving 4 none",
            "edit  {}",
        ] {
            let (first, sum) = first_line(None);
            let line = format!("{} {rest}\n", sum.0.then(rest.as_bytes()));
            assert_eq!(
                read((first + &line).as_bytes()).unwrap().unwrap().records,
                [],
                "{rest}"
            );
        }
    }

    proptest! {
        #[test]
        fn reading_what_was_written_is_identity(
            payloads in prop::collection::vec("[^\n]*", 0..8),
            versions in prop::collection::vec(any::<Vec<u8>>(), 0..4),
            base: Option<Vec<u8>>,
        ) {
            let base = base.map(|bytes| Fingerprint::of(&bytes));
            let edits = payloads.iter().map(|payload| Record::Edit(payload));
            let saves = versions.iter().map(|bytes| Record::Saving(Fingerprint::of(bytes)));
            let records: Vec<_> = edits.chain(saves).collect();
            let text = journal(base, &records);
            let intact = read(text.as_bytes()).unwrap().unwrap();
            prop_assert_eq!(intact.bytes, text.len());
            prop_assert_eq!(intact.base, base);
            prop_assert_eq!(intact.records, records);
        }

        #[test]
        fn any_damage_leaves_a_prefix(
            payloads in prop::collection::vec("[^\n]{0,12}", 0..8),
            at: prop::sample::Index,
            damage: Vec<u8>,
        ) {
            let records: Vec<_> = payloads.iter().map(|payload| Record::Edit(payload)).collect();
            let mut text = journal(None, &records).into_bytes();
            let at = at.index(text.len());
            text.splice(at..text.len().min(at + damage.len()), damage);
            if let Some(intact) = read(&text).unwrap() {
                prop_assert!(records.starts_with(&intact.records));
                prop_assert!(intact.bytes <= text.len());
            }
        }

        #[test]
        fn any_bytes_can_be_read(bytes: Vec<u8>) {
            prop_assert_eq!(read(&bytes), Ok(None));
        }
    }
}
