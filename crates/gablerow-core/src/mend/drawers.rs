//! Drawers: runners that fit and carry, room over their boxes and before what stands at the back, boards that suit.

use alloc::vec::Vec;

use super::carcass::other_cards;
use super::trial::{Reach, Trial};
use crate::check::Rule;
use crate::edit::{Adjust, Choice, Content, Edit, New, Quantity, shop_values};
use crate::job::{CardId, Division, FrontKind, Key, Seat};
use crate::layout::gap_of;
use crate::measure::Length;

pub(super) fn offer(trial: &mut Trial) {
    let cabinet = trial.cabinet.key;
    let choose = |choice| Edit::Choose { cabinet, choice };
    match trial.finding.rule {
        Rule::RunnerTooLong => shorter_runner(trial),
        Rule::BoxBehindBlocked => {
            shorter_runner(trial);
            trial.offer(Reach::Cabinet, choose(Choice::Rail));
        }
        Rule::TopBoxBlocked => {
            trial.offer(Reach::Cabinet, choose(Choice::Top));
            trial.offer(Reach::Cabinet, choose(Choice::Rail));
        }
        Rule::StretcherInBox => _ = trial.offer(Reach::Cabinet, choose(Choice::Top)),
        Rule::RunnerOverloaded => other_cards(trial, &[Seat::Runners]),
        Rule::BoxWidth => {
            other_cards(trial, &[Seat::Runners]);
            box_board(trial);
        }
        Rule::FrontsOffGrid => whole_modules(trial),
        _ => {}
    }
}

/// The longest of the card's lengths that fits.
fn shorter_runner(trial: &mut Trial) {
    for thing in trial.about() {
        let mut lengths = Vec::new();
        trial.cabinet.opening.each(&mut |opening| {
            let Division::Bay(bay) = &opening.division else {
                return;
            };
            let runner = bay.runners.iter().find(|runner| runner.key == thing);
            let card = runner.and_then(|runner| trial.job.cards.runner(&runner.card));
            lengths.extend(card.iter().flat_map(|card| &card.lengths).map(|it| it.name));
        });
        lengths.sort();
        let cabinet = trial.cabinet.key;
        _ = lengths.into_iter().rev().any(|length| {
            let adjust = Adjust::Runner(length);
            let edit = Edit::Adjust {
                cabinet,
                thing,
                adjust,
            };
            trial.offer(Reach::Fitting, edit)
        });
    }
}

/// Every other board for the boxes of the whole job.
fn box_board(trial: &mut Trial) {
    let now = trial.job.shop.box_board();
    let boards = trial.job.cards.boards.iter().map(|board| &board.id);
    let others: Vec<CardId> = boards.filter(|id| *id != now).cloned().collect();
    let values = shop_values(&trial.job.shop).into_iter();
    let is_theirs = |content: &Content| match content {
        Content::Card(Some(id)) => id == now,
        Content::Card(None) => true,
        _ => false,
    };
    let seats: Vec<_> = values
        .filter(|value| matches!(value.quantity, Quantity::Card(..)) && is_theirs(&value.now))
        .map(|value| value.name)
        .collect();
    for value in seats {
        for id in &others {
            let new = New::To(Content::Card(Some(id.clone())));
            trial.offer(Reach::Job, Edit::ShopValue { value, new });
        }
    }
}

/// One of the drawer fronts of the bay as high as whole modules next to what it is.
fn whole_modules(trial: &mut Trial) {
    let about: Vec<Key> = trial.about().collect();
    let mut wanted = Vec::new();
    for front in &trial.layout.fronts {
        if front.kind != FrontKind::Drawer || !about.contains(&front.opening) {
            continue;
        }
        trial.cabinet.opening.each(&mut |opening| {
            if opening.key == front.opening {
                let pitch = front.height.total() + gap_of(&trial.job.shop.fronts, opening);
                wanted.push((front.key, pitch.div_floor(Length::PITCH)));
            }
        });
    }
    let cabinet = trial.cabinet.key;
    for (front, below) in wanted {
        let counts = [below, below + 1].map(u16::try_from).into_iter().flatten();
        for count in counts {
            let edit = Edit::Modules {
                cabinet,
                front,
                count,
            };
            trial.offer(Reach::Cabinet, edit);
        }
    }
}
