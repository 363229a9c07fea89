//! How shelves lie: as the sheet says, and as the pins are in the panels that were bored.

use std::collections::BTreeMap;

use gablerow_core::job::{FaceId, Job};
use gablerow_core::layout::{Layout, Use};
use gablerow_papers::HoleRecord;

use super::boring::{Wanted, bore, mm, off_in_height, panel_and_face};
use super::reading::{number, read};

/// What the sheet says of shelves that rock: the bay, and by how many tenths of a mm.
pub(super) fn unlevel_said(sheet: &str) -> BTreeMap<String, i64> {
    let text = sheet.replace("\n           ", " ");
    let lines = text.lines().filter(|line| line.contains(": shelves rock "));
    let said = lines.map(|line| {
        let (bay, rock) = line[7..].split_once(": shelves rock ").unwrap();
        let (rock, _) = rock.split_once(',').unwrap();
        (bay.to_string(), tenths(number(rock)))
    });
    said.collect()
}

// A rock is a few tenths.
#[allow(clippy::cast_possible_truncation)]
fn tenths(mm: f64) -> i64 {
    (mm * 10.0).round() as i64
}

/// The same from where the pins are in the panels that were bored: of each bay the lowest corner against the other three.
pub(super) fn unlevel_bored(sheet: &str, wanted: &Wanted, job: &Job) -> BTreeMap<String, i64> {
    // How far off each row of a face is: by the face and the tenths of a mm from its front edge.
    let mut off: BTreeMap<(String, i64), f64> = BTreeMap::new();
    for line in read(sheet) {
        let (face, holes) = bore(&line, wanted, (0.0, 0.0));
        for hole in holes {
            off.insert((face.clone(), tenths(hole.0)), off_in_height(&line, wanted));
        }
    }
    let records = HoleRecord::of_job(job);
    let mut unlevel = BTreeMap::new();
    for cabinet in &job.cabinets {
        for copy in &cabinet.copies {
            let built = cabinet.built_as(copy);
            let layout = Layout::of(&built, job);
            for bay in &layout.bays {
                let wall = |wall: FaceId| {
                    let pins = records.iter().filter(|it| {
                        (it.cabinet, it.copy, it.face) == (&cabinet.name, &copy.name, wall)
                            && it.hole.users.iter().any(|(use_, _)| *use_ == Use::Pin)
                            && bay.spans(it.hole.z)
                    });
                    let rows = pins.map(|it| {
                        let (panel, face) = panel_and_face(it, job);
                        (tenths(mm(it.from_front)), format!("{panel} {face}"))
                    });
                    let rows: BTreeMap<i64, String> = rows.collect();
                    let row = |(x, face): (&i64, &String)| off[&(face.clone(), *x)];
                    let is_pair = rows.len() > 1;
                    is_pair.then(|| {
                        (
                            row(rows.iter().next().unwrap()),
                            row(rows.iter().last().unwrap()),
                        )
                    })
                };
                let (Some(left), Some(right)) = (wall(bay.left), wall(bay.right)) else {
                    continue;
                };
                if [left.1, right.0, right.1]
                    .iter()
                    .any(|off| (off - left.0).abs() > 0.01)
                {
                    let name = layout.names.opening(bay.key).unwrap();
                    let rock = (left.0 - left.1 - right.0 + right.1).abs();
                    unlevel.insert(
                        format!("{} copy {}, {name}", cabinet.name, copy.name),
                        tenths(rock),
                    );
                }
            }
        }
    }
    unlevel
}
