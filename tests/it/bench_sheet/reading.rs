//! A printed bench sheet, read line by line as text.

use std::collections::BTreeMap;

/// One line of a set, and what stands above it.
#[derive(Clone, Debug)]
pub(super) struct Line {
    pub(super) name: String,
    pub(super) edge: String,
    pub(super) foot: String,
    pub(super) packer: f64,
    /// Index holes of the rail, from 1 at the stop; or distances from the end on the stop.
    pub(super) places: Places,
    pub(super) count: usize,
    pub(super) setting: f64,
    pub(super) stop: f64,
    pub(super) end: String,
    pub(super) diameter: f64,
    pub(super) depth: Option<f64>,
}

#[derive(Clone, Debug)]
pub(super) enum Places {
    Index(Vec<i32>),
    Tape(Vec<f64>),
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
