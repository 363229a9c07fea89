//! Rust source as the house rules read it: code without remarks, texts and tests, and the paths it names.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

/// The folder that holds the whole project.
pub(super) fn root() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    here.canonicalize().unwrap()
}

/// The text of a file of the project.
pub(super) fn read(name: &str) -> String {
    fs::read_to_string(root().join(name)).unwrap()
}

/// One source file.
#[derive(Debug)]
pub(crate) struct Source {
    /// Its path from the root of the project.
    pub(crate) name: String,
    /// All of it.
    pub(crate) text: String,
    /// The same, line by line, with remarks and the inside of texts blank.
    pub(super) bare: String,
    /// What is compiled outside tests: `bare` with test items blank; nothing in a file of tests.
    pub(super) code: String,
}

impl Source {
    pub(super) fn new(name: &str, text: &str) -> Self {
        let bare = without_remarks(text);
        Self {
            name: name.to_owned(),
            text: text.to_owned(),
            code: without_tests(&bare),
            bare,
        }
    }

    /// Where it is in its crate: `crates/x/src/update/line.rs` is `update`, `line`.
    fn module(&self) -> Vec<String> {
        let (_, below) = self.name.split_once("/src/").unwrap_or(("", &self.name));
        let below = below.trim_end_matches(".rs");
        let mut module: Vec<String> = below.split('/').map(str::to_owned).collect();
        if matches!(
            module.last().map(String::as_str),
            Some("mod" | "lib" | "main")
        ) {
            module.pop();
        }
        module
    }

    /// The floor or room it belongs to: the first part of its path within the crate.
    pub(super) fn room(&self) -> String {
        self.module().first().cloned().unwrap_or_default()
    }

    /// Every path its code names, braces expanded and `self` and `super` resolved, with the line it begins on.
    pub(super) fn paths(&self) -> Vec<(usize, String)> {
        let module = self.module();
        let mut found = Vec::new();
        let mut at = 0;
        while at < self.code.len() {
            let word = ident(&self.code[at..]);
            let after = &self.code[at + word.len()..];
            if !word.is_empty() && after.starts_with("::") {
                let mut paths = Vec::new();
                let end = tree(&self.code, at, &mut Vec::new(), &mut paths);
                let line = line_of(&self.code, at);
                found.extend(paths.iter().map(|path| (line, resolved(path, &module))));
                at = end;
            } else {
                let step = after.chars().next().map_or(1, char::len_utf8);
                at += word.len().max(if word.is_empty() { step } else { 0 });
            }
        }
        found
    }

    /// Its functions, tests and nested ones too: first line, name, number of lines.
    pub(super) fn functions(&self) -> Vec<(usize, &str, usize)> {
        let mut found = Vec::new();
        for (at, _) in self.bare.match_indices("fn ") {
            let name = ident(&self.bare[at + 3..]);
            let inside_word = self.bare[..at].ends_with(|c: char| c.is_alphanumeric() || c == '_');
            if inside_word || name.is_empty() {
                continue;
            }
            let end = item_end(&self.bare, at);
            let (first, last) = (line_of(&self.bare, at), line_of(&self.bare, end - 1));
            found.push((first, name, last - first + 1));
        }
        found
    }
}

/// Every source file below a folder. Files that only tests declare have no code.
pub(crate) fn sources(below: &str) -> Vec<Source> {
    let (mut found, mut folders) = (Vec::new(), vec![root().join(below)]);
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|extension| extension == "rs") {
                let name = path.strip_prefix(root()).unwrap().display().to_string();
                found.push(Source::new(&name, &fs::read_to_string(&path).unwrap()));
            }
        }
    }
    assert!(!found.is_empty(), "no source below {below}");
    found.sort_by(|a, b| a.name.cmp(&b.name));
    let tests: BTreeSet<String> = found.iter().flat_map(test_files).collect();
    for source in &mut found {
        let stem = source.name.trim_end_matches(".rs");
        if tests
            .iter()
            .any(|test| stem == test || stem.starts_with(&format!("{test}/")))
        {
            source.code = String::new();
        }
    }
    found
}

/// The line number of a place in a text, from 1.
fn line_of(text: &str, at: usize) -> usize {
    text[..at].matches('\n').count() + 1
}

/// The name that a text begins with; empty when it begins with none.
fn ident(text: &str) -> &str {
    let end = text
        .find(|c: char| !c.is_alphanumeric() && c != '_')
        .unwrap_or(text.len());
    &text[..end]
}

/// Where the item that begins at `at` is over: behind its `;` or its closing brace.
fn item_end(text: &str, at: usize) -> usize {
    let mut depth = 0;
    for (step, c) in text[at..].char_indices() {
        match c {
            '(' | '[' | '{' => depth += 1,
            ')' | ']' | '}' => depth -= 1,
            _ => {}
        }
        if depth == 0 && matches!(c, ';' | '}') {
            return at + step + 1;
        }
    }
    text.len()
}

/// Reads one path or group of paths; gives where it ends.
fn tree(text: &str, at: usize, before: &mut Vec<String>, found: &mut Vec<String>) -> usize {
    let skip = |at: usize| at + (text[at..].len() - text[at..].trim_start().len());
    let mut at = skip(at);
    if text[at..].starts_with('{') {
        at = skip(at + 1);
        while !text[at..].starts_with('}') && at < text.len() {
            at = skip(tree(text, at, &mut before.clone(), found));
            let next = text[at..].find([',', '}']).map_or(text.len(), |to| at + to);
            at = skip(next + usize::from(text[next..].starts_with(',')));
        }
        return (at + 1).min(text.len());
    }
    let word = ident(&text[at..]);
    at += word.len();
    if !word.is_empty() {
        before.push(word.to_owned());
    }
    let rest = &text[at..];
    if rest.starts_with("::") && !rest.starts_with("::<") && !rest.starts_with("::*") {
        return tree(text, at + 2, before, found);
    }
    found.push(before.join("::"));
    at
}

/// A path as seen from the root of its crate.
fn resolved(path: &str, module: &[String]) -> String {
    let mut parts = path.split("::").peekable();
    let mut base = module.to_vec();
    match parts.peek() {
        Some(&"self") => drop(parts.next()),
        Some(&"super") => {}
        _ => return path.to_owned(),
    }
    while parts.next_if_eq(&"super").is_some() {
        base.pop();
    }
    let whole = ["crate".to_owned()].into_iter().chain(base);
    let whole: Vec<String> = whole.chain(parts.map(str::to_owned)).collect();
    whole.join("::")
}

/// The attributes that keep what follows them out of the program: where each begins and ends.
fn test_attributes(bare: &str) -> Vec<(usize, usize)> {
    let attributes = bare.match_indices("#[cfg(").filter_map(|(at, _)| {
        let end = at + bare[at..].find(']')? + 1;
        let words = &bare[at..end];
        (words.contains("test") && !words.contains("not(test")).then_some((at, end))
    });
    attributes.collect()
}

fn without_tests(bare: &str) -> String {
    let mut code = bare.to_owned();
    for (at, end) in test_attributes(bare) {
        let item = item_end(bare, end);
        let item = if bare[end..].trim_start().starts_with("#[") {
            item_end(bare, end + bare[end..].find(']').map_or(0, |to| to + 1))
        } else {
            item
        };
        code.replace_range(at..item, &blank(&bare[at..item]));
    }
    code
}

/// The files, without `.rs`, that a file declares for tests only.
fn test_files(source: &Source) -> Vec<String> {
    let stem = source.name.trim_end_matches(".rs");
    let own = ["/mod", "/lib", "/main"]
        .iter()
        .find_map(|end| stem.strip_suffix(end));
    let folder = own.unwrap_or(stem);
    let declared = test_attributes(&source.bare)
        .into_iter()
        .filter_map(|(_, end)| {
            let item = &source.bare[end..item_end(&source.bare, end)];
            let (_, name) = item.trim_end_matches(';').split_once("mod ")?;
            (item.ends_with(';') && name == ident(name)).then(|| format!("{folder}/{name}"))
        });
    declared.collect()
}

/// As long as it was, with all but line ends blank.
fn blank(text: &str) -> String {
    text.bytes()
        .map(|byte| if byte == b'\n' { '\n' } else { ' ' })
        .collect()
}

/// Remarks and the inside of texts and characters made blank; every other byte stays where it is.
fn without_remarks(text: &str) -> String {
    let mut bare = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let in_word = bare.ends_with(|c: char| c.is_alphanumeric() || c == '_');
        let hidden = match first {
            '/' if rest.starts_with("//") => rest.find('\n').unwrap_or(rest.len()),
            '/' if rest.starts_with("/*") => rest.find("*/").map_or(rest.len(), |to| to + 2),
            'r' if !in_word => raw_text(rest),
            '"' => quoted(rest, '"'),
            '\'' => character(rest),
            _ => 0,
        };
        if hidden == 0 {
            bare.push(first);
            rest = &rest[first.len_utf8()..];
        } else {
            bare.push_str(&blank(&rest[..hidden]));
            rest = &rest[hidden..];
        }
    }
    bare
}

/// The length of the quoted text that `rest` begins with.
fn quoted(rest: &str, quote: char) -> usize {
    let mut escaped = false;
    for (at, c) in rest.char_indices().skip(1) {
        match c {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            _ if c == quote => return at + 1,
            _ => {}
        }
    }
    rest.len()
}

/// The length of the raw text that `rest` begins with; 0 when it begins with none.
fn raw_text(rest: &str) -> usize {
    let marks = rest[1..].len() - rest[1..].trim_start_matches('#').len();
    if !rest[1 + marks..].starts_with('"') {
        return 0;
    }
    let close = format!("\"{}", "#".repeat(marks));
    let inside = &rest[marks + 2..];
    inside
        .find(&close)
        .map_or(rest.len(), |to| marks + 2 + to + close.len())
}

/// The length of the character that `rest` begins with; 0 when it is a lifetime.
fn character(rest: &str) -> usize {
    let mut chars = rest.chars().skip(1);
    match (chars.next(), chars.next()) {
        (Some('\\'), _) | (Some(_), Some('\'')) => quoted(rest, '\''),
        _ => 0,
    }
}
