//! Which files come of a job.

use std::collections::BTreeSet;

use gablerow_core::bench::bored_by;
use gablerow_core::cards::{CardId, RailKind};
use gablerow_core::check;
use gablerow_core::job::{Copy, Depth, Key, Label};
use gablerow_core::layout::Layout;

use super::*;
use crate::fixture::{texts, two_bays};
use crate::page::Paper;

/// All files of a job, kind by kind, with the open stops of the cabinets named and of no other.
fn files_held(job: &Job, held: &[&str]) -> Vec<(Kind, PaperFile)> {
    let found = |cabinet: &Cabinet| {
        let mut found = check::of_cabinet(job, cabinet, &Layout::of(cabinet, job));
        let is_held = held.contains(&cabinet.name.as_str());
        found.retain(|finding| is_held || !finding.is_open_stop());
        found
    };
    let chosen: Vec<_> = job.cabinets.iter().map(|it| (it, found(it))).collect();
    let printer = Printer {
        job,
        chosen: &chosen,
        paper: Paper::A4,
    };
    let all = Kind::ALL
        .iter()
        .flat_map(|kind| kind.formats().iter().map(move |it| (*kind, *it)));
    all.flat_map(|(kind, format)| {
        let files = printer.files(kind, format);
        files.into_iter().map(move |file| (kind, file))
    })
    .collect()
}

fn files(job: &Job) -> Vec<(Kind, PaperFile)> {
    files_held(job, &[])
}

fn named(title: &str, names: [&str; 2]) -> Job {
    let mut job = two_bays(Depth::Shop);
    job.title = Label::new(title).unwrap();
    let mut second = job.cabinets[0].clone();
    second.key = Key(900);
    job.cabinets.truncate(1);
    job.cabinets.push(second);
    for (cabinet, name) in job.cabinets.iter_mut().zip(names) {
        cabinet.name = Label::new(name).unwrap();
        cabinet.copies.truncate(1);
        let key = Key(950);
        let copy = Copy {
            key,
            name: Label::new("2").unwrap(),
            mirrored: true,
            as_cut: Vec::new(),
        };
        cabinet.copies.push(copy);
    }
    job
}

#[test]
fn no_two_files_share_a_name_and_all_names_are_safe() {
    for (title, names) in [
        ("glaze store", ["G1", "G2"]),
        ("..", ["A/1", "a:1"]),
        ("釉薬の棚", ["棚", "釉"]),
        ("CON", ["nul", "NUL"]),
        (&"x".repeat(60), [&"y".repeat(60), &"y".repeat(59)]),
    ] {
        let files = files(&named(title, names));
        let names: BTreeSet<String> = files
            .iter()
            .map(|(_, file)| file.name.to_ascii_lowercase())
            .collect();
        assert_eq!(names.len(), files.len(), "{title}");
        for name in names {
            let (stem, ending) = name.split_once('.').unwrap();
            let is_safe = |c: char| c.is_ascii_alphanumeric() || "-_".contains(c);
            assert!(stem.chars().all(is_safe) && !ending.contains('.'), "{name}");
            // A device of a disk's own has no `_` in its name.
            assert!(stem.contains('_') && name.len() < 200, "{name}");
        }
    }
}

#[test]
fn copies_that_a_disk_cannot_tell_apart_have_files_of_their_own() {
    for names in [["Л", "П"], ["a", "A"], [&"x".repeat(41), &"x".repeat(42)]] {
        let mut job = named("glaze store", ["G1", "G2"]);
        for cabinet in &mut job.cabinets {
            for (copy, name) in cabinet.copies.iter_mut().zip(names) {
                copy.name = Label::new(name).unwrap();
            }
        }
        let files = files(&job);
        let all = files.iter().map(|(_, file)| file.name.to_ascii_lowercase());
        assert_eq!(all.collect::<BTreeSet<_>>().len(), files.len(), "{names:?}");
    }
}

#[test]
fn mirrored_copies_are_drawn_for_themselves() {
    let files = files(&named("glaze store", ["G1", "G2"]));
    let of = |kind| files.iter().filter(move |(it, _)| *it == kind).count();
    // Two cabinets, two builds, in PDF, text and ASCII.
    assert_eq!(of(Kind::Faces), 12);
    assert!(
        files
            .iter()
            .any(|(_, it)| it.name.contains("_G1_copy-2_faces_rev1-"))
    );
}

#[test]
fn a_cabinet_with_an_open_stop_is_on_no_paper_for_boring() {
    let mut job = named("glaze store", ["G1", "G2"]);
    job.cabinets[1].size.width = gablerow_core::measure::Length::ZERO;
    let files = files_held(&job, &["G2"]);
    let of_g2 = |kind: &Kind, file: &PaperFile| kind.is_for_boring() && file.name.contains("_G2_");
    assert!(!files.iter().any(|(kind, file)| of_g2(kind, file)));
    assert!(files.iter().any(|(_, file)| file.name.contains("_G1_")));
    assert!(files.iter().any(|(kind, _)| *kind == Kind::Cut));
}

#[test]
fn a_machine_has_its_table_when_it_is_the_rail() {
    let mut job = named("glaze store", ["G1", "G2"]);
    let of = |job: &Job| {
        files(job)
            .iter()
            .filter(|(it, _)| *it == Kind::Machine)
            .count()
    };
    assert_eq!(of(&job), 0);
    let Some(rail) = job.cards.rails.first_mut() else {
        panic!("no rail")
    };
    rail.kind = RailKind::MachineBed;
    let id: CardId = rail.id.clone();
    job.shop.rail = Some(id);
    assert_eq!(of(&job), 2);
}

#[test]
fn two_runs_give_the_same_bytes() {
    let job = named("glaze store", ["G1", "G2"]);
    assert_eq!(files(&job), files(&job));
}

#[test]
fn what_is_written_as_ascii_is_ascii_whatever_things_are_called() {
    let job = named("Glasur 釉", ["Übe\u{301}r", "漢"]);
    let ascii = |(_, file): &(Kind, PaperFile)| file.name.ends_with(".asc");
    let files: Vec<_> = files(&job).into_iter().filter(ascii).collect();
    let kinds: BTreeSet<&str> = files.iter().map(|(kind, _)| kind.word()).collect();
    assert_eq!(kinds, BTreeSet::from(["bench", "faces", "holes"]));
    for (kind, file) in files {
        assert!(file.bytes.is_ascii(), "{kind:?}");
        // A letter is one column, and an ideograph two.
        let text = String::from_utf8(file.bytes).unwrap();
        assert!(text.contains("?b?r") || text.contains("??"), "{text}");
    }
}

/// The words of a text, one blank between each two.
fn in_a_row(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What a kind comes to in a format, printed.
fn printed(job: &Job, kind: Kind, format: Format) -> Printed {
    let chosen: Vec<_> = job.cabinets.iter().map(|it| (it, Vec::new())).collect();
    let printer = Printer {
        job,
        chosen: &chosen,
        paper: Paper::A4,
    };
    let planned = printer.plan(kind, format).remove(0);
    printer.print(&planned).unwrap()
}

#[test]
fn what_is_left_to_bore_is_on_the_sheet_of_text_and_on_that_of_paper_alike() {
    let mut job = named("glaze store", ["G1", "G2"]);
    let keys: Vec<Key> = job.cabinets.iter().map(|it| it.key).collect();
    let all = plan_left(&job, &[], &keys, &job.shop.bench.times);
    let (bored, left) = all.set_ups.split_at(all.set_ups.len() / 2);
    let record = bored.iter().flat_map(|it| bored_by(it, &job));
    let record: Vec<_> = record.collect();
    let holes: usize = all.set_ups.iter().map(|it| it.holes.count()).sum();
    let said = format!(
        "{} of {holes} holes are bored; this sheet is of what is left",
        record.len()
    );
    job.bored = record;
    let Printed::Text(text) = printed(&job, Kind::Bench, Format::Text) else {
        panic!("no text");
    };
    let pages = printed(&job, Kind::Bench, Format::Pdf);
    let on_paper: Vec<&str> = pages.pages().iter().flat_map(texts).collect();
    let on_paper = in_a_row(&on_paper.join(" "));
    assert!(text.contains(&said), "{text}");
    assert!(on_paper.contains(&said), "{on_paper}");
    // The number of a set-up, its face, edge, hand, packer and holes. That a panel has no packer is left out where none of its set has.
    let without_none = |text: &str| text.replace(" none ", " ");
    let on_paper = without_none(&on_paper);
    let rows = text.lines().filter(|line| line.contains(" [ ]  "));
    let rows: Vec<String> = rows.map(|row| in_a_row(&row.replace("[ ]", ""))).collect();
    assert_eq!(rows.len(), left.len());
    for row in rows {
        let row = without_none(&row);
        assert!(on_paper.contains(&row), "{row} is not in {on_paper}");
    }
}
