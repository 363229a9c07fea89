//! Panels bored by the lines of a sheet, and what is wrong with them.

use std::collections::BTreeMap;

use gablerow_core::job::{AsCut, BandState, Job, Reference};
use gablerow_core::measure::Length;
use gablerow_papers::HoleRecord;

use super::reading::{Line, read};

/// Rounding of one printed length, and of two.
const ROUNDING: f64 = 0.051;

/// A hole as it is in a panel: how far from its front edge, how far from its foot, how wide, how deep.
pub(super) type Hole = (f64, f64, f64, Option<f64>);

/// A panel as the saw left it.
#[derive(Clone, Copy, Debug)]
struct Panel {
    length: f64,
    width: f64,
    /// What is on the front edge yet: less than the finished width by this.
    band_to_come: f64,
    /// How much longer it was cut than planned, where that was measured and typed.
    longer: f64,
    /// By how much its diagonal from the front of the foot is longer than the other, where that was measured and typed.
    apart: f64,
}

/// Panels by their names, and the holes wanted in each of their faces.
pub(super) struct Wanted {
    panels: BTreeMap<String, Panel>,
    faces: BTreeMap<String, Vec<Hole>>,
    /// Which end rests on the stop is a habit of the shop's one stop.
    one_stop: bool,
}

impl Wanted {
    /// The panel a line is about.
    fn panel(&self, line: &Line) -> (&str, &Panel) {
        let panels = self.panels.iter();
        let named = panels.filter(|(name, _)| line.name.starts_with(&format!("{name} ")));
        let longest = named.max_by_key(|(name, _)| name.len());
        let (name, panel) = longest.unwrap_or_else(|| panic!("no such panel: {}", line.name));
        (name, panel)
    }
}

pub(super) fn mm(length: Length) -> f64 {
    length.exact_mm().to_string().parse().unwrap()
}

pub(super) fn panel_and_face(record: &HoleRecord<'_>, job: &Job) -> (String, &'static str) {
    let cabinet = job
        .cabinets
        .iter()
        .find(|it| it.name == *record.cabinet)
        .unwrap();
    let copy = match cabinet.copies.len() {
        1 => String::new(),
        _ => format!(" copy {}", record.copy),
    };
    (
        format!("{}{copy} {}", record.cabinet, record.name.panel),
        record.name.word,
    )
}

/// What was measured of the panel of a hole; nothing where nobody did.
fn as_cut(job: &Job, record: &HoleRecord<'_>) -> Option<AsCut> {
    let cabinet = job
        .cabinets
        .iter()
        .find(|it| it.name == *record.cabinet)
        .unwrap();
    let copy = cabinet.copies.iter().find(|it| it.name == *record.copy);
    copy.unwrap().cut(record.face.panel).copied()
}

/// How much longer the panel of a hole was cut.
fn longer(job: &Job, record: &HoleRecord<'_>) -> f64 {
    let planned = mm(record.from_foot) + mm(record.from_head);
    as_cut(job, record).map_or(0.0, |cut| match (cut.length, cut.play) {
        (Some(length), _) => mm(length) - planned,
        (None, Some(play)) => -mm(play),
        (None, None) => 0.0,
    })
}

pub(super) fn wanted(job: &Job) -> Wanted {
    let band = &job.shop.band;
    let band_to_come = match band.on {
        BandState::BeforeBoring => 0.0,
        BandState::AfterBoring => mm(band.thickness) - mm(band.pre_mill),
    };
    let mut wanted = Wanted {
        panels: BTreeMap::new(),
        faces: BTreeMap::new(),
        one_stop: job.shop.reference == Reference::OneStop,
    };
    for record in HoleRecord::of_job(job) {
        let (panel, face) = panel_and_face(&record, job);
        let size = Panel {
            length: mm(record.from_foot) + mm(record.from_head),
            width: mm(record.from_front) + mm(record.from_back),
            band_to_come,
            longer: longer(job, &record),
            apart: as_cut(job, &record)
                .and_then(|cut| cut.diagonals)
                .map_or(0.0, mm),
        };
        let hole = (
            mm(record.from_front),
            mm(record.from_foot),
            mm(record.hole.diameter),
            record.hole.depth.map(mm),
        );
        wanted
            .faces
            .entry(format!("{panel} {face}"))
            .or_default()
            .push(hole);
        wanted.panels.insert(panel, size);
    }
    wanted
}

/// Bores one line into panels that are so much longer and deeper than wanted; gives the face that was up, and its holes.
pub(super) fn bore(line: &Line, wanted: &Wanted, error: (f64, f64)) -> (String, Vec<Hole>) {
    let (panel, size) = wanted.panel(line);
    // Up is what the right-hand rule has up: forward is away from the edge toward you, the foot is at the hand named.
    let up_is_right = (line.edge == "FRONT") == (line.foot == "RIGHT");
    let is_side = line.name.contains(" side ");
    let face = match (is_side, up_is_right) {
        (true, _) if line.name.contains("left side") == up_is_right => "inside",
        (true, _) => "outside",
        (false, true) => "right face",
        (false, false) => "left face",
    };
    let length = size.length + size.longer + error.0;
    let width = size.width + error.1;
    let x = match line.edge.as_str() {
        "FRONT" => line.setting + size.band_to_come,
        _ => width - line.setting,
    };
    let holes = line
        .from_end
        .iter()
        .map(|&it| if line.end == "FOOT" { it } else { length - it })
        .map(|z| (x, z, line.diameter, line.depth))
        .collect();
    (format!("{panel} {face}"), holes)
}

/// What is wrong with the panels that were bored by this sheet; nothing when all is right but for what the saw did.
///
/// A hole counted from the head is off by the error in length, one worked from the back by the error in width. Of an error in
/// length that was typed, a row that rests on the head by habit may be off by 0.3; more than that the sheet makes up for.
pub(super) fn wrong(sheet: &str, wanted: &Wanted, error: (f64, f64)) -> Vec<String> {
    let mut wrong = Vec::new();
    let mut left = wanted.faces.clone();
    for line in read(sheet) {
        let (face, holes) = bore(&line, wanted, error);
        if face != line.name {
            wrong.push(format!("{face} is up, not {}", line.name));
        }
        if holes.len() != line.count {
            wrong.push(format!(
                "{} holes where {} are said",
                holes.len(),
                line.count
            ));
        }
        let off = (
            if line.edge == "FRONT" { 0.0 } else { error.1 },
            off_in_height(&line, wanted) + if line.end == "FOOT" { 0.0 } else { error.0 },
        );
        for hole in holes {
            let all = left.entry(face.clone()).or_default();
            let is_it = |one: &Hole| {
                (one.0 + off.0 - hole.0).abs() < ROUNDING
                    && (one.1 + off.1 - hole.1).abs() < 2.0 * ROUNDING
                    && (one.2 - hole.2).abs() < ROUNDING
                    && one.3.map(|it| (it * 10.0).round()) == hole.3.map(|it| (it * 10.0).round())
            };
            match all.iter().position(is_it) {
                Some(at) => drop(all.swap_remove(at)),
                None => wrong.push(format!("{face}: not wanted at {hole:?}")),
            }
        }
    }
    for (face, holes) in left {
        wrong.extend(
            holes
                .iter()
                .map(|hole| format!("{face}: missing at {hole:?}")),
        );
    }
    wrong
}

/// How far above their place the holes of a line are, by the length that was typed.
pub(super) fn off_in_height(line: &Line, wanted: &Wanted) -> f64 {
    let longer = wanted.panel(line).1.longer;
    let is_left = wanted.one_stop && line.end == "HEAD" && line.is_on_grid;
    if is_left && longer.abs() < 0.3001 {
        longer
    } else {
        0.0
    }
}

/// How much higher than at the front of its foot the end of a line's panel is, so far behind its front edge.
///
/// The panel is a parallelogram whose ends rise toward the back by so much that its diagonals come out as measured; found by
/// halving, since what the sheet says comes from a formula.
pub(super) fn rise_of_end(line: &Line, wanted: &Wanted, from_front: f64) -> f64 {
    let panel = wanted.panel(line).1;
    let apart = |rise: f64| {
        let from_front_of_foot = panel.width.hypot(panel.length + rise);
        from_front_of_foot - panel.width.hypot(panel.length - rise)
    };
    let (mut low, mut high) = (-200.0_f64, 200.0_f64);
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if apart(middle) < panel.apart {
            low = middle;
        } else {
            high = middle;
        }
    }
    low * from_front / panel.width
}
