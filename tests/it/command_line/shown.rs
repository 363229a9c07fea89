//! Faces, help and the schema as text.

use std::fs;
use std::path::Path;

use gablerow::demo;

use super::{Shop, said, without_stops};

#[test]
fn without_a_terminal_the_demo_is_shown_as_text() {
    let said = Shop::new().run(&[]);
    assert_eq!((said.code, said.err.as_str()), (Some(0), ""));
    let job = demo::job().unwrap();
    assert!(said.out.starts_with(&format!("{}\n", job.title)));
    for cabinet in &job.cabinets {
        for side in ["left", "right"] {
            let face = format!("\n{}, {side} side, inside\n", cabinet.name);
            assert!(said.out.contains(&face), "{face}");
        }
    }
    assert!(
        said.out.contains(" open; 0 overruled, 1 accepted\n"),
        "{}",
        said.out
    );
    assert!(
        said.out.lines().all(|line| line.chars().count() <= 80),
        "{}",
        said.out
    );
}

#[test]
fn without_a_terminal_a_job_is_shown_as_text() {
    let shop = Shop::with(&without_stops());
    let said = shop.run(&["store.json"]);
    assert_eq!((said.code, said.err.as_str()), (Some(0), ""));
    assert!(
        said.out.contains("G1, left side, inside") && !said.out.contains("G2"),
        "{}",
        said.out
    );
    let left: Vec<_> = fs::read_dir(shop.folder.path())
        .unwrap()
        .map(|entry| entry.unwrap().file_name())
        .collect();
    assert_eq!(
        left,
        ["store.json"],
        "looking at a job leaves nothing beside it"
    );
}

#[test]
fn plain_environments_get_plain_text() {
    let shop = Shop::new();
    let of = |variables: &[(&str, &str)], words: &[&str]| {
        said(
            shop.command(words)
                .envs(variables.iter().copied())
                .output()
                .unwrap(),
        )
    };
    for variables in [
        &[][..],
        &[("TERM", "dumb"), ("LANG", "C")],
        &[("NO_COLOR", "1"), ("TERM", "xterm-256color")],
        &[("LC_ALL", "C"), ("LANG", "de_AT.UTF-8")],
    ] {
        for words in [
            &[][..],
            &["--help"],
            &["chek", "--so"],
            &["holes", "none.json"],
        ] {
            let said = of(variables, words);
            assert!(
                said.out.is_ascii() && said.err.is_ascii(),
                "{variables:?} {words:?}"
            );
            assert!(
                !said.out.contains('\u{1b}') && !said.err.contains('\u{1b}'),
                "{variables:?} {words:?}"
            );
        }
    }
    let rich = of(&[("LANG", "de_AT.UTF-8"), ("TERM", "xterm-256color")], &[]);
    assert!(
        rich.out.contains('●') && rich.out.contains('┃') && !rich.out.contains('\u{1b}'),
        "{}",
        rich.out
    );
}

#[test]
fn a_face_is_printed_by_name() {
    let shop = Shop::with(&without_stops());
    let said = shop.run(&["face", "store.json", "g1", "left"]);
    assert_eq!((said.code, said.err.as_str()), (Some(0), ""));
    // Title, edge words, head, 22 holes, foot.
    assert_eq!(said.out.lines().count(), 26, "{}", said.out);
    assert!(said.out.starts_with("G1, left side, inside\n"));
    assert_eq!(
        shop.run(&["face", "store.json", "G1 left side inside"]).out,
        said.out
    );
    let both = shop.run(&["face", "store.json"]).out;
    assert!(both.starts_with(&said.out) && both.contains("\nG1, right side, inside\n"));
}

#[test]
fn a_face_that_is_not_there_is_answered_with_those_that_are() {
    let shop = Shop::with(&without_stops());
    let said = shop.run(&["face", "store.json", "K7"]);
    assert_eq!((said.code, said.out.as_str()), (Some(2), ""));
    assert_eq!(
        said.err,
        "error: no face is called `K7`; the cabinets are G1\n"
    );
}

#[test]
fn help_names_every_word_and_column() {
    let help = Shop::new().run(&["holes", "--help"]).out;
    for word in [
        "partition N",
        "left face",
        "outside",
        "in line",
        "connector",
        "mm_from_head",
        "depth_mm",
    ] {
        assert!(help.contains(word), "{word}\n{help}");
    }
}

#[test]
fn schema_is_the_one_in_the_assets() {
    let said = Shop::new().run(&["schema"]);
    assert_eq!(said.code, Some(0));
    let asset = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../assets/job.schema.json");
    assert_eq!(said.out, fs::read_to_string(asset).unwrap());
}
