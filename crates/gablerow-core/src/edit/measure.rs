//! Every length a person can type on the face screen: one table.

use alloc::boxed::Box;
use alloc::format;
use alloc::string::{String, ToString};

use super::{Refusal, cabinet, change, change_shop, nothing};
use crate::history::{Change, Step};
use crate::job::{Back, Cabinet, Carcass, EndOffsets, Job, Key, Notch, Size, Stand, TopKind};
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
    /// How deep the ends of the bottom are let into the sides.
    HousingBottom,
    /// How deep the ends of the top or the stretchers are let into the sides.
    HousingTop,
    /// Height of the rail before the back panel.
    Rail,
    /// Height of feet or plinth.
    Stand,
    /// How far the sides run below the carcass underside.
    Below,
    /// Height of the toe notch.
    NotchHeight,
    /// Depth of the toe notch.
    NotchDepth,
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
    pub const ALL: [Self; 18] = [
        Self::Height,
        Self::Width,
        Self::Depth,
        Self::OffsetFoot,
        Self::OffsetHead,
        Self::Board,
        Self::BackTaken,
        Self::Stretcher,
        Self::HousingBottom,
        Self::HousingTop,
        Self::Rail,
        Self::Stand,
        Self::Below,
        Self::NotchHeight,
        Self::NotchDepth,
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
            Self::HousingBottom => "bottom let in",
            Self::HousingTop => "top let in",
            Self::Rail => "rail height",
            Self::Stand => "stand height",
            Self::Below => "sides below",
            Self::NotchHeight => "notch up",
            Self::NotchDepth => "notch back",
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
            Self::Stretcher | Self::Rail => &range::STRETCHER_WIDTH,
            Self::HousingBottom | Self::HousingTop => &range::HOUSING,
            Self::Stand | Self::Below => &range::PLINTH,
            Self::NotchHeight | Self::NotchDepth => &range::NOTCH,
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
            own => {
                let (mut size, mut offsets) = (cabinet.size, cabinet.offsets);
                let carcass = &cabinet.carcass;
                let (mut back, mut top) = (carcass.back, carcass.top.kind);
                let (mut bottom_in, mut top_in) =
                    (carcass.bottom.joint.housing, carcass.top.joint.housing);
                let (mut below, mut notch) = (carcass.sides.below, carcass.sides.notch);
                let mut rail = carcass.rail.as_ref().map(|rail| rail.height);
                let mut stand = carcass.stand;
                own.place(Own {
                    size: &mut size,
                    offsets: &mut offsets,
                    back: &mut back,
                    top: &mut top,
                    bottom_in: &mut bottom_in,
                    top_in: &mut top_in,
                    below: &mut below,
                    notch: notch.as_mut(),
                    rail: rail.as_mut(),
                    stand: stand.as_mut(),
                })
                .copied()
            }
        }
    }

    /// The step that sets it.
    pub(super) fn set(self, job: &Job, key: Key, value: Length) -> Result<Step, Refusal> {
        self.range()
            .check(value)
            .map_err(|wrong| Refusal(wrong.show(job.unit)))?;
        let (_, seen_from) = cabinet(job, key)?;
        let label = format!("{} {}", self.words(), value.exact(job.unit));
        match self {
            Self::Board => set_board(job, seen_from, value, label),
            Self::SetbackFront | Self::SetbackBack | Self::BoreDepth => change_shop(job, |shop| {
                match self {
                    Self::SetbackFront => shop.setback_front = value,
                    Self::SetbackBack => shop.setback_back = value,
                    _ => shop.depth = value,
                }
                label
            }),
            own => change(job, key, |cabinet| {
                let Carcass {
                    sides,
                    bottom,
                    top,
                    back,
                    rail,
                    stand,
                } = &mut cabinet.carcass;
                let place = own.place(Own {
                    size: &mut cabinet.size,
                    offsets: &mut cabinet.offsets,
                    back,
                    top: &mut top.kind,
                    bottom_in: &mut bottom.joint.housing,
                    top_in: &mut top.joint.housing,
                    below: &mut sides.below,
                    notch: sides.notch.as_mut(),
                    rail: rail.as_mut().map(|rail| &mut rail.height),
                    stand: stand.as_mut(),
                });
                *place.ok_or_else(|| Refusal(own.missing().to_string()))? = value;
                Ok(label)
            }),
        }
    }

    /// What is said of a cabinet that has no such length.
    #[must_use]
    pub fn missing(self) -> &'static str {
        match self {
            Self::BackTaken => "this cabinet has its back in no groove or rabbet",
            Self::Stretcher => "this cabinet has no stretchers",
            Self::Rail => "this cabinet has no back rail",
            Self::Stand => "this cabinet has neither feet nor plinth",
            Self::NotchHeight | Self::NotchDepth => "the sides of this cabinet have no notch",
            _ => "this cabinet has no such length",
        }
    }
}

/// Where a cabinet keeps the lengths of its own.
struct Own<'a> {
    size: &'a mut Size,
    offsets: &'a mut EndOffsets,
    back: &'a mut Back,
    top: &'a mut TopKind,
    bottom_in: &'a mut Length,
    top_in: &'a mut Length,
    below: &'a mut Length,
    notch: Option<&'a mut Notch>,
    rail: Option<&'a mut Length>,
    stand: Option<&'a mut Stand>,
}

impl Measure {
    /// Where a length of a cabinet's own stands; `None` where it has no such thing.
    fn place(self, own: Own<'_>) -> Option<&mut Length> {
        let Own {
            size,
            offsets,
            back,
            top,
            bottom_in,
            top_in,
            below,
            notch,
            rail,
            stand,
        } = own;
        match self {
            Self::Height => Some(&mut size.height),
            Self::Width => Some(&mut size.width),
            Self::Depth => Some(&mut size.depth),
            Self::OffsetFoot => Some(&mut offsets.foot),
            Self::OffsetHead => Some(&mut offsets.head),
            Self::BackTaken => match back {
                Back::Groove {
                    to_front_wall: taken,
                    ..
                }
                | Back::Rabbet { run: taken } => Some(taken),
                Back::Planted | Back::Open => None,
            },
            Self::Stretcher => match top {
                TopKind::FlatStretchers(width) | TopKind::EdgeStretchers(width) => Some(width),
                TopKind::Panel(_) => None,
            },
            Self::HousingBottom => Some(bottom_in),
            Self::HousingTop => Some(top_in),
            Self::Below => Some(below),
            Self::NotchHeight => notch.map(|notch| &mut notch.height),
            Self::NotchDepth => notch.map(|notch| &mut notch.depth),
            Self::Rail => rail,
            Self::Stand => stand.map(|stand| match stand {
                Stand::Feet(height) | Stand::Plinth(height) => height,
            }),
            Self::Board | Self::SetbackFront | Self::SetbackBack | Self::BoreDepth => None,
        }
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
