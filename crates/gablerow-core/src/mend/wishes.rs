//! Openings that fill their space, fronts that are carried.

use alloc::vec::Vec;

use super::trial::{Reach, Trial};
use crate::check::Rule;
use crate::edit::{Edit, PartChoice};
use crate::job::{Division, Key, Opening, Part, PartWidth};
use crate::propose;

/// Rules that are about fronts and what carries them.
const CARRIED: &[Rule] = &[
    Rule::FrontNotCarried,
    Rule::CupOffDoor,
    Rule::BoxOffFront,
    Rule::RunnerLineIgnored,
    Rule::BottomBoxLow,
    Rule::TopBoxBlocked,
    Rule::PlateOnFixedPanel,
    Rule::InnerDrawerFouls,
    Rule::HingesTooFew,
    Rule::HingesTooClose,
    Rule::OpposedPlates,
];

pub(super) fn offer(trial: &mut Trial) {
    if trial.is_of(CARRIED) {
        hardware(trial);
    }
    match trial.finding.rule {
        Rule::WidthsDoNotAddUp => shares(trial),
        Rule::HeightsDoNotAddUp => front_shares(trial),
        Rule::InnerWithoutDoor => {
            for opening in trial.about() {
                let cabinet = trial.cabinet.key;
                trial.offer(Reach::Cabinet, Edit::Door { cabinet, opening });
            }
        }
        _ => {}
    }
}

/// What is proposed for the fronts the finding is about, or that its plates and runners serve.
fn hardware(trial: &mut Trial) {
    let layout = &trial.layout;
    let of = |thing: Key| {
        let itself = layout.fronts.iter().find(|front| front.key == thing);
        let carried = itself.or_else(|| layout.carried_by(trial.cabinet, thing));
        carried.map(|front| front.key)
    };
    let fronts: Vec<Key> = trial.about().filter_map(of).collect();
    for front in fronts {
        let all = propose::for_cabinet(trial.job, trial.cabinet.key, Some(front));
        let meant = all.into_iter().filter(|it| it.fronts.contains(&front));
        for edit in meant.filter_map(|proposal| proposal.edit) {
            trial.offer(Reach::Hardware, edit);
        }
    }
}

/// One of the parts with a typed width takes a share of what is left.
fn shares(trial: &mut Trial) {
    let mut parts = Vec::new();
    trial.cabinet.opening.each(&mut |opening: &Opening| {
        if let (true, Division::SideBySide(row)) = (
            trial.finding.about[0] == Some(opening.key),
            &opening.division,
        ) {
            let typed = |part: &&Part| matches!(part.width, PartWidth::Fixed(_));
            parts.extend(row.parts().filter(typed).map(|part| part.opening.key));
        }
    });
    for part in parts {
        choose(trial, part, PartChoice::WidthShare);
    }
}

/// One of the fronts takes a share of what is left.
fn front_shares(trial: &mut Trial) {
    let mut fronts = Vec::new();
    trial.cabinet.opening.each(&mut |opening: &Opening| {
        if trial.finding.about[0] == Some(opening.key) {
            fronts.extend(opening.fronts.iter().map(|front| front.key));
        }
    });
    for front in fronts {
        choose(trial, front, PartChoice::FrontHeightWay);
    }
}

fn choose(trial: &mut Trial, part: Key, choice: PartChoice) {
    let edit = Edit::PartChoose {
        cabinet: trial.cabinet.key,
        part,
        choice,
    };
    trial.offer(Reach::Cabinet, edit);
}
