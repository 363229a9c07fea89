//! From state to a frame: pure, so that drawing twice gives the same frame.
//!
//! ```text
//! App -> Scene -> face | book | front | job_list | bench  fills the screen
//!                 sizes | checks | cards | papers | page   beside it or on it
//!                 foot                          the last line: hints, what is asked, what is said
//! ```

mod bench;
mod board;
mod canvas;
mod cards;
mod checks;
mod face;
mod foot;
mod from_shop;
mod front;
mod front_info;
mod info;
mod job_list;
mod letters;
mod on_bench;
mod page;
mod panel;
mod papers;
mod proposals;
mod sizes;
mod thumbnail;
mod words;

use ratatui::buffer::Buffer;
use ratatui::layout::Rect;

use crate::app::{App, Pane, Screen};
use crate::scene::{FrontScene, Scene};
use crate::theme::Role;
use canvas::Canvas;

/// The fewest columns and lines a screen can be drawn on.
const LEAST: (u16, u16) = (60, 12);

/// Draws the state as a frame of the terminal's size.
#[must_use]
pub fn view(app: &App) -> Buffer {
    let (width, height) = app.size;
    let area = Rect::new(0, 0, width, height);
    let mut buffer = Buffer::empty(area);
    let mut canvas = Canvas::new(&mut buffer, area, &app.theme);
    canvas.clear(Role::Plain);
    if width < LEAST.0 || height < LEAST.1 {
        let text = format!(
            "{width} x {height} is too small; {} x {} is the least",
            LEAST.0, LEAST.1
        );
        canvas.paragraph(0, 0, &text, Role::Plain);
        return buffer;
    }
    // Finding them is the most work of a frame: once, for the drawing and for the list.
    let open = crate::proposals::proposals(app);
    let job = crate::proposals::shown(app, &open);
    let Some(scene) = Scene::at(&job, &app.spot) else {
        canvas.text(0, 0, "this job has no cabinet", Role::Plain);
        return buffer;
    };
    match (app.pane, app.screen) {
        (Some(Pane::Help(from)), _) => page::draw(&mut canvas, app, "keys", from),
        (Some(Pane::Why(from)), _) => {
            let of = match app.screen {
                Screen::Front => "from the front".to_owned(),
                _ => scene.drawing.name.to_string(),
            };
            let title = format!("why, {} {of}", scene.cabinet.name);
            page::draw(&mut canvas, app, &title, from);
        }
        (Some(Pane::Checks(at)), _) => checks::draw(&mut canvas, &scene, at),
        (Some(Pane::Cards(at)), _) => cards::draw(&mut canvas, app, &scene, at),
        (Some(Pane::FromShop { line, .. }), _) => from_shop::draw(&mut canvas, app, line),
        (Some(Pane::Papers), _) => papers::draw(&mut canvas, app),
        (None, _) if app.walk.is_some() => bench::draw(&mut canvas, app),
        (_, Screen::Job(here)) => job_list::draw(&mut canvas, app, here),
        (pane, Screen::Face | Screen::Book) => {
            let scene = scene.with_barred(&job);
            face::draw(&mut canvas, app, &scene, (pane, &open));
            foot::draw(&mut canvas, app, &scene);
            return buffer;
        }
        (pane, Screen::Front) => {
            let seen = FrontScene::of(scene);
            front::draw(&mut canvas, app, &seen, (pane, &open));
            foot::draw(&mut canvas, app, &seen.scene);
            return buffer;
        }
    }
    foot::draw(&mut canvas, app, &scene);
    buffer
}

#[cfg(test)]
mod tests;
