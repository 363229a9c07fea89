//! Every length a person can type on the face screen: one table.

use alloc::boxed::Box;
use alloc::format;
use alloc::string::{String, ToString};

use super::{Refusal, cabinet, change, nothing};
use crate::history::{Change, Step};
use crate::job::{Back, Cabinet, Job, Key, TopKind};
use crate::measure::Length;
use crate::measure::range::{self, Range};

/// A length that can be typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Measure {
    /// Carcass height.
    Height,
    /// Carcass width.
    Width,
    /// Carcass depth.
    Depth,
    /// End offset at the foot.
    OffsetFoot,
    /// End offset at the head.
    OffsetHead,
    /// Measured thickness of the sides' board.
    Board,
    /// Back edge to the groove's front wall, or depth of the rabbet.
    BackTaken,
    /// Width or height of the stretchers.
    Stretcher,
    /// Front setback.
    SetbackFront,
    /// Back setback.
    SetbackBack,
    /// Depth of blind holes.
    BoreDepth,
}

/// Whose a length is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Scope {
    /// The cabinet's own.
    Cabinet,
    /// The whole job's: every cabinet follows.
    Job,
}

impl Measure {
    /// All of them, in the order a person meets them.
    pub const ALL: [Self; 11] = [
        Self::Height,
        Self::Width,
        Self::Depth,
        Self::OffsetFoot,
        Self::OffsetHead,
        Self::Board,
        Self::BackTaken,
        Self::Stretcher,
        Self::SetbackFront,
        Self::SetbackBack,
        Self::BoreDepth,
    ];

    /// What it is called.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Height => "height",
            Self::Width => "width",
            Self::Depth => "depth",
            Self::OffsetFoot => "offset foot",
            Self::OffsetHead => "offset head",
            Self::Board => "board",
            Self::BackTaken => "behind back",
            Self::Stretcher => "stretcher",
            Self::SetbackFront => "front row",
            Self::SetbackBack => "back row",
            Self::BoreDepth => "bore depth",
        }
    }

    /// Whose it is.
    #[must_use]
    pub fn scope(self) -> Scope {
        match self {
            Self::Board | Self::SetbackFront | Self::SetbackBack | Self::BoreDepth => Scope::Job,
            _ => Scope::Cabinet,
        }
    }

    fn range(self) -> &'static Range {
        match self {
            Self::Height => &range::CARCASS_HEIGHT,
            Self::Width => &range::CARCASS_WIDTH,
            Self::Depth => &range::CARCASS_DEPTH,
            Self::OffsetFoot | Self::OffsetHead => &range::END_OFFSET,
            Self::Board => &range::BOARD_THICKNESS,
            Self::BackTaken => &range::GROOVE_TO_BACK_EDGE,
            Self::Stretcher => &range::STRETCHER_WIDTH,
            Self::SetbackFront | Self::SetbackBack => &range::SETBACK,
            Self::BoreDepth => &range::BORE_DEPTH,
        }
    }

    /// Its value as a cabinet has it; `None` where the cabinet has no such thing.
    #[must_use]
    pub fn read(self, job: &Job, cabinet: &Cabinet) -> Option<Length> {
        match self {
            Self::Board => Some(
                job.cards
                    .board(&cabinet.carcass.sides.board)?
                    .thickness
                    .value,
            ),
            Self::SetbackFront => Some(job.shop.setback_front),
            Self::SetbackBack => Some(job.shop.setback_back),
            Self::BoreDepth => Some(job.shop.depth),
            own => place(own, &mut cabinet.clone()).copied(),
        }
    }

    /// The step that sets it.
    pub(super) fn set(self, job: &Job, key: Key, value: Length) -> Result<Step, Refusal> {
        self.range()
            .check(value)
            .map_err(|wrong| Refusal(wrong.to_string()))?;
        let (_, seen_from) = cabinet(job, key)?;
        let label = format!("{} {}", self.words(), value.exact(job.unit));
        match self {
            Self::Board => set_board(job, seen_from, value, label),
            Self::SetbackFront | Self::SetbackBack | Self::BoreDepth => {
                let mut after = job.shop.clone();
                match self {
                    Self::SetbackFront => after.setback_front = value,
                    Self::SetbackBack => after.setback_back = value,
                    _ => after.depth = value,
                }
                if after == job.shop {
                    return Err(nothing());
                }
                Ok(Step {
                    label,
                    change: Change::Shop {
                        before: Box::new(job.shop.clone()),
                        after: Box::new(after),
                    },
                })
            }
            own => change(job, key, |cabinet| {
                let nothing = || Refusal(format!("this cabinet has no {}", own.words()));
                *place(own, cabinet).ok_or_else(nothing)? = value;
                Ok(label)
            }),
        }
    }
}

/// Where a cabinet keeps a length of its own.
fn place(measure: Measure, cabinet: &mut Cabinet) -> Option<&mut Length> {
    match measure {
        Measure::Height => Some(&mut cabinet.size.height),
        Measure::Width => Some(&mut cabinet.size.width),
        Measure::Depth => Some(&mut cabinet.size.depth),
        Measure::OffsetFoot => Some(&mut cabinet.offsets.foot),
        Measure::OffsetHead => Some(&mut cabinet.offsets.head),
        Measure::BackTaken => match &mut cabinet.carcass.back {
            Back::Groove {
                to_front_wall: taken,
                ..
            }
            | Back::Rabbet { run: taken } => Some(taken),
            Back::Planted | Back::Open => None,
        },
        Measure::Stretcher => match &mut cabinet.carcass.top.kind {
            TopKind::FlatStretchers(width) | TopKind::EdgeStretchers(width) => Some(width),
            TopKind::Panel(_) => None,
        },
        Measure::Board | Measure::SetbackFront | Measure::SetbackBack | Measure::BoreDepth => None,
    }
}

/// A measured thickness belongs to the board's card, so that every panel of that board follows.
fn set_board(job: &Job, cabinet: &Cabinet, value: Length, label: String) -> Result<Step, Refusal> {
    let mut after = job.cards.clone();
    let id = &cabinet.carcass.sides.board;
    let board = after.boards.iter_mut().find(|board| board.id == *id);
    board
        .ok_or_else(|| Refusal(format!("there is no board card {id}")))?
        .thickness
        .value = value;
    if after == job.cards {
        return Err(nothing());
    }
    Ok(Step {
        label,
        change: Change::Cards {
            before: Box::new(job.cards.clone()),
            after: Box::new(after),
        },
    })
}
