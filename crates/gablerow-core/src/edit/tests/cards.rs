//! Values of cards and of the house defaults, origins, cards added, removed and used.

use std::collections::BTreeSet;

use super::{make, refused};
use crate::arbitrary::{bay_with, job_with, mm, um};
use crate::cards::{Card, CardId, CardKind, CardName, Cards, Origin};
use crate::check;
use crate::edit::{Content, Edit, New, Quantity, Value, ValueName, card_values, shop_values};
use crate::job::{
    Front, FrontHeight, FrontKind, HolePlace, Job, Key, Label, Runner, Seat, Spacers,
};
use crate::layout::Layout;
use crate::measure::{Length, Unit};

fn name(kind: CardKind, id: &str) -> CardName {
    let id = CardId::new(id).unwrap();
    CardName { kind, id }
}

fn values_of(job: &Job, card: &CardName) -> Vec<Value> {
    card_values(&job.cards.card(card).unwrap())
}

fn value(values: &[Value], words: &str) -> Value {
    let found = values.iter().find(|value| value.name.to_string() == words);
    found.unwrap_or_else(|| panic!("no {words}")).clone()
}

fn set(card: &CardName, value: ValueName, to: Content) -> Edit {
    Edit::Card {
        card: card.clone(),
        value,
        new: New::To(to),
    }
}

/// Another content of the same sort that a value can have.
fn other(value: &Value) -> New {
    New::To(match (&value.now, value.quantity) {
        (Content::Title(_), _) => Content::Title(Label::known("another")),
        (Content::Length(now), _) => Content::Length(*now + um(100)),
        (Content::MaybeLength(now), _) => {
            Content::MaybeLength(Some(now.unwrap_or(mm(12)) + um(100)))
        }
        (Content::MaybeLoad(now), _) => Content::MaybeLoad(now.map(|now| now + 100)),
        (Content::Number(now), _) => Content::Number(now.map(|now| now + 1)),
        (Content::Lengths(now), _) => {
            let mut lengths: Vec<Length> = now.iter().copied().chain([mm(57)]).collect();
            lengths.sort_unstable();
            Content::Lengths(lengths)
        }
        (Content::Pitches(now), _) => Content::Pitches(now.iter().copied().chain([30]).collect()),
        (Content::Choice(_) | Content::Card(_), _) => return New::Next,
    })
}

#[test]
fn every_value_of_every_card_reads_back_as_it_was_set_and_nothing_else_changes() {
    for card in Cards::starter().all_names() {
        for before in values_of(&job_with(|_| ()), &card) {
            let mut job = job_with(|_| ());
            let new = other(&before);
            make(
                &mut job,
                &Edit::Card {
                    card: card.clone(),
                    value: before.name,
                    new: new.clone(),
                },
            );
            let after = value(&values_of(&job, &card), &before.name.to_string());
            let origin = match before.now {
                Content::MaybeLength(None) => Some(Origin::HouseGuess),
                _ => before.origin,
            };
            assert_eq!(after.origin, origin, "typing leaves the origin");
            match new {
                New::To(content) => assert_eq!(after.now, content, "{card} {}", before.name),
                New::Next => assert_ne!(after.now, before.now, "{card} {}", before.name),
            }
            let changed = |job: &Job| {
                let all = values_of(job, &card).into_iter();
                all.filter(|value| value.name != before.name && value.name.length() != Some(mm(57)))
                    .collect::<Vec<_>>()
            };
            assert_eq!(changed(&job), changed(&job_with(|_| ())));
        }
    }
}

#[test]
fn every_house_default_reads_back_as_it_was_set() {
    let start = job_with(|_| ());
    for before in shop_values(&start.shop) {
        let mut job = start.clone();
        // The one pin there is stays the one pin there is.
        if before.name.words() == "pin" {
            continue;
        }
        let label = make(
            &mut job,
            &Edit::ShopValue {
                value: before.name,
                new: other(&before),
            },
        );
        let after = value(&shop_values(&job.shop), before.name.words());
        assert_ne!(after.now, before.now, "{}", before.name);
        assert_eq!(
            label,
            format!("{} {}", before.name, after.shown(Unit::Millimetre))
        );
    }
}

#[test]
fn no_two_values_of_a_card_or_of_the_shop_have_one_name_and_all_are_short() {
    let cards = Cards::starter();
    let of_cards = cards.all_names().into_iter();
    let mut tables: Vec<Vec<Value>> = of_cards
        .map(|name| card_values(&cards.card(&name).unwrap()))
        .collect();
    tables.push(shop_values(&job_with(|_| ()).shop));
    for table in tables {
        let names: BTreeSet<ValueName> = table.iter().map(|value| value.name).collect();
        assert_eq!(names.len(), table.len());
        assert!(table.iter().all(|value| value.name.words().len() <= 20));
    }
}

#[test]
fn every_value_is_offered_as_a_text_that_is_read_back() {
    let cards = Cards::starter();
    let of_cards = cards.all_names().into_iter();
    let of_cards = of_cards.flat_map(|name| card_values(&cards.card(&name).unwrap()));
    let all = of_cards.chain(shop_values(&job_with(|_| ()).shop));
    for value in all.filter(Value::is_typed) {
        for unit in [Unit::Millimetre, Unit::Inch] {
            let text = value.offered(unit);
            // A sign before a length is added to what stands there.
            if !text.starts_with('-') {
                assert_eq!(value.parse(&text, unit), Ok(value.now.clone()), "{text}");
            }
        }
    }
}

#[test]
fn what_is_typed_may_be_in_either_unit_and_is_told_when_it_is_wrong() {
    let job = job_with(|_| ());
    let hinge = values_of(&job, &name(CardKind::Hinge, "hinge-plain"));
    let proud = value(&hinge, "proud of the face");
    let read = |text: &str, unit| proud.parse(text, unit).unwrap();
    assert_eq!(
        read("1 1/4\"", Unit::Millimetre),
        Content::Length(um(31_750))
    );
    assert_eq!(read("+2", Unit::Inch), Content::Length(mm(15) + um(50_800)));
    assert_eq!(read("18mm", Unit::Inch), Content::Length(mm(18)));
    let plates = value(&hinge, "plates in stock");
    assert_eq!(
        plates.parse("4; 0 ;1/8\";", Unit::Millimetre),
        Ok(Content::Lengths(vec![mm(4), mm(0), um(3_175)]))
    );
    let board = values_of(&job, &name(CardKind::Board, "board-18"));
    let density = value(&board, "density");
    assert_eq!(
        density.parse("720 kg/m3", Unit::Millimetre),
        Ok(Content::Number(Some(720)))
    );
    let said = density.parse("72,5", Unit::Millimetre).unwrap_err();
    assert_eq!(said.to_string(), "density is a whole number of kg/m3");
    let sag = value(&board, "sag after years");
    assert_eq!(
        sag.parse("", Unit::Millimetre),
        Ok(Content::Number(None)),
        "nothing typed is nothing known"
    );
    let runner = values_of(&job, &name(CardKind::Runner, "runner-under"));
    let screws = value(&runner, "500 screws at");
    let said = screws.parse("0; 7.5", Unit::Millimetre).unwrap_err();
    assert_eq!(
        said.to_string(),
        "whole pitches from the first screw, such as 0; 4; 11"
    );
}

#[test]
fn values_outside_their_ranges_are_refused_with_the_range() {
    let job = job_with(|_| ());
    let try_to = |kind, id, words: &str, to| {
        let card = name(kind, id);
        let at = value(&values_of(&job, &card), words).name;
        refused(&job, &set(&card, at, to))
    };
    let board = |words, to| try_to(CardKind::Board, "board-18", words, to);
    assert_eq!(
        board("thickness measured", Content::Length(mm(182))),
        "board thickness: 182, but it is 3 to 60 mm"
    );
    assert_eq!(
        board("density", Content::Number(Some(65_000))),
        "density: 65000, but it is 1 to 10000"
    );
    let runner = |words, to| try_to(CardKind::Runner, "runner-under", words, to);
    assert_eq!(
        runner("500 screws at", Content::Pitches(vec![4, 11])),
        "the first screw is 0, the others are counted from it"
    );
    assert_eq!(
        runner("lengths", Content::Lengths(vec![])),
        "lengths of the runner: 0, but it is 1 to 40"
    );
}

#[test]
fn an_origin_steps_round_and_only_where_a_data_sheet_can_say_it() {
    let card = name(CardKind::Pin, "pin-5");
    let mut job = job_with(|_| ());
    let rise = value(&values_of(&job, &card), "hole up to shelf");
    assert_eq!(rise.origin, Some(Origin::HouseGuess));
    let step = Edit::CardOrigin {
        card: card.clone(),
        value: rise.name,
    };
    let labels: Vec<String> = (0..3).map(|_| make(&mut job, &step)).collect();
    assert_eq!(
        labels,
        ["invented", "data sheet", "house guess"]
            .map(|origin| format!("pin pin-5: hole up to shelf {origin}"))
    );
    assert_eq!(job, job_with(|_| ()));
    let title = value(&values_of(&job, &card), "title").name;
    let step = Edit::CardOrigin { card, value: title };
    assert_eq!(refused(&job, &step), "title comes from no data sheet");
}

/// A pair of runners on a hole, in a bay of its own.
fn with_drawer() -> Job {
    bay_with(|bay| {
        bay.runners = vec![Runner {
            key: Key(5),
            hole: HolePlace::foot(5),
            card: CardId::new("runner-under").unwrap(),
            length: mm(500),
            set_back: 0,
            spacers: Spacers::default(),
            serves: None,
        }];
    })
}

#[test]
fn a_finding_says_check_the_data_sheet_until_the_data_sheet_was_read() {
    let mut job = with_drawer();
    // 500 long, 2 behind the front, in an inner depth of 500 where it needs 503.
    job.cabinets[0].size.depth = mm(520);
    let doubts = |job: &Job| {
        let cabinet = &job.cabinets[0];
        let findings = check::of_cabinet(job, cabinet, &Layout::of(cabinet, job));
        let mut said = findings.iter().map(|finding| &finding.message);
        let long = said.find(|message| message.contains("503")).cloned();
        long.unwrap_or_default()
            .starts_with("check the data sheet: ")
    };
    assert!(doubts(&job));
    let card = name(CardKind::Runner, "runner-under");
    let need = value(&values_of(&job, &card), "500 needs depth");
    let edit = Edit::CardOrigin {
        card: card.clone(),
        value: need.name,
    };
    make(&mut job, &edit);
    assert!(doubts(&job), "invented is no better");
    make(&mut job, &edit);
    let now = value(&values_of(&job, &card), "500 needs depth").origin;
    assert_eq!(now, Some(Origin::DataSheet));
    assert!(!doubts(&job));
}

#[test]
fn a_card_is_copied_under_an_id_made_of_its_title_and_removed_again() {
    let mut job = job_with(|_| ());
    let like = name(CardKind::Hinge, "hinge-plain");
    let title = Label::known("Hinge, 155 wide");
    let copy = Edit::CardAdd {
        like: like.clone(),
        title: title.clone(),
    };
    assert_eq!(
        make(&mut job, &copy),
        "copy hinge hinge-plain as hinge-155-wide"
    );
    assert_eq!(
        refused(&job, &copy),
        "there is a hinge hinge-155-wide already; take another title"
    );
    let new = name(CardKind::Hinge, "hinge-155-wide");
    assert_eq!(job.cards.card(&new).unwrap().title(), &title);
    assert_eq!(values_of(&job, &new)[1..], values_of(&job, &like)[1..]);
    make(&mut job, &Edit::CardRemove(new.clone()));
    assert_eq!(job, job_with(|_| ()));
    assert_eq!(
        refused(&job, &Edit::CardRemove(new)),
        "there is no card hinge hinge-155-wide"
    );
}

#[test]
fn a_card_that_is_rested_on_stays_and_says_who_rests_on_it() {
    let mut job = with_drawer();
    let remove = |job: &Job, kind, id| refused(job, &Edit::CardRemove(name(kind, id)));
    assert_eq!(
        remove(&job, CardKind::Board, "board-18"),
        "board board-18 stays: A1 rests on it"
    );
    assert_eq!(
        remove(&job, CardKind::Board, "board-15"),
        "board board-15 stays: A1 rests on it",
        "the boxes of its drawer"
    );
    assert_eq!(
        remove(&job, CardKind::Board, "board-19"),
        "board board-19 stays: it is a house default; make another card that first"
    );
    let second = Label::known("A2");
    let cabinet = Key(1);
    let like_it = Edit::Duplicate {
        cabinet,
        name: second,
    };
    make(&mut job, &like_it);
    assert_eq!(
        remove(&job, CardKind::Runner, "runner-under"),
        "runner runner-under stays: A1, A2 rest on it"
    );
    make(
        &mut job,
        &Edit::CardRemove(name(CardKind::Runner, "runner-side")),
    );
}

#[test]
fn fronts_and_pins_rest_on_the_house_defaults() {
    let mut job = bay_with(|bay| bay.shelves = Vec::new());
    let resting = |job: &Job, kind, id| job.resting_on(&name(kind, id)).len();
    assert_eq!(resting(&job, CardKind::Board, "board-19"), 0);
    assert_eq!(resting(&job, CardKind::Pin, "pin-5"), 0);
    job.cabinets[0].opening.fronts.push(Front {
        key: Key(9),
        name: Label::known("door"),
        kind: FrontKind::Pair,
        height: FrontHeight::Ratio(1),
        thickness: None,
        load_grams: None,
    });
    let edit = Edit::Shelves(super::run(5, 5));
    make(&mut job, &edit);
    assert_eq!(resting(&job, CardKind::Board, "board-19"), 1);
    assert_eq!(resting(&job, CardKind::Pin, "pin-5"), 1);
    assert_eq!(resting(&job, CardKind::Hinge, "hinge-plain"), 0);
}

#[test]
fn a_length_with_drawers_on_it_stays_and_a_new_one_is_made_like_its_neighbour() {
    let mut job = with_drawer();
    let card = name(CardKind::Runner, "runner-under");
    let lengths = value(&values_of(&job, &card), "lengths").name;
    let to = |list: &[i32]| {
        let list = list.iter().copied().map(Length::from_mm).collect();
        set(&card, lengths, Content::Lengths(list))
    };
    assert_eq!(
        refused(&job, &to(&[450, 550])),
        "the length 500 stays: A1 has drawers on it"
    );
    make(&mut job, &to(&[500, 270]));
    let made = &job.cards.runners[0].lengths;
    assert_eq!(made.len(), 2);
    assert_eq!((made[0].name, made[0].need.value), (mm(270), mm(273)));
    assert_eq!(made[0].steps, [0, 4], "as the one of 250");
}

#[test]
fn parts_of_a_cabinet_take_the_next_card_or_a_named_one() {
    let mut job = with_drawer();
    let use_card = |seat, card: Option<&str>| Edit::UseCard {
        cabinet: Key(1),
        seat,
        card: card.map(|id| CardId::new(id).unwrap()),
    };
    assert_eq!(
        make(&mut job, &use_card(Seat::Sides, None)),
        "sides: board-16"
    );
    assert_eq!(job.cabinets[0].carcass.bottom.board.as_str(), "board-18");
    assert_eq!(
        make(&mut job, &use_card(Seat::Bottom, Some("board-15"))),
        "bottom: board-15"
    );
    assert_eq!(
        refused(&job, &use_card(Seat::Bottom, Some("board-12"))),
        "there is no card board board-12"
    );
    assert_eq!(
        refused(&job, &use_card(Seat::Plates, None)),
        "this cabinet has no hinge plates"
    );
    job.cards.runners[1]
        .lengths
        .retain(|made| made.name < mm(480));
    make(&mut job, &use_card(Seat::Runners, None));
    let cabinet = &job.cabinets[0];
    let runner = &cabinet.opening.bay(Key(1)).unwrap().runners[0];
    assert_eq!(runner.card.as_str(), "runner-side");
    assert_eq!(runner.length, mm(450), "the longest that is not longer");
}

#[test]
fn a_card_is_made_the_house_default_and_taken_whole() {
    let mut job = job_with(|_| ());
    let board = name(CardKind::Board, "board-16");
    assert!(!job.is_default(&board));
    assert_eq!(
        make(&mut job, &Edit::ShopCard(board.clone())),
        "board board-16"
    );
    assert!(job.is_default(&board));
    let Some(Card::Board(mut card)) = job.cards.card(&board) else {
        panic!("no board")
    };
    card.thickness.value = um(15_700);
    let take = Edit::CardTake(Box::new(Card::Board(card)));
    assert_eq!(make(&mut job, &take), "take board board-16");
    assert_eq!(job.cards.boards[1].thickness.value, um(15_700));
    assert_eq!(refused(&job, &take), "nothing would change");
}

#[test]
fn house_defaults_are_taken_only_with_their_cards() {
    let mut job = job_with(|_| ());
    let mut shop = job.shop.clone();
    shop.depth = mm(13);
    let take = |shop: &crate::job::Shop| Edit::ShopTake(Box::new(shop.clone()));
    make(&mut job, &take(&shop));
    assert_eq!(job.shop, shop);
    shop.hinge = CardId::new("hinge-9").unwrap();
    assert_eq!(
        refused(&job, &take(&shop)),
        "hinge-9, but the job has no hinge card of that id"
    );
}

#[test]
fn cards_that_may_be_none_step_through_none() {
    let mut job = job_with(|_| ());
    let rail = value(&shop_values(&job.shop), "rail");
    assert_eq!(rail.quantity, Quantity::Card(CardKind::Rail, "none yet"));
    let step = Edit::ShopValue {
        value: rail.name,
        new: New::Next,
    };
    let shown = |job: &Job| value(&shop_values(&job.shop), "rail").shown(Unit::Millimetre);
    let mut seen = vec![shown(&job)];
    for _ in 0..3 {
        make(&mut job, &step);
        seen.push(shown(&job));
    }
    assert_eq!(seen, ["rail-long", "jig-short", "bed-plain", "none yet"]);
}
