//! The set-ups of the bench sheet: bit and depth, stop, setting, said where they change, and a row for each panel laid down.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::ops::Range;

use gablerow_core::bench::{Held, Holes, Position, SetUp, Tool};
use gablerow_core::job::{End, Job};
use gablerow_core::measure::{Length, Unit};

use crate::bench_records::SetUpRecord;
use crate::bench_text::push_rule;
use crate::text::{WIDTH, columns, push_indented, push_line, run_words, worded};

/// What stands over the columns of a row.
const HEAD: [&str; 8] = [
    "",
    "this face up",
    "edge",
    "foot",
    "PACKER",
    "holes",
    "on rail",
    "no.",
];

/// Where `HEAD` has what is bored, after how the panel lies.
const HOLES: usize = 5;

/// Where `HEAD` has what is left out when no row says anything there.
const PACKER: usize = 4;
const ON_THE_RAIL: usize = 6;

/// What stands under `PACKER` where there is none.
pub(crate) const NO_PACKER: &str = "none";

/// What is before the second line of a row.
const BELOW: &str = "            ";

/// What is said below the heading of a rail that has to be moved.
const MOVE: &str = "where a row goes on with PINS or TAPE, the rail is moved along the panel, which stays as it lies: pins go \
    through its index holes that are named first into the holes named then, bored already; by tape its index hole 1 is put there.";

/// A step of the order of work.
pub(crate) enum Work {
    /// Another bit, or another depth.
    Bit(String),
    /// Another stop, or another end on it.
    Stop(String),
    /// The rail is set.
    Set(String),
    /// What is bored at that setting.
    Rows(Vec<[String; 8]>),
}

/// Every set-up, in order, under what is changed before it.
pub(crate) fn work(records: &[SetUpRecord<'_>], job: &Job) -> Vec<Work> {
    let unit = job.unit;
    let tool = |it: &SetUpRecord<'_>| it.set_up.tool;
    let stop = |it: &SetUpRecord<'_>| (it.set_up.rest.end, it.set_up.rest.stop);
    let setting = |it: &SetUpRecord<'_>| it.set_up.setting.total();
    let mut before: Option<Length> = None;
    let mut steps = Vec::new();
    for of_tool in records.chunk_by(|a, b| tool(a) == tool(b)) {
        if let Some(first) = of_tool.first() {
            steps.push(Work::Bit(tool_words(&tool(first), job)));
        }
        for of_stop in of_tool.chunk_by(|a, b| stop(a) == stop(b)) {
            if let Some(first) = of_stop.first() {
                steps.push(Work::Stop(stop_words(stop(first), unit)));
            }
            for of_setting in of_stop.chunk_by(|a, b| setting(a) == setting(b)) {
                let Some(first) = of_setting.first() else {
                    continue;
                };
                let words = setting_words(setting(first), before, unit);
                steps.push(Work::Set(words));
                before = Some(setting(first));
                let rows = of_setting.iter().flat_map(|it| rows_of(it, unit));
                steps.push(Work::Rows(rows.collect()));
            }
        }
    }
    steps
}

/// What has to be known where a rail is moved; nothing where none is.
pub(crate) fn move_note(records: &[SetUpRecord<'_>]) -> Option<&'static str> {
    let mut places = records.iter().flat_map(|it| &it.set_up.positions);
    places.any(is_moved).then_some(MOVE)
}

/// Adds every set-up, in order, and how many holes that are.
pub(crate) fn push_set_ups(out: &mut String, records: &[SetUpRecord<'_>], job: &Job) {
    push_rule(out);
    if let Some(note) = move_note(records) {
        push_indented(out, "MOVE   ", "       ", note);
    }
    for step in work(records, job) {
        match step {
            Work::Bit(words) => push_indented(out, "BIT    ", "       ", &words),
            Work::Stop(words) => push_indented(out, "STOP   ", "       ", &words),
            Work::Set(words) => push_indented(out, "SET    ", "       ", &words),
            Work::Rows(rows) => push_rows(out, &rows),
        }
    }
    let total: usize = records.iter().map(|it| it.set_up.holes.count()).sum();
    push_line(out, "", &format!("{:>WIDTH$}", format!("total {total}")));
}

fn is_moved(at: &Position) -> bool {
    at.held != Held::Stop
}

/// The bit, its depth, and what the test hole was, where there was one of that depth.
fn tool_words(tool: &Tool, job: &Job) -> String {
    let bit = tool.bit.word().to_uppercase();
    let diameter = tool.diameter.bit(job.unit);
    let Some(depth) = tool.depth else {
        return format!("[ ] {bit} {diameter}, THROUGH, scrap under the panel");
    };
    let tested = job
        .shop
        .bench
        .test_depth
        .filter(|_| depth == job.shop.depth);
    let test = tested.map(|test| test.show(job.unit).to_string());
    let test = test.unwrap_or_else(|| "____".to_string());
    format!(
        "[ ] {bit} {diameter}, DEPTH {}, test hole {test}",
        depth.show(job.unit)
    )
}

fn stop_words((end, stop): (End, Length), unit: Unit) -> String {
    let end = end.word().to_uppercase();
    format!("[ ] {}; push the {end} against it", stop.show(unit))
}

/// The setting, and by how much that is another than before.
fn setting_words(setting: Length, before: Option<Length>, unit: Unit) -> String {
    let words = format!("{} from the edge toward you", setting.show(unit));
    match before.map(|before| setting - before) {
        Some(by) if by > Length::ZERO => format!("{words}, {} further", by.show(unit)),
        Some(by) if by < Length::ZERO => format!("{words}, {} nearer", (-by).show(unit)),
        _ => words,
    }
}

/// Adds the rows of a set, each in a line; where one is too long, in two: how the panel lies, and below it what is bored.
fn push_rows(out: &mut String, rows: &[[String; 8]]) {
    let is_said = |at: &usize| {
        let may_be_left_out = [PACKER, ON_THE_RAIL].contains(at);
        let mut cells = rows.iter().map(|row| row[*at].as_str());
        !may_be_left_out || cells.any(|cell| !["", NO_PACKER].contains(&cell))
    };
    let head = |which: Range<usize>| which.filter(is_said).map(|at| HEAD[at]).collect::<Vec<_>>();
    let cells = |row: &[String; 8], which: Range<usize>| {
        let said = which.filter(is_said).map(|at| row[at].clone());
        said.collect::<Vec<_>>()
    };
    let table = |which: Range<usize>| {
        let rows: Vec<_> = rows.iter().map(|row| cells(row, which.clone())).collect();
        columns(WIDTH - 1, &head(which), &rows)
    };
    if let Some(lines) = table(0..HEAD.len()) {
        lines.iter().for_each(|line| push_line(out, " ", line));
        return;
    }
    let lines = table(0..HOLES).unwrap_or_default();
    let mut lines = lines.iter();
    if let Some(head) = lines.next() {
        push_line(out, " ", head);
    }
    for row in rows {
        match lines.next() {
            Some(line) => push_line(out, " ", line),
            // A name that leaves no room for anything else.
            None => {
                let lies = worded(&head(0..HOLES), &cells(row, 0..HOLES));
                push_indented(out, " ", BELOW, &lies);
            }
        }
        push_indented(out, BELOW, BELOW, &worded(&HEAD[HOLES..], &row[HOLES..]));
    }
}

/// How the panel is laid down and what is bored first; below it a row for each place the rail is moved to.
fn rows_of(record: &SetUpRecord<'_>, unit: Unit) -> Vec<[String; 8]> {
    let set_up = record.set_up;
    let packer = match set_up.rest.packer {
        Length::ZERO => NO_PACKER.to_string(),
        packer => packer.show(unit).to_string(),
    };
    let (holes, on_the_rail, count) = match &set_up.holes {
        Holes::ByTape(lengths) => (
            tape_words(set_up, lengths, unit),
            String::new(),
            lengths.len(),
        ),
        Holes::Runs(_) => {
            let first = set_up.positions.first().filter(|at| !is_moved(at));
            first.map_or_else(Default::default, |at| at_position(set_up, at))
        }
    };
    let mut rows = Vec::from([[
        format!("{:>3} [ ]", record.order),
        record.panel(),
        set_up.edge.word().to_uppercase(),
        set_up.foot_to.word().to_uppercase(),
        packer,
        holes,
        on_the_rail,
        count.to_string(),
    ]]);
    for at in set_up.positions.iter().filter(|at| is_moved(at)) {
        let (holes, on_the_rail, count) = at_position(set_up, at);
        rows.push([
            "    [ ]".to_string(),
            move_words(set_up, at, unit),
            String::new(),
            String::new(),
            String::new(),
            holes,
            on_the_rail,
            count.to_string(),
        ]);
    }
    rows
}

/// The rail's own numbers of the runs bored where it lies.
fn index_runs(set_up: &SetUp, at: &Position) -> Vec<(i16, i16)> {
    let index = |hole| at.index(&set_up.rest, hole);
    let runs = at.runs.iter();
    runs.map(|run| (index(run.0), index(run.1))).collect()
}

/// The holes bored where the rail lies, its own numbers where they are others, and how many.
fn at_position(set_up: &SetUp, at: &Position) -> (String, String, usize) {
    let on_rail = index_runs(set_up, at);
    let rail = if on_rail == at.runs {
        String::new()
    } else {
        runs_words(&on_rail)
    };
    let count = Holes::Runs(at.runs.clone()).count();
    (runs_words(&at.runs), rail, count)
}

/// The rail's own numbers of the holes, where it lies against the stop alone and they are not the cabinet's: `20-19`, `14-9`.
#[must_use]
pub fn rail_runs(set_up: &SetUp) -> Option<Vec<String>> {
    let [at] = &set_up.positions[..] else {
        return None;
    };
    if is_moved(at) {
        return None;
    }
    let runs = index_runs(set_up, at);
    (runs != at.runs).then(|| runs.into_iter().map(run_words).collect())
}

/// Place by place what the rail's own numbers are, where they are not the cabinet's, and where it is moved to: `on the rail 1 9-14`,
/// `PINS 1 in 29 and 2 in 30 for 31-40, on the rail 3-12`.
#[must_use]
pub fn rail_notes(set_up: &SetUp, unit: Unit) -> Vec<String> {
    let note = |at: &Position| {
        let (holes, on_rail, _) = at_position(set_up, at);
        let moved = is_moved(at).then(|| format!("{} for {holes}", move_words(set_up, at, unit)));
        let on_rail = (!on_rail.is_empty()).then(|| format!("on the rail {on_rail}"));
        let words: Vec<String> = moved.into_iter().chain(on_rail).collect();
        (!words.is_empty()).then(|| words.join(", "))
    };
    set_up.positions.iter().filter_map(note).collect()
}

/// `PINS 1 in 29 and 2 in 30`, `TAPE 1 at 1808.0 from the FOOT`; nothing where the rail lies at first.
fn move_words(set_up: &SetUp, at: &Position, unit: Unit) -> String {
    match at.held {
        Held::Stop => String::new(),
        Held::Pins([near, far]) => {
            let [at_near, at_far] = [near, far].map(|hole| at.index(&set_up.rest, hole));
            format!("PINS {at_near} in {near} and {at_far} in {far}")
        }
        Held::Tape(from_end) => {
            let end = set_up.rest.end.word().to_uppercase();
            format!("TAPE 1 at {} from the {end}", from_end.show(unit))
        }
    }
}

fn tape_words(set_up: &SetUp, lengths: &[Length], unit: Unit) -> String {
    let lengths: Vec<String> = lengths.iter().map(|it| it.show(unit).to_string()).collect();
    let end = set_up.rest.end.word();
    format!("TAPE from the {end}: {}", lengths.join(" "))
}

/// `3-4 11 19-20`; from the head the rail counts down: `20-19 12 4-3`.
fn runs_words(runs: &[(i16, i16)]) -> String {
    let words: Vec<String> = runs.iter().copied().map(run_words).collect();
    words.join(" ")
}
