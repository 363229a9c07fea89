//! Whoever follows the printed bench sheet to the letter bores the layout, whatever the saw did to the panels.
//!
//! The sheet is read as text. A panel is laid down as told: an edge toward whoever bores, the foot to a hand; which face is up
//! then follows from the panel alone. The rail is set as told, its index holes counted from the stop. Nothing of the plan is
//! looked at.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use gablerow::job_file;
use gablerow_core::bench::{Times, plan};
use gablerow_core::job::{BandState, Copy, Division, Job, Key, Label, Reference};
use gablerow_core::measure::{Length, Unit};
use gablerow_papers::{HoleRecord, bench_text};
use proptest::prelude::*;

/// Rounding of one printed length, and of two.
const ROUNDING: f64 = 0.051;

/// One line of a set, and what stands above it.
#[derive(Clone, Debug)]
struct Line {
    name: String,
    edge: String,
    foot: String,
    packer: f64,
    /// Index holes of the rail, from 1 at the stop; or distances from the end on the stop.
    places: Places,
    count: usize,
    setting: f64,
    stop: f64,
    end: String,
    diameter: f64,
    depth: Option<f64>,
}

#[derive(Clone, Debug)]
enum Places {
    Index(Vec<i32>),
    Tape(Vec<f64>),
}

/// The number at the start of a text; `~` before it says that it is rounded.
fn number(text: &str) -> f64 {
    let text = text.trim_start_matches('~');
    let end = text
        .find(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
        .unwrap_or(text.len());
    text[..end]
        .parse()
        .unwrap_or_else(|_| panic!("no number: {text}"))
}

fn runs(text: &str) -> Vec<i32> {
    text.split_whitespace()
        .flat_map(|run| match run.split_once('-') {
            Some((first, last)) => first.parse::<i32>().unwrap()..=last.parse().unwrap(),
            None => run.parse().unwrap()..=run.parse().unwrap(),
        })
        .collect()
}

/// The cells of a row under its heading, or behind the words of it where the row is a paragraph.
fn cells(head: &str, row: &str) -> BTreeMap<String, String> {
    if let Some((_, words)) = row.split_once("[ ], ") {
        let names = [
            "this face up",
            "edge",
            "foot",
            "PACKER",
            "holes",
            "on the rail",
            "no.",
        ];
        let cell = |cell: &str| {
            let name = names.iter().find(|name| cell.starts_with(**name)).unwrap();
            ((*name).to_string(), cell[name.len()..].trim().to_string())
        };
        return words.split(", ").map(cell).collect();
    }
    let mut starts: Vec<(usize, String)> = Vec::new();
    for name in head
        .split("  ")
        .map(str::trim)
        .filter(|name| !name.is_empty())
    {
        starts.push((head.find(name).unwrap(), name.to_string()));
    }
    let ends = starts
        .iter()
        .skip(1)
        .map(|(start, _)| *start)
        .chain([row.len()]);
    let cell = |((start, name), end): (&(usize, String), usize)| {
        let cell = row.get(*start..end.min(row.len())).unwrap_or_default();
        (name.clone(), cell.trim().to_string())
    };
    starts.iter().zip(ends).map(cell).collect()
}

/// Every line of the sets of a sheet.
fn read(sheet: &str) -> Vec<Line> {
    let (mut bit, mut stop, mut set, mut head) = ("", "", "", "");
    let mut lines = Vec::new();
    let mut text = sheet.lines().peekable();
    while let Some(line) = text.next() {
        let after = line.get(7..).unwrap_or_default();
        match line.get(..4).unwrap_or_default() {
            "BIT " => bit = after,
            "STOP" => stop = after,
            "SET " => set = after,
            _ if line.trim_start().starts_with("this face up") => head = line,
            _ if line.contains("[ ]")
                && line.trim_start().starts_with(|c: char| c.is_ascii_digit()) =>
            {
                let mut row = line.to_string();
                while row.contains("[ ],")
                    && text.peek().is_some_and(|next| {
                        next.starts_with("   ") && !next.contains("[ ]") && !next.contains("total")
                    })
                {
                    row = row + " " + text.next().unwrap().trim();
                }
                lines.push(line_of(&cells(head, &row), [bit, stop, set]));
            }
            _ => {}
        }
    }
    lines
}

fn line_of(cells: &BTreeMap<String, String>, [bit, stop, set]: [&str; 3]) -> Line {
    let cell = |name: &str| cells.get(name).cloned().unwrap_or_default();
    let (_, bit) = bit.split_once("] ").unwrap();
    let (_, stop) = stop.split_once("] ").unwrap();
    let holes = cell("holes");
    let places = match holes.split_once(": ") {
        Some((_, lengths)) => Places::Tape(lengths.split(' ').map(number).collect()),
        None if cell("on the rail").is_empty() => Places::Index(runs(&holes)),
        None => Places::Index(runs(&cell("on the rail"))),
    };
    let packer = cell("PACKER");
    Line {
        name: cell("this face up"),
        edge: cell("edge"),
        foot: cell("foot"),
        packer: if packer.is_empty() {
            0.0
        } else {
            number(&packer)
        },
        places,
        count: cell("no.").parse().unwrap(),
        setting: number(set),
        stop: number(stop),
        end: stop
            .split_once("push the ")
            .unwrap()
            .1
            .split(' ')
            .next()
            .unwrap()
            .to_string(),
        diameter: number(bit.split_once(' ').unwrap().1),
        depth: bit.split_once("DEPTH ").map(|(_, depth)| number(depth)),
    }
}

/// A hole as it is in a panel: how far from its front edge, how far from its foot, how wide, how deep.
type Hole = (f64, f64, f64, Option<f64>);

/// A panel as the saw left it.
#[derive(Clone, Copy, Debug)]
struct Panel {
    length: f64,
    width: f64,
    /// What is on the front edge yet: less than the finished width by this.
    band_to_come: f64,
}

/// Panels by their names, and the holes wanted in each of their faces.
struct Wanted {
    panels: BTreeMap<String, Panel>,
    faces: BTreeMap<String, Vec<Hole>>,
}

fn mm(length: Length) -> f64 {
    length.exact_mm().to_string().parse().unwrap()
}

fn panel_and_face(record: &HoleRecord<'_>, job: &Job) -> (String, &'static str) {
    let cabinet = job
        .cabinets
        .iter()
        .find(|it| it.name == *record.cabinet)
        .unwrap();
    let copy = match cabinet.copies.len() {
        1 => String::new(),
        _ => format!(" copy {}", record.copy),
    };
    (
        format!("{}{copy} {}", record.cabinet, record.name.panel),
        record.name.word,
    )
}

fn wanted(job: &Job) -> Wanted {
    let band = &job.shop.band;
    let band_to_come = match band.on {
        BandState::BeforeBoring => 0.0,
        BandState::AfterBoring => mm(band.thickness) - mm(band.pre_mill),
    };
    let mut wanted = Wanted {
        panels: BTreeMap::new(),
        faces: BTreeMap::new(),
    };
    for record in HoleRecord::of_job(job) {
        let (panel, face) = panel_and_face(&record, job);
        let size = Panel {
            length: mm(record.from_foot) + mm(record.from_head),
            width: mm(record.from_front) + mm(record.from_back),
            band_to_come,
        };
        let hole = (
            mm(record.from_front),
            mm(record.from_foot),
            mm(record.hole.diameter),
            record.hole.depth.map(mm),
        );
        wanted
            .faces
            .entry(format!("{panel} {face}"))
            .or_default()
            .push(hole);
        wanted.panels.insert(panel, size);
    }
    wanted
}

/// Bores one line into panels that are so much longer and deeper than wanted; gives the face that was up, and its holes.
fn bore(line: &Line, wanted: &Wanted, error: (f64, f64)) -> (String, Vec<Hole>) {
    let (panel, size) = wanted
        .panels
        .iter()
        .filter(|(name, _)| line.name.starts_with(&format!("{name} ")))
        .max_by_key(|(name, _)| name.len())
        .unwrap_or_else(|| panic!("no such panel: {}", line.name));
    // Up is what the right-hand rule has up: forward is away from the edge toward you, the foot is at the hand named.
    let up_is_right = (line.edge == "FRONT") == (line.foot == "RIGHT");
    let is_side = line.name.contains(" side ");
    let face = match (is_side, up_is_right) {
        (true, _) if line.name.contains("left side") == up_is_right => "inside",
        (true, _) => "outside",
        (false, true) => "right face",
        (false, false) => "left face",
    };
    let (length, width) = (size.length + error.0, size.width + error.1);
    let from_end: Vec<f64> = match &line.places {
        Places::Tape(lengths) => lengths.clone(),
        Places::Index(holes) => holes
            .iter()
            .map(|hole| line.stop + 32.0 * f64::from(hole - 1) - line.packer)
            .collect(),
    };
    let x = match line.edge.as_str() {
        "FRONT" => line.setting + size.band_to_come,
        _ => width - line.setting,
    };
    let holes = from_end
        .into_iter()
        .map(|it| if line.end == "FOOT" { it } else { length - it })
        .map(|z| (x, z, line.diameter, line.depth))
        .collect();
    (format!("{panel} {face}"), holes)
}

/// What is wrong with the panels that were bored by this sheet; nothing when all is right but for what the saw did.
///
/// A hole counted from the head is off by the error in length, one worked from the back by the error in width.
fn wrong(sheet: &str, wanted: &Wanted, error: (f64, f64)) -> Vec<String> {
    let mut wrong = Vec::new();
    let mut left = wanted.faces.clone();
    for line in read(sheet) {
        let (face, holes) = bore(&line, wanted, error);
        if face != line.name {
            wrong.push(format!("{face} is up, not {}", line.name));
        }
        if holes.len() != line.count {
            wrong.push(format!(
                "{} holes where {} are said",
                holes.len(),
                line.count
            ));
        }
        let off = (
            if line.edge == "FRONT" { 0.0 } else { error.1 },
            if line.end == "FOOT" { 0.0 } else { error.0 },
        );
        for hole in holes {
            let all = left.entry(face.clone()).or_default();
            let is_it = |one: &Hole| {
                (one.0 + off.0 - hole.0).abs() < ROUNDING
                    && (one.1 + off.1 - hole.1).abs() < 2.0 * ROUNDING
                    && (one.2 - hole.2).abs() < ROUNDING
                    && one.3.map(|it| (it * 10.0).round()) == hole.3.map(|it| (it * 10.0).round())
            };
            match all.iter().position(is_it) {
                Some(at) => drop(all.swap_remove(at)),
                None => wrong.push(format!("{face}: not wanted at {hole:?}")),
            }
        }
    }
    for (face, holes) in left {
        wrong.extend(
            holes
                .iter()
                .map(|hole| format!("{face}: missing at {hole:?}")),
        );
    }
    wrong
}

fn sheet(job: &Job) -> String {
    let keys: Vec<Key> = job.cabinets.iter().map(|it| it.key).collect();
    bench_text(&plan(job, &keys, &Times::default()), job, &[])
}

/// The job files of `tests/jobs`, and the demo.
static JOBS: LazyLock<Vec<Job>> = LazyLock::new(|| {
    let folder = format!("{}/../../tests/jobs", env!("CARGO_MANIFEST_DIR"));
    let files = std::fs::read_dir(folder)
        .unwrap()
        .map(|file| file.unwrap().path());
    let mut files: Vec<_> = files.collect();
    files.sort();
    let jobs = files
        .iter()
        .map(|path| job_file::read(&std::fs::read(path).unwrap()).unwrap());
    jobs.chain([gablerow::demo::job().unwrap()]).collect()
});

/// One of them, of other sizes, in another shop, with a mirrored copy.
fn any_job() -> impl Strategy<Value = Job> {
    let facts = (-300..300_i32, -150..150_i32, -80..80_i32, 0..64_i32);
    let ways = (any::<bool>(), any::<bool>(), any::<bool>(), any::<bool>());
    (0..JOBS.len(), facts, ways).prop_map(|(which, facts, ways)| job_of(which, facts, ways))
}

fn job_of(
    which: usize,
    (height, depth, thickness, offset): (i32, i32, i32, i32),
    (one_stop, band_after, copy, no_rail): (bool, bool, bool, bool),
) -> Job {
    let mut job = JOBS[which].clone();
    job.unit = Unit::Millimetre;
    if one_stop {
        job.shop.reference = Reference::OneStop;
    }
    if band_after {
        job.shop.band.on = BandState::AfterBoring;
    }
    if no_rail {
        job.shop.rail = None;
    }
    let tenth = Length::from_um(100);
    for board in &mut job.cards.boards {
        board.thickness.value += tenth * (thickness / 8);
    }
    for cabinet in &mut job.cabinets {
        cabinet.size.height += Length::from_mm(1) * height;
        cabinet.size.depth += Length::from_mm(1) * depth;
        cabinet.offsets.foot += tenth * offset;
        if copy {
            cabinet.copies.push(Copy {
                key: Key(60_000 + cabinet.key.0),
                name: Label::new("turned").unwrap(),
                mirrored: true,
                as_cut: Vec::new(),
            });
        }
    }
    job
}

#[test]
fn sheet_of_the_glaze_store_bores_its_layout_and_no_mistake_in_it_does() {
    let job = job_file::read(include_bytes!("../jobs/glaze_store_sheet.json")).unwrap();
    let (sheet, wanted) = (sheet(&job), wanted(&job));
    assert_eq!(wrong(&sheet, &wanted, (0.7, -0.4)), Vec::<String>::new());
    assert_eq!(
        read(&sheet).iter().map(|line| line.count).sum::<usize>(),
        46
    );
    let rows: Vec<&str> = sheet
        .lines()
        .filter(|line| line.contains("[ ]  "))
        .collect();
    assert_eq!(rows.len(), 10);
    for row in rows {
        // One word of the row is another one: hand, edge, packer. What follows keeps its column.
        let hand = [("LEFT  ", "RIGHT "), ("RIGHT  ", "LEFT   ")];
        let edge = [("FRONT  ", "BACK   "), ("BACK  ", "FRONT ")];
        let swap = |[one, other]: [(&str, &str); 2]| match row.contains(one.0) {
            true => row.replace(one.0, one.1),
            false => row.replace(other.0, other.1),
        };
        let mut swapped = vec![swap(hand), swap(edge)];
        if row.contains("18.2") {
            swapped.push(row.replace("18.2", "    "));
        }
        for other in swapped {
            assert_ne!(other, row);
            let mistaken = sheet.replace(row, &other);
            assert_ne!(
                wrong(&mistaken, &wanted, (0.0, 0.0)),
                Vec::<String>::new(),
                "{other}"
            );
        }
    }
    let mistaken = sheet.replace("push the FOOT", "push the HEAD");
    assert_ne!(wrong(&mistaken, &wanted, (0.0, 0.0)), Vec::<String>::new());
}

#[test]
fn division_is_in_the_jobs_that_are_bored() {
    let divided = |job: &&Job| {
        job.cabinets
            .iter()
            .any(|it| !matches!(it.opening.division, Division::Bay(_)))
    };
    assert!(JOBS.iter().filter(divided).count() >= 4);
}

proptest! {
    #[test]
    fn whoever_follows_the_sheet_bores_the_layout(
        job in any_job(),
        longer in -2.0..2.0_f64,
        deeper in -2.0..2.0_f64,
    ) {
        let (sheet, wanted) = (sheet(&job), wanted(&job));
        prop_assert_eq!(wrong(&sheet, &wanted, (longer, deeper)), Vec::<String>::new(), "{}", sheet);
    }
}
