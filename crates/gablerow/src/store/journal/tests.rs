//! What a journal gives back.

use super::*;
use crate::store::watched::{Fault, Step, Watched};
use std::fs;
use tempfile::{TempDir, tempdir};

const FIVE: [&str; 5] = [
    "{\"hole\":11}",
    "",
    "[]",
    "{\"name\":\"Töpferei\"}",
    "{\"undo\":true}",
];

fn job() -> (TempDir, Lock) {
    let folder = tempdir().unwrap();
    let lock = Lock::take(&folder.path().join("glazes.json")).unwrap();
    (folder, lock)
}

fn version(bytes: &str) -> Option<Fingerprint> {
    Some(Fingerprint::of(bytes.as_bytes()))
}

fn journal_of(lock: &Lock, edits: &[&str]) -> Journal {
    let (mut journal, _) = Journal::open(lock, version("A")).unwrap();
    for edit in edits {
        journal.append(edit).unwrap();
    }
    journal
}

fn reopened(lock: &Lock, base: Option<Fingerprint>) -> Recovered {
    Journal::open(lock, base).unwrap().1
}

#[test]
fn edits_come_back_in_their_order() {
    let (_folder, lock) = job();
    drop(journal_of(&lock, &FIVE));
    let (mut journal, recovered) = Journal::open(&lock, version("A")).unwrap();
    assert_eq!((recovered.base, recovered.torn), (version("A"), None));
    assert_eq!(recovered.edits, FIVE);
    journal.append("one more").unwrap();
    assert_eq!(
        reopened(&lock, version("A")).edits,
        [&FIVE[..], &["one more"]].concat()
    );
}

#[test]
fn a_journal_without_edits_begins_anew() {
    let (_folder, lock) = job();
    drop(journal_of(&lock, &[]));
    assert_eq!(reopened(&lock, version("B")).base, version("B"));
}

#[test]
fn edits_that_were_saved_are_kept_for_undo() {
    let (_folder, lock) = job();
    let mut journal = journal_of(&lock, &["1"]);
    journal.saving(Fingerprint::of(b"C")).unwrap();
    let left = reopened(&lock, version("A"));
    assert_eq!(left.since(version("A")).unwrap(), ["1"]);
    let left = reopened(&lock, version("C"));
    assert_eq!(
        (left.since(version("C")).unwrap().len(), left.edits.len()),
        (0, 1)
    );
}

#[test]
fn a_job_without_a_file_has_a_journal() {
    let (_folder, lock) = job();
    Journal::open(&lock, None).unwrap().0.append("1").unwrap();
    assert_eq!(reopened(&lock, None).since(None).unwrap(), ["1"]);
}

/// Every journal that damage can make of this one gives a prefix of its edits, keeps the rest
/// aside, and goes on.
fn check_damaged(lock: &Lock, damaged: &[u8], edits_good: usize, what: &str) {
    let path = lock.place().journal();
    let _ = fs::remove_file(lock.place().torn());
    fs::write(&path, damaged).unwrap();
    let (mut journal, recovered) = Journal::open(lock, version("A")).unwrap();
    let edits = recovered.edits;
    assert_eq!(edits, FIVE[..edits_good], "{what}");
    if let Some(torn) = &recovered.torn {
        let aside = fs::read(torn).unwrap();
        assert!(!aside.is_empty() && damaged.ends_with(&aside), "{what}");
        let good = &damaged[..damaged.len() - aside.len()];
        assert!(
            good.is_empty() || fs::read(&path).unwrap() == good || edits.is_empty(),
            "{what}"
        );
    } else {
        assert!(!lock.place().torn().exists(), "{what}");
    }
    journal.append("after").unwrap();
    let again = reopened(lock, version("A"));
    assert_eq!(
        (again.edits, again.torn),
        ([edits, vec!["after".to_owned()]].concat(), None),
        "{what}"
    );
}

/// How many lines are finished, the first not counted.
fn edits_in(journal: &[u8]) -> usize {
    journal
        .iter()
        .filter(|byte| **byte == b'\n')
        .count()
        .saturating_sub(1)
}

#[test]
fn a_journal_cut_anywhere_gives_a_prefix_and_goes_on() {
    let (_folder, lock) = job();
    drop(journal_of(&lock, &FIVE));
    let whole = fs::read(lock.place().journal()).unwrap();
    for length in 0..=whole.len() {
        check_damaged(
            &lock,
            &whole[..length],
            edits_in(&whole[..length]),
            &format!("cut at {length}"),
        );
    }
}

#[test]
fn a_journal_with_any_byte_flipped_gives_a_prefix_and_goes_on() {
    let (_folder, lock) = job();
    drop(journal_of(&lock, &FIVE));
    let whole = fs::read(lock.place().journal()).unwrap();
    for at in 0..whole.len() {
        let to_line_break = whole[at] ^ b'\n';
        for flip in [0x01, 0x20, 0xff, to_line_break]
            .into_iter()
            .filter(|flip| *flip != 0)
        {
            let mut damaged = whole.clone();
            damaged[at] ^= flip;
            let good = edits_in(&whole[..at]);
            check_damaged(
                &lock,
                &damaged,
                good,
                &format!("byte {at} flipped by {flip:#x}"),
            );
        }
    }
}

#[test]
fn another_version_is_refused_and_left_alone() {
    let (_folder, lock) = job();
    let path = lock.place().journal();
    let line = "gablerow journal 2 whatever";
    let line = format!("{line} {}\n", Fingerprint::of(line.as_bytes()));
    fs::write(&path, &line).unwrap();
    let text = Journal::open(&lock, None).unwrap_err().to_string();
    assert!(text.starts_with("journal not opened: "), "{text}");
    assert!(
        text.contains(": its format has version 2, not 1; open the job with the version"),
        "{text}"
    );
    assert_eq!(fs::read_to_string(&path).unwrap(), line);
}

#[test]
fn a_journal_that_is_too_large_is_refused() {
    let (_folder, lock) = job();
    let file = File::create(lock.place().journal()).unwrap();
    file.set_len(JOURNAL_BYTES_MAX + 1).unwrap();
    assert!(matches!(
        Journal::open(&lock, None).unwrap_err().cause(),
        Cause::TooLarge { .. }
    ));
}

#[test]
fn a_full_journal_takes_no_edit_but_notes_the_save_that_empties_it() {
    let (_folder, lock) = job();
    let mut journal = journal_of(&lock, &["1"]);
    // As if so much had been written before.
    journal.bytes = JOURNAL_BYTES_MAX - SAVING_BYTES_RESERVED - 1;
    for edit in ["2", ""] {
        assert!(matches!(
            journal.append(edit).unwrap_err().cause(),
            Cause::JournalFull
        ));
    }
    journal.saving(Fingerprint::of(b"B")).unwrap();
    assert_eq!(reopened(&lock, version("A")).edits, ["1"]);
    journal.restart(version("B")).unwrap();
    journal.append("3").unwrap();
    assert_eq!(reopened(&lock, version("B")).edits, ["3"]);
}

#[test]
fn an_edit_of_several_lines_is_not_taken() {
    let (_folder, lock) = job();
    let mut journal = journal_of(&lock, &["1"]);
    assert!(matches!(
        journal.append("2\n3").unwrap_err().cause(),
        Cause::SeveralLines
    ));
    journal.append("4").unwrap();
    assert_eq!(reopened(&lock, version("A")).edits, ["1", "4"]);
}

#[test]
fn an_edit_that_could_not_be_written_goes_along_with_the_next() {
    let (_folder, lock) = job();
    let mut journal = journal_of(&lock, &["1"]);
    for edit in ["2", "3"] {
        let text = journal
            .append_on(&Watched::new(Fault::From(0)), edit)
            .unwrap_err()
            .to_string();
        assert!(text.starts_with("not written to the journal: "), "{text}");
    }
    journal.append("4").unwrap();
    assert_eq!(reopened(&lock, version("A")).edits, ["1", "2", "3", "4"]);
}

#[test]
fn an_edit_is_one_write_and_only_the_note_of_a_save_waits_for_the_disk() {
    let (_folder, lock) = job();
    let mut journal = journal_of(&lock, &[]);
    let disk = Watched::new(Fault::None);
    journal.append_on(&disk, "1").unwrap();
    assert!(matches!(&disk.done()[..], [Step::Write(line)] if line.ends_with(b" edit 1 1\n")));
    journal.saving_on(&disk, Fingerprint::of(b"B")).unwrap();
    assert!(matches!(&disk.done()[1..], [Step::Write(_), Step::Sync]));
}

#[test]
fn the_tail_is_safe_elsewhere_before_it_is_cut_off() {
    let (_folder, lock) = job();
    drop(journal_of(&lock, &["1"]));
    let path = lock.place().journal();
    let torn = lock.place().torn();
    fs::write(&path, [&*fs::read(&path).unwrap(), b"cut sh"].concat()).unwrap();
    let disk = Watched::new(Fault::None);
    drop(Journal::open_on(&disk, &lock, version("A")).unwrap());
    let temporary = lock.place().folder().join("..glazes.json.journal.torn.tmp");
    let expected = [
        Step::Create(temporary.clone()),
        Step::Write(b"cut sh".to_vec()),
        Step::Sync,
        Step::Rename(temporary, torn),
        Step::SyncFolder,
        Step::Cut,
        Step::Sync,
    ];
    assert_eq!(disk.done(), expected);
}

#[test]
fn a_restart_leaves_an_empty_journal() {
    let (_folder, lock) = job();
    let mut journal = journal_of(&lock, &FIVE);
    journal.restart(version("B")).unwrap();
    journal.append("1").unwrap();
    let flushed = Arc::clone(&journal.shared.lock().unwrap().file);
    assert!(Arc::ptr_eq(&flushed, &journal.open.file));
    let recovered = reopened(&lock, version("B"));
    assert_eq!(
        (recovered.base, &*recovered.edits),
        (version("B"), &["1".to_owned()][..])
    );
    journal.remove().unwrap();
    assert!(!lock.place().journal().exists());
}

#[test]
fn a_syncer_follows_a_restart_on_another_thread() {
    let (_folder, lock) = job();
    let mut journal = journal_of(&lock, &FIVE);
    let mut sync = journal.syncer();
    journal.restart(version("B")).unwrap();
    journal.append("1").unwrap();
    assert_eq!(reopened(&lock, version("B")).edits, ["1"]);
    std::thread::spawn(move || sync().unwrap()).join().unwrap();
}

#[cfg(unix)]
#[test]
fn a_journal_has_the_rights_of_its_job() {
    use std::os::unix::fs::PermissionsExt;
    let (_folder, lock) = job();
    fs::write(lock.place().job(), "A").unwrap();
    fs::set_permissions(lock.place().job(), fs::Permissions::from_mode(0o600)).unwrap();
    drop(journal_of(&lock, &["1"]));
    assert_eq!(
        fs::metadata(lock.place().journal())
            .unwrap()
            .permissions()
            .mode()
            & 0o777,
        0o600
    );
}
