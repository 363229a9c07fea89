//! A sheet of paper in dots, as large as there is room: lines where there are lines, and a line for each line of text.

use gablerow_papers::page::{Ink, Mark, Page, Point, Text};
use ratatui::style::Color;
use ratatui::symbols::Marker;
use ratatui::widgets::Widget;
use ratatui::widgets::canvas::{Canvas as Plot, Circle, Context, Line};

use super::canvas::Canvas;
use crate::theme::Role;

/// Dots of a cell, across and down.
const DOTS: (f64, f64) = (2.0, 4.0);

/// Draws a sheet, from the upper left corner.
pub(super) fn draw(canvas: &mut Canvas, page: &Page) {
    let (wide, high) = (canvas.width(), canvas.height());
    // Dots for each mm, the same both ways; a whole number of cells.
    let across = f64::from(wide) * DOTS.0 / page.width;
    let down = f64::from(high) * DOTS.1 / page.height;
    let scale = across.min(down);
    let cells = |mm: f64, dots: f64, most: u16| {
        let cells = (1..=most)
            .rev()
            .find(|&cells| f64::from(cells) * dots <= mm * scale + dots / 2.0);
        cells.unwrap_or(most.min(1))
    };
    let wide = cells(page.width, DOTS.0, wide);
    let high = cells(page.height, DOTS.1, high);
    let plot = |is_wanted_faint: bool| {
        let marks = page.marks.iter();
        let of_layer = marks.filter(move |mark| is_faint(mark) == is_wanted_faint);
        Plot::default()
            .marker(Marker::Braille)
            .x_bounds([0.0, page.width])
            .y_bounds([0.0, page.height])
            .paint(move |context| of_layer.clone().for_each(|mark| paint(context, mark)))
    };
    let mut sheet = canvas.part(0, 0, wide, high);
    sheet.clear(Role::Sheet);
    sheet.plot(&[
        (Role::SheetFaint, &|area, buffer| {
            plot(true).render(area, buffer);
        }),
        (Role::Sheet, &|area, buffer| {
            plot(false).render(area, buffer);
        }),
    ]);
}

/// Whether a mark steps back: text, which cannot be read, and lines in grey.
fn is_faint(mark: &Mark) -> bool {
    let is_grey = |ink: &Ink| ink.line.is_some_and(|line| line.shade > 0.3);
    match mark {
        Mark::Text(_) => true,
        Mark::Path { ink, .. } | Mark::Ring { ink, .. } => is_grey(ink),
    }
}

/// One mark of a sheet. A text is a line half as high as its capitals: letters have no room.
fn paint(context: &mut Context, mark: &Mark) {
    match mark {
        Mark::Path {
            corners,
            is_closed,
            ink,
        } => {
            // What is filled in a light shade and has no line is ground, not a thing.
            let is_seen = ink.line.is_some_and(|line| line.shade < 0.8)
                || ink.fill.is_some_and(|fill| fill < 0.5);
            if is_seen {
                let around = corners.iter().skip(1).chain(is_closed.then(|| &corners[0]));
                for (from, to) in corners.iter().zip(around) {
                    line(context, *from, *to);
                }
            }
        }
        Mark::Ring { centre, radius, .. } => context.draw(&Circle {
            x: centre.x,
            y: centre.y,
            radius: *radius,
            color: Color::Reset,
        }),
        Mark::Text(text) => {
            let (from, to) = along(text);
            line(context, from, to);
        }
    }
}

fn line(context: &mut Context, from: Point, to: Point) {
    context.draw(&Line {
        x1: from.x,
        y1: from.y,
        x2: to.x,
        y2: to.y,
        color: Color::Reset,
    });
}

/// From where to where a text runs, at the middle of its small letters.
fn along(text: &Text) -> (Point, Point) {
    let (start, width, up) = (text.start(), text.width(), text.size / 4.0);
    let at = |x: f64, y: f64| Point {
        x: start.x + x,
        y: start.y + y,
    };
    match text.is_upright {
        true => (at(-up, 0.0), at(-up, width)),
        false => (at(0.0, up), at(width, up)),
    }
}
