//! Plates and runners that carry nothing: their holes would be bored in vain.

use alloc::format;
use alloc::vec::Vec;

use super::{Context, Finding, Rule};
use crate::job::{FaceId, Hand, Key, Plate};

/// Plates and runners that carry no front, where they were set for one or the cabinet has others.
///
/// A plate across from one that carries a door waits for that door to change its hand.
pub(super) fn idle_hardware(cx: &Context, found: &mut Vec<Finding>) {
    let fronts = &cx.layout.fronts;
    let carriers = fronts
        .iter()
        .flat_map(|front| cx.layout.carriers(cx.cabinet, front));
    let busy: Vec<Key> = carriers.map(|carrier| carrier.key).collect();
    let is_idle = |key: Key, serves: Option<Key>| {
        (serves.is_some() || !fronts.is_empty()) && !busy.contains(&key)
    };
    for (made, bay) in cx.bays() {
        let waits = |plate: &Plate| {
            let across = |it: &Plate| (it.wall, it.hole) == (plate.wall.other(), plate.hole);
            let mut plates = bay.plates.iter();
            plate.serves.is_none() && plates.any(|it| across(it) && busy.contains(&it.key))
        };
        let plates = bay.plates.iter().filter(|it| !waits(it));
        for plate in plates.filter(|it| is_idle(it.key, it.serves)) {
            let lacks = match plate.serves {
                Some(_) => "the door it was set for does not hang on this wall",
                None => "no door hangs on this wall at its height",
            };
            say(cx, (plate.key, made.wall(plate.wall)), lacks, found);
        }
        for runner in bay.runners.iter().filter(|it| is_idle(it.key, it.serves)) {
            let lacks = match runner.serves {
                Some(_) => "the drawer it was set for is not there",
                None => "no drawer is in its bay at its height",
            };
            // On both walls, so on the left one, where a person looks first.
            say(cx, (runner.key, made.wall(Hand::Left)), lacks, found);
        }
    }
}

fn say(cx: &Context, (key, wall): (Key, FaceId), lacks: &str, found: &mut Vec<Finding>) {
    let message = format!(
        "{} carries nothing: {lacks}; take it away, or make a front for it",
        cx.fitting(key)
    );
    let place = cx.here().on(wall);
    let holes = cx.fitting_holes(key);
    let on_grid = holes.filter(|(first, last)| *first >= 1 && *last <= cx.layout.last);
    let place = on_grid.map_or(place, |holes| place.holes(holes));
    found.push(Finding::new(Rule::IdleHardware, place, message).about(key));
}

#[cfg(test)]
mod tests;
