//! The place where a value stands: read, set, its origin stepped on.

use alloc::format;
use alloc::vec::Vec;

use super::ways::Ways;
use super::{Carrier, Content, New, Quantity, typed};
use crate::cards::{
    CardId, CardKind, Cards, LeastReveal, Origin, RunnerLength, Sourced, least_reveals,
};
use crate::edit::Refusal;
use crate::label::Label;
use crate::measure::Length;
use crate::measure::range::{self, NumberRange, Range};

/// Where a value stands.
pub(super) enum Slot<'a> {
    Title(&'a mut Label),
    Length(&'a mut Length),
    Sourced(&'a mut Sourced<Length>),
    MaybeLength(&'a mut Option<Length>),
    MaybeSourced(&'a mut Option<Sourced<Length>>),
    MaybeLoad(&'a mut Option<u32>),
    Number(&'a mut Sourced<u32>),
    Count(&'a mut u32),
    MaybeNumber(&'a mut Option<Sourced<u32>>),
    Lengths(&'a mut Vec<Length>),
    RunnerLengths(&'a mut Vec<RunnerLength>),
    LeastReveals(&'a mut Vec<LeastReveal>),
    Pitches(&'a mut Vec<u8>),
    Choice(&'a mut dyn Ways),
    Card(&'a mut CardId),
    MaybeCard(&'a mut Option<CardId>),
}

impl Slot<'_> {
    pub(super) fn read(&self) -> (Content, Option<Origin>) {
        match self {
            Self::Title(title) => (Content::Title((*title).clone()), None),
            Self::Length(length) => (Content::Length(**length), None),
            Self::Sourced(sourced) => (Content::Length(sourced.value), Some(sourced.origin)),
            Self::MaybeLength(length) => (Content::MaybeLength(**length), None),
            Self::MaybeSourced(sourced) => (
                Content::MaybeLength(sourced.map(|sourced| sourced.value)),
                sourced.map(|sourced| sourced.origin),
            ),
            Self::MaybeLoad(grams) => (Content::MaybeLoad(**grams), None),
            Self::Number(sourced) => (Content::Number(Some(sourced.value)), Some(sourced.origin)),
            Self::Count(number) => (Content::Number(Some(**number)), None),
            Self::MaybeNumber(sourced) => (
                Content::Number(sourced.map(|sourced| sourced.value)),
                sourced.map(|sourced| sourced.origin),
            ),
            Self::Lengths(lengths) => (Content::Lengths((*lengths).clone()), None),
            Self::RunnerLengths(lengths) => {
                let names = lengths.iter().map(|length| length.name);
                (Content::Lengths(names.collect()), None)
            }
            Self::LeastReveals(reveals) => {
                let doors = reveals.iter().map(|reveal| reveal.thickness);
                (Content::Lengths(doors.collect()), None)
            }
            Self::Pitches(pitches) => (Content::Pitches((*pitches).clone()), None),
            Self::Choice(ways) => (Content::Choice(ways.words()), None),
            Self::Card(id) => (Content::Card(Some((*id).clone())), None),
            Self::MaybeCard(id) => (Content::Card((*id).clone()), None),
        }
    }

    /// Steps the origin on; `None` where there is none.
    pub(super) fn step_origin(self) -> Option<Origin> {
        let origin = match self {
            Self::Sourced(sourced) | Self::MaybeSourced(Some(sourced)) => &mut sourced.origin,
            Self::Number(sourced) => &mut sourced.origin,
            Self::MaybeNumber(Some(sourced)) => &mut sourced.origin,
            _ => return None,
        };
        *origin = match *origin {
            Origin::DataSheet => Origin::HouseGuess,
            Origin::HouseGuess => Origin::Invented,
            Origin::Invented => Origin::DataSheet,
        };
        Some(*origin)
    }

    pub(super) fn set(self, quantity: Quantity, new: &New, cards: &Cards) -> Result<(), Refusal> {
        match (self, quantity, new) {
            (Self::Choice(ways), _, New::Next) => ways.step(),
            (Self::Card(id), Quantity::Card(kind, _), new) => {
                *id = card_of(Some(&*id), kind, new, cards)?
                    .ok_or_else(|| Refusal("here a card is needed".into()))?;
            }
            (Self::MaybeCard(id), Quantity::Card(kind, _), New::Next) => {
                *id = next_or_none(id.as_ref(), kind, cards);
            }
            (Self::MaybeCard(id), Quantity::Card(kind, _), new) => {
                *id = card_of(id.as_ref(), kind, new, cards)?;
            }
            (slot, quantity, New::To(content)) => slot.fill(quantity, content)?,
            (_, _, New::Next) => return Err(Refusal("this is typed; begin with a number".into())),
        }
        Ok(())
    }

    /// Puts typed content in the place.
    fn fill(self, quantity: Quantity, content: &Content) -> Result<(), Refusal> {
        match (self, quantity, content) {
            (Self::Title(title), _, Content::Title(new)) => *title = new.clone(),
            (Self::Length(length), Quantity::Length(range), Content::Length(new)) => {
                *length = checked(range, *new)?;
            }
            (Self::Sourced(sourced), Quantity::Length(range), Content::Length(new)) => {
                sourced.value = checked(range, *new)?;
            }
            (
                Self::MaybeLength(slot),
                Quantity::MaybeLength(range, _),
                Content::MaybeLength(new),
            ) => *slot = new.map(|new| checked(range, new)).transpose()?,
            (
                Self::MaybeSourced(slot),
                Quantity::MaybeLength(range, _),
                Content::MaybeLength(new),
            ) => {
                let value = new.map(|new| checked(range, new)).transpose()?;
                *slot = looked_up(*slot, value);
            }
            (Self::MaybeLoad(slot), Quantity::MaybeLoad(carrier), Content::MaybeLoad(new)) => {
                *slot = new.map(|new| loaded(carrier, new)).transpose()?;
            }
            (Self::Number(sourced), Quantity::Number(range, _), Content::Number(Some(new))) => {
                sourced.value = counted(range, *new)?;
            }
            (Self::Count(slot), Quantity::Number(range, _), Content::Number(Some(new))) => {
                *slot = counted(range, *new)?;
            }
            (Self::MaybeNumber(slot), Quantity::MaybeNumber(range, _), Content::Number(new)) => {
                let value = new.map(|new| counted(range, new)).transpose()?;
                *slot = looked_up(*slot, value);
            }
            (Self::Lengths(list), Quantity::Lengths(count, range), Content::Lengths(new)) => {
                *list = listed(count, range, new)?;
            }
            (Self::RunnerLengths(list), Quantity::Lengths(count, range), Content::Lengths(new)) => {
                let names = listed(count, range, new)?;
                *list = names.into_iter().map(|name| made(list, name)).collect();
            }
            (Self::LeastReveals(list), Quantity::Lengths(count, range), Content::Lengths(new)) => {
                let doors = listed(count, range, new)?;
                *list = doors
                    .into_iter()
                    .map(|door| known_reveal(list, door))
                    .collect();
            }
            (Self::Pitches(list), Quantity::Pitches, Content::Pitches(new)) => {
                *list = screws(new)?;
            }
            _ => {
                return Err(Refusal(
                    "that is not typed; Enter steps through the ways".into(),
                ));
            }
        }
        Ok(())
    }
}

/// A value that was not known, or another one: its origin stays, and the first one is a house guess.
fn looked_up<T>(before: Option<Sourced<T>>, value: Option<T>) -> Option<Sourced<T>> {
    let origin = before.map_or(Origin::HouseGuess, |sourced| sourced.origin);
    value.map(|value| Sourced { value, origin })
}

fn loaded(carrier: Carrier, grams: u32) -> Result<u32, Refusal> {
    let (most, carries) = carrier.most();
    if grams <= most {
        return Ok(grams);
    }
    let [load, most] = [grams, most].map(typed::kg);
    Err(Refusal(format!(
        "{load} kg, but {carries} at most {most} kg"
    )))
}

fn checked(range: &Range, length: Length) -> Result<Length, Refusal> {
    range
        .check(length)
        .map_err(|wrong| Refusal(format!("{wrong}")))
}

fn counted(range: &NumberRange, number: u32) -> Result<u32, Refusal> {
    let checked = range.check(i64::from(number)).map(u32::from);
    checked.map_err(|wrong| Refusal(format!("{wrong}")))
}

/// The lengths in their order, each once.
fn listed(count: &NumberRange, range: &Range, lengths: &[Length]) -> Result<Vec<Length>, Refusal> {
    let mut list = lengths.to_vec();
    list.sort_unstable();
    list.dedup();
    counted(count, u32::try_from(list.len()).unwrap_or(u32::MAX))?;
    list.into_iter()
        .map(|length| checked(range, length))
        .collect()
}

fn screws(pitches: &[u8]) -> Result<Vec<u8>, Refusal> {
    let mut list = pitches.to_vec();
    list.sort_unstable();
    list.dedup();
    counted(
        &range::SCREWS,
        u32::try_from(list.len()).unwrap_or(u32::MAX),
    )?;
    for &step in &list {
        counted(&range::SCREW_STEP, u32::from(step))?;
    }
    if list.first() != Some(&0) {
        return Err(Refusal(
            "the first screw is 0, the others are counted from it".into(),
        ));
    }
    Ok(list)
}

/// The length of that name; one that was not there is made like the nearest, as a house guess.
fn made(lengths: &[RunnerLength], name: Length) -> RunnerLength {
    let nearest = lengths
        .iter()
        .min_by_key(|length| (length.name - name).abs());
    match nearest {
        Some(length) if length.name == name => length.clone(),
        Some(length) => RunnerLength {
            name,
            need: Sourced::guess(name + (length.need.value - length.name)),
            steps: length.steps.clone(),
        },
        None => RunnerLength {
            name,
            need: Sourced::guess(name),
            steps: [0].into(),
        },
    }
}

/// What a door of that thickness needs; one that was not there is made like the nearest, as a house guess.
fn known_reveal(reveals: &[LeastReveal], thickness: Length) -> LeastReveal {
    let guesses = least_reveals();
    let known = if reveals.is_empty() {
        &guesses
    } else {
        reveals
    };
    let nearest = known
        .iter()
        .min_by_key(|reveal| (reveal.thickness - thickness).abs());
    match nearest {
        Some(reveal) if reveal.thickness == thickness => *reveal,
        nearest => LeastReveal {
            thickness,
            least: Sourced::guess(nearest.map_or(Length::ZERO, |reveal| reveal.least.value)),
        },
    }
}

/// The card that was asked for.
fn card_of(
    now: Option<&CardId>,
    kind: CardKind,
    new: &New,
    cards: &Cards,
) -> Result<Option<CardId>, Refusal> {
    match new {
        New::Next => Ok(next_card(now, kind, cards)),
        New::To(Content::Card(None)) => Ok(None),
        New::To(Content::Card(Some(id))) => {
            let names = cards.names(kind);
            let found = names.into_iter().find(|name| name.id == *id);
            let none = || Refusal(format!("there is no {} card {id}", kind.word()));
            found.map(|name| Some(name.id)).ok_or_else(none)
        }
        New::To(_) => Err(Refusal(
            "that is not typed; Enter steps through the cards".into(),
        )),
    }
}

/// The card after this one, the first after the last.
pub(in crate::edit) fn next_card(
    now: Option<&CardId>,
    kind: CardKind,
    cards: &Cards,
) -> Option<CardId> {
    let names = cards.names(kind);
    let at = names.iter().position(|name| Some(&name.id) == now);
    let next = at.map_or(0, |at| at + 1);
    let next = names.get(next).or(names.first());
    next.map(|name| name.id.clone())
}

/// The card after this one, none after the last.
fn next_or_none(now: Option<&CardId>, kind: CardKind, cards: &Cards) -> Option<CardId> {
    let last = cards.names(kind).last().map(|name| name.id.clone());
    if now.is_some() && now == last.as_ref() {
        return None;
    }
    next_card(now, kind, cards)
}
