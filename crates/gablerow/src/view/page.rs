//! A page to read.

use super::canvas::Canvas;
use crate::app::App;
use crate::page::{self, PageLine, SENTENCES};
use crate::theme::Role;

/// Draws a page under its title, from a line on.
pub(super) fn draw(canvas: &mut Canvas, app: &App, title: &str, from: usize) {
    canvas.text(1, 0, title, Role::Title);
    let lines = page::lines(app);
    let from = from.min(page::last_start(app));
    for (y, line) in (1..).zip(lines.iter().skip(from).take(page::shown(app))) {
        match line {
            PageLine::Heading(text) => canvas.text(1, y, text, Role::Strong),
            PageLine::Text(text) => canvas.text(1, y, text, Role::Plain),
            PageLine::Key(key, text) => {
                canvas.text(1, y, key, Role::HintKey);
                canvas.text(SENTENCES, y, text, Role::Plain)
            }
        };
    }
}
