//! Every part of a job: what is cut, what it becomes, what is bought.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::job::{Cabinet, FrontKind, Hand, Job, Label};
use gablerow_core::layout::Layout;
use gablerow_core::parts::{
    BackPart, BagLine, BoxPart, Built, FrontPart, Hanging, Missing, PanelPart, Parts, Piece,
    ShelfPart,
};
use gablerow_core::stamp::Stamp;
use gablerow_core::sum::Sum;

use crate::part_words::named;

/// A cabinet and what it is made of.
#[derive(Clone, Debug, PartialEq)]
pub struct CabinetParts<'a> {
    /// The cabinet.
    pub cabinet: &'a Cabinet,
    /// Its state.
    pub stamp: Stamp,
    /// What it is made of.
    pub parts: Parts,
}

/// One part of a cabinet, or one kind of hardware.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartRecord<'a> {
    /// The cabinet.
    pub cabinet: &'a Cabinet,
    /// How often that is built.
    pub built: Built,
    /// The part itself.
    pub part: Part<'a>,
}

/// What a record is about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Part<'a> {
    /// A panel of the carcass.
    Panel(&'a PanelPart),
    /// The back panel.
    Back(&'a BackPart),
    /// A door or a drawer front.
    Front(&'a FrontPart),
    /// A drawer box, assembled.
    Box(&'a BoxPart),
    /// Both sides of a drawer box.
    BoxSides(&'a BoxPart),
    /// Front and back of a drawer box.
    BoxEnds(&'a BoxPart),
    /// The bottom of a drawer box.
    BoxBottom(&'a BoxPart),
    /// A loose shelf.
    Shelf(&'a ShelfPart),
    /// A kind of hardware.
    Hardware(&'a BagLine),
    /// What a part needs and does not have.
    Missing(&'a Missing),
}

impl<'a> CabinetParts<'a> {
    /// What every cabinet of a job is made of.
    #[must_use]
    pub fn of_job(job: &'a Job) -> Vec<Self> {
        Self::each(job).collect()
    }

    /// The same, each made when it is asked for.
    pub(crate) fn each(job: &'a Job) -> impl Iterator<Item = Self> {
        let of = move |cabinet| {
            let layout = Layout::of(cabinet, job);
            Self {
                cabinet,
                stamp: Stamp::of(job, cabinet, &layout),
                parts: Parts::of(cabinet, &layout, job),
            }
        };
        job.cabinets.iter().map(of)
    }

    /// One record for each part: panels, fronts, boxes with their pieces, shelves, hardware, and what is missing.
    #[must_use]
    pub fn records(&'a self) -> Vec<PartRecord<'a>> {
        let parts = &self.parts;
        let boxes = parts.boxes.iter().flat_map(|made| {
            [Part::Box, Part::BoxSides, Part::BoxEnds, Part::BoxBottom].map(|part| part(made))
        });
        let all = (parts.panels.iter().map(Part::Panel))
            .chain(parts.back.iter().map(Part::Back))
            .chain(parts.fronts.iter().map(Part::Front))
            .chain(boxes)
            .chain(parts.shelves.iter().map(Part::Shelf))
            .chain(parts.bag.iter().map(Part::Hardware))
            .chain(parts.missing.iter().map(Part::Missing));
        let record = |part| PartRecord {
            cabinet: self.cabinet,
            built: parts.built,
            part,
        };
        all.map(record).collect()
    }
}

/// What a front is: of a pair the leaf.
pub(crate) fn front_words(front: &FrontPart) -> &'static str {
    match (front.kind, front.hung) {
        (FrontKind::Pair, Some(Hand::Left)) => "left of a pair of doors",
        (FrontKind::Pair, Some(Hand::Right)) => "right of a pair of doors",
        (kind, _) => kind.words(),
    }
}

impl<'a> PartRecord<'a> {
    /// The kinds of parts, in the order they are listed.
    pub const KINDS: [&'static str; 7] = [
        "panel", "front", "box", "box part", "shelf", "hardware", "missing",
    ];

    /// Which of those it is.
    pub(crate) fn kind(&self) -> &'static str {
        let [panel, front, made, piece, shelf, hardware, missing] = Self::KINDS;
        match self.part {
            Part::Panel(_) | Part::Back(_) => panel,
            Part::Front(_) => front,
            Part::Box(_) => made,
            Part::BoxSides(_) | Part::BoxEnds(_) | Part::BoxBottom(_) => piece,
            Part::Shelf(_) => shelf,
            Part::Hardware(_) => hardware,
            Part::Missing(_) => missing,
        }
    }

    /// What it is called at the bench, by the person who drew it.
    pub(crate) fn name(&self) -> Option<&'a Label> {
        match self.part {
            Part::Front(front) => Some(&front.name),
            Part::Missing(missing) => Some(&self.cabinet.opening.front(missing.front()?)?.name),
            _ => Some(&self.any_box()?.name),
        }
    }

    /// What it is, in the words of the trade.
    pub(crate) fn words(&self) -> String {
        match self.part {
            Part::Panel(panel) => panel.name.to_string(),
            Part::Back(_) => "back".into(),
            Part::Front(front) => front_words(front).into(),
            Part::Box(made) if made.inner => "drawer behind".into(),
            Part::Box(_) => "drawer".into(),
            Part::BoxSides(_) => "sides".into(),
            Part::BoxEnds(_) => "front and back".into(),
            Part::BoxBottom(_) => "bottom".into(),
            Part::Shelf(_) => "loose shelf".into(),
            Part::Hardware(line) => line.kind.words().into(),
            Part::Missing(missing) => missing.words().into(),
        }
    }

    /// The same for a piece by itself, that could be taken for something else: a drawer's front is not the drawer.
    pub(crate) fn part_words(&self) -> String {
        let words = self.words();
        match self.part {
            Part::Front(front) if front.kind == FrontKind::Drawer => words + " front",
            _ => words,
        }
    }

    /// The same behind its name, if it has one.
    pub(crate) fn named_words(&self) -> String {
        named(self.name(), &self.part_words())
    }

    /// How many there are of it in one cabinet; `None` for hardware, which is counted for all, and for what is not there.
    pub(crate) fn each(&self) -> Option<u32> {
        match self.part {
            Part::BoxSides(_) | Part::BoxEnds(_) => Some(2),
            Part::Hardware(_) | Part::Missing(_) => None,
            _ => Some(1),
        }
    }

    /// How many there are of it in all that is built; hardware by piece or pair.
    pub(crate) fn count(&self) -> Option<u32> {
        match self.part {
            Part::Hardware(line) => Some(line.count),
            _ => Some(self.each()?.saturating_mul(self.built.total())),
        }
    }

    /// How many of those are for mirrored copies.
    pub(crate) fn mirrored(&self) -> Option<u32> {
        Some(self.each()?.saturating_mul(self.built.mirrored))
    }

    /// The piece of board.
    pub(crate) fn piece(&self) -> Option<&'a Piece> {
        match self.part {
            Part::Panel(panel) => Some(&panel.piece),
            Part::Front(front) => Some(&front.piece),
            Part::BoxSides(made) => Some(&made.side),
            Part::BoxEnds(made) => Some(&made.end),
            Part::Shelf(shelf) => Some(&shelf.piece),
            _ => None,
        }
    }

    /// Length and width, finished.
    pub(crate) fn size(&self) -> Option<[Sum; 2]> {
        match self.part {
            Part::Back(back) => Some([back.height, back.width]),
            Part::Box(made) => Some([made.length, made.outside]),
            Part::BoxBottom(made) => {
                let [width, length] = made.bottom;
                Some([length, width])
            }
            _ => self.piece().map(|piece| [piece.length, piece.width]),
        }
    }

    /// The box, for a record of a box as a whole.
    pub(crate) fn made_box(&self) -> Option<&'a BoxPart> {
        match self.part {
            Part::Box(made) => Some(made),
            _ => None,
        }
    }

    fn any_box(&self) -> Option<&'a BoxPart> {
        match self.part {
            Part::Box(made) | Part::BoxSides(made) | Part::BoxEnds(made) => Some(made),
            Part::BoxBottom(made) => Some(made),
            _ => None,
        }
    }

    pub(crate) fn front(&self) -> Option<&'a FrontPart> {
        match self.part {
            Part::Front(front) => Some(front),
            _ => None,
        }
    }

    pub(crate) fn hanging(&self) -> Option<&'a Hanging> {
        self.front()?.hanging.as_ref()
    }

    pub(crate) fn shelf(&self) -> Option<&'a ShelfPart> {
        match self.part {
            Part::Shelf(shelf) => Some(shelf),
            _ => None,
        }
    }

    pub(crate) fn hardware(&self) -> Option<&'a BagLine> {
        match self.part {
            Part::Hardware(line) => Some(line),
            _ => None,
        }
    }

    /// The card of the hardware it is, or runs or hangs on; of a missing card that card.
    pub(crate) fn card(&self) -> Option<&'a str> {
        let card = match self.part {
            Part::Front(_) => &self.hanging()?.card,
            Part::Box(made) => &made.card,
            Part::Hardware(line) => line.card.as_ref()?,
            Part::Missing(Missing::Card { card }) => card,
            _ => return None,
        };
        Some(card.as_str())
    }
}
