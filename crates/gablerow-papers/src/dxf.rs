//! A face as DXF R12 text, in mm of the panel: for whoever draws on, and for machines that read it.
//!
//! ```text
//! Y           The face as it is seen with its foot down: zero is the corner on the left, at the foot.
//! ^
//! |  o 272    999 comments say the unit, since R12 has no variable for it, and so does a text below the panel.
//! |
//! +-----> X
//! ```
//!
//! Pairs of a code and a value, a line each. Source: the published DXF Reference; R12 is `AC1009`.

use alloc::collections::BTreeMap;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::cautions::GENERAL;
use gablerow_core::layout::{Hole, Use};
use gablerow_core::measure::{Length, Unit};

use crate::DrawnFace;
use crate::text::wrap;

/// Where the outline is.
const OUTLINE: &str = "OUTLINE";
/// Where what is written is.
const NOTES: &str = "NOTES";
/// How high letters are, and from one line to the next, in mm of the panel.
const LETTERS: (i32, i32) = (10, 18);
/// The most letters a line of notes has: they are as long as a panel is deep.
const NOTE_MOST: usize = 64;

/// A face as the text of a DXF file.
///
/// The outline is one closed `POLYLINE`, each hole a `CIRCLE` of its true radius on a layer that says its use, its diameter
/// and its depth in mm.
#[must_use]
pub fn dxf(face: &DrawnFace) -> String {
    let notes = notes(face);
    let mut out = Pairs::default();
    for note in &notes {
        out.put(999, &in_ascii(note));
    }
    out.section("HEADER", |out| out.variables(face));
    out.section("TABLES", |out| out.tables(face));
    out.section("ENTITIES", |out| {
        out.outline(face);
        out.holes(face);
        out.notes(&notes);
    });
    out.put(0, "EOF");
    out.text
}

/// What is written below the panel, and before everything else as comments.
fn notes(face: &DrawnFace) -> Vec<String> {
    let (left, right) = match face.drawing.is_front_left() {
        true => ("FRONT", "BACK"),
        false => ("BACK", "FRONT"),
    };
    let mut notes = Vec::from([
        "UNIT: MILLIMETRES".to_string(),
        format!("{}: {}", face.of.job.title, face.title()),
        format!("{}, {}", face.size(Unit::Millimetre), face.board()),
        format!(
            "Seen with the foot down: X from the {left} edge toward the {right} edge, Y from the foot up."
        ),
        face.lie(),
    ]);
    if !face.of.stamp.is_empty() {
        notes.push(face.of.stamp.to_string());
    }
    notes.extend_from_slice(face.of.remarks);
    notes.push(GENERAL.to_string());
    notes
        .iter()
        .flat_map(|note| wrap(note, NOTE_MOST))
        .collect()
}

/// The layer of a hole, in the letters that R12 has for it: A-Z, 0-9, `_`, `-` for a decimal point, at most 31.
///
/// # Example
/// `PIN_D5_DEEP12_MM`, `CONNECTOR_D15-875_DEEP12-125_MM`, `FREE_D5_THROUGH_MM`, `SHARED_D5_DEEP12_MM` for several uses.
fn hole_layer(hole: &Hole) -> String {
    let use_ = hole.only_use().map_or("shared", Use::word).to_uppercase();
    let depth = match hole.depth {
        Some(depth) => format!("DEEP{}", thousandths(depth)),
        None => "THROUGH".to_string(),
    };
    format!("{use_}_D{}_{depth}_MM", thousandths(hole.diameter))
}

/// Millimetres to 0.001 with `-` for the point: `12`, `11-5`.
fn thousandths(length: Length) -> String {
    let text = format!("{:.3}", length.mm());
    let text = text.trim_end_matches('0').trim_end_matches('.');
    text.replace('.', "-")
}

/// Text in ASCII: other letters by their numbers, as DXF has it; nothing in it can be taken for a sign of DXF.
fn in_ascii(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '^' => out.push_str("^ "),
            '%' => out.push_str("%%%"),
            ' '..='~' if letter != '\\' => out.push(letter),
            _ => {
                let mut units = [0; 2];
                for unit in letter.encode_utf16(&mut units) {
                    out.push_str(&format!("\\U+{unit:04X}"));
                }
            }
        }
    }
    out
}

/// The file in the making.
#[derive(Default)]
struct Pairs {
    text: String,
}

impl Pairs {
    fn put(&mut self, code: u16, value: &str) {
        self.text.push_str(&format!("{code:>3}\r\n{value}\r\n"));
    }

    fn length(&mut self, code: u16, length: Length) {
        self.put(code, &format!("{:.6}", length.mm()));
    }

    /// A point: its x, its y and 0.
    fn point(&mut self, x: Length, y: Length) {
        self.length(10, x);
        self.length(20, y);
        self.length(30, Length::ZERO);
    }

    fn entity(&mut self, kind: &str, layer: &str) {
        self.put(0, kind);
        self.put(8, layer);
    }

    fn section(&mut self, name: &str, fill: impl FnOnce(&mut Self)) {
        self.put(0, "SECTION");
        self.put(2, name);
        fill(self);
        self.put(0, "ENDSEC");
    }

    /// The version, and the corners of the panel.
    fn variables(&mut self, face: &DrawnFace) {
        self.put(9, "$ACADVER");
        self.put(1, "AC1009");
        self.put(9, "$EXTMIN");
        self.point(Length::ZERO, Length::ZERO);
        self.put(9, "$EXTMAX");
        self.point(face.drawing.depth, face.drawing.length);
    }

    fn table(&mut self, name: &str, count: usize, fill: impl FnOnce(&mut Self)) {
        self.put(0, "TABLE");
        self.put(2, name);
        self.put(70, &count.to_string());
        fill(self);
        self.put(0, "ENDTAB");
    }

    /// The one type of line, and the layers.
    fn tables(&mut self, face: &DrawnFace) {
        self.table("LTYPE", 1, |out| {
            out.put(0, "LTYPE");
            out.put(2, "CONTINUOUS");
            out.put(70, "0");
            out.put(3, "Solid line");
            out.put(72, "65");
            out.put(73, "0");
            out.length(40, Length::ZERO);
        });
        let mut layers = BTreeMap::from([(OUTLINE.to_string(), 7), (NOTES.to_string(), 8)]);
        for dot in &face.drawing.dots {
            layers.insert(hole_layer(&dot.hole), colour(dot.hole.only_use()));
        }
        self.table("LAYER", layers.len(), |out| {
            for (name, colour) in &layers {
                out.put(0, "LAYER");
                out.put(2, name);
                out.put(70, "0");
                out.put(62, &colour.to_string());
                out.put(6, "CONTINUOUS");
            }
        });
    }

    fn outline(&mut self, face: &DrawnFace) {
        self.entity("POLYLINE", OUTLINE);
        self.put(66, "1");
        self.point(Length::ZERO, Length::ZERO);
        self.put(70, "1");
        for &(x, y) in &face.drawing.outline {
            self.entity("VERTEX", OUTLINE);
            self.point(face.drawing.from_left(x), y);
        }
        self.entity("SEQEND", OUTLINE);
    }

    fn holes(&mut self, face: &DrawnFace) {
        for dot in &face.drawing.dots {
            self.entity("CIRCLE", &hole_layer(&dot.hole));
            self.point(face.drawing.from_left(dot.x), dot.y);
            self.put(40, &format!("{:.7}", dot.hole.diameter.mm() / 2.0));
        }
    }

    /// Below the panel, line by line.
    fn notes(&mut self, notes: &[String]) {
        let (height, pitch) = LETTERS;
        let mut y = Length::from_mm(-2 * pitch);
        for note in notes {
            self.entity("TEXT", NOTES);
            self.point(Length::ZERO, y);
            self.length(40, Length::from_mm(height));
            self.put(1, &in_ascii(note));
            y -= Length::from_mm(pitch);
        }
    }
}

/// The colour of a layer, by its number in DXF. Whoever sees no colours has the names.
fn colour(only_use: Option<Use>) -> u8 {
    match only_use {
        Some(Use::Pin) => 3,
        Some(Use::Plate) => 1,
        Some(Use::Runner) => 5,
        Some(Use::Dowel) => 30,
        Some(Use::Connector) => 6,
        Some(Use::Free) => 4,
        None => 2,
    }
}

#[cfg(test)]
mod tests;
