//! Proof of the page of cards: typing, origins, copies, what the shop keeps.

use gablerow_core::cards::{CardId, CardKind, CardName, Origin};
use gablerow_core::edit::card_values;
use gablerow_core::job::Job;
use gablerow_core::label::Label;
use gablerow_core::measure::{Length, Unit};

use super::tests::{app, press_all};
use super::*;
use crate::card_line::{self, CardLine, CardsAt};
use crate::demo;
use crate::echo;

fn name(kind: CardKind, id: &str) -> CardName {
    let id = CardId::new(id).unwrap();
    CardName { kind, id }
}

/// The page of a job, on a value of a card.
fn on(job: Job, card: &CardName, words: &str) -> App {
    let mut app = app(job);
    press_all(&mut app, &[Key::Char('C')]);
    let job = &app.desk.job;
    let line = CardLine::Card(card.clone());
    let at = card_line::place_of(job, &job.cabinets[0], &line, words);
    assert!(at.detail.is_some(), "{words}");
    app.pane = Some(Pane::Cards(at));
    app
}

fn plain() -> Job {
    Job::plain(Label::new("kiln room").unwrap())
}

fn typed(app: &mut App, text: &str) {
    let keys: Vec<Key> = text.chars().map(Key::Char).collect();
    press_all(app, &[keys, vec![Key::Enter]].concat());
}

fn notice(app: &App) -> &str {
    app.notice.as_ref().map_or("", |notice| &notice.text)
}

#[test]
fn a_typed_number_is_the_value_and_leaves_its_origin() {
    let pin = name(CardKind::Pin, "pin-5");
    let mut app = on(plain(), &pin, "hole up to shelf");
    typed(&mut app, "3.5");
    let rise = app.desk.job.cards.pins[0].rise;
    assert_eq!(
        (rise.value, rise.origin),
        (Length::from_um(3_500), Origin::HouseGuess)
    );
    press_all(&mut app, &[Key::Char('o'), Key::Char('o')]);
    assert_eq!(app.desk.job.cards.pins[0].rise.origin, Origin::DataSheet);
    assert_eq!(notice(&app), "pin pin-5: hole up to shelf data sheet");
    press_all(&mut app, &[Key::Char('u'), Key::Char('u'), Key::Char('u')]);
    assert_eq!(app.desk.job, plain());
}

#[test]
fn a_refused_value_keeps_what_was_typed_and_says_why() {
    let board = name(CardKind::Board, "board-18");
    let mut app = on(plain(), &board, "thickness measured");
    typed(&mut app, "182");
    let Some(Asked::Line(line)) = &app.asked else {
        panic!("the line was closed")
    };
    assert_eq!(line.field.text(), "182");
    assert_eq!(
        line.complaint.as_deref(),
        Some("board thickness: 182, but it is 3 to 60 mm")
    );
}

#[test]
fn what_is_typed_is_echoed_in_both_units_and_asked_about_near_the_pitch() {
    for (unit, text, both, asks) in [
        (Unit::Millimetre, "32", "32.0 mm = 1 1/4\" (~+0.3)", false),
        (Unit::Millimetre, "1 1/4\"", "~31.8 mm = 1 1/4\"", true),
        (Unit::Inch, "1.25", "1 1/4\" = ~31.8 mm", true),
        (Unit::Inch, "31.6mm", "1 1/4\" (~-0.2) = 31.6 mm", true),
        (Unit::Millimetre, "31x", "", false),
    ] {
        let mut job = plain();
        job.unit = unit;
        let rail = name(CardKind::Rail, "rail-long");
        let mut app = on(job, &rail, "pitch");
        let keys: Vec<Key> = text.chars().map(Key::Char).collect();
        press_all(&mut app, &keys);
        let (shown, remark) = echo::both(&app, None);
        assert_eq!((shown.as_str(), remark.is_some()), (both, asks), "{text}");
    }
}

#[test]
fn a_size_that_is_typed_is_echoed_too() {
    let mut app = app(plain());
    press_all(&mut app, &['e', '7', '6', '8'].map(Key::Char));
    assert_eq!(echo::both(&app, None).0, "768.0 mm = 30 1/4\" (~-0.4)");
    // Added to the 704 that stands there.
    press_all(&mut app, &[Key::Esc]);
    press_all(&mut app, &['+', '2'].map(Key::Char));
    assert_eq!(echo::typed_length(&app), Some(Length::from_mm(706)));
}

#[test]
fn an_inset_arm_below_zero_is_offered_and_taken_as_it_stands() {
    let hinge = name(CardKind::Hinge, "hinge-plain");
    let mut app = on(plain(), &hinge, "overlay, inset arm");
    press_all(&mut app, &[Key::Enter]);
    assert_eq!(echo::typed_length(&app), Some(Length::from_mm(-3)));
    press_all(&mut app, &[Key::Enter]);
    assert!(app.asked.is_none());
    assert_eq!(app.desk.job, plain());
    typed(&mut app, "0-4");
    let inset = app.desk.job.cards.hinges[0].arms.inset.value;
    assert_eq!(inset, Length::from_mm(-4));
}

#[test]
fn a_copy_is_the_line_one_stands_on_and_goes_again() {
    let hinge = name(CardKind::Hinge, "hinge-plain");
    let mut app = on(plain(), &hinge, "title");
    press_all(&mut app, &[Key::Left, Key::Char('c')]);
    typed(&mut app, "Hinge 155");
    let new = name(CardKind::Hinge, "hinge-155");
    assert_eq!(app.desk.job.cards.hinges[2].id, new.id);
    let here = |app: &App| match app.pane {
        Some(Pane::Cards(at)) => card_line::lines(&app.desk.job)[at.line].clone(),
        _ => panic!("no page"),
    };
    assert_eq!(here(&app), CardLine::Card(new));
    press_all(&mut app, &[Key::Char('d')]);
    assert_eq!(app.desk.job.shop.hinge.as_str(), "hinge-155");
    press_all(&mut app, &[Key::Char('x')]);
    assert!(notice(&app).contains("it is a house default"));
    press_all(&mut app, &[Key::Char('u'), Key::Char('x')]);
    assert_eq!(app.desk.job, plain());
}

#[test]
fn the_house_defaults_are_stepped_and_typed_and_are_no_card() {
    let mut app = app(plain());
    press_all(&mut app, &[Key::Char('C'), Key::Enter]);
    typed(&mut app, "35");
    assert_eq!(app.desk.job.shop.setback_front, Length::from_mm(35));
    press_all(&mut app, &[Key::Down, Key::Down, Key::Enter]);
    assert_eq!(notice(&app), "back rule on whole pitches");
    for key in ['o', 'c', 'x', 'd'] {
        press_all(&mut app, &[Key::Char(key)]);
        assert!(app.notice.as_ref().unwrap().is_refusal, "{key}");
    }
}

#[test]
fn esc_goes_back_to_where_one_came_from() {
    let mut app = app(demo::job().unwrap());
    press_all(&mut app, &[Key::Char('C'), Key::Enter, Key::Down]);
    press_all(&mut app, &[Key::Esc]);
    assert_eq!(app.pane, Some(Pane::Cards(CardsAt::default())));
    press_all(&mut app, &[Key::Esc]);
    assert_eq!(app.pane, None);
    // The board of the sides, from the sizes.
    let board = |line: &crate::size_line::SizeLine| line.words() == "board";
    let line = crate::size_line::lines(&app)
        .iter()
        .position(board)
        .unwrap();
    app.pane = Some(Pane::Sizes(line));
    press_all(&mut app, &[Key::Char('C')]);
    let Some(Pane::Cards(at)) = app.pane else {
        panic!("no page")
    };
    let lines = card_line::lines(&app.desk.job);
    assert_eq!(lines[at.line].words(), "board-18");
    press_all(&mut app, &[Key::Char('?'), Key::Esc]);
    assert_eq!(
        app.pane,
        Some(Pane::Cards(at)),
        "help gives way to the page"
    );
    press_all(&mut app, &[Key::Esc]);
    assert_eq!(app.pane, Some(Pane::Sizes(line)));
    // From the job: back to the job.
    app.pane = None;
    press_all(&mut app, &[Key::Char('j'), Key::Char('C'), Key::Esc]);
    assert_eq!(app.context(), Context::Job);
}

#[test]
fn a_part_of_the_cabinet_in_sight_takes_the_next_card() {
    let board = name(CardKind::Board, "board-18");
    let mut app = on(plain(), &board, "bottom");
    press_all(&mut app, &[Key::Enter]);
    let carcass = &app.desk.job.cabinets[0].carcass;
    assert_eq!(carcass.bottom.board.as_str(), "board-16");
    assert_eq!(carcass.sides.board.as_str(), "board-18");
}

#[test]
fn what_is_kept_in_the_shop_is_offered_to_another_job() {
    let pin = name(CardKind::Pin, "pin-5");
    let mut app = on(plain(), &pin, "goes in");
    press_all(&mut app, &[Key::Char('t')]);
    assert_eq!(notice(&app), "the shop keeps nothing that this job lacks");
    typed(&mut app, "9");
    press_all(&mut app, &[Key::Char('k')]);
    assert_eq!(notice(&app), "kept for every job, in shop.json");
    let kept = app.shop_file.clone();
    let mut other = tests::app(plain());
    other.shop_file = kept;
    press_all(&mut other, &[Key::Char('C'), Key::Char('t')]);
    assert_eq!(other.context(), Context::FromShop);
    press_all(&mut other, &[Key::Enter]);
    let now = &card_values(&other.desk.job.cards.card(&pin).unwrap())[1];
    assert_eq!(now.shown(Unit::Millimetre), "9.0");
    assert_eq!(other.context(), Context::Cards, "nothing is left to take");
    press_all(&mut other, &[Key::Char('u')]);
    assert_eq!(other.desk.job, plain());
}
