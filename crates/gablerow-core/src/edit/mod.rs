//! Every change of a job is one [`Edit`].
//!
//! ```text
//! Edit --apply(&Job)--> Step { before, after } --history--> Job'
//!                  \--> Refusal: what is wrong, nothing changed
//! ```

mod adjust;
mod apply;
mod cabinets;
mod cards;
mod choice;
mod copies;
mod fittings;
mod free;
mod fronts;
mod furnish;
mod measure;
mod openings;
mod own;
mod part;
mod part_edits;
mod pins;
mod served;
mod thing;
mod values;

use alloc::boxed::Box;
use alloc::format;
use alloc::string::{String, ToString};
use core::fmt;

pub use adjust::Adjust;
pub use choice::Choice;
pub use copies::CopyEdit;
pub use fittings::has_holes;
pub use free::{FaceRun, FreeChoice, FreeEdit, FreeLine, FreeMeasure, FreePlace, free_lines};
pub use furnish::{Furnish, Furnishing};
pub use measure::{Measure, Scope};
pub use openings::Way;
pub use own::own_values;
pub use part::{PartChoice, PartLine, PartMeasure, part_lines};
pub use values::{
    Carrier, Content, New, Quantity, Value, ValueName, card_values, shelf_values, shop_values,
};

use crate::cards::{Card, CardId, CardName};
use crate::history::{Change, Step};
use crate::job::{Acceptance, Cabinet, Datum, Hand, Job, Key, Seat, Shop};
use crate::label::Label;
use crate::measure::{Length, Unit};

/// A change of a job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Edit {
    /// A new plain cabinet after the given one, or at the end.
    Add {
        /// The cabinet it comes after.
        after: Option<Key>,
        /// What it is called.
        name: Label,
    },
    /// A cabinet like another one, right after it; nothing is bored or measured of it yet.
    Duplicate {
        /// The cabinet to copy.
        cabinet: Key,
        /// What the new one is called.
        name: Label,
    },
    /// Another name for a cabinet.
    Rename {
        /// The cabinet.
        cabinet: Key,
        /// Its new name.
        name: Label,
    },
    /// A cabinet less.
    Remove {
        /// The cabinet.
        cabinet: Key,
    },
    /// Another value of a length.
    Measure {
        /// The cabinet it is seen from.
        cabinet: Key,
        /// Which length.
        measure: Measure,
        /// Its new value.
        value: Length,
    },
    /// Other offsets at both ends of the sides.
    Offsets {
        /// The cabinet.
        cabinet: Key,
        /// From the carcass underside up to hole 1.
        foot: Length,
        /// From the carcass top down to the first hole counted from there.
        head: Length,
    },
    /// The next of the ways a thing can be made.
    Choose {
        /// The cabinet it is seen from.
        cabinet: Key,
        /// Which choice.
        choice: Choice,
    },
    /// Another value of a length of an opening, a partition, a fixed shelf or a front.
    PartMeasure {
        /// The cabinet.
        cabinet: Key,
        /// The part.
        part: Key,
        /// Which length.
        measure: PartMeasure,
        /// Its new value.
        value: Length,
    },
    /// The next of the ways an opening, a partition, a fixed shelf or a front can be made.
    PartChoose {
        /// The cabinet.
        cabinet: Key,
        /// The part.
        part: Key,
        /// Which choice.
        choice: PartChoice,
    },
    /// A bay divided into so many parts.
    Divide {
        /// The cabinet.
        cabinet: Key,
        /// The bay.
        opening: Key,
        /// Which way.
        way: Way,
        /// How many parts.
        parts: u16,
    },
    /// A partition or a fixed shelf less.
    Unite {
        /// The cabinet.
        cabinet: Key,
        /// The partition or fixed shelf.
        divider: Key,
    },
    /// The next way of closing an opening by doors: hung left, hung right, a pair, none.
    Door {
        /// The cabinet.
        cabinet: Key,
        /// The opening.
        opening: Key,
    },
    /// So many drawers over an opening, in place of those that are there; the same number again takes them away.
    Drawers {
        /// The cabinet.
        cabinet: Key,
        /// The opening.
        opening: Key,
        /// How many.
        count: u16,
    },
    /// So many drawers behind the door of an opening; the same number again takes them away.
    InnerDrawers {
        /// The cabinet.
        cabinet: Key,
        /// The opening.
        opening: Key,
        /// How many.
        count: u16,
    },
    /// A false front at the head of an opening; again takes it away.
    FalseFront {
        /// The cabinet.
        cabinet: Key,
        /// The opening.
        opening: Key,
    },
    /// One front less.
    NoFront {
        /// The cabinet.
        cabinet: Key,
        /// The front.
        front: Key,
    },
    /// A front of so many whole modules.
    Modules {
        /// The cabinet.
        cabinet: Key,
        /// The front.
        front: Key,
        /// How many.
        count: u16,
    },
    /// Plates and runners that were proposed, in place of others.
    Furnish(Furnish),
    /// Pin holes on both walls of a bay: set when one of the run is missing, taken away when all are there.
    Pins(BayRun),
    /// Hinge plates on one wall of a bay, one after the other along the run; set or taken away as pins are.
    Plates {
        /// The wall.
        wall: Hand,
        /// The holes.
        run: BayRun,
    },
    /// Drawer runners on both walls of a bay, one on each hole of the run; set or taken away as pins are.
    Runners(BayRun),
    /// Loose shelves, one on each hole of the run; set or taken away as pins are.
    Shelves(BayRun),
    /// A fitting of a bay less; a shelf zone loses one hole of it.
    NoFitting {
        /// The cabinet.
        cabinet: Key,
        /// The fitting.
        fitting: Key,
        /// The hole that a shelf zone loses.
        hole: i16,
    },
    /// A fitting, a free row, a free hole or a fixed shelf moved or made a little otherwise.
    Adjust {
        /// The cabinet.
        cabinet: Key,
        /// The thing.
        thing: Key,
        /// What becomes of it.
        adjust: Adjust,
    },
    /// A change of what faces own themselves: free rows and free holes.
    Free {
        /// The cabinet.
        cabinet: Key,
        /// What changes.
        change: FreeEdit,
    },
    /// Another load, clear height, setback, length or board of a loose shelf, or other contents of a drawer.
    OwnValue {
        /// The cabinet.
        cabinet: Key,
        /// The shelf, or the drawer's front.
        thing: Key,
        /// Which value.
        value: ValueName,
        /// What it shall be.
        new: New,
    },
    /// A change of what is built of a cabinet.
    Copies {
        /// The cabinet.
        cabinet: Key,
        /// What changes.
        change: CopyEdit,
    },
    /// Counts the places of a fitting from another end; it stays where it is.
    Recount {
        /// The cabinet.
        cabinet: Key,
        /// The fitting, free row or fixed shelf.
        fitting: Key,
        /// Where counting starts from now on.
        datum: Datum,
    },
    /// A finding is accepted, with a reason.
    Accept {
        /// The cabinet it is about.
        cabinet: Key,
        /// What is accepted, and why.
        acceptance: Acceptance,
    },
    /// An acceptance is taken back.
    Withdraw {
        /// The cabinet it is about.
        cabinet: Key,
        /// Exactly what the finding said.
        message: String,
    },
    /// Another value on a card; its origin stays what it is.
    Card {
        /// The card.
        card: CardName,
        /// Which value.
        value: ValueName,
        /// What it shall be.
        new: New,
    },
    /// The next origin of a card's value: data sheet, house guess, invented.
    CardOrigin {
        /// The card.
        card: CardName,
        /// Which value.
        value: ValueName,
    },
    /// A card like another one, under an id made of its title.
    CardAdd {
        /// The card to copy.
        like: CardName,
        /// What the new one is called.
        title: Label,
    },
    /// A whole card, in place of the one of its name or at the end.
    CardTake(Box<Card>),
    /// A card less; refused while a cabinet rests on it or the house defaults name it.
    CardRemove(CardName),
    /// Another card for a part of a cabinet.
    UseCard {
        /// The cabinet.
        cabinet: Key,
        /// The part.
        seat: Seat,
        /// The card; `None` is the next one of its kind.
        card: Option<CardId>,
    },
    /// Another value of the house defaults.
    ShopValue {
        /// Which value.
        value: ValueName,
        /// What it shall be.
        new: New,
    },
    /// The card that the house defaults name first for its kind.
    ShopCard(CardName),
    /// All house defaults.
    ShopTake(Box<Shop>),
    /// Another title of the job.
    Title(Label),
    /// The other unit for what is shown and typed.
    Unit(Unit),
}

/// Neighbouring holes of a bay, both ends included, and how new places are counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct BayRun {
    /// The cabinet.
    pub cabinet: Key,
    /// The bay.
    pub bay: Key,
    /// The lowest hole number.
    pub first: i16,
    /// The highest hole number.
    pub last: i16,
    /// Where the places of what is set are counted from.
    pub datum: Datum,
}

impl fmt::Display for BayRun {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.first == self.last {
            write!(f, "{}", self.first)
        } else {
            write!(f, "{}-{}", self.first, self.last)
        }
    }
}

/// Why an edit was not made: a sentence that says what is wrong and what would do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refusal(pub String);

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl core::error::Error for Refusal {}

/// What an opening is called, or what stands for the whole.
fn opening_name(layout: &crate::layout::Layout, opening: Key) -> String {
    let name = layout.names.opening(opening);
    name.map_or_else(|| "the opening".to_string(), |name| name.to_string())
}

/// A cabinet and its position in the list.
fn cabinet(job: &Job, key: Key) -> Result<(usize, &Cabinet), Refusal> {
    job.cabinets
        .iter()
        .enumerate()
        .find(|(_, cabinet)| cabinet.key == key)
        .ok_or_else(|| Refusal(format!("there is no cabinet {key}")))
}

fn nothing() -> Refusal {
    Refusal("nothing would change".to_string())
}

/// A step that changes one cabinet by `edit`, which gives the step's label.
fn change(
    job: &Job,
    key: Key,
    edit: impl FnOnce(&mut Cabinet) -> Result<String, Refusal>,
) -> Result<Step, Refusal> {
    let (at, before) = cabinet(job, key)?;
    let mut after = before.clone();
    let label = edit(&mut after)?;
    if after == *before {
        return Err(nothing());
    }
    after
        .validate(&job.cards)
        .map_err(|fault| Refusal(fault.problem))?;
    let (before, after) = (Some(Box::new(before.clone())), Some(Box::new(after)));
    Ok(Step {
        label,
        change: Change::Cabinet { at, before, after },
    })
}

/// A step that changes the house defaults by `edit`, which gives the step's label.
fn change_shop(job: &Job, edit: impl FnOnce(&mut Shop) -> String) -> Result<Step, Refusal> {
    let mut after = job.shop.clone();
    let label = edit(&mut after);
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

#[cfg(test)]
mod tests;
