//! What it will not do, and how it says so.

use std::fs;

use gablerow::job_file;

use super::{Shop, without_stops};

#[test]
fn a_mistyped_command_is_not_taken_for_a_file() {
    let shop = Shop::with(&without_stops());
    for words in [
        &["chek"][..],
        &["chek", "store.json"],
        &["chek", "--json", "store.json"],
    ] {
        let said = shop.run(words);
        assert_eq!((said.code, said.out.as_str()), (Some(2), ""), "{words:?}");
        assert_eq!(
            said.err, "error: chek: no such file and no such command; did you mean `check`?\n",
            "{words:?}"
        );
    }
    let said = shop.run(&["kitchen"]);
    assert_eq!(said.code, Some(2));
    assert!(
        said.err
            .contains("commands are face, check, rules, holes, parts, bench, papers, schema"),
        "{}",
        said.err
    );
    // A file of that name is one.
    shop.put("chek", &job_file::write(&without_stops()));
    assert_eq!(shop.run(&["chek"]).code, Some(0));
}

#[test]
fn words_that_make_no_sense_end_with_2() {
    let shop = Shop::with(&without_stops());
    for words in [
        &["face"][..],
        &["check", "store.json", "--csv"],
        &["holes", "store.json", "--json", "--csv"],
        &["--sideways"],
        &["store.json", "store.json"],
        &["store.json", "check"],
        &["schema", "store.json"],
    ] {
        let said = shop.run(words);
        assert_eq!((said.code, said.out.as_str()), (Some(2), ""), "{words:?}");
        assert!(said.err.starts_with("error: "), "{words:?} {}", said.err);
    }
}

#[test]
fn a_hyphen_is_no_file() {
    for words in [&["-"][..], &["check", "-"], &["holes", "-", "--csv"]] {
        let said = Shop::new().run(words);
        assert_eq!(said.code, Some(2));
        assert!(
            said.err
                .contains("- is no file, and nothing is read from the standard input"),
            "{}",
            said.err
        );
    }
}

#[test]
fn a_missing_job_is_named() {
    let shop = Shop::new();
    for words in [
        &["none.json"][..],
        &["check", "none.json"],
        &["holes", "none.json"],
        &["face", "none.json"],
    ] {
        let said = shop.run(words);
        assert_eq!((said.code, said.out.as_str()), (Some(2), ""), "{words:?}");
        assert!(
            said.err.starts_with(
                "error: not read: none.json: there is no file of that name; check its name"
            ),
            "{}",
            said.err
        );
        assert!(
            said.err.ends_with("; check its name and its folder\n"),
            "{}",
            said.err
        );
    }
}

#[test]
fn an_unreadable_job_is_shown_with_its_place() {
    let text = job_file::write(&without_stops()).replace("\"height\": 704", "\"height\": 20000");
    let shop = Shop::new();
    shop.put("store.json", &text);
    let at = text
        .lines()
        .position(|line| line.contains("20000"))
        .unwrap()
        + 1;
    for words in [&["store.json"][..], &["check", "store.json", "--json"]] {
        let said = shop.run(words);
        assert_eq!((said.code, said.out.as_str()), (Some(2), ""));
        let lines: Vec<&str> = said.err.lines().collect();
        assert!(
            lines[0].starts_with("error: cabinets[0].size.height: ") && lines[0].contains("20000"),
            "{}",
            said.err
        );
        assert!(
            lines[1].contains(&format!("--> store.json:{at}:")),
            "{}",
            said.err
        );
        let (under, above) = (lines[4].chars().position(|c| c == '^').unwrap(), lines[3]);
        assert!(
            above
                .chars()
                .skip(under)
                .collect::<String>()
                .starts_with("20000"),
            "{}",
            said.err
        );
    }
}

#[test]
fn a_folder_is_no_job() {
    let shop = Shop::new();
    fs::create_dir(shop.folder.path().join("jobs")).unwrap();
    let said = shop.run(&["check", "jobs"]);
    assert_eq!(said.code, Some(2));
    assert!(
        said.err.contains("a folder stands there, not a plain file"),
        "{}",
        said.err
    );
}

/// Random-looking words and files must end with a code and a sentence, never with a panic.
#[test]
fn no_words_and_no_file_make_it_panic() {
    let shop = Shop::with(&without_stops());
    shop.put("empty.json", "");
    shop.put("deep.json", &"[".repeat(100_000));
    shop.put("text.json", "not a job at all");
    shop.put("esc.json", "{\"format\": \"\u{1b}[2J\"}");
    let files = [
        "empty.json",
        "deep.json",
        "text.json",
        "esc.json",
        "store.json",
        "",
        "..",
        "/",
        "a\u{1b}b.json",
    ];
    for file in files {
        for words in [
            &[file][..],
            &["face", file],
            &["check", file],
            &["holes", file, "--csv"],
            &["face", file, ",", "\u{1b}"],
        ] {
            let said = shop.run(words);
            assert!(
                matches!(said.code, Some(0..=2)),
                "{words:?} {:?}",
                said.code
            );
            assert!(
                !said.err.contains("panicked") && !said.err.contains('\u{1b}'),
                "{words:?} {}",
                said.err
            );
            assert_eq!(
                said.code == Some(2),
                said.err.starts_with("error: "),
                "{words:?} {}",
                said.err
            );
        }
    }
}
