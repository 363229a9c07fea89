//! A printed bench sheet, read line by line as text.

use std::collections::BTreeMap;

/// One line of a set, and what stands above it.
#[derive(Clone, Debug)]
pub(super) struct Line {
    pub(super) name: String,
    pub(super) edge: String,
    pub(super) foot: String,
    /// Whether the holes have numbers, and are not where the tape says.
    pub(super) is_on_grid: bool,
    /// From the end on the stop to each hole; no number where what is told cannot be done.
    pub(super) from_end: Vec<f64>,
    /// Where the holes are that were bored into the panel as it lies, by their numbers.
    bored: BTreeMap<i32, f64>,
    pub(super) count: usize,
    pub(super) setting: f64,
    pub(super) stop: f64,
    pub(super) end: String,
    pub(super) diameter: f64,
    pub(super) depth: Option<f64>,
}

/// Where the rail is moved to.
enum Moved {
    /// Its index holes over holes of the cabinet: index hole, and hole.
    Pins(Vec<(i32, i32)>),
    /// Its first index hole so far from an end that is named.
    Tape(f64, String),
}

/// The number at the start of a text; `~` before it says that it is rounded.
pub(super) fn number(text: &str) -> f64 {
    let text = text.trim_start_matches('~');
    let end = text
        .find(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
        .unwrap_or(text.len());
    text[..end]
        .parse()
        .unwrap_or_else(|_| panic!("no number: {text}"))
}

/// Hole by hole; a run may count down.
fn runs(text: &str) -> Vec<i32> {
    let run = |run: &str| -> Vec<i32> {
        let (first, last) = run.split_once('-').unwrap_or((run, run));
        let (first, last): (i32, i32) = (first.parse().unwrap(), last.parse().unwrap());
        match first <= last {
            true => (first..=last).collect(),
            false => (last..=first).rev().collect(),
        }
    };
    text.split_whitespace().flat_map(run).collect()
}

/// Where the words of a row have the rail moved to; nothing where they name a face.
fn moved(words: &str) -> Option<Moved> {
    if let Some(pins) = words.strip_prefix("PINS ") {
        let pin = |pin: &str| {
            let (index, hole) = pin.split_once(" in ").unwrap();
            (index.parse().unwrap(), hole.parse().unwrap())
        };
        return Some(Moved::Pins(pins.split(" and ").map(pin).collect()));
    }
    let (at, end) = words.strip_prefix("TAPE 1 at ")?.split_once(" from the ")?;
    Some(Moved::Tape(number(at), end.to_string()))
}

/// The cells of a row under its heading, and behind the words of it in what stands below the row.
fn cells(head: &str, row: &str, below: &str) -> BTreeMap<String, String> {
    let names = [
        "this face up",
        "edge",
        "foot",
        "PACKER",
        "holes",
        "on rail",
        "no.",
    ];
    let cell = |cell: &str| {
        let name = names.iter().find(|name| cell.starts_with(**name)).unwrap();
        ((*name).to_string(), cell[name.len()..].trim().to_string())
    };
    let cells = below.split(", ").filter(|cell| !cell.is_empty());
    let mut all = under(head, row);
    all.extend(cells.map(cell));
    all
}

/// The cells of a row under its heading.
fn under(head: &str, row: &str) -> BTreeMap<String, String> {
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

/// Whether a line is a row of a set: a numbered box, or the box of a rail that is moved.
fn is_row(line: &str) -> bool {
    let row = line.trim_start();
    let numbered = row.starts_with(|c: char| c.is_ascii_digit()) && row.contains("[ ]");
    let moved = row.strip_prefix("[ ]").map(str::trim_start);
    numbered || moved.is_some_and(|row| row.starts_with("PINS") || row.starts_with("TAPE 1"))
}

/// Every line of the sets of a sheet.
pub(super) fn read(sheet: &str) -> Vec<Line> {
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
            _ if is_row(line) => {
                let is_below = |next: &&str| {
                    next.starts_with("            ") && !next.trim_start().starts_with("total")
                };
                let mut below = Vec::new();
                while let Some(next) = text.next_if(is_below) {
                    below.push(next.trim());
                }
                let cells = cells(head, line, &below.join(" "));
                lines.push(line_of(&cells, [bit, stop, set], lines.last()));
            }
            _ => {}
        }
    }
    lines
}

fn line_of(
    cells: &BTreeMap<String, String>,
    [bit, stop, set]: [&str; 3],
    before: Option<&Line>,
) -> Line {
    let cell = |name: &str| cells.get(name).cloned().unwrap_or_default();
    let (_, bit) = bit.split_once("] ").unwrap();
    let (_, stop) = stop.split_once("] ").unwrap();
    let holes = cell("holes");
    let count = cell("no.").parse().unwrap();
    let numbers = || runs(&holes);
    let index = match cell("on rail") {
        rail if rail.is_empty() => runs_or_none(&holes),
        rail => runs(&rail),
    };
    if let Some(moved) = moved(&cell("this face up")) {
        // The panel stays as it lies.
        let lies = before.expect("a panel lies there").clone();
        let first = first_index_hole(&moved, &lies);
        return lies.bored_at(first, &numbers(), &index, count);
    }
    let packer = cell("PACKER");
    let packer = match packer.as_str() {
        "" | "none" => 0.0,
        thick => number(thick),
    };
    let (_, end) = stop.split_once("push the ").unwrap();
    let line = Line {
        name: cell("this face up"),
        edge: cell("edge"),
        foot: cell("foot"),
        is_on_grid: true,
        from_end: Vec::new(),
        bored: BTreeMap::new(),
        count,
        setting: number(set),
        stop: number(stop),
        end: end.split(' ').next().unwrap().to_string(),
        diameter: number(bit.split_once(' ').unwrap().1),
        depth: bit.split_once("DEPTH ").map(|(_, depth)| number(depth)),
    };
    match holes.split_once(": ") {
        Some((_, lengths)) => Line {
            is_on_grid: false,
            from_end: lengths.split(' ').map(number).collect(),
            ..line
        },
        None => {
            let first = line.stop - packer;
            line.bored_at(first, &numbers(), &index, count)
        }
    }
}

impl Line {
    /// The same panel, bored where the rail's first index hole is so far from the end on the stop.
    fn bored_at(mut self, first: f64, numbers: &[i32], index: &[i32], count: usize) -> Self {
        let at = |index: &i32| first + 32.0 * f64::from(index - 1);
        self.from_end = index.iter().map(at).collect();
        self.bored
            .extend(numbers.iter().copied().zip(self.from_end.iter().copied()));
        Self { count, ..self }
    }
}

/// How far from the end on the stop the rail's first index hole comes to lie; no number where the pins do not go in.
fn first_index_hole(moved: &Moved, lies: &Line) -> f64 {
    match moved {
        Moved::Tape(at, end) if *end == lies.end => *at,
        Moved::Tape(..) => f64::NAN,
        Moved::Pins(pins) => {
            let first = |(index, hole): &(i32, i32)| {
                lies.bored
                    .get(hole)
                    .map_or(f64::NAN, |at| at - 32.0 * f64::from(index - 1))
            };
            let all: Vec<f64> = pins.iter().map(first).collect();
            let agree = all.iter().all(|one| (one - all[0]).abs() < 0.01);
            if agree { all[0] } else { f64::NAN }
        }
    }
}

/// Nothing where distances stand instead of hole numbers.
fn runs_or_none(holes: &str) -> Vec<i32> {
    if holes.contains(':') {
        Vec::new()
    } else {
        runs(holes)
    }
}
