//! Letters and digits three lines high, to be read from two metres.

use super::canvas::Canvas;
use crate::theme::{Charset, Role};

/// How many lines they take.
pub(super) const LINES: u16 = 3;

/// A character as six rows of dots, two of which are a line.
type Dots = [&'static str; 6];

/// What is drawn large; all rows of a character are equally wide.
#[rustfmt::skip]
const LETTERS: &[(char, Dots)] = &[
    (' ', ["..", "..", "..", "..", "..", ".."]),
    ('"', ["#.#", "#.#", "...", "...", "...", "..."]),
    ('\'', ["#", "#", ".", ".", ".", "."]),
    ('+', ["...", "...", ".#.", "###", ".#.", "..."]),
    (',', ["..", "..", "..", "..", ".#", "#."]),
    ('-', ["..", "..", "..", "##", "..", ".."]),
    ('.', [".", ".", ".", ".", ".", "#"]),
    ('/', ["...#", "...#", "..#.", ".#..", "#...", "#..."]),
    ('0', [".##.", "#..#", "#..#", "#..#", "#..#", ".##."]),
    ('1', [".#.", "##.", ".#.", ".#.", ".#.", "###"]),
    ('2', [".##.", "#..#", "...#", ".##.", "#...", "####"]),
    ('3', ["###.", "...#", ".##.", "...#", "...#", "###."]),
    ('4', ["#..#", "#..#", "####", "...#", "...#", "...#"]),
    ('5', ["####", "#...", "###.", "...#", "...#", "###."]),
    ('6', [".##.", "#...", "###.", "#..#", "#..#", ".##."]),
    ('7', ["####", "...#", "..#.", "..#.", ".#..", ".#.."]),
    ('8', [".##.", "#..#", ".##.", "#..#", "#..#", ".##."]),
    ('9', [".##.", "#..#", "#..#", ".###", "...#", ".##."]),
    ('A', [".##.", "#..#", "#..#", "####", "#..#", "#..#"]),
    ('B', ["###.", "#..#", "###.", "#..#", "#..#", "###."]),
    ('C', [".###", "#...", "#...", "#...", "#...", ".###"]),
    ('D', ["###.", "#..#", "#..#", "#..#", "#..#", "###."]),
    ('E', ["####", "#...", "###.", "#...", "#...", "####"]),
    ('F', ["####", "#...", "###.", "#...", "#...", "#..."]),
    ('G', [".###", "#...", "#...", "#.##", "#..#", ".###"]),
    ('H', ["#..#", "#..#", "####", "#..#", "#..#", "#..#"]),
    ('I', ["#", "#", "#", "#", "#", "#"]),
    ('J', ["...#", "...#", "...#", "...#", "#..#", ".##."]),
    ('K', ["#..#", "#.#.", "##..", "##..", "#.#.", "#..#"]),
    ('L', ["#...", "#...", "#...", "#...", "#...", "####"]),
    ('M', ["#...#", "##.##", "#.#.#", "#...#", "#...#", "#...#"]),
    ('N', ["#..#", "##.#", "##.#", "#.##", "#.##", "#..#"]),
    ('O', [".##.", "#..#", "#..#", "#..#", "#..#", ".##."]),
    ('P', ["###.", "#..#", "#..#", "###.", "#...", "#..."]),
    ('Q', [".##.", "#..#", "#..#", "#..#", "#.##", ".###"]),
    ('R', ["###.", "#..#", "#..#", "###.", "#.#.", "#..#"]),
    ('S', [".###", "#...", ".##.", "...#", "...#", "###."]),
    ('T', ["###", ".#.", ".#.", ".#.", ".#.", ".#."]),
    ('U', ["#..#", "#..#", "#..#", "#..#", "#..#", ".##."]),
    ('V', ["#...#", "#...#", "#...#", ".#.#.", ".#.#.", "..#.."]),
    ('W', ["#...#", "#...#", "#...#", "#.#.#", "##.##", "#...#"]),
    ('X', ["#..#", "#..#", ".##.", ".##.", "#..#", "#..#"]),
    ('Y', ["#.#", "#.#", "#.#", ".#.", ".#.", ".#."]),
    ('Z', ["####", "...#", "..#.", ".#..", "#...", "####"]),
    ('~', ["....", "....", ".#.#", "#.#.", "....", "...."]),
];

/// What stands for a character that has no dots.
const UNKNOWN: Dots = ["####", "#..#", "#..#", "#..#", "#..#", "####"];

fn dots(letter: char) -> &'static Dots {
    let letter = letter.to_ascii_uppercase();
    let found = LETTERS.iter().find(|(known, _)| *known == letter);
    found.map_or(&UNKNOWN, |(_, dots)| dots)
}

/// How many columns a text takes, the blank after its last letter among them.
pub(super) fn width(text: &str) -> u16 {
    let wide = |letter| u16::try_from(dots(letter)[0].len() + 1).unwrap_or(u16::MAX);
    text.chars().map(wide).sum()
}

/// Draws a text; gives the column after it. What has no room is not drawn.
pub(super) fn draw(canvas: &mut Canvas, x: u16, y: u16, text: &str, role: Role) -> u16 {
    let mut at = x;
    for letter in text.chars() {
        let dots = dots(letter);
        for (line, rows) in (0..LINES).zip(dots.chunks(2)) {
            for (column, pair) in (at..).zip(rows[0].bytes().zip(rows[1].bytes())) {
                let (upper, lower) = (pair.0 == b'#', pair.1 == b'#');
                if let Some(glyph) = glyph(upper, lower, canvas.charset()) {
                    canvas.set(column, y + line, glyph, role);
                }
            }
        }
        at = at.saturating_add(width(letter.encode_utf8(&mut [0; 4])));
    }
    at
}

fn glyph(upper: bool, lower: bool, charset: Charset) -> Option<char> {
    let (both, above, below) = match charset {
        Charset::Unicode => ('█', '▀', '▄'),
        Charset::Ascii => ('#', '"', '_'),
    };
    match (upper, lower) {
        (true, true) => Some(both),
        (true, false) => Some(above),
        (false, true) => Some(below),
        (false, false) => None,
    }
}

/// The words of a text in as few lines as they need, none wider than the room unless one word is.
pub(super) fn wrapped(words: &[String], room: u16) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words {
        match lines.last_mut() {
            Some(line) if width(line) + width(" ") + width(word) <= room => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.clone()),
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_letter_is_a_block_and_no_two_look_alike() {
        for (at, (letter, dots)) in LETTERS.iter().enumerate() {
            assert!(
                dots.iter().all(|row| row.len() == dots[0].len()),
                "{letter}"
            );
            let twin = LETTERS[..at].iter().find(|(_, other)| other == dots);
            // The letter and the digit are one shape on most scales and rules too.
            assert!(
                twin.is_none() || (*letter, twin.unwrap().0) == ('O', '0'),
                "{letter}"
            );
        }
    }

    #[test]
    fn all_that_the_bench_says_can_be_drawn() {
        for letter in "0123456789 .-/\"',+~ABCDEFGHIJKLMNOPQRSTUVWXYZ".chars() {
            assert_ne!(dots(letter), &UNKNOWN, "{letter}");
        }
        assert_eq!(dots('é'), &UNKNOWN);
    }

    #[test]
    fn runs_of_a_tall_side_are_broken_between_runs() {
        let runs: Vec<String> = ["3-4", "11-16", "19-20", "25-26"].map(str::to_owned).into();
        let lines = wrapped(&runs, 80);
        assert_eq!(lines, ["3-4 11-16 19-20", "25-26"]);
        assert!(lines.iter().all(|line| width(line) <= 80));
    }
}
