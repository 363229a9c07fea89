//! What there is to say about a face, beside it.

use gablerow_core::check::{Finding, Level};
use gablerow_core::drawing::FaceDrawing;
use gablerow_core::job::{FaceId, Key};
use gablerow_core::layout::Use;
use gablerow_core::measure::{Length, Unit};
use gablerow_core::parts::loose_shelves;
use gablerow_core::stamp::Stamp;
use gablerow_core::strength::length;
use gablerow_papers::wrap;

use super::canvas::Canvas;
use super::foot;
use super::words::{self, level_role};
use crate::app::App;
use crate::scene::{self, Scene};
use crate::theme::Role;

/// Where not all findings have room, one is said in at most so many lines; all of it stands in the checks.
const FINDING_LINES_MOST: usize = 3;
/// Why a hole is barred is said in at most so many lines: where the screen is low, and where it is higher than that. All of it
/// stands in the reasons.
const BARRED_LINES_MOST: (usize, usize) = (2, 5);
/// A screen of so many lines is low.
const LOW: u16 = 30;

/// Draws the words, top to bottom, as far as they fit.
pub(super) fn draw(canvas: &mut Canvas, app: &App, scene: &Scene) {
    let faces = scene::faces(&app.desk.job);
    let at = faces
        .iter()
        .position(|face| *face == (app.spot.cabinet, app.spot.face));
    header(canvas, app, scene, (at, faces.len()));
    let mut y = cursor(canvas, app, scene, 2);
    let stamp = Stamp::of(&app.desk.job, scene.cabinet, &scene.layout);
    canvas.text_right(y, &stamp.to_string(), Role::Dim);
    y = sizes(canvas, app, scene, y + 1);
    y = rows(canvas, app, scene, y + 1);
    y = mate(canvas, app, scene, y + 1);
    y = checks(canvas, scene, y + 1, Some(scene.drawing.face));
    foot::further_hints(canvas, app, y + 1);
}

/// The cabinet, the job, which of how many this is, and whether all is saved.
pub(super) fn header(
    canvas: &mut Canvas,
    app: &App,
    scene: &Scene,
    (at, count): (Option<usize>, usize),
) {
    let (state, role) = words::saved(app);
    let state_wide = u16::try_from(state.len()).unwrap_or(u16::MAX);
    canvas.text_right(0, state, role);
    // What is saved and where one is come first; a long title gives way to them.
    let place = match at {
        Some(at) => format!("{}/{count}", at + 1),
        None => "outside".to_owned(),
    };
    let place_wide = u16::try_from(place.len()).unwrap_or(u16::MAX);
    let room = canvas
        .width()
        .saturating_sub(state_wide + 1)
        .saturating_sub(place_wide + 1);
    let mut names = canvas.part(0, 0, room, 1);
    let after = names.text(0, 0, scene.cabinet.name.as_str(), Role::Title);
    let after = names.text(after + 1, 0, app.desk.job.title.as_str(), Role::Plain);
    canvas.text(after.min(room) + 1, 0, &place, Role::Dim);
}

fn cursor(canvas: &mut Canvas, app: &App, scene: &Scene, y: u16) -> u16 {
    let unit = app.desk.job.unit;
    let (hole, drawing) = (app.spot.hole, &scene.drawing);
    let row = scene.row(app.spot.row);
    let x = scene.from_front(&app.spot);
    let height = drawing.height(hole);
    canvas.text(0, y - 1, &format!("HOLE {hole}"), Role::Strong);
    let mut place = row.map_or_else(
        || "no row here".to_owned(),
        |row| format!("{} row", row.name.word()),
    );
    let names = &scene.layout.names;
    // Of one bay there is nothing to tell apart; of several, findings speak of this one by this name.
    let bay = scene.bay_at(hole).filter(|_| names.bays() > 1);
    if let Some(name) = bay.and_then(|(bay, _)| names.opening(bay.key)) {
        place = format!("{place}, {name}");
    }
    canvas.text(9, y - 1, &place, Role::Plain);
    let of = |length: Length| length.short(unit);
    let pairs = [
        [("foot", of(height)), ("head", of(drawing.length - height))],
        [("front", of(x)), ("back", of(drawing.depth - x))],
    ];
    let mut y = y;
    for [(edge, from), (other, to)] in pairs {
        canvas.text(0, y, &format!("{edge:<5} {from}"), Role::Plain);
        // Fractions of an inch are too long for two of them on a line.
        let (x, below) = if unit == Unit::Inch { (0, 1) } else { (15, 0) };
        canvas.text(x, y + below, &format!("{other:<4} {to}"), Role::Plain);
        y += 1 + below;
    }
    match drawing.dot_at(x, hole) {
        Some(dot) => {
            for &(_, owner) in &dot.hole.users {
                y = canvas.paragraph(
                    y,
                    0,
                    &scene::owner(scene.cabinet, &scene.layout, owner, unit),
                    Role::Note,
                );
                if let Some(bears) = bears(app, scene, owner) {
                    y = canvas.paragraph(y, 0, &bears, Role::Plain);
                }
            }
        }
        None => y = nothing_here(canvas, app, scene, y),
    }
    y
}

/// Says that a hole is free, or why it is barred to pins and by which rule.
fn nothing_here(canvas: &mut Canvas, app: &App, scene: &Scene, y: u16) -> u16 {
    let Some(finding) = scene.why_barred(&app.desk.job, &app.spot) else {
        canvas.text(0, y, "nothing here yet", Role::Dim);
        return y + 1;
    };
    let sign = canvas.glyphs().signs.hole_barred;
    let (level, rule) = (finding.level.word(), finding.rule_name());
    let y = canvas.paragraph(y, 0, &format!("{sign} pin: {level} {rule}"), Role::Note);
    let most = if canvas.height() < LOW {
        BARRED_LINES_MOST.0
    } else {
        BARRED_LINES_MOST.1
    };
    let mut lines = wrap(&finding.message, usize::from(canvas.width()) - 1);
    if lines.len() > most {
        lines.truncate(most);
        lines[most - 1].push(canvas.glyphs().ellipsis);
    }
    for (at, line) in (y..).zip(&lines) {
        canvas.text(0, at, line, Role::Dim);
    }
    y + u16::try_from(lines.len()).unwrap_or(0)
}

/// What a loose shelf is reckoned with and how far it sags: `25.0 kg (house guess): sags 1.6, 3.2 after years`; `None` for
/// what is no loose shelf.
fn bears(app: &App, scene: &Scene, owner: Key) -> Option<String> {
    scene.cabinet.loose_shelf(owner)?;
    let shelves = loose_shelves(scene.cabinet, &scene.layout, &app.desk.job);
    let found = shelves.into_iter().find(|shelf| shelf.key == owner);
    let strength = found?.strength?;
    let guess = if strength.load_is_typed {
        ""
    } else {
        " (house guess)"
    };
    let show = |mm: f64| length(mm).show(app.desk.job.unit);
    let sag = match (strength.now, strength.later) {
        (Some(now), Some(later)) => {
            format!("sags {}, {} after years", show(now), show(later))
        }
        (Some(now), None) => format!("sags {}, more after years", show(now)),
        (None, _) => "stiffness not known".to_owned(),
    };
    Some(format!("{:.1} kg{guess}: {sag}", strength.load_kg))
}

fn sizes(canvas: &mut Canvas, app: &App, scene: &Scene, y: u16) -> u16 {
    let unit = app.desk.job.unit;
    let drawing = &scene.drawing;
    let Some(upright) = scene.layout.upright(drawing.face.panel) else {
        return y;
    };
    let [length, depth, board] =
        [drawing.length, drawing.depth, upright.thickness].map(|length| length.short(unit));
    let y = canvas.paragraph(y, 0, &format!("{length} x {depth} x {board}"), Role::Plain);
    let first = upright.first_hole(scene.layout.grid).short(unit);
    let holes = format!("{} holes from {first}", upright.hole_count());
    let after = canvas.text(0, y, &holes, Role::Plain);
    let (balance, role) = match upright.mismatch.is_balanced() {
        true => ("BALANCED".to_owned(), Role::Good),
        false => (
            format!("{} OUT", upright.mismatch.size().short(unit)),
            Role::Warn,
        ),
    };
    canvas.text(after + 1, y, &balance, role);
    y + 1
}

fn rows(canvas: &mut Canvas, app: &App, scene: &Scene, mut y: u16) -> u16 {
    let unit = app.desk.job.unit;
    for row in &scene.drawing.rows {
        let here = || {
            scene
                .drawing
                .dots
                .iter()
                .filter(|dot| dot.hole.row.is_some() && dot.x == row.x)
        };
        let count = here().count();
        if count == 0 {
            continue;
        }
        let from_back = scene.drawing.depth - row.x;
        let (edge, setback) = if from_back < row.x {
            ("back", from_back)
        } else {
            ("front", row.x)
        };
        let runs = canvas.glyphs().signs.runs(here().map(|dot| &dot.hole));
        let text = format!("{} from {edge} {runs} ({count})", setback.short(unit));
        y = canvas.paragraph(y, 0, &text, Role::Plain);
    }
    y
}

fn mate(canvas: &mut Canvas, app: &App, scene: &Scene, y: u16) -> u16 {
    let Some(mate) = scene.mate() else {
        return canvas.paragraph(
            y,
            0,
            "an outside: no bay sees it; it takes free rows and free holes",
            Role::Dim,
        );
    };
    // A door hangs on one side only; all else of a bay is made on both. Other bays have other mates.
    let bay = scene.bay_at(app.spot.hole).map(|(bay, _)| bay);
    let holes = |drawing: &FaceDrawing| -> Vec<(Length, Option<i16>)> {
        let of_bay = drawing
            .dots
            .iter()
            .filter(|dot| bay.is_some_and(|bay| bay.spans(dot.hole.z)));
        let paired = of_bay.filter(|dot| dot.hole.only_use() != Some(Use::Plate));
        paired.map(|dot| (dot.hole.x, dot.hole.number)).collect()
    };
    let lacks = |a: &[(Length, Option<i16>)], b: &[(Length, Option<i16>)]| {
        a.iter().filter(|hole| !b.contains(hole)).count()
    };
    let (own, other) = (holes(&scene.drawing), holes(&mate));
    let mut dots = scene.drawing.dots.iter().chain(&mate.dots);
    let has_plates = dots.any(|dot| dot.hole.only_use() == Some(Use::Plate));
    let text = match (lacks(&own, &other), lacks(&other, &own)) {
        (0, 0) if has_plates => format!("mate {}: the same, hinges aside", mate.name),
        (0, 0) => format!("mate {}: the same", mate.name),
        (here, there) => format!("mate {}: {here} only here, {there} only there", mate.name),
    };
    canvas.paragraph(y, 0, &text, Role::Plain)
}

/// The open findings and their lines, those of another face than this one with its name; what both walls have to say alike
/// is said once.
fn told<'a>(
    scene: &'a Scene,
    here: Option<FaceId>,
    width: usize,
) -> Vec<(&'a Finding, Vec<String>)> {
    let mut told: Vec<(&Finding, Vec<String>)> = Vec::new();
    for finding in Level::ALL
        .into_iter()
        .flat_map(|level| words::open_findings(&scene.findings, level))
    {
        if told
            .iter()
            .any(|(earlier, _)| earlier.message == finding.message)
        {
            continue;
        }
        let elsewhere = finding.place.face.filter(|&face| Some(face) != here);
        let place = elsewhere
            .map(|face| format!("{}: ", scene.layout.names.face(face)))
            .unwrap_or_default();
        let text = format!("{place}{}", finding.message);
        told.push((finding, wrap(&text, width.saturating_sub(2))));
    }
    told
}

/// The open findings, as far as there is room, those of another face than this one with its name; gives the line after them.
pub(super) fn checks(canvas: &mut Canvas, scene: &Scene, y: u16, here: Option<FaceId>) -> u16 {
    let mut x = 0;
    for level in Level::ALL {
        let count = words::open_findings(&scene.findings, level).count();
        let role = if count == 0 {
            Role::Dim
        } else {
            level_role(level)
        };
        x = canvas.text(x, y, &format!("{count} {}", level.word()), role) + 2;
    }
    let height = canvas.height();
    let mut y = y + 1;
    let told = told(scene, here, usize::from(canvas.width()));
    let all: usize = told.iter().map(|(_, lines)| lines.len()).sum();
    let is_all_shown = all <= usize::from(height.saturating_sub(y));
    let count = told.len();
    for (at, (finding, mut lines)) in told.into_iter().enumerate() {
        let more_to_come = count - at;
        // The last line is kept for what has no room.
        let room = usize::from(height.saturating_sub(y + u16::from(more_to_come > 1)));
        let needed = lines.len().min(FINDING_LINES_MOST);
        // The first one is the heaviest: better its beginning than nothing of it.
        let is_wanted = needed <= room || more_to_come == 1 || at == 0;
        if !is_all_shown && (room == 0 || !is_wanted) {
            let more = if at == 0 { "" } else { "more " };
            let text = format!("{more_to_come} {more}in the checks");
            canvas.text(2, y, &text, Role::Dim);
            return y + 1;
        }
        let most = FINDING_LINES_MOST.min(room);
        if !is_all_shown && lines.len() > most {
            lines.truncate(most);
            lines[most - 1].push(canvas.glyphs().ellipsis);
        }
        canvas.text(
            0,
            y,
            &finding.level.word()[..1].to_uppercase(),
            level_role(finding.level),
        );
        for line in lines {
            canvas.text(2, y, &line, Role::Plain);
            y += 1;
        }
    }
    y
}
