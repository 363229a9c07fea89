//! A face as strokes: decided once, and only projected by every screen and paper.
//!
//! Strokes are in panel coordinates: `x` from the panel's front edge toward its back, `y` from its foot up. They are listed
//! in the order they are painted, so that what comes later lies on top.

use alloc::vec;
use alloc::vec::Vec;

use crate::check::{Finding, Level};
use crate::job::{FaceId, FaceName, Hand, Key};
use crate::layout::{Hole, Item, Layout, RowName, Span, Upright, Use};
use crate::measure::Length;
use crate::sum::Sum;

/// Everything to be drawn of one face.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FaceDrawing {
    /// Which face.
    pub face: FaceId,
    /// What it is called.
    pub name: FaceName,
    /// Front edge to back edge.
    pub depth: Length,
    /// Foot to head.
    pub length: Length,
    /// From the foot up to hole 1 of the cabinet's grid; below 0 when the foot is above it.
    pub first_hole: Length,
    /// The lowest and the highest hole number the panel has; the second is below the first when it has none.
    pub holes: (i16, i16),
    /// The corners of the panel, from the lower front one toward the back and round.
    pub outline: Vec<(Length, Length)>,
    /// The lines a person walks along, front to back: those of the bays here, and all that have holes, free holes of no row
    /// among them.
    pub rows: Vec<RowLine>,
    /// Areas, lowest first.
    pub areas: Vec<Area>,
    /// Holes, row by row from the front, each row from the foot up; single ones last.
    pub dots: Vec<Dot>,
    /// Holes of open rows on which a pin would be wrong: from the front edge to the row, and the hole number. None until
    /// somebody asks for them.
    pub barred: Vec<(Length, i16)>,
}

/// A row of a face, whether it has holes or not.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RowLine {
    /// Which row.
    pub name: RowName,
    /// From the panel's front edge.
    pub x: Length,
    /// From the carcass front, with its terms.
    pub from_carcass: Sum,
    /// Whether every hole of it can be used, as in front and back rows; other rows show only what is bored.
    pub is_open: bool,
}

/// An area of a face.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Area {
    /// What it is.
    pub kind: AreaKind,
    /// Front to back.
    pub x: Span,
    /// Foot to head.
    pub y: Span,
}

/// What an area is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum AreaKind {
    /// What the back panel takes.
    Back,
    /// Space before the face that a fitting needs.
    KeepOut(Item, Option<Key>),
    /// The end of a fixed panel.
    FixedPanel(Item, Option<Key>),
}

/// One hole.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Dot {
    /// From the front edge to its centre.
    pub x: Length,
    /// From the foot to its centre.
    pub y: Length,
    /// The hole itself.
    pub hole: Hole,
    /// The level of the worst open finding at this place.
    pub trouble: Option<Level>,
}

impl FaceDrawing {
    /// Draws a face of a layout; `None` when the layout has no such face.
    #[must_use]
    pub fn of(layout: &Layout, id: FaceId, findings: &[Finding]) -> Option<Self> {
        let upright = layout.upright(id.panel)?;
        let face = upright.face(id.toward);
        let (front, foot) = (upright.front.total(), upright.foot.total());
        let dots = face.holes(layout).into_iter().map(|hole| Dot {
            x: hole.x - front,
            y: hole.z - foot,
            trouble: trouble(findings, id, &hole),
            hole,
        });
        Some(Self {
            face: id,
            name: layout.names.face(id),
            depth: upright.depth(),
            length: upright.length(),
            first_hole: layout.grid.first - foot,
            holes: upright.holes,
            outline: outline(upright),
            rows: rows(layout, upright, id),
            areas: areas(upright, id),
            dots: dots.collect(),
            barred: Vec::new(),
        })
    }

    /// Whether the front edge is on the left as the face is seen with its foot down, as on a left wall.
    #[must_use]
    pub fn is_front_left(&self) -> bool {
        self.face.toward == Hand::Right
    }

    /// How far something is from the edge that is on the left as the face is seen with its foot down, when it is `x` from
    /// the front edge.
    #[must_use]
    pub fn from_left(&self, x: Length) -> Length {
        match self.is_front_left() {
            true => x,
            false => self.depth - x,
        }
    }

    /// The height of a hole number above the foot; the number may lie off the panel.
    #[must_use]
    pub fn height(&self, number: i16) -> Length {
        self.first_hole + Length::PITCH * (i32::from(number) - 1)
    }

    /// The hole at a place, if there is one: on this number, or off the grid and nearer to it than to any other that the
    /// panel has.
    #[must_use]
    pub fn dot_at(&self, x: Length, number: i16) -> Option<&Dot> {
        let away = |dot: &&Dot| (dot.y - self.height(number)).abs();
        let here = |dot: &&Dot| dot.x == x && self.nearest(dot.y) == number;
        self.dots.iter().filter(here).min_by_key(away)
    }

    /// The number of the hole nearest to a height above the foot, of those the panel has.
    #[must_use]
    pub fn nearest(&self, y: Length) -> i16 {
        let pitches = (y - self.first_hole + Length::PITCH.half()).div_floor(Length::PITCH);
        let (lowest, highest) = self.holes;
        let number = i16::try_from(pitches.saturating_add(1)).unwrap_or(i16::MAX);
        number.min(highest).max(lowest)
    }
}

fn trouble(findings: &[Finding], face: FaceId, hole: &Hole) -> Option<Level> {
    let number = hole.number?;
    let here = |finding: &&Finding| {
        let place = &finding.place;
        // What two holes back to back do to each other is said of one face and drawn on both.
        let back_to_back = finding.rule.is_back_to_back() && place.face == Some(face.behind());
        (place.face == Some(face) || back_to_back)
            && place.row.is_none_or(|row| row == hole.x)
            && place
                .holes
                .is_some_and(|(first, last)| (first..=last).contains(&number))
    };
    findings
        .iter()
        .filter(|finding| finding.accepted.is_none())
        .filter(here)
        .map(|finding| finding.level)
        .min()
}

fn outline(upright: &Upright) -> Vec<(Length, Length)> {
    let (zero, depth, length) = (Length::ZERO, upright.depth(), upright.length());
    match upright.notch {
        None => vec![(zero, zero), (depth, zero), (depth, length), (zero, length)],
        Some(notch) => vec![
            (notch.depth, zero),
            (depth, zero),
            (depth, length),
            (zero, length),
            (zero, notch.height),
            (notch.depth, notch.height),
        ],
    }
}

fn rows(layout: &Layout, upright: &Upright, id: FaceId) -> Vec<RowLine> {
    let front = upright.front.total();
    let line = |name, sum: Sum, is_open| RowLine {
        name,
        x: sum.total() - front,
        from_carcass: sum,
        is_open,
    };
    let mut rows = Vec::new();
    for (bay, _) in layout.bays_at(id) {
        rows.push(line(RowName::Front, bay.front_row, true));
        rows.push(line(RowName::Back, bay.back_row, true));
    }
    rows.extend(
        upright
            .face(id.toward)
            .rows
            .iter()
            .map(|row| line(row.name, row.x, false)),
    );
    let bores = upright.face(id.toward).bores.iter();
    let free = bores.filter(|bore| bore.spec.use_ == Use::Free);
    rows.extend(free.map(|bore| line(RowName::Free, Sum::of("the free hole", bore.x), false)));
    // Of rows on one line the open one stays, named by the first of its names.
    rows.sort_by_key(|row| (row.x, !row.is_open, row.name));
    rows.dedup_by_key(|row| row.x);
    rows
}

fn areas(upright: &Upright, id: FaceId) -> Vec<Area> {
    let (front, foot) = (upright.front.total(), upright.foot.total());
    let moved = |span: Span, by: Length| Span::new(span.from - by, span.to - by);
    let mut areas: Vec<Area> = upright
        .face(id.toward)
        .keep_outs
        .iter()
        .map(|keep_out| Area {
            kind: match keep_out.item.is_fixed_panel() {
                true => AreaKind::FixedPanel(keep_out.item, keep_out.owner),
                false => AreaKind::KeepOut(keep_out.item, keep_out.owner),
            },
            x: moved(keep_out.x, front),
            y: moved(keep_out.z, foot),
        })
        .collect();
    if upright.back_taken > Length::ZERO {
        let (depth, length) = (upright.depth(), upright.length());
        areas.push(Area {
            kind: AreaKind::Back,
            x: Span::new(depth - upright.back_taken, depth),
            y: Span::new(Length::ZERO, length),
        });
    }
    areas.sort_by_key(|area| area.kind);
    areas
}
