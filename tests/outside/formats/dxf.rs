//! Drawings for machines: DXF, release 12.

use super::{Written, count, replaced, text};
use crate::case::{Case, Mark, Source};

static DXF: Source = Source {
    author: "whoever issues the format",
    title: "DXF Reference, as published",
    year: "release 12, AC1009",
    clause: "pairs of a group code and a value; sections; group codes of each entity",
    mark: Mark::Origin,
};

const FAMILY: &str = "DXF";

pub(super) fn cases(written: &Written) -> Vec<Case> {
    let drawing = written.paper("drawing", "dxf", "A4");
    let radius = circle_of_5(&drawing);
    let mut all = vec![Case::new(
        FAMILY,
        "group code 40 of a circle, a hole of 5",
        &DXF,
        2.5,
        radius,
    )];
    let mut clause = |words: &str, printed, read: fn(&[u8]) -> f64, spoil: fn(&[u8]) -> Vec<u8>| {
        all.push(Case::clause(
            FAMILY, words, &DXF, printed, &drawing, read, spoil,
        ));
    };
    clause(
        "group codes that are no whole number",
        0.0,
        odd_codes,
        |file| {
            let (_, rest) = text(file).split_once("\r\n").unwrap();
            rest.into()
        },
    );
    clause(
        "the release after $ACADVER, AC1009",
        1_009.0,
        release,
        |file| replaced(file, "AC1009", "AC1015"),
    );
    clause("sections that no ENDSEC ends", 0.0, open_sections, |file| {
        text(file).replacen("ENDSEC", "ENDTAB", 1).into()
    });
    clause(
        "where HEADER, ENTITIES and EOF come, in order",
        123.0,
        order,
        |file| {
            let swapped = replaced(file, "HEADER", "AWAY");
            replaced(
                &replaced(&swapped, "ENTITIES", "HEADER"),
                "AWAY",
                "ENTITIES",
            )
        },
    );
    clause("pairs after 0 EOF", 0.0, after_eof, |file| {
        [file, b"  0\r\nSECTION\r\n"].concat()
    });
    clause(
        "coordinates and sizes that are no number with a point",
        0.0,
        odd_numbers,
        |file| replaced(file, ".", ","),
    );
    all
}

/// Codes and values, as they stand. What has no value has an empty one.
fn pairs(file: &[u8]) -> Vec<(&str, &str)> {
    let mut lines = text(file).lines();
    std::iter::from_fn(|| Some((lines.next()?.trim(), lines.next().unwrap_or_default()))).collect()
}

fn circle_of_5(file: &[u8]) -> f64 {
    let pairs = pairs(file);
    let mut entities = pairs.split(|pair| pair.0 == "0" || *pair == ("9", ""));
    let is_of_5 = |entity: &&[(&str, &str)]| {
        entity
            .iter()
            .any(|(code, layer)| *code == "8" && layer.contains("_D5_"))
    };
    let of_5 = entities.find(is_of_5).unwrap();
    let value = |code: &str| of_5.iter().find(|pair| pair.0 == code).unwrap().1;
    value("40").parse().unwrap()
}

fn odd_codes(file: &[u8]) -> f64 {
    count(
        pairs(file)
            .iter()
            .filter(|(code, _)| code.parse::<u16>().is_err()),
    )
}

fn release(file: &[u8]) -> f64 {
    let pairs = pairs(file);
    let at = pairs
        .iter()
        .position(|pair| *pair == ("9", "$ACADVER"))
        .unwrap();
    let (code, value) = pairs[at + 1];
    assert_eq!(code, "1");
    value.strip_prefix("AC").unwrap().parse().unwrap()
}

/// How many of the pairs there are.
fn of(file: &[u8], pair: (&str, &str)) -> f64 {
    count(pairs(file).iter().filter(|other| **other == pair))
}

fn open_sections(file: &[u8]) -> f64 {
    of(file, ("0", "SECTION")) - of(file, ("0", "ENDSEC"))
}

/// 1 for the header, 2 for the entities, 3 for the end of the file, digit after digit as they come.
fn order(file: &[u8]) -> f64 {
    pairs(file).iter().fold(0.0, |so_far, pair| match *pair {
        ("2", "HEADER") => so_far * 10.0 + 1.0,
        ("2", "ENTITIES") => so_far * 10.0 + 2.0,
        ("0", "EOF") => so_far * 10.0 + 3.0,
        _ => so_far,
    })
}

/// How many pairs stand behind the one that ends the file; as many as there are where none does.
fn after_eof(file: &[u8]) -> f64 {
    let pairs = pairs(file);
    count(pairs.iter().rev().take_while(|pair| **pair != ("0", "EOF")))
}

/// Codes 10 to 59 hold numbers with a point.
fn odd_numbers(file: &[u8]) -> f64 {
    let pairs = pairs(file);
    let numbers = pairs
        .iter()
        .filter(|(code, _)| code.parse().is_ok_and(|code: u16| (10..60).contains(&code)));
    count(numbers.filter(|(_, value)| value.parse::<f64>().is_err()))
}
