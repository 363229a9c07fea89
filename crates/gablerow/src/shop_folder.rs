//! Where the shop's file lies, and the way there and back.

use std::ffi::OsString;
use std::path::{Path, PathBuf};

use anyhow::Context;

use crate::job_file;
use crate::shop_file::ShopFile;
use crate::store::{self, Expected, Lock};

/// A variable of the environment by its name.
pub type Environment<'a> = &'a dyn Fn(&str) -> Option<OsString>;

/// Where the shop's file lies.
#[derive(Clone, Debug)]
pub struct ShopFolder {
    path: Option<PathBuf>,
}

/// How a system keeps a person's configuration.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum System {
    Windows,
    Mac,
    Other,
}

const SYSTEM: System = if cfg!(windows) {
    System::Windows
} else if cfg!(target_os = "macos") {
    System::Mac
} else {
    System::Other
};

/// The file in the user's configuration folder; `None` where the environment names no such folder.
fn path_on(system: System, environment: Environment<'_>) -> Option<PathBuf> {
    // A relative path would lie somewhere else each time the program is started.
    let folder = |name: &str| {
        environment(name)
            .map(PathBuf::from)
            .filter(|path| path.is_absolute())
    };
    let home = || folder("HOME");
    let base = match system {
        System::Windows => folder("APPDATA"),
        System::Mac => home().map(|home| home.join("Library/Application Support")),
        System::Other => {
            folder("XDG_CONFIG_HOME").or_else(|| home().map(|home| home.join(".config")))
        }
    };
    base.map(|base| base.join("gablerow").join("shop.json"))
}

impl ShopFolder {
    /// The place that the environment names.
    #[must_use]
    pub fn of(environment: Environment<'_>) -> Self {
        Self {
            path: path_on(SYSTEM, environment),
        }
    }

    /// What the shop keeps; nothing where no file is.
    ///
    /// # Errors
    /// The file cannot be read, or is no shop file: where, and what.
    pub fn read(&self) -> anyhow::Result<ShopFile> {
        let path = self.path.as_deref();
        match path.filter(|path| path.exists()) {
            Some(path) => Ok(read(path)?.0),
            None => Ok(ShopFile::default()),
        }
    }

    /// Puts something into the file, beside what it holds by now; gives all of it, and where it lies.
    ///
    /// # Errors
    /// - the environment names no folder;
    /// - the file is there and cannot be read: it is left as it is;
    /// - the disk refuses.
    pub fn keep(&self, kept: ShopFile) -> anyhow::Result<(ShopFile, PathBuf)> {
        let none = "not kept: the system names no folder for what a program keeps";
        let path = self.path.clone().context(none)?;
        store::make_folder_of(&path)?;
        let mut lock = Lock::take(&path)?;
        let (before, expected) = match path.exists() {
            true => {
                let (before, version) = read(&path)?;
                (before, Expected::Version(version))
            }
            false => (ShopFile::default(), Expected::Absent),
        };
        let after = before.with(kept);
        store::save(
            &mut lock,
            job_file::write_shop_file(&after).as_bytes(),
            expected,
        )?;
        Ok((after, path))
    }
}

fn read(path: &Path) -> anyhow::Result<(ShopFile, store::Fingerprint)> {
    let (bytes, version) = store::read(path)?;
    // What is wrong comes first: a path may be longer than a line of the screen.
    let said = |error| anyhow::anyhow!("shop file: {error}; in {}", path.display());
    let file = job_file::read_shop_file(&bytes).map_err(said)?;
    Ok((file, version))
}

#[cfg(test)]
mod tests {
    use super::*;
    use gablerow_core::cards::{Card, CardKind};
    use gablerow_core::job::Job;
    use gablerow_core::label::Label;

    #[test]
    fn the_file_lies_where_each_system_keeps_such_files() {
        let root = if cfg!(windows) { "C:\\" } else { "/" };
        let absolute = |path: &str| PathBuf::from(root).join(path);
        let path = |system, variables: &[(&str, PathBuf)]| {
            path_on(system, &|name| {
                let found = variables.iter().find(|(other, _)| *other == name);
                found.map(|(_, path)| path.clone().into_os_string())
            })
        };
        let home = ("HOME", absolute("home/kim"));
        let xdg = ("XDG_CONFIG_HOME", absolute("conf"));
        let appdata = ("APPDATA", absolute("data"));
        let all = [home.clone(), xdg, appdata];
        let file = |folder: &str| Some(absolute(folder).join("gablerow").join("shop.json"));
        assert_eq!(path(System::Other, &all), file("conf"));
        assert_eq!(
            path(System::Other, std::slice::from_ref(&home)),
            file("home/kim/.config")
        );
        assert_eq!(
            path(System::Mac, &all),
            file("home/kim/Library/Application Support")
        );
        assert_eq!(path(System::Windows, &all), file("data"));
        assert_eq!(path(System::Windows, &[home]), None);
        let relative = ("XDG_CONFIG_HOME", PathBuf::from("conf"));
        assert_eq!(path(System::Other, &[relative]), None);
    }

    fn folder_in(folder: &Path) -> ShopFolder {
        ShopFolder {
            path: Some(folder.join("new").join("gablerow").join("shop.json")),
        }
    }

    fn card(kind: CardKind) -> Card {
        let job = Job::plain(Label::new("kiln room").unwrap());
        job.cards.card(&job.cards.names(kind)[0]).unwrap()
    }

    #[test]
    fn what_is_kept_is_read_again_beside_what_was_there() {
        let root = tempfile::tempdir().unwrap();
        let shop = folder_in(root.path());
        assert_eq!(shop.read().unwrap(), ShopFile::default());
        let pin = ShopFile::of_card(card(CardKind::Pin));
        let (after, path) = shop.keep(pin.clone()).unwrap();
        assert_eq!((after, path.exists()), (pin.clone(), true));
        let rail = ShopFile::of_card(card(CardKind::Rail));
        let (after, _) = shop.keep(rail.clone()).unwrap();
        assert_eq!(after, pin.with(rail));
        assert_eq!(shop.read().unwrap(), after);
    }

    #[test]
    fn a_broken_file_says_where_and_what_and_is_left_as_it_is() {
        let root = tempfile::tempdir().unwrap();
        let shop = folder_in(root.path());
        let pin = ShopFile::of_card(card(CardKind::Pin));
        let (_, path) = shop.keep(pin.clone()).unwrap();
        let text = std::fs::read_to_string(&path).unwrap();
        let broken = text.replacen("\"rise\": [2.5", "\"rise\": [-2.5", 1);
        assert_ne!(broken, text);
        std::fs::write(&path, &broken).unwrap();
        for error in [shop.read().unwrap_err(), shop.keep(pin).unwrap_err()] {
            let said = error.to_string();
            assert!(
                said.starts_with(
                    "shop file: line 6, column 85: cards.pins[0].rise: card value: -2.5, but it is 0 to 2000 mm; in "
                ),
                "{said}"
            );
            assert!(said.ends_with("shop.json"), "{said}");
        }
        assert_eq!(std::fs::read_to_string(&path).unwrap(), broken);
    }

    #[test]
    fn without_a_folder_nothing_is_kept_and_it_is_said() {
        let shop = ShopFolder::of(&|_| None);
        assert_eq!(shop.read().unwrap(), ShopFile::default());
        let error = shop.keep(ShopFile::default()).unwrap_err();
        assert!(error.to_string().starts_with("not kept: "), "{error}");
    }
}
