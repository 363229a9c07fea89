//! The house rules, read off the source tree.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

const LINES_MOST: usize = 500;
const FUNCTION_LINES_MOST: usize = 70;

/// The floors of core, lowest first; each names only those before it.
const FLOORS: [&[&str]; 7] = [
    &["measure", "label"],
    &["grid", "sum"],
    &["cards"],
    &["job"],
    &["layout"],
    &["check", "history"],
    &["edit", "drawing"],
];

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../..")
        .canonicalize()
        .unwrap()
}

/// Every source file below a folder, with its path from the root and its text.
fn sources(below: &str) -> Vec<(String, String)> {
    let (mut found, mut folders) = (Vec::new(), vec![root().join(below)]);
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|extension| extension == "rs") {
                let name = path.strip_prefix(root()).unwrap().display().to_string();
                found.push((name, fs::read_to_string(&path).unwrap()));
            }
        }
    }
    found.sort();
    assert!(!found.is_empty(), "no source below {below}");
    found
}

fn is_test(name: &str) -> bool {
    let parts = ["tests", "arbitrary", "fixture", "laws", "sample", "schema"];
    name.split(['/', '.']).any(|part| parts.contains(&part)) || name.starts_with("tests/")
}

/// The lines that are neither remarks nor, from `#[cfg(test)]` at the margin on, tests.
fn code(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let lines = text
        .lines()
        .enumerate()
        .take_while(|(_, line)| *line != "#[cfg(test)]");
    lines
        .map(|(at, line)| (at + 1, line))
        .filter(|(_, line)| !line.trim_start().starts_with("//"))
}

/// No line of these files names any of the words.
fn never_names(below: &str, words: &[&str]) {
    for (name, text) in sources(below) {
        if is_test(&name) {
            continue;
        }
        for (at, line) in code(&text) {
            for word in words {
                assert!(!line.contains(word), "{name}:{at} names {word}: {line}");
            }
        }
    }
}

#[test]
fn core_and_papers_know_nothing_of_the_world() {
    never_names(
        "crates/gablerow-core/src",
        &["std::", "serde", "ratatui", "crossterm"],
    );
    never_names(
        "crates/gablerow-papers/src",
        &["std::", "serde", "ratatui", "crossterm"],
    );
    let manifest =
        |name: &str| fs::read_to_string(root().join(format!("crates/{name}/Cargo.toml"))).unwrap();
    let dependencies = |text: &str| {
        let of = text.split("[dependencies]").nth(1).unwrap();
        of.split('[')
            .next()
            .unwrap()
            .lines()
            .filter(|line| line.contains('='))
            .count()
    };
    assert_eq!(dependencies(&manifest("gablerow-core")), 0);
}

#[test]
fn update_and_view_keep_their_rooms() {
    never_names(
        "crates/gablerow/src/update",
        &["crate::view", "crate::store", "crate::terminal", "std::fs"],
    );
    never_names(
        "crates/gablerow/src/view",
        &[
            "crate::update",
            "crate::store",
            "crate::terminal",
            "std::fs",
        ],
    );
    for below in ["app", "action", "keymap", "scene", "field", "size_line"] {
        let name = format!("crates/gablerow/src/{below}.rs");
        let text = fs::read_to_string(root().join(&name)).unwrap();
        for word in ["crate::view", "crate::store", "crate::update", "std::fs"] {
            assert!(
                !code(&text).any(|(_, line)| line.contains(word)),
                "{name} names {word}"
            );
        }
    }
}

#[test]
fn only_the_store_opens_files() {
    for (name, text) in sources("crates/gablerow/src") {
        if is_test(&name) || name.contains("/store/") {
            continue;
        }
        for (at, line) in code(&text) {
            assert!(
                !line.contains("std::fs") && !line.contains("File::"),
                "{name}:{at} opens files: {line}"
            );
        }
    }
}

#[test]
fn each_floor_of_core_names_only_floors_below() {
    for (at, floor) in FLOORS.iter().enumerate() {
        let above: Vec<String> = FLOORS[at + 1..]
            .iter()
            .flat_map(|floor| floor.iter())
            .map(|module| format!("crate::{module}"))
            .collect();
        for module in *floor {
            for (name, text) in sources("crates/gablerow-core/src") {
                let inside = name.contains(&format!("/src/{module}/"))
                    || name.ends_with(&format!("/src/{module}.rs"));
                if !inside || is_test(&name) {
                    continue;
                }
                for (line_at, line) in code(&text) {
                    for word in &above {
                        assert!(
                            !line.contains(word.as_str()),
                            "{name}:{line_at} names {word}, a floor above: {line}"
                        );
                    }
                }
            }
        }
    }
}

#[test]
fn files_and_functions_stay_small_and_say_what_they_are() {
    for (name, text) in sources("crates").into_iter().chain(sources("tests")) {
        let lines: Vec<&str> = text.lines().collect();
        assert!(
            lines.len() <= LINES_MOST,
            "{name} has {} lines",
            lines.len()
        );
        assert!(
            lines[0].starts_with("//!"),
            "{name} does not say what it is"
        );
        let mut start = None;
        for (at, line) in lines.iter().enumerate() {
            let indent = line.len() - line.trim_start().len();
            let words = line.trim_start();
            let begins = [
                "fn ",
                "pub fn ",
                "pub(super) fn ",
                "pub(crate) fn ",
                "const fn ",
                "pub const fn ",
            ];
            if begins.iter().any(|begin| words.starts_with(begin)) {
                start = Some((at, indent));
            }
            if let (Some((first, of)), "}") = (start, words)
                && indent == of
            {
                assert!(
                    at - first < FUNCTION_LINES_MOST,
                    "{name}:{} has {} lines",
                    first + 1,
                    at - first + 1
                );
                start = None;
            }
        }
    }
}

#[test]
fn nothing_is_left_open_and_every_exception_says_why() {
    // Written in two parts, so that this file does not find itself.
    let open = [
        concat!("todo", "!("),
        concat!("unimplemented", "!("),
        concat!("dbg", "!("),
        concat!("#[ig", "nore"),
    ];
    for (name, text) in sources("crates").into_iter().chain(sources("tests")) {
        let lines: Vec<&str> = text.lines().collect();
        for (at, line) in lines.iter().enumerate() {
            for word in open {
                assert!(
                    !line.contains(word),
                    "{name}:{} is left open: {line}",
                    at + 1
                );
            }
            if line.contains(concat!("[all", "ow(")) {
                let before = at.checked_sub(1).map_or("", |before| lines[before]);
                assert!(
                    before.trim_start().starts_with("//"),
                    "{name}:{} does not say why",
                    at + 1
                );
            }
        }
    }
}

#[test]
fn the_code_map_names_every_folder_and_no_other() {
    let text = fs::read_to_string(root().join("DEVELOPERS.md")).unwrap();
    let map = text
        .split("## Code map")
        .nth(1)
        .unwrap()
        .split("```")
        .nth(1)
        .unwrap();
    let named: BTreeSet<String> = map
        .lines()
        .filter_map(|line| line.split_whitespace().next())
        .filter(|word| word.starts_with("crates/"))
        .map(str::to_owned)
        .collect();
    let folder =
        |(name, _): &(String, String)| Path::new(name).parent().unwrap().display().to_string();
    let there: BTreeSet<String> = sources("crates")
        .iter()
        .map(folder)
        .filter(|name| name.contains("/src"))
        .collect();
    let nested = |name: &String| name.matches('/').count() > 3;
    let there: BTreeSet<String> = there.into_iter().filter(|name| !nested(name)).collect();
    assert_eq!(named, there);
}

#[test]
fn the_top_level_holds_what_was_agreed() {
    let agreed = [
        "Cargo.toml",
        "Cargo.lock",
        "README.md",
        "DEVELOPERS.md",
        "crates",
        "assets",
        "tests",
        ".github",
        ".ci",
        ".gitignore",
        ".git",
        "target",
    ];
    for entry in fs::read_dir(root()).unwrap() {
        let name = entry.unwrap().file_name();
        assert!(
            agreed.iter().any(|agreed| name == *agreed),
            "{} at the top level",
            name.display()
        );
    }
}
