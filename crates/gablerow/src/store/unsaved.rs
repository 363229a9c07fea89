//! What a journal holds beside a file, for whoever reads that file and does not open it.

use std::path::Path;

use super::fingerprint::Fingerprint;
use super::fs::{Access, Disk, Found};
use super::journal::JOURNAL_BYTES_MAX;
use super::place::Place;
use super::record;
use super::recovered::Recovered;

/// The lines of the journal beside a job file that are not in this version of it, oldest first.
///
/// Nothing is locked, moved or cut, so it can be asked while the job is open in a window. A journal that cannot be read, or that
/// belongs to another version, has none.
#[must_use]
pub fn unsaved(job: &Path, version: Fingerprint) -> Vec<String> {
    let lines = || {
        let place = Place::of(job).ok()?;
        let found = Found::open(&Disk, &place.journal(), Access::Read).ok()??;
        let bytes = found.read(&Disk, JOURNAL_BYTES_MAX).ok()?;
        let intact = record::read(&bytes).ok()??;
        let recovered = Recovered::of(&intact, None);
        recovered.since(Some(version)).map(<[String]>::to_vec)
    };
    lines().unwrap_or_default()
}
