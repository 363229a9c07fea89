//! Every value of every card, of the house defaults, of a loose shelf and of a drawer: one table, and what may stand in each place of it.
//!
//! ```text
//! Card | Shop | Shelf | Front --table--> Place, Place, ...  --now--> Value     what is shown
//!                                    \--set(New)--> the changed card   what is typed or stepped to
//! ```

mod cards;
mod front;
mod shelf;
mod shop;
mod slot;
mod typed;
mod ways;

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

use super::Refusal;
use crate::cards::{Card, CardId, CardKind, Cards, Origin};
use crate::job::{DRAWER_LOAD_MOST, Front, SHELF_LOAD_MOST, Shelf, Shop};
use crate::label::Label;
use crate::measure::range::{NumberRange, Range};
use crate::measure::{Length, Unit};

use slot::Slot;
pub(super) use slot::next_card;

/// The name of a value: its words, and which of a runner's lengths or of a hinge's doors it is said of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ValueName {
    words: &'static str,
    length: Option<Length>,
}

impl ValueName {
    /// What it is called.
    #[must_use]
    pub fn words(self) -> &'static str {
        self.words
    }

    /// The length of a runner or the thickness of a door it is said of.
    #[must_use]
    pub fn length(self) -> Option<Length> {
        self.length
    }
}

impl fmt::Display for ValueName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.length {
            Some(length) => write!(f, "{} {}", length.exact_mm(), self.words),
            None => f.write_str(self.words),
        }
    }
}

/// What a value is, and what may be typed for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// A name.
    Title,
    /// A length.
    Length(&'static Range),
    /// A whole number, and its unit.
    Number(&'static NumberRange, &'static str),
    /// A whole number that may not be known yet, and its unit.
    MaybeNumber(&'static NumberRange, &'static str),
    /// A length that there may be none of, and the words for none.
    MaybeLength(&'static Range, &'static str),
    /// A load in kg, with one decimal at most, that may not be typed, and what carries it.
    MaybeLoad(Carrier),
    /// Lengths: how many, and how long each.
    Lengths(&'static NumberRange, &'static Range),
    /// Whole pitches from the first of several screws to each, the first being 0.
    Pitches,
    /// One of a few ways; stepped through.
    Choice,
    /// A card; stepped through. The words are for none.
    Card(CardKind, &'static str),
}

/// What carries a load.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Carrier {
    /// A loose shelf; where no load is typed it is reckoned with one.
    Shelf,
    /// A drawer; where no contents are typed nothing is said of its runners' load.
    Drawer,
}

impl Carrier {
    /// The most a load may be, in grams, and the words for that.
    fn most(self) -> (u32, &'static str) {
        match self {
            Self::Shelf => (SHELF_LOAD_MOST, "a shelf carries"),
            Self::Drawer => (DRAWER_LOAD_MOST, "a drawer holds"),
        }
    }
}

/// What stands in a place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Content {
    /// A name.
    Title(Label),
    /// A length.
    Length(Length),
    /// A length; `None` until somebody has looked it up, or wished it.
    MaybeLength(Option<Length>),
    /// A load in grams; `None` where none was typed.
    MaybeLoad(Option<u32>),
    /// A whole number; `None` until somebody has looked it up.
    Number(Option<u32>),
    /// Lengths, shortest first.
    Lengths(Vec<Length>),
    /// Whole pitches, ascending.
    Pitches(Vec<u8>),
    /// The words of one of a few ways.
    Choice(&'static str),
    /// A card; `None` where none was chosen.
    Card(Option<CardId>),
}

/// What a place shall hold.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum New {
    /// This.
    To(Content),
    /// The next of the ways, or the next card.
    Next,
}

/// A value of a card, of the house defaults, of a loose shelf or of a drawer, as it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Value {
    /// Its name.
    pub name: ValueName,
    /// What it is one of; empty on a card, a shelf and a drawer.
    pub group: &'static str,
    /// What it is.
    pub quantity: Quantity,
    /// What it holds.
    pub now: Content,
    /// Where that comes from; `None` where no data sheet says it.
    pub origin: Option<Origin>,
}

/// A place of the table: the value's name, what it is, and where it stands.
struct Place<'a> {
    name: ValueName,
    group: &'static str,
    quantity: Quantity,
    slot: Slot<'a>,
}

impl Place<'_> {
    fn value(self) -> Value {
        let (now, origin) = self.slot.read();
        Value {
            name: self.name,
            group: self.group,
            quantity: self.quantity,
            now,
            origin,
        }
    }
}

/// What has a table: gives its places one by one, in the order a person reads them.
trait Table {
    fn each(&mut self, visit: &mut dyn FnMut(Place<'_>));
}

/// All values of what has a table.
fn values(of: &mut dyn Table) -> Vec<Value> {
    let mut values = Vec::new();
    of.each(&mut |place| values.push(place.value()));
    values
}

/// Does something in the place of a name; `None` when there is no such place.
fn at<T>(of: &mut dyn Table, name: ValueName, act: impl FnOnce(Place<'_>) -> T) -> Option<T> {
    let (mut act, mut answer) = (Some(act), None);
    of.each(&mut |place| {
        if place.name == name
            && let Some(act) = act.take()
        {
            answer = Some(act(place));
        }
    });
    answer
}

fn no_such(name: ValueName) -> Refusal {
    Refusal(format!("there is no {name} here"))
}

/// Puts something in a place.
fn set(of: &mut dyn Table, name: ValueName, new: &New, cards: &Cards) -> Result<(), Refusal> {
    at(of, name, |place| place.slot.set(place.quantity, new, cards))
        .unwrap_or_else(|| Err(no_such(name)))
}

/// All values of a card, in the order a person reads them.
#[must_use]
pub fn card_values(card: &Card) -> Vec<Value> {
    values(&mut card.clone())
}

/// All values of the house defaults, group by group.
#[must_use]
pub fn shop_values(shop: &Shop) -> Vec<Value> {
    values(&mut shop.clone())
}

/// All values of a loose shelf but its hole, in the order a person reads them.
#[must_use]
pub fn shelf_values(shelf: &Shelf) -> Vec<Value> {
    values(&mut shelf.clone())
}

/// All values of a front but those of it as a part of the cabinet; none of what is no drawer.
pub(super) fn front_values(front: &Front) -> Vec<Value> {
    values(&mut front.clone())
}

pub(super) fn set_on_front(
    front: &mut Front,
    name: ValueName,
    new: &New,
    cards: &Cards,
) -> Result<(), Refusal> {
    set(front, name, new, cards)
}

pub(super) fn set_on_shelf(
    shelf: &mut Shelf,
    name: ValueName,
    new: &New,
    cards: &Cards,
) -> Result<(), Refusal> {
    set(shelf, name, new, cards)
}

pub(super) fn set_on_card(
    card: &mut Card,
    name: ValueName,
    new: &New,
    cards: &Cards,
) -> Result<(), Refusal> {
    set(card, name, new, cards)
}

pub(super) fn set_in_shop(
    shop: &mut Shop,
    name: ValueName,
    new: &New,
    cards: &Cards,
) -> Result<(), Refusal> {
    set(shop, name, new, cards)
}

/// A value with what it is now, in mm.
pub(super) fn told(values: &[Value], name: ValueName) -> String {
    let value = values.iter().find(|value| value.name == name);
    let shown = value.map(|value| value.shown(Unit::Millimetre));
    format!("{name} {}", shown.unwrap_or_default())
}

/// Steps the origin of a value on, and gives the new one.
pub(super) fn step_origin(card: &mut Card, name: ValueName) -> Result<Origin, Refusal> {
    let stepped = at(card, name, |place| place.slot.step_origin());
    let none = || Refusal(format!("{name} comes from no data sheet"));
    stepped.ok_or_else(|| no_such(name))?.ok_or_else(none)
}

/// Walks a table with less to write: each call is a line of it.
struct Lines<'v> {
    visit: &'v mut dyn FnMut(Place<'_>),
    group: &'static str,
    length: Option<Length>,
}

impl Lines<'_> {
    fn place(&mut self, words: &'static str, quantity: Quantity, slot: Slot<'_>) {
        let (group, length) = (self.group, self.length);
        (self.visit)(Place {
            name: ValueName { words, length },
            group,
            quantity,
            slot,
        });
    }
}
