//! The face screen, and the book of both walls.

use gablerow_core::drawing::FaceDrawing;
use gablerow_core::job::Hand;
use gablerow_core::propose::Proposal;

use gablerow_papers::board::Projection;

use super::board::{Cursor, Window};
use super::canvas::Canvas;
use super::panel::{self, GUTTER, Panel};
use super::{info, proposals, sizes};
use crate::app::{App, Pane, WIDE_FROM};
use crate::scene::Scene;
use crate::theme::Role;

/// The fewest columns of the words beside a face.
const INFO_LEAST: u16 = 28;

/// Draws everything above the last line; `open` are the proposals that lie open.
pub(super) fn draw(
    canvas: &mut Canvas,
    app: &App,
    scene: &Scene,
    (pane, open): (Option<Pane>, &[Proposal]),
) {
    let (width, height) = (canvas.width(), canvas.height() - 1);
    let mate = scene.mate().filter(|_| app.shows_mate());
    let right_of_boards = match &mate {
        Some(mate) => book(
            &mut canvas.part(0, 0, width, height),
            app,
            scene,
            mate,
            width >= WIDE_FROM,
        ),
        None => single(&mut canvas.part(0, 0, width, height), app, scene),
    };
    let x = right_of_boards + 1;
    let has_room = width.saturating_sub(x) >= INFO_LEAST;
    match pane {
        Some(pane @ (Pane::Sizes(_) | Pane::Proposals { .. })) => {
            // Without room beside the boards these lie on them.
            let x = if has_room {
                x
            } else {
                width.saturating_sub(INFO_LEAST + 2)
            };
            let mut beside = canvas.part(x, 0, width.saturating_sub(x), height);
            beside.clear(Role::Plain);
            match pane {
                Pane::Sizes(at) => sizes::draw(&mut beside, app, scene, at),
                Pane::Proposals { .. } => proposals::draw(&mut beside, app, open),
                _ => {}
            }
        }
        _ if has_room || mate.is_none() => {
            info::draw(
                &mut canvas.part(x, 0, width.saturating_sub(x), height),
                app,
                scene,
            );
        }
        _ => {}
    }
}

fn cursor(app: &App, scene: &Scene) -> Cursor {
    Cursor {
        row: scene.from_front(&app.spot),
        hole: app.spot.hole,
        mark: app.entry.mark,
    }
}

/// One face with its numbers; gives the column after it.
fn single(canvas: &mut Canvas, app: &App, scene: &Scene) -> u16 {
    let drawing = &scene.drawing;
    let before = panel::numbers_width(app.desk.job.unit);
    let room = canvas.width().saturating_sub(before + 2 + 1 + INFO_LEAST);
    let projection = Projection::of(drawing, room);
    let height = canvas.height();
    let window = Window::of(&[&projection], height - 1, app.spot.hole);
    let panel = Panel::of(drawing, &projection, room, false);
    let wide = panel.width();
    numbers(
        &mut canvas.part(0, 1, before, height - 1),
        app,
        scene,
        window,
    );
    let mut part = canvas.part(before, 0, wide, height);
    panel.draw(&mut part, window, Some(cursor(app, scene)));
    before + wide
}

/// Hole numbers and heights above the foot of the panel, and arrows where it goes on beyond the screen.
fn numbers(canvas: &mut Canvas, app: &App, scene: &Scene, window: Window) {
    let (lowest, highest) = scene.drawing.holes;
    let on_panel = lowest..=highest;
    for (y, number) in window
        .numbers()
        .filter(|(_, number)| on_panel.contains(number))
    {
        let height = scene
            .drawing
            .height(number)
            .short(app.desk.job.unit)
            .to_string();
        let here = number == app.spot.hole;
        let role = if here { Role::Strong } else { Role::Gutter };
        let sign = if here {
            canvas.glyphs().arrow_right
        } else {
            ' '
        };
        // The unit is said beside the board, so that a fraction of an inch has room here.
        let height = height.trim_end_matches('"');
        let room = usize::from(canvas.width() - 5);
        canvas.text(0, y, &format!("{sign}{number:>3}{height:>room$}"), role);
    }
    let x = canvas.width() - 1;
    more(canvas, window, x);
}

fn more(canvas: &mut Canvas, window: Window, x: u16) {
    let glyphs = canvas.glyphs();
    if window.more_above {
        canvas.set(x, 0, glyphs.arrow_up, Role::Strong);
    }
    if window.more_below {
        canvas.set(x, window.lines - 1, glyphs.arrow_down, Role::Strong);
    }
}

/// Both walls, fronts outward, backs in the middle, one height on one line; gives the column after them.
fn book(canvas: &mut Canvas, app: &App, scene: &Scene, mate: &FaceDrawing, beside: bool) -> u16 {
    let (own, height) = (&scene.drawing, canvas.height());
    let info = if beside { INFO_LEAST + 6 } else { 0 };
    let room = (canvas.width().saturating_sub(GUTTER + info) / 2).saturating_sub(2);
    let (left, right) = if own.face.toward == Hand::Right {
        (own, mate)
    } else {
        (mate, own)
    };
    let [left_on, right_on] = [left, right].map(|drawing| Projection::of(drawing, room));
    let window = Window::of(&[&left_on, &right_on], height - 1, app.spot.hole);
    let left_panel = Panel::of(left, &left_on, room, true);
    let right_panel = Panel::of(right, &right_on, room, false);
    let (left_wide, right_wide) = (left_panel.width(), right_panel.width());
    // The mate scrolls along, but the person does not stand on it.
    let on = |drawing: &FaceDrawing| (drawing.face == own.face).then(|| cursor(app, scene));
    let mut part = canvas.part(0, 0, left_wide, height);
    left_panel.draw(&mut part, window, on(left));
    gutter(
        &mut canvas.part(left_wide, 1, GUTTER, height - 1),
        app,
        scene,
        (left, right),
        window,
    );
    let mut part = canvas.part(left_wide + GUTTER, 0, right_wide, height);
    right_panel.draw(&mut part, window, on(right));
    left_wide + GUTTER + right_wide
}

/// Hole numbers between the two panels, and a mark where only one of them has a hole.
fn gutter(
    canvas: &mut Canvas,
    app: &App,
    scene: &Scene,
    sides: (&FaceDrawing, &FaceDrawing),
    window: Window,
) {
    let glyphs = canvas.glyphs();
    let on_grid = 1..=scene.layout.last;
    for (y, number) in window
        .numbers()
        .filter(|(_, number)| on_grid.contains(number))
    {
        let role = if number == app.spot.hole {
            Role::Strong
        } else {
            Role::Gutter
        };
        canvas.text(1, y, &format!("{number:>3}"), role);
        let holes = |drawing: &FaceDrawing| {
            let here = drawing
                .dots
                .iter()
                .filter(|dot| dot.hole.number == Some(number));
            here.map(|dot| dot.hole.x).collect::<Vec<_>>()
        };
        // Where another bay lies at this height, this pair are no mates.
        let z = scene.layout.height(number);
        if scene.layout.mate(sides.0.face, z) != Some(sides.1.face) {
            continue;
        }
        let (left, right) = (holes(sides.0), holes(sides.1));
        if left.iter().any(|x| !right.contains(x)) {
            canvas.set(0, y, glyphs.left_only, Role::GutterMark);
        }
        if right.iter().any(|x| !left.contains(x)) {
            canvas.set(GUTTER - 1, y, glyphs.right_only, Role::GutterMark);
        }
    }
    more(canvas, window, GUTTER - 2);
}
