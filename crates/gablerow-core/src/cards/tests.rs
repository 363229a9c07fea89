//! Ids, and the lengths of a runner.

use super::{CardId, Cards, Origin};
use crate::label::Label;
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
    for name in Cards::starter().all_names() {
        assert_eq!(CardId::new(name.id.as_str()).as_ref(), Ok(&name.id));
    }
}

#[test]
fn a_card_is_found_put_and_taken_away_by_its_name() {
    let start = Cards::starter();
    for name in start.all_names() {
        let mut cards = start.clone();
        let card = cards.card(&name).unwrap();
        assert_eq!(card.name(), name);
        cards.put(card.clone());
        assert_eq!(cards, start, "a card put in its own place");
        let (id, title) = (CardId::new("other").unwrap(), Label::known("another"));
        let other = card.renamed(id, title.clone());
        cards.put(other.clone());
        assert_eq!(cards.names(name.kind).last(), Some(&other.name()));
        assert_eq!(cards.card(&other.name()).unwrap().title(), &title);
        cards.remove(&other.name());
        assert_eq!(cards, start);
        assert!(!cards.has(&other.name()));
    }
}

#[test]
fn an_id_of_any_title_is_an_id() {
    for (title, id) in [
        ("18.2 board", "18-2-board"),
        ("\u{f6}l", "l"),
        ("\u{6f22}", "card"),
        (&"x-".repeat(30), &"x-".repeat(20)[..39]),
    ] {
        assert_eq!(CardId::of_title(title).as_str(), id);
        assert_eq!(CardId::new(id), Ok(CardId::of_title(title)));
    }
}

// House guesses of the starter card: 1 up to 19, 1.5 up to 22, 2.5 up to 26 and beyond.
#[test]
fn least_reveal_is_of_the_next_thickness_up() {
    let mut hinge = Cards::starter().hinges.remove(0);
    let least = |hinge: &super::Hinge, thickness| {
        let found = hinge.least_reveal(Length::from_um(thickness));
        found.map(|least| least.value)
    };
    for (thickness, least_um) in [
        (16_000, 1_000),
        (19_000, 1_000),
        (19_001, 1_500),
        (22_000, 1_500),
        (26_000, 2_500),
        (40_000, 2_500),
    ] {
        assert_eq!(least(&hinge, thickness), Some(Length::from_um(least_um)));
    }
    hinge.reveals.clear();
    assert_eq!(least(&hinge, 19_000), None, "not looked up");
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
