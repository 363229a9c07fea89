//! The house rules, read off the source tree.

use std::collections::BTreeSet;
use std::fs;

use self::source::{Source, read, root, sources};

pub(crate) mod source;

const LINES_MOST: usize = 500;
const FUNCTION_LINES_MOST: usize = 70;

/// The floors of core, lowest first; each names only itself and those before it.
const FLOORS: [&[&str]; 12] = [
    &["measure", "label", "source", "cautions", "counted"],
    &["grid", "sum"],
    &["cards"],
    &["strength", "solve"],
    &["job"],
    &["layout"],
    &["parts", "stamp"],
    &["bench"],
    &["check", "history"],
    &["edit", "drawing", "elevation"],
    &["propose", "figures"],
    &["mend"],
];

/// What each room of the program does not name.
const ROOMS: [(&str, &[&str]); 16] = [
    ("update", &["view", "store", "terminal"]),
    ("view", &["update", "store", "terminal"]),
    ("app", &["update", "view", "store"]),
    ("action", &["update", "view", "store"]),
    ("keymap", &["update", "view", "store"]),
    ("scene", &["update", "view", "store"]),
    ("field", &["update", "view", "store"]),
    ("size_line", &["update", "view", "store"]),
    ("at_bench", &["update", "view", "store"]),
    ("card_line", &["update", "view", "store"]),
    ("echo", &["update", "view", "store"]),
    ("papers_at", &["update", "view", "store"]),
    ("paper_preview", &["update", "view", "store"]),
    ("released", &["update", "view", "store"]),
    ("shop_file", &["update", "view", "store"]),
    ("job_file", &["update", "view", "store", "terminal"]),
];

/// What papers may depend on beside core, as it stands in their manifest: PDF files are written object by object, pressed, and hold a font
/// cut down to what is used; how wide a text is on a sheet of text is a table that is not ours.
const PAPERS_BESIDE_CORE: [&str; 5] = [
    "miniz_oxide",
    "pdf-writer",
    "subsetter",
    "unicode-segmentation",
    "unicode-width",
];

/// Fails with every breach of a rule, not the first alone.
fn hold(rule: &str, breaches: &[String]) {
    assert!(
        breaches.is_empty(),
        "{rule}; {} times not:\n{}",
        breaches.len(),
        breaches.join("\n")
    );
}

/// Whether a path is a module, or something in it.
fn is_in(path: &str, module: &str) -> bool {
    path.strip_prefix(module)
        .is_some_and(|rest| rest.is_empty() || rest.starts_with("::"))
}

/// Where a file names one of these modules.
fn named(source: &Source, modules: &[String]) -> Vec<String> {
    let mut found = Vec::new();
    for (line, path) in source.paths() {
        if modules.iter().any(|module| is_in(&path, module)) {
            found.push(format!("{}:{line} names {path}", source.name));
        }
    }
    found
}

fn of_crate(modules: &[&str]) -> Vec<String> {
    modules
        .iter()
        .map(|module| format!("crate::{module}"))
        .collect()
}

/// What a crate is built from: every table of dependencies but those of tests.
fn dependencies(manifest: &str) -> Vec<String> {
    let mut found = Vec::new();
    let mut listed = false;
    for line in manifest.lines().map(str::trim) {
        if let Some(table) = line.strip_prefix('[') {
            listed = table.contains("dependencies") && !table.contains("dev-dependencies");
        } else if listed && !line.is_empty() && !line.starts_with('#') {
            let name = line.split(['.', '=', ' ']).next().unwrap_or(line);
            found.push(name.to_owned());
        }
    }
    found
}

#[test]
fn crates_are_built_from_what_was_agreed() {
    let core = dependencies(&read("crates/gablerow-core/Cargo.toml"));
    assert_eq!(
        core,
        ["libm"],
        "core is built from roots of numbers and nothing else"
    );
    let papers = dependencies(&read("crates/gablerow-papers/Cargo.toml"));
    let agreed: Vec<&str> = ["gablerow-core"]
        .into_iter()
        .chain(PAPERS_BESIDE_CORE)
        .collect();
    assert_eq!(papers, agreed, "papers are built from core");
}

#[test]
fn core_and_papers_know_nothing_of_the_world() {
    let world = [
        "std",
        "serde",
        "serde_json",
        "ratatui",
        "crossterm",
        "gablerow",
        "anyhow",
        "clap",
    ];
    let world: Vec<String> = world.into_iter().map(str::to_owned).collect();
    for folder in ["crates/gablerow-core/src", "crates/gablerow-papers/src"] {
        let breaches: Vec<String> = sources(folder)
            .iter()
            .flat_map(|source| named(source, &world))
            .collect();
        hold("core and papers are pure", &breaches);
    }
}

#[test]
fn the_rooms_of_the_program_keep_apart() {
    let all = sources("crates/gablerow/src");
    for (room, others) in ROOMS {
        let inside: Vec<&Source> = all.iter().filter(|source| source.room() == room).collect();
        assert!(
            !inside.is_empty(),
            "no room {room}; the table of rooms is old"
        );
        let breaches: Vec<String> = inside
            .iter()
            .flat_map(|source| named(source, &of_crate(others)))
            .collect();
        hold(
            &format!("{room} never names {}", others.join(", ")),
            &breaches,
        );
    }
}

#[test]
fn each_floor_of_core_names_only_floors_below() {
    let all = sources("crates/gablerow-core/src");
    for source in all
        .iter()
        .filter(|source| !source.code.is_empty() && source.room() != "")
    {
        let floor = FLOORS
            .iter()
            .position(|floor| floor.contains(&source.room().as_str()));
        let Some(floor) = floor else {
            panic!("{} stands on no floor: give it one", source.name)
        };
        let above: Vec<&str> = FLOORS[floor + 1..].concat();
        hold(
            "a floor names no floor above",
            &named(source, &of_crate(&above)),
        );
    }
}

#[test]
fn only_the_store_opens_files() {
    let files = ["std::fs", "fs::File", "File", "OpenOptions"].map(str::to_owned);
    let all = sources("crates");
    // A benchmark is no part of the program.
    let in_program = |source: &&Source| !source.name.contains("/benches/");
    let outside = all
        .iter()
        .filter(in_program)
        .filter(|it| it.room() != "store");
    let breaches: Vec<String> = outside.flat_map(|source| named(source, &files)).collect();
    hold("only the store opens files", &breaches);
}

#[test]
fn a_frame_depends_on_the_state_alone() {
    let state = ["std::time", "std::cell", "std::sync", "Instant"].map(str::to_owned);
    let all = sources("crates/gablerow/src");
    for source in all.iter().filter(|source| source.room() == "view") {
        let mut breaches = named(source, &state);
        let lines = source.code.lines().enumerate();
        for (at, line) in lines.filter(|(_, line)| line.trim_start().starts_with("static ")) {
            breaches.push(format!("{}:{} keeps {}", source.name, at + 1, line.trim()));
        }
        hold("a view keeps nothing and knows no clock", &breaches);
    }
}

#[test]
fn files_and_functions_stay_small_and_say_what_they_are() {
    let mut breaches = Vec::new();
    for source in sources("crates").iter().chain(&sources("tests")) {
        let (name, lines) = (&source.name, source.text.lines().count());
        if lines > LINES_MOST {
            breaches.push(format!("{name}:{lines} is its last line"));
        }
        if !source.text.starts_with("//!") {
            breaches.push(format!("{name}:1 does not say what the file is"));
        }
        for (line, function, long) in source.functions() {
            if long > FUNCTION_LINES_MOST {
                breaches.push(format!("{name}:{line} {function} has {long} lines"));
            }
        }
    }
    hold(
        &format!(
            "a file has at most {LINES_MOST} lines and a function {FUNCTION_LINES_MOST}, and a file says what it is"
        ),
        &breaches,
    );
}

#[test]
fn nothing_is_left_open_and_every_exception_says_why() {
    let mut breaches = Vec::new();
    for source in sources("crates").iter().chain(&sources("tests")) {
        let lines: Vec<&str> = source.text.lines().collect();
        for (at, line) in source.bare.lines().enumerate() {
            let place = format!("{}:{}", source.name, at + 1);
            for word in ["todo!", "unimplemented!", "dbg!", "#[ignore"] {
                if line.contains(word) {
                    breaches.push(format!("{place} is left open: {}", line.trim()));
                }
            }
            if is_exception(line) && !says_why(&lines, at) {
                breaches.push(format!("{place} does not say why: {}", line.trim()));
            }
        }
    }
    hold(
        "nothing is left open, and every exception says why",
        &breaches,
    );
}

/// Whether an attribute that turns a lint off begins on this line.
fn is_exception(line: &str) -> bool {
    let line = line.trim_start();
    (line.starts_with("#[") || line.starts_with("#!["))
        && (line.contains("allow(") || line.contains("expect("))
}

/// Whether an exception has a remark on the line before or after it, on its own, or a `reason`.
fn says_why(lines: &[&str], at: usize) -> bool {
    let end = (at..lines.len())
        .find(|&line| lines[line].contains(']'))
        .unwrap_or(at);
    let remark = |line: usize| {
        lines
            .get(line)
            .is_some_and(|line| line.trim_start().starts_with("// "))
    };
    let own = &lines[at..=end];
    at.checked_sub(1).is_some_and(remark)
        || remark(end + 1)
        || own
            .iter()
            .any(|line| line.contains("// ") || line.contains("reason ="))
}

#[test]
fn the_code_map_names_every_folder_and_no_other() {
    let text = read("DEVELOPERS.md");
    let map = text.split("## Code map").nth(1);
    let map = map.expect("DEVELOPERS.md has no section `## Code map`");
    let map = map
        .split("```")
        .nth(1)
        .expect("the code map stands between ``` and ```");
    let named: BTreeSet<&str> = map
        .lines()
        .filter_map(|line| line.split_whitespace().next())
        .filter(|word| word.contains('/'))
        .collect();
    let folder = |source: &Source| {
        source
            .name
            .rsplit_once('/')
            .map_or("", |(folder, _)| folder)
            .to_owned()
    };
    let all = sources("crates");
    let in_src = |folder: &String| format!("{folder}/").contains("/src/");
    let there: BTreeSet<String> = all.iter().map(folder).filter(in_src).collect();
    let built = all.iter().filter(|source| !source.code.is_empty());
    let needed: BTreeSet<String> = built.map(folder).filter(in_src).collect();

    let mut breaches = Vec::new();
    for name in needed.iter().map(String::as_str) {
        if !named.contains(name) {
            breaches.push(format!("{name}: not on the map"));
        }
    }
    for name in named {
        if !there.contains(name) {
            breaches.push(format!("{name}: on the map, but there is no such folder"));
        }
    }
    hold(
        "DEVELOPERS.md's code map names the folders there are",
        &breaches,
    );
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
    ];
    // Not part of the project: what version control and the compiler leave.
    let beside = [".git", "target"];
    let there: Vec<String> = fs::read_dir(root())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().display().to_string())
        .collect();
    let known = |name: &str| agreed.contains(&name) || beside.contains(&name);
    let more: Vec<String> = there.iter().filter(|name| !known(name)).cloned().collect();
    hold("the top level holds nothing else", &more);
    let missing = agreed
        .iter()
        .filter(|name| !there.iter().any(|there| there == *name));
    let missing: Vec<String> = missing.map(ToString::to_string).collect();
    hold("the top level holds what was agreed", &missing);
}

mod the_reader {
    //! The rules are worth what their reader sees.

    use super::source::Source;
    use super::{dependencies, is_exception, says_why};

    #[test]
    fn sees_through_groups_and_from_where_it_stands() {
        let text = "use crate::{app, view::{self, words as w}};\nuse super::super::store::save;\nfn f() { self::g::<u8>() }\n";
        let source = Source::new("crates/x/src/update/line.rs", text);
        let paths: Vec<String> = source.paths().into_iter().map(|(_, path)| path).collect();
        let expected = [
            "crate::app",
            "crate::view::self",
            "crate::view::words",
            "crate::store::save",
            "crate::update::line::g",
        ];
        assert_eq!(paths, expected);
        assert_eq!(source.paths()[3].0, 2);
    }

    #[test]
    fn passes_over_tests_but_reads_on_behind_them() {
        let text = "#[cfg(test)]\nmod fixture;\nuse crate::view::a;\n#[cfg(all(test, unix))]\nmod tests {\n    use crate::b::c;\n}\nuse crate::d;\n";
        let source = Source::new("crates/x/src/app.rs", text);
        let expected = [(3, "crate::view::a".into()), (8, "crate::d".into())];
        assert_eq!(source.paths(), expected);
    }

    #[test]
    fn passes_over_remarks_and_texts() {
        let text = "// crate::a::b\nlet (s, c, l) = (\"crate::c::d \\\" {\", '{', r#\"\"{\"#);\nfn f<'a>(x: &'a u8) {}\n";
        let source = Source::new("crates/x/src/app.rs", text);
        assert_eq!(source.paths(), []);
        assert_eq!(source.functions(), [(3, "f", 1)]);
    }

    #[test]
    fn measures_a_function_whole_with_what_is_nested_in_it() {
        let text = "pub(in crate::a) const fn outer(\n    x: [u8; 2],\n) {\n    fn inner() {\n    }\n    let y: fn(u8);\n}\nfn declared();\n";
        let source = Source::new("crates/x/src/app.rs", text);
        assert_eq!(
            source.functions(),
            [(1, "outer", 7), (4, "inner", 2), (8, "declared", 1)]
        );
    }

    #[test]
    fn finds_exceptions_and_their_reasons() {
        let bare = ["#![allow(dead_code)]"];
        assert!(is_exception(bare[0]) && !says_why(&bare, 0));
        assert!(says_why(&["// Because.", "#[allow(dead_code)]"], 1));
        assert!(says_why(&["#[allow(dead_code)]", "// Because."], 0));
        assert!(says_why(
            &["#[expect(", "    dead_code,", "    reason = \"so\"", ")]"],
            0
        ));
    }

    #[test]
    fn lists_every_table_a_crate_is_built_from() {
        let manifest = "[dependencies]\na.workspace = true\n[dev-dependencies]\nb = \"1\"\n[target.'cfg(unix)'.dependencies]\nc = \"1\"\n";
        assert_eq!(dependencies(manifest), ["a", "c"]);
    }
}
