//! For tests: what a power cut can leave of the steps that a save really takes.
//!
//! A disk promises little: the bytes of a file are safe once it was flushed, a name once its folder
//! was. Before that, each may be there or not, whatever the order; of bytes that were not flushed
//! none may be there, or half. All that is tried for a cut after every step.

use std::collections::BTreeMap;
use std::path::Path;

use tempfile::tempdir;

use super::save::save_on;
use super::watched::{Fault, Step, Watched};
use super::{Expected, Fingerprint, Journal, Lock};

/// The files of a folder by name, the part of the name behind the job's stem.
type Folder = BTreeMap<String, String>;

/// A change of a name: this file has it now, or none has.
#[derive(Clone)]
enum Naming {
    Set(String, usize),
    Clear(String),
}

/// What one file holds, and how much of that is flushed.
#[derive(Clone, Default)]
struct Content {
    bytes: String,
    flushed: bool,
}

/// The disk as far as it is certain, and what hangs in the air.
struct Model {
    contents: Vec<Content>,
    names: BTreeMap<String, usize>,
    /// Changes of names since the folder was flushed.
    airborne: Vec<Naming>,
}

fn name(path: &Path) -> String {
    path.file_name().unwrap().to_str().unwrap().to_owned()
}

impl Model {
    fn new(folder: &[(&str, &str)]) -> Self {
        let contents = folder.iter().map(|(_, bytes)| Content {
            bytes: (*bytes).to_owned(),
            flushed: true,
        });
        let names = folder
            .iter()
            .enumerate()
            .map(|(file, (name, _))| ((*name).to_owned(), file));
        Self {
            contents: contents.collect(),
            names: names.collect(),
            airborne: Vec::new(),
        }
    }

    /// The names as the running program sees them.
    fn seen(&self) -> BTreeMap<String, usize> {
        self.after(usize::MAX)
    }

    /// The names after a cut that kept those airborne changes whose bit is set.
    fn after(&self, kept: usize) -> BTreeMap<String, usize> {
        let mut names = self.names.clone();
        for (bit, naming) in self.airborne.iter().enumerate() {
            if kept >> bit & 1 == 1 {
                match naming {
                    Naming::Set(name, file) => names.insert(name.clone(), *file),
                    Naming::Clear(name) => names.remove(name),
                };
            }
        }
        names
    }

    fn take(&mut self, step: &Step) {
        match step {
            Step::Create(path) => {
                self.airborne
                    .push(Naming::Set(name(path), self.contents.len()));
                self.contents.push(Content::default());
            }
            Step::Write(bytes) => {
                let content = self.contents.last_mut().unwrap();
                content.bytes += std::str::from_utf8(bytes).unwrap();
                content.flushed = false;
            }
            Step::Cut => unreachable!("no file that takes another's place is cut"),
            Step::Sync => self.contents.last_mut().unwrap().flushed = true,
            Step::Rename(from, to) => {
                let file = self.seen()[&name(from)];
                self.airborne
                    .extend([Naming::Set(name(to), file), Naming::Clear(name(from))]);
            }
            Step::Remove(path) => self.airborne.push(Naming::Clear(name(path))),
            Step::SyncFolder => {
                self.names = self.seen();
                self.airborne.clear();
            }
        }
    }

    /// All that may be found after a cut here.
    fn cuts(&self) -> Vec<Folder> {
        let mut found = Vec::new();
        for kept in 0..1_usize << self.airborne.len() {
            for share in [0, 1, 2] {
                let survives = |file: usize| {
                    let Content { bytes, flushed } = &self.contents[file];
                    if *flushed {
                        bytes.clone()
                    } else {
                        bytes[..bytes.len() * share / 2].to_owned()
                    }
                };
                found.push(
                    self.after(kept)
                        .into_iter()
                        .map(|(name, file)| (name, survives(file)))
                        .collect(),
                );
            }
        }
        found
    }
}

/// The steps of a save of the third version over the second.
fn steps_of_a_save() -> Vec<Step> {
    let folder = tempdir().unwrap();
    let mut lock = Lock::take(&folder.path().join("glazes.json")).unwrap();
    for version in [&b"first"[..], b"second"] {
        super::save(&mut lock, version, Expected::Anything).unwrap();
    }
    let disk = Watched::new(Fault::None);
    save_on(
        &disk,
        &mut lock,
        b"third",
        Expected::Version(Fingerprint::of(b"second")),
    )
    .unwrap();
    disk.done()
}

/// What is wrong after a cut anywhere in these steps; how many outcomes there are.
fn judge_save(steps: &[Step]) -> (Vec<String>, usize) {
    let mut model = Model::new(&[("glazes.json", "second"), ("glazes.json~", "first")]);
    let (mut wrong, mut outcomes) = (Vec::new(), 0);
    let mut look = |model: &Model, jobs: &[&str], backups: &[&str]| {
        for folder in model.cuts() {
            outcomes += 1;
            let holds = |name: &str, allowed: &[&str]| {
                folder.get(name).is_some_and(|b| allowed.contains(&&**b))
            };
            if !holds("glazes.json", jobs) || !holds("glazes.json~", backups) {
                wrong.push(format!("{folder:?}"));
            }
        }
    };
    for step in steps {
        look(&model, &["second", "third"], &["first", "second"]);
        model.take(step);
    }
    look(&model, &["third"], &["second"]);
    (wrong, outcomes)
}

#[test]
fn a_power_cut_anywhere_in_a_save_leaves_whole_files_and_saved_means_saved() {
    let (wrong, outcomes) = judge_save(&steps_of_a_save());
    assert!(
        wrong.is_empty(),
        "{} of {outcomes}: {wrong:#?}",
        wrong.len()
    );
    assert!(outcomes > 100, "{outcomes}");
}

/// The judge is not blind: without any one of the flushes it finds something wrong.
#[test]
fn every_flush_of_a_save_is_needed() {
    let steps = steps_of_a_save();
    let flushes: Vec<usize> = (0..steps.len())
        .filter(|at| matches!(steps[*at], Step::Sync | Step::SyncFolder))
        .collect();
    assert_eq!(flushes.len(), 3);
    for at in flushes {
        let without: Vec<Step> = [&steps[..at], &steps[at + 1..]].concat();
        assert!(
            !judge_save(&without).0.is_empty(),
            "flush {at} is not missed"
        );
    }
}

#[test]
fn a_power_cut_while_a_new_journal_begins_leaves_the_old_one_or_the_new_one() {
    let folder = tempdir().unwrap();
    let lock = Lock::take(&folder.path().join("glazes.json")).unwrap();
    let path = lock.place().journal();
    let (mut journal, _) = Journal::open(&lock, None).unwrap();
    journal.append("edit 1").unwrap();
    let old = std::fs::read_to_string(&path).unwrap();
    let disk = Watched::new(Fault::None);
    journal
        .restart_on(&disk, Some(Fingerprint::of(b"first")))
        .unwrap();
    let new = std::fs::read_to_string(&path).unwrap();

    let mut model = Model::new(&[(".glazes.json.journal", &old)]);
    let mut allowed = vec![&old, &new];
    for step in &disk.done() {
        model.take(step);
        if *step == Step::SyncFolder {
            allowed = vec![&new];
        }
        for folder in model.cuts() {
            assert!(
                allowed.contains(&&folder[".glazes.json.journal"]),
                "{step:?}: {folder:?}"
            );
        }
    }
    assert_eq!(allowed, [&new]);
}
