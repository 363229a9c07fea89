//! Doors and what they hang on: other reveals, other hinges, plates elsewhere or on both walls, the front row where it belongs.

use alloc::format;
use alloc::vec::Vec;

use super::carcass::other_cards;
use super::trial::{Reach, Trial};
use crate::check::Rule;
use crate::edit::{Adjust, Content, Edit, Furnish, Furnishing, New, PartChoice, PartMeasure};
use crate::grid::start_offsets;
use crate::job::{Bay, Key, Plate, Seat};
use crate::layout::{FrontLayout, front_row};
use crate::measure::Length;
use crate::parts::Leaf;

/// How far a plate is moved at most, in holes, for its door's sake.
const FARTHEST: i16 = 8;

pub(super) fn offer(trial: &mut Trial) {
    match trial.finding.rule {
        Rule::OverlayUnreachable | Rule::HalfOverlayArm => {
            other_cards(trial, &[Seat::Plates]);
            reveals(trial, reached);
        }
        Rule::RevealTooSmall => {
            other_cards(trial, &[Seat::Plates]);
            reveals(trial, needed);
        }
        Rule::DoorHanded => {
            plates_elsewhere(trial);
            alike_at_both_ends(trial);
        }
        Rule::HingesTooClose => plates_elsewhere(trial),
        Rule::DoorSideChange => both_walls(trial),
        Rule::InsetOnOverlayRow | Rule::InsetOverlayMixed => row(trial),
        _ => {}
    }
}

/// The doors the finding is about, and what hangs them.
fn doors<'t>(trial: &'t Trial) -> impl Iterator<Item = Leaf<'t>> {
    let fronts = trial.layout.fronts.iter();
    let meant = fronts.filter(|front| trial.about().any(|thing| thing == front.key));
    meant.map(|front| Leaf::of(trial.job, trial.cabinet, &trial.layout, front))
}

/// A length of the house defaults, by its words in their table.
type Wanted = (&'static str, Length);

/// Another value of a reveal or a gap of the whole job, for each that would help one of the doors.
fn reveals(trial: &mut Trial, wanted: impl Fn(&Trial, &Leaf) -> Vec<Wanted>) {
    let mut all: Vec<Wanted> = doors(trial).flat_map(|leaf| wanted(trial, &leaf)).collect();
    all.sort();
    all.dedup();
    for (words, length) in all {
        trial.offer_habit(words, New::To(Content::Length(length)));
    }
}

/// The reveals with which the door would lap over just as far as its hinge reaches.
fn reached(trial: &Trial, leaf: &Leaf) -> Vec<Wanted> {
    let rules = &trial.job.shop.fronts;
    let plates = leaf.plates();
    let fits = plates.iter().filter_map(|plate| leaf.fit(plate.card));
    let wanted = fits.flat_map(|fit| {
        let more = -fit.residual;
        [
            ("reveal, side", rules.reveal_side + more),
            ("gap of fronts", rules.gap + more),
            ("gap of fronts", rules.gap + more * 2),
            ("gap, inset", rules.gap_inset + more),
        ]
    });
    wanted.collect()
}

/// The reveals with which the door just swings past.
fn needed(_: &Trial, leaf: &Leaf) -> Vec<Wanted> {
    let thickness = leaf.front.thickness;
    let plates = leaf.plates();
    let least = plates
        .first()
        .and_then(|plate| plate.card.least_reveal(thickness));
    let wanted = least.map(|least| {
        [
            ("reveal, side", least.value),
            ("gap of fronts", least.value),
            ("gap of fronts", least.value * 2),
            ("gap, inset", least.value),
        ]
    });
    wanted.into_iter().flatten().collect()
}

/// Reveals and offsets with which cups stand as far from the foot as from the head.
fn alike_at_both_ends(trial: &mut Trial) {
    let shop = &trial.job.shop;
    let (rules, least) = (shop.fronts, shop.limits.to_end);
    let end = |reveal| start_offsets(reveal, rules.gap, least);
    let (foot, head) = (end(rules.reveal_foot), end(rules.reveal_head));
    for (foot, head) in [
        (foot.registered, head.registered),
        (foot.shifted, head.shifted),
    ] {
        let cabinet = trial.cabinet.key;
        let edit = Edit::Offsets {
            cabinet,
            foot,
            head,
        };
        trial.offer(Reach::Cabinet, edit);
    }
    trial.offer_habit("reveals", New::Next);
    let to = |length| New::To(Content::Length(length));
    trial.offer_habit("reveal, head", to(rules.reveal_foot));
    trial.offer_habit("reveal, foot", to(rules.reveal_head));
}

/// One of the door's plates on the nearest hole, down and up, with which that mends it.
fn plates_elsewhere(trial: &mut Trial) {
    let plates = doors(trial).flat_map(|leaf| leaf.plates());
    let plates: Vec<Key> = plates.map(|plate| plate.key).collect();
    let cabinet = trial.cabinet.key;
    for thing in plates {
        for way in [-1, 1] {
            let up = |holes: i16| Edit::Adjust {
                cabinet,
                thing,
                adjust: Adjust::Up(way * holes),
            };
            _ = (1..=FARTHEST).any(|holes| trial.offer(Reach::Fitting, up(holes)));
        }
    }
}

/// Plates on the other wall too, each across from one of the door's.
fn both_walls(trial: &mut Trial) {
    let mut key = trial.job.free_key(trial.cabinet.key);
    let mut edits = Vec::new();
    for leaf in doors(trial) {
        let Some(made) = across(trial, leaf.front, &mut key) else {
            continue;
        };
        let name = trial.cabinet.opening.front(leaf.front.key);
        let name = name.map_or("a door", |front| front.name.as_str());
        edits.push(Edit::Furnish(Furnish {
            cabinet: trial.cabinet.key,
            gone: Vec::new(),
            bays: [made].into(),
            label: format!("plates of {name} on both walls"),
        }));
    }
    for edit in edits {
        trial.offer(Reach::Hardware, edit);
    }
}

fn across(trial: &Trial, door: &FrontLayout, key: &mut Key) -> Option<Furnishing> {
    let (bay, hung) = (trial.cabinet.opening.bay(door.opening)?, door.hung?);
    let carriers = trial.layout.carriers(trial.cabinet, door);
    let own = |plate: &&Plate| carriers.iter().any(|carrier| carrier.key == plate.key);
    let mut like = |plate: &Plate| {
        let new = Plate {
            key: *key,
            wall: hung.other(),
            serves: None,
            ..plate.clone()
        };
        *key = key.next();
        new
    };
    let plates: Vec<Plate> = bay.plates.iter().filter(own).map(&mut like).collect();
    let (bay, runners) = (door.opening, Vec::new());
    (!plates.is_empty()).then_some(Furnishing {
        bay,
        plates,
        runners,
    })
}

/// A bay made for other fronts, so that its front row stands where its door wants it, or where that of the first cabinet is.
fn row(trial: &mut Trial) {
    let cabinet = trial.cabinet.key;
    let pattern = trial.job.first_with_front_row().and_then(|first| {
        let rows = first.front_rows();
        rows.first()
            .map(|(_, bay)| front_row(bay, trial.job).total())
    });
    let door = doors(trial).next().map(|leaf| *leaf.front);
    for part in trial.about() {
        let Some(bay) = trial.cabinet.opening.bay(part) else {
            continue;
        };
        let choice = PartChoice::Inset;
        let edit = Edit::PartChoose {
            cabinet,
            part,
            choice,
        };
        trial.offer(Reach::Cabinet, edit);
        for (measure, value) in measures(
            bay,
            door,
            pattern.map(|row| row - front_row(bay, trial.job).total()),
        ) {
            let edit = Edit::PartMeasure {
                cabinet,
                part,
                measure,
                value,
            };
            trial.offer(Reach::Cabinet, edit);
        }
    }
}

/// Lengths of a bay that its door says, or with which its row would be so much further back.
fn measures(
    bay: &Bay,
    door: Option<FrontLayout>,
    by: Option<Length>,
) -> Vec<(PartMeasure, Length)> {
    let mut wanted = Vec::new();
    if let Some(door) = door {
        wanted.push((PartMeasure::InsetFront, door.thickness));
        wanted.extend(
            door.set_in
                .map(|set_in| (PartMeasure::SetIn, set_in - bay.recess)),
        );
    } else if let Some(by) = by {
        wanted.push((PartMeasure::Recess, bay.recess + by));
        wanted.extend(
            bay.inset
                .map(|inset| (PartMeasure::SetIn, inset.set_in + by)),
        );
    }
    wanted
}

#[cfg(test)]
mod tests;
