//! The bench: another rail, offsets its stop has, another habit of the shop.

use alloc::vec::Vec;

use super::trial::{Reach, Trial};
use crate::cards::CardKind;
use crate::check::Rule;
use crate::edit::{Choice, Content, Edit, New};

pub(super) fn offer(trial: &mut Trial) {
    match trial.finding.rule {
        Rule::RailReIndex | Rule::ArmReach => other_rails(trial),
        Rule::EndStopValue => {
            offsets_of_the_stop(trial);
            other_rails(trial);
        }
        Rule::BandAfterBoring => {
            trial.offer_habit("band is", New::Next);
        }
        Rule::BitWrongForHole => {
            trial.offer_habit("bit", New::Next);
        }
        Rule::GaugeByEye => {
            trial.offer_habit("settings held", New::Next);
        }
        Rule::ChangeoversScattered => {
            trial.offer_habit("first comes", New::Next);
        }
        Rule::ShelfRocks => {
            let cabinet = trial.cabinet.key;
            let choice = Choice::Reference;
            trial.offer(Reach::Job, Edit::Choose { cabinet, choice });
        }
        _ => {}
    }
}

fn other_rails(trial: &mut Trial) {
    for rail in trial.job.cards.names(CardKind::Rail) {
        trial.offer_habit("rail", New::To(Content::Card(Some(rail.id))));
    }
}

/// Offsets at both ends that the stop of the rail has.
fn offsets_of_the_stop(trial: &mut Trial) {
    let stops: Vec<_> = trial
        .job
        .rail()
        .map(|rail| rail.stops.clone())
        .unwrap_or_default();
    for stop in stops {
        let edit = Edit::Offsets {
            cabinet: trial.cabinet.key,
            foot: stop,
            head: stop,
        };
        trial.offer(Reach::Cabinet, edit);
    }
}
