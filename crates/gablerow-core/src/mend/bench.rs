//! The bench: another rail, offsets its stop has, another habit of the shop.

use alloc::vec::Vec;

use super::trial::{Reach, Trial};
use crate::bench::{Miscount, miscounts};
use crate::cards::CardKind;
use crate::check::Rule;
use crate::edit::{Adjust, Choice, Content, Edit, New};
use crate::layout::Layout;

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
        Rule::ShelfRocks | Rule::ShelfRocksMuch => {
            let cabinet = trial.cabinet.key;
            let choice = Choice::Reference;
            trial.offer(Reach::Job, Edit::Choose { cabinet, choice });
        }
        Rule::MiscountedHole => to_their_holes(trial),
        _ => {}
    }
}

/// Moves what was bored wrong to where its holes are: as built. Nothing is wrong any more then, but for what goes with it.
fn to_their_holes(trial: &mut Trial) {
    let cabinet = trial.cabinet;
    let mut moves = Vec::new();
    for copy in &cabinet.copies {
        let layout = Layout::of(&cabinet.built_as(copy), trial.job);
        let all = miscounts(trial.job, cabinet.key, copy, &layout);
        moves.extend(all.iter().flat_map(Miscount::as_bored));
    }
    let about: Vec<_> = trial.about().collect();
    for (thing, holes) in moves {
        let Some(holes) = i16::try_from(holes).ok().filter(|_| about.contains(&thing)) else {
            continue;
        };
        let edit = Edit::Adjust {
            cabinet: cabinet.key,
            thing,
            adjust: Adjust::Up(holes),
        };
        let also = "as it was bored; its other holes, and every other copy, go with it";
        trial.offer_saying(Reach::Fitting, edit, also.into());
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

#[cfg(test)]
mod tests;
