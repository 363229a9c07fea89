//! Ids, and the lengths of a runner.

use super::{CardId, Cards, Origin};
use crate::measure::Length;

#[test]
fn id_has_small_letters_digits_and_hyphens() {
    for good in ["board-18", "a", "9", &"x".repeat(40)] {
        assert_eq!(CardId::new(good).unwrap().as_str(), good);
    }
    for bad in ["", "Board", "board 18", "böard", "a_b", &"x".repeat(41)] {
        let error = CardId::new(bad).unwrap_err().to_string();
        assert_eq!(
            error,
            "a card's id has 1 to 40 small letters, digits and hyphens, such as hinge-clip"
        );
    }
}

#[test]
fn starter_cards_are_house_guesses_to_be_looked_up() {
    let cards = Cards::starter();
    assert!(
        cards
            .boards
            .iter()
            .all(|board| board.thickness.origin == Origin::HouseGuess)
    );
    assert!(
        cards
            .hinges
            .iter()
            .all(|hinge| hinge.pen.origin.is_unproved())
    );
    assert_eq!(Origin::ALL.map(Origin::is_unproved), [false, true, true]);
}

#[test]
fn ids_of_the_starter_cards_are_ids() {
    let cards = Cards::starter();
    let ids = cards.boards.iter().map(|card| &card.id);
    let ids = ids.chain(cards.hinges.iter().map(|card| &card.id));
    let ids = ids.chain(cards.runners.iter().map(|card| &card.id));
    for id in ids.chain(cards.pins.iter().map(|card| &card.id)) {
        assert_eq!(CardId::new(id.as_str()).as_ref(), Ok(id));
    }
}

/// Name of the longest that an inner depth takes.
fn longest(cards: &Cards, inner_depth: i32) -> Length {
    let runner = &cards.runners[0];
    runner
        .longest_within(Length::from_mm(inner_depth))
        .unwrap()
        .name
}

// rule-lengths: an undermount runner needs its length and 3. Common practice.
#[test]
fn longest_runner_leaves_what_it_needs() {
    let mut cards = Cards::starter();
    for _ in 0..2 {
        assert_eq!(longest(&cards, 503), Length::from_mm(500));
        assert_eq!(longest(&cards, 502), Length::from_mm(450));
        assert_eq!(longest(&cards, 9_000), Length::from_mm(550));
        assert_eq!(
            longest(&cards, 100),
            Length::from_mm(250),
            "the shortest there is"
        );
        cards.runners[0].lengths.reverse();
    }
}
