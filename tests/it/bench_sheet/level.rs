//! How shelves lie: as the sheet says, and as the pins are in the panels that were bored.

use std::collections::BTreeMap;

use gablerow_core::job::{FaceId, Job};
use gablerow_core::layout::{Layout, Use};
use gablerow_papers::HoleRecord;

use super::boring::{Wanted, bore, mm, off_in_height, panel_and_face, rise_of_end};
use super::reading::{number, read};

/// How a shelf lies: how far it rocks, how much higher it is on the right, and at the back; in mm.
pub(super) type Lie = [f64; 3];

/// What the sheet says of shelves that do not lie level, bay by bay.
pub(super) fn unlevel_said(sheet: &str) -> BTreeMap<String, Lie> {
    let text = sheet.replace("\n           ", " ");
    let lines = text.lines().filter(|line| line.contains(": shelves rock "));
    let said = lines.map(|line| {
        let (bay, words) = line[7..].split_once(": shelves rock ").unwrap();
        let mut words = words.split(", ");
        let mut lie = [number(words.next().unwrap()), 0.0, 0.0];
        for slope in words.filter(|words| *words != "level") {
            let (by, to) = slope.split_once(" up to the ").unwrap();
            match to.trim() {
                "right" => lie[1] = number(by),
                "left" => lie[1] = -number(by),
                "back" => lie[2] = number(by),
                "front" => lie[2] = -number(by),
                other => panic!("no way: {other}"),
            }
        }
        (bay.to_string(), lie)
    });
    said.collect()
}

/// Whether bays lie alike, but for the rounding of what is printed. A bay that is not there lies level.
pub(super) fn lie_alike(said: &BTreeMap<String, Lie>, bored: &BTreeMap<String, Lie>) -> bool {
    let lie = |of: &BTreeMap<String, Lie>, bay: &String| of.get(bay).copied().unwrap_or_default();
    let mut bays = said.keys().chain(bored.keys());
    bays.all(|bay| {
        let both = lie(said, bay).into_iter().zip(lie(bored, bay));
        both.into_iter()
            .all(|(said, bored)| (said - bored).abs() < 0.052)
    })
}

// A setback is some hundreds of mm.
#[allow(clippy::cast_possible_truncation)]
fn tenths(mm: f64) -> i64 {
    (mm * 10.0).round() as i64
}

/// The same from where the pins are in the panels that were bored.
pub(super) fn unlevel_bored(sheet: &str, wanted: &Wanted, job: &Job) -> BTreeMap<String, Lie> {
    // How far off each row of a face is: by the face and the tenths of a mm from its front edge.
    let mut off: BTreeMap<(String, i64), f64> = BTreeMap::new();
    // Pins stand on the grid.
    for line in read(sheet).into_iter().filter(|it| it.is_on_grid) {
        let (face, holes) = bore(&line, wanted, (0.0, 0.0));
        for hole in holes {
            let rise = rise_of_end(&line, wanted, hole.0);
            let of_row = off_in_height(&line, wanted) + rise;
            off.insert((face.clone(), tenths(hole.0)), of_row);
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
                        let is_through = it.hole.depth.is_none();
                        let is_on_wall = it.face == wall || it.face == wall.behind() && is_through;
                        (it.cabinet, it.copy) == (&cabinet.name, &copy.name)
                            && is_on_wall
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
                let name = layout.names.opening(bay.key).unwrap();
                let lie = [
                    (left.0 - left.1 - right.0 + right.1).abs(),
                    (right.0 + right.1 - left.0 - left.1) / 2.0,
                    (left.1 + right.1 - left.0 - right.0) / 2.0,
                ];
                unlevel.insert(format!("{} copy {}, {name}", cabinet.name, copy.name), lie);
            }
        }
    }
    unlevel
}
