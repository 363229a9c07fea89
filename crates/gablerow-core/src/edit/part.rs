//! What can be typed and stepped through of an opening, a partition, a fixed shelf or a front: one table.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::fronts::opening_of;
use super::served::change_fronts;
use super::thing::{Thing, ThingMut, thing, thing_mut};
use super::{Refusal, change};
use crate::cards::{CardId, Cards};
use crate::history::Step;
use crate::job::{
    Bay, Cabinet, Division, FrontHeight, FrontKind, Hand, HolePlace, Inset, Job, Joint, Key,
    PartWidth, PinRows, ShelfHeight,
};
use crate::layout::{Layout, gap_of};
use crate::measure::range::{self, Range};
use crate::measure::{Length, Unit};

/// A length of a part of a cabinet that can be typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PartMeasure {
    /// Clear width of one of several openings side by side.
    Width,
    /// From the carcass front to the front of a bay, a partition or a fixed shelf.
    Recess,
    /// How far an inset front stands behind the carcass front.
    SetIn,
    /// Thickness of the inset fronts a bay is made for.
    InsetFront,
    /// How deep the foot of a partition is let in.
    HousingFoot,
    /// How deep its head is let in.
    HousingHead,
    /// How deep the ends of a fixed shelf are let in.
    Housing,
    /// The underside of a fixed shelf above the carcass underside.
    Underside,
    /// Height of a front.
    FrontHeight,
    /// Thickness of a front.
    FrontThickness,
}

/// A way a part of a cabinet can be made that is stepped through.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PartChoice {
    /// A share of the width, or a typed width.
    WidthShare,
    /// Fronts before the edges, or inside the opening.
    Inset,
    /// Two or three rows of pins.
    PinRows,
    /// Whether a partition's foot runs past what it stands on.
    PastFoot,
    /// Whether its head runs past what is above.
    PastHead,
    /// The board of a partition or a fixed shelf.
    Board,
    /// A fixed shelf at a hole, or at any height.
    ShelfAt,
    /// What a front is.
    FrontKind,
    /// A share of what is left, whole modules, or a typed height.
    FrontHeightWay,
}

/// A line of what can be changed of a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PartLine {
    /// A length.
    Measure(PartMeasure),
    /// A choice.
    Choice(PartChoice),
}

const BAY: &[PartLine] = &[
    PartLine::Choice(PartChoice::Inset),
    PartLine::Measure(PartMeasure::InsetFront),
    PartLine::Measure(PartMeasure::SetIn),
    PartLine::Measure(PartMeasure::Recess),
    PartLine::Choice(PartChoice::PinRows),
];
const WIDTH: &[PartLine] = &[
    PartLine::Measure(PartMeasure::Width),
    PartLine::Choice(PartChoice::WidthShare),
];
const PARTITION: &[PartLine] = &[
    PartLine::Measure(PartMeasure::HousingFoot),
    PartLine::Choice(PartChoice::PastFoot),
    PartLine::Measure(PartMeasure::HousingHead),
    PartLine::Choice(PartChoice::PastHead),
    PartLine::Measure(PartMeasure::Recess),
    PartLine::Choice(PartChoice::Board),
];
const SHELF: &[PartLine] = &[
    PartLine::Measure(PartMeasure::Underside),
    PartLine::Choice(PartChoice::ShelfAt),
    PartLine::Measure(PartMeasure::Housing),
    PartLine::Measure(PartMeasure::Recess),
    PartLine::Choice(PartChoice::Board),
];
const FRONT: &[PartLine] = &[
    PartLine::Choice(PartChoice::FrontKind),
    PartLine::Measure(PartMeasure::FrontHeight),
    PartLine::Choice(PartChoice::FrontHeightWay),
    PartLine::Measure(PartMeasure::FrontThickness),
];

/// The lines of a part, in the order a person meets them; none for a key that names nothing of the kind.
#[must_use]
pub fn part_lines(cabinet: &Cabinet, part: Key) -> Vec<PartLine> {
    match thing(cabinet, part) {
        None => Vec::new(),
        Some(Thing::Opening(opening, width)) => {
            let width = if width.is_some() { WIDTH } else { &[] };
            let bay: &[PartLine] = match opening.division {
                Division::Bay(_) => BAY,
                _ => &[],
            };
            [width, bay].concat()
        }
        Some(Thing::Partition(_)) => PARTITION.to_vec(),
        Some(Thing::Shelf(_)) => SHELF.to_vec(),
        Some(Thing::Front(_)) => FRONT.to_vec(),
    }
}

impl PartMeasure {
    /// What it is called.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Width => "width",
            Self::Recess => "recess",
            Self::SetIn => "set-in",
            Self::InsetFront => "inset front",
            Self::HousingFoot => "let in, foot",
            Self::HousingHead => "let in, head",
            Self::Housing => "let in",
            Self::Underside => "underside",
            Self::FrontHeight => "height",
            Self::FrontThickness => "thickness",
        }
    }

    fn range(self) -> &'static Range {
        match self {
            Self::Width | Self::FrontHeight => &range::OPENING_SIZE,
            Self::Recess => &range::RECESS,
            Self::SetIn => &range::SET_IN,
            Self::InsetFront | Self::FrontThickness => &range::BOARD_THICKNESS,
            Self::HousingFoot | Self::HousingHead | Self::Housing => &range::HOUSING,
            Self::Underside => &range::PANEL_POSITION,
        }
    }

    /// Its value, as stored or as the layout has it; `None` where the part has no such thing.
    #[must_use]
    pub fn read(self, cabinet: &Cabinet, layout: &Layout, part: Key) -> Option<Length> {
        match (self, thing(cabinet, part)?) {
            (Self::Width, Thing::Opening(_, Some(PartWidth::Fixed(width)))) => Some(*width),
            (Self::Width, Thing::Opening(..)) => layout.opening(part).map(|made| made.width),
            (Self::Recess, Thing::Partition(partition)) => Some(partition.recess),
            (Self::Recess, Thing::Shelf(shelf)) => Some(shelf.recess),
            (Self::Recess, Thing::Opening(opening, _)) => bay(&opening.division).map(|b| b.recess),
            (Self::SetIn, Thing::Opening(opening, _)) => {
                Some(bay(&opening.division)?.inset?.set_in)
            }
            (Self::InsetFront, Thing::Opening(opening, _)) => {
                let inset = bay(&opening.division)?.inset?;
                Some(inset.front.unwrap_or(layout.front_thickness))
            }
            (Self::HousingFoot, Thing::Partition(partition)) => Some(partition.foot.housing),
            (Self::HousingHead, Thing::Partition(partition)) => Some(partition.head.housing),
            (Self::Housing, Thing::Shelf(shelf)) => Some(shelf.joint.housing),
            (Self::Underside, Thing::Shelf(shelf)) => {
                let found = layout.panels.iter();
                let mut found = found.filter(|panel| panel.owner == Some(shelf.key));
                found.next().map(|panel| panel.z.from)
            }
            (Self::FrontHeight, Thing::Front(front)) => {
                let found = layout.fronts.iter().find(|made| made.key == front.key);
                found.map(|made| made.height.total())
            }
            (Self::FrontThickness, Thing::Front(front)) => {
                let found = layout.fronts.iter().find(|made| made.key == front.key);
                found.map(|made| made.thickness)
            }
            _ => None,
        }
    }

    /// The step that sets it.
    pub(super) fn set(
        self,
        job: &Job,
        cabinet: Key,
        part: Key,
        value: Length,
    ) -> Result<Step, Refusal> {
        let wrong = |wrong: range::OutOfRange| Refusal(wrong.to_string());
        self.range().check(value).map_err(wrong)?;
        change(job, cabinet, |cabinet| {
            let lacks = || Refusal(format!("this part has no {}", self.words()));
            self.put(cabinet, part, value).ok_or_else(lacks)?;
            Ok(format!("{} {}", self.words(), value.show(job.unit)))
        })
    }

    fn put(self, cabinet: &mut Cabinet, part: Key, value: Length) -> Option<()> {
        let place = match (self, thing_mut(cabinet, part)?) {
            (Self::Width, ThingMut::Opening(_, Some(width))) => {
                *width = PartWidth::Fixed(value);
                return Some(());
            }
            (Self::Underside, ThingMut::Shelf(shelf)) => {
                shelf.at = ShelfHeight::Underside(value);
                return Some(());
            }
            (Self::FrontHeight, ThingMut::Front(front)) => {
                front.height = FrontHeight::Fixed(value);
                return Some(());
            }
            (Self::FrontThickness, ThingMut::Front(front)) => {
                front.thickness = Some(value);
                return Some(());
            }
            (Self::InsetFront, ThingMut::Opening(opening, _)) => {
                bay_mut(&mut opening.division)?.inset.as_mut()?.front = Some(value);
                return Some(());
            }
            (Self::Recess, ThingMut::Partition(partition)) => &mut partition.recess,
            (Self::Recess, ThingMut::Shelf(shelf)) => &mut shelf.recess,
            (Self::Recess, ThingMut::Opening(opening, _)) => {
                &mut bay_mut(&mut opening.division)?.recess
            }
            (Self::SetIn, ThingMut::Opening(opening, _)) => {
                &mut bay_mut(&mut opening.division)?.inset.as_mut()?.set_in
            }
            (Self::HousingFoot, ThingMut::Partition(partition)) => &mut partition.foot.housing,
            (Self::HousingHead, ThingMut::Partition(partition)) => &mut partition.head.housing,
            (Self::Housing, ThingMut::Shelf(shelf)) => &mut shelf.joint.housing,
            _ => return None,
        };
        *place = value;
        Some(())
    }
}

fn bay(division: &Division) -> Option<&Bay> {
    match division {
        Division::Bay(bay) => Some(bay),
        _ => None,
    }
}

fn bay_mut(division: &mut Division) -> Option<&mut Bay> {
    match division {
        Division::Bay(bay) => Some(bay),
        _ => None,
    }
}

impl PartChoice {
    /// What is chosen.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::WidthShare => "width by",
            Self::Inset => "fronts",
            Self::PinRows => "pins",
            Self::PastFoot => "foot",
            Self::PastHead => "head",
            Self::Board => "board",
            Self::ShelfAt => "stands",
            Self::FrontKind => "is a",
            Self::FrontHeightWay => "height by",
        }
    }

    /// The way it is made now; `None` where the part has no such thing.
    #[must_use]
    pub fn value(self, cabinet: &Cabinet, part: Key, unit: Unit) -> Option<String> {
        let past = |joint: &Joint| {
            if joint.runs_past {
                "runs past"
            } else {
                "stops there"
            }
        };
        let words = match (self, thing(cabinet, part)?) {
            (Self::WidthShare, Thing::Opening(_, Some(width))) => match width {
                PartWidth::Equal => "an equal share",
                PartWidth::Fixed(_) => "as typed",
            },
            (Self::Inset, Thing::Opening(opening, _)) => match bay(&opening.division)?.inset {
                Some(_) => "inside the opening",
                None => "before the edges",
            },
            (Self::PinRows, Thing::Opening(opening, _)) => match bay(&opening.division)?.pin_rows {
                PinRows::Two => "two rows",
                PinRows::Three => "three rows",
            },
            (Self::PastFoot, Thing::Partition(partition)) => past(&partition.foot),
            (Self::PastHead, Thing::Partition(partition)) => past(&partition.head),
            (Self::Board, Thing::Partition(partition)) => partition.board.as_str(),
            (Self::Board, Thing::Shelf(shelf)) => shelf.board.as_str(),
            (Self::ShelfAt, Thing::Shelf(shelf)) => match shelf.at {
                ShelfHeight::Hole(place) => return Some(format!("at a hole, {place}")),
                ShelfHeight::Underside(_) => "as typed",
            },
            (Self::FrontKind, Thing::Front(front)) => front.kind.words(),
            (Self::FrontHeightWay, Thing::Front(front)) => {
                return Some(match front.height {
                    FrontHeight::Ratio(share) => format!("share {share}"),
                    FrontHeight::Modules(count) => format!("{count} modules"),
                    FrontHeight::Fixed(height) => format!("as typed, {}", height.show(unit)),
                });
            }
            _ => return None,
        };
        Some(words.to_string())
    }

    /// The step to the next way.
    pub(super) fn step_on(self, job: &Job, cabinet: Key, part: Key) -> Result<Step, Refusal> {
        change_fronts(job, cabinet, |edited| {
            let before = edited.clone();
            let lacks = || Refusal(format!("this part has no choice of {}", self.words()));
            self.put_next(edited, &before, job, part)
                .ok_or_else(lacks)?;
            let value = self.value(edited, part, job.unit).unwrap_or_default();
            Ok(format!("{} {value}", self.words()))
        })
    }

    fn put_next(self, cabinet: &mut Cabinet, before: &Cabinet, job: &Job, part: Key) -> Option<()> {
        match (self, thing_mut(cabinet, part)?) {
            (Self::WidthShare, ThingMut::Opening(_, Some(width))) => {
                *width = match width {
                    PartWidth::Fixed(_) => PartWidth::Equal,
                    PartWidth::Equal => {
                        PartWidth::Fixed(Layout::of(before, job).opening(part)?.width)
                    }
                };
            }
            (Self::Inset, ThingMut::Opening(opening, _)) => {
                let inset = &mut bay_mut(&mut opening.division)?.inset;
                *inset = match inset {
                    Some(_) => None,
                    None => Some(Inset::default()),
                };
            }
            (Self::PinRows, ThingMut::Opening(opening, _)) => {
                let rows = &mut bay_mut(&mut opening.division)?.pin_rows;
                *rows = match rows {
                    PinRows::Two => PinRows::Three,
                    PinRows::Three => PinRows::Two,
                };
            }
            (Self::PastFoot, ThingMut::Partition(partition)) => turn(&mut partition.foot.runs_past),
            (Self::PastHead, ThingMut::Partition(partition)) => turn(&mut partition.head.runs_past),
            (Self::Board, ThingMut::Partition(partition)) => {
                next_board(&mut partition.board, &job.cards)?;
            }
            (Self::Board, ThingMut::Shelf(shelf)) => next_board(&mut shelf.board, &job.cards)?,
            (Self::ShelfAt, ThingMut::Shelf(shelf)) => {
                let layout = Layout::of(before, job);
                let owned = |panel: &&crate::layout::PanelLayout| panel.owner == Some(part);
                let z = layout.panels.iter().find(owned)?.z;
                shelf.at = match shelf.at {
                    ShelfHeight::Hole(_) => ShelfHeight::Underside(z.from),
                    ShelfHeight::Underside(_) => {
                        let middle = z.from + (z.to - z.from).half();
                        ShelfHeight::Hole(HolePlace::foot(layout.nearest_hole(middle)))
                    }
                };
            }
            (Self::FrontKind, ThingMut::Front(front)) => front.kind = next_kind(front.kind),
            (Self::FrontHeightWay, ThingMut::Front(front)) => {
                let layout = Layout::of(before, job);
                let made = layout.fronts.iter().find(|made| made.key == part)?;
                let height = made.height;
                front.height = match front.height {
                    FrontHeight::Ratio(_) => {
                        let over = opening_of(before, made.opening).ok()?;
                        let gap = gap_of(&job.shop.fronts, over);
                        let modules = (height.total() + gap).div_floor(Length::PITCH);
                        FrontHeight::Modules(u16::try_from(modules).unwrap_or(1).max(1))
                    }
                    FrontHeight::Modules(_) => FrontHeight::Fixed(height.total()),
                    FrontHeight::Fixed(_) => FrontHeight::Ratio(1),
                };
            }
            _ => return None,
        }
        Some(())
    }
}

fn turn(choice: &mut bool) {
    *choice = !*choice;
}

/// The board card after this one, and after the last the first again; `None` when there is no other.
pub(super) fn next_board(id: &mut CardId, cards: &Cards) -> Option<()> {
    let at = cards.boards.iter().position(|board| board.id == *id)?;
    let next = cards
        .boards
        .get((at + 1) % cards.boards.len())
        .filter(|board| board.id != *id)?;
    *id = next.id.clone();
    Some(())
}

fn next_kind(kind: FrontKind) -> FrontKind {
    match kind {
        FrontKind::Door(Hand::Left) => FrontKind::Door(Hand::Right),
        FrontKind::Door(Hand::Right) => FrontKind::Pair,
        FrontKind::Pair => FrontKind::Drawer,
        FrontKind::Drawer => FrontKind::Inner,
        FrontKind::Inner => FrontKind::False,
        FrontKind::False => FrontKind::Door(Hand::Left),
    }
}
