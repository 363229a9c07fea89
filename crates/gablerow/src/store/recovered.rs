//! What a crash left behind.

use std::path::PathBuf;

use super::fingerprint::Fingerprint;
use super::record::{Intact, Record};

/// The edits that a journal held when it was opened.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Recovered {
    /// The version of the job file that the first edit starts from; `None` if there was no file
    /// yet.
    pub base: Option<Fingerprint>,
    /// The payloads of all intact edits, the oldest first.
    pub edits: Vec<String>,
    /// Where the end of the journal was put that could not be read; `None` if all of it could.
    pub torn: Option<PathBuf>,
    /// The saves that were begun: how many edits came before each, and the version it was to put in
    /// place.
    saves: Vec<(usize, Fingerprint)>,
}

impl Recovered {
    /// The edits that are not in the file yet, the oldest first, when the file is now `file`
    /// (`None` if there is none).
    ///
    /// `None` if the file is neither what the journal starts from nor what a save made of it: then
    /// it was changed outside, and the edits have nothing to stand on.
    ///
    /// A save and the new journal after it are two steps. Killed between the two, the file already
    /// holds the edits that the journal still lists; they are not counted again, because the
    /// journal was told of the save before.
    ///
    /// ```text
    /// base A   edit 1   edit 2   saving B   edit 3
    ///                            │
    /// file A: 1 2 3   (the save did not happen)
    /// file B: 3       (the save did happen)
    /// file C: None
    /// ```
    #[must_use]
    pub fn since(&self, file: Option<Fingerprint>) -> Option<&[String]> {
        let saved = self
            .saves
            .iter()
            .rev()
            .find(|(_, version)| Some(*version) == file);
        match saved {
            Some((edits_before, _)) => self.edits.get(*edits_before..),
            None => (self.base == file).then_some(&*self.edits),
        }
    }

    pub(super) fn nothing(base: Option<Fingerprint>, torn: Option<PathBuf>) -> Self {
        Self {
            base,
            torn,
            ..Self::default()
        }
    }

    pub(super) fn of(intact: &Intact<'_>, torn: Option<PathBuf>) -> Self {
        let mut recovered = Self::nothing(intact.base, torn);
        for record in &intact.records {
            match *record {
                Record::Edit(payload) => recovered.edits.push(payload.to_owned()),
                Record::Saving(version) => recovered.saves.push((recovered.edits.len(), version)),
            }
        }
        recovered
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn recovered(edits: &[&str], saves: &[(usize, Fingerprint)]) -> Recovered {
        let edits = edits.iter().map(|edit| (*edit).to_owned()).collect();
        Recovered {
            base: Some(Fingerprint::of(b"A")),
            edits,
            torn: None,
            saves: saves.to_vec(),
        }
    }

    fn file(name: &str) -> Option<Fingerprint> {
        Some(Fingerprint::of(name.as_bytes()))
    }

    #[test]
    fn edits_start_from_the_version_that_is_there() {
        let left = recovered(&["1", "2", "3"], &[(2, Fingerprint::of(b"B"))]);
        assert_eq!(left.since(file("A")).unwrap(), ["1", "2", "3"]);
        assert_eq!(left.since(file("B")).unwrap(), ["3"]);
        assert_eq!(left.since(file("C")), None);
        assert_eq!(left.since(None), None);
    }

    #[test]
    fn of_two_saves_of_the_same_version_the_later_counts() {
        let b = Fingerprint::of(b"B");
        let left = recovered(&["to B", "away", "and back"], &[(1, b), (3, b)]);
        assert!(left.since(Some(b)).unwrap().is_empty());
    }

    #[test]
    fn a_job_without_a_file_has_edits_too() {
        let left = Recovered {
            base: None,
            ..recovered(&["1"], &[])
        };
        assert_eq!(left.since(None).unwrap(), ["1"]);
        assert_eq!(left.since(file("A")), None);
    }
}
