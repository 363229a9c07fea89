//! Lines of text in columns of a fixed-width letter.

use alloc::borrow::ToOwned;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec;
use alloc::vec::Vec;

use gablerow_core::measure::Unit;
use unicode_segmentation::UnicodeSegmentation;
use unicode_width::UnicodeWidthStr;

/// The columns of a sheet of text: what every printer and every terminal has.
pub const WIDTH: usize = 80;

/// A run of hole numbers, both ends included: `11-16`, or `11` alone.
#[must_use]
pub fn run_words((first, last): (i16, i16)) -> String {
    match first == last {
        true => first.to_string(),
        false => format!("{first}-{last}"),
    }
}

/// Lines of at most `room` columns, broken at blanks; a longer word is broken where the room ends.
///
/// What is wider than the room on its own, as two columns are in a room of one, stands alone on its line.
///
/// # Example
/// ```
/// assert_eq!(gablerow_papers::wrap("hole 4 serves two", 8), ["hole 4", "serves", "two"]);
/// ```
#[must_use]
pub fn wrap(text: &str, room: usize) -> Vec<String> {
    let mut lines = vec![String::new()];
    for word in unbroken(text, |piece| piece.width() <= room) {
        let gap = usize::from(lines.last().is_some_and(|line| !line.is_empty()));
        let used = lines.last().map_or(0, |line| line.width());
        if used + gap + word.width() > room && gap == 1 {
            lines.push(String::new());
        } else if gap == 1 {
            add(&mut lines, " ");
        }
        if word.width() <= room {
            add(&mut lines, word);
        } else {
            add_broken(&mut lines, word, room);
        }
    }
    lines
}

/// What stays on one line: words, and of lengths in inches the fraction with its number, and with both what they are rounded by, as far
/// as they fit on one.
pub(crate) fn unbroken(text: &str, fits: impl Fn(&str) -> bool) -> Vec<&str> {
    let start = |word: &str| word.as_ptr() as usize - text.as_ptr() as usize;
    let mut pieces: Vec<&str> = Vec::new();
    for word in text.split_whitespace() {
        let whole = pieces.last().and_then(|before| {
            let (from, end) = (start(before), start(word) + word.len());
            let is_next = from + before.len() + 1 == start(word);
            let whole = &text[from..end];
            (is_next && belongs(before, word) && fits(whole)).then_some(whole)
        });
        if let Some(whole) = whole {
            pieces.pop();
            pieces.push(whole);
        } else {
            pieces.push(word);
        }
    }
    pieces
}

/// Whether a word is the fraction of the number before it, or what the length before it is rounded by.
fn belongs(before: &str, word: &str) -> bool {
    let is_digit = |letter: Option<char>| letter.is_some_and(|letter| letter.is_ascii_digit());
    let is_fraction = word.contains('/') && is_digit(word.chars().next());
    let is_rounding = ["(~", "(+", "(-"].iter().any(|sign| word.starts_with(sign));
    match before.chars().last() {
        Some('"') => is_rounding,
        last => is_fraction && is_digit(last),
    }
}

fn add(lines: &mut [String], text: &str) {
    if let Some(line) = lines.last_mut() {
        line.push_str(text);
    }
}

fn add_broken(lines: &mut Vec<String>, word: &str, room: usize) {
    let mut used = 0;
    for grapheme in word.graphemes(true) {
        if used > 0 && used + grapheme.width() > room {
            lines.push(String::new());
            used = 0;
        }
        used += grapheme.width();
        add(lines, grapheme);
    }
}

/// Adds the text, wrapped, each line after `first` or `rest`, which are ASCII and alike in width.
pub(crate) fn push_indented(out: &mut String, first: &str, rest: &str, text: &str) {
    for (at, line) in wrap(text, WIDTH - rest.len()).iter().enumerate() {
        push_line(out, if at == 0 { first } else { rest }, line);
    }
}

/// The text with `?` for every column of what is no ASCII: a name loses its letters, never its place.
pub(crate) fn ascii(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for grapheme in text.graphemes(true) {
        match grapheme.is_ascii() {
            true => out.push_str(grapheme),
            false => out.extend(core::iter::repeat_n('?', grapheme.width().max(1))),
        }
    }
    out
}

/// Adds how lengths are read, where some of them stand as fractions.
pub(crate) fn push_unit_key(out: &mut String, unit: Unit) {
    if unit == Unit::Inch && !out.is_empty() {
        out.push('\n');
        push_indented(out, "", "", unit.key());
    }
}

/// Adds one line of two pieces, without blanks at its end.
pub(crate) fn push_line(out: &mut String, start: &str, end: &str) {
    let line = start.to_owned() + end;
    out.push_str(line.trim_end());
    out.push('\n');
}

/// Adds rows in columns under a heading, each line after `indent`, which is ASCII. Where they are wider than the sheet, each
/// row is a paragraph instead, and every cell stands behind the word of its column.
pub(crate) fn push_columns<const N: usize>(
    out: &mut String,
    indent: &str,
    head: &[&str; N],
    rows: &[[String; N]],
) {
    let lines = columns(WIDTH - indent.len(), head, rows);
    for line in lines.iter().flatten() {
        push_line(out, indent, line);
    }
    if lines.is_none() {
        let deeper = indent.to_owned() + "  ";
        for row in rows {
            push_indented(out, indent, &deeper, &worded(head, row));
        }
    }
}

/// Rows in columns, below a line of what stands over them; `None` where they are wider than the room.
pub(crate) fn columns<Row: AsRef<[String]>>(
    room: usize,
    head: &[&str],
    rows: &[Row],
) -> Option<Vec<String>> {
    let mut wide: Vec<usize> = head.iter().map(|word| word.width()).collect();
    for row in rows {
        for (wide, cell) in wide.iter_mut().zip(row.as_ref()) {
            *wide = (*wide).max(cell.width());
        }
    }
    let gaps = 2 * wide.len().saturating_sub(1);
    if wide.iter().sum::<usize>() + gaps > room {
        return None;
    }
    let line = |cells: &mut dyn Iterator<Item = &str>| {
        let cells: Vec<String> = cells
            .zip(&wide)
            .map(|(cell, wide)| padded(cell, *wide))
            .collect();
        cells.join("  ")
    };
    let mut lines = vec![line(&mut head.iter().copied())];
    for row in rows {
        lines.push(line(&mut row.as_ref().iter().map(String::as_str)));
    }
    Some(lines)
}

/// The cells of a row that say something, each behind the word of its column.
pub(crate) fn worded(head: &[&str], row: &[String]) -> String {
    let filled = head.iter().zip(row).filter(|(_, cell)| !cell.is_empty());
    let cells: Vec<String> = filled
        .map(|(word, cell)| match word.is_empty() {
            true => cell.clone(),
            false => (*word).to_owned() + " " + cell,
        })
        .collect();
    cells.join(", ")
}

/// The text, filled up with blanks to so many columns.
pub(crate) fn padded(text: &str, columns: usize) -> String {
    let mut padded = text.to_owned();
    padded.extend(core::iter::repeat_n(
        ' ',
        columns.saturating_sub(text.width()),
    ));
    padded
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pen;
    use gablerow_core::measure::Length;
    use proptest::prelude::*;

    #[test]
    fn lines_break_at_blanks_and_long_words_where_the_room_ends() {
        assert_eq!(wrap("abcdefghij kl", 4), ["abcd", "efgh", "ij", "kl"]);
        assert_eq!(wrap("ab abcdefg", 4), ["ab", "abcd", "efg"]);
        assert_eq!(wrap("", 4), [""]);
    }

    #[test]
    fn a_length_in_inches_is_never_torn() {
        let length = "~21 13/32\" (~+0.3)";
        let text = std::format!("hole 3 is {length}, hole 4 is 5/8\" and 7 of 9");
        for room in length.len() + 1..40 {
            let lines = wrap(&text, room);
            assert!(lines.iter().any(|line| line.contains(length)), "{lines:?}");
        }
        let pieces = [
            "hole",
            "3",
            "is",
            "~21 13/32\" (~+0.3),",
            "hole",
            "4",
            "is",
            "5/8\"",
            "and",
            "7",
            "of",
            "9",
        ];
        assert_eq!(unbroken(&text, |_| true), pieces);
        assert_eq!(
            unbroken("two  blanks 3  1/2", |_| true),
            ["two", "blanks", "3", "1/2"]
        );
    }

    #[test]
    fn wide_letters_count_as_two_columns() {
        assert_eq!(wrap("棚板 棚板", 5), ["棚板", "棚板"]);
        assert_eq!(padded("棚", 4), "棚  ");
    }

    #[test]
    fn columns_stand_under_their_words_or_behind_them() {
        let row = |name: &str, size: &str| [name, size].map(str::to_owned);
        let mut out = String::new();
        push_columns(
            &mut out,
            "  ",
            &["", "cut"],
            &[row("D1", "495.0"), row("棚", "")],
        );
        assert_eq!(out, "      cut\n  D1  495.0\n  棚\n");
        let mut out = String::new();
        let long = "x".repeat(WIDTH);
        push_columns(&mut out, "  ", &["name", "cut"], &[row("D1", &long)]);
        assert_eq!(
            out,
            format!("  name D1, cut\n    {}\n    xxxx\n", &long[4..])
        );
    }

    proptest! {
        #[test]
        fn wrapping_keeps_every_letter_and_the_width(text in "[a-zß棚 ]{0,60}", room in 2_usize..20) {
            let lines = wrap(&text, room);
            let letters = |text: &str| text.chars().filter(|c| *c != ' ').collect::<String>();
            prop_assert_eq!(letters(&lines.concat()), letters(&text));
            prop_assert!(lines.iter().all(|line| line.width() <= room), "{:?}", lines);
        }

        // A room of 32 columns, or as wide on paper, is wider than any of these lengths with a comma.
        #[test]
        fn lengths_in_inches_stay_whole_wherever_lines_end(
            said in prop::collection::vec(("[a-z]{1,12}( [0-9]{1,2})?", -400_000_000..400_000_000_i32), 1..12),
            room in 32_u8..64,
        ) {
            let length = |counts| Length::from_counts(counts).show(Unit::Inch).to_string();
            let words = said.iter().map(|(words, counts)| format!("{words}: {}", length(*counts)));
            let text = words.collect::<Vec<_>>().join(", ");
            let on_paper = pen::lines(&text, 3.0, true, f64::from(room) * pen::width("0", 3.0, true));
            for lines in [wrap(&text, room.into()), on_paper] {
                for (_, counts) in &said {
                    let length = length(*counts);
                    let whole: usize = lines.iter().map(|line| line.matches(&length).count()).sum();
                    prop_assert_eq!(whole, text.matches(&length).count(), "{} in {:?}", length, lines);
                }
            }
        }
    }
}
