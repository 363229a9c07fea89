//! The ranges quantities may have, each named once: check, message and help read it here.
//!
//! The bounds are house limits: wide enough for any cabinet, narrow enough to catch a slipped
//! decimal mark or a wrong unit.

use alloc::format;
use alloc::string::{String, ToString};
use core::fmt;

use super::{Length, Unit};

/// What a quantity is called, how small and how large it may be (both included), and why.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Range {
    /// The quantity in the words of the trade.
    pub name: &'static str,
    /// The smallest length allowed, included.
    pub min: Length,
    /// The largest length allowed, included.
    pub max: Length,
    /// Why it ends where it does, for the help.
    pub why: &'static str,
}

impl Range {
    const fn mm(name: &'static str, min: i32, max: i32, why: &'static str) -> Self {
        Self {
            name,
            min: Length::from_mm(min),
            max: Length::from_mm(max),
            why,
        }
    }

    /// The length itself when it lies inside.
    ///
    /// # Errors
    ///
    /// - [`OutOfRange`] when it is below the smallest or above the largest.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::measure::{Length, range};
    ///
    /// let error = range::BOARD_THICKNESS.check(Length::from_mm(-18)).unwrap_err();
    /// assert_eq!(error.to_string(), "board thickness: -18, but it is 3 to 60 mm");
    /// ```
    pub fn check(&self, length: Length) -> Result<Length, OutOfRange> {
        if self.min <= length && length <= self.max {
            Ok(length)
        } else {
            Err(OutOfRange {
                range: *self,
                length,
            })
        }
    }
}

/// A length outside the range of its quantity.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OutOfRange {
    /// The range it should lie in.
    pub range: Range,
    /// The length that does not.
    pub length: Length,
}

impl OutOfRange {
    /// As people read it who work in this unit; in mm it is what it displays.
    #[must_use]
    pub fn show(&self, unit: Unit) -> String {
        if unit == Unit::Millimetre {
            return self.to_string();
        }
        let Range { name, min, max, .. } = self.range;
        let [length, min, max] = [self.length, min, max].map(|length| length.show(unit));
        format!("{name}: {length}, but it is {min} to {max}")
    }
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Range { name, min, max, .. } = self.range;
        let [length, min, max] = [self.length, min, max].map(Length::exact_mm);
        write!(f, "{name}: {length}, but it is {min} to {max} mm")
    }
}

impl core::error::Error for OutOfRange {}

/// What a whole number is called, its bounds (both included), and why.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NumberRange {
    /// What is counted or numbered, in the words of the trade.
    pub name: &'static str,
    /// The smallest number allowed, included.
    pub min: u16,
    /// The largest number allowed, included.
    pub max: u16,
    /// Why it ends where it does, for the help.
    pub why: &'static str,
}

impl NumberRange {
    /// The number itself when it lies inside.
    ///
    /// # Errors
    ///
    /// - [`NumberOutOfRange`] when it is below the smallest or above the largest.
    pub fn check(&self, number: i64) -> Result<u16, NumberOutOfRange> {
        u16::try_from(number)
            .ok()
            .filter(|number| (self.min..=self.max).contains(number))
            .ok_or(NumberOutOfRange {
                range: *self,
                number,
            })
    }
}

/// A whole number outside the range of what it counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NumberOutOfRange {
    /// The range it should lie in.
    pub range: NumberRange,
    /// The number that does not.
    pub number: i64,
}

impl fmt::Display for NumberOutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let NumberRange { name, min, max, .. } = self.range;
        write!(f, "{name}: {}, but it is {min} to {max}", self.number)
    }
}

impl core::error::Error for NumberOutOfRange {}

/// Declares ranges as constants and gathers them in one table, so that none can be left out.
macro_rules! table {
    ($(#[$about:meta])* $all:ident: $kind:ty;
     $($(#[$doc:meta])* $name:ident = $range:expr;)+) => {
        $($(#[$doc])* pub const $name: $kind = $range;)+

        $(#[$about])*
        pub const $all: &[&$kind] = &[$(&$name),+];
    };
}

table! {
    /// Every range of a length, in the order of this file.
    ALL: Range;

    /// Overall width of a carcass, outer face to outer face.
    CARCASS_WIDTH = Range::mm("carcass width", 100, 6000, "wider runs are several cabinets");
    /// Height of a carcass, from the lowest to the highest of its own panels, legs left out.
    CARCASS_HEIGHT = Range::mm("carcass height", 100, 4000, "taller sides come from no sheet");
    /// Depth of a carcass, front edges to back edges, fronts left out.
    CARCASS_DEPTH = Range::mm("carcass depth", 60, 2000, "two rows to an arm's reach and more");
    /// Measured thickness of a board.
    BOARD_THICKNESS = Range::mm("board thickness", 3, 60, "from a thin back to a built-up worktop");
    /// First or last hole centre to the end of a panel that rests on the stop.
    END_OFFSET = Range::mm("end offset", 5, 200, "a hole closer to the end breaks out");
    /// Distance of a row of holes from the edge it is measured from.
    SETBACK = Range::mm("setback", 5, 1000, "a row closer to the edge breaks out");
    /// Back edge of a panel to the near side of the back panel's groove.
    GROOVE_TO_BACK_EDGE =
        Range::mm("groove to back edge", 0, 200, "rabbet or planted back to service space");
    /// Depth of the back panel's groove.
    GROOVE_DEPTH = Range::mm("groove depth", 0, 50, "0 is no groove, and boards end at 60");
    /// Thickness of an edge band.
    BAND = Range::mm("edge band", 0, 5, "0 is no band, above 5 it is a lipping");
    /// Diameter of a hole.
    HOLE_DIAMETER = Range::mm("hole diameter", 1, 60, "from a pilot to the largest cup");
    /// Depth of a hole from the face it is bored in.
    BORE_DEPTH = Range::mm("bore depth", 1, 60, "no deeper than the thickest board");
    /// How far a panel stands in a groove of its neighbour.
    HOUSING = Range::mm("housing", 0, 40, "0 is a butt joint");
    /// How far a panel's front edge lies behind the front of the carcass.
    RECESS = Range::mm("recess", 0, 1500, "0 is flush, and carcasses end at 2000");
    /// A packing between wall and hardware.
    SPACER = Range::mm("spacer", 0, 100, "0 is none, more needs a wall of its own");
    /// Clear distance between two fronts.
    GAP = Range::mm("gap", 0, 30, "0 is fronts that touch, wider ones are a rail or an opening");
    /// End or outer face of the carcass to the edge of a front that lies inside it.
    REVEAL = Range::mm("reveal", 0, 200, "0 is a front flush with the carcass");
    /// Width of a stretcher, across its grain.
    STRETCHER_WIDTH = Range::mm("stretcher width", 30, 600, "narrower ones take no joint");
    /// Height of the plinth or the legs below the carcass.
    PLINTH = Range::mm("plinth or legs", 0, 400, "0 stands on the floor, higher is a stand");
    /// Any distance on the card of a piece of hardware.
    CARD_VALUE = Range::mm("card value", 0, 2000, "no hardware is longer than a deep carcass");
    /// A distance on a card that may also lie the other way.
    SIGNED_CARD_VALUE =
        Range::mm("signed card value", -200, 2000, "no hardware reaches further the other way");
    /// Clear width or height of an opening.
    OPENING_SIZE = Range::mm("opening", 10, 6000, "smaller ones hold nothing");
    /// The clear widths of a row that are typed, together.
    ROW_WIDTHS = Range::mm("typed widths of a row", 0, 18_000, "a longer row is several cabinets");
    /// A toe notch, up from the foot or back from the front edge.
    NOTCH = Range::mm("toe notch", 10, 400, "no higher than a plinth");
    /// How far an inset front stands behind the carcass front.
    SET_IN = Range::mm("set-in", 0, 50, "0 is flush");
    /// Front edge of a loose shelf behind the bay's front.
    SHELF_SETBACK = Range::mm("shelf setback", 0, 1500, "0 is flush, and carcasses end at 2000");
    /// A loose shelf against its bay.
    SHELF_SHORTER = Range::mm("shorter than its bay", 0, 50, "no pin stands out that far");
    /// Clear height wanted over a loose shelf.
    CLEAR_OPENING = Range::mm("clear opening", 1, 4000, "no carcass is higher");
    /// A point on a panel, from one of its edges.
    CARCASS_POINT = Range::mm("distance from the edge", 0, 2000, "no further than a carcass is deep");
    /// Length of a panel as the tape reads it.
    AS_CUT_LENGTH = Range::mm("length as cut", 20, 6000, "no longer than a carcass is wide or high");
    /// What is free at the end of a panel between two stops.
    PLAY = Range::mm("play between the stops", -50, 50, "a panel further off is another panel");
    /// How far the two diagonals of a panel differ.
    DIAGONALS = Range::mm("difference of the diagonals", -100, 100, "no saw is so far out of square");
    /// A distance the checks go by.
    LIMIT = Range::mm("limit", 0, 100, "wider ones bar whole panels");
    /// The board left between cup and door edge.
    TAB = Range::mm("tab", 1, 30, "narrower ones break out");
    /// From one tab to the next.
    TAB_STEP = Range {
        name: "step of tabs",
        min: Length::from_um(100),
        max: Length::from_mm(10),
        why: "finer steps nobody can bore",
    };
    /// What heights of drawer boxes are whole multiples of.
    BOX_STEP = Range::mm("step of box heights", 1, 100, "smaller steps are no steps");
    /// A clear height about a drawer box.
    BOX_CLEARANCE = Range::mm("drawer clearance", 0, 500, "more is another drawer");
    /// From one index hole of a rail to the next.
    RAIL_PITCH = Range::mm("pitch of the rail", 1, 100, "wider ones skip whole shelves");
    /// How far a bit is off the middle of its router's base.
    BASE_OFF = Range::mm("bit off its base", 0, 20, "a base further off is not on");
    /// A side of a machine's bed.
    BED = Range::mm("machine's bed", 100, 10_000, "no panel is longer");
    /// Place of a panel in its cabinet.
    PANEL_POSITION = Range::mm("panel position", -4000, 4000, "no further than a carcass is high");
}

table! {
    /// Every range of a whole number, in the order of this file.
    ALL_NUMBERS: NumberRange;

    /// Number of a hole height, counted upward from the foot of the sides.
    HOLE_NUMBER = NumberRange {
        name: "hole number",
        min: 1,
        max: 400,
        why: "400 holes are 12.8 m, past any panel",
    };
    /// What something takes at the bench.
    SECONDS = NumberRange { name: "seconds", min: 0, max: 3600, why: "what takes an hour is another job" };
    /// How many cabinets alike.
    COPIES = NumberRange { name: "copies", min: 1, max: 1000, why: "more is another job" };
    /// Whole pitches a runner is set back from its usual place.
    SET_BACK = NumberRange { name: "set back", min: 0, max: 20, why: "20 pitches are past a deep carcass" };
    /// Modules of a front, or its share in what is left.
    SHARE = NumberRange { name: "modules or share", min: 1, max: 125, why: "125 modules are the tallest carcass" };
    /// Heights of hinge plates in stock.
    PLATES = NumberRange { name: "plates in stock", min: 1, max: 20, why: "no shop keeps more" };
    /// Thicknesses of door whose least reveal at the hinge is known.
    LEAST_REVEALS = NumberRange { name: "least reveals", min: 0, max: 20, why: "no maker lists more thicknesses" };
    /// Index holes of a rail.
    INDEX_HOLES = NumberRange { name: "index holes", min: 1, max: 400, why: "one guides a hole, and 400 are past any panel" };
    /// Faces of a stop, each another end offset.
    STOP_FACES = NumberRange { name: "faces of the stop", min: 1, max: 20, why: "no stop has more" };
    /// Lengths a runner comes in.
    RUNNER_LENGTHS = NumberRange { name: "lengths of the runner", min: 1, max: 40, why: "no maker has more" };
    /// Screws of one runner.
    SCREWS = NumberRange { name: "screws of a runner", min: 1, max: 20, why: "no runner has more" };
    /// Whole pitches from a runner's first screw to another.
    SCREW_STEP = NumberRange { name: "pitches to a screw", min: 0, max: 60, why: "60 pitches are past a deep carcass" };
    /// Mass of a board, in kg/m3.
    DENSITY = NumberRange { name: "density", min: 1, max: 10_000, why: "lead and steel are no boards" };
    /// Modulus of elasticity of a board, in N/mm2.
    STIFFNESS = NumberRange { name: "modulus of elasticity", min: 100, max: 50_000, why: "from soft boards to stiff laminates" };
    /// Sag after years as a percentage of the sag at once.
    CREEP = NumberRange { name: "creep", min: 100, max: 1000, why: "100 is none, and no board sags tenfold" };
    /// What a pair of runners carries, in kg.
    LOAD = NumberRange { name: "load of a pair", min: 1, max: 500, why: "more needs no drawer" };
    /// Openings side by side, with a partition between each two.
    PARTS = NumberRange { name: "parts side by side", min: 1, max: 40, why: "more are several cabinets" };
    /// Fronts of one opening.
    FRONTS = NumberRange { name: "fronts of an opening", min: 0, max: 40, why: "more find no room in the tallest carcass" };
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::HashSet;

    #[test]
    fn ranges_are_unique_and_sane() {
        let names: HashSet<&str> = ALL
            .iter()
            .map(|range| range.name)
            .chain(ALL_NUMBERS.iter().map(|r| r.name))
            .collect();
        assert_eq!(names.len(), ALL.len() + ALL_NUMBERS.len());
        for range in ALL {
            assert!(
                range.min < range.max && !range.why.is_empty(),
                "{}",
                range.name
            );
            assert!(
                range.min.abs().max(range.max) <= Length::from_mm(20_000),
                "{}",
                range.name
            );
        }
        for range in ALL_NUMBERS {
            assert!(
                range.min < range.max && !range.why.is_empty(),
                "{}",
                range.name
            );
        }
    }

    #[test]
    fn bounds_are_included() {
        let hair = Length::from_counts(1);
        for range in ALL {
            assert_eq!(range.check(range.min), Ok(range.min));
            assert_eq!(range.check(range.max), Ok(range.max));
            assert_eq!(
                range.check(range.min - hair).unwrap_err().length,
                range.min - hair
            );
            assert_eq!(range.check(range.max + hair).unwrap_err().range, **range);
        }
        for range in ALL_NUMBERS {
            assert_eq!(range.check(range.min.into()), Ok(range.min));
            assert_eq!(range.check(range.max.into()), Ok(range.max));
            assert!(range.check(i64::from(range.min) - 1).is_err());
            assert!(range.check(i64::from(range.max) + 1).is_err());
        }
    }

    #[test]
    fn message_says_what_and_how_much() {
        assert_eq!(
            BAND.check(Length::from_um(5_500)).unwrap_err().to_string(),
            "edge band: 5.5, but it is 0 to 5 mm"
        );
        let tall = CARCASS_HEIGHT.check(Length::from_inch_64ths(200 * 64));
        assert_eq!(
            tall.unwrap_err().show(Unit::Inch),
            "carcass height: 200\", but it is ~3 15/16\" to 157 15/32\" (~+0.3)"
        );
        assert_eq!(
            HOLE_NUMBER.check(-3).unwrap_err().to_string(),
            "hole number: -3, but it is 1 to 400"
        );
    }
}
