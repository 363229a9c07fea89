//! The lines of the page of cards: what update steps through and view shows.

use gablerow_core::cards::{CardId, CardKind, CardName};
use gablerow_core::edit::{Value, card_values, shop_values};
use gablerow_core::job::{Cabinet, Job, Seat};

/// A line of the list on the left.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CardLine {
    /// The house defaults.
    House,
    /// A card.
    Card(CardName),
}

/// A line of what the list's line holds, on the right.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum DetailLine {
    /// A value of the card or of the house defaults.
    Value(Value),
    /// A part of the cabinet in sight, and the cards it is of.
    Seat(Seat, Vec<CardId>),
}

/// Where a person is on the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct CardsAt {
    /// The line of the list.
    pub line: usize,
    /// The line on the right; `None` while one is in the list.
    pub detail: Option<usize>,
    /// The line of the sizes one came from; `None` when one came from elsewhere.
    pub sizes: Option<usize>,
}

impl CardLine {
    /// What the house defaults are called.
    pub const HOUSE: &str = "house defaults";

    /// Its name.
    #[must_use]
    pub fn words(&self) -> String {
        match self {
            Self::House => Self::HOUSE.to_owned(),
            Self::Card(card) => card.id.to_string(),
        }
    }

    /// The card of the line.
    #[must_use]
    pub fn card(&self) -> Option<&CardName> {
        match self {
            Self::House => None,
            Self::Card(card) => Some(card),
        }
    }

    /// The kind of the card.
    #[must_use]
    pub fn kind(&self) -> Option<CardKind> {
        self.card().map(|card| card.kind)
    }
}

impl DetailLine {
    /// What it is called.
    #[must_use]
    pub fn words(&self) -> String {
        match self {
            Self::Value(value) => value.name.to_string(),
            Self::Seat(seat, _) => seat.words().to_owned(),
        }
    }
}

/// The lines of the list: the house defaults, then the cards kind by kind.
#[must_use]
pub fn lines(job: &Job) -> Vec<CardLine> {
    let cards = job.cards.all_names().into_iter().map(CardLine::Card);
    std::iter::once(CardLine::House).chain(cards).collect()
}

/// What a line holds: its values, then the parts of the cabinet in sight that such a card can be used for.
#[must_use]
pub fn details(job: &Job, cabinet: &Cabinet, line: &CardLine) -> Vec<DetailLine> {
    let values = match line {
        CardLine::House => shop_values(&job.shop),
        CardLine::Card(name) => job
            .cards
            .card(name)
            .map_or(Vec::new(), |card| card_values(&card)),
    };
    let seats = Seat::ALL
        .into_iter()
        .filter(|seat| Some(seat.kind()) == line.kind());
    let held = seats.map(|seat| (seat, seat.cards(cabinet)));
    let held = held.filter(|(_, cards)| !cards.is_empty());
    let seats = held.map(|(seat, cards)| DetailLine::Seat(seat, cards));
    values
        .into_iter()
        .map(DetailLine::Value)
        .chain(seats)
        .collect()
}

/// The line of a card or of the house defaults, and the place of a value by its words.
#[must_use]
pub fn place_of(job: &Job, cabinet: &Cabinet, line: &CardLine, words: &str) -> CardsAt {
    let position = lines(job).iter().position(|other| other == line);
    let details = details(job, cabinet, line);
    CardsAt {
        line: position.unwrap_or(0),
        detail: details.iter().position(|detail| detail.words() == words),
        sizes: None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo;

    #[test]
    fn every_card_is_a_line_with_its_values_behind_the_house_defaults() {
        let job = demo::job().unwrap();
        let lines = lines(&job);
        assert_eq!(lines[0], CardLine::House);
        assert_eq!(lines.len(), 1 + job.cards.all_names().len());
        for line in &lines {
            let details = details(&job, &job.cabinets[0], line);
            assert!(
                matches!(details.first(), Some(DetailLine::Value(_))),
                "{line:?}"
            );
        }
    }

    #[test]
    fn a_board_shows_the_parts_made_of_boards_and_a_pin_none() {
        let job = demo::job().unwrap();
        let seats = |kind| {
            let name = job.cards.names(kind).remove(0);
            let details = details(&job, &job.cabinets[0], &CardLine::Card(name));
            details
                .into_iter()
                .filter(|line| matches!(line, DetailLine::Seat(..)))
                .map(|line| line.words())
                .collect::<Vec<_>>()
        };
        assert!(seats(CardKind::Board).starts_with(&["sides".to_owned(), "bottom".to_owned()]));
        assert_eq!(seats(CardKind::Pin), [""; 0]);
    }
}
