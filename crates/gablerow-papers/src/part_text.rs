//! The parts of a job to be read, at most 80 columns wide: a section for each cabinet.

use alloc::borrow::ToOwned;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::job::Job;
use gablerow_core::measure::{Length, Unit};
use gablerow_core::parts::{
    BagLine, BoxPart, FrontPart, Hanging, Missing, Piece, ShelfPart, Strength,
};
use gablerow_core::solve::hinges::{Cup, chart_of};
use gablerow_core::strength::length_down;
use gablerow_core::sum::Sum;

use crate::part_records::{CabinetParts, front_words};
use crate::part_strength::push_strength_notes;
use crate::text::{push_columns, push_indented};

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
    push_strength_notes(&mut out, job, &cabinets);
    out
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
        let lengths: Vec<String> = lengths.iter().map(|length| self.show(*length)).collect();
        lengths.join(" x ")
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
        let (cabinet, built) = (self.of.cabinet, self.of.parts.built);
        let size = cabinet.size;
        let copies = match (built.total(), built.mirrored) {
            (1, 0) => "1 copy".to_owned(),
            (1, _) => "1 copy, mirrored".to_owned(),
            (many, 0) => format!("{many} copies; counts are for all"),
            (many, mirrored) => {
                format!("{many} copies, {mirrored} mirrored; counts are for all")
            }
        };
        let size = self.by(&[size.width, size.height, size.depth]);
        let unit = self.unit.word();
        let (name, stamp) = (&cabinet.name, self.of.stamp);
        let heading = format!("{name} {stamp}, {size} ({unit}), {copies}");
        push_indented(self.out, "", "  ", &heading);
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
                self.hinges(front, hanging);
                self.cups(front, hanging);
            }
        }
    }

    fn hinges(&mut self, front: &FrontPart, hanging: &Hanging) {
        let asked = hanging.asked.map_or(String::new(), |asked| {
            let chart = hanging.chart.words();
            let standing = chart_of(hanging.chart).standing.words();
            format!("; {} asked for {chart} ({standing})", asked.hinges)
        });
        let fit = hanging.fit.map_or("no plate in stock".to_owned(), |fit| {
            format!(
                "tab {}, plate {}, laps over {} where {} is wished",
                self.show(fit.tab),
                self.show(fit.plate),
                self.show(fit.overlay.total()),
                self.show(hanging.wanted.total()),
            )
        });
        let text = format!(
            "{}: hinges on {}{asked}; {}, {} arm, {fit}",
            front.name,
            holes(&hanging.holes),
            hanging.card,
            hanging.arm.word(),
        );
        self.line(&text);
    }

    fn cups(&mut self, front: &FrontPart, hanging: &Hanging) {
        let each = |from: fn(&Cup) -> Length| {
            let cups = hanging.cups.cups.iter();
            let cups: Vec<String> = cups.map(|cup| self.show(from(cup))).collect();
            cups.join(", ")
        };
        let centre = hanging.fit.map_or(String::new(), |fit| {
            format!(
                "{} from the hinge edge, ",
                self.show(fit.cup_centre.total())
            )
        });
        let handed = if hanging.cups.handed {
            "HANDED"
        } else {
            "not handed"
        };
        let text = format!(
            "{}: cups {} from the foot, {} from the head: {handed}; {centre}{} deep",
            front.name,
            each(|cup| cup.from_foot.total()),
            each(|cup| cup.from_head.total()),
            self.show(hanging.cup_depth),
        );
        self.line(&text);
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
                self.show(made.rise.total()),
                made.hole.to_string(),
            ]
        };
        let rows: Vec<_> = boxes.iter().map(row).collect();
        let head = [
            "", "name", "outside", "inside", "length", "height", "at most", "rise", "hole",
        ];
        push_columns(self.out, "    ", &head, &rows);
        for made in boxes {
            self.box_parts(made);
        }
    }

    fn box_parts(&mut self, made: &BoxPart) {
        let of = |piece: &Piece| self.by(&[piece.length.total(), piece.width.total()]);
        let [width, length] = made.bottom;
        let thickness = made.side.thickness.map_or(String::new(), |thickness| {
            format!(" {}", self.show(thickness))
        });
        let moved = if made.moved == Length::ZERO {
            String::new()
        } else {
            let hand = if made.moved > Length::ZERO {
                "right"
            } else {
                "left"
            };
            format!(", moved {} to the {hand}", self.show(made.moved.abs()))
        };
        let text = format!(
            "{}: {} sides {}, {} ends {}, {}{thickness}; {} bottom {}, recess {}; gap at each side {}{moved}; {} {}",
            made.name,
            self.count(2),
            of(&made.side),
            self.count(2),
            of(&made.end),
            made.side.board,
            self.count(1),
            self.by(&[width.total(), length.total()]),
            self.show(made.recess),
            self.show(made.side_gap),
            made.card,
            self.show(made.runner_length),
        );
        self.line(&text);
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
                shelf.hole.to_string(),
                self.finished(piece, [&piece.length, &piece.width]),
                self.by(&[piece.cut_length.total(), piece.cut_width.total()]),
                piece.banded.edges().join(" "),
                self.show(shelf.clear_below.total()),
                self.show(shelf.clear_above.total()),
            ]
        };
        let rows: Vec<_> = shelves.iter().map(row).collect();
        let head = ["", "hole", "finished", "cut", "band", "below", "above"];
        push_columns(self.out, "    ", &head, &rows);
        for shelf in shelves {
            if let Some(strength) = &shelf.strength {
                let text = strength_text(strength);
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
        let lines: Vec<String> = bag.iter().map(|line| self.bag_line(line)).collect();
        push_indented(self.out, "    ", "    ", &lines.join(", "));
    }

    fn bag_line(&self, line: &BagLine) -> String {
        let mut text = format!("{} {}", line.kind.words(), line.count);
        if line.kind.in_pairs() {
            text += " pr";
        }
        if let Some(length) = line.length {
            text += &format!(" of {}", self.show(length));
        }
        if line.take > line.count {
            text += &format!(" (take {})", line.take);
        }
        text
    }

    fn missing(&mut self) {
        if self.of.parts.missing.is_empty() {
            return;
        }
        self.title("MISSING");
        let opening = &self.of.cabinet.opening;
        for missing in &self.of.parts.missing {
            let front = missing.front().and_then(|key| opening.front(key));
            let name = match missing {
                Missing::Card { card } => card.as_str(),
                _ => front.map_or("", |front| front.name.as_str()),
            };
            let text = format!("{name}: {}", missing.words());
            push_indented(self.out, "    ", "      ", &text);
        }
    }
}

/// Holes with a comma between each two: `hole 3`, `holes 3, 19`.
fn holes(holes: &[i16]) -> String {
    let numbers: Vec<String> = holes.iter().map(ToString::to_string).collect();
    let word = if holes.len() == 1 { "hole" } else { "holes" };
    format!("{word} {}", numbers.join(", "))
}

fn kg(mass: f64) -> String {
    format!("{mass:.1} kg")
}

fn strength_text(strength: &Strength) -> String {
    let mut text = kg(strength.mass_kg);
    let guess = if strength.load_is_typed {
        ""
    } else {
        " (house guess)"
    };
    text += &format!(" and {} on it{guess}", kg(strength.load_kg));
    text += &match (strength.now, strength.later) {
        (Some(now), Some(later)) => format!(": sags {now:.1} mm, {later:.1} mm after years"),
        (Some(now), None) => format!(": sags {now:.1} mm, and more after years"),
        _ => ", stiffness not known".to_owned(),
    };
    if let Some((longest, limit)) = strength.longest {
        let longest = length_down(longest, Length::from_mm(1)).show(Unit::Millimetre);
        text += &format!("; up to {longest} mm long within {}", limit.words);
    }
    if let Some(pin) = strength.pin_kg {
        text += &format!("; {} on each pin", kg(pin));
    }
    if let Some(tip) = strength.tip_kg {
        text += &format!("; tips at {} on its front edge", kg(tip));
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::WIDTH;
    use crate::fixture::{drawers, job};
    use gablerow_core::job::{Copy, FrontKind, Key, Label};
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
        assert!(!text.contains("MISSING"), "{text}");
    }

    #[test]
    fn copies_are_said_and_counted() {
        let mut job = drawers();
        job.cabinets[0].copies.push(Copy {
            key: Key(90),
            name: Label::new("2").unwrap(),
            mirrored: true,
            as_cut: Vec::new(),
        });
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
