//! Papers in a folder: which files there are, what is held back, what is not written over.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use gablerow_core::job::Label;

use super::{Said, Shop, without_stops};

/// Every file of a folder by its name.
fn files(shop: &Shop, folder: &str) -> BTreeMap<String, Vec<u8>> {
    let entries = fs::read_dir(shop.folder.path().join(folder)).unwrap();
    let file = |entry: std::io::Result<fs::DirEntry>| {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_str().unwrap().to_owned();
        (name, fs::read(path).unwrap())
    };
    entries.map(file).collect()
}

/// The names of files that were printed as written.
fn written(said: &Said) -> Vec<&str> {
    let names = said.out.lines().map(|line| {
        let line = line.strip_prefix("written: ").unwrap();
        line.split(',').next().unwrap()
    });
    names.collect()
}

#[test]
fn every_file_of_the_demo_is_named_and_what_is_held_back_too() {
    let shop = Shop::new();
    let said = shop.run(&["papers", "--to", "out"]);
    assert_eq!(said.code, Some(1), "{}", said.err);
    assert!(said.err.starts_with("held back: G3, "), "{}", said.err);
    let files = files(&shop, "out");
    let mut names = written(&said);
    names.sort_unstable();
    assert!(files.keys().eq(names.iter()), "{names:?}");
    let has = |start: &str, end: &str| {
        let is_it = |name: &&String| name.starts_with(start) && name.ends_with(end);
        files.keys().any(|name| is_it(&name))
    };
    for (start, end) in [
        ("glaze-store_bench", ".pdf"),
        ("glaze-store_cut", ".pdf"),
        ("glaze-store_labels", ".pdf"),
        ("glaze-store_G1_holes_rev", ".txt"),
        ("glaze-store_G1_faces_rev", ".pdf"),
        ("glaze-store_G1_left-side-inside_drawing_rev", ".dxf"),
        ("glaze-store_G2_stick_rev", ".pdf"),
    ] {
        assert!(has(start, end), "{start} {end}: {names:?}");
    }
    assert!(!has("glaze-store_G3", ""), "{names:?}");
    assert!(files.iter().all(|(name, bytes)| {
        !bytes.is_empty() && name.ends_with(".pdf") == bytes.starts_with(b"%PDF-")
    }));
    // Nothing else is left lying about.
    let around = fs::read_dir(shop.folder.path()).unwrap().count();
    assert_eq!(around, 1);
}

#[test]
fn two_runs_give_the_same_bytes() {
    let shop = Shop::with(&without_stops());
    let (first, second) = (
        shop.run(&["papers", "store.json", "--to", "a"]),
        shop.run(&["papers", "store.json", "--to", "b"]),
    );
    assert_eq!(
        (first.code, second.code),
        (Some(0), Some(0)),
        "{}",
        first.err
    );
    assert_eq!(files(&shop, "a"), files(&shop, "b"));
    let again = shop.run(&["papers", "store.json", "--to", "a"]);
    assert_eq!(again.code, Some(0));
    assert!(
        again
            .out
            .lines()
            .all(|line| line.starts_with("there already: "))
    );
}

#[test]
fn other_contents_are_written_over_only_when_asked() {
    let shop = Shop::with(&without_stops());
    let words = ["papers", "store.json", "--to", "out", "--only", "cut,bag"];
    let name = written(&shop.run(&words))[0].to_owned();
    let file = shop.folder.path().join("out").join(&name);
    fs::write(&file, "notes of mine").unwrap();
    let said = shop.run(&words);
    assert_eq!(said.code, Some(1));
    assert!(
        said.err.starts_with(&format!("not written: {name}, ")),
        "{}",
        said.err
    );
    assert_eq!(fs::read_to_string(&file).unwrap(), "notes of mine");
    let said = shop.run(&[&words[..], &["--replace"]].concat());
    assert_eq!(said.code, Some(0), "{}", said.err);
    assert!(fs::read(&file).unwrap().starts_with(b"%PDF-"));
}

#[test]
fn names_cannot_lead_out_of_the_folder() {
    let mut job = without_stops();
    job.title = Label::new("../../etc: \\ 釉薬").unwrap();
    let mut other = job.cabinets[0].clone();
    other.key = job.free_cabinet_key();
    other.name = Label::new("a:1").unwrap();
    job.cabinets[0].name = Label::new("A/1").unwrap();
    job.cabinets.push(other);
    let shop = Shop::with(&job);
    let said = shop.run(&["papers", "store.json", "--to", "deep/out"]);
    assert_eq!(said.code, Some(0), "{}", said.err);
    let files = files(&shop, "deep/out");
    assert_eq!(files.len(), written(&said).len());
    for name in files.keys() {
        assert!(name.starts_with("etc_"), "{name}");
    }
    let of = |cabinet: &str| files.keys().filter(|name| name.contains(cabinet)).count();
    assert_eq!(of("_A-1_"), of("_a-1-2_"));
    let mut around: Vec<_> = (fs::read_dir(shop.folder.path()).unwrap())
        .map(|entry| entry.unwrap().file_name())
        .collect();
    around.sort();
    assert_eq!(around, ["deep", "store.json"]);
}

#[test]
fn one_cabinet_and_one_format_are_chosen() {
    let shop = Shop::new();
    let said = shop.run(&[
        "papers",
        "--to",
        "out",
        "--cabinet",
        "g1",
        "--format",
        "svg",
    ]);
    assert_eq!(said.code, Some(0), "{}", said.err);
    let names = written(&said);
    assert!(!names.is_empty());
    for name in names {
        assert!(name.starts_with("glaze-store_G1_"), "{name}");
        assert_eq!(Path::new(name).extension().unwrap(), "svg");
    }
}

#[test]
fn what_makes_no_sense_writes_nothing() {
    let shop = Shop::new();
    for (words, say) in [
        (
            ["--cabinet", "G9"],
            "no cabinet is called `G9`; the cabinets are G1, ",
        ),
        (["--only", "cups"], "cups"),
        (["--format", "doc"], "doc"),
    ] {
        let said = shop.run(&[&["papers", "--to", "out"][..], &words].concat());
        assert_eq!(said.code, Some(2), "{words:?}");
        assert!(said.err.contains(say), "{}", said.err);
    }
    let said = shop.run(&["papers", "--to", "out", "--only", "cut", "--format", "dxf"]);
    assert_eq!(said.code, Some(2));
    assert!(
        said.err.contains("none of these papers is written as dxf"),
        "{}",
        said.err
    );
    assert_eq!(shop.run(&["papers"]).code, Some(2));
    assert_eq!(fs::read_dir(shop.folder.path()).unwrap().count(), 0);
}

#[test]
fn the_list_says_every_kind() {
    let said = Shop::new().run(&["papers", "--list"]);
    assert_eq!(said.code, Some(0));
    assert!(
        said.out.starts_with("bench    what is left to bore"),
        "{}",
        said.out
    );
    assert!(
        said.out.lines().all(|line| line.len() <= 80),
        "{}",
        said.out
    );
}
