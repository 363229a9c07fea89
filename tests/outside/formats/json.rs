//! Job files and records: RFC 8259.

use std::fs;

use super::{Written, count, text};
use crate::case::{Case, Mark, Source};

static RFC_8259: Source = Source {
    author: "T. Bray",
    title: "RFC 8259, The JavaScript Object Notation (JSON) Data Interchange Format",
    year: "2017",
    clause: "grammar of numbers and strings, whole numbers up to 2^53 - 1, UTF-8 without a mark; its clauses not read again",
    mark: Mark::Page,
};

pub(super) fn cases(written: &Written) -> Vec<Case> {
    let saved = fs::read(written.folder.path().join("job.json")).unwrap();
    let files = [
        ("job file", saved),
        ("holes", written.run(&["holes", "job.json", "--json"])),
        ("parts", written.run(&["parts", "job.json", "--json"])),
        ("bench", written.run(&["bench", "job.json", "--json"])),
        ("check", written.run(&["check", "job.json", "--json"])),
        ("sources", written.run(&["sources", "--json"])),
        ("schema", written.run(&["schema"])),
    ];
    let mut all = Vec::new();
    for (name, file) in &files {
        let mut clause = |words: &str, read: fn(&[u8]) -> f64, spoil: fn(&[u8]) -> Vec<u8>| {
            let name = format!("{name}: {words}");
            all.push(Case::clause(
                "JSON", name, &RFC_8259, 0.0, file, read, spoil,
            ));
        };
        clause("bytes of a mark before the text", mark, |file| {
            [b"\xef\xbb\xbf", file].concat()
        });
        clause(
            "words that are none: NaN, Infinity",
            foreign_words,
            |file| [file, b" NaN"].concat(),
        );
        clause("control signs within a string", bare_controls, |file| {
            [file, b"\"\t\""].concat()
        });
        clause("numbers that are none", odd_numbers, |file| {
            [file, b" 01"].concat()
        });
        clause("whole numbers over 2^53 - 1", too_large, |file| {
            [file, b" 9007199254740992"].concat()
        });
    }
    all
}

/// A piece of a text that is no sign of the grammar.
enum Piece {
    /// What stands between quotes.
    String(String),
    /// A number or a word.
    Bare(String),
}

fn pieces(file: &[u8]) -> Vec<Piece> {
    let mut found = Vec::new();
    let mut signs = text(file).chars().peekable();
    while let Some(sign) = signs.next() {
        if sign == '"' {
            let mut words = String::new();
            while let Some(sign) = signs.next().filter(|sign| *sign != '"') {
                words.push(sign);
                // Whatever is escaped ends nothing.
                words.extend(signs.next_if(|_| sign == '\\'));
            }
            found.push(Piece::String(words));
        } else if !" \t\r\n,:[]{}".contains(sign) {
            let mut word = String::from(sign);
            while let Some(more) = signs.next_if(|next| !" \t\r\n,:[]{}\"".contains(*next)) {
                word.push(more);
            }
            found.push(Piece::Bare(word));
        }
    }
    found
}

fn bare(file: &[u8]) -> Vec<String> {
    let words = pieces(file).into_iter();
    words
        .filter_map(|piece| match piece {
            Piece::Bare(word) => Some(word),
            Piece::String(_) => None,
        })
        .collect()
}

fn is_number(word: &str) -> bool {
    word.starts_with(|sign: char| sign.is_ascii_digit() || sign == '-' || sign == '+')
}

fn mark(file: &[u8]) -> f64 {
    if file.starts_with(b"\xef\xbb\xbf") {
        3.0
    } else {
        0.0
    }
}

fn foreign_words(file: &[u8]) -> f64 {
    let words = bare(file).into_iter();
    count(
        words
            .filter(|word| !is_number(word) && !["true", "false", "null"].contains(&word.as_str())),
    )
}

fn bare_controls(file: &[u8]) -> f64 {
    let strings = pieces(file).into_iter();
    count(
        strings.filter(
            |piece| matches!(piece, Piece::String(words) if words.contains(|sign| sign < ' ')),
        ),
    )
}

/// `-`? whole, without a zero before it; then maybe a point and digits, an exponent and digits.
fn is_of_the_grammar(number: &str) -> bool {
    let digits = |text: &str| !text.is_empty() && text.bytes().all(|sign| sign.is_ascii_digit());
    let unsigned = number.strip_prefix('-').unwrap_or(number);
    let (mantissa, exponent) = match unsigned.split_once(['e', 'E']) {
        Some((mantissa, exponent)) => (
            mantissa,
            exponent.strip_prefix(['+', '-']).unwrap_or(exponent),
        ),
        None => (unsigned, "0"),
    };
    let (whole, part) = mantissa.split_once('.').unwrap_or((mantissa, "0"));
    let is_plain = whole == "0" || !whole.starts_with('0');
    is_plain && [whole, part, exponent].into_iter().all(digits)
}

fn odd_numbers(file: &[u8]) -> f64 {
    let words = bare(file).into_iter();
    count(words.filter(|word| is_number(word) && !is_of_the_grammar(word)))
}

fn too_large(file: &[u8]) -> f64 {
    const SAFE: i128 = (1 << 53) - 1;
    let whole = bare(file)
        .into_iter()
        .filter_map(|word| word.parse::<i128>().ok());
    count(whole.filter(|number| number.abs() > SAFE))
}
