//! What owns a hole, in words.

use gablerow_core::job::{Cabinet, Datum, Division, HolePlace, Key};
use gablerow_core::layout::Layout;
use gablerow_core::measure::Unit;

/// What owns a hole: `hinge plate on 19-20, from head`.
#[must_use]
pub fn owner(cabinet: &Cabinet, layout: &Layout, key: Key, unit: Unit) -> String {
    let mut words = None;
    let holes = holes_of(layout, key);
    cabinet.opening.each(&mut |opening| {
        let Division::Bay(bay) = &opening.division else {
            return;
        };
        if let Some(zone) = bay.zones.iter().find(|zone| zone.key == key) {
            words = Some(format!("shelf zone {holes}{}", counted(zone.first)));
        }
        if let Some(shelf) = bay.shelves.iter().find(|shelf| shelf.key == key) {
            words = Some(format!("loose shelf on {holes}{}", counted(shelf.hole)));
        }
        if let Some(plate) = bay.plates.iter().find(|plate| plate.key == key) {
            words = Some(format!("hinge plate on {holes}{}", counted(plate.hole)));
        }
        if let Some(runner) = bay.runners.iter().find(|runner| runner.key == key) {
            let length = runner.length.exact(unit);
            words = Some(format!(
                "runner {length} on {holes}{}",
                counted(runner.hole)
            ));
        }
    });
    let free = || {
        let thing = cabinet.free_thing(key)?;
        let purpose = thing.purpose;
        Some(match thing.height {
            Some((end, height)) => {
                let height = height.exact(unit);
                format!("{purpose}, {height} from the {}", end.word())
            }
            None => {
                let row = cabinet.free_rows.iter().find(|row| row.key == key)?;
                format!("{purpose} on {holes}{}", counted(row.first))
            }
        })
    };
    words.or_else(free).unwrap_or_else(|| "joint".to_owned())
}

/// The hole numbers of a fitting, from the lowest to the highest.
fn holes_of(layout: &Layout, key: Key) -> String {
    let faces = layout.uprights.iter().flat_map(|upright| &upright.faces);
    let runs = faces.flat_map(|face| &face.rows).flat_map(|row| &row.runs);
    let own = || runs.clone().filter(|run| run.spec.owner == key);
    match (
        own().map(|run| run.first).min(),
        own().map(|run| run.last).max(),
    ) {
        (Some(first), Some(last)) if first != last => format!("{first}-{last}"),
        (Some(hole), _) => hole.to_string(),
        (None, _) => "no hole".to_owned(),
    }
}

/// Said only where it is not the foot, which is the usual way.
fn counted(place: HolePlace) -> String {
    match place.datum {
        Datum::Foot => String::new(),
        other => format!(", from {}", other.word()),
    }
}
