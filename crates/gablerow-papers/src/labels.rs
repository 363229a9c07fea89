//! A label for every piece that is built: what it is, whose it is, which face and end the label is stuck on.

use alloc::borrow::ToOwned;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::job::{Cabinet, Copy, Job, Label, Names, PanelName as UprightName};
use gablerow_core::layout::Layout;
use gablerow_core::measure::{Length, Unit};
use gablerow_core::parts::{Banded, PanelName, Parts};
use gablerow_core::stamp::Stamp;

use crate::Value;
use crate::bench_records::of_cabinet;
use crate::part_records::{CabinetParts, Part, PartRecord};
use crate::part_words::{bay_words, named};
use crate::table::columns;
use crate::text::push_columns;

/// One label.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct LabelRecord {
    /// What the cabinet is called.
    pub cabinet: Label,
    /// Its state.
    pub stamp: Stamp,
    /// What the copy is called; `None` where there is one alone.
    pub copy: Option<Label>,
    /// What the piece is called, or what it belongs to; `None` for panels and shelves.
    pub name: Option<Label>,
    /// What it is, its hand included, as this copy has it.
    pub part: String,
    /// Length and width, finished.
    pub size: [Length; 2],
    /// As measured; `None` where no card names its board.
    pub thickness: Option<Length>,
    /// Which edges are banded.
    pub banded: Banded,
    /// The face the label is stuck on, near the foot; `None` where either will do.
    pub face: Option<&'static str>,
    /// Whether the piece does not fit turned end for end, so that its label marks the foot end.
    pub is_handed: bool,
}

columns! {
    LabelRecord;
    cabinet "what the cabinet is called"
        = |it| Value::Name(it.cabinet.as_str());
    copy "what the copy is called; nothing where there is one alone"
        = |it| it.copy.as_ref().map_or(Value::Nothing, |copy| Value::Name(copy.as_str()));
    name "what the piece is called, or what it belongs to"
        = |it| it.name.as_ref().map_or(Value::Nothing, |name| Value::Name(name.as_str()));
    part "what it is, its hand included, as this copy has it"
        = |it| Value::Word(it.part.clone().into());
    length_mm "finished, along the grain"
        = |it| Value::Length(it.size[0]);
    width_mm "finished, across the grain"
        = |it| Value::Length(it.size[1]);
    thickness_mm "as measured"
        = |it| it.thickness.map_or(Value::Nothing, Value::Length);
    banded "which edges are banded"
        = |it| Value::Words(it.banded.edges().into());
    label_on "the face its label is stuck on, near the foot; nothing where either will do"
        = |it| it.face.map_or(Value::Nothing, |face| Value::Word(face.into()));
    foot_end "doors: whether the label marks the foot end, since they do not fit turned end for end"
        = |it| Value::Flag(it.is_handed);
}

impl LabelRecord {
    /// Those of every piece of every copy: cabinet by cabinet, copy by copy, in the order of the parts.
    #[must_use]
    pub(crate) fn of_job(job: &Job) -> Vec<Self> {
        let copies = |cabinet: &Cabinet| {
            let stamp = Stamp::now(job, cabinet);
            let of = |copy| Self::of_copy(job, cabinet, (copy, stamp));
            cabinet.copies.iter().flat_map(of).collect::<Vec<_>>()
        };
        job.cabinets.iter().flat_map(copies).collect()
    }

    fn of_copy(job: &Job, cabinet: &Cabinet, (copy, stamp): (&Copy, Stamp)) -> Vec<Self> {
        let built = cabinet.built_as(copy);
        let layout = Layout::of(&built, job);
        let of = CabinetParts {
            cabinet: &built,
            stamp,
            parts: Parts::of(&built, &layout, job),
        };
        let copy = (cabinet.copies.len() > 1).then_some(&copy.name);
        let mut labels = Vec::new();
        for record in of.records() {
            let each = record.each().unwrap_or_default();
            if let Some(label) = Self::of_record(&of, &record, copy) {
                labels.extend((0..each).map(|_| label.clone()));
            }
        }
        labels
    }

    /// `None` for what is no piece: a box as a whole, hardware, what is missing.
    fn of_record(of: &CabinetParts, record: &PartRecord, copy: Option<&Label>) -> Option<Self> {
        if matches!(record.part, Part::Box(_)) {
            return None;
        }
        let part = match record.part {
            Part::Shelf(shelf) => match Names::of(&of.cabinet.opening).bays() {
                0 | 1 => format!("loose shelf on hole {}", shelf.hole),
                _ => format!(
                    "loose shelf on hole {}, bay {}",
                    shelf.hole,
                    bay_words(shelf, of)
                ),
            },
            Part::BoxSides(_) => "box side".to_owned(),
            Part::BoxEnds(_) => "box front or back".to_owned(),
            Part::BoxBottom(_) => "box bottom".to_owned(),
            _ => record.part_words(),
        };
        let piece = record.piece();
        Some(Self {
            cabinet: of.cabinet.name.clone(),
            stamp: of.stamp,
            copy: copy.cloned(),
            name: record.name().cloned(),
            part,
            size: record.size()?.map(|size| size.total()),
            thickness: piece.and_then(|piece| piece.thickness),
            banded: piece.map_or(Banded::None, |piece| piece.banded),
            face: face(record),
            is_handed: record.hanging().is_some_and(|it| it.cups.handed),
        })
    }

    /// `G2 left side`; with copy and name where there are such: `G2 copy 3 D1 drawer front`.
    #[must_use]
    pub(crate) fn title(&self) -> String {
        let part = named(self.name.as_ref(), &self.part);
        let copy = self.copy.as_ref().map(Label::as_str);
        of_cabinet(self.cabinet.as_str(), copy, &part)
    }

    /// `704.0 x 560.0 x 18.2`
    pub(crate) fn size_words(&self, unit: Unit) -> String {
        let lengths = self.size.iter().chain(&self.thickness);
        let lengths: Vec<String> = lengths.map(|it| it.show(unit).to_string()).collect();
        lengths.join(" x ")
    }

    /// Which edges are banded: `front`, `all`, `none`.
    pub(crate) fn band_words(&self) -> String {
        match self.banded {
            Banded::None => "none".to_owned(),
            Banded::All => "all".to_owned(),
            some => some.edges().join(" "),
        }
    }

    /// Where the label goes, near the foot: `INSIDE`; of a handed door `BACK, FOOT END`.
    pub(crate) fn place_words(&self) -> Option<String> {
        let face = self.face?.to_uppercase();
        Some(match self.is_handed {
            true => format!("{face}, FOOT END"),
            false => face,
        })
    }
}

/// The face a label is stuck on: of a side the inside, of a partition the left face, of a front its back.
fn face(record: &PartRecord) -> Option<&'static str> {
    match record.part {
        Part::Panel(panel) => match panel.name {
            PanelName::Upright(UprightName::Side(_)) => Some("inside"),
            PanelName::Upright(UprightName::Partition(_)) => Some("left face"),
            _ => None,
        },
        Part::Front(_) => Some("back"),
        _ => None,
    }
}

/// Every label as a line, at most 80 columns wide, with a box to tick once it is stuck on.
///
/// ```text
///      label          finished              band   on the
/// [ ]  G2 left side   704.0 x 560.0 x 18.2  front  INSIDE
/// ```
#[must_use]
pub(crate) fn label_text(labels: &[LabelRecord], unit: Unit) -> String {
    let row = |label: &LabelRecord| {
        [
            "[ ]".to_owned(),
            label.title(),
            label.size_words(unit),
            label.band_words(),
            label.place_words().unwrap_or_default(),
        ]
    };
    let rows: Vec<_> = labels.iter().map(row).collect();
    let mut out = String::new();
    let head = ["", "label", "finished", "band", "on the"];
    push_columns(&mut out, "", &head, &rows);
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::WIDTH;
    use crate::fixture::{build_another, drawers, handed_door, job, two_bays};
    use gablerow_core::job::Depth;
    use unicode_width::UnicodeWidthStr;

    fn titles(job: &Job) -> Vec<String> {
        LabelRecord::of_job(job)
            .iter()
            .map(LabelRecord::title)
            .collect()
    }

    // Two sides, bottom, two stretchers, back; door and drawer front; two sides, two ends and a bottom of the box; a shelf.
    #[test]
    fn every_piece_has_a_label() {
        let titles = titles(&drawers());
        assert_eq!(titles.len(), 6 + 2 + 5 + 1, "{titles:?}");
        for title in [
            "A1 left side",
            "A1 D1 drawer front",
            "A1 D2 door, hung left",
            "A1 loose shelf on hole 15",
        ] {
            assert_eq!(
                titles.iter().filter(|it| *it == title).count(),
                1,
                "{title}"
            );
        }
        assert_eq!(
            titles.iter().filter(|it| *it == "A1 D1 box side").count(),
            2
        );
    }

    #[test]
    fn a_door_that_is_called_one_is_called_so_once() {
        let mut job = drawers();
        for front in &mut job.cabinets[0].opening.fronts {
            front.name = Label::new("door 1").unwrap();
        }
        assert!(titles(&job).contains(&"A1 door 1, hung left".into()));
    }

    #[test]
    fn mirrored_copies_have_the_other_hand() {
        let mut job = drawers();
        build_another(&mut job, true);
        let titles = titles(&job);
        assert!(
            titles.contains(&"A1 copy 1 D2 door, hung left".into()),
            "{titles:?}"
        );
        assert!(
            titles.contains(&"A1 copy 2 D2 door, hung right".into()),
            "{titles:?}"
        );
    }

    #[test]
    fn handed_doors_have_their_foot_end_marked() {
        let labels = LabelRecord::of_job(&handed_door());
        let place = |part: &str| {
            let label = labels.iter().find(|label| label.part == part).unwrap();
            label.place_words()
        };
        assert_eq!(place("door, hung left").as_deref(), Some("BACK, FOOT END"));
        assert_eq!(place("drawer front").as_deref(), Some("BACK"));
        assert_eq!(place("left side").as_deref(), Some("INSIDE"));
        assert_eq!(place("bottom"), None);
    }

    #[test]
    fn labels_are_a_table_with_boxes_to_tick() {
        let text = label_text(&LabelRecord::of_job(&drawers()), Unit::Millimetre);
        let line = |part: &str| text.lines().find(|line| line.contains(part)).unwrap();
        let cells: Vec<&str> = line("left side")
            .split("  ")
            .filter(|cell| !cell.is_empty())
            .collect();
        let cells: Vec<&str> = cells.into_iter().map(str::trim).collect();
        assert_eq!(
            cells,
            [
                "[ ]",
                "A1 left side",
                "704.0 x 560.0 x 18.0",
                "front",
                "INSIDE"
            ]
        );
    }

    #[test]
    fn no_line_is_wider_than_the_sheet() {
        for mut job in [job(), drawers(), two_bays(Depth::Shop)] {
            job.cabinets[0].name = Label::new(&"G".repeat(40)).unwrap();
            for unit in [Unit::Millimetre, Unit::Inch] {
                for line in label_text(&LabelRecord::of_job(&job), unit).lines() {
                    assert!(line.width() <= WIDTH, "{line}");
                }
            }
        }
    }
}
