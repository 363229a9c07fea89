//! A card of what guides the drill: an indexed rail, a hand jig, a machine's bed.

use alloc::vec::Vec;
use core::ops::RangeInclusive;

use super::{CardId, Sourced};
use crate::label::Label;
use crate::measure::Length;

/// What guides the drill.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum RailKind {
    /// A rail with index holes.
    IndexedRail,
    /// A jig held in the hand: a short rail.
    HandJig,
    /// A machine's bed, with a zero corner.
    MachineBed,
}

impl RailKind {
    /// All three, in the order a user steps through them.
    pub const ALL: [Self; 3] = [Self::IndexedRail, Self::HandJig, Self::MachineBed];

    /// The words a person reads.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::IndexedRail => "indexed rail",
            Self::HandJig => "hand jig",
            Self::MachineBed => "machine bed",
        }
    }
}

/// A corner of a machine's bed, seen by whoever stands before it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Corner {
    /// Near and left.
    NearLeft,
    /// Near and right.
    NearRight,
    /// Far and left.
    FarLeft,
    /// Far and right.
    FarRight,
}

impl Corner {
    /// All four, in the order a user steps through them.
    pub const ALL: [Self; 4] = [
        Self::NearLeft,
        Self::NearRight,
        Self::FarLeft,
        Self::FarRight,
    ];

    /// Whether it is on the left.
    #[must_use]
    pub fn is_left(self) -> bool {
        matches!(self, Self::NearLeft | Self::FarLeft)
    }

    /// Whether it is near.
    #[must_use]
    pub fn is_near(self) -> bool {
        matches!(self, Self::NearLeft | Self::NearRight)
    }

    /// The words a person reads.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::NearLeft => "near left",
            Self::NearRight => "near right",
            Self::FarLeft => "far left",
            Self::FarRight => "far right",
        }
    }
}

/// Which axis runs along a bed, from left to right, and which way it grows; the other one runs across.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Along {
    /// x, growing to the right.
    XRight,
    /// x, growing to the left.
    XLeft,
    /// y, growing to the right.
    YRight,
    /// y, growing to the left.
    YLeft,
}

impl Along {
    /// All four, in the order a user steps through them.
    pub const ALL: [Self; 4] = [Self::XRight, Self::XLeft, Self::YRight, Self::YLeft];

    /// The words a person reads.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::XRight => "x to the right",
            Self::XLeft => "x to the left",
            Self::YRight => "y to the right",
            Self::YLeft => "y to the left",
        }
    }
}

/// Which way the axis grows that runs across a bed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Across {
    /// Away from whoever stands before it.
    Away,
    /// Toward them.
    Toward,
}

impl Across {
    /// Both, in the order a user steps through them.
    pub const ALL: [Self; 2] = [Self::Away, Self::Toward];

    /// The words a person reads.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Away => "away from you",
            Self::Toward => "toward you",
        }
    }
}

/// Where a machine counts from, and which way; of other rails it says nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Bed {
    /// The longest panel that lies on it, from left to right.
    pub length: Sourced<Length>,
    /// The widest.
    pub width: Sourced<Length>,
    /// The corner where both axes are zero, and the panel lies.
    pub zero: Corner,
    /// The axis along it.
    pub along: Along,
    /// The axis across it.
    pub across: Across,
}

impl Bed {
    /// Whether x, and not y, runs along it.
    #[must_use]
    pub fn is_x_along(&self) -> bool {
        matches!(self.along, Along::XRight | Along::XLeft)
    }

    /// Whether the axis along it grows from the zero corner over the bed, and whether the one across it does.
    #[must_use]
    pub fn grows(&self) -> (bool, bool) {
        let to_right = matches!(self.along, Along::XRight | Along::YRight);
        let away = self.across == Across::Away;
        (to_right == self.zero.is_left(), away == self.zero.is_near())
    }

    /// x and y of a place on it, from how far it is from the zero corner along the bed and across it. An axis that grows the
    /// other way counts below zero.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::cards::{Along, Bed, Corner};
    /// use gablerow_core::measure::Length;
    ///
    /// let (along, across) = (Length::from_mm(336), Length::from_mm(37));
    /// assert_eq!(Bed::default().place(along, across), (along, across));
    /// // From the right end, y to the right: y runs off the bed there, so it counts below zero.
    /// let bed = Bed { zero: Corner::NearRight, along: Along::YRight, ..Bed::default() };
    /// assert_eq!(bed.place(along, across), (across, -along));
    /// ```
    #[must_use]
    pub fn place(&self, along: Length, across: Length) -> (Length, Length) {
        let signed = |length: Length, grows| if grows { length } else { -length };
        let (along_grows, across_grows) = self.grows();
        let (along, across) = (signed(along, along_grows), signed(across, across_grows));
        match self.is_x_along() {
            true => (along, across),
            false => (across, along),
        }
    }
}

impl Default for Bed {
    /// 2800 by 1250, x to the right and y away from the near left corner: house guesses.
    fn default() -> Self {
        Self {
            length: Sourced::guess(Length::from_mm(2_800)),
            width: Sourced::guess(Length::from_mm(1_250)),
            zero: Corner::NearLeft,
            along: Along::XRight,
            across: Across::Away,
        }
    }
}

/// What is known of a rail.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rail {
    /// Its stable name.
    pub id: CardId,
    /// What people call it.
    pub title: Label,
    /// What it is.
    pub kind: RailKind,
    /// How many index holes it has.
    pub index_holes: Sourced<u32>,
    /// From one index hole to the next.
    pub pitch: Sourced<Length>,
    /// The end offsets its stop gives, one for each of the stop's faces; never empty.
    pub stops: Vec<Length>,
    /// The least setback its arm reaches, from the edge on the fence.
    pub reach_least: Sourced<Length>,
    /// The most.
    pub reach_most: Sourced<Length>,
    /// How wide it is, across the rows.
    pub width: Sourced<Length>,
    /// How much panel must lie under it beyond the row.
    pub support: Sourced<Length>,
    /// How far a pin moves in an index hole.
    pub play: Sourced<Length>,
    /// A machine's bed.
    pub bed: Bed,
}

impl Rail {
    /// How many holes at the pitch it covers where it lies: a rail as many as it has index holes, a bed what lies on it.
    #[must_use]
    pub fn covers(&self) -> i16 {
        let holes = match self.kind {
            RailKind::MachineBed => self.bed.length.value.div_floor(Length::PITCH),
            RailKind::IndexedRail | RailKind::HandJig => {
                i32::try_from(self.index_holes.value).unwrap_or(i32::MAX)
            }
        };
        i16::try_from(holes).unwrap_or(i16::MAX)
    }

    /// The settings it can be put to, both ends included.
    #[must_use]
    pub fn reach(&self) -> RangeInclusive<Length> {
        match self.kind {
            RailKind::MachineBed => Length::ZERO..=self.bed.width.value,
            _ => self.reach_least.value..=self.reach_most.value,
        }
    }

    /// How much panel must lie beyond the row: a rail rests on it, a machine needs none.
    #[must_use]
    pub fn support_needed(&self) -> Length {
        match self.kind {
            RailKind::MachineBed => Length::ZERO,
            _ => self.support.value,
        }
    }
}
