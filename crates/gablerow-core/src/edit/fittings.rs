//! Plates, runners and shelves of a bay.

use alloc::format;
use alloc::string::String;

use super::{BayRun, Refusal, cabinet, change, pins};
use crate::cards::PlateShape;
use crate::history::Step;
use crate::job::{
    Bay, Datum, Division, FixedShelf, Hand, HolePlace, Job, Key, Opening, Plate, Runner, Shelf,
    ShelfHeight, Spacers,
};
use crate::layout::{Layout, SHELF_SETBACK, SHELF_SHORTER};

/// The bay of a run, as it is, and the highest hole of its cabinet; refused when either is not there.
pub(super) fn bay(job: &Job, run: BayRun) -> Result<(&Bay, i16), Refusal> {
    let (_, cabinet) = cabinet(job, run.cabinet)?;
    let bay = cabinet
        .opening
        .bay(run.bay)
        .ok_or_else(|| Refusal(format!("there is no bay {}", run.bay)))?;
    let last = Layout::last_hole(cabinet, &job.shop);
    if run.first < 1 || run.last > last || run.first > run.last {
        let asked = if run.first == run.last {
            "hole"
        } else {
            "holes"
        };
        return Err(Refusal(format!("{asked} {run}, but {}", has_holes(last))));
    }
    Ok((bay, last))
}

/// The holes of a cabinet whose highest is `last`: `this cabinet has holes 1-22`.
#[must_use]
pub fn has_holes(last: i16) -> String {
    match last {
        0 => "not one hole fits the height of this cabinet".into(),
        1 => "this cabinet has hole 1 alone".into(),
        _ => format!("this cabinet has holes 1-{last}"),
    }
}

/// A step that changes one bay; `edit` gets the next free key and gives the label.
pub(super) fn change_bay(
    job: &Job,
    run: BayRun,
    edit: impl FnOnce(&mut Bay, Key) -> String,
) -> Result<Step, Refusal> {
    change(job, run.cabinet, |cabinet| {
        let new = job.free_key(run.cabinet);
        let bay = cabinet
            .opening
            .bay_mut(run.bay)
            .ok_or_else(|| Refusal(format!("there is no bay {}", run.bay)))?;
        Ok(edit(bay, new))
    })
}

/// Hands out keys, one after the other.
pub(super) fn keys(mut next: Key) -> impl FnMut() -> Key {
    move || {
        let key = next;
        next = next.next();
        key
    }
}

pub(super) fn toggle_plates(job: &Job, wall: Hand, run: BayRun) -> Result<Step, Refusal> {
    let (found, last) = bay(job, run)?;
    let card = &job.shop.hinge;
    let shape = job
        .cards
        .hinge(card)
        .map_or(PlateShape::AlongRow, |card| card.plate);
    let holes = |shape| match shape {
        PlateShape::AlongRow => 2,
        PlateShape::InLine => 1,
    };
    let span = |plate: &Plate| {
        let card = job.cards.hinge(&plate.card);
        let lower = plate.hole.number(last);
        let upper = lower + holes(card.map_or(shape, |card| card.plate)) - 1;
        (lower, upper)
    };
    let here = |plate: &Plate| {
        let (lower, upper) = span(plate);
        plate.wall == wall && lower <= run.last && run.first <= upper
    };
    let gone = || found.plates.iter().filter(|plate| here(plate)).map(span);
    if let (Some(first), Some(last)) = (gone().map(|it| it.0).min(), gone().map(|it| it.1).max()) {
        return change_bay(job, run, |bay, _| {
            bay.plates.retain(|plate| !here(plate));
            format!("no hinge plate on {}", BayRun { first, last, ..run })
        });
    }
    // A run too short for one plate takes one all the same; a hole too few for a further one stays free.
    let tall = holes(shape);
    let plates = ((run.last - run.first + 1) / tall).max(1);
    let top = run.first + plates * tall - 1;
    if top > last {
        return Err(Refusal(format!(
            "a hinge plate takes holes {}-{top}, but {}",
            run.first,
            has_holes(last)
        )));
    }
    change_bay(job, run, |bay, new| {
        let mut key = keys(new);
        bay.plates.extend((0..plates).map(|plate| Plate {
            key: key(),
            wall,
            hole: HolePlace::of(run.first + plate * tall, run.datum, last),
            card: card.clone(),
            serves: None,
        }));
        bay.plates.sort_by_key(|plate| plate.hole.number(last));
        format!("hinge plate on {}", BayRun { last: top, ..run })
    })
}

pub(super) fn toggle_runners(job: &Job, run: BayRun) -> Result<Step, Refusal> {
    let (found, last) = bay(job, run)?;
    let at = |runner: &Runner| runner.hole.number(last);
    let missing = |number: &i16| !found.runners.iter().any(|runner| at(runner) == *number);
    if !(run.first..=run.last).any(|number| missing(&number)) {
        return change_bay(job, run, |bay, _| {
            bay.runners
                .retain(|runner| !(run.first..=run.last).contains(&at(runner)));
            format!("no runner on {run}")
        });
    }
    let card = job
        .cards
        .runner(&job.shop.runner)
        .ok_or_else(|| Refusal("the job has no runner card".into()))?;
    let length = job
        .cabinet(run.cabinet)
        .map(|cabinet| Layout::of(cabinet, job))
        .and_then(|layout| {
            layout
                .bays
                .iter()
                .find(|bay| bay.key == run.bay)
                .map(|bay| bay.depth_behind_fronts(&job.shop))
        })
        .and_then(|depth| card.longest_within(depth))
        .ok_or_else(|| Refusal(format!("the runner card {} has no length", card.id)))?
        .name;
    change_bay(job, run, |bay, new| {
        let mut key = keys(new);
        bay.runners
            .extend((run.first..=run.last).filter(missing).map(|number| Runner {
                key: key(),
                hole: HolePlace::of(number, run.datum, last),
                card: card.id.clone(),
                length,
                set_back: 0,
                spacers: Spacers::default(),
                serves: None,
            }));
        bay.runners.sort_by_key(at);
        format!("runner {} on {run}", length.exact(job.unit))
    })
}

pub(super) fn toggle_shelves(job: &Job, run: BayRun) -> Result<Step, Refusal> {
    let (found, last) = bay(job, run)?;
    let at = |shelf: &Shelf| shelf.hole.number(last);
    let missing = |number: &i16| !found.shelves.iter().any(|shelf| at(shelf) == *number);
    let remove = !(run.first..=run.last).any(|number| missing(&number));
    change_bay(job, run, |bay, new| {
        if remove {
            bay.shelves
                .retain(|shelf| !(run.first..=run.last).contains(&at(shelf)));
            return format!("no shelf on {run}");
        }
        let mut key = keys(new);
        bay.shelves
            .extend((run.first..=run.last).filter(missing).map(|number| Shelf {
                key: key(),
                hole: HolePlace::of(number, run.datum, last),
                board: job.shop.board.clone(),
                setback_front: SHELF_SETBACK,
                shorter: SHELF_SHORTER,
                load_grams: None,
                clear: None,
            }));
        bay.shelves.sort_by_key(at);
        format!("shelf on {run}")
    })
}

/// Takes the fitting of this key out of its bay; a shelf zone loses the one hole.
pub(super) fn take_away(job: &Job, key: Key, fitting: Key, hole: i16) -> Result<Step, Refusal> {
    let (_, known) = cabinet(job, key)?;
    let last = Layout::last_hole(known, &job.shop);
    let mut found = None;
    known.opening.each(&mut |opening| {
        let Division::Bay(bay) = &opening.division else {
            return;
        };
        let zone = bay.zones.iter().find(|zone| zone.key == fitting);
        let (first, top) = zone.map_or((1, 0), |zone| zone.numbers(last));
        let runs_there = (first..=top).contains(&hole);
        let shelf = bay.shelves.iter().find(|shelf| shelf.key == fitting);
        let plate = bay.plates.iter().find(|plate| plate.key == fitting);
        let runner = bay.runners.iter().find(|runner| runner.key == fitting);
        let one = |word: &str, place: HolePlace| format!("no {word} on {}", place.number(last));
        let said = zone
            .filter(|_| runs_there)
            .map(|_| format!("no pins on {hole}"))
            .or(shelf.map(|shelf| one("shelf", shelf.hole)))
            .or(plate.map(|plate| one("hinge plate", plate.hole)))
            .or(runner.map(|runner| one("runner", runner.hole)));
        found = found.take().or(said.map(|said| (opening.key, said)));
    });
    let (bay, label) =
        found.ok_or_else(|| Refusal("no fitting of a bay has a hole here".into()))?;
    let run = BayRun {
        cabinet: key,
        bay,
        first: hole,
        last: hole,
        datum: Datum::Foot,
    };
    change_bay(job, run, |bay, new| {
        pins::cut_zone(bay, fitting, run, last, new);
        bay.shelves.retain(|shelf| shelf.key != fitting);
        bay.plates.retain(|plate| plate.key != fitting);
        bay.runners.retain(|runner| runner.key != fitting);
        label
    })
}

/// Calls `change` with every fixed shelf of an opening, to be changed.
pub(super) fn each_fixed_shelf(opening: &mut Opening, change: &mut impl FnMut(&mut FixedShelf)) {
    match &mut opening.division {
        Division::Bay(_) => {}
        Division::SideBySide(parts) => {
            each_fixed_shelf(&mut parts.first.opening, change);
            for (_, part) in &mut parts.rest {
                each_fixed_shelf(&mut part.opening, change);
            }
        }
        Division::Stacked(parts) => {
            each_fixed_shelf(&mut parts.first, change);
            for (shelf, above) in &mut parts.rest {
                change(shelf);
                each_fixed_shelf(above, change);
            }
        }
    }
}

/// Counts every place of the fitting from `datum`, so that it stays at its holes until the height changes.
pub(super) fn recount(job: &Job, key: Key, fitting: Key, datum: Datum) -> Result<Step, Refusal> {
    let last = Layout::last_hole(cabinet(job, key)?.1, &job.shop);
    let again = |place: &mut HolePlace| *place = HolePlace::of(place.number(last), datum, last);
    change(job, key, |edited| {
        edited.opening.each_bay_mut(&mut |bay: &mut Bay| {
            for zone in bay.zones.iter_mut().filter(|zone| zone.key == fitting) {
                again(&mut zone.first);
                again(&mut zone.last);
            }
            bay.shelves
                .iter_mut()
                .filter(|shelf| shelf.key == fitting)
                .for_each(|shelf| again(&mut shelf.hole));
            bay.plates
                .iter_mut()
                .filter(|plate| plate.key == fitting)
                .for_each(|plate| again(&mut plate.hole));
            bay.runners
                .iter_mut()
                .filter(|runner| runner.key == fitting)
                .for_each(|runner| again(&mut runner.hole));
        });
        each_fixed_shelf(&mut edited.opening, &mut |shelf| {
            if let (true, ShelfHeight::Hole(place)) = (shelf.key == fitting, &mut shelf.at) {
                again(place);
            }
        });
        for row in edited.free_rows.iter_mut().filter(|row| row.key == fitting) {
            again(&mut row.first);
            again(&mut row.last);
        }
        Ok(format!("counted from the {}", datum.word()))
    })
}
