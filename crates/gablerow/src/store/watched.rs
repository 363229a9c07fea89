//! For tests: the real disk, with somebody watching who can let any step fail.

use std::cell::RefCell;
use std::fs::{File, Metadata};
use std::io;
use std::path::{Path, PathBuf};

use super::fs::{Access, Disk, Fs};

/// One step that changes the disk, as it was asked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Step {
    Create(PathBuf),
    Write(Vec<u8>),
    Cut,
    Sync,
    Rename(PathBuf, PathBuf),
    Remove(PathBuf),
    SyncFolder,
}

/// Which steps fail.
#[derive(Clone, Copy, Debug)]
pub(super) enum Fault {
    None,
    /// The step with this number, counted from 0 and from all that were asked for.
    Once(usize),
    /// That one and all after it.
    From(usize),
}

/// A disk that notes what was asked of it.
pub(super) struct Watched {
    fault: Fault,
    /// How many steps were asked for, those that only look included.
    asked: RefCell<usize>,
    /// What was done to the disk. Writes and syncs are of the file created last.
    done: RefCell<Vec<Step>>,
    failed: RefCell<Vec<&'static str>>,
}

impl Watched {
    pub(super) fn new(fault: Fault) -> Self {
        Self {
            fault,
            asked: RefCell::default(),
            done: RefCell::default(),
            failed: RefCell::default(),
        }
    }

    pub(super) fn done(&self) -> Vec<Step> {
        self.done.borrow().clone()
    }

    /// The names of the steps that failed.
    pub(super) fn failed(&self) -> Vec<&'static str> {
        self.failed.borrow().clone()
    }

    fn step(&self, name: &'static str) -> io::Result<()> {
        let number = self.asked.replace_with(|asked| *asked + 1);
        let fails = match self.fault {
            Fault::None => false,
            Fault::Once(at) => number == at,
            Fault::From(at) => number >= at,
        };
        if fails {
            self.failed.borrow_mut().push(name);
            return Err(io::Error::other("the disk is broken"));
        }
        Ok(())
    }

    fn note(&self, step: Step) {
        self.done.borrow_mut().push(step);
    }
}

impl Fs for Watched {
    fn look(&self, path: &Path) -> io::Result<Option<Metadata>> {
        self.step("look")?;
        Disk.look(path)
    }

    fn open(&self, path: &Path, access: Access) -> io::Result<File> {
        self.step("open")?;
        Disk.open(path, access)
    }

    fn create_new(&self, path: &Path, like: Option<&Metadata>) -> io::Result<File> {
        self.step("create")?;
        let file = Disk.create_new(path, like)?;
        self.note(Step::Create(path.to_path_buf()));
        Ok(file)
    }

    fn read(&self, file: &File, bytes_max: u64) -> io::Result<Vec<u8>> {
        self.step("read")?;
        Disk.read(file, bytes_max)
    }

    /// A write that fails has written half.
    fn write(&self, file: &File, bytes: &[u8]) -> io::Result<()> {
        if let Err(error) = self.step("write") {
            Disk.write(file, &bytes[..bytes.len() / 2])?;
            return Err(error);
        }
        self.note(Step::Write(bytes.to_vec()));
        Disk.write(file, bytes)
    }

    fn cut(&self, file: &File, bytes: u64) -> io::Result<()> {
        self.step("cut")?;
        self.note(Step::Cut);
        Disk.cut(file, bytes)
    }

    fn sync(&self, file: &File) -> io::Result<()> {
        self.step("sync")?;
        self.note(Step::Sync);
        Disk.sync(file)
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.step("rename")?;
        self.note(Step::Rename(from.to_path_buf(), to.to_path_buf()));
        Disk.rename(from, to)
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        self.step("remove")?;
        self.note(Step::Remove(path.to_path_buf()));
        Disk.remove(path)
    }

    fn sync_folder(&self, folder: &Path) -> io::Result<()> {
        self.step("sync folder")?;
        self.note(Step::SyncFolder);
        Disk.sync_folder(folder)
    }
}
