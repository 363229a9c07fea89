//! What no job can hold. Reader and editor ask here, so that whatever the editor can reach can be read again.

use alloc::collections::BTreeSet;
use alloc::format;
use alloc::string::{String, ToString};
use core::fmt;

use super::{
    Bay, Cabinet, Carcass, Copy, Depth, Division, FreeHole, FreeRow, Front, FrontHeight, FrontKind,
    HolePlace, Job, Joint, Opening, PartWidth, Partition, Runner, ShelfHeight, Shop, TopKind,
};
use crate::cards::{CardId, Cards};
use crate::job::Back;
use crate::measure::Length;
use crate::measure::range::{self, NumberRange, Range};

/// The most cabinets of one job.
pub(crate) const CABINETS_MOST: usize = 10_000;
/// The most openings within openings.
const NESTING_MOST: u8 = 12;

/// Where a job holds what no job can hold, what that is, and what is allowed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// The place, as the job file names it: `cabinets[2].size.height`.
    pub path: String,
    /// The value that stands there and what may stand there.
    pub problem: String,
}

type Checked = Result<(), Fault>;

impl Fault {
    fn new(field: &str, problem: impl fmt::Display) -> Self {
        Self {
            path: field.to_string(),
            problem: problem.to_string(),
        }
    }

    fn within(self, outer: &str) -> Self {
        let dot = if self.path.starts_with('[') { "" } else { "." };
        Self {
            path: format!("{outer}{dot}{}", self.path),
            ..self
        }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.path, self.problem)
    }
}

impl core::error::Error for Fault {}

/// Checks each item of a list and puts its place before the fault of the first that has one.
fn each<T>(list: &[T], name: &str, check: impl Fn(&T) -> Checked) -> Checked {
    for (at, item) in list.iter().enumerate() {
        check(item).map_err(|fault| fault.within(&format!("{name}[{at}]")))?;
    }
    Ok(())
}

fn length(field: &str, range: &Range, value: Length) -> Checked {
    range
        .check(value)
        .map(drop)
        .map_err(|wrong| Fault::new(field, wrong))
}

fn number(field: &str, range: &NumberRange, value: i64) -> Checked {
    range
        .check(value)
        .map(drop)
        .map_err(|wrong| Fault::new(field, wrong))
}

fn card(field: &str, kind: &str, id: &CardId, found: bool) -> Checked {
    if found {
        Ok(())
    } else {
        Err(Fault::new(
            field,
            format!("{id}, but the job has no {kind} card of that id"),
        ))
    }
}

impl Job {
    /// Whether the job holds only what a job can hold.
    ///
    /// # Errors
    /// The first of these, with its place:
    /// - a length or a number outside its range, openings too deep within each other or too many side by side;
    /// - two cabinets of one key or of one name, two things of one key in a cabinet, two cards of one kind with one id;
    /// - a card that is named and not there;
    /// - more cabinets than a job may have; a cabinet without a copy; a runner without a length.
    pub fn validate(&self) -> Checked {
        self.cards
            .validate()
            .map_err(|fault| fault.within("cards"))?;
        self.shop
            .validate(&self.cards)
            .map_err(|fault| fault.within("shop"))?;
        if self.cabinets.len() > CABINETS_MOST {
            let problem = format!(
                "{} cabinets, but a job has at most {CABINETS_MOST}",
                self.cabinets.len()
            );
            return Err(Fault::new("cabinets", problem));
        }
        let (mut keys, mut names) = (BTreeSet::new(), BTreeSet::new());
        each(&self.cabinets, "cabinets", |cabinet| {
            cabinet.validate(&self.cards)
        })?;
        for (at, cabinet) in self.cabinets.iter().enumerate() {
            let twice = |field: &str, what: &dyn fmt::Display| {
                Err(Fault::new(
                    field,
                    format!("{what}, but an earlier cabinet has that already"),
                ))
                .map_err(|fault: Fault| fault.within(&format!("cabinets[{at}]")))
            };
            if !keys.insert(cabinet.key) {
                return twice("key", &cabinet.key);
            }
            if !names.insert(&cabinet.name) {
                return twice("name", &cabinet.name);
            }
        }
        each(&self.bored, "bored", |bored| {
            length("diameter", &range::HOLE_DIAMETER, bored.diameter)?;
            length("from_front", &range::PANEL_POSITION, bored.from_front)?;
            length("from_foot", &range::PANEL_POSITION, bored.from_foot)?;
            bored
                .depth
                .map_or(Ok(()), |depth| length("depth", &range::BORE_DEPTH, depth))
        })
    }
}

impl Shop {
    fn validate(&self, cards: &Cards) -> Checked {
        length("setback_front", &range::SETBACK, self.setback_front)?;
        length("setback_back", &range::SETBACK, self.setback_back)?;
        length("diameter", &range::HOLE_DIAMETER, self.diameter)?;
        length("depth", &range::BORE_DEPTH, self.depth)?;
        card(
            "board",
            "board",
            &self.board,
            cards.board(&self.board).is_some(),
        )?;
        card(
            "hinge",
            "hinge",
            &self.hinge,
            cards.hinge(&self.hinge).is_some(),
        )?;
        card(
            "runner",
            "runner",
            &self.runner,
            cards.runner(&self.runner).is_some(),
        )?;
        card("pin", "pin", &self.pin, cards.pin(&self.pin).is_some())?;
        let limits = &self.limits;
        for (field, value) in [
            ("to_end", limits.to_end),
            ("to_edge", limits.to_edge),
            ("to_back", limits.to_back),
            ("near", limits.near),
            ("skin_flat", limits.skin_flat),
            ("skin_pointed", limits.skin_pointed),
            ("web", limits.web),
            ("spare", limits.spare),
            ("close", limits.close),
        ] {
            length(field, &range::LIMIT, value).map_err(|fault| fault.within("limits"))?;
        }
        Ok(())
    }
}

impl Cards {
    fn validate(&self) -> Checked {
        fn unique<'a>(name: &str, ids: impl Iterator<Item = &'a CardId>) -> Checked {
            let mut seen = BTreeSet::new();
            for (at, id) in ids.enumerate() {
                if !seen.insert(id) {
                    let problem = format!("{id}, but an earlier card has that id already");
                    return Err(Fault::new(&format!("{name}[{at}].id"), problem));
                }
            }
            Ok(())
        }
        unique("boards", self.boards.iter().map(|card| &card.id))?;
        unique("hinges", self.hinges.iter().map(|card| &card.id))?;
        unique("runners", self.runners.iter().map(|card| &card.id))?;
        unique("pins", self.pins.iter().map(|card| &card.id))?;
        each(&self.boards, "boards", |board| {
            length("nominal", &range::BOARD_THICKNESS, board.nominal)?;
            length("thickness", &range::BOARD_THICKNESS, board.thickness.value)
        })?;
        each(&self.hinges, "hinges", |hinge| {
            length("half_zone", &range::CARD_VALUE, hinge.half_zone.value)?;
            length("reach", &range::CARD_VALUE, hinge.reach.value)?;
            length("proud", &range::CARD_VALUE, hinge.proud.value)?;
            length("pen", &range::CARD_VALUE, hinge.pen.value)
        })?;
        each(&self.runners, "runners", |runner| {
            for (field, value) in [
                ("first_hole", runner.first_hole),
                ("stand_back", runner.stand_back),
                ("line", runner.line),
                ("below", runner.below),
                ("above", runner.above),
                ("width", runner.width),
                ("pen", runner.pen),
            ] {
                length(field, &range::CARD_VALUE, value.value)?;
            }
            if runner.lengths.is_empty() {
                return Err(Fault::new(
                    "lengths",
                    "none, but a runner card needs at least one length",
                ));
            }
            each(&runner.lengths, "lengths", |made| {
                length("name", &range::CARD_VALUE, made.name)?;
                length("need", &range::CARD_VALUE, made.need.value)
            })
        })?;
        each(&self.pins, "pins", |pin| {
            length("pen", &range::CARD_VALUE, pin.pen.value)?;
            length("rise", &range::CARD_VALUE, pin.rise.value)
        })
    }
}

impl Cabinet {
    /// Whether the cabinet holds only what a cabinet of a job with these cards can hold.
    ///
    /// # Errors
    /// As [`Job::validate`], with places counted from the cabinet.
    pub fn validate(&self, cards: &Cards) -> Checked {
        let size = self.size;
        length("width", &range::CARCASS_WIDTH, size.width).map_err(|f| f.within("size"))?;
        length("height", &range::CARCASS_HEIGHT, size.height).map_err(|f| f.within("size"))?;
        length("depth", &range::CARCASS_DEPTH, size.depth).map_err(|f| f.within("size"))?;
        length("foot", &range::END_OFFSET, self.offsets.foot).map_err(|f| f.within("offsets"))?;
        length("head", &range::END_OFFSET, self.offsets.head).map_err(|f| f.within("offsets"))?;
        self.carcass
            .validate(cards)
            .map_err(|f| f.within("carcass"))?;
        self.opening
            .validate(cards, NESTING_MOST)
            .map_err(|f| f.within("opening"))?;
        each(&self.free_rows, "free_rows", FreeRow::validate)?;
        each(&self.free_holes, "free_holes", FreeHole::validate)?;
        if self.copies.is_empty() {
            return Err(Fault::new(
                "copies",
                "none, but a cabinet is built at least once",
            ));
        }
        number(
            "copies",
            &range::COPIES,
            i64::try_from(self.copies.len()).unwrap_or(i64::MAX),
        )?;
        each(&self.copies, "copies", Copy::validate)?;
        let (mut seen, mut twice) = (BTreeSet::new(), None);
        self.each_key(&mut |key| {
            if !seen.insert(key) {
                twice = Some(key);
            }
        });
        twice.map_or(Ok(()), |key| {
            Err(Fault::new(
                "key",
                format!("{key}, but two things of the cabinet have it"),
            ))
        })
    }
}

impl Carcass {
    fn validate(&self, cards: &Cards) -> Checked {
        for (part, id) in [
            ("sides", &self.sides.board),
            ("bottom", &self.bottom.board),
            ("top", &self.top.board),
        ] {
            card("board", "board", id, cards.board(id).is_some()).map_err(|f| f.within(part))?;
        }
        length("below", &range::PLINTH, self.sides.below).map_err(|f| f.within("sides"))?;
        if let Some(notch) = self.sides.notch {
            length("height", &range::NOTCH, notch.height).map_err(|f| f.within("sides.notch"))?;
            length("depth", &range::NOTCH, notch.depth).map_err(|f| f.within("sides.notch"))?;
        }
        match self.top.kind {
            TopKind::Panel(_) => {}
            TopKind::FlatStretchers(width) | TopKind::EdgeStretchers(width) => {
                length("width", &range::STRETCHER_WIDTH, width)
                    .map_err(|f| f.within("top.kind"))?;
            }
        }
        self.bottom
            .joint
            .validate()
            .map_err(|f| f.within("bottom.joint"))?;
        self.top
            .joint
            .validate()
            .map_err(|f| f.within("top.joint"))?;
        match self.back {
            Back::Groove { to_front_wall, cut } => {
                length("to_front_wall", &range::GROOVE_TO_BACK_EDGE, to_front_wall)
                    .map_err(|f| f.within("back"))?;
                length("cut", &range::GROOVE_DEPTH, cut).map_err(|f| f.within("back"))
            }
            Back::Rabbet { run } => {
                length("run", &range::GROOVE_TO_BACK_EDGE, run).map_err(|f| f.within("back"))
            }
            Back::Planted | Back::Open => Ok(()),
        }
    }
}

impl Joint {
    fn validate(&self) -> Checked {
        length("housing", &range::HOUSING, self.housing)?;
        each(&self.bores, "bores", |bore| {
            length("x", &range::CARCASS_POINT, bore.x)?;
            length("diameter", &range::HOLE_DIAMETER, bore.diameter)?;
            bore.depth
                .map_or(Ok(()), |depth| length("depth", &range::BORE_DEPTH, depth))
        })
    }
}

impl Opening {
    fn validate(&self, cards: &Cards, deeper: u8) -> Checked {
        each(&self.fronts, "fronts", Front::validate)?;
        let Some(deeper) = deeper.checked_sub(1) else {
            return Err(Fault::new(
                "division",
                format!("openings lie in each other more than {NESTING_MOST} deep"),
            ));
        };
        match &self.division {
            Division::Bay(bay) => bay.validate(cards).map_err(|f| f.within("bay")),
            Division::SideBySide(parts) => {
                let part = |part: &super::Part| {
                    if let PartWidth::Fixed(width) = part.width {
                        length("width", &range::OPENING_SIZE, width)?;
                    }
                    part.opening
                        .validate(cards, deeper)
                        .map_err(|f| f.within("opening"))
                };
                part(&parts.first).map_err(|f| f.within("side_by_side.first"))?;
                each(&parts.rest, "side_by_side.rest", |(partition, next)| {
                    partition
                        .validate(cards)
                        .map_err(|f| f.within("partition"))?;
                    part(next).map_err(|f| f.within("part"))
                })?;
                let parts = i64::try_from(parts.rest.len()).unwrap_or(i64::MAX - 1) + 1;
                number("side_by_side", &range::PARTS, parts)
            }
            Division::Stacked(parts) => {
                parts
                    .first
                    .validate(cards, deeper)
                    .map_err(|f| f.within("stacked.first"))?;
                each(&parts.rest, "stacked.rest", |(shelf, opening)| {
                    card(
                        "shelf.board",
                        "board",
                        &shelf.board,
                        cards.board(&shelf.board).is_some(),
                    )?;
                    length("shelf.recess", &range::RECESS, shelf.recess)?;
                    match shelf.at {
                        ShelfHeight::Underside(z) => length("shelf.at", &range::PANEL_POSITION, z)?,
                        ShelfHeight::Hole(hole) => place("shelf.at", hole)?,
                    }
                    shelf
                        .joint
                        .validate()
                        .map_err(|f| f.within("shelf.joint"))?;
                    opening
                        .validate(cards, deeper)
                        .map_err(|f| f.within("opening"))
                })
            }
        }
    }
}

impl Partition {
    fn validate(&self, cards: &Cards) -> Checked {
        card(
            "board",
            "board",
            &self.board,
            cards.board(&self.board).is_some(),
        )?;
        length("recess", &range::RECESS, self.recess)?;
        self.foot.validate().map_err(|f| f.within("foot"))?;
        self.head.validate().map_err(|f| f.within("head"))
    }
}

impl Bay {
    fn validate(&self, cards: &Cards) -> Checked {
        length("recess", &range::RECESS, self.recess)?;
        if let Some(inset) = self.inset {
            length("front", &range::BOARD_THICKNESS, inset.front).map_err(|f| f.within("inset"))?;
            length("set_in", &range::SET_IN, inset.set_in).map_err(|f| f.within("inset"))?;
        }
        each(&self.zones, "zones", |zone| {
            place("first", zone.first)?;
            place("last", zone.last)?;
            depth("depth", zone.depth)
        })?;
        each(&self.shelves, "shelves", |shelf| {
            place("hole", shelf.hole)?;
            card(
                "board",
                "board",
                &shelf.board,
                cards.board(&shelf.board).is_some(),
            )?;
            length("setback_front", &range::SHELF_SETBACK, shelf.setback_front)
        })?;
        each(&self.plates, "plates", |plate| {
            place("hole", plate.hole)?;
            card(
                "card",
                "hinge",
                &plate.card,
                cards.hinge(&plate.card).is_some(),
            )
        })?;
        each(&self.runners, "runners", |runner| runner.validate(cards))
    }
}

impl Runner {
    fn validate(&self, cards: &Cards) -> Checked {
        place("hole", self.hole)?;
        let found = cards.runner(&self.card);
        card("card", "runner", &self.card, found.is_some())?;
        if found.is_some_and(|card| card.length(self.length).is_none()) {
            let problem = format!(
                "{}, but the card {} has no such length",
                self.length.exact_mm(),
                self.card
            );
            return Err(Fault::new("length", problem));
        }
        length("left", &range::SPACER, self.spacers.left).map_err(|f| f.within("spacers"))?;
        length("right", &range::SPACER, self.spacers.right).map_err(|f| f.within("spacers"))?;
        number("set_back", &range::SET_BACK, i64::from(self.set_back))
    }
}

impl Front {
    fn validate(&self) -> Checked {
        length("thickness", &range::BOARD_THICKNESS, self.thickness)?;
        match self.kind {
            FrontKind::Door(_) | FrontKind::Pair => Ok(()),
            FrontKind::Drawer(height) | FrontKind::False(height) => match height {
                FrontHeight::Modules(count) | FrontHeight::Ratio(count) => {
                    number("kind", &range::SHARE, i64::from(count))
                }
                FrontHeight::Fixed(height) => length("kind", &range::OPENING_SIZE, height),
            },
        }
    }
}

impl FreeRow {
    fn validate(&self) -> Checked {
        length("setback", &range::CARCASS_POINT, self.setback)?;
        place("first", self.first)?;
        place("last", self.last)?;
        length("diameter", &range::HOLE_DIAMETER, self.diameter)?;
        depth("depth", self.depth)
    }
}

impl FreeHole {
    fn validate(&self) -> Checked {
        length("setback", &range::CARCASS_POINT, self.setback)?;
        length("height", &range::PANEL_POSITION, self.height)?;
        length("diameter", &range::HOLE_DIAMETER, self.diameter)?;
        depth("depth", self.depth)
    }
}

impl Copy {
    fn validate(&self) -> Checked {
        each(&self.as_cut, "as_cut", |cut| {
            if let Some(long) = cut.length {
                length("length", &range::AS_CUT_LENGTH, long)?;
            }
            cut.thickness.map_or(Ok(()), |thick| {
                length("thickness", &range::BOARD_THICKNESS, thick)
            })
        })
    }
}

fn place(field: &str, place: HolePlace) -> Checked {
    let most = i16::try_from(range::HOLE_NUMBER.max).unwrap_or(i16::MAX);
    if place.count.abs() <= most {
        return Ok(());
    }
    Err(Fault::new(
        field,
        format!("{place}, but a place is counted up to {most} holes either way"),
    ))
}

fn depth(field: &str, depth: Depth) -> Checked {
    match depth {
        Depth::Blind(deep) => length(field, &range::BORE_DEPTH, deep),
        Depth::Shop | Depth::Through => Ok(()),
    }
}
