//! Documents: ISO 32000-1.

use lopdf::{Document, Object};

use super::{Written, count};
use crate::case::{Case, Mark, Source, around};

static SPACE: Source = Source {
    author: "ISO",
    title: "ISO 32000-1, Portable document format - PDF 1.7",
    year: "2008",
    clause: "8.3.2: the origin is at the lower left, a unit is 1/72 in; 1 mm is 2.834645669291339 units",
    mark: Mark::Pages,
};

static STRUCTURE: Source = Source {
    author: "ISO",
    title: "ISO 32000-1, Portable document format - PDF 1.7",
    year: "2008",
    clause: "structure of a file: header, cross-reference table, trailer; the numbers of these clauses not read again",
    mark: Mark::Pages,
};

const FAMILY: &str = "PDF";

pub(super) fn cases(written: &Written) -> Vec<Case> {
    let faces = written.paper("faces", "pdf", "A4");
    let mut all = scales(written, &faces);
    let others = [
        ("faces", faces),
        ("bench", written.paper("bench", "pdf", "A4")),
        ("stick", written.paper("stick", "pdf", "A4")),
        ("labels", written.paper("labels", "pdf", "A4")),
    ];
    for (name, file) in &others {
        let mut clause =
            |words: &str, printed, read: fn(&[u8]) -> f64, spoil: fn(&[u8]) -> Vec<u8>| {
                let name = format!("{name}: {words}");
                all.push(Case::clause(
                    FAMILY, name, &STRUCTURE, printed, file, read, spoil,
                ));
            };
        clause("the version in the header, 1.x", 1.0, version, |file| {
            [b"\n", file].concat()
        });
        clause(
            "bytes from startxref to the table",
            0.0,
            table_off,
            |file| [&file[..9], b"\n", &file[9..]].concat(),
        );
        clause(
            "entries that lead to no object",
            0.0,
            stray_entries,
            |file| [&file[..9], b"\n", &file[9..]].concat(),
        );
        clause(
            "bytes behind the mark of the end",
            0.0,
            behind_end,
            |file| [file, b"%"].concat(),
        );
    }
    all
}

fn scales(written: &Written, faces: &[u8]) -> Vec<Case> {
    let seven = "seven digits, as writers of PDF have them";
    let case = |name: &str, printed, found| {
        Case::new(FAMILY, name, &SPACE, printed, found).within(around(2e-7 * printed, seven))
    };
    let a4 = page_box(faces);
    let letter = page_box(&written.paper("faces", "pdf", "Letter"));
    let sheet = Sheet::of(faces);
    vec![
        case("A4, across", 595.275_590_551_181_2, a4[0]),
        case("A4, up", 841.889_763_779_527_6, a4[1]),
        case("Letter, across", 612.0, letter[0]),
        case("Letter, up", 792.0, letter[1]),
        case("1 mm", 2.834_645_669_291_339, sheet.scale),
        // The rule is drawn from one number of seven digits to another.
        case(
            "a rule of 100 mm",
            283.464_6,
            super::rule(&sheet.paths) * sheet.scale,
        )
        .within(around(3e-4, "its ends are numbers of seven digits")),
    ]
}

/// Width and height of the first page, whose lower left corner is the origin.
fn page_box(file: &[u8]) -> [f64; 2] {
    let document = Document::load_mem(file).unwrap();
    let page = document.get_dictionary(document.get_pages()[&1]).unwrap();
    let sides: Vec<f64> = page
        .get(b"MediaBox")
        .unwrap()
        .as_array()
        .unwrap()
        .iter()
        .map(number)
        .collect();
    assert_eq!(sides[..2], [0.0, 0.0]);
    [sides[2], sides[3]]
}

fn number(object: &Object) -> f64 {
    object.as_float().unwrap().into()
}

/// What is drawn on a first page.
struct Sheet {
    /// How many units of the page one of the drawing is.
    scale: f64,
    /// The corners of every path of straight lines, in units of the drawing.
    paths: Vec<Vec<[f64; 2]>>,
}

impl Sheet {
    fn of(file: &[u8]) -> Self {
        let document = Document::load_mem(file).unwrap();
        let content = document
            .get_and_decode_page_content(document.get_pages()[&1])
            .unwrap();
        let mut sheet = Self {
            scale: 1.0,
            paths: Vec::new(),
        };
        for operation in content.operations {
            let numbers = || -> Vec<f64> { operation.operands.iter().map(number).collect() };
            match operation.operator.as_str() {
                "cm" => sheet.scale *= numbers()[0],
                "m" => sheet.paths.push(vec![[numbers()[0], numbers()[1]]]),
                "l" => sheet
                    .paths
                    .last_mut()
                    .unwrap()
                    .push([numbers()[0], numbers()[1]]),
                _ => {}
            }
        }
        sheet
    }
}

/// The bytes as signs, one each, so that places in the one are places in the other; what is no ASCII is a `?`.
fn signs(file: &[u8]) -> String {
    let sign = |byte: &u8| {
        if byte.is_ascii() {
            char::from(*byte)
        } else {
            '?'
        }
    };
    file.iter().map(sign).collect()
}

fn version(file: &[u8]) -> f64 {
    let whole = signs(file);
    let version = whole
        .strip_prefix("%PDF-")
        .and_then(|rest| rest.split('.').next());
    version
        .and_then(|version| version.parse().ok())
        .unwrap_or(f64::NAN)
}

/// Where the last `startxref` says that the table is.
fn table_at(whole: &str) -> usize {
    let (_, tail) = whole.rsplit_once("startxref").unwrap();
    tail.split_whitespace().next().unwrap().parse().unwrap()
}

fn table_off(file: &[u8]) -> f64 {
    let whole = signs(file);
    let is_there = whole[table_at(&whole)..].starts_with("xref");
    let found = whole.find("\nxref").unwrap() + 1;
    let off = i32::try_from(found).unwrap() - i32::try_from(table_at(&whole)).unwrap();
    assert_eq!(is_there, off == 0);
    off.into()
}

/// Entries in use that have no object of their number at their offset.
fn stray_entries(file: &[u8]) -> f64 {
    let whole = signs(file);
    let (_, table) = whole.rsplit_once("\nxref").unwrap();
    let mut lines = table.trim_start().lines();
    let (first, _) = lines.next().unwrap().split_once(' ').unwrap();
    let first: usize = first.parse().unwrap();
    let entries = lines
        .take_while(|line| !line.starts_with("trailer"))
        .enumerate();
    let in_use = entries.filter(|(_, line)| line.trim_end().ends_with('n'));
    let used: Vec<(usize, &str)> = in_use.collect();
    assert!(used.len() > 5, "a document has objects");
    let is_stray = |(at, line): &&(usize, &str)| {
        let offset: usize = line.split(' ').next().unwrap().parse().unwrap();
        let object = format!("{} 0 obj", first + at);
        !whole[offset..].starts_with(&object)
    };
    count(used.iter().filter(is_stray))
}

fn behind_end(file: &[u8]) -> f64 {
    let whole = signs(file);
    let (_, behind) = whole.rsplit_once("%%EOF").unwrap();
    count(behind.trim_end().bytes())
}
