//! The bench sheet on paper: what is bored, face by face as a picture, and in which order, with boxes to tick and room to write.

use alloc::collections::BTreeSet;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec;
use alloc::vec::Vec;

use gablerow_core::bench::Plan;
use gablerow_core::check::Level;
use gablerow_core::drawing::FaceDrawing;
use gablerow_core::job::{Cabinet, Copy, FaceId, Job, Key};
use gablerow_core::layout::Layout;

use crate::HoleRecord;
use crate::bench_rows::{NO_PACKER, Work, move_note, work};
use crate::bench_sheet::BenchSheet;
use crate::bench_words::{BenchWords, LAY, cautions};
use crate::findings_text::finding_words;
use crate::hole_map::hole_map;
use crate::kinds::copies;
use crate::page::{Page, Paper, TextEnd};
use crate::sheets::{Cell, Column, Row, Sheets};
use crate::small_face::SmallFace;

/// What a blank is in sentences, and what it is on paper, where somebody writes on it.
const BLANK: &str = "____";
const BLANK_ON_PAPER: &str = "__________";

/// The columns of the work: a box, the number of the set-up, and what the sheet of text has.
const COLUMNS: [Column; 9] = [
    ("", TextEnd::Start),
    ("", TextEnd::End),
    ("this face up", TextEnd::Start),
    ("edge", TextEnd::Start),
    ("foot", TextEnd::Start),
    ("PACKER", TextEnd::End),
    ("holes", TextEnd::Start),
    ("on the rail", TextEnd::Start),
    ("no.", TextEnd::End),
];

/// What the signs of the pictures are.
const SIGNS: &str = "Seen with the foot down. The heavy edge is the front. A pin is full, a plate has a diamond around it, a runner a \
    square; what is both is full in a diamond. Numbers are those of holes, counted from the foot; shaded are the ends of fixed panels.";

/// A plan to bore by as sheets.
#[must_use]
pub(crate) fn bench_pages(of: &BenchSheet, paper: Paper) -> Vec<Page> {
    let (job, findings) = (of.job, of.findings);
    let words = BenchWords::of(of.plan, job);
    let mut sheets = Sheets::new(paper, &format!("{}: bench sheet", job.title));
    let stamps = words.stamps();
    sheets.stand_at_foot(&stamps);
    sheets.bold(&stamps);
    if let Some(held) = of.held_words() {
        sheets.bold(&format!("Held back, {held}."));
    }
    let (amount, band, key) = (words.amount(), words.band(), job.unit.key());
    sheets.words(&format!("{amount}. {key} Band {band}."));
    push_lines(&mut sheets, "Record", &words.record());
    if !findings.is_empty() {
        sheets.section("Mind before boring");
        for finding in findings {
            let words = finding_words(job, finding);
            match finding.level {
                Level::Stop => sheets.bold(&words),
                Level::Warn | Level::Note => sheets.words(&words),
            }
        }
    }
    push_faces(&mut sheets, job, of.plan);
    push_tasks(&mut sheets, "First", &words.first());
    push_lines(&mut sheets, "Level", &words.rocks());
    sheets.section("Work");
    sheets.words(&format!("How panels lie: {LAY}"));
    if let Some(note) = move_note(&words.records) {
        sheets.words(&format!("Moved on: {note}"));
    }
    push_work(&mut sheets, &words, job);
    push_tasks(&mut sheets, "Check", &words.checks());
    let map = hole_map(&HoleRecord::of_job(job), job.unit);
    push_lines(
        &mut sheets,
        "Holes, and how far they are from the foot of their panel",
        &map,
    );
    push_lines(&mut sheets, "Mind", &cautions(false));
    sheets.pages()
}

/// A section of things to do; nothing when there are none.
fn push_tasks(sheets: &mut Sheets, title: &str, lines: &[String]) {
    if !lines.is_empty() {
        sheets.section(title);
    }
    for line in lines {
        let line = line.replace(BLANK, BLANK_ON_PAPER);
        let (open, done) = (line.strip_prefix("[ ] "), line.strip_prefix("[x] "));
        match (open, done) {
            (Some(task), _) => sheets.task(task),
            (_, Some(task)) => sheets.words(&format!("Done: {task}")),
            _ => sheets.words(&line),
        }
    }
}

/// A section of sentences; nothing when there are none.
fn push_lines(sheets: &mut Sheets, title: &str, lines: &[String]) {
    if !lines.is_empty() {
        sheets.section(title);
    }
    for line in lines {
        sheets.words(line);
    }
}

/// A section of every face that something is left to bore in; nothing when nothing is.
fn push_faces(sheets: &mut Sheets, job: &Job, plan: &Plan) {
    let builds = job.cabinets.iter().flat_map(|cabinet| {
        [false, true].map(|is_mirrored| faces_left(cabinet, is_mirrored, job, plan))
    });
    let builds: Vec<Vec<SmallFace>> = builds.filter(|faces| !faces.is_empty()).collect();
    if !builds.is_empty() {
        sheets.section("Faces");
        sheets.remark(SIGNS);
    }
    for faces in &builds {
        SmallFace::push(sheets, faces);
    }
}

/// The faces that something is left to bore in on the copies of a cabinet that are built alike, each once, with the copies it is left on.
fn faces_left(cabinet: &Cabinet, is_mirrored: bool, job: &Job, plan: &Plan) -> Vec<SmallFace> {
    let copies_of = cabinet.copies.iter();
    let alike: Vec<&Copy> = copies_of.filter(|it| it.mirrored == is_mirrored).collect();
    let Some(copy) = alike.first() else {
        return Vec::new();
    };
    let set_ups = plan.set_ups.iter();
    let left: BTreeSet<(Key, FaceId)> = set_ups
        .filter(|it| it.cabinet == cabinet.key)
        .map(|it| (it.copy, it.face))
        .collect();
    let layout = Layout::of(&cabinet.built_as(copy), job);
    let picture = |face: FaceId| {
        let of = alike.iter().filter(|it| left.contains(&(it.key, face)));
        let of: Vec<&Copy> = of.copied().collect();
        if of.is_empty() {
            return None;
        }
        let face = FaceDrawing::of(&layout, face, &[])?;
        let mut name = vec![cabinet.name.to_string()];
        // Rows name one copy each, so a picture says which ones it is of.
        if cabinet.copies.len() > 1 {
            name.push(copies(&of));
        }
        name.push(face.name.to_string());
        let mirrored = if is_mirrored { ", mirrored" } else { "" };
        Some(SmallFace::of(name.join(" ") + mirrored, face))
    };
    let faces = layout.uprights.iter().flat_map(|upright| &upright.faces);
    faces.filter_map(|face| picture(face.id)).collect()
}

/// Every set-up, in order, under what is changed before it, and how many holes that are.
fn push_work(sheets: &mut Sheets, words: &BenchWords, job: &Job) {
    let across = |words: &str| {
        let words = words.replace(BLANK, BLANK_ON_PAPER);
        let task = words.strip_prefix("[ ] ");
        vec![Cell::Across {
            is_task: task.is_some(),
            words: task.unwrap_or(&words).to_string(),
        }]
    };
    let mut rows: Vec<Row> = Vec::new();
    for step in work(&words.records, job) {
        match step {
            Work::Bit(words) => rows.push(across(&words)),
            Work::Stop(words) => rows.push(across(&words.replace("[ ] ", "[ ] STOP "))),
            Work::Set(words) => rows.push(across(&format!("SET {words}"))),
            Work::Rows(of_set) => rows.extend(of_set.iter().map(work_row)),
        }
    }
    let holes: usize = words.records.iter().map(|it| it.set_up.holes.count()).sum();
    let columns = COLUMNS.iter().enumerate();
    // What no row says anything of is left out: packers, numbers on the rail.
    let is_said = |at: usize| {
        let nothing = [Cell::words(""), Cell::bold(""), Cell::bold(NO_PACKER)];
        let mut cells = rows.iter().filter_map(|row| row.get(at));
        at == 0 || cells.any(|cell| !nothing.contains(cell))
    };
    let said: Vec<usize> = columns
        .map(|(at, _)| at)
        .filter(|at| is_said(*at))
        .collect();
    let columns: Vec<Column> = said.iter().map(|at| COLUMNS[*at]).collect();
    for row in rows.iter_mut().filter(|row| row.len() == COLUMNS.len()) {
        *row = said.iter().map(|at| row[*at].clone()).collect();
    }
    sheets.table(&columns, &rows);
    sheets.bold(&format!("{holes} holes in all."));
}

/// The number of a set-up stands behind its box; a place the rail is moved to has a box alone.
fn work_row([number, face, edge, foot, packer, holes, rail, count]: &[String; 8]) -> Row {
    let number = number.replace("[ ]", "");
    // What is bored by is heavy: the rail's own numbers, where it has others.
    let holes = match rail.is_empty() {
        true => Cell::bold(holes.as_str()),
        false => Cell::words(holes.as_str()),
    };
    vec![
        Cell::Tick,
        Cell::words(number.trim()),
        Cell::words(face.as_str()),
        Cell::bold(edge.as_str()),
        Cell::bold(foot.as_str()),
        Cell::bold(packer.as_str()),
        holes,
        Cell::bold(rail.as_str()),
        Cell::words(count.as_str()),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{any_job, assert_legible, build_another, drawers, texts, two_bays};
    use crate::page::Mark;
    use gablerow_core::bench::plan;
    use gablerow_core::job::{Depth, Hand, Label};
    use gablerow_core::measure::Length;
    use proptest::prelude::*;

    fn planned(job: &Job) -> Plan {
        let keys: Vec<Key> = job.cabinets.iter().map(|it| it.key).collect();
        plan(job, &keys, &job.shop.bench.times)
    }

    fn pages_of(plan: &Plan, job: &Job, paper: Paper) -> Vec<Page> {
        let of = BenchSheet {
            plan,
            job,
            findings: &gablerow_core::check::of_job(job),
            held_back: &[],
        };
        bench_pages(&of, paper)
    }

    fn pages(job: &Job, paper: Paper) -> Vec<Page> {
        pages_of(&planned(job), job, paper)
    }

    fn said(job: &Job) -> String {
        let pages = pages(job, Paper::A4);
        let texts: Vec<&str> = pages.iter().flat_map(|page| texts(page)).collect();
        texts.join(" ")
    }

    #[test]
    fn every_hole_is_in_a_picture() {
        for mut job in [drawers(), two_bays(Depth::Shop), two_bays(Depth::Through)] {
            let holes = HoleRecord::of_job(&job).len();
            build_another(&mut job, false);
            let pages = pages(&job, Paper::A4);
            let marks = pages.iter().flat_map(|page| &page.marks);
            let rings = marks.filter(|mark| matches!(mark, Mark::Ring { .. }));
            assert_eq!(rings.count(), holes);
        }
    }

    #[test]
    fn what_is_done_is_in_no_picture_and_pictures_name_the_copies_that_are_left() {
        let mut job = drawers();
        build_another(&mut job, false);
        let mut plan = planned(&job);
        let said = |plan: &Plan| {
            let pages = pages_of(plan, &job, Paper::A4);
            let texts: Vec<&str> = pages.iter().flat_map(|page| texts(page)).collect();
            texts.join(" ")
        };
        assert!(said(&plan).contains("A1 copies 1 and 2 left side, inside"));
        let first = job.cabinets[0].copies[0].key;
        let left = FaceId::inside(Hand::Left);
        plan.set_ups
            .retain(|it| it.copy != first || it.face != left);
        assert!(said(&plan).contains("A1 copy 2 left side, inside"));
        plan.set_ups.retain(|it| it.face != left);
        let of_right = said(&plan);
        assert!(!of_right.contains("2 left side, inside"));
        assert!(of_right.contains("A1 copies 1 and 2 right side, inside"));
        plan.set_ups.clear();
        assert!(!said(&plan).contains("Faces"));
    }

    #[test]
    fn where_any_panel_has_a_packer_every_other_says_that_it_has_none() {
        let words = |job: &Job| {
            let pages = pages(job, Paper::A4);
            let said = pages.iter().flat_map(|page| texts(page));
            let count = |words: &str| said.clone().filter(|it| *it == words).count();
            (count("PACKER"), count(NO_PACKER))
        };
        assert_eq!(words(&drawers()), (0, 0));
        let job = two_bays(Depth::Shop);
        let plan = planned(&job);
        let rests = plan.set_ups.iter().map(|it| it.rest.packer);
        let without = rests.filter(|packer| *packer == Length::ZERO).count();
        assert!(0 < without && without < plan.set_ups.len());
        let (heads, none) = words(&job);
        assert!(heads > 0);
        assert_eq!(none, without);
    }

    #[test]
    fn what_is_bored_by_is_heavy() {
        let row = |rail: &str| {
            let row = [
                "1 [ ]",
                "A1 left side inside",
                "FRONT",
                "RIGHT",
                "none",
                "20-19",
                rail,
                "2",
            ];
            work_row(&row.map(String::from))
        };
        assert_eq!(row("1-2")[6..8], [Cell::words("20-19"), Cell::bold("1-2")]);
        assert_eq!(row("")[6], Cell::bold("20-19"));
    }

    #[test]
    fn one_cabinet_takes_two_sheets_at_most() {
        for job in [drawers(), two_bays(Depth::Shop)] {
            for paper in [Paper::A4, Paper::Letter] {
                assert!(pages(&job, paper).len() <= 2);
            }
        }
    }

    #[test]
    fn a_helper_finds_state_order_checks_and_cautions() {
        let said = said(&drawers());
        for words in [
            "ALREADY ON",
            "A1 left side, inside",
            "SET 37.0 from the edge toward you",
            "diagonals differ by __________",
            "eyes and ears covered",
        ] {
            assert!(said.contains(words), "{words} is not in {said}");
        }
        assert!(!said.contains("[ ]"), "{said}");
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(48))]

        #[test]
        fn every_bench_sheet_is_legible(
            mut job in any_job(),
            name in "[A-Za-z漢Ж]{1,40}",
            paper in prop::sample::select(Paper::ALL.to_vec()),
        ) {
            let name = Label::new(&name).unwrap();
            job.title = name.clone();
            job.cabinets[0].name = name;
            for page in pages(&job, paper) {
                assert_legible(&page);
            }
        }
    }
}
