//! The parts of a job to be read, at most 80 columns wide: a section for each cabinet.

use alloc::borrow::ToOwned;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::job::Job;
use gablerow_core::measure::{Length, Unit};
use gablerow_core::parts::{BoxPart, FrontPart, Piece, ShelfPart};
use gablerow_core::sum::Sum;

use crate::part_needs::push_needs;
use crate::part_records::{CabinetParts, front_words};
use crate::part_strength::{push_strength_notes, push_tip_over};
use crate::part_words::{
    bag_words, bay_words, box_words, by, cabinet_words, cup_words, hinge_words, kg, missing_words,
    rise_words, shelf_test_words, strength_words,
};
use crate::text::{push_columns, push_indented, push_unit_key};

/// What every cabinet of a job is made of.
///
/// ```text
/// G2 rev 7 OTTER, 1000.0 x 704.0 x 560.0 (mm), 1 copy
///   PANELS, length first
///        panel              finished              cut            band   board
///     1  left side          704.0 x 560.0 x 18.2  704.0 x 559.0  front  board-18
/// ```
#[must_use]
pub fn part_text(job: &Job) -> String {
    parts_and_caution(job).0
}

/// The same, and whether the general caution is among it: it is said once on a sheet.
pub(crate) fn parts_and_caution(job: &Job) -> (String, bool) {
    let mut out = String::new();
    let cabinets = CabinetParts::of_job(job);
    for one in &cabinets {
        if !out.is_empty() {
            out.push('\n');
        }
        let mut section = Section {
            out: &mut out,
            of: one,
            unit: job.unit,
        };
        section.heading();
        section.panels();
        section.fronts();
        section.boxes();
        section.shelves();
        section.bag();
        section.missing();
    }
    push_needs(&mut out, job, &cabinets);
    let is_cautioned = push_strength_notes(&mut out, job, &cabinets);
    push_tip_over(&mut out, job, &cabinets);
    push_unit_key(&mut out, job.unit);
    (out, is_cautioned)
}

/// The section of one cabinet in the making.
struct Section<'a> {
    out: &'a mut String,
    of: &'a CabinetParts<'a>,
    unit: Unit,
}

impl Section<'_> {
    fn show(&self, length: Length) -> String {
        length.show(self.unit).to_string()
    }

    /// Several measures with a cross between.
    fn by(&self, lengths: &[Length]) -> String {
        by(lengths, self.unit)
    }

    fn count(&self, each: u32) -> String {
        (each * self.of.parts.built.total()).to_string()
    }

    fn line(&mut self, text: &str) {
        push_indented(self.out, "       ", "         ", text);
    }

    fn title(&mut self, title: &str) {
        self.out.push_str("  ");
        self.out.push_str(title);
        self.out.push('\n');
    }

    fn heading(&mut self) {
        push_indented(self.out, "", "  ", &cabinet_words(self.of, self.unit));
    }

    fn panels(&mut self) {
        self.title("PANELS, length first");
        let mut rows = Vec::new();
        for panel in &self.of.parts.panels {
            let piece = &panel.piece;
            rows.push([
                self.count(1),
                panel.name.to_string(),
                self.finished(piece, [&piece.length, &piece.width]),
                self.by(&[piece.cut_length.total(), piece.cut_width.total()]),
                piece.banded.edges().join(" "),
                piece.board.to_string(),
            ]);
        }
        if let Some(back) = self.of.parts.back {
            rows.push([
                self.count(1),
                "back, width first".to_owned(),
                self.by(&[back.width.total(), back.height.total()]),
                String::new(),
                String::new(),
                String::new(),
            ]);
        }
        let head = ["", "panel", "finished", "cut", "band", "board"];
        push_columns(self.out, "    ", &head, &rows);
    }

    /// Finished size and thickness of a piece.
    fn finished(&self, piece: &Piece, size: [&Sum; 2]) -> String {
        let mut lengths = Vec::from(size.map(Sum::total));
        lengths.extend(piece.thickness);
        self.by(&lengths)
    }

    fn fronts(&mut self) {
        let fronts = &self.of.parts.fronts;
        if fronts.is_empty() {
            return;
        }
        self.title("FRONTS, width first, all edges banded");
        let row = |front: &FrontPart| {
            let piece = &front.piece;
            [
                self.count(1),
                front.name.to_string(),
                front_words(front).to_owned(),
                self.finished(piece, [&piece.width, &piece.length]),
                self.by(&[piece.cut_width.total(), piece.cut_length.total()]),
                front.mass_kg.map_or("-".to_owned(), kg),
            ]
        };
        let rows: Vec<_> = fronts.iter().map(row).collect();
        let head = ["", "name", "front", "finished", "cut", "mass"];
        push_columns(self.out, "    ", &head, &rows);
        for front in fronts {
            if let Some(hanging) = &front.hanging {
                self.line(&hinge_words(front, hanging, self.unit));
                self.line(&cup_words(front, hanging, self.unit));
            }
        }
    }

    fn boxes(&mut self) {
        let boxes = &self.of.parts.boxes;
        if boxes.is_empty() {
            return;
        }
        self.title("BOXES");
        let row = |made: &BoxPart| {
            [
                self.count(1),
                made.name.to_string(),
                self.show(made.outside.total()),
                self.show(made.inside.total()),
                self.show(made.length.total()),
                self.show(made.height),
                self.show(made.room.total()),
                rise_words(made, self.unit),
                made.hole.to_string(),
            ]
        };
        let rows: Vec<_> = boxes.iter().map(row).collect();
        let head = [
            "", "name", "outside", "inside", "length", "height", "at most", "rise", "hole",
        ];
        push_columns(self.out, "    ", &head, &rows);
        for made in boxes {
            self.line(&box_words(made, self.of.parts.built, self.unit));
        }
    }

    fn shelves(&mut self) {
        let shelves = &self.of.parts.shelves;
        if shelves.is_empty() {
            return;
        }
        self.title("SHELVES");
        let row = |shelf: &ShelfPart| {
            let piece = &shelf.piece;
            [
                self.count(1),
                bay_words(shelf, self.of),
                shelf.hole.to_string(),
                self.finished(piece, [&piece.length, &piece.width]),
                self.by(&[piece.cut_length.total(), piece.cut_width.total()]),
                piece.banded.edges().join(" "),
                self.show(shelf.clear_below.total()),
                self.show(shelf.clear_above.total()),
            ]
        };
        let rows: Vec<_> = shelves.iter().map(row).collect();
        let head = [
            "", "bay", "hole", "finished", "cut", "band", "below", "above",
        ];
        push_columns(self.out, "    ", &head, &rows);
        for shelf in shelves {
            let strength = shelf.strength.as_ref().map(strength_words);
            for text in strength.into_iter().chain(shelf_test_words(shelf)) {
                self.line(&format!("hole {}: {text}", shelf.hole));
            }
        }
    }

    fn bag(&mut self) {
        let bag = &self.of.parts.bag;
        if bag.is_empty() {
            return;
        }
        self.title("BAG");
        let lines: Vec<String> = bag.iter().map(|line| bag_words(line, self.unit)).collect();
        push_indented(self.out, "    ", "    ", &lines.join(", "));
    }

    fn missing(&mut self) {
        if self.of.parts.missing.is_empty() {
            return;
        }
        self.title("MISSING");
        for missing in &self.of.parts.missing {
            push_indented(self.out, "    ", "      ", &missing_words(missing, self.of));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::WIDTH;
    use crate::fixture::{build_another, drawers, job};
    use gablerow_core::job::{FrontKind, Label};
    use unicode_width::UnicodeWidthStr;

    /// The lines of a text from one that begins with this on, blanks at its start aside.
    fn from<'a>(text: &'a str, start: &str) -> Vec<&'a str> {
        let lines = text.lines().map(str::trim_start);
        lines.skip_while(|line| !line.starts_with(start)).collect()
    }

    #[test]
    fn sections_say_what_is_cut_and_bought() {
        let text = part_text(&drawers());
        let titles = ["PANELS", "FRONTS", "BOXES", "SHELVES", "BAG"];
        let mut at = 0;
        for title in titles {
            at += text[at..]
                .find(&format!("\n  {title}"))
                .unwrap_or_else(|| panic!("{title}: {text}"));
        }
        // Door and drawer 600 - 1.5 - 1.5 wide; 12 modules less 3 and the rest of 704 - 3 - 381 - 3.
        assert_eq!(
            from(&text, "1  D2")[0]
                .split("  ")
                .filter(|cell| !cell.is_empty())
                .collect::<Vec<_>>(),
            [
                "1",
                "D2",
                "door, hung left",
                "597.0 x 317.0 x 19.0",
                "595.0 x 315.0",
                "2.7 kg"
            ]
        );
        // Hole 2 at 48 less 12 and 1.5; up to the shelf at 16 + 14 * 32 + 2.5 = 466.5, less 10 and 36.
        assert_eq!(
            from(&text, "1  D1    552").first(),
            Some(&"1  D1    552.0    522.0   490.0   336.0   336.5    34.5  2")
        );
        // 562 x 526 x 18 at 650 kg/m3 is 3.46 kg; 5 * 28.46 * 9.81 / 562 * 562^4 / (384 * 1600 * 526 * 18^3 / 12) = 1.58;
        // (263 - 25) / 25 of its own mass tips it.
        let shelf = from(&text, "hole 15").join(" ");
        assert!(shelf.starts_with("hole 15: 3.5 kg and 25.0 kg on it: sags 1.6 mm, 3.2 mm after years; up to 540.0 mm long within L/200; 7.1 kg on each pin; tips at 32.9 kg on its front edge"), "{shelf}");
        // 5 * 718.2e-6 * 526 * 562^4 / (384 * 1600 * 526 * 18^3 / 12) = 1.20, of 562/192 = 2.93.
        assert!(shelf.contains("hole 15: published tests, at once: 1.2 mm of 2.9 mm under 15 lb/ft2 (ANSI/KCMA A161.1); 3.2 mm of 3.9 mm under 40 lb"), "{shelf}");
        assert!(!text.contains("MISSING"), "{text}");
    }

    #[test]
    fn copies_are_said_and_counted() {
        let mut job = drawers();
        build_another(&mut job, true);
        let text = part_text(&job);
        assert!(
            text.starts_with(
                "A1 rev 1 THUNDER, 600.0 x 704.0 x 560.0 (mm), 2 copies, 1 mirrored; counts are\n  for all\n"
            ),
            "{text}"
        );
        assert_eq!(
            from(&text, "2  left side").len(),
            from(&text, "2  right side").len() + 1
        );
        assert!(text.contains(" runners 2 pr of 500.0"), "{text}");
    }

    #[test]
    fn what_is_missing_is_named() {
        let mut job = drawers();
        job.cabinets[0]
            .opening
            .fronts
            .iter_mut()
            .for_each(|front| front.kind = FrontKind::Drawer);
        let text = part_text(&job);
        assert!(
            text.contains("\n  MISSING\n    D2: drawer without runners\n"),
            "{text}"
        );
    }

    #[test]
    fn nothing_is_wider_than_the_sheet() {
        for unit in [Unit::Millimetre, Unit::Inch] {
            for mut job in [job(), drawers()] {
                job.unit = unit;
                job.cabinets[0].name = Label::new(&"G".repeat(40)).unwrap();
                for line in part_text(&job).lines() {
                    assert!(line.width() <= WIDTH, "{line}");
                    assert_eq!(line.trim_end(), line);
                }
            }
        }
    }
}
