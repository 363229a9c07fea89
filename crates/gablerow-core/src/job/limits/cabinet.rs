//! A cabinet, its box, what its faces own and what is built of it.

use alloc::format;

use super::opening::NESTING_MOST;
use super::{Checked, Fault, card, depth, each, keys, length, number, place};
use crate::cards::Cards;
use crate::job::{
    Acceptance, Back, Cabinet, Carcass, Copy, FreeHole, FreeRow, Joint, Stand, TopKind,
};
use crate::label::{Label, LabelError, is_unsafe};
use crate::measure::range;

impl Cabinet {
    /// Whether the cabinet holds only what a cabinet of a job with these cards can hold.
    ///
    /// # Errors
    /// As [`Job::validate`](crate::job::Job::validate), with places counted from the cabinet.
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
        each(&self.accepted, "accepted", Acceptance::validate)?;
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
        keys::of_things(self)
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
        if let Some(rail) = &self.rail {
            let found = cards.board(&rail.board).is_some();
            card("board", "board", &rail.board, found).map_err(|f| f.within("rail"))?;
            length("height", &range::STRETCHER_WIDTH, rail.height).map_err(|f| f.within("rail"))?;
        }
        match self.stand {
            Some(Stand::Feet(height) | Stand::Plinth(height)) => {
                length("stand", &range::PLINTH, height)?;
            }
            None => {}
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
    pub(super) fn validate(&self) -> Checked {
        length("housing", &range::HOUSING, self.housing)?;
        each(&self.bores, "bores", |bore| {
            length("x", &range::CARCASS_POINT, bore.x)?;
            length("diameter", &range::HOLE_DIAMETER, bore.diameter)?;
            bore.depth
                .map_or(Ok(()), |depth| length("depth", &range::BORE_DEPTH, depth))
        })
    }
}

/// The most characters of what a finding said, well above what any of them says.
const SENTENCE_MOST: usize = 600;

impl Acceptance {
    fn validate(&self) -> Checked {
        for (field, text, most) in [
            ("rule", &self.rule, Label::MAX_CHARS),
            ("message", &self.message, SENTENCE_MOST),
        ] {
            let chars = text.chars().count();
            if !(1..=most).contains(&chars) {
                let problem = format!("{chars} characters, but it has 1 to {most}");
                return Err(Fault::new(field, problem));
            }
            if let Some(bad) = text.chars().find(|&c| is_unsafe(c)) {
                return Err(Fault::new(field, LabelError::Unsafe(bad)));
            }
        }
        Ok(())
    }
}

impl FreeRow {
    fn validate(&self) -> Checked {
        keys::panel("face", self.face.panel)?;
        length("setback", &range::CARCASS_POINT, self.setback)?;
        place("first", self.first)?;
        place("last", self.last)?;
        length("diameter", &range::HOLE_DIAMETER, self.diameter)?;
        depth("depth", self.depth)
    }
}

impl FreeHole {
    fn validate(&self) -> Checked {
        keys::panel("face", self.face.panel)?;
        length("setback", &range::CARCASS_POINT, self.setback)?;
        length("height", &range::PANEL_POSITION, self.height)?;
        length("diameter", &range::HOLE_DIAMETER, self.diameter)?;
        depth("depth", self.depth)
    }
}

impl Copy {
    fn validate(&self) -> Checked {
        each(&self.as_cut, "as_cut", |cut| {
            keys::panel("panel", cut.panel)?;
            if let Some(long) = cut.length {
                length("length", &range::AS_CUT_LENGTH, long)?;
            }
            if let Some(thick) = cut.thickness {
                length("thickness", &range::BOARD_THICKNESS, thick)?;
            }
            if let Some(play) = cut.play {
                length("play", &range::PLAY, play)?;
            }
            cut.diagonals.map_or(Ok(()), |apart| {
                length("diagonals", &range::DIAGONALS, apart)
            })
        })
    }
}
