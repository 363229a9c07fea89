//! A face as plain text.

mod picture;
mod words;

use alloc::borrow::ToOwned;
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use gablerow_core::drawing::FaceDrawing;
use gablerow_core::job::Cabinet;
use gablerow_core::layout::Layout;
use gablerow_core::measure::Unit;
use unicode_width::UnicodeWidthStr;

use crate::board::Projection;
use crate::signs::Signs;
use crate::text::{WIDTH, padded, push_line, wrap};

/// The fewest columns that words beside a face need; with less they stand below it.
const BESIDE_LEAST: usize = 24;

/// One face, and what it takes to put it on a sheet.
#[derive(Clone, Copy, Debug)]
pub struct FaceSheet<'a> {
    /// Its cabinet.
    pub cabinet: &'a Cabinet,
    /// What that comes to.
    pub layout: &'a Layout,
    /// The face.
    pub drawing: &'a FaceDrawing,
    /// The unit of the numbers.
    pub unit: Unit,
}

impl FaceSheet<'_> {
    /// The face as text, at most [`WIDTH`] columns wide.
    ///
    /// One line is one pitch and one column half a pitch. Each line has the hole number and the height above the panel's foot
    /// before it; `!` stands before those where a stop is open, `?` where a warning is. Sizes, balance and rows stand beside
    /// the face, or below it where there is no room.
    #[must_use]
    pub fn text(&self, signs: &Signs) -> String {
        let numbers = self.numbers();
        let wide = numbers.first().map_or(0, String::len);
        let columns_most = u16::try_from(WIDTH - wide - 3).unwrap_or(u16::MAX);
        let projection = Projection::of(self.drawing, columns_most);
        let mut lines = self.picture(&projection, signs, &numbers);
        let words = self.words(&projection, signs);

        let mut out = format!("{}, {}\n", self.cabinet.name, self.drawing.name);
        let start = lines.iter().map(|line| line.width()).max().unwrap_or(0) + 3;
        let beside = WIDTH.saturating_sub(start);
        let wrapped = |room: usize| {
            words
                .iter()
                .flat_map(move |words| wrapped(words, room))
                .collect::<Vec<_>>()
        };
        let words = match beside >= BESIDE_LEAST {
            true => wrapped(beside),
            false => {
                lines.extend(wrapped(WIDTH));
                Vec::new()
            }
        };
        lines.resize(lines.len().max(words.len()), String::new());
        let mut words = words.into_iter();
        for line in lines {
            match words.next() {
                Some(words) if !words.is_empty() => {
                    push_line(&mut out, &padded(&line, start), &words);
                }
                _ => push_line(&mut out, &line, ""),
            }
        }
        out
    }
}

/// A paragraph in lines; all but the first keep its indent.
fn wrapped(words: &str, room: usize) -> Vec<String> {
    let indent = &words[..words.len() - words.trim_start().len()];
    let lines = wrap(words, room.saturating_sub(indent.len())).into_iter();
    lines.map(|line| indent.to_owned() + &line).collect()
}

#[cfg(test)]
mod tests;
