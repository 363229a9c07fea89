//! Pages as a PDF document, true to size, with the letters they use inside. Source: ISO 32000-1:2008, 8.3.2, 8.5, 9.7.

use alloc::vec::Vec;

use miniz_oxide::deflate::compress_to_vec_zlib;
use pdf_writer::{Content, Filter, Finish, Name, Pdf, Rect, Ref, Str, TextStr};

use crate::page::{Ink, Mark, Page, Point, Text};
use crate::pdf_letters::{Letters, REFS};

/// A millimetre in points, of which an inch has 72.
const MM: f64 = 72.0 / 25.4;

/// How far the handles of a quarter circle stand from its ends, in radii.
const HANDLE: f64 = 0.552_284_749_8;

/// How hard streams are pressed: the usual middle between size and time.
pub(crate) const PRESSED: u8 = 6;

const CATALOG: Ref = Ref::new(1);
const TREE: Ref = Ref::new(2);
const INFO: Ref = Ref::new(3);
const REGULAR: i32 = 4;
const BOLD: i32 = REGULAR + REFS;
const FIRST_PAGE: i32 = BOLD + REFS;

/// What the two fonts are called on a page.
const REGULAR_NAME: Name<'static> = Name(b"R");
const BOLD_NAME: Name<'static> = Name(b"B");

/// Pages as one document; the same pages are the same bytes. `title` is what the window of a reader is called.
///
/// A printer is asked not to fit them to its sheet. Circles are four curves each, off by 0.03 % of the radius at most.
#[must_use]
pub fn pdf(pages: &[Page], title: &str) -> Vec<u8> {
    let mut fonts = Fonts {
        regular: Letters::new(false),
        bold: Letters::new(true),
    };
    let mut pdf = Pdf::new();
    let mut catalog = pdf.catalog(CATALOG);
    catalog.pages(TREE);
    let scaling = (Name(b"PrintScaling"), Name(b"None"));
    catalog.viewer_preferences().pair(scaling.0, scaling.1);
    catalog.finish();
    pdf.document_info(INFO).title(TextStr(title));
    let places = || (FIRST_PAGE..).step_by(2);
    let kids = places().map(Ref::new).take(pages.len());
    let count = i32::try_from(pages.len()).unwrap_or(i32::MAX);
    pdf.pages(TREE).kids(kids).count(count);
    for (at, page) in places().zip(pages) {
        let contents = Ref::new(at + 1);
        push_sheet(&mut pdf, Ref::new(at), page, contents);
        let drawn = compress_to_vec_zlib(&drawn(page, &mut fonts), PRESSED);
        pdf.stream(contents, &drawn).filter(Filter::FlateDecode);
    }
    fonts.regular.write(&mut pdf, REGULAR);
    fonts.bold.write(&mut pdf, BOLD);
    pdf.finish()
}

/// Both weights, with what is used of them.
struct Fonts {
    regular: Letters,
    bold: Letters,
}

/// A number as PDF writers take it: seven digits, 0.00003 mm on the largest sheet.
#[expect(
    clippy::cast_possible_truncation,
    reason = "digits beyond the seventh are not seen on paper"
)]
pub(crate) fn small(value: f64) -> f32 {
    value as f32
}

fn push_sheet(pdf: &mut Pdf, at: Ref, page: &Page, contents: Ref) {
    let (width, height) = (small(page.width * MM), small(page.height * MM));
    let mut sheet = pdf.page(at);
    sheet
        .media_box(Rect::new(0.0, 0.0, width, height))
        .parent(TREE)
        .contents(contents);
    let mut resources = sheet.resources();
    let mut fonts = resources.fonts();
    fonts.pair(REGULAR_NAME, Ref::new(REGULAR));
    fonts.pair(BOLD_NAME, Ref::new(BOLD));
}

/// What is on a page, in millimetres from its lower left corner.
fn drawn(page: &Page, fonts: &mut Fonts) -> Vec<u8> {
    let mut out = Content::new();
    let mm = small(MM);
    out.transform([mm, 0.0, 0.0, mm, 0.0, 0.0]);
    for mark in &page.marks {
        match mark {
            Mark::Path {
                corners,
                is_closed,
                ink,
            } => {
                set_ink(&mut out, ink);
                push_path(&mut out, corners, *is_closed);
                paint(&mut out, ink);
            }
            Mark::Ring {
                centre,
                radius,
                ink,
            } => {
                set_ink(&mut out, ink);
                push_ring(&mut out, centre, *radius);
                paint(&mut out, ink);
            }
            Mark::Text(text) => push_text(&mut out, text, fonts),
        }
    }
    out.finish().to_vec()
}

fn set_ink(out: &mut Content, ink: &Ink) {
    if let Some(shade) = ink.fill {
        out.set_fill_gray(small(shade));
    }
    if let Some(line) = ink.line {
        out.set_line_width(small(line.width));
        out.set_stroke_gray(small(line.shade));
        out.set_dash_pattern(line.dash.map(small), 0.0);
    }
}

/// Fills and draws what was laid down.
fn paint(out: &mut Content, ink: &Ink) {
    match (ink.fill, ink.line) {
        (Some(_), Some(_)) => out.fill_nonzero_and_stroke(),
        (Some(_), None) => out.fill_nonzero(),
        (None, Some(_)) => out.stroke(),
        (None, None) => out.end_path(),
    };
}

fn push_path(out: &mut Content, corners: &[Point], is_closed: bool) {
    for (at, corner) in corners.iter().enumerate() {
        let (x, y) = (small(corner.x), small(corner.y));
        match at {
            0 => out.move_to(x, y),
            _ => out.line_to(x, y),
        };
    }
    if is_closed && !corners.is_empty() {
        out.close_path();
    }
}

/// A circle from its right on, against the clock.
fn push_ring(out: &mut Content, centre: &Point, radius: f64) {
    let at = |right: f64, up: f64| {
        (
            small(centre.x + right * radius),
            small(centre.y + up * radius),
        )
    };
    let (x, y) = at(1.0, 0.0);
    out.move_to(x, y);
    // The direction in which each quarter begins; it ends a quarter turn to the left.
    for (right, up) in [(1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0)] {
        let (to_right, to_up) = (-up, right);
        let near = at(right + HANDLE * to_right, up + HANDLE * to_up);
        let far = at(to_right + HANDLE * right, to_up + HANDLE * up);
        let end = at(to_right, to_up);
        out.cubic_to(near.0, near.1, far.0, far.1, end.0, end.1);
    }
    out.close_path();
}

fn push_text(out: &mut Content, text: &Text, fonts: &mut Fonts) {
    let (letters, name) = match text.is_bold {
        true => (&mut fonts.bold, BOLD_NAME),
        false => (&mut fonts.regular, REGULAR_NAME),
    };
    let start = text.start();
    let (x, y) = (small(start.x), small(start.y));
    let matrix = match text.is_upright {
        true => [0.0, 1.0, -1.0, 0.0, x, y],
        false => [1.0, 0.0, 0.0, 1.0, x, y],
    };
    let bytes = letters.encode(&text.words);
    out.set_fill_gray(0.0);
    out.begin_text()
        .set_font(name, small(text.size))
        .set_text_matrix(matrix)
        .show(Str(&bytes))
        .end_text();
}

#[cfg(test)]
pub(crate) mod read_back;
#[cfg(test)]
mod tests;
